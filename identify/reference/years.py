"""EDTF years (ISO 8601-2), as bounds in decimal years, which core/ranges/year_bounds.py reads.

An open end is infinite here; otherwise these are the core's figures.
"""

import math
from functools import cache

import msgspec

from identify.core.dates import read_date
from identify.core.ranges.year_bounds import FAR, lies_outside, years_of_edtf
from identify.core.types.dates import Life
from identify.reference.mistakes import quoted

RIGHT = "Write 1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or 1958-03."
ANY_LIFE: Life = {"first": 0, "last": 0}

Bound = tuple[float, float]


class YearsError(ValueError):
    """A text that is not a year or a span of years, with what would be right."""


class Years(msgspec.Struct, frozen=True):
    """What one EDTF text says.

    first, last: the strict bounds. earliest, latest: with what "about" and "uncertain" add.
    start, end: the bounds between which the beginning, and the end, are evenly likely.
    """

    first: float
    last: float
    earliest: float
    latest: float
    start: Bound
    end: Bound


def _open(year: float) -> float:
    """A decimal year, infinite where the core has it as far away."""
    return math.copysign(math.inf, year) if abs(year) >= FAR else year


def years_fault(text: str, problem: str) -> str:
    """What is wrong with a text, and what would be right; "" for no problem."""
    if problem == "day":
        side = next(side for side in text.split("/") if years_of_edtf(side)["problem"] == "day")
        return f"{quoted(side)} names a month or a day that does not exist."
    if problem == "reversed":
        return f"{quoted(text)} ends before it begins. Put the earlier year first."
    if problem == "":
        return ""
    edtf = read_date(text, "", ANY_LIFE)["edtf"]
    good = edtf != "" and years_of_edtf(edtf)["problem"] == ""
    right = f"Write {quoted(edtf)}." if good else RIGHT
    return f"{quoted(text)} is not a year or a span of years in EDTF. {right}"


@cache
def read_years(text: str) -> Years:
    """What an EDTF text says. Raises YearsError with what would be right."""
    read = years_of_edtf(text)
    if read["problem"] != "":
        raise YearsError(years_fault(text, read["problem"]))
    low, high = read["start"]
    early, late = read["end"]
    return Years(
        first=_open(read["first"]),
        last=_open(read["last"]),
        earliest=_open(read["earliest"]),
        latest=_open(read["latest"]),
        start=(_open(low), _open(high)),
        end=(_open(early), _open(late)),
    )


def outside(text: str, first: float, last: float) -> bool:
    """Whether a readable text names a date not between two decimal years.

    A decade (195X) may reach beyond them as long as it has some time in common with them.
    """
    return lies_outside(text, first, last)
