"""SQLite's and our own calls to the disk, written down on their way to the real one, or failing.

The layer below SQLite here has no shared memory, so these stores hold their lock for good
(locking_mode=EXCLUSIVE) and SQLite keeps the index of the log in memory. The files, the order of
writes and of syncs are those of production: WAL, synchronous=FULL.
"""

import errno
import os
from collections.abc import Callable, Iterator
from contextlib import contextmanager, nullcontext
from pathlib import Path
from typing import Any

import apsw

from identify.keeping import files
from identify.keeping.queries import rows
from identify.keeping.store import Store
from tests.keeping.disk import Log

NEW_JOURNAL = apsw.SQLITE_OPEN_MAIN_JOURNAL | apsw.SQLITE_OPEN_WAL


class Trouble:
    """Counts the calls that write, and fails from the `at`-th on, `times` times (0: none fails)."""

    def __init__(self, at: int = 0, times: int = 1, number: int = errno.EIO) -> None:
        self.at, self.times, self.number, self.count = at, times, number, 0

    def now(self) -> bool:
        self.count += 1
        return self.at > 0 and self.at <= self.count < self.at + self.times


class Recorder:
    """Where both layers write down what they do."""

    def __init__(self, root: Path) -> None:
        self.log = Log(str(root))
        self.trouble = Trouble()

    def step(self) -> int:
        """0, or the number of the error that this call is to end with."""
        return self.trouble.number if self.trouble.now() else 0


class RecordedFile(apsw.VFSFile):
    def __init__(self, recorder: Recorder, name: Any, flags: list[int]) -> None:
        self.recorder = recorder
        self.path = name.filename() if isinstance(name, apsw.URIFilename) else (name or "")
        # a temporary file has no name, and nothing of it is to last
        new = self.path != "" and not os.path.exists(self.path)
        super().__init__("", name, flags)
        self.names_unsafe = new and bool(flags[0] & NEW_JOURNAL)
        if new:
            recorder.log.add("file", self.path)

    def xWrite(self, data: Any, offset: int) -> None:  # noqa: N802
        self._maybe_fail(apsw.SQLITE_IOERR_WRITE)
        super().xWrite(data, offset)
        self._add("write", offset, bytes(data))

    def xTruncate(self, size: int) -> None:  # noqa: N802
        self._maybe_fail(apsw.SQLITE_IOERR_TRUNCATE)
        super().xTruncate(size)
        self._add("cut", size)

    def xSync(self, flags: int) -> None:  # noqa: N802
        self._maybe_fail(apsw.SQLITE_IOERR_FSYNC)
        super().xSync(flags)
        self._add("sync")
        if self.names_unsafe:  # SQLite's own layer syncs the folder of a new journal then as well
            self.names_unsafe = False
            self.recorder.log.add("sync", os.path.dirname(self.path))

    def _add(self, kind: str, *what: Any) -> None:
        if self.path != "":
            self.recorder.log.add(kind, self.path, *what)

    def _maybe_fail(self, code: int) -> None:
        number = self.recorder.step()
        if number == errno.ENOSPC:
            raise apsw.FullError("no space")
        if number:
            error = apsw.IOError("the disk fails")
            error.extendedresult = code
            raise error


class RecordedFiles(apsw.VFS):
    def __init__(self, name: str, recorder: Recorder) -> None:
        self.recorder = recorder
        super().__init__(name, "")

    def xOpen(self, name: Any, flags: list[int]) -> RecordedFile:  # noqa: N802
        return RecordedFile(self.recorder, name, flags)

    def xDelete(self, filename: str, syncdir: bool) -> None:  # noqa: N802
        super().xDelete(filename, syncdir)
        self.recorder.log.add("unlink", filename)
        if syncdir:
            self.recorder.log.add("sync", os.path.dirname(filename))


