"""Taking a backup back in. It merges: what came since stays, and what was deleted for good too."""

import hashlib
import secrets
import shutil
from pathlib import Path
from typing import cast

import apsw
import orjson

from identify.core.types.operations import Operation
from identify.keeping import devices, files, ops, photos
from identify.keeping.canonical_json import text_of
from identify.keeping.manifest import MANIFEST, manifest_of
from identify.keeping.queries import rows
from identify.keeping.schema import is_written, misfit
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DAMAGED_BACKUP, DamagedError, RefusedError, disk_troubles
from identify.keeping.types import Restored

LETTERS = "abcdefghijklmnopqrstuvwxyz0123456789"


def restore(store: Store, backup: Path, *, link: bool = False) -> Restored:
    """Merges a backup (its folder) into the store: {operations, photos, devices, damaged, missing:
    [sha]}. damaged: operations that are not what was written, or do not fit, and were left out.

    The counts are of what was not here. One transaction takes in operations and devices and gives
    the server a new epoch, by which every phone notices; photos follow, each checked. To run it
    again changes nothing more. link: photos are linked and not copied where the disk can do that.
    Raises UserError.
    """
    backup = backup.absolute()
    if not (backup / FILE).is_file() or manifest_of(backup) is None:
        raise RefusedError(
            f"{backup} is not a backup: there is no {FILE} with its {MANIFEST} in it. Name the "
            "folder of one backup, called after the time when it was made."
        )
    stage = store.folder / f".restoring-{secrets.token_hex(4)}"
    try:
        with disk_troubles():
            files.make_folder(stage)
            files.write_whole(stage / FILE, (backup / FILE).read_bytes())
        with _staged(type(store), stage) as old:
            operations, new, damaged = _take(store, old)
            came, missing = _take_photos(store, old, backup.parent / "photos", link)
    finally:
        shutil.rmtree(stage, ignore_errors=True)
    return {
        "operations": operations,
        "photos": came,
        "devices": new,
        "damaged": damaged,
        "missing": missing,
    }


def _staged(kind: type[Store], stage: Path) -> Store:
    """The backup as a store of its own, brought to the present version."""
    try:
        old = kind(stage)
        with old.read() as db:
            sound = rows(db, "pragma integrity_check") == [("ok",)]
    except DamagedError:
        sound = False
    if not sound:
        raise DamagedError(DAMAGED_BACKUP)
    return old


def _take(store: Store, old: Store) -> tuple[int, int, int]:
    """How many operations, and how many devices, were not here; how many are damaged."""
    with old.read() as theirs, store.write() as db:
        paired = rows(theirs, "select id, name, token, made, seen, revoked from devices")
        known = {ident for (ident,) in rows(db, "select id from devices")}
        touched: list[str] = []
        damaged = 0
        kept = theirs.execute("select id, content, sum from ops order by seq")
        for ident, content, checked_sum in kept:
            if not is_written(content, checked_sum):
                damaged += 1
            elif (why := misfit(str(content))) != "":
                _put_aside(db, (str(ident), str(content), why))
                damaged += 1
            else:
                touched += _taken(db, str(content))
        for row in theirs.execute("select id, content, why from aside"):
            _put_aside(db, cast(tuple[str, str, str], row))
        lost = ops.scrub(db, touched)
        devices.union(db, paired)
        db.execute("update meta set value = ? where name = 'epoch'", (secrets.token_hex(16),))
    if lost is not None:
        store.forget()
        photos.unlink(store, lost)
    new = sum(1 for ident, *_ in paired if ident not in known)
    return len(touched), new, damaged


def _put_aside(db: apsw.Connection, row: tuple[str, str, str]) -> None:
    """Keeps what does not fit, (id, content, why), once."""
    db.execute(
        "insert into aside select ?1, ?2, ?3 where not exists "
        "(select 1 from aside where id = ?1 and content = ?2)",
        row,
    )


def _taken(db: apsw.Connection, content: str) -> list[str]:
    """The record that the operation changed, where it was not here."""
    operation: Operation = orjson.loads(content)
    state = ops.take(db, operation, content)
    if state == "forked":  # both are kept: this one under an id made of what it holds
        operation["id"] = _id_for(content)
        state = ops.take(db, operation, text_of(operation))
    return [operation["record"]] if state == "new" else []


def _id_for(content: str) -> str:
    digest = hashlib.sha256(content.encode()).digest()
    return "d" + "".join(LETTERS[byte % 36] for byte in digest[:16]) + ".1"


def _take_photos(store: Store, old: Store, folder: Path, link: bool) -> tuple[int, list[str]]:
    """All photos but those that were deleted for good since: how many, and which are missing."""
    with old.read() as db:
        theirs = rows(db, "select sha, made from photos order by sha")
        named_there = photos.named_by_any(db)
    with store.read() as db:
        named_here = photos.named_by_any(db)
    dead = set() if named_there is None or named_here is None else named_there - named_here
    wanted = {photo["sha"] for photo in photos.missing(store, [sha for sha, _ in theirs])} - dead
    missing = []
    for sha, made in theirs:
        if sha in wanted and not photos.adopt(store, sha, photos.under(folder, sha), made, link):
            missing.append(sha)
    return len(wanted) - len(missing), missing
