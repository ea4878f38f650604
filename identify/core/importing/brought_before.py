"""A second import of the same list: what has changed since the first.

What was imported is kept in the record as `came`: {key: which row, cells: {field: text of its
cells}, values: {field: value}}. A field changes only where its cells do; where the person has
changed it too, that is told and left alone.
"""

from typing import Any

from ..native.values import json_text, names_of, sort_of_value, value_at
from ..shapes import new_fields
from ..types.importing import Changes, Fields

WHOLE_ITEM = "item"  # pack, item and variant count as one
OF_ITEM = ["pack", "item", "of", "variant", "called"]
KEPT = ["id", "type", "made", "changed"]


def blank_record(sort: str) -> Fields:
    """A new record of a type, without id and times."""
    out: Fields = {"type": sort, "trashed": ""}
    for field in new_fields(sort):
        out[field[0]] = field[1]
    return out


def is_same_json(first: Any, second: Any) -> bool:
    """Whether two values are the same JSON; a chance of 1.0 is a chance of 1."""
    return json_text(first) == json_text(second)


def item_of(record: Fields) -> Fields:
    """What a record says it is: the fields that count as one."""
    out: Fields = {}
    for field in OF_ITEM:
        if field in record:
            out[field] = record[field]
    return out


def held(record: Fields, field: str) -> Any:
    """The value of a field, or of those that say what the piece is."""
    return item_of(record) if field == WHOLE_ITEM else value_at(record, field)


def group_at(group: Fields, name: str) -> Fields:
    """What a group has under a name where that is a group; else an empty one, and a new one."""
    out: Fields = {}
    group_there = value_at(group, name)
    if sort_of_value(group_there) == "group":
        for field in names_of(group_there):
            out[field] = value_at(group_there, field)
    return out


def put_field(fields: Fields, field: str, value: Any) -> None:
    """Sets a field, or those that say what the piece is."""
    if field == WHOLE_ITEM:
        for part in names_of(value):
            fields[part] = value_at(value, part)
    else:
        fields[field] = value


def changes(record: Fields, existing: Fields) -> Changes:
    """What an import changes in the record that an earlier import of the row made, and the fields
    that were changed on both sides since.

    record: as the row makes it now, with its `came`; a field that could not be read is not in
    came.values. Where nothing changed, nothing is set.
    """
    base = group_at(existing, "came")
    now = record["came"]
    cells = group_at(base, "cells")
    values = group_at(base, "values")
    usual = blank_record(record["type"])
    out: Changes = {"sets": {}, "both": []}
    for field in names_of(now["cells"]):
        cell = value_at(now["cells"], field)
        known = field in cells and cells[field] == cell
        if known or (field not in cells and cell == "") or field not in now["values"]:
            continue
        theirs = value_at(now["values"], field)
        ours = held(existing, field)
        before = value_at(values, field) if field in values else held(usual, field)
        if not is_same_json(theirs, ours) and not is_same_json(theirs, before):
            if not is_same_json(before, ours):
                out["both"].append(field)
                continue
            put_field(out["sets"], field, theirs)
        cells[field] = cell
        values[field] = theirs
    came = group_at(existing, "came")
    came["cells"] = cells
    came["values"] = values
    if not is_same_json(came, base):
        out["sets"]["came"] = came
    return out


def own_changes(record: Fields, existing: Fields) -> Changes:
    """The same for a record that this app wrote itself: fields of the file that differ. Where the
    record was changed here after it was written, nobody can tell which side did: all clash.
    """
    out: Changes = {"sets": {}, "both": []}
    differ: list[str] = []
    for field in names_of(record):
        if field not in KEPT and not is_same_json(record[field], value_at(existing, field)):
            differ.append(field)
    if text_at(record, "changed") < text_at(existing, "changed"):
        out["both"] = differ
        return out
    for field in differ:
        out["sets"][field] = record[field]
    return out


def text_at(group: Fields, name: str) -> str:
    """The text that a group has under a name, "" for none."""
    value = value_at(group, name)
    return value if sort_of_value(value) == "text" else ""
