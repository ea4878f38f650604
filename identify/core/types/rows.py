"""A range as rows: what a folder of files and the records of a range of one's own both come to, and
what is compiled. A table is a list of rows; a row is named by its place in it, from 0 on.
"""

from typing import Annotated, Any, Literal, NotRequired, TypedDict

from .gate import Group
from .pack import Moving, Needs, Rows, Span

TextPair = Annotated[list[Any], str, str]
# a feature, and what is written of it: a state, states parted by |, or ? for not recorded
CellText = Annotated[list[Any], str, str]
StatesOf = Annotated[list[Any], str, list[str]]  # a feature, and states of it


class RangeRow(TypedDict):
    """The range itself."""

    name: str
    maker: str
    gauge_mm: float
    gauge: str  # "22.5 mm", "" not said
    scale: str
    country: str
    years: str  # EDTF: its life
    about: str
    material: str
    by: NotRequired[str]  # who wrote it down, "" not said
    invented: bool


class KindRow(TypedDict):
    """A sort of piece."""

    id: str
    name: str
    plural: str
    caption: str  # of its card, "" the name
    complete: str


class PartRow(TypedDict):
    """A part that can be swapped."""

    id: str
    name: str
    swap: float
    replaced: str
    altered: str


class CautionRow(TypedDict):
    """Something to take care with."""

    kinds: list[str]  # empty: every kind
    text: str


class StateRow(TypedDict):
    """What can be seen."""

    id: str
    name: str
    caption: str
    look: str  # in a portrait: a word of its layer (core/looks.py), "" none


class FeatureRow(TypedDict):
    """Something to look at."""

    id: str
    name: str
    title: str  # of its card, "" the name
    question: str
    where: str
    part: str  # "" the piece itself
    seconds: float
    needs: Needs
    every: bool  # every kind has it
    kinds: list[str]  # the kinds that have it, where not every one does
    when: list[StatesOf]  # only where these features have one of these states
    mistaken: list[TextPair]
    states: list[StateRow]
    layer: str  # of a portrait, "" none
    unseen: str  # why it is not in a portrait
    seen: float  # of a date mark: the share of the pieces that carry such a mark


class SourceRow(TypedDict):
    """Who says so."""

    id: str
    what: str
    year: str
    trust: float


class ItemRow(TypedDict):
    """What has a number in the catalogue."""

    number: str
    name: str
    kind: str
    years: str
    source: str
    other_years: list[TextPair]  # [source, years]
    formation: str
    contains: list[str]
    carried: list[str]
    note: str
    cells: list[CellText]


class VariantRow(TypedDict):
    """A version of an item."""

    id: str
    item: str  # number
    name: str
    years: str
    source: str
    other_years: list[TextPair]
    common: float
    note: str
    cells: list[CellText]


class ChangeRow(TypedDict):
    """A running change. Of a date mark also who says when it ended, and which ends are hard."""

    feature: str
    state: str
    since: str
    until: str
    kinds: list[str]
    items: list[str]
    source: str
    other_from: list[TextPair]
    note: str
    to_source: str
    hard: list[bool]


class MoveRow(TypedDict):
    """What was called otherwise before, or is no more."""

    what: Moving
    was: str
    now: str
    note: str


class DrawingRow(TypedDict):
    """A drawing (SVG) or a photo (a data: URL) by its name."""

    id: str
    text: str


class RangeRows(TypedDict):
    """A whole range."""

    id: str
    range: RangeRow
    kinds: list[KindRow]
    parts: list[PartRow]
    cautions: list[CautionRow]
    features: list[FeatureRow]
    sources: list[SourceRow]
    items: list[ItemRow]
    variants: list[VariantRow]
    changes: list[ChangeRow]
    moves: list[MoveRow]
    drawings: list[DrawingRow]


Table = Literal[
    "range", "kinds", "parts", "cautions", "features", "sources", "items", "variants", "changes",
    "moves", "drawings",
]  # fmt: skip

Wrong = Literal[
    "twice", "unknown", "complete", "life", "unread", "day", "reversed", "outside", "unsourced",
    "no years", "meaning", "state twice", "one state", "no kind", "no states", "itself", "circle",
    "no variant", "outside item", "question mark", "cell twice", "not of kind", "no such there",
    "change kind", "change item", "late", "there still", "no drawing", "none undrawn",
    "no such drawing", "unused", "too many", "kept id",
]  # fmt: skip


class Spot(TypedDict):
    """A field of a row; "" the row as a whole."""

    table: Table
    row: int
    field: str


class RowMistake(TypedDict):
    """What is wrong, and where: a field of a row. The words are found by who shows it."""

    table: Table
    row: int
    state: int  # of a feature: the place of the state it is about, else -1
    field: str
    why: Wrong
    said: list[str]  # the texts it is about
    known: list[str]  # what would have been known, where something is not
    other: int  # the row that it does not go with, -1 for none


class Checked(TypedDict):
    """A range that is looked through, and the mistakes found so far."""

    rows: RangeRows
    unread: list[str]  # the tables that could not be read at all
    mistakes: list[RowMistake]
    known_life: bool  # whether its life is two plain years
    first: int
    last: int
    features: dict[str, int]  # the places of features and items by their names
    items: dict[str, int]


class StateShare(TypedDict):
    """The share of a state."""

    state: str
    share: float


class Window(TypedDict):
    """The years of a wording, in decimal years, and how its weight falls beyond soft ends."""

    state: str
    start: float
    end: float
    rise: int
    fall: int
    low_before: float
    low_after: float


