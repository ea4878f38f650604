"""The whole of an import as the command line does it; the phone calls the same core."""

from collections.abc import Sequence
from functools import cache
from pathlib import Path

from identify.core.importing.guessing import cells_below, column_shares, headed, table_read
from identify.core.importing.item_words import new_reference
from identify.core.importing.row_keys import OWN_KEY, keys_of, name_of_row
from identify.core.importing.rows_matched import row_matched
from identify.core.types.importing import (
    AskedColumn,
    CellsRow,
    Fields,
    Importing,
    KeyedRow,
    Keys,
    Outcome,
    ReadTable,
    Reference,
)
from identify.exchange.table_files import read_table
from identify.reference.loading import load_engine


@cache
def reference_of(packs: tuple[Path, ...]) -> Reference:
    """The items of some packs. Raises PackError."""
    return new_reference([load_engine(path) for path in packs])


def read_file(
    data: bytes, reference: Reference, name: str = "", sheet: str = "", header: int = -1
) -> ReadTable:
    """A file as a table with guessed columns. Raises FileError.

    header: the row of headings (0: none), -1 where it is to be found.
    """
    table = read_table(data, sheet)
    heads = headed(table, header)
    count = len(heads["names"])
    shares = [
        column_shares(cells_below(heads["rows"], place, count), reference) for place in range(count)
    ]
    return table_read(table, heads, shares, name)


def name_rows(sort: str, columns: Sequence[AskedColumn], rows: Sequence[CellsRow]) -> Keys:
    """The keys of all rows of a table: {keys, notes}."""
    fields = [column["field"] for column in columns]
    return keys_of(sort, [name_of_row(sort, fields, row) for row in rows], rows)


def match_rows(
    about: Importing, rows: Sequence[KeyedRow], existing: Sequence[Fields]
) -> list[Outcome]:
    """What becomes of each row; existing: the records that are there."""
    by_key = {r["came"].get("key"): r for r in existing if isinstance(r.get("came"), dict)}
    by_key |= {f"{OWN_KEY}{r.get('id')}": r for r in existing}
    return [row_matched(about, row, by_key.get(row["key"])) for row in rows]
