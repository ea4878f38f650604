"""Records as rows of a table; the core reads them back (identify/core/importing/own_rows.py).

Each field has a column with a text that a person can read and change. Where that would not give
back the very same value (a chance of 0.3333, a photo's id, a field that this version does not
know), the value goes into the column "further" as JSON as well.
"""

import json
from collections.abc import Callable
from typing import Any

from identify.core.importing.own_rows import (
    ALWAYS,
    FURTHER,
    HIDDEN,
    LONGEST_TEXT,
    OWN_COLUMNS,
    WHAT,
    WHICH,
    fit_for_cell,
    guarded,
    shown_text,
    value_in,
)
from identify.core.types.importing import Fields
from identify.exchange.shapes import SHAPES

Names = Callable[[Fields], tuple[str, str]]


def heading(field: str) -> str:
    """What the column of a field is called."""
    return field.replace("_", " ")


def columns_for(records: list[Fields]) -> list[str]:
    """The fields that have a column, in order."""
    used: set[str] = {"record", "type", WHAT, WHICH, *ALWAYS}
    for record in records:
        used |= set(SHAPES.get(record.get("type", ""), {}))
    return [field for field in OWN_COLUMNS if field in used]


def cells_of(record: Fields, fields: list[str], names: Names) -> dict[str, str]:
    """The texts of a record's columns, by field, not guarded."""
    what, which = names(record)
    cells = {"record": _text(record.get("id")), "type": _text(record.get("type"))}
    cells |= {WHAT: fit_for_cell(what), WHICH: fit_for_cell(which)}
    shape = _fields_of(record)
    further: Fields = {}
    for field, value in record.items():
        if field in ("id", "type"):
            if cells["record" if field == "id" else "type"] != value:
                further[field] = value
            continue
        cell = shown_text(field, value) if field in shape and field in fields else ""
        if field in shape and field in fields:
            cells[field] = cell
        usual_value = field in HIDDEN and field in shape and value == []
        if not usual_value and (field not in cells or not _gives(field, cell, value)):
            further[field] = value
    absent = [field for field in shape if field not in record]
    if further or absent:
        kept = ({"fields": further} if further else {}) | ({"absent": absent} if absent else {})
        cells[FURTHER] = json.dumps(kept).replace("x005F_", "\\u0078005F_")
    return cells


def _fields_of(record: Fields) -> tuple[str, ...]:
    """The fields of a record of its type that have a column, or are in "further"."""
    return (*SHAPES.get(str(record.get("type")), {}), *ALWAYS)


def _text(value: Any) -> str:
    return fit_for_cell(value).strip() if isinstance(value, str) else ""


def _gives(field: str, cell: str, value: Any) -> bool:
    """Whether the text in its column gives this very value back."""
    read = value_in(field, cell, "")
    return read["wrong"] == "" and _equal(read["value"], value)


def _equal(one: Any, other: Any) -> bool:
    """Equal as JSON: true is not 1."""
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def table_of(records: list[Fields], names: Names) -> tuple[list[str], list[list[str]]]:
    """The headings and the rows for these records, every cell guarded.

    names: what a record is about and its variant, in words.
    """
    fields = columns_for(records)
    found = [cells_of(record, fields, names) for record in records]
    longest = max((len(cells.get(FURTHER, "")) for cells in found), default=0)
    chunks = max(1, -(-longest // LONGEST_TEXT))
    rows = []
    for cells in found:
        rest = cells.get(FURTHER, "")
        parts = [rest[at * LONGEST_TEXT : (at + 1) * LONGEST_TEXT] for at in range(chunks)]
        rows.append([guarded(cell) for cell in [*(cells.get(f, "") for f in fields), *parts]])
    more = [f"{FURTHER} {n}" for n in range(2, chunks + 1)]
    return [*(heading(field) for field in fields), FURTHER, *more], rows
