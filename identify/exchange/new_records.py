"""What each sort of record holds when it is new, by the core's one list of fields: of those that
go into tables. A range goes out as a range, not as lines of a list.
"""

from identify.core.shapes import RECORD_SHAPES, new_fields
from identify.core.types.importing import Fields

SHAPES: dict[str, Fields] = {
    shape["type"]: dict(new_fields(shape["type"]))
    for shape in RECORD_SHAPES
    if not shape["type"].startswith("range")
}
