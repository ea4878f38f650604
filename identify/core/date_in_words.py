"""Dates as they are kept (EDTF) in the words that are shown, which read back as the same date
(dates.py and one_date.py read what is typed, such as 12/5/57).
"""

from .edtf import SPRING, bare, both_marks, is_open, mark_of, sides_of, written_edtf

MONTH_NAMES = [
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
]  # fmt: skip
SEASON_NAMES = ["spring", "summer", "autumn", "winter"]


def month_name(month: int) -> str:
    """The name of a month, 1 to 12."""
    return MONTH_NAMES[month - 1]


def month_words(year: str, month: str) -> str:
    """A month or a season (01 to 12, 21 to 24, XX) of a year."""
    if month == "XX":
        return year
    number = int(month)
    if number > len(MONTH_NAMES):
        return SEASON_NAMES[number - SPRING] + " " + year
    return month_name(number) + " " + year


def unmarked_words(text: str) -> str:
    """One date without a mark."""
    year = text[0:4]
    if year[2:] == "XX":
        return year[0:2] + "00 to " + year[0:2] + "99"
    if year[3:] == "X":
        decade = year[0:3] + "0"
        return decade + " to " + year[0:3] + "9" if year[2:3] == "0" else "the " + decade + "s"
    if len(text) == 4:
        return year
    month = month_words(year, text[5:7])
    if len(text) == 7 or text[8:10] == "XX":
        return month
    day = text[9:10] if text[8:9] == "0" else text[8:10]
    return day + " " + month


def mark_words(mark: str) -> str:
    """What a mark says, with a space behind it."""
    if mark == "":
        return ""
    return "about " if mark == "~" else "perhaps " if mark == "?" else "perhaps about "


def side_words(text: str) -> str:
    """One date, with what its mark says."""
    return mark_words(mark_of(text)) + unmarked_words(bare(text))


def span_words(first: str, last: str) -> str:
    """A span; a mark of both ends is said once, and the year of two months."""
    beginning = bare(first)
    end = bare(last)
    if beginning == end:
        return mark_words(both_marks(mark_of(first), mark_of(last))) + unmarked_words(beginning)
    if mark_of(first) != mark_of(last):
        return "from " + side_words(first) + " to " + side_words(last)
    months = len(beginning) == 7 and len(end) == 7 and "X" not in beginning + end
    begin = (
        month_name(int(beginning[5:7]))
        if months and beginning[0:4] == end[0:4]
        else unmarked_words(beginning)
    )
    return mark_words(mark_of(first)) + begin + " to " + unmarked_words(end)


def date_in_words(edtf: str) -> str:
    """What "1957~/1961~" says: "about 1957 to 1961". What is not EDTF stays as it is."""
    if written_edtf(edtf)["problem"] != "":
        return edtf
    sides = sides_of(edtf)
    if len(sides) == 1:
        return side_words(edtf)
    if is_open(sides[0]):
        return side_words(sides[1]) + " or earlier"
    if is_open(sides[1]):
        return side_words(sides[0]) + " or later"
    return span_words(sides[0], sides[1])
