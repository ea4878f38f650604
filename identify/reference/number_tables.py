"""The yearly series of fixtures/marks, as the engine (core/dated_numbers.py) takes them."""

from functools import cache

from identify.core.types.marks import NumberTables, StateFrom
from identify.reference.csv_files import read_table
from identify.reference.entries import MEMORY, MarkRow, NumberRow, Series
from identify.reference.mark_ends import years_of
from identify.reference.marks import read_marks
from identify.reference.mistakes import Mistake, PackError
from identify.reference.years import read_years
from identify.shipped import MARKS

SERIES = "series.csv"
NUMBERS = "numbers"


@cache
def all_series() -> list[Series]:
    """The series there are tables of. Raises PackError."""
    mistakes: list[Mistake] = []
    series = read_table(MARKS, Series, [], mistakes, file=SERIES) or []
    if mistakes:
        raise PackError(mistakes)
    return series


@cache
def yearly_table(series: str) -> list[NumberRow]:
    """The numbers of a series, lowest first. Raises PackError."""
    mistakes: list[Mistake] = []
    file = f"{NUMBERS}/{series}.csv"
    rows = read_table(MARKS, NumberRow, [], mistakes, file=file) or []
    if mistakes:
        raise PackError(mistakes)
    return rows


def _first(row: NumberRow) -> int:
    """The year of the numbers from here on: 0 where none was given, -1 where none was yet."""
    if row.what == "limit":
        return -1
    return 0 if row.what == "unused" else int(read_years(row.year).earliest)


def _before(row: NumberRow) -> int:
    """The last year that a number below this one can be of, 0 where that is not known."""
    if not row.year:
        return 0
    return int(read_years(row.year).latest) - (2 if row.what == "first" else 1)


def _rows(rows: list[NumberRow]) -> list[list[int]]:
    """[number, first, before, memory] of each row."""
    return [[row.number, _first(row), _before(row), int(row.label == MEMORY)] for row in rows]


def _states(series: Series) -> list[StateFrom]:
    """The states of its numbers, as written "six 1; seven 1000000"."""
    pairs = [each.split() for each in series.wordings]
    return [{"state": state, "number": int(number)} for state, number in pairs]


def first_bars(state: str) -> MarkRow:
    """The row with the first year, in any country, of this state of the mark "barcode"."""
    rows = read_marks()[0].rows
    those = [row for row in rows if (row.feature, row.state) == ("barcode", state)]
    return min(those, key=lambda row: (years_of(row)[0], row.from_label == MEMORY))


def _since(state: str) -> list[int]:
    """The first year of a kind of barcode, and whether that is from memory."""
    row = first_bars(state)
    return [int(years_of(row)[0]), int(row.from_label == MEMORY)]


def number_tables() -> NumberTables:
    """The tables that the engine reads numbers by. Raises PackError."""
    return {
        "series": [
            {
                "id": each.id,
                "country": each.country,
                "kind": each.kind,
                "name": each.name,
                "done": each.done,
                "example": each.example,
                "note": each.note,
                "states": _states(each),
                "rows": _rows(yearly_table(each.id)),
                "sources": [],  # mark_tables() has them
            }
            for each in all_series()
        ],
        "barcode": {"twelve": _since("twelve"), "thirteen": _since("thirteen")},
    }
