"""Records as rows of a table; importing/own_tables.py reads them back.

Each field has a column with a text that a person can read and change. Where that would not give
back the very same value (a chance of 0.3333, a photo's id, a field that this version does not
know), the value goes into the column "further" as JSON as well.
"""

from collections.abc import Sequence
from typing import Any

from ..edtf import padded
from ..importing.brought_before import is_same_json, text_at
from ..importing.own_tables import (
    ALWAYS,
    FURTHER,
    HIDDEN,
    LONGEST_TEXT,
    OWN_COLUMNS,
    OWN_SORTS,
    UNFIT,
    WHAT,
    WHICH,
    fit_for_cell,
    guarded,
    own_fields,
    shown_text,
    value_in,
)
from ..importing.text_parts import begins, joined_by, split_at, without_blanks
from ..native.values import (
    in_plain_signs,
    json_text,
    json_without,
    names_of,
    sort_of_value,
    value_at,
)
from ..types.exporting import Naming, WrittenTable
from ..types.importing import Fields
from .naming import item_in_words, variant_in_words

UNFIT_IN_JSON = "\\u0078005F_"  # the same sign in JSON, which no reader of workbooks takes out


def heading_of(field: str) -> str:
    """What the column of a field is called."""
    return joined_by(split_at(field, "_"), " ")


def columns_for(records: Sequence[Fields]) -> list[str]:
    """The fields that have a column for these records, in order."""
    used = ["record", "type", WHAT, WHICH]
    for field in ALWAYS:
        used.append(field)
    for kind in OWN_SORTS:
        if kind in [text_at(record, "type") for record in records]:
            for field in own_fields(kind):
                used.append(field)
    return [column for column in OWN_COLUMNS if column in used]


def cells_of(record: Fields, fields: Sequence[str], naming: Naming) -> dict[str, str]:
    """The texts of a record's columns, by field, not guarded. fields: by columns_for()."""
    cells: dict[str, str] = {}
    kind = text_at(record, "type")
    cells["record"] = without_blanks(fit_for_cell(text_at(record, "id")))
    cells["type"] = without_blanks(fit_for_cell(kind))
    cells[WHAT] = fit_for_cell(item_in_words(naming, record))
    cells[WHICH] = fit_for_cell(variant_in_words(naming, record))
    shape = own_fields(kind) if kind in OWN_SORTS else ALWAYS
    said: list[str] = []
    for field in names_of(record):
        value = value_at(record, field)
        if field in ["id", "type"]:
            if is_same_json(cells["record" if field == "id" else "type"], value):
                said.append(field)
        elif field in HIDDEN and field in shape:
            if sort_of_value(value) == "list" and len(value) == 0:
                said.append(field)
        elif field in shape and field in fields:
            cells[field] = shown_text(field, value)
            if gives_back(field, cells[field], value):
                said.append(field)
    absent = [name for name in shape if name not in record]
    cells[FURTHER] = further_text(record, said, absent)
    return cells


def gives_back(field: str, cell: str, value: Any) -> bool:
    """Whether the text in its column gives this very value back."""
    read = value_in(field, cell, "")
    return read["wrong"] == "" and is_same_json(read["value"], value)


def further_text(record: Fields, said: list[str], absent: list[str]) -> str:
    """What "further" holds: the fields that are not said by their columns, and those not there."""
    parts: list[str] = []
    if len(absent) > 0:
        parts.append('"absent":' + json_text(absent))
    if len(said) < len(names_of(record)):
        parts.append('"fields":' + json_without(record, said))
    if len(parts) == 0:
        return ""
    return kept_by_readers(in_plain_signs("{" + joined_by(parts, ",") + "}"))


def kept_by_readers(text: str) -> str:
    """JSON without the sign that readers of workbooks take out, written in another way."""
    out: list[str] = []
    start = 0
    for at in range(len(text)):
        if text[at] == "x" and begins(text[at : at + len(UNFIT)], UNFIT):
            out.append(text[start:at] + UNFIT_IN_JSON)
            start = at + len(UNFIT)
    out.append(text[start:])
    return joined_by(out, "")


def table_of(fields: Sequence[str], table_cells: Sequence[dict[str, str]]) -> WrittenTable:
    """The table of these cells_of(): its headings and rows, every cell guarded."""
    longest = 1
    for cells in table_cells:
        longest = max(longest, len(cells[FURTHER]))
    parts = (longest + LONGEST_TEXT - 1) // LONGEST_TEXT
    names = [heading_of(field) for field in fields]
    for part in range(parts):
        names.append(FURTHER if part == 0 else FURTHER + " " + padded(part + 1, 1))
    rows: list[list[str]] = []
    for cells in table_cells:
        row = [guarded(cells.get(field, "")) for field in fields]
        for part in range(parts):
            kept = cells[FURTHER][part * LONGEST_TEXT : (part + 1) * LONGEST_TEXT]
            row.append(guarded(kept))
        rows.append(row)
    return {"names": names, "rows": rows}
