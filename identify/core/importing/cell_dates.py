"""Dates as people write them in their lists, as EDTF; what cannot be read, in a sentence."""

from collections.abc import Sequence

from ..date_in_words import date_in_words
from ..dates import figures_order, read_date
from ..edtf import is_figures
from ..types.dates import DayOrder
from ..types.importing import CellRead
from .text_parts import one_line, quoted, without_signs

# What stands in a cell where nothing is known, in English, German, French and Dutch: common
# practice, no source.
NO_DATE = [
    "", "?", "??", "-", "–", "N/A", "N/K", "NK", "UNKNOWN", "NOT KNOWN", "UNBEKANNT", "INCONNU",
    "ONBEKEND", "NO DATE", "N.D.",
]  # fmt: skip


def said_by_cell(value: str, more: str) -> CellRead:
    """What a cell says, and what that leaves out of it."""
    return {"value": value, "more": more, "wrong": ""}


def unread_cell(wrong: str) -> CellRead:
    """A cell that cannot be read, with a sentence about it."""
    return {"value": "", "more": "", "wrong": wrong}


def order_of_dates(texts: Sequence[str]) -> str:
    """Which figure of 12/5/57 is the day, by a whole column: "day" (the first), "month" (the
    second is), "ask" (nothing tells), "mixed" (both come up), "" (no date where it matters).
    """
    orders = [figures_order(text) for text in texts]
    if "day" in orders and "month" in orders:
        return "mixed"
    if "day" in orders:
        return "day"
    if "month" in orders:
        return "month"
    return "ask" if "either" in orders else ""


def counts_days(text: str) -> bool:
    """Whether a text is a number as a spreadsheet counts days: 35927."""
    return len(text) == 5 and is_figures(text) and "2" <= text[0:1] <= "4"


def read_when(text: str, order: DayOrder) -> CellRead:
    """A date as EDTF; "" for none. order: what stands first in 12/5/57, "" for not known."""
    written = without_signs(one_line(text), " ,;")
    if written.upper() in NO_DATE:
        return said_by_cell("", "")
    read = read_date(written, order, {"first": 0, "last": 0})
    if read["problem"] == "unread" and counts_days(written):
        return unread_cell(
            quoted(text) + " is how a spreadsheet counts days. Set the column's format to a date."
        )
    if read["problem"] == "order":
        first = date_in_words(read["readings"][0])
        second = date_in_words(read["readings"][1])
        return unread_cell(
            quoted(text) + " can be " + first + " or " + second
            + ". Say whether the day or the month comes first in this column."
        )  # fmt: skip
    if read["problem"] != "":
        return unread_cell(quoted(text) + " is not a date that can be read. " + read["why"])
    return said_by_cell(read["edtf"], "")
