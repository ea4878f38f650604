"""What devices share: operations, what they come to, and what a device knows of the server.

A wall is in milliseconds since 1970.
"""

from typing import Any, Literal, NotRequired, TypedDict


class Clock(TypedDict):
    """A hybrid logical clock: the greatest time seen anywhere so far, and a counter for what comes
    at the same.
    """

    wall: int
    count: int


class Operation(Clock):
    """One change of one record, as the server keeps it; never changed again (but for `scrubbed`).

    Whatever else it, or its fields, hold is kept and passed on.
    """

    id: str  # "<device>.<n>"; device: "d" and 16 random of a-z 0-9; n: 1, 2, 3, ...
    record: str  # id of what it changes ("r..."; "p...": a photo)
    type: str  # of a record, photo, device (its name), or one that only a newer version knows
    parents: list[str]  # ids, sorted: the record's heads when it was written
    time: str  # ISO 8601, what the device's own clock said: for people
    group: str  # as in the journal
    what: str  # as in the journal
    undoes: str  # as in the journal
    fields: dict[str, Any]  # what was written; a field taken away is null
    scrubbed: NotRequired[bool]  # its fields were deleted for good, and are {}


class OperationId(TypedDict):
    """What an operation's id says."""

    device: str
    n: int


class Written(Clock):
    """An operation as the rules take it; of one that is not here yet nothing is known."""

    id: str
    device: str
    n: int
    parents: list[str]
    type: str
    fields: list[list[str]]  # [name, JSON text with sorted keys]


class FieldValue(TypedDict):
    """A value of a field, and the operation that wrote it."""

    text: str  # JSON
    id: str


class Clash(TypedDict):
    """A field with several values: the one shown first, then the latest first."""

    field: str
    values: list[FieldValue]


class Writers(TypedDict):
    """The operations that wrote a field."""

    name: str
    places: list[int]


class Merged(TypedDict):
    """What all known operations of one record come to."""

    type: str
    fields: list[list[str]]  # [name, JSON text]
    clashes: list[Clash]
    heads: list[str]  # ids that no known operation names as parents, sorted
    trashed: bool
    gone: bool  # deleted for good
    brought_back: bool  # trashed on one device, changed or restored on another meanwhile
    scrub: list[str]  # ids of operations whose values were deleted for good


class Reached(TypedDict):
    """How far a device has pulled."""

    epoch: str  # of the server's data
    after: int  # where the last pull ended
    last: str  # and the operation there


class Device(Reached):
    """What a device knows of itself and of the server."""

    device: str  # its id
    n: int  # of its last operation
    clock: Clock
    round: int  # how often the server was found to be another, or an older one


class PullAnswer(Reached):
    """What the server says to a pull."""

    from_start: bool  # it begins from the beginning


class Pulled(Reached):
    """What a device knows after a pull."""

    round: int


class Heads(TypedDict):
    """The operations of a record that no other names as a parent."""

    record: str
    heads: list[str]


class Unsealed(TypedDict):
    """A change that is no operation yet."""

    record: str
    time: int  # ms


class Sealed(Clock):
    """What makes an operation of a change."""

    id: str
    device: str
    n: int
    parents: list[str]


class Sealing(TypedDict):
    """Operations made of changes, one each, and where the device stands then."""

    n: int
    clock: Clock
    ops: list[Sealed]
    heads: list[Heads]


class Compared(TypedDict):
    """An operation, to be held against another under the same id."""

    scrubbed: bool
    text: str  # all of it as canonical JSON
    bare: str  # the same without what deleting for good changes: `fields`, `what`, `scrubbed`


class Arriving(Clock):
    """An operation that came from elsewhere."""

    id: str
    device: str
    here: Literal["", "same", "other"]  # not known · known · another one is known under this id


class Meeting(TypedDict):
    """What to do with operations that came; places among them."""

    clock: Clock
    take: list[int]  # to take in
    known: list[int]  # here already
    moved: list[str]  # ids that stand for another operation here
    fork: bool  # a copy of this device went another way


class Unheld(TypedDict):
    """An operation of this device's journal that may need another id."""

    id: str
    device: str
    parents: list[str]
    held: str  # the mark under which a pull brought it, "" for none


class Renamed(TypedDict):
    """An operation under its new id."""

    place: int  # in what was given
    id: str
    device: str
    n: int
    parents: list[str]


class Forking(TypedDict):
    """Other ids, where a copy of this device went another way; it goes on as `device`."""

    device: str
    n: int
    after: int  # 0: the next pull begins from the beginning
    last: str
    ops: list[Renamed]
