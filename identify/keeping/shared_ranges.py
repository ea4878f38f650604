"""The ranges of one's own that others may follow, made of the operations as the phones make them.

A range is shared where its record says so (`shared` of `OwnRange`); nothing else that is kept
comes into it.
"""

import threading
from collections.abc import Iterable
from typing import Any

import apsw
import orjson

from identify.core.fitting import misfits
from identify.core.merging import merged
from identify.core.operation_forms import for_merging
from identify.core.ranges.own_rows import rows_of_records
from identify.core.shapes import new_fields
from identify.core.types.operations import Operation
from identify.keeping.queries import rows
from identify.keeping.schema import is_written
from identify.keeping.store import Store

SORT = "range"
OF_RANGES = '"type":"range'  # in the one way in which operations are written
SHARED = "yes"
KIND = "identify range"


class SharedRanges:
    """What is shared of a store, made anew once something else is kept there."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._lock = threading.Lock()
        self._standing: tuple[Any, ...] = ()
        self._texts: dict[str, bytes] = {}

    def text(self, ident: str) -> bytes | None:
        """The range whose record has this id, as an app shares it; None where none is shared."""
        with self._lock:
            with self._store.read() as db:
                if not rows(db, "select 1 from ops where record = ? limit 1", ident):
                    return None  # a guess: nothing is made anew for it
                standing = _standing(db)
                contents = _contents(db) if standing != self._standing else None
            if contents is not None:
                self._texts = _texts(contents)
                self._standing = standing
            return self._texts.get(ident)


def _standing(db: apsw.Connection) -> tuple[Any, ...]:
    """What is another one whenever something else is kept."""
    last = rows(db, "select seq, trail from ops order by seq desc limit 1")
    return (rows(db, "select value from meta where name = 'epoch'"), last)


def _contents(db: apsw.Connection) -> list[str]:
    """The operations of ranges and their rows that are what was written."""
    stored = rows(db, "select content, sum from ops where instr(content, ?) > 0", OF_RANGES)
    return [content for content, checked_sum in stored if is_written(content, checked_sum)]


def _texts(contents: Iterable[str]) -> dict[str, bytes]:
    """The shared ranges by the ids of their records."""
    known: dict[str, list[Operation]] = {}
    for content in contents:
        operation = orjson.loads(content)
        if operation["type"].startswith(SORT):
            known.setdefault(operation["record"], []).append(operation)
    records = [_record(ident, operations) for ident, operations in known.items()]
    return {
        range_record["id"]: _text(
            range_record, [row for row in records if row.get("range") in (range_record["id"], "")]
        )
        for range_record in records
        if range_record["type"] == SORT
        and range_record["shared"] == SHARED
        and range_record["trashed"] == ""
    }


def _record(ident: str, operations: list[Operation]) -> dict[str, Any]:
    """A record as the phones have it, and when it was changed last."""
    whole = merged([for_merging(operation) for operation in operations])
    sort = whole["type"]
    written = {name: orjson.loads(text) for name, text in whole["fields"]}
    wrong = misfits(sort, written)
    sound = {name: said for name, said in written.items() if said is not None and name not in wrong}
    if any(clash["field"] == "shared" for clash in whole["clashes"]):
        sound.pop("shared", None)  # private until both devices say the same
    changed = max(operation.get("time", "") for operation in operations)
    away = changed if whole["gone"] or whole["trashed"] else ""
    fresh: dict[str, Any] = dict(new_fields(sort))
    return fresh | sound | {"id": ident, "type": sort, "changed": changed, "trashed": away}


def _text(whole: dict[str, Any], its_rows: list[dict[str, Any]]) -> bytes:
    """A range as an app shares it (web/range/range-file.js).

    A row that was deleted for good no longer says whose it was: the time of its end counts, lest an
    edition be older than the one before.
    """
    made = max(record["changed"] for record in [whole, *its_rows])
    range_rows = rows_of_records(whole, its_rows)
    return orjson.dumps({"format": 1, "kind": KIND, "made": made, "rows": range_rows})