class MarkRowUsed(TypedDict):
    """A wording of a date mark: where and when, and the running change that it is in a range."""

    countries: list[str]
    window: Window
    change: ChangeRow
    sources: list[SourceRow]  # those of its ends


class MarkUsed(TypedDict):
    """A date mark as it is merged into ranges."""

    feature: FeatureRow
    parts: list[str]  # the first of these that a range has carries it
    rows: list[MarkRowUsed]
    drawings: list[DrawingRow]


class MarkYears(TypedDict):
    """The years of the wordings of a date mark that is merged into a range."""

    feature: str
    windows: list[Window]
    seen: float


class MergedRows(TypedDict):
    """A range with the date marks of its country."""

    rows: RangeRows
    marks: list[MarkYears]


class YearBounds(TypedDict):
    """What one EDTF text says, in decimal years: 1957 is 1957.0 to 1958.0.

    first, last: the strict bounds. earliest, latest: with what "about" and "uncertain" add.
    start, end: the bounds between which the beginning, and the end, are evenly likely. What is
    open is beyond -FAR or FAR (year_bounds.py).
    """

    problem: Literal["", "unread", "day", "reversed"]
    first: float
    last: float
    earliest: float
    latest: float
    start: list[float]
    end: list[float]


class WeighedYears(TypedDict):
    """What one source says, with its trust."""

    trust: float
    years: YearBounds


class CellTable(TypedDict):
    """The different cells of one feature; the first is not recorded."""

    states: list[list[int]]
    shares: list[list[float]]
    at: dict[str, int]


class ChangeGroup(TypedDict):
    """Running changes that count together, and the code of each year; -1 not worked out yet."""

    feature: int
    places: list[int]
    codes: list[int]


class Split(TypedDict):
    """What splitting the variants of a range keeps to hand."""

    rows: RangeRows
    marks: list[MarkYears]
    first: int
    last: int
    states: list[list[str]]  # by feature, the kind first
    order: list[int]  # the features, each after those that it depends on
    parents: list[list[int]]  # by feature: those it depends on
    wanted: list[list[list[int]]]  # and the states they must have
    splits: list[int]  # by feature: 1 where others depend on it
    having: list[list[int]]  # by feature and kind: 1 where it has it
    mark: list[int]  # by feature: the place in `marks`, -1
    changes: list[list[int]]  # by feature
    cells: list[CellTable]
    groups: list[ChangeGroup]
    group_at: dict[str, int]
    usual: list[list[int]]  # by mark and year: the code
    middles: list[float]  # by change
    trust: dict[str, int]  # the places of sources, items, kinds and features by their names
    items: dict[str, int]
    kinds: dict[str, int]
    features: dict[str, int]


class Made(TypedDict):
    """What part of a year's production is like: a code for each feature, and its share."""

    codes: list[int]
    weight: float


class Issue(TypedDict):
    """A code for each feature, and the weight in each year of the range's life."""

    codes: list[int]
    years: list[float]


class Issues(TypedDict):
    """The issues of a variant; or the features that split it into too many."""

    issues: list[Issue]
    too_many: list[int]


class IssueTable(TypedDict):
    """The issues of all variants: rows, spans, and by feature the code of each row."""

    rows: Rows
    spans: list[Span]
    codes: list[list[int]]


class LikeTerm(TypedDict):
    """A feature, the state it is held against, the chance of what is seen if alike, and if not."""

    feature: int
    state: int
    same: float
    apart: float


class NearIssue(TypedDict):
    """An issue near one that is left out."""

    prior: float
    terms: list[LikeTerm]


class Usable(TypedDict):
    """The rows of a range that can be compiled, its first and last year (0 where no year is named
    at all), and what was wrong with the others.
    """

    rows: RangeRows
    first: int
    last: int
    mistakes: list[RowMistake]


class RowFault(TypedDict):
    """What does not go together, at a record of a range of one's own."""

    id: str  # of the record; of the range where it is about none
    why: str  # as in RowMistake; "number twice" and "no item" besides
    said: list[str]
    other: str  # id of the record that it does not go with, "" for none
    field: str


class OwnRecords(TypedDict):
    """The records of a range of one's own by sort, and what each is called, by its id."""

    whole: Group
    records: list[Group]
    kinds: list[Group]
    parts: list[Group]
    features: list[Group]
    states: list[Group]
    items: list[Group]
    sources: list[Group]
    kind_names: dict[str, str]
    part_names: dict[str, str]
    feature_names: dict[str, str]
    state_names: dict[str, str]
    state_features: dict[str, str]  # by the id of a state, that of its feature
    item_names: dict[str, str]
    source_names: dict[str, str]


class RecordsMade(TypedDict):
    """The records that rows are made into, while that goes on."""

    range: str  # id of the range
    there: dict[str, Group]  # the records that there are, by sort and name
    used: dict[str, int]  # which of them belong to a row
    ids: dict[str, str]  # of the records made, by sort and name
    fresh: list[str]  # ids for new ones
    next: int  # of the fresh ids
    at: int  # the place of the last one
    live: dict[str, int]  # the ids of the features that the range has
    records: list[Group]


class BothRanges(TypedDict):
    """Two halves of a range while they are put together."""

    rows: RangeRows  # mine, and then both
    who: str  # the id of the source that stands for the other collector
    name: str
    sources: dict[str, str]  # what their sources are called in mine
    variants: dict[str, str]  # and their variants
    added: int  # items that came in
    differ: int  # in how many places they say different things
