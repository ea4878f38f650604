"""JSON Schema of the files with records: the one written for others, and the backup, which is the
one that keeps everything. Fields that are not named here are allowed and kept as they are.
"""

from typing import Annotated, Any, Literal, Union, cast

import msgspec
from msgspec import Meta

from identify.core.condition import CONDITIONS
from identify.core.shapes import RECORD_SHAPES, WORDS, fields_of, usual

Id = Annotated[str, Meta(pattern=r"^r\w+$")]
Time = Annotated[str, Meta(pattern=r"^\d{4}-\d\d-\d\dT", description="ISO 8601 time")]
Trashed = Annotated[str, Meta(pattern=r"^(\d{4}-\d\d-\d\dT.*)?$")]
Edtf = Annotated[str, Meta(description='EDTF (ISO 8601-2), "" for not said')]
Picture = Annotated[str, Meta(pattern="^data:image/jpeg;base64,")]
Urgency = Annotated[int, Meta(ge=1, le=3)]
Share = Annotated[float, Meta(ge=0, le=1)]


class Money(msgspec.Struct):
    """Whole minor units, and 48ths of one on top."""

    minor: int
    currency: Annotated[str, Meta(pattern="^[A-Z]{3}$")]
    over: Annotated[int, Meta(ge=0, le=47)] = 0
    typed: str = ""


class Chance(msgspec.Struct, omit_defaults=True):
    variant: str
    chance: Share
    item: str = ""


class Answer(msgspec.Struct):
    feature: str
    how: Literal["sure", "twice", "unsure", "several", "other", "cannot"]
    states: list[str]
    changed: bool = False


class Came(msgspec.Struct):
    """Which row of a list the record came from, and what stood there."""

    key: str
    cells: dict[str, str]
    values: dict[str, Any]


class Record(msgspec.Struct, kw_only=True, tag_field="type"):
    """What all records have."""

    id: Id
    made: Time
    changed: Time
    trashed: Trashed = ""
    demo: bool = False
    gone: bool = False
    came: Came | None = None


# What may stand in a field, by its sort in core/shapes.py.
SORTS: dict[str, Any] = {
    "text": str, "flag": bool, "condition": Literal["", *CONDITIONS], "urgency": Urgency,
    "money": Money | None, "texts": list[str], "number": float | None, "came": Came | None,
    "pairs": list[tuple[str, str]], "chances": list[Chance], "answers": list[Answer],
} | {entry["sort"]: Literal[*entry["words"]] for entry in WORDS}  # fmt: skip
DATES = {("piece", "when"), ("sighting", "years")}  # text that is EDTF


def struct_of(sort: str) -> type[Record]:
    """A sort of record as msgspec knows it."""
    fields = [
        (name, Edtf if (sort, name) in DATES else SORTS[of], usual(of))
        for name, of in fields_of(sort)
    ]
    made = msgspec.defstruct(sort.title(), fields, bases=(Record,), tag=sort, kw_only=True)
    return cast(type[Record], made)


AnyRecord: Any = Union[*(struct_of(shape["type"]) for shape in RECORD_SHAPES)]


class Records(msgspec.Struct):
    """The file that `export` writes."""

    format: Literal[1]
    kind: Literal["identify records"]
    made: Time
    about: str
    records: list[AnyRecord]


class Entry(msgspec.Struct):
    """A change as the journal keeps it."""

    time: Time
    record: str
    group: str
    type: str = ""
    what: str = ""
    seq: int = 0
    before: dict[str, Any] | None = None
    after: dict[str, Any] | None = None
    undoes: str = ""
    side: bool = False


class Photo(msgspec.Struct):
    id: Annotated[str, Meta(pattern=r"^p\w+$")]
    full: Picture
    small: Picture
    width: int = 0
    height: int = 0


class Backup(msgspec.Struct):
    """The backup, version 1."""

    format: Literal[1]
    kind: Literal["identify backup"]
    made: Time
    records: list[AnyRecord]
    journal: list[Entry] = []
    photos: list[Photo] = []


def records_schema(backup: bool = False) -> dict[str, Any]:
    """JSON Schema (2020-12) of the file of records, or of the backup."""
    schema = msgspec.json.schema(Backup if backup else Records)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
