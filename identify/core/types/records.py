"""What the collector keeps: pieces, wants, notes, sightings, budgets, photos, and their journal.

Plain JSON, in IndexedDB on the phone. These are the fields as the app works with them (`fitting` in
web/data/record-shapes.js puts in what an older record lacks); unknown fields are kept as they are.
"""

from typing import Any, Literal, NotRequired, TypedDict, TypeVar

from .money import Money
from .session import Answer

Condition = Literal["", "as new", "excellent", "very good", "good", "fair", "poor"]  # "": not said
Boxed = Literal["", "yes", "no"]  # "": not said
Purpose = Literal["", "spare", "donor"]


class Chance(TypedDict):
    """One of what a piece may be."""

    variant: str  # id of the variant, "" for some variant of the item
    chance: float
    item: NotRequired[str]  # number of the item; on a piece it stands in the record itself


class Came(TypedDict):
    """The row of a list that a record was imported from, and what stood there."""

    key: str
    cells: dict[str, str]
    values: dict[str, Any]


class OfAllRecords(TypedDict):
    """What all records have."""

    id: str  # "r" and random letters and digits
    made: str  # ISO 8601 time
    changed: str  # ISO 8601 time
    trashed: str  # "", or the time it went to the bin
    came: NotRequired[Came | None]
    demo: NotRequired[bool]  # from the demo collection
    gone: NotRequired[bool]  # deleted for good: only id, type and times are left


class Piece(OfAllRecords):
    """A piece that is owned."""

    type: Literal["piece"]
    pack: str  # id of the pack that it is in, "" in none
    item: str  # number of the item, "" where it is in no reference
    called: str  # its name, where it is in no reference
    of: list[Chance]  # one with 1: known; several: one of these; none: some variant of the item
    answers: list[Answer]  # the session's: the evidence
    condition: Condition
    boxed: Boxed
    box_condition: Condition
    missing: list[str]  # ids of parts
    replaced: list[str]  # ids of parts
    paid: Money | None
    where: str  # where it was bought
    when: str  # EDTF, "" not said
    photos: list[str]  # ids of photos
    notes: str
    kept: bool  # a duplicate kept on purpose
    purpose: Purpose
    asking: Money | None  # what to ask for it
    session: NotRequired[str]  # the identification it came from, so that it is not made twice


class Want(OfAllRecords):
    """Something that is looked for."""

    type: Literal["want"]
    pack: str
    item: str  # number of the item, "" where it is in no reference
    called: str  # its name, where it is in no reference
    variant: str  # id of the variant, "" for any
    least: Condition  # the least that is good enough
    box: Literal["", "yes"]  # with its box, or either
    most: Money | None
    urgency: int  # 1 (no hurry) to 3 (urgent)
    notes: str


class Note(OfAllRecords):
    """A piece that was looked at and left for later."""

    type: Literal["note"]
    pack: str
    of: list[Chance]
    answers: list[Answer]
    condition: Condition
    boxed: Boxed
    hall: str
    table: str
    asked: Money | None
    offer: Money | None
    come_back: str
    decision: Literal["open", "bought", "left"]
    photos: list[str]
    text: str
    piece: str  # id of the piece that it became, "" for none
    session: NotRequired[str]


class Sighting(OfAllRecords):
    """A piece that was seen and tells the reference something.

    Handed out as {format: 1, kind: "identify sightings", made, sightings}, with each photo in place
    as {width, height, full: data: URL}; `python -m identify sighting` makes a change of the pack's
    CSV files of it.
    """

    type: Literal["sighting"]
    pack: str
    version: str  # of the pack
    kind: str  # id of the kind, "" not known
    item: str  # number of the item, "" not known
    called: str  # what to call it
    unrecorded: bool  # no variant of the pack goes with it
    of: list[Chance]
    answers: list[Answer]
    years: str  # EDTF of when it was made, "" not known
    text: str  # how that is known
    photos: list[str]
    session: NotRequired[str]


class Budget(OfAllRecords):
    """What may be spent on a day."""

    type: Literal["budget"]
    day: str  # YYYY-MM-DD; the id is made of it, so that two devices make one record of one day
    amount: Money | None


AnyRecord = Piece | Want | Note | Sighting | Budget
Kept = TypeVar("Kept", Piece, Want)


class Wish(TypedDict):
    """What is said of a want in words."""

    least: NotRequired[str]  # a condition
    box: NotRequired[str]
    urgency: NotRequired[int]


class InPack(TypedDict):
    """What any record says that points into a pack."""

    id: str
    pack: str
    item: NotRequired[str]
    variant: NotRequired[str]
    of: NotRequired[list[Chance]]


class Records(TypedDict):
    """The records that the verdict is about."""

    pieces: list[Piece]
    wants: list[Want]


class Hand(TypedDict):
    """What is said of the piece in hand; "" where it is not said."""

    condition: Condition
    boxed: Boxed
    asked: Money | None


class Photo(TypedDict):
    """A photo as a file has it; the phone keeps `full` and `small` as blobs."""

    id: str  # "p" and random letters and digits
    full: str  # a JPEG without metadata, as a data: URL
    small: str
    width: int
    height: int


class JournalEntry(TypedDict):
    """One change of one record. Every change is one strict transaction that reads the records as
    they are stored, writes them changed and appends an entry for each (`change` in
    web/data/records.js); a change that is not on the disk is never called saved.
    """

    time: str  # ISO 8601
    record: str  # id of the record
    type: str  # its type
    group: str  # what one tap changed has one group
    what: str  # in words
    before: dict[str, Any] | None  # only the fields that differ; None for a new record
    after: dict[str, Any]
    undoes: str  # the group that was undone, "" for none
    side: bool  # history only, such as a version from a backup that was not taken up
    seq: NotRequired[int]  # its place in the journal of this phone


class Backup(TypedDict):
    """Everything, in one file; the demo collection is such a file.

    A restore merges: operations stay what they are; of each record that they do not explain the
    version with the later `changed` counts, the other one goes into the journal.
    """

    format: Literal[1]
    kind: Literal["identify backup"]
    made: str  # ISO 8601 time
    records: list[AnyRecord]
    journal: list[JournalEntry]
    photos: list[Photo]
