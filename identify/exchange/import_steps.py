"""The whole of an import and of an export, as the server and the command line use it."""

from collections.abc import Sequence
from functools import cache
from pathlib import Path

from identify.exchange.columns import guess
from identify.exchange.fields import FIELDS
from identify.exchange.reference import Reference
from identify.exchange.second_import import keys_of
from identify.exchange.table import MOST_NOTES, Row
from identify.exchange.table_files import read_table
from identify.exchange.types import AskedColumn, CellsRow, Keys, ReadTable
from identify.reference.loading import load_engine


@cache
def reference_of(packs: tuple[Path, ...]) -> Reference:
    """The items of some packs. Raises PackError."""
    engines = [load_engine(path) for path in packs]
    return Reference({engine["pack"]["id"]: engine for engine in engines})


def chosen_packs(reference: Reference, ids: list[str] | None) -> Reference:
    """The items of those packs only; of all where no list is given."""
    if ids is None or set(ids) >= set(reference.engines):
        return reference
    return Reference({one: reference.engines[one] for one in reference.engines if one in ids})


def read_file(
    data: bytes, reference: Reference, name: str = "", sheet: str = "", header: int | None = None
) -> ReadTable:
    """A file as a table with guessed columns. Raises FileError."""
    table = read_table(data, sheet)
    guesses = guess(table, reference, name, header)
    return {
        "sheet": table.sheet,
        "sheets": table.sheets,
        "header": guesses.header,
        "own": guesses.own,
        "type": guesses.sort,
        "columns": [
            {"name": c.name, "field": c.field, "sure": c.sure, "why": c.why, "order": c.order}
            for c in guesses.columns
        ],
        "fields": [{"id": one.id, "name": one.name} for one in FIELDS],
        "rows": [{"row": row.row, "cells": row.cells} for row in guesses.rows],
        "notes": [*table.notes, *guesses.notes][:MOST_NOTES],
    }


def name_rows(sort: str, columns: Sequence[AskedColumn], rows: Sequence[CellsRow]) -> Keys:
    """The keys of all rows of a table: {keys, notes}."""
    fields = [column["field"] for column in columns]
    keys, notes = keys_of(sort, fields, [Row(row["row"], row["cells"]) for row in rows])
    return {"keys": keys, "notes": notes}
