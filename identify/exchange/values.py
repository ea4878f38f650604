"""What the cells of a list say: conditions, boxes, prices.

Words of English, German, French and Dutch, and short forms such as VG: common practice, no source.
Scales of grades: fixtures/grading.csv.
"""

import csv
import re
from functools import cache

from identify.core.amounts import read_money
from identify.core.condition import CONDITIONS
from identify.core.types.money import Money
from identify.exchange.table import CellError, quoted
from identify.shipped import GRADES

CONDITION_WORDS = {
    "as new": "mint m mt brand new unused like new near mint nm neuwertig neu ungebraucht neuf "
    "comme neuf état neuf nieuw als nieuw nieuwstaat factory new ln",
    "excellent": "exc ex e ausgezeichnet hervorragend exzellent excellent état uitstekend",
    "very good": "sehr gut très bon tres bon tb zeer goed",
    "good": "g gd gc gut bon bon état goed",
    "fair": "f average akzeptabel befriedigend moyen redelijk matig worn played with playworn "
    "play worn gebraucht bespielt bespeeld gebruikt usagé",
    "poor": "p bad schlecht mauvais slecht junk scrap for spares restoration required",
}
# Words of two or more; whatever else stands in the table above is a word by itself.
LONG = (
    "brand new|like new|near mint|comme neuf|état neuf|als nieuw|factory new|excellent état|"
    "sehr gut|très bon|tres bon|zeer goed|bon état|played with|play worn|for spares|"
    "restoration required"
).split("|")
VERY_GOOD = re.compile(r"\bv(?:ery)?[\s.\-]*(?:good|gd|g\.?c|g)\b")  # v. good, v.g., VGC
YES = set("yes y true 1 x ✓ ✔ ja j oui o si boxed box mib ovp with box has box mit ovp".split()) | {
    "with box", "has box", "mit ovp", "original box", "in box", "boxed",
}  # fmt: skip
NO = set("no n false 0 none nein non nee unboxed without ohne sans zonder - –".split()) | {
    "no box", "without box", "ohne ovp", "sans boîte", "zonder doos", "not boxed", "loose",
}  # fmt: skip
A_BOX = r"(?:box|boxed|ovp|karton|originalkarton|schachtel|boîte|boite|doos)\b"
BOX_NAMED = re.compile(rf"\b(?:(?:in|with|has|mit|the|its|original|orig)\b\.?\s*)*{A_BOX}")
# "No" before a comma or the like, or before the box; a bare "no lid" has a box.
NO_BOX = re.compile(
    r"(?:n|no|none|nein|non|nee|ohne|sans|zonder|unboxed|loose)\s*[-–,;:(/.]|"
    rf".*\b(?:no|not|without|w/o|ohne|kein|sans|zonder|geen)\s+(?:in\s+)?(?:original\s+)?{A_BOX}|"
    rf".*\b{A_BOX}\s+(?:is\s+|was\s+)?(?:lost|missing|gone|fehlt|manque|ontbreekt)\b"
)
MOST_SAID = 200  # letters of a cell that are looked at for a box
YES_AND = re.compile(r"(?:y|yes|ja|oui)\s+(?=\S)|(?:y|yes|j|ja|o|oui|si|x|✓|✔)\s*[-–,;:(/.+&]\s*")
UNKNOWN = {"", "?", "n/a", "n/k", "unknown", "not known", "unbekannt", "inconnu", "onbekend"}

MONEY = {
    "amount": "has no amount in it. Write it like 4.50, £4 or 12/6.",
    "word": "has a word in it that is not a currency. Write it like 4.50, £4 or 12/6.",
    "which": "is written as several currencies are. Write its code too, like 4.50 USD.",
    "currency": "is in a currency the app does not know. Write it with a code like GBP or EUR.",
    "mixed": "has two currencies in it. Write one.",
    "decimals": "has more decimals than its currency. Write it like 4.50.",
    "parts": "has more than 19 shillings, 11 old pence or 99 pence beside a larger unit.",
    "large": "is too large.",
    "ambiguous": "can be read in more than one way. Write it like 4.50, £4 or 12/6.",
}
ISO_DAY = re.compile(r"\d{4}-\d\d-\d\d")


