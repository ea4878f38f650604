"""Operations: taking them in and handing them out.

README.md says what an operation is; merging is in identify/core/merging.py, the same code as on
the phone.
"""

from collections.abc import Iterable
from typing import Any, cast

import apsw
import orjson

from identify.core.gate import operation_fault
from identify.core.gate_words import fault_words
from identify.core.merging import merged
from identify.core.operation_forms import comparable, for_merging
from identify.core.syncing import same_operation
from identify.core.types import operations
from identify.core.types.operations import Written
from identify.keeping import photos
from identify.keeping.canonical_json import EXACT, text_of
from identify.keeping.queries import rows, value
from identify.keeping.schema import is_written, next_trail, sum_of
from identify.keeping.store import Store
from identify.keeping.troubles import DAMAGED, DamagedError, RefusedError
from identify.keeping.types import NotTaken, PullAnswer, PushAnswer

MOST_PULLED = 1000
ANSWER = 2_000_000
GONE = "Deleted for good"


def push(store: Store, sent: list[Any]) -> PushAnswer:
    """Takes operations in, as often as they are sent; answers once they are on the disk.

    -> {epoch, held: [ids] (here, with this content), forked: [ids] (another content stands under
    this id, or under that of a parent sent along), refused: [{id, why}] (what is no operation)}.
    Raises DiskError: then none was kept.
    """
    held: list[str] = []
    forked: list[str] = []
    refused: list[NotTaken] = []
    sound: list[tuple[operations.Operation, str]] = []
    for operation in sent:
        try:
            sound.append((operation, checked(operation)))
        except RefusedError as why:
            refused.append({"id": _named(operation), "why": str(why)})
    with store.write() as db:
        epoch = _epoch(db)
        new = []
        for operation, content in sound:
            misled = not set(forked).isdisjoint(operation["parents"])
            new_here = value(db, "select 1 from ops where id = ?", operation["id"]) is None
            state = "forked" if misled and new_here else take(db, operation, content)
            (forked if state == "forked" else held).append(operation["id"])
            if state == "new":
                new.append(operation["record"])
        lost = scrub(db, new)
    if lost is not None:
        store.forget()
        photos.unlink(store, lost)
    return {"epoch": epoch, "held": held, "forked": forked, "refused": refused}


def checked(operation: Any) -> str:
    """The operation as text to keep. Raises RefusedError with what would be right."""
    fault = operation_fault(operation, False)
    if fault is not None:
        raise RefusedError(f"The server cannot keep this change. {fault_words(fault)}")
    kept = (name for name in operation if name != "scrubbed" or operation[name])
    return text_of({name: operation[name] for name in kept})


def pull(store: Store, epoch: str, after: int, last: str, limit: int) -> PullAnswer:
    """What came after a place of this server's order, at most `limit` (and 2 MB) at a time.

    `after` and `last` are what the answer before said, or 0 and "". `last` is opaque: a digest of
    all operations up to that place as they came, so that it cannot fit a history that differs.
    -> {epoch, from_start (that place is unknown here: this begins from the beginning), ops, after,
    last, more, damaged (how many of them are not what was written, and are left out; only where
    there are any)}.
    """
    limit = max(1, min(limit, MOST_PULLED))
    with store.read() as db:
        ours = _epoch(db)
        from_start = epoch != ours or not _known(db, after, last)
        if from_start:
            after, last = 0, ""
        ops: list[Any] = []
        size = damaged = 0
        more = False
        ops_there = db.execute(
            "select seq, content, trail, sum from ops where seq > ? order by seq limit ?",
            (after, limit + 1),
        )
        for seq, content, trail, checked_sum in cast(
            Iterable[tuple[int, Any, Any, Any]], ops_there
        ):
            size += len(str(content))
            if len(ops) + damaged == limit or (ops and size > ANSWER):
                more = True
                break
            if not isinstance(trail, str):
                raise DamagedError(DAMAGED)
            if is_written(content, checked_sum):
                ops.append(orjson.loads(content))
            else:
                damaged += 1
            after, last = seq, trail
    answer: PullAnswer = {
        "epoch": ours,
        "from_start": from_start,
        "ops": ops,
        "after": after,
        "last": last,
        "more": more,
    }
    if damaged > 0:
        answer["damaged"] = damaged
    return answer


