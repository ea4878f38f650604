"""EDTF years (ISO 8601-2), read by the edtf library, as bounds in decimal years.

1957 is 1957.0 to 1958.0. A bound that is about or uncertain is evenly likely anywhere between two
decimal years; an open one is infinite and stands for the beginning or end of the range's life.
How far "about" and "uncertain" reach is the library's convention, as the standard leaves it open: a
year (or a year and a month) to either side, twice that for both.
"""

import math
import re
from functools import cache
from typing import Any

import msgspec
from edtf import EDTFParseException, parse_edtf
from edtf.parser.parser_classes import Season

from identify.core.dates import read_date
from identify.core.edtf import days_in
from identify.core.types.dates import Life
from identify.reference.mistakes import quoted

RIGHT = "Write 1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or 1958-03."

# The shapes of EDTF level 1 but for times, seasons, negative years and years beyond four digits.
YEAR, DAY = r"\d{4}", r"(?:-(?:\d\d|XX))?"
DATE = rf"(?:{YEAR}|{YEAR}-\d\d{DAY}|{YEAR}-XX(?:-XX)?|\d{{3}}X|\d\dXX)[~?%]?"
SPAN = rf"{DATE}/(?:{DATE}|\.\.)?|(?:\.\.)?/{DATE}|\.\./\.\."
WRITTEN = re.compile(rf"{DATE}|{SPAN}", re.ASCII)
OPEN = ("", "..")
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


def _decimal(date: Any, days_later: int = 0) -> float:
    """A library date (time tuple) as a decimal year. Raises ValueError for a 30 February."""
    year, month, day = date[:3]
    if day > days_in(year, month):
        raise ValueError("no such day")
    past = sum(days_in(year, each) for each in range(1, month)) + day - 1
    return float(year + (past + days_later) / (337 + days_in(year, 2)))


@cache
def _one(text: str) -> Years:
    """One date. Raises YearsError."""
    try:
        date = parse_edtf(text)
        first, last = _decimal(date.lower_strict()), _decimal(date.upper_strict(), 1)
        earliest, latest = _decimal(date.lower_fuzzy()), _decimal(date.upper_fuzzy(), 1)
        known = not isinstance(getattr(date, "date", date), Season)
    except (EDTFParseException, ValueError):
        known = False
    if not known:
        raise YearsError(f"{quoted(text)} names a month or a day that does not exist.")
    start = earliest, first + (latest - last)
    end = last + (earliest - first), latest
    return Years(first, last, earliest, latest, start, end)


def _span(lower: str, upper: str) -> Years:
    """A span. An end left blank is unknown: anywhere on the far side of the other end."""
    first = earliest = -math.inf
    last = latest = math.inf
    start: Bound = (-math.inf, -math.inf)
    end: Bound = (math.inf, math.inf)
    if lower not in OPEN:
        date = _one(lower)
        first, earliest = date.first, date.earliest
        start = (date.earliest, date.latest) if "X" in lower else date.start
    if upper not in OPEN:
        date = _one(upper)
        last, latest = date.last, date.latest
        end = (date.earliest, date.latest) if "X" in upper else date.end
    if lower == "":
        start = -math.inf, end[1]
    if upper == "":
        end = start[0], math.inf
    return Years(first, last, earliest, latest, start, end)


def _readable(text: str) -> bool:
    try:
        read_years(text)
    except YearsError:
        return False
    return True


def _wrong(text: str) -> str:
    """What is wrong with a text that is not EDTF, and what would be right."""
    edtf = read_date(text, "", ANY_LIFE)["edtf"]
    right = f"Write {quoted(edtf)}." if edtf and _readable(edtf) else RIGHT
    return f"{quoted(text)} is not a year or a span of years in EDTF. {right}"


@cache
def read_years(text: str) -> Years:
    """What an EDTF text says. Raises YearsError with what would be right."""
    if not WRITTEN.fullmatch(text):
        raise YearsError(_wrong(text))
    lower, slash, upper = text.partition("/")
    years = _span(lower, upper) if slash else _one(text)
    if years.first >= years.last:
        raise YearsError(f"{quoted(text)} ends before it begins. Put the earlier year first.")
    return years


def outside(text: str, first: float, last: float) -> bool:
    """Whether a readable text names a date not between two decimal years.

    A decade (195X) may reach beyond them as long as it has some time in common with them.
    """
    for part in text.split("/"):
        if part not in OPEN:
            date = _one(part)
            inside = first <= date.first and date.last <= last
            shared = "X" in part and date.first < last and date.last > first
            if not inside and not shared:
                return True
    return False
