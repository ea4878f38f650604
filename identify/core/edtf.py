"""Dates as they are kept: EDTF (ISO 8601-2, level 1), with the calendar that goes with it.

1957 · 1957-05 · 1957-05-12 · 1957-21 to -24 (spring to winter) · 195X, 19XX and
1957-XX (unspecified) · each with ~ (about), ? (uncertain) or % (both) behind · from/to, "../1959"
and "1959/.." for open, nothing in place of ".." for an unknown end. Winter is December, as the
edtf library has it.
"""

from .types.dates import Mark, OneDate

DAYS_IN = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
SEASON_MONTHS = [["03", "05"], ["06", "08"], ["09", "11"], ["12", "12"]]
SPRING = 21  # EDTF's number of the first season
MARKS = "~?%"
TEN = "0123456789"


def padded(number: int, width: int) -> str:
    """A number of 0 or more as text of at least so many figures."""
    out = ""
    left = number
    while left > 0 or len(out) < width:
        tens = left // 10
        digit = left - tens * 10
        out = TEN[digit : digit + 1] + out
        left = tens
    return out


def days_in(year: int, month: int) -> int:
    """How many days a month has."""
    by_four = year // 4 * 4 == year and (year // 100 * 100 != year or year // 400 * 400 == year)
    return 29 if month == 2 and by_four else DAYS_IN[month - 1]


def is_figures(text: str) -> bool:
    """Whether a text is nothing but figures, and at least one."""
    for c in text:
        if c not in TEN:
            return False
    return text != ""


def date_as(edtf: str, first: str, last: str) -> OneDate:
    """A date that was read."""
    return {
        "edtf": edtf, "first": first, "last": last, "mark": "", "problem": "", "why": "",
        "readings": [],
    }  # fmt: skip


def span_of(first: str, last: str) -> OneDate:
    """A date from the first to the last of these."""
    return date_as(first if first == last else first + "/" + last, first, last)


def season_of(year: str, season: int) -> OneDate:
    """A season (21 to 24) of a year."""
    months = SEASON_MONTHS[season - SPRING]
    return date_as(year + "-" + padded(season, 2), year + "-" + months[0], year + "-" + months[1])


def no_date() -> OneDate:
    """What a text that is not EDTF comes to."""
    out = date_as("", "", "")
    out["problem"] = "unread"
    return out


def bare(text: str) -> str:
    """A part of an EDTF text without its mark."""
    last = max(0, len(text) - 1)
    return text[0:last] if text != "" and text[last:] in MARKS else text


def mark_of(side: str) -> str:
    """The mark behind one date, "" for none."""
    return side[len(bare(side)) :]


def mark_of_date(about: bool, doubt: bool) -> Mark:
    """EDTF's sign for a date that is about, uncertain, or both."""
    if about:
        return "%" if doubt else "~"
    return "?" if doubt else ""


def both_marks(first: str, second: str) -> Mark:
    """The mark that says what two marks say."""
    both = first + second
    return mark_of_date("~" in both or "%" in both, "?" in both or "%" in both)


def unspecified(text: str) -> OneDate:
    """EDTF with figures left open: 195X, 19XX, 1957-XX, 1957-05-XX, 1957-XX-XX."""
    year = text[0:4]
    if text[4:] in ["-XX", "-XX-XX"] and is_figures(year):
        return date_as(text, year, year)
    if text[7:] == "-XX":
        month = one_edtf(text[0:7])
        return month if month["problem"] != "" else date_as(text, text[0:7], text[0:7])
    if len(text) == 4 and is_figures(text[0:3]) and text[3:] == "X":
        return date_as(text, text[0:3] + "0", text[0:3] + "9")
    if len(text) == 4 and is_figures(text[0:2]) and text[2:] == "XX":
        return date_as(text, text[0:2] + "00", text[0:2] + "99")
    return no_date()


