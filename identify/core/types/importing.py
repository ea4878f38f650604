"""A collector's list on its way into the collection: its table, its columns, what each row does."""

from typing import Any, Literal, NotRequired, TypedDict

from .engine import Engine
from .records import Chance

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


class FileTable(TypedDict):
    """What a file holds, empty rows left out; with something in `wrong` nothing else counts."""

    rows: list[CellsRow]
    notes: list[str]  # how the file was taken, and what is odd about it
    sheet: str
    sheets: list[str]  # empty for a text file
    wrong: str  # why it cannot be taken at all, "" where it can


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


class Headed(TypedDict):
    """A table with the names of its columns."""

    header: int
    own: bool
    names: list[str]
    rows: list[CellsRow]
    notes: list[str]


class ColumnShares(TypedDict):
    """How large a share of a column's cells each of these fields could hold; none: no cells."""

    number: float
    price: float
    when: float
    condition: float
    boxed: float
    name: float
    none: int  # 1: there are no cells


class ColumnOffer(TypedDict):
    """A field that a column may be."""

    sure: float
    place: int
    field: str
    why: str


class CellsSaid(TypedDict):
    """The cells of a row by what they say, before it is a record."""

    field: str
    name: str  # of the column
    cell: str
    order: str


class RowName(TypedDict):
    """What a row may be known by again."""

    own: str  # the id of a record, in a file that this app wrote
    numbered: str  # the list's own number of the row
    number: str
    said: str  # number, range and words in one


class Keys(TypedDict):
    """The keys of all rows of a table."""

    keys: list[str]
    notes: list[str]  # numbers that come twice


class CellRead(TypedDict):
    """What a cell says; with something in `wrong` that is a sentence about it, and no more."""

    value: Any
    more: str  # what the value leaves out of the cell
    wrong: str


class BoxRead(TypedDict):
    """What a cell says of a box."""

    has: str
    condition: str
    more: str
    wrong: str


class Entry(TypedDict):
    """One item: its pack and place there, and what is compared."""

    pack: str
    place: int
    number: str
    name: str
    plain: str
    unzeroed: str
    canonical: str
    carried: list[str]
    words: list[int]  # of the name and the kind, each once
    spelt: list[int]  # the words of the name alone
    letters: int  # of those
    size: float
    sum: float


class WordMeant(TypedDict):
    """A known word that a text may mean."""

    word: int
    like: float  # 0 to 1


class StateWords(TypedDict):
    """A state with what must stand in a text for it: each list of words is enough."""

    feature: int
    state: str
    phrases: list[list[str]]
    bare: list[str]  # words that name it without saying what of, if nothing else uses them


class Wording(TypedDict):
    """What texts can say about the variants of one range."""

    states: list[StateWords]


class Reference(TypedDict):
    """All items of some ranges, with the weight of each word: the rarer, the more it says."""

    engines: list[Engine]
    entries: list[Entry]
    ranges: list[list[str]]  # of each engine, the words that name its range
    words: list[str]
    places: dict[str, int]  # of each word
    rarity: list[float]
    holders: list[list[int]]  # of each word, the entries that it is of
    near_at: dict[str, int]  # of each word that was looked up, its place in `near`
    near: list[list[WordMeant]]
    wordings: list[list[Wording]]  # of each engine, once it is asked for
    read_at: dict[str, int]  # of each text that was read, its place in `read`
    read: list[list[Chance]]  # the variants that it may mean


class Query(TypedDict):
    """What a row says of which item it is."""

    number: str
    name: str
    description: str
    range: str


class Clue(TypedDict):
    """What speaks for an item: a kind of evidence, and its size."""

    word: str
    size: float


Found = Literal["number", "misread", "name", "number and name"]  # what an item was known by


class ItemMeant(TypedDict):
    """An item that a row may mean."""

    entry: int  # place in the reference
    sure: float
    how: Found


class Spoken(TypedDict):
    """The known words that a text means."""

    words: list[int]
    likes: list[float]  # of each word of the reference, 0 to 1
    size: float


class Hit(TypedDict):
    """A state that a text names."""

    feature: int
    state: str


class NamedPart(TypedDict):
    """How many parts of a variant's name stand in a text, and whether all do."""

    count: int
    whole: int  # 1: all


class Offer(TypedDict):
    """An item that a row may mean, as it is offered."""

    pack: str
    item: str  # its number
    name: str
    sure: float
    how: Found
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


class RowSoFar(TypedDict):
    """A row while it is read as a piece, a want or a note."""

    reference: Reference
    sort: str
    row: KeyedRow
    texts: list[CellsSaid]
    currency: str
    problems: list[RowProblem]
    lines: list[str]  # of the notes
    cells: dict[str, str]
    values: Fields
    heads: dict[str, str]  # field of the record -> name of its column


class Changes(TypedDict):
    """What an import changes in a record, and the fields that were changed on both sides."""

    sets: Fields
    both: list[str]


class OwnRecord(TypedDict):
    """The record of a row that this app wrote, and what was wrong: [[field, sentence]]."""

    record: Fields
    problems: list[list[str]]
    absent: list[str]  # fields that were not there when it was written
    wrong: str  # why it is no record, "" where it is one


class Further(TypedDict):
    """What the column "further" says."""

    fields: Fields
    absent: list[str]
    wrong: str


class Importing(TypedDict):
    """What is the same for all rows."""

    reference: Reference
    sort: str  # piece, want or note; "" for a file that this app wrote
    currency: str  # the one meant where none is written
    columns: list[AskedColumn]