def scrub(db: apsw.Connection, touched: Iterable[str]) -> list[str] | None:
    """Within a transaction: empties what was deleted for good in these records.

    None where nothing was; else the SHA-256 of photos that no operation names any more. Their rows
    are gone; their files go once this is committed (photos.unlink).
    """
    lost: set[str] = set()
    scrubbed = False
    for record in sorted(set(touched)):
        known = [
            row
            for *row, checked_sum in rows(
                db, "select id, content, scrubbed, gone, sum from ops where record = ?", record
            )
            if is_written(row[1], checked_sum)
        ]
        if not any(gone for *_, gone in known):
            continue
        dead = set(merged(read_operations(content for _, content, _, _ in known))["scrub"])
        for ident, content, already, _ in known:
            if ident in dead and not already:
                scrubbed = True
                lost |= photos.named(orjson.loads(content))
                emptied = _emptied(content)
                db.execute(
                    "update ops set content = ?, scrubbed = 1, sum = ? where id = ?",
                    (emptied, sum_of(emptied), ident),
                )
    return photos.unnamed(db, lost) if scrubbed else None


def read_operations(contents: Iterable[str]) -> list[Written]:
    """Operations, as they are kept, in the form in which the rules of merging take them."""
    return [for_merging(orjson.loads(content)) for content in contents]


def insert(db: apsw.Connection, operation: operations.Operation, content: str) -> None:
    """Within a transaction: one more operation at the end of this server's order."""
    last = value(db, "select trail from ops order by seq desc limit 1") or ""
    gone = int(operation["fields"].get("gone") is True)
    db.execute(
        "insert into ops (id, record, content, scrubbed, gone, trail, sum) "
        "values (?, ?, ?, ?, ?, ?, ?)",
        (
            operation["id"],
            operation["record"],
            content,
            int(operation.get("scrubbed", False)),
            gone,
            next_trail(last, content),
            sum_of(content),
        ),
    )


def same(ours: str, theirs: str) -> bool:
    """Whether two texts under one id are one operation, as far as it was not deleted for good."""
    if ours == theirs:
        return True
    return same_operation(comparable(orjson.loads(ours)), comparable(orjson.loads(theirs)))


def take(db: apsw.Connection, operation: operations.Operation, content: str) -> str:
    """Within a transaction: takes in one operation: new, held (it was here), forked (not taken).

    One that the disk has damaged since is mended by the same one sent again.
    """
    known = rows(db, "select content, sum from ops where id = ?", operation["id"])
    if not known:
        insert(db, operation, content)
        return "new"
    ((ours, checked_sum),) = known
    if is_written(ours, checked_sum):
        return "held" if same(ours, content) else "forked"
    if is_written(content, checked_sum):
        db.execute("update ops set content = ? where id = ?", (content, operation["id"]))
    return "held"


def _known(db: apsw.Connection, after: int, last: str) -> bool:
    if after == 0:
        return last == ""
    if not 0 < after <= EXACT:
        return False
    there = value(db, "select trail from ops where seq = ?", after)
    return bool(there == last)


def _epoch(db: apsw.Connection) -> str:
    return str(value(db, "select value from meta where name = 'epoch'"))


def _emptied(content: str) -> str:
    operation = orjson.loads(content)
    return text_of({**operation, "fields": {}, "what": GONE, "scrubbed": True})


def _named(operation: Any) -> str:
    ident = operation.get("id") if isinstance(operation, dict) else ""
    return ident[:100] if isinstance(ident, str) else ""
