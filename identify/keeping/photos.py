"""Photos, each a file named after the SHA-256 of its bytes. A row says: it is whole and checked.

The order that loses nothing: the bytes on the disk, the name on the disk, then the row.
"""

import contextlib
import hashlib
import re
import threading
from collections.abc import Iterable
from datetime import datetime
from pathlib import Path
from typing import Any

import apsw
import orjson

from identify.core.types.operations import Operation
from identify.keeping import files
from identify.keeping.photo_checks import check_picture
from identify.keeping.queries import rows
from identify.keeping.schema import is_written
from identify.keeping.store import Store
from identify.keeping.troubles import DiskError, RefusedError, disk_troubles
from identify.keeping.types import MissingPhoto, Received

CHUNK = 256 * 1024
LARGEST = 8 * 1024 * 1024
LEFT_OVER_DAYS = 3
SHA = re.compile(r"[0-9a-f]{64}")

_receiving = threading.Lock()


def missing(store: Store, shas: list[Any]) -> list[MissingPhoto]:
    """Those of these that are not here yet: [{sha, have: bytes that came}]. Raises RefusedError."""
    wanted = [_sha(sha) for sha in shas]
    with store.read() as db:
        there = dict(rows(db, "select sha, size from photos"))
    with disk_troubles():
        return [
            {"sha": sha, "have": _size(_part(store, sha))}
            for sha in wanted
            if sha not in there or _size(path_of(store, sha)) != there[sha]
        ]


def receive(
    store: Store, sha: str, data: bytes, *, start: int, size: int, now: datetime
) -> Received:
    """Takes in a chunk that begins at `start` of a photo of `size` bytes: {have, whole}.

    A chunk that does not follow on what is here is left out, and `have` says where to go on. When
    the last one is in, the photo is checked: RefusedError where it is not what its name says or
    holds more than a picture; it then has to be sent from the start. whole: it is on the disk for
    good.
    """
    path = _part(store, _sha(sha))
    if not 0 < size <= LARGEST:
        raise RefusedError(f"A photo may have up to {LARGEST // 2**20} MB. Send a smaller one.")
    if not 0 < len(data) <= CHUNK:
        raise RefusedError(f"A photo is sent in chunks of 1 to {CHUNK // 1024} KB.")
    if not 0 <= start <= size - len(data):
        raise RefusedError(
            "This chunk lies outside the photo. Ask what is missing and go on from there."
        )
    with _receiving:
        if not missing(store, [sha]):
            return {"have": size, "whole": True}
        with disk_troubles():
            have = _size(path)
            if start == have:
                files.make_folder(path.parent)
                files.append(path, data)
                have += len(data)
            if have < size:
                return {"have": have, "whole": False}
            _finish(store, sha, size, now)
    return {"have": size, "whole": True}


def read(store: Store, sha: str) -> bytes | None:
    """The bytes of a photo, or None where it is not here. Raises RefusedError."""
    if missing(store, [sha]):
        return None
    with disk_troubles():
        data = whole(path_of(store, sha), sha)
        if data is not None:
            return data
    with _receiving, disk_troubles():
        data = whole(path_of(store, sha), sha)  # it may have come again since
        if data is None:  # a device that has it sends it again
            with contextlib.suppress(DiskError), store.write() as db:
                db.execute("delete from photos where sha = ?", (sha,))
    return data


def known(store: Store) -> dict[str, int]:
    """Every photo that is here: {sha: size}."""
    with store.read() as db:
        return dict(rows(db, "select sha, size from photos order by sha"))


def tidy(store: Store, now: datetime) -> int:
    """Takes away what was begun and not gone on with for days; how many files."""
    there = known(store)
    before = now.timestamp() - LEFT_OVER_DAYS * 86_400
    with _receiving, disk_troubles():
        parts = (store.folder / "incoming").glob("*.part")
        left = [path for path in parts if SHA.fullmatch(path.stem)]
        left += kept_in(store.folder / "photos")
        left += (store.folder / "photos").glob("??/.*.jpg.part")
        old = [path for path in left if path.stem not in there and path.stat().st_mtime < before]
        for path in old:
            files.remove(path)
    return len(old)