def one_edtf(text: str) -> OneDate:
    """One date that is written in EDTF and has no mark."""
    year = text[0:4]
    month = text[5:7]
    day = text[8:10]
    if len(text) > 3 and text[len(text) - 1 :] == "X":
        return unspecified(text)
    if len(year) != 4 or not is_figures(year) or len(text) not in [4, 7, 10]:
        return no_date()
    if len(text) == 4:
        return date_as(text, text, text)
    if text[4:5] != "-" or len(month) != 2 or not is_figures(month):
        return no_date()
    number = int(month)
    if len(text) == 7 and SPRING <= number < SPRING + 4:
        return season_of(year, number)
    if not 1 <= number <= 12:
        return no_date()
    if len(text) == 7:
        return date_as(text, text, text)
    if text[7:8] != "-" or len(day) != 2 or not is_figures(day):
        return no_date()
    if not 1 <= int(day) <= days_in(int(year), number):
        return no_date()
    return date_as(text, text, text)


def sides_of(text: str) -> list[str]:
    """The parts of an EDTF text between slashes."""
    out: list[str] = []
    side = ""
    for c in text:
        if c == "/":
            out.append(side)
            side = ""
        else:
            side = side + c
    out.append(side)
    return out


def is_open(side: str) -> bool:
    """Whether an end of a span is open or unknown."""
    return side in ["", ".."]


def is_season(text: str) -> bool:
    """Whether one date that is EDTF, without its mark, is a season."""
    return len(text) == 7 and text[5:6] == "2"


def marked_edtf(text: str) -> OneDate:
    """One date that is written in EDTF, with or without a mark; a season takes none."""
    out = one_edtf(bare(text))
    return no_date() if bare(text) != text and is_season(bare(text)) else out


def before_begin(first: str, last: str) -> bool:
    """Whether a date that ends with `last` ends before `first` begins."""
    return last[0 : len(first)] < first[0 : len(last)]


def written_edtf(text: str) -> OneDate:
    """A text that is EDTF already; problem "unread" for any other, "reversed" for a span that ends
    before it begins. edtf is the text, marks and all.
    """
    sides = sides_of(text)
    if len(sides) == 1:
        date = marked_edtf(text)
        return date if date["problem"] != "" else date_as(text, date["first"], date["last"])
    if len(sides) != 2 or (is_open(sides[0]) and is_open(sides[1])):
        return no_date()
    ends: list[OneDate] = []
    for side in sides:
        end = date_as("", "", "") if is_open(side) else marked_edtf(side)
        if end["problem"] != "" or is_season(side):
            return no_date()
        ends.append(end)
    out = date_as(text, ends[0]["first"], ends[1]["last"])
    if out["first"] != "" and out["last"] != "" and before_begin(out["first"], out["last"]):
        out["problem"] = "reversed"
    return out


def just_before(date: str) -> str:
    """The year, month or day before this one; "" before the year 1."""
    year = int(date[0:4])
    month = int(date[5:7]) if len(date) > 4 else 1
    day = int(date[8:10]) if len(date) > 7 else 1
    if day > 1:
        return date[0:8] + padded(day - 1, 2)
    if month > 1:
        earlier = date[0:5] + padded(month - 1, 2)
        return earlier + "-" + padded(days_in(year, month - 1), 2) if len(date) > 7 else earlier
    return padded(year - 1, 4) + ["", "-12", "-12-31"][(len(date) - 4) // 3] if year > 1 else ""


def just_after(date: str) -> str:
    """The year, month or day after this one; "" after the year 9998."""
    year = int(date[0:4])
    if len(date) > 7 and int(date[8:10]) < days_in(year, int(date[5:7])):
        return date[0:8] + padded(int(date[8:10]) + 1, 2)
    first = "-01" if len(date) > 7 else ""
    if len(date) > 4 and int(date[5:7]) < 12:
        return date[0:5] + padded(int(date[5:7]) + 1, 2) + first
    later = padded(year + 1, 4) if year < 9999 else ""
    return later + "-01" + first if len(date) > 4 and later != "" else later