@cache
def _conditions() -> dict[str, str]:
    """Every way a condition is written -> its word of the scale."""
    meanings = {word: word for word in CONDITIONS}
    for word, written in CONDITION_WORDS.items():
        others = written
        for long in LONG:
            if long in others:
                meanings[long] = word
                others = others.replace(long, " ")
        meanings |= dict.fromkeys(others.split(), word)
    with GRADES.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            meanings.setdefault(row["name"].lower(), row["condition"])
            meanings[row["grade"].lower()] = row["condition"]
    return meanings


def read_condition(text: str) -> tuple[str, str]:
    """A condition as a word of the scale ("" for none), and what of the text that leaves out.

    Of two ("good to very good") the lesser counts. Raises CellError.
    """
    plain = VERY_GOOD.sub("very good", " ".join(text.lower().split())).strip(" .")
    if plain in UNKNOWN or plain in ("-", "–"):
        return "", ""
    known = _conditions()
    if plain in known:
        return known[plain], ""
    bare = re.sub(r"\s*(?:\++|-+)$|\b(?:condition|cond|zustand|état|staat)\b", "", plain)
    bare = bare.strip(" :.")
    bare = re.sub(r"\bc[\s\-]?(\d+)\b", r"c\1", bare)
    if bare in known:
        return known[bare], text if bare + plain[-1:] == plain and plain[-1] in "+-" else ""
    parts = [
        part.strip(" .+()") for part in re.split(r"\s*(?:/|,|;|\bto\b|-|–|\bbis\b|\()\s*", bare)
    ]
    words = [known[part] for part in parts if part in known]
    if words and (len(words) > 1 or len(parts) > 1):
        return max(words, key=CONDITIONS.index), text
    raise CellError(
        f"{quoted(text)} is not a condition the app knows. Write {', '.join(CONDITIONS[:-1])} or "
        f"{CONDITIONS[-1]}, or a grade from C10 (the best) to C1."
    )


def read_yes(text: str) -> str:
    """Yes, no or "" of a cell. Raises CellError."""
    plain = " ".join(text.lower().split()).strip(" .")
    if plain in UNKNOWN:
        return ""
    if plain in YES:
        return "yes"
    if plain in NO:
        return "no"
    raise CellError(f"{quoted(text)} is neither yes nor no.")


def read_box(text: str) -> tuple[str, str, str]:
    """Whether there is a box (yes, no or ""), in what condition, and the cell where that leaves
    something out: "mint box", "y - torn". Raises CellError.
    """
    try:
        return read_yes(text), "", ""
    except CellError:
        pass
    plain = " ".join(text.lower().split())[:MOST_SAID]
    if NO_BOX.match(plain):
        return "no", "", text
    yes = YES_AND.match(plain)
    rest = BOX_NAMED.sub(" ", plain[yes.end() :] if yes else plain).strip(" -–,;:(/.+&)")
    said = yes is not None or rest != plain.strip(" -–,;:(/.+&)")
    try:
        word, more = read_condition(rest)
    except CellError:
        if said:
            return "yes", "", text
        raise CellError(
            f"{quoted(text)} does not say whether there is a box. Write yes, no or a condition."
        ) from None
    return "yes", word, text if more else ""


def read_price(text: str, usual: str) -> Money | None:
    """Money of a cell, None for none. usual: the currency meant where none is written.

    Raises CellError.
    """
    plain = text.strip()
    if plain.lower() in UNKNOWN or plain in ("-", "–"):
        return None
    if ISO_DAY.fullmatch(plain):
        raise CellError(
            f"{quoted(text)} is a date: a spreadsheet takes 12/6 for one. Write it like 12s 6d."
        )
    read = read_money(plain, usual)
    if read["problem"]:
        raise CellError(f"{quoted(text)} {MONEY[read['problem']]}")
    return read["money"]


def read_count(text: str) -> int:
    """A quantity; 1 for an empty cell. Raises CellError."""
    plain = text.strip().lower().removesuffix("x").strip()
    if plain in UNKNOWN:
        return 1
    if plain.isdecimal() and 0 < int(plain) < 1000:
        return int(plain)
    raise CellError(f"{quoted(text)} is not a number of pieces. Write a whole number from 1.")


def read_urgency(text: str) -> int:
    """How much something is wanted, 1 (least) to 3; 2 for an empty cell. Raises CellError."""
    words = {"1": 1, "2": 2, "3": 3, "low": 1, "medium": 2, "normal": 2, "high": 3, "": 2}
    meaning = words.get(text.strip().lower())
    if meaning is None:
        raise CellError(f"{quoted(text)} is not an urgency. Write 1, 2 or 3.")
    return meaning
