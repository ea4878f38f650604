"""Ostwick: an invented range that nobody has written down, to be brought in by handling pieces.

Ten items, twenty variants. What is seen on each is by ids of the kit; a variant differs from the
first of its item in one thing. Nothing of it follows a real maker.

`pieces` draws pieces of it as they lie on a stall, by this story and not by what the app made of
it: each was made in some year, has what was fitted by then, and here and there a part from another
piece, or something that is misread.
"""

import random
from dataclasses import dataclass, field

COACH = {
    "coach_type": "corridor", "coach_length": "long", "main_colour": "maroon", "lining": "line",
    "emblem": "crest", "coupling": "loop", "number_ends": "both_ends", "bogie_frame": "pressed",
    "wheels": "cast",
}  # fmt: skip
WAGON = {
    "wagon_type": "van", "main_colour": "grey", "emblem": "plain", "coupling": "loop",
    "wheels": "cast", "fitting": "fixed", "printing": "transfer",
}  # fmt: skip
ENGINE = {
    "form": "tank", "main_colour": "green", "lining": "line", "emblem": "crest",
    "coupling": "loop", "number_ends": "both_ends", "wheel_arrangement": "three",
}  # fmt: skip


@dataclass
class Item:
    """What a collector holds: what is written and said of it, and what is seen."""

    kind: str  # as it is called in the kit
    number: str
    name: str
    made: str  # as a collector writes it
    source: str
    life: tuple[int, int]  # the years in which it was truly made, whatever was written of them
    seen: dict[str, str]
    variants: list[dict[str, str]] = field(default_factory=list)  # what differs on each further one


ITEMS = [
    Item("Coach", "K 11", "Saloon", "about 1951", "A catalogue", (1950, 1959), COACH,
         [{"main_colour": "green"}]),
    Item("Coach", "K 12", "Guard's coach", "1951 to 58", "A catalogue", (1951, 1958),
         COACH | {"coach_type": "brake"}, [{"coupling": "claw"}]),
    Item("Coach", "K 14", "Dining car", "before 1956", "My own piece", (1951, 1955),
         COACH | {"coach_type": "dining", "main_colour": "blue"}, [{"bogie_frame": "plain"}]),
    Item("Coach", "K 15", "Short coach", "", "My own piece", (1952, 1961),
         COACH | {"coach_type": "compartment", "coach_length": "short", "lining": "plain"},
         [{"main_colour": "brown"}]),
    Item("Wagon", "K 31", "Goods van", "1950 to 60", "A book", (1950, 1960), WAGON,
         [{"main_colour": "brown"}]),
    Item("Wagon", "K 32", "Oil tank", "about 1955", "A book", (1954, 1957),
         WAGON | {"wagon_type": "tanker", "main_colour": "black", "emblem": "words"},
         [{"main_colour": "silver"}]),
    Item("Wagon", "K 33", "Ballast hopper", "1953 to 1960", "Somebody said so", (1953, 1960),
         WAGON | {"wagon_type": "hopper"}, [{"coupling": "claw"}]),
    Item("Wagon", "K 36", "Cattle wagon", "", "My own piece", (1951, 1961),
         WAGON | {"wagon_type": "cattle", "main_colour": "brown", "fitting": "moving"},
         [{"printing": "ink"}]),
    Item("Locomotive", "K 1", "Tank engine", "1950 to 1961", "A catalogue", (1950, 1961), ENGINE,
         [{"main_colour": "black"}]),
    Item("Locomotive", "K 4", "Shunter", "after 1957", "A catalogue", (1958, 1961),
         ENGINE | {"form": "shunter", "main_colour": "blue", "horns": "metal",
                   "emblem": "roundel"}, [{"horns": "plastic"}]),
]  # fmt: skip


@dataclass
class Change:
    """What was fitted to every piece of a kind from some year on, but to items that have a variant
    told by it.
    """

    kinds: str
    feature: str
    state: str
    since: str  # as a collector writes it
    year: int


CHANGES = [
    Change("Coach", "wheels", "black", "about 1958", 1958),
    Change("Wagon", "coupling", "claw", "1957", 1957),
]
SWAPPED = 0.1  # how often a piece has a part from another one of its kind
PARTS = ("coupling", "wheels", "bogie_frame", "horns")
MISREAD = 0.03  # how often a look is wrong
TAKEN_FOR = {
    "maroon": "brown", "brown": "maroon", "green": "black", "black": "green", "blue": "green",
    "grey": "silver", "silver": "grey", "crest": "roundel", "roundel": "crest", "loop": "bar",
    "claw": "narrow_claw", "transfer": "ink", "ink": "transfer", "corridor": "dining",
    "dining": "corridor", "van": "cattle", "cattle": "van", "cast": "bright", "line": "plain",
    "pressed": "plain", "metal": "plastic", "plastic": "metal",
}  # fmt: skip


@dataclass
class Piece:
    """A piece on a stall: what it is, and what its finder says of it."""

    item: Item
    variant: int  # 0 the first of its item
    year: int
    there: dict[str, str]  # what is on it
    says: dict[str, str]  # what is seen at the first look; a second one shows what is there
    odd: list[str] = field(default_factory=list)  # what was swapped or misread


def made_with(item: Item, variant: int, year: int) -> dict[str, str]:
    """What is on a piece as it left the works."""
    own: dict[str, str] = [{}, *item.variants][variant]
    told_by = {feature for one in item.variants for feature in one}
    seen = item.seen | own
    for change in CHANGES:
        if change.kinds == item.kind and year >= change.year and change.feature not in told_by:
            seen |= {change.feature: change.state}
    return seen


def any_piece(rng: random.Random, kind: str = "") -> Piece:
    """A piece as it left the works."""
    item = rng.choice([one for one in ITEMS if kind in ("", one.kind)])
    variant = rng.randrange(1 + len(item.variants))
    year = rng.randint(*item.life)
    made = made_with(item, variant, year)
    return Piece(item, variant, year, made, dict(made))


def pieces(rng: random.Random, count: int) -> list[Piece]:
    """Pieces as they are found, and as they are read."""
    found = []
    for _ in range(count):
        piece = any_piece(rng)
        there = piece.there
        if rng.random() < SWAPPED:
            donor = any_piece(rng, piece.item.kind).there
            part = rng.choice([one for one in PARTS if one in there])
            if donor.get(part, there[part]) != there[part]:
                there[part] = donor[part]
                piece.odd.append(f"{part} swapped")
        there["kind"] = piece.item.kind.lower()
        piece.says = dict(there)
        for feature, state in there.items():
            if state in TAKEN_FOR and rng.random() < MISREAD:
                piece.says[feature] = TAKEN_FOR[state]
                piece.odd.append(f"{feature} misread")
        found.append(piece)
    return found
