"""Invented rows of lists with the item that each means: known items, spoilt as lists spoil them.

All of it is made by chance from the invented demo packs; nothing here was ever in a real list.
"""

import random
from dataclasses import dataclass

from identify.core.importing.item_words import engine_of
from identify.core.types.importing import Entry, Query, Reference
from identify.core.types.pack import Pack

LETTERS = "ABCDEFGHIKLMNOPRSTUW"
LOOK = {"0": "O", "1": "I", "5": "S", "8": "B", "O": "0", "S": "5", "B": "8", "6": "G", "2": "Z"}
# Things that are in neither pack.
STRANGERS = [
    "Snow plough", "Rail cleaning car", "Track gauge", "Turntable with motor", "Water tower",
    "Footbridge in wood", "Brass mountain railcar", "Garden tram", "Rack engine", "Log loader",
    "Circus wagon with lions", "Platform figures, six", "Engine shed, two roads", "Ballast plough",
    "Articulated goods engine", "Narrow gauge tank engine", "Travelling post office, scratch built",
    "Well wagon with boiler", "Hospital coach", "Inspection trolley", "Tunnel mouth", "Catalogue",
    "Fire engine", "Diesel railbus", "Bogie bolster", "Battery box", "Gas lamp", "Slip coach",
]  # fmt: skip
# Names in other languages, and words of one's own.
OTHER_WORDS = [
    "Lok", "Güterwagen", "Tenderlok, klein", "Dampflokomotive", "Voiture voyageurs",
    "Locomotive verte", "Goederenwagen", "Rijtuig", "Wagon citerne", "grandad's", "the nice one",
    "spare", "loco", "truck",
]  # fmt: skip
FILLER = ["nice", "old", "from a friend", "runs well", "boxed", "no key", "see photo", "shelf 3"]


@dataclass(frozen=True)
class Labelled:
    """A row and the entry it means, -1 for none; how it was made."""

    query: Query
    place: int
    made: str


def query(number: str, name: str, description: str, about: str) -> Query:
    """What a row says of which item it is."""
    return {"number": number, "name": name, "description": description, "range": about}


def pack_of(reference: Reference, entry: Entry) -> Pack:
    """The range that an item is of."""
    return reference["engines"][engine_of(reference, entry["pack"])]["pack"]


def mistyped(chance: random.Random, text: str) -> str:
    """One slip: a letter left out, doubled, changed, or swapped with its neighbour."""
    if len(text) < 3:
        return text
    at = chance.randrange(len(text) - 1)
    kind = chance.randrange(4)
    if kind == 0:
        return text[:at] + text[at + 1 :]
    if kind == 1:
        return text[:at] + text[at] + text[at:]
    if kind == 2:
        return text[:at] + chance.choice(LETTERS.lower()) + text[at + 1 :]
    return text[:at] + text[at + 1] + text[at] + text[at + 2 :]


def spoilt_number(chance: random.Random, number: str) -> tuple[str, str]:
    """A number as a list has it, and what was done to it."""
    kind = chance.choices(
        ["exact", "no space", "lower", "zero", "look-alike", "slip", "cut"],
        [30, 20, 10, 8, 8, 8, 3],
    )[0]
    if kind == "no space":
        return number.replace(" ", ""), kind
    if kind == "lower":
        return number.lower().replace(" ", "-"), kind
    if kind == "zero":
        at = next(n for n, c in enumerate(number) if c.isdigit())
        return number[:at] + "0" + number[at:], kind
    if kind == "look-alike":
        places = [n for n, c in enumerate(number) if c in LOOK]
        if places:
            at = chance.choice(places)
            return number[:at] + LOOK[number[at]] + number[at + 1 :], kind
    if kind == "slip":
        return mistyped(chance, number), kind
    if kind == "cut" and len(number) > 3:
        return number[:-1], kind
    return number, "exact"


def spoilt_name(chance: random.Random, name: str) -> str:
    """A name as a list has it: a word lost, others in another order, a typing error or two."""
    said = name.split()
    if len(said) > 2 and chance.random() < 0.3:
        del said[chance.randrange(len(said))]
    if chance.random() < 0.3:
        chance.shuffle(said)
    for at in range(len(said)):
        if chance.random() < 0.15:
            said[at] = mistyped(chance, said[at])
    text = " ".join(said)
    return text.lower() if chance.random() < 0.3 else text


def labelled(reference: Reference, count: int, seed: int) -> list[Labelled]:
    """Rows, a tenth of which mean nothing that is in the packs."""
    chance = random.Random(seed)
    return [_one(reference, chance) for _ in range(count)]


def _one(reference: Reference, chance: random.Random) -> Labelled:
    if chance.random() < 0.12:
        return _stranger(chance)
    place = chance.randrange(len(reference["entries"]))
    entry = reference["entries"][place]
    kind = chance.choice(["number", "both", "both", "name", "words"])
    number = name = more = made = ""
    if kind in ("number", "both"):
        number, made = spoilt_number(chance, entry["number"])
        if entry["carried"] and chance.random() < 0.1:
            number, made = chance.choice(sorted(entry["carried"])), "carried"
    if kind in ("both", "name"):
        name = spoilt_name(chance, entry["name"])
        if number and chance.random() < 0.1:
            name = chance.choice(OTHER_WORDS)
    if kind == "words":
        more = _description(reference, chance, entry)
    about = pack_of(reference, entry)["range"]["name"] if chance.random() < 0.4 else ""
    return Labelled(query(number, name, more, about), place, f"{kind}: {made}" if made else kind)


def _description(reference: Reference, chance: random.Random, entry: Entry) -> str:
    """Everything in one cell: name and variant, perhaps the number, and something else."""
    pack = pack_of(reference, entry)
    names = [v["name"] for v in pack["variants"] if v["item"] == entry["place"] and v["name"]]
    parts = [spoilt_name(chance, entry["name"])]
    if names:
        parts.append(chance.choice(names))
    if chance.random() < 0.4:
        parts.insert(0, spoilt_number(chance, entry["number"])[0])
    if chance.random() < 0.5:
        parts.append(chance.choice(FILLER))
    return ", ".join(parts)


def _stranger(chance: random.Random) -> Labelled:
    """A row about something that is in no pack."""
    name = spoilt_name(chance, chance.choice(STRANGERS))
    number = ""
    if chance.random() < 0.6:
        letters = "".join(chance.choice(LETTERS) for _ in range(chance.randrange(3)))
        number = f"{letters}{chance.randrange(100, 99999)}"
    kind = chance.choice(["number", "name", "both"])
    if kind == "number" and number:
        name = ""
    return Labelled(query(number, name, "", ""), -1, f"stranger: {kind}")
