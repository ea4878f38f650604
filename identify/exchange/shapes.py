"""What each sort of record holds when it is new, by the core's one list of fields: of those that
go into tables. A range goes out as a range, not as lines of a list.
"""

from copy import deepcopy

from identify.core.shapes import RECORD_SHAPES, new_fields
from identify.exchange.types import Fields

SHAPES: dict[str, Fields] = {
    shape["type"]: dict(new_fields(shape["type"]))
    for shape in RECORD_SHAPES
    if not shape["type"].startswith("range")
}


def blank(sort: str) -> Fields:
    """A new record of a type, without id and times."""
    return {"type": sort, "trashed": "", **deepcopy(SHAPES[sort])}
