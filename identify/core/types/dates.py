"""Dates and years in words, and what reading them comes to."""

from typing import Literal, TypedDict

# which figure of 12/5/57 is taken as the day: the first, the second, or neither is known
DayOrder = Literal["day", "month", ""]

# unread (not understood) · order (the day and the month cannot be told apart) · month (there is no
# such month) · day (the month has no such day) · reversed (it ends before it begins)
DateProblem = Literal["", "unread", "order", "month", "day", "reversed"]

# ~ (about), ? (uncertain), % (both), as EDTF writes them
Mark = Literal["", "~", "?", "%"]


class Life(TypedDict):
    """The years in which a year of two figures is looked for; 0 and 0 for any."""

    first: int
    last: int


class DateToken(TypedDict):
    """A word, a number or a sign of a date by what it does there."""

    role: str  # one of those in date_tokens.py
    value: int  # of a month, a season, a part of a decade or year, a decade
    text: str  # as typed, in capitals


class PhraseEnd(TypedDict):
    """Several words that are one, and where what comes after them begins."""

    role: str  # "" for none
    end: int


class OneDate(TypedDict):
    """One date as it was written; with a problem nothing but `why` and `readings` counts."""

    edtf: str  # without its mark
    first: str  # the first year, month or day of it: YYYY, YYYY-MM or YYYY-MM-DD, "" for open
    last: str
    mark: Mark
    problem: DateProblem
    why: str  # a sentence on the problem, "" where there is none to be said
    readings: list[str]  # EDTF: what it can be


class Trimmed(TypedDict):
    """Tokens without those for "about" and "perhaps", and the mark that they make."""

    tokens: list[DateToken]
    mark: Mark


class ReadDate(TypedDict):
    """A date or a span of dates as it was read."""

    edtf: str  # "" with a problem
    problem: DateProblem
    why: str  # what is wrong in a sentence, "" for nothing
    readings: list[str]  # EDTF: the two days that 12/5/57 can be, where the order is not known
