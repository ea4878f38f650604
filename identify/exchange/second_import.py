"""A second import of the same list: which row made which record, and what has changed since.

What was imported is kept in the record as `came`: {key: which row, cells: {field: text of its
cells}, values: {field: value}}. A field changes only where its cells do; where the person has
changed it too, that is told and left alone.
"""

import json
from collections import Counter
from typing import Any

from identify.core.look_up import plain, words
from identify.exchange.fields import GENERIC
from identify.exchange.reference import unaccented
from identify.exchange.safe_cells import unguarded
from identify.exchange.shapes import blank
from identify.exchange.table import Row, listed, quoted
from identify.exchange.types import Fields

ITEM = "item"  # pack, item and variant count as one
KEPT = ("id", "type", "made", "changed")
OWN = "record:"


def keys_of(sort: str, fields: list[str], rows: list[Row]) -> tuple[list[str], list[str]]:
    """A name for each row that stays the same when the list is imported again, and sentences about
    numbers that come twice.

    The list's own number of the row, if it has one; else number and words, and of equal rows which
    one it is. fields: of each column.
    """
    own = [""] * len(rows)
    if "=record" in fields:
        at = fields.index("=record")
        own = [unguarded(row.cells[at]).strip() if at < len(row.cells) else "" for row in rows]
    fields = [GENERIC.get(one, "") if one.startswith("=") else one for one in fields]
    numbered = [_under(fields, row, ("row_id",)) for row in rows]
    counts = Counter(numbered)
    seen: Counter[str] = Counter()
    keys = []
    for record, mine, row in zip(own, numbered, rows, strict=True):
        if record:
            keys.append(f"{OWN}{record}")
            continue
        if mine and counts[mine] == 1:
            keys.append(f"{sort}:row {mine}")
            continue
        said = _under(fields, row, ("number",)), _under(fields, row, ("range",)), _said(fields, row)
        name = f"{sort}:{plain(said[0])}|{' '.join(words(said[1]))}|{said[2]}"
        seen[name] += 1
        keys.append(f"{name}|{seen[name]}")
    return keys, _own_twice(own) if any(own) else _twice(fields, rows, numbered)


def _own_twice(own: list[str]) -> list[str]:
    """Sentences about records that come more than once."""
    return [
        f"The record {one} comes {count} times: each row would change it, and the last one counts."
        for one, count in Counter(one for one in own if one).items()
        if count > 1
    ]


def _under(fields: list[str], row: Row, wanted: tuple[str, ...]) -> str:
    """The cells of a row in the columns of some fields."""
    texts = [
        cell.strip()
        for field, cell in zip(fields, row.cells, strict=False)
        if field in wanted and cell.strip()
    ]
    return " ".join(texts)


def _said(fields: list[str], row: Row) -> str:
    return " ".join(words(unaccented(_under(fields, row, ("name", "description", "variant")))))


def _twice(fields: list[str], rows: list[Row], numbered: list[str]) -> list[str]:
    """Sentences about numbers that come more than once."""
    notes = []
    for what, texts in (
        ("The list's own number", numbered),
        ("The number", [_under(fields, row, ("number",)) for row in rows]),
    ):
        places: dict[str, list[int]] = {}
        for text, row in zip(texts, rows, strict=True):
            if text:
                places.setdefault(text, []).append(row.row)
        again = {text: rows_with for text, rows_with in places.items() if len(rows_with) > 1}
        notes += [
            f"{what} {quoted(text)} is in {listed(rows_with)}: each makes a record of its own."
            for text, rows_with in list(again.items())[:10]
        ]
        if len(again) > 10:
            notes.append(f"{len(again) - 10} more numbers come more than once.")
    return notes


# ---- what changed --------------------------------------------------------------------------------


def equal(one: Any, other: Any) -> bool:
    """Whether two values are the same JSON; a chance of 1.0 is a chance of 1."""
    return json.dumps(_plain(one), sort_keys=True) == json.dumps(_plain(other), sort_keys=True)


def _plain(value: Any) -> Any:
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, dict):
        return {key: _plain(one) for key, one in value.items()}
    if isinstance(value, list):
        return [_plain(one) for one in value]
    return value


def item_of(record: Fields) -> Fields:
    """What a record says it is: the fields that count as one."""
    return {f: record[f] for f in ("pack", "item", "of", "variant", "called") if f in record}


def held(record: Fields, field: str) -> Any:
    """The value of a field, or of those that say what the piece is."""
    return item_of(record) if field == ITEM else record.get(field)


def changes(record: Fields, existing: Fields) -> tuple[Fields, list[str]]:
    """What an import changes in the record that an earlier import of the row made: {field: value},
    and the fields that were changed on both sides since.

    record: as the row makes it now, with its `came`; a field that could not be read is not in
    came.values. Where nothing changed, {} and [].
    """
    base = existing.get("came", {})
    now = record["came"]
    cells, values = dict(base.get("cells", {})), dict(base.get("values", {}))
    usual = blank(record["type"])
    sets: Fields = {}
    clashes = []
    for field, cell in now["cells"].items():
        if cell == cells.get(field, "") or field not in now["values"]:
            continue
        theirs = now["values"][field]
        ours = held(existing, field)
        before = values.get(field, item_of(usual) if field == ITEM else usual.get(field))
        if not equal(theirs, ours) and not equal(theirs, before):
            if not equal(before, ours):
                clashes.append(field)
                continue
            sets |= theirs if field == ITEM else {field: theirs}
        cells[field], values[field] = cell, theirs
    came = {**base, "cells": cells, "values": values}
    if not equal(came, base):
        sets["came"] = came
    return sets, clashes


def merged(record: Fields, existing: Fields) -> tuple[Fields, list[str]]:
    """The same for a record that this app wrote itself: fields of the file that differ. Where the
    record was changed here after it was written, nobody can tell which side did: all clash.
    """
    differ = [
        field
        for field in record
        if field not in KEPT and not equal(record[field], existing.get(field))
    ]
    if str(record.get("changed", "")) < str(existing.get("changed", "")):
        return {}, differ
    return {field: record[field] for field in differ}, []
