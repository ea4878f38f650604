"""Ostwick: an invented range that nobody has written down, to be brought in by handling pieces.

Ten items, twenty variants. What is seen on each is by ids of the kit; a variant differs from the
first of its item in one thing. Nothing of it follows a real maker.
"""

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
    seen: dict[str, str]
    variants: list[dict[str, str]] = field(default_factory=list)  # what differs on each further one


ITEMS = [
    Item("Coach", "K 11", "Saloon", "about 1951", "A catalogue", COACH,
         [{"main_colour": "green"}]),
    Item("Coach", "K 12", "Guard's coach", "1951 to 58", "A catalogue",
         COACH | {"coach_type": "brake"}, [{"coupling": "claw"}]),
    Item("Coach", "K 14", "Dining car", "before 1956", "My own piece",
         COACH | {"coach_type": "dining", "main_colour": "blue"}, [{"bogie_frame": "plain"}]),
    Item("Coach", "K 15", "Short coach", "", "My own piece",
         COACH | {"coach_type": "compartment", "coach_length": "short", "lining": "plain"},
         [{"main_colour": "brown"}]),
    Item("Wagon", "K 31", "Goods van", "1950 to 60", "A book", WAGON, [{"main_colour": "brown"}]),
    Item("Wagon", "K 32", "Oil tank", "about 1955", "A book",
         WAGON | {"wagon_type": "tanker", "main_colour": "black", "emblem": "words"},
         [{"main_colour": "silver"}]),
    Item("Wagon", "K 33", "Ballast hopper", "1953 to 1960", "Somebody said so",
         WAGON | {"wagon_type": "hopper"}, [{"coupling": "claw"}]),
    Item("Wagon", "K 36", "Cattle wagon", "", "My own piece",
         WAGON | {"wagon_type": "cattle", "main_colour": "brown", "fitting": "moving"},
         [{"printing": "ink"}]),
    Item("Locomotive", "K 1", "Tank engine", "1950 to 1961", "A catalogue", ENGINE,
         [{"main_colour": "black"}]),
    Item("Locomotive", "K 4", "Shunter", "after 1957", "A catalogue",
         ENGINE | {"form": "shunter", "main_colour": "blue", "horns": "metal",
                   "emblem": "roundel"}, [{"horns": "plastic"}]),
]  # fmt: skip
