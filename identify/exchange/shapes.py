"""What a new record of each sort holds. web/data/record-shapes.js says the same (tested)."""

from copy import deepcopy
from typing import Any

import msgspec

from identify.exchange.schemas import Budget, Note, Piece, Record, Sighting, Want


def _shape(sort: type[Record]) -> dict[str, Any]:
    """The fields that only this sort has, each with what it is in a new record."""
    of_all = Record.__struct_fields__
    return {
        field.name: field.default
        if field.default_factory is msgspec.NODEFAULT
        else field.default_factory()
        for field in msgspec.structs.fields(sort)
        if field.name not in of_all
    }


SHAPES = {
    str(sort.__struct_config__.tag): _shape(sort) for sort in (Piece, Want, Note, Sighting, Budget)
}


def blank(sort: str) -> dict[str, Any]:
    """A new record of a type, without id and times."""
    return {"type": sort, "trashed": "", **deepcopy(SHAPES[sort])}
