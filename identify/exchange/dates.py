"""Dates as people write them in their lists, as EDTF: read by the core, refused in a sentence."""

import re
from collections.abc import Iterable

from identify.core import dates
from identify.core.date_in_words import date_in_words
from identify.core.types.dates import DayOrder
from identify.exchange.table import CellError, quoted
from identify.reference.years import ANY_LIFE

# What stands in a cell where nothing is known, in English, German, French and Dutch: common
# practice, no source.
NOTHING = {
    "", "?", "??", "-", "–", "n/a", "n/k", "nk", "unknown", "not known", "unbekannt", "inconnu",
    "onbekend", "no date", "n.d.",
}  # fmt: skip


def order_of(texts: Iterable[str]) -> str:
    """Which figure of 12/5/57 is the day, by a whole column: "day" (the first), "month" (the
    second is), "ask" (nothing tells), "mixed" (both come up), "" (no date where it matters).
    """
    found = {dates.figures_order(text) for text in texts} - {""}
    if found >= {"day", "month"}:
        return "mixed"
    known = found - {"either"}
    return known.pop() if known else "ask" if found else ""


def read_date(text: str, order: DayOrder = "") -> str:
    """A date as EDTF; "" for none. order: what stands first in 12/5/57, "" for not known.

    Raises CellError with a sentence.
    """
    plain = " ".join(text.split()).strip(" ,;")
    if plain.lower() in NOTHING:
        return ""
    read = dates.read_date(plain, order, ANY_LIFE)
    if read["problem"] == "unread" and re.fullmatch(r"[234]\d{4}", plain):
        raise CellError(
            f"{quoted(text)} is how a spreadsheet counts days. Set the column's format to a date."
        )
    if read["problem"] == "order":
        first, second = map(date_in_words, read["readings"])
        raise CellError(
            f"{quoted(text)} can be {first} or {second}. Say whether the day or the month stands "
            "first in this column."
        )
    if read["problem"]:
        raise CellError(f"{quoted(text)} is not a date that can be read. {read['why']}")
    return read["edtf"]