def adopt(store: Store, sha: str, source: Path, made: str, link: bool) -> bool:
    """Keeps a photo of a backup, copied or linked; False where that file is not sound."""
    with disk_troubles():
        data = whole(source, sha)
        if data is None:
            return False
        if not (link and files.linked(source, path_of(store, sha))):
            files.write_whole(path_of(store, sha), data)
    _row(store, sha, len(data), made)
    return True


def whole(path: Path, sha: str) -> bytes | None:
    """The bytes of this file, or None where they are not what its name says."""
    try:
        data = path.read_bytes()
    except FileNotFoundError:
        return None
    return data if hashlib.sha256(data).hexdigest() == sha else None


def path_of(store: Store, sha: str) -> Path:
    """Where a photo's file is."""
    return under(store.folder / "photos", sha)


def under(folder: Path, sha: str) -> Path:
    """Where a photo's file is in a folder of photos."""
    return folder / sha[:2] / f"{sha}.jpg"


def kept_in(folder: Path) -> list[Path]:
    """The files of photos in a folder of photos, and nothing else that someone has put there."""
    paths = sorted(folder.glob("??/*.jpg"))
    return [path for path in paths if SHA.fullmatch(path.stem) and path == under(folder, path.stem)]


def named(operation: Operation) -> set[str]:
    """The SHA-256 that an operation names."""
    if operation["type"] != "photo":
        return set()
    shas = [operation["fields"].get(name) for name in ("full", "small")]
    return {sha for sha in shas if isinstance(sha, str) and SHA.fullmatch(sha)}


def unnamed(db: apsw.Connection, shas: Iterable[str]) -> list[str]:
    """Within a transaction: those that no operation names any more; their rows go."""
    asked = set(shas)
    named_by_all = named_by_any(db) if asked else set()
    lost = [] if named_by_all is None else sorted(asked - named_by_all)
    for sha in lost:
        db.execute("delete from photos where sha = ?", (sha,))
    return lost


def named_by_any(db: apsw.Connection) -> set[str] | None:
    """The SHA-256 of every photo that an operation names; None where one of these is damaged, so
    that nobody knows.
    """
    shas: set[str] = set()
    named_rows = rows(db, "select content, sum from ops where scrubbed = 0 and record like 'p%'")
    for content, checked_sum in named_rows:
        if not is_written(content, checked_sum):
            return None
        shas |= named(orjson.loads(content))
    return shas


def unlink(store: Store, shas: list[str]) -> None:
    """Takes away the files of photos whose rows are gone, and did not come back since."""
    with _receiving, disk_troubles():
        there = known(store)
        for sha in shas:
            if sha in there:
                continue
            files.remove(path_of(store, sha))
            files.remove(_part(store, sha))
            if path_of(store, sha).parent.is_dir():
                files.sync_folder(path_of(store, sha).parent)


def _finish(store: Store, sha: str, size: int, now: datetime) -> None:
    path = _part(store, sha)
    data = path.read_bytes()
    try:
        if len(data) != size or hashlib.sha256(data).hexdigest() != sha:
            raise RefusedError(
                "The photo that arrived is not the one that was meant. Send it again."
            )
        check_picture(data)
        files.sync(path)
        files.move(path, path_of(store, sha))
    except BaseException:
        files.remove(path)  # after a failed fsync its bytes cannot be trusted either
        raise
    _row(store, sha, size, now.isoformat())


def _row(store: Store, sha: str, size: int, made: str) -> None:
    with store.write() as db:
        db.execute("insert or replace into photos values (?, ?, ?)", (sha, size, made))


def _sha(sha: Any) -> str:
    if not (isinstance(sha, str) and SHA.fullmatch(sha)):
        raise RefusedError("A photo is named by its SHA-256: 64 of 0 to 9 and a to f.")
    return sha


def _part(store: Store, sha: str) -> Path:
    return store.folder / "incoming" / f"{sha}.part"


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except FileNotFoundError:
        return 0
