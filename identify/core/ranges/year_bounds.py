"""EDTF years (ISO 8601-2) as bounds in decimal years.

1957 is 1957.0 to 1958.0. A bound that is about or uncertain is evenly likely anywhere between two
decimal years; an open one lies beyond FAR and stands for the beginning or end of the range's life.
How far "about" and "uncertain" reach the standard leaves open; here it is as the edtf library
(PyPI) has it: a year (and a month, and a day, where these are named), ten of a decade, a hundred of
a century, to either side; twice that for both. A season is no date here.
"""

from ..edtf import TEN, bare, days_in, is_open, mark_of, sides_of
from ..types.rows import YearBounds

FAR = 100000.0
SHAPES = [
    "9999", "9999-99", "9999-99-99", "9999-99-XX", "9999-XX", "9999-XX-XX", "999X", "99XX",
]  # fmt: skip
# how far "about" reaches for each of them, in months and days
REACH = [[12, 0], [13, 0], [13, 1], [1, 1], [1, 0], [1, 1], [120, 0], [1200, 0]]


def decimal_year(year: int, month: int, day: int) -> float:
    """The beginning of a day, or of the one after the last of a month, as a decimal year."""
    past = day - 1
    for before in range(1, month):
        past = past + days_in(year, before)
    return year + past / (337 + days_in(year, 2))


def no_years(problem: str) -> YearBounds:
    """What cannot be read."""
    unread: YearBounds = {
        "problem": "unread", "first": 0.0, "last": 0.0, "earliest": 0.0, "latest": 0.0,
        "start": [0.0, 0.0], "end": [0.0, 0.0],
    }  # fmt: skip
    if problem == "day":
        unread["problem"] = "day"
    if problem == "reversed":
        unread["problem"] = "reversed"
    return unread


def shape_of_edtf(text: str) -> str:
    """A text with 9 in place of every figure."""
    out = ""
    for c in text:
        out = out + ("9" if c in TEN else c)
    return out


def moved_day(year: int, month: int, day: int, months: int, days: int) -> list[int]:
    """The day so many months, and then so many days, away (back where they are below 0). A day that
    the month there does not have is its last.
    """
    count = year * 12 + month - 1 + months
    there = count // 12
    then = count - there * 12 + 1
    at = [there, then, min(day, days_in(there, then))]
    steps = abs(days)
    for _ in range(steps):
        if days > 0:
            at[2] = at[2] + 1
            if at[2] > days_in(at[0], at[1]):
                at = [at[0], at[1] + 1, 1] if at[1] < 12 else [at[0] + 1, 1, 1]
        elif at[2] > 1:
            at[2] = at[2] - 1
        else:
            at = [at[0], at[1] - 1, 1] if at[1] > 1 else [at[0] - 1, 12, 1]
            at[2] = days_in(at[0], at[1])
    return at


def one_date_years(text: str) -> YearBounds:
    """One date, with or without a mark."""
    plain = bare(text)
    shape = shape_of_edtf(plain)
    if shape not in SHAPES:
        return no_years("unread")
    begin = [int(plain[0:4]) if shape[0:4] == "9999" else 0, 1, 1]
    end = [begin[0], 12, 31]
    if shape == "999X":
        begin[0] = int(plain[0:3]) * 10
        end[0] = begin[0] + 9
    elif shape == "99XX":
        begin[0] = int(plain[0:2]) * 100
        end[0] = begin[0] + 99
    elif shape[0:7] == "9999-99":
        month = int(plain[5:7])
        if month < 1 or month > 12:
            return no_years("day")
        begin[1] = month
        end[1] = month
        end[2] = days_in(begin[0], month)
        if shape == "9999-99-99":
            day = int(plain[8:10])
            if day < 1 or day > days_in(begin[0], month):
                return no_years("day")
            begin[2] = day
            end[2] = day
    return with_reach(begin, end, reach_of(shape), mark_of(text))


def reach_of(shape: str) -> list[int]:
    """The months and days that "about" adds to a date of this shape."""
    for n in range(len(SHAPES)):
        if SHAPES[n] == shape:
            return REACH[n]
    return [0, 0]


def with_reach(begin: list[int], end: list[int], reach: list[int], mark: str) -> YearBounds:
    """The years from one day to another; `reach`: the months and days that a mark adds."""
    times = 0 if mark == "" else 2 if mark == "%" else 1
    months = reach[0] * times
    days = reach[1] * times
    before = moved_day(begin[0], begin[1], begin[2], 0 - months, 0 - days)
    behind = moved_day(end[0], end[1], end[2], months, days)
    lower = decimal_year(begin[0], begin[1], begin[2])
    upper = decimal_year(end[0], end[1], end[2] + 1)
    earliest = decimal_year(before[0], before[1], before[2])
    latest = decimal_year(behind[0], behind[1], behind[2] + 1)
    return {
        "problem": "", "first": lower, "last": upper, "earliest": earliest, "latest": latest,
        "start": [earliest, lower + (latest - upper)], "end": [upper + (earliest - lower), latest],
    }  # fmt: skip


def span_years(lower: str, upper: str) -> YearBounds:
    """A span. An end left blank is unknown: anywhere on the far side of the other end."""
    out = no_years("unread")
    out["problem"] = ""
    out["first"] = 0 - FAR
    out["earliest"] = 0 - FAR
    out["last"] = FAR
    out["latest"] = FAR
    out["start"] = [0 - FAR, 0 - FAR]
    out["end"] = [FAR, FAR]
    if not is_open(lower):
        date = one_date_years(lower)
        if date["problem"] != "":
            return date
        out["first"] = date["first"]
        out["earliest"] = date["earliest"]
        out["start"] = [date["earliest"], date["latest"]] if "X" in lower else date["start"]
    if not is_open(upper):
        date = one_date_years(upper)
        if date["problem"] != "":
            return date
        out["last"] = date["last"]
        out["latest"] = date["latest"]
        out["end"] = [date["earliest"], date["latest"]] if "X" in upper else date["end"]
    if lower == "":
        out["start"] = [0 - FAR, out["end"][1]]
    if upper == "":
        out["end"] = [out["start"][0], FAR]
    return out


def years_of_edtf(text: str) -> YearBounds:
    """What an EDTF text says."""
    sides = sides_of(text)
    if len(sides) == 1:
        return one_date_years(text)
    if len(sides) != 2 or (is_open(sides[0]) and is_open(sides[1]) and text != "../.."):
        return no_years("unread")
    for side in sides:
        if not is_open(side) and shape_of_edtf(bare(side)) not in SHAPES:
            return no_years("unread")
    out = span_years(sides[0], sides[1])
    return no_years("reversed") if out["problem"] == "" and out["first"] >= out["last"] else out


def lies_outside(text: str, first: float, last: float) -> bool:
    """Whether a readable text names a date not between two decimal years.

    A decade (195X) may reach beyond them as long as it has some time in common with them.
    """
    for side in sides_of(text):
        if not is_open(side):
            date = one_date_years(side)
            inside = first <= date["first"] and date["last"] <= last
            shared = "X" in side and date["first"] < last and date["last"] > first
            if not inside and not shared:
                return True
    return False