class RecordedOs:
    """The calls of identify/keeping/files.py, done for real and written down."""

    def __init__(self, recorder: Recorder) -> None:
        self.recorder = recorder
        self.open_files: dict[int, str] = {}

    def __getattr__(self, name: str) -> Any:
        return getattr(os, name)

    def open(self, path: Any, flags: int, mode: int = 0o777) -> int:
        new = bool(flags & os.O_CREAT) and not os.path.exists(path)
        if flags & os.O_CREAT:
            self._maybe_fail(path)
        handle = os.open(path, flags, mode)
        self.open_files[handle] = str(path)
        if new:
            self.recorder.log.add("file", str(path))
        if flags & os.O_TRUNC:
            self.recorder.log.add("cut", str(path), 0)
        return handle

    def write(self, handle: int, data: Any) -> int:
        path = self.open_files[handle]
        self._maybe_fail(path)
        at = os.lseek(handle, 0, os.SEEK_END)  # all that files.py writes goes to the end
        count = os.write(handle, data)
        self.recorder.log.add("write", path, at, bytes(data[:count]))
        return count

    def fsync(self, handle: int) -> None:
        self._maybe_fail(self.open_files[handle])
        os.fsync(handle)
        self.recorder.log.add("sync", self.open_files[handle])

    def close(self, handle: int) -> None:
        del self.open_files[handle]
        os.close(handle)

    def mkdir(self, path: Any, mode: int) -> None:
        self._maybe_fail(path)
        os.mkdir(path, mode)
        self.recorder.log.add("folder", str(path))

    def replace(self, source: Any, target: Any) -> None:
        self._maybe_fail(source)
        os.replace(source, target)
        self.recorder.log.add("move", str(source), str(target))

    def link(self, source: Any, target: Any) -> None:
        self._maybe_fail(source)
        os.link(source, target)
        self.recorder.log.add("link", str(source), str(target))

    def unlink(self, path: Any) -> None:
        os.unlink(path)
        self.recorder.log.add("unlink", str(path))

    def _maybe_fail(self, path: Any) -> None:
        number = self.recorder.step()
        if number:
            raise OSError(number, os.strerror(number), str(path))


def everything(db: apsw.Connection) -> dict[str, Any]:
    """All that a database says: its version, and every row of every table."""
    tables = [name for (name,) in rows(db, "select name from sqlite_schema where type = 'table'")]
    said: dict[str, Any] = {"": db.pragma("user_version")}
    for name in tables:
        said[name] = sorted(rows(db, f"select * from {name}"), key=repr)
    return said


class RecordedStore(Store):
    """The real store upon a recorded disk; what it acknowledges is written down as well."""

    recorder: Recorder
    SETTINGS = (("locking_mode", "exclusive"), ("wal_autocheckpoint", "12"), *Store.SETTINGS)

    def __init__(self, folder: Path) -> None:
        super().__init__(folder)
        self._acknowledge()

    def _acknowledge(self) -> None:
        with self._lock:
            self.recorder.log.ack(str(self.folder), everything(self._db))

    @contextmanager
    def write(self) -> Iterator[apsw.Connection]:
        with super().write() as db:
            yield db
        self._acknowledge()


class AsIfSynced(RecordedStore):
    """Wrong on purpose: acknowledges what was never synced."""

    SETTINGS = (*RecordedStore.SETTINGS, ("synchronous", "off"))


class SeldomSynced(RecordedStore):
    """Wrong on purpose: syncs the log only when it is copied into the file."""

    SETTINGS = (*RecordedStore.SETTINGS, ("synchronous", "normal"))


class TooEarly(RecordedStore):
    """Wrong on purpose: acknowledges before it is committed."""

    @contextmanager
    def write(self) -> Iterator[apsw.Connection]:
        with Store.write(self) as db:
            yield db
            self._acknowledge()


@contextmanager
def recorded(
    root: Path, kind: type[RecordedStore] = RecordedStore
) -> Iterator[tuple[Recorder, Callable[[Path], RecordedStore]]]:
    """A recorder of all that happens under `root`, and what opens stores there."""
    recorder = Recorder(root)
    name = f"recorded-{id(recorder)}"
    layer = RecordedFiles(name, recorder)
    made = type(kind.__name__, (kind,), {"VFS": name, "recorder": recorder})
    files.os = RecordedOs(recorder)
    try:
        with nullcontext(layer):
            yield recorder, made
    finally:
        files.os = os
        layer.unregister()
