"""The collector's own store: one SQLite file, one writer, and the photos beside it.

Every change is one transaction with synchronous=FULL in WAL mode: when `write` ends, it is on the
disk (sqlite.org, "Write-Ahead Logging" and pragma synchronous).
"""

import contextlib
import threading
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import ClassVar

import apsw

from identify.keeping import files
from identify.keeping.queries import value
from identify.keeping.schema import check, migrate
from identify.keeping.troubles import RefusedError, disk_troubles

FILE = "identify.sqlite"
# A full disk has no room for the index that several programs share: it is then for one alone.
NO_INDEX = (apsw.SQLITE_IOERR_SHMOPEN, apsw.SQLITE_IOERR_SHMSIZE, apsw.SQLITE_IOERR_SHMMAP)
ALONE = ("locking_mode", "exclusive")
MISSING = (
    "{file} is missing, and there is more of a collection beside it. Put the file back, or set the "
    "whole folder aside (do not delete it) and restore the newest backup into a new one. To begin "
    "with an empty collection, name an empty folder."
)


class Store:
    """The data in one folder. Threads may share it. Raises UserError for what goes wrong."""

    VFS: ClassVar[str | None] = None
    # trusted_schema: what the file says is run must not reach beyond it (sqlite.org, "Defense
    # Against The Dark Arts"). secure_delete: what was deleted for good is written over.
    SETTINGS: ClassVar[tuple[tuple[str, str], ...]] = (
        ("synchronous", "full"),
        ("foreign_keys", "on"),
        ("trusted_schema", "off"),
        ("secure_delete", "on"),
        ("temp_store", "memory"),
    )

    def __init__(self, folder: Path) -> None:
        self.folder = folder.absolute()
        self._lock = threading.RLock()
        if self.folder.exists() and not self.folder.is_dir():
            raise RefusedError(f"{self.folder} is a file. Name a folder for the data.")
        with disk_troubles():
            files.make_folder(self.folder)
            if _size(self.folder / FILE) == 0:
                self._begin()
            try:
                self._db = self._opened(self.SETTINGS)
            except apsw.IOError as error:
                if getattr(error, "extendedresult", 0) not in NO_INDEX:
                    raise
                self._db = self._opened((ALONE, *self.SETTINGS))

    def _begin(self) -> None:
        """A new file, readable for its owner only from the start, where there never was one."""
        if any((self.folder / "photos").glob("??/*.jpg")) or _size(self.folder / f"{FILE}-wal") > 0:
            raise RefusedError(MISSING.format(file=self.folder / FILE))
        files.append(self.folder / FILE, b"")
        files.sync_folder(self.folder)

    def _opened(self, settings: Iterable[tuple[str, str]]) -> apsw.Connection:
        db = apsw.Connection(str(self.folder / FILE), vfs=self.VFS)
        try:
            db.set_busy_timeout(10_000)
            for name, value in settings:
                db.pragma(name, value)
            check(db)
            db.pragma("journal_mode", "wal")
            migrate(db)
        except BaseException:
            db.close(True)
            raise
        return db

    def close(self) -> None:
        """Ends it, with all of it in the one file.

        A store that is never closed loses nothing either: it is in the log.
        """
        self.forget()
        with self._lock, contextlib.suppress(apsw.Error):
            self._db.close(True)

    def __enter__(self) -> "Store":
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    @contextmanager
    def write(self) -> Iterator[apsw.Connection]:
        """One transaction: when this ends without an error, all of it is on the disk."""
        with self._lock, disk_troubles(), self._transaction("begin immediate") as db:
            yield db

    @contextmanager
    def read(self) -> Iterator[apsw.Connection]:
        """One look, during which nothing changes."""
        with self._lock, disk_troubles(), self._transaction("begin") as db:
            yield db

    @contextmanager
    def _transaction(self, begin: str) -> Iterator[apsw.Connection]:
        self._db.execute(begin)
        try:
            yield self._db
            self._db.execute("commit")
        except BaseException:
            if self._db.in_transaction:
                self._db.execute("rollback")
            raise

    def forget(self) -> None:
        """Takes what was written over out of the log too; later, where someone is still reading."""
        with self._lock, contextlib.suppress(apsw.Error):
            self._db.wal_checkpoint(mode=apsw.SQLITE_CHECKPOINT_TRUNCATE)

    def copy(self, target: Path) -> None:
        """A copy of the database as it is at one moment, by SQLite's own online backup."""
        with self._lock, disk_troubles():
            copy_database(self._db, target, self.VFS)

    @contextmanager
    def opened(self, path: Path) -> Iterator[apsw.Connection]:
        """A copy, opened for reading."""
        with disk_troubles():
            db = apsw.Connection(str(path), flags=apsw.SQLITE_OPEN_READONLY, vfs=self.VFS)
            try:
                yield db
            finally:
                db.close(True)

    def meta(self, name: str) -> str:
        """A setting of the server, or ""."""
        with self.read() as db:
            return str(value(db, "select value from meta where name = ?", name) or "")

    def set_meta(self, name: str, value: str) -> None:
        """Keeps a setting of the server."""
        with self.write() as db:
            db.execute("insert or replace into meta values (?, ?)", (name, value))


def copy_database(source: apsw.Connection, target: Path, vfs: str | None = None) -> None:
    """A copy of a database as it is at one moment, in one file that is whole by itself."""
    copy = apsw.Connection(str(target), vfs=vfs)
    running = copy.backup("main", source, "main")
    try:
        running.step()
        running.finish()
        copy.pragma("journal_mode", "delete")
    finally:
        running.close(True)
        copy.close(True)


def _size(path: Path) -> int:
    try:
        return path.stat().st_size
    except FileNotFoundError:
        return 0
