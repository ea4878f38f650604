"""A collector's own list, a row an item or a variant, on its way into a range of their own."""

from typing import Annotated, Any, Literal, TypedDict

ListField = Literal[
    "", "number", "name", "kind", "variant", "years", "source", "note", "carried", "seen"
]
StatesSeen = Annotated[list[Any], str, list[str]]  # the id of a feature, and ids of its states


class Choice(TypedDict):
    """What a cell may mean: a state or a kind, and what it is called."""

    id: str
    texts: list[str]


class LookedAt(TypedDict):
    """A feature that a column may be of."""

    id: str
    texts: list[str]
    states: list[Choice]


class ColumnUse(TypedDict):
    """What a column is: a field, and for `seen` which feature and what its cells may mean."""

    field: ListField
    feature: str
    states: list[Choice]  # of a kind: the kinds
    sure: float  # of a guess, 0 to 1


class Unread(TypedDict):
    """A text that none of the states or kinds is called like."""

    column: int
    text: str


class LineRead(TypedDict):
    """What a row of the list says."""

    line: int  # from 0
    number: str
    name: str
    kind: str  # id, "" not said
    variant: str
    years: str
    source: str
    note: str
    carried: list[str]
    seen: list[StatesSeen]
    unread: list[Unread]


class ListedVariant(TypedDict):
    """A version, as the rows of one number differ."""

    line: int
    name: str
    years: str
    note: str
    seen: list[StatesSeen]


class ListedItem(TypedDict):
    """All rows of one number."""

    lines: list[int]
    number: str
    name: str
    kind: str
    years: str
    source: str
    note: str
    carried: list[str]
    seen: list[StatesSeen]  # on all of them
    variants: list[ListedVariant]
