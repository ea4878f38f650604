"""EDTF years (ISO 8601-2), read by the edtf library, as bounds in decimal years.

1957 is 1957.0 to 1958.0. A bound that is about or uncertain is evenly likely anywhere between two
decimal years; an open one is infinite and stands for the beginning or end of the range's life.
"""

import calendar
import math
import re
from functools import cache
from typing import Any

import msgspec
from edtf import EDTFParseException, parse_edtf
from edtf.parser.parser_classes import EDTFObject, Interval, Season, UnspecifiedIntervalSection

RIGHT = "Write 1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or 1958-03."

# EDTF at level 1 without times, seasons, sets and years beyond four digits.
WRITTEN = re.compile(r"[0-9X~?%./-]{1,40}")

DAYS = (31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31)

# What people write, and how EDTF puts it.
HABITS = (
    (re.compile(r"(\d{4})\s*[-\u2013]\s*(\d{4})"), r"\1/\2"),
    (re.compile(r"(\d\d)(\d\d)\s*[-\u2013/]\s*(\d\d)"), r"\1\2/\1\3"),
    (re.compile(r"(?:c|ca|circa|about)\.?\s*(\d{4})", re.I), r"\1~"),
    (re.compile(r"(\d{3})0'?s"), r"\1X"),
    (re.compile(r"(?:before|until|to)\s+(\d{4})", re.I), r"../\1"),
    (re.compile(r"(?:after|since|from)\s+(\d{4})|(\d{4})\s*[-\u2013+]", re.I), r"\1\2/.."),
)

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
    """A library date (time tuple) as a decimal year."""
    year, month, day = date[:3]
    leap = calendar.isleap(year)
    past = sum(DAYS[: month - 1]) + (1 if leap and month > 2 else 0) + day - 1
    return float(year + (past + days_later) / (366 if leap else 365))


def _bounds(date: EDTFObject) -> tuple[float, float, float, float]:
    """(strict first, strict last, fuzzy first, fuzzy last) of one date."""
    return (
        _decimal(date.lower_strict()),
        _decimal(date.upper_strict(), 1),
        _decimal(date.lower_fuzzy()),
        _decimal(date.upper_fuzzy(), 1),
    )


def _start(date: EDTFObject) -> Bound:
    first, last, earliest, latest = _bounds(date)
    if "X" in str(date):
        return earliest, latest
    return earliest, first + (latest - last)


def _end(date: EDTFObject) -> Bound:
    first, last, earliest, latest = _bounds(date)
    if "X" in str(date):
        return earliest, latest
    return last + (earliest - first), latest


def _one(date: EDTFObject) -> Years:
    first, last, earliest, latest = _bounds(date)
    start = earliest, first + (latest - last)
    end = last + (earliest - first), latest
    return Years(first, last, earliest, latest, start, end)


def _interval(lower: Any, upper: Any) -> Years:
    """An interval; an end left blank is somewhere on the far side of the other end."""
    first = earliest = -math.inf
    last = latest = math.inf
    start: Bound = (-math.inf, -math.inf)
    end: Bound = (math.inf, math.inf)
    no_start = isinstance(lower, UnspecifiedIntervalSection)
    no_end = isinstance(upper, UnspecifiedIntervalSection)
    if not no_start:
        first, _, earliest, _ = _bounds(lower)
        start = _start(lower)
    if not no_end:
        _, last, _, latest = _bounds(upper)
        end = _end(upper)
    if no_start and lower.is_unknown:
        start = -math.inf, end[1]
    if no_end and upper.is_unknown:
        end = start[0], math.inf
    return Years(first, last, earliest, latest, start, end)


def _habit(text: str) -> str:
    for pattern, right in HABITS:
        found = pattern.fullmatch(text)
        if found:
            return f"Write {found.expand(right)}."
    return RIGHT


@cache
def read_years(text: str) -> Years:
    """What an EDTF text says. Raises YearsError with what would be right."""
    wrong = f'"{text}" is not a year or a span of years in EDTF. {_habit(text)}'
    if not WRITTEN.fullmatch(text) or re.search(r"X\d", text):
        raise YearsError(wrong)
    try:
        read = parse_edtf(text)
    except EDTFParseException:
        raise YearsError(wrong) from None
    dates = [read.lower, read.upper] if isinstance(read, Interval) else [read]
    if any(isinstance(getattr(date, "date", date), Season) for date in dates):
        raise YearsError(f'"{text}" names a month that does not exist. Months are 01 to 12.')
    if len(dates) == 1:
        return _one(read)
    years = _interval(read.lower, read.upper)
    if years.first >= years.last:
        raise YearsError(f'"{text}" ends before it begins. Put the earlier year first.')
    return years


def outside(text: str, first: float, last: float) -> bool:
    """Whether a readable text names a date not between two decimal years.

    A decade (195X) may reach beyond them as long as it has some time in common with them.
    """
    for part in text.split("/"):
        if part not in ("", ".."):
            date = read_years(part)
            inside = first <= date.first and date.last <= last
            shared = "X" in part and date.first < last and date.last > first
            if not inside and not shared:
                return True
    return False
