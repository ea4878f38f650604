"""What a running change does to the pieces that are written down."""

from typing import TypedDict


class Saying(TypedDict):
    """From when on, as one source says: decimal years, evenly likely between the two."""

    source: str  # id of the record, "" nobody named
    since: str  # EDTF, "" from the start
    earliest: float
    latest: float


class Stretch(TypedDict):
    """A state of a feature, from when on, by each source, until when."""

    change: str  # id of the record
    state: str
    sayings: list[Saying]  # the change's own first
    end: float  # decimal year: its own end, or when the next one came


class ChangeEffect(TypedDict):
    """What a change says to each piece that it is on, by ids of items."""

    speaks: list[str]  # nothing is put down there: the change says what is seen
    silent: list[str]  # something is put down there, whatever the year
    told_by: list[str]  # it is what tells the variants of the piece: the change says nothing
    before: str  # the state that most of the silent ones have instead, "" none
    stretches: list[Stretch]  # of the same feature on the same pieces, in order
