"""What a number on a piece says about its year: British registered designs and patents."""

import re
from functools import cache

import msgspec

from identify.reference.csv_files import read_table
from identify.reference.marks import MARKS
from identify.reference.mistakes import Mistake, PackError, quoted
from identify.reference.records import MEMORY, NumberRow
from identify.reference.years import read_years

LEAD = re.compile(
    r"\A(?:(?:regd?|registered|rd|des|design|no|nos|number|pat|patent|british|gb|uk|"
    r"prov|provisional|app|appl|application|applied|for)\b[.:]?\s*|gb\s*(?=\d))*",
    re.I,
)
FIGURES = re.compile(r"\d+|\d{1,3}(?:[ ,]\d{3})+", re.ASCII)
OF_YEAR = re.compile(r"(\d{1,6})\s*(?:/|\bof\b)\s*(\d{4}|\d\d)", re.ASCII)
LONGEST = 8  # figures
YEARLY = range(1852, 1979)  # years in which British patent applications began again at 1


class NumberError(ValueError):
    """A number that says nothing about a year, with what is wrong and what would be right."""


class Dated(msgspec.Struct, frozen=True):
    """The years of a number, `last` None where it may be any later one, and both in words.

    A piece that bears the number was made in `first` or later.
    """

    first: int
    last: int | None
    text: str


@cache
def yearly_table(file: str) -> list[NumberRow]:
    """A yearly series of fixtures/marks, lowest number first. Raises PackError."""
    mistakes: list[Mistake] = []
    rows = read_table(MARKS, NumberRow, [], mistakes, file=file) or []
    if mistakes:
        raise PackError(mistakes)
    return rows


def _figures(text: str, what: str, example: str) -> int:
    """The number after words such as "Regd. No."."""
    rest = LEAD.sub("", text.strip()).strip()
    if not rest:
        raise NumberError(
            f"There is no number. Write the figures of the {what}, such as {example}."
        )
    if not FIGURES.fullmatch(rest):
        raise NumberError(
            f"{quoted(rest)} is not the number of a {what}, which is figures only, such as "
            f"{example}. Look again for I read for 1, O for 0 and S for 5."
        )
    figures = re.sub(r"[ ,]", "", rest)
    if len(figures) > LONGEST:
        raise NumberError(
            f"{quoted(figures)} has {len(figures)} figures; the number of a {what} has at most "
            f"{LONGEST}. Read it again."
        )
    return int(figures)


def _between(number: int, rows: list[NumberRow], what: str) -> tuple[int, int | None, bool]:
    """First and last year of a number, and whether that is from memory. Raises NumberError."""
    before = [row for row in rows if row.number <= number]
    after = next((row for row in rows if row.number > number), None)
    if not before:
        raise NumberError(f"The numbers of {what}s begin at {rows[0].number}; {number} is too low.")
    row = before[-1]
    if row.what == "unused":
        again = f" and went on at {after.number}" if after else ""
        raise NumberError(
            f"No {what} has the number {number}: the series ended before {row.number}{again}. "
            "Read the figures again."
        )
    last = None
    if after is not None and after.year:
        last = int(read_years(after.year).latest) - (2 if after.what == "first" else 1)
    memory = MEMORY in (row.label, after.label if after else "")
    return int(read_years(row.year).earliest), last, memory


def _dated(number: int, file: str, what: str, done: str) -> Dated:
    first, last, memory = _between(number, yearly_table(file), what)
    if last is None:
        when = f"in {first} or later"
    else:
        when = f"in {first}" if last == first else f"between {first} and {last}"
    note = " The table is from memory." if memory else ""
    text = (
        f"{what.capitalize()} {number} was {done} {when}; the piece is of {first} or later.{note}"
    )
    return Dated(first, last, text)


def design_years(text: str) -> Dated:
    """When a British registered design was registered. Raises NumberError."""
    number = _figures(text, "registered design", "821265")
    return _dated(number, "designs_gb.csv", "registered design", "registered")


def patent_years(text: str) -> Dated:
    """When a British patent was published, or applied for where a year is given (1234/09).

    Two figures of a year are read as 19..; raises NumberError.
    """
    of_year = OF_YEAR.fullmatch(LEAD.sub("", text.strip()))
    if of_year:
        year = int(of_year[2]) if len(of_year[2]) == 4 else 1900 + int(of_year[2])
        if year not in YEARLY:
            raise NumberError(
                f"British patents were numbered by the year from {YEARLY[0]} to {YEARLY[-1]}, "
                f"not in {year}. Read the year again."
            )
        text = f"Application {int(of_year[1])} of {year}; the piece is of {year} or later."
        return Dated(year, year, text)
    number = _figures(text, "patent", "654321 or 1234/09")
    first = yearly_table("patents_gb.csv")[0]
    if number < first.number:
        raise NumberError(
            f"A British patent number below {first.number} says no year by itself: before "
            f"{first.year} numbers began again at 1 each year. Add the year, as in {number}/09."
        )
    return _dated(number, "patents_gb.csv", "patent", "published")
