"""What goes between a file of the collector's and the app: columns, rows, and what becomes of them.

README.md has the routes that these go through.
"""

from typing import Any, Literal, NotRequired, TypedDict

from identify.core.types.records import Chance

# A record or some of its fields by name, before it is known to be one: any JSON
Fields = dict[str, Any]


class AskedColumn(TypedDict):
    """A column as the person has it."""

    name: str
    field: str  # the id of a field, "" is left out
    # of a column of dates: day or month (first in 12/5/57), ask (nothing in the column tells),
    # mixed (both come up), "" (does not matter)
    order: str


class ReadColumn(AskedColumn):
    """A column with a guessed field."""

    sure: float
    why: str


class FieldName(TypedDict):
    """What a column can be."""

    id: str
    name: str  # in words


class CellsRow(TypedDict):
    """A row of a file."""

    row: int  # in the file, from 1
    cells: list[str]


class KeyedRow(CellsRow):
    """A row with the name by which a later import knows it again."""

    key: str


class LeftOutRow(CellsRow):
    """A row that could not be imported, with what is wrong."""

    wrong: list[str]


class ReadTable(TypedDict):
    """A file as a table."""

    sheet: str
    sheets: list[str]  # empty for a text file
    header: int  # the row with the names of the columns, 0 for none
    own: bool  # this app wrote it, and the columns are sure
    type: str  # what the rows seem to be; "" for a file of its own, whose rows say so
    columns: list[ReadColumn]
    fields: list[FieldName]
    rows: list[CellsRow]
    notes: list[str]  # how the file was taken, and what is odd about it


class Keys(TypedDict):
    """The keys of all rows of a table."""

    keys: list[str]
    notes: list[str]  # numbers that come twice


How = Literal["number", "misread", "name", "number and name"]  # what an item was known by


class Offer(TypedDict):
    """An item that a row may mean."""

    pack: str
    item: str  # its number
    name: str
    sure: float
    how: How
    of: list[Chance]
    variant: str  # id, where it is known
    which: str  # the variant's name
    sets: Fields  # what it puts into a record


class RowProblem(TypedDict):
    """Something of a row that could not be taken as it is."""

    column: str  # its name, "" for the row
    sentence: str  # names the row and the column


class FieldClash(TypedDict):
    """A field that was changed in the app and in the file."""

    field: str
    ours: Any
    theirs: Any
    cell: str
    sentence: str


class SameRecord(TypedDict):
    """What an import changes in a record that is there already."""

    id: str
    sets: Fields
    before: Fields
    clashes: list[FieldClash]


class Outcome(TypedDict):
    """What becomes of a row."""

    row: int
    key: str
    failed: str  # "", or a sentence: no record can be made of this row
    record: Fields | None  # complete but for id, made and changed where it is new
    if_chosen: NotRequired[Fields | None]  # of a failed row: what to write once one is chosen
    candidates: list[Offer]  # the best three
    none: Fields  # what is put into a record where none of them is taken
    chosen: int  # place in candidates, -1: none is sure enough
    sure: float  # of the chosen one, 0 where none is
    problems: list[RowProblem]
    same: SameRecord | None
