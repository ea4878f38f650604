"""Numbers that say a year: the tables for the engine, and what it finds in words.

The rules are in core/dated_numbers.py; the tables come from fixtures/marks.
"""

from functools import cache

import msgspec

from identify.core.dated_numbers import read_number
from identify.core.types.numbers import DatedNumber, NumberSort, NumberTables
from identify.reference.csv_files import read_table
from identify.reference.marks import read_marks, years_of
from identify.reference.mistakes import Mistake, PackError, quoted
from identify.reference.records import MEMORY, MarkRow, NumberRow
from identify.reference.years import read_years
from identify.shipped import MARKS

SERIES = {"design": "designs_gb.csv", "patent": "patents_gb.csv"}
CALLED = {
    "design": ("registered design", "registered", "821265"),
    "patent": ("patent", "published", "654321 or 1234/09"),
}


class NumberError(ValueError):
    """A number that says nothing about a year, with what is wrong and what would be right."""


class Dated(msgspec.Struct, frozen=True):
    """The years of a number, `last` None where it may be any later one, and both in words.

    A piece that bears the number was made in `first` or later. `rows`: those of the table that say
    so, none for a number that comes with its year.
    """

    first: int
    last: int | None
    text: str
    rows: tuple[NumberRow, ...] = ()


@cache
def yearly_table(file: str) -> list[NumberRow]:
    """A yearly series of fixtures/marks, lowest number first. Raises PackError."""
    mistakes: list[Mistake] = []
    rows = read_table(MARKS, NumberRow, [], mistakes, file=file) or []
    if mistakes:
        raise PackError(mistakes)
    return rows


def _series(rows: list[NumberRow]) -> list[list[int]]:
    """The rows as the engine takes them: [number, first, before, memory]."""
    out = []
    for row in rows:
        first = 0 if row.what == "unused" else int(read_years(row.year).earliest)
        before = 0
        if row.year:
            before = int(read_years(row.year).latest) - (2 if row.what == "first" else 1)
        out.append([row.number, first, before, int(row.label == MEMORY)])
    return out


def first_bars(state: str) -> MarkRow:
    """The row with the first year, in any country, of this state of the mark "barcode"."""
    rows = read_marks()[0].rows
    those = [row for row in rows if (row.feature, row.state) == ("barcode", state)]
    return min(those, key=lambda row: (years_of(row)[0], row.label == MEMORY))


def _since(state: str) -> list[int]:
    """The first year of a kind of barcode, and whether that is from memory."""
    row = first_bars(state)
    return [int(years_of(row)[0]), int(row.label == MEMORY)]


@cache
def number_tables() -> NumberTables:
    """The tables that the engine reads numbers by. Raises PackError."""
    return {
        "design": _series(yearly_table(SERIES["design"])),
        "patent": _series(yearly_table(SERIES["patent"])),
        "barcode": {"twelve": _since("twelve"), "thirteen": _since("thirteen")},
    }


def _wrong(found: DatedNumber, what: str) -> str:
    """What is wrong with a number, and what would be right."""
    name, _, example = CALLED[what]
    figures, number, near = found["figures"], found["number"], found["near"]
    match found["problem"]:
        case "empty":
            return f"There is no number. Write the figures of the {name}, such as {example}."
        case "letters":
            meant = f" With those it is {found['meant']}." if found["meant"] else ""
            return (
                f"{quoted(figures)} is not the number of a {name}, which is figures only, such as "
                f"{example}. Look again for I read for 1, O for 0 and S for 5.{meant}"
            )
        case "long":
            return (
                f"{quoted(figures)} has {len(figures)} figures; the number of a {name} has at "
                "most 8. Read it again."
            )
        case "year":
            return (
                f"British patents were numbered by the year from {near[0]} to {near[1]}, "
                f"not in {found['first']}. Read the year again."
            )
        case "unused":
            again = f" and went on at {near[1]}" if near[1] else ""
            return (
                f"No {name} has the number {number}: the series ended before {near[0]}{again}. "
                "Read the figures again."
            )
    if what == "patent":
        return (
            f"A British patent number below {near[0]} says no year by itself: before {near[1]} "
            f"numbers began again at 1 each year. Add the year, as in {number}/09."
        )
    return f"The numbers of {name}s begin at {near[0]}; {number} is too low."


def _dated(what: NumberSort, text: str) -> Dated:
    """The years of a number of a series. Raises NumberError."""
    found = read_number(number_tables(), what, text)
    if found["problem"]:
        raise NumberError(_wrong(found, what))
    number, first, last = found["number"], found["first"], found["last"] or None
    later = f"the piece is of {first} or later."
    if found["kind"] == "application":
        return Dated(first, last, f"Application {number} of {first}; {later}")
    name, done, _ = CALLED[what]
    if last is None:
        when = f"in {first} or later"
    else:
        when = f"in {first}" if last == first else f"between {first} and {last}"
    note = " The table is from memory." if found["memory"] else ""
    rows = yearly_table(SERIES[what])[found["row"] : found["row"] + 2]
    sentence = f"{name.capitalize()} {number} was {done} {when}; {later}{note}"
    return Dated(first, last, sentence, tuple(rows))


def design_years(text: str) -> Dated:
    """When a British registered design was registered. Raises NumberError."""
    return _dated("design", text)


def patent_years(text: str) -> Dated:
    """When a British patent was published, or applied for where a year is given (1234/09).

    Two figures of a year are read as 19..; raises NumberError.
    """
    return _dated("patent", text)
