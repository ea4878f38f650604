"""The collector's own store: one SQLite file, one writer, and the photos beside it.

Every change is one transaction with synchronous=FULL in WAL mode: when `write` ends, it is on the
disk (sqlite.org, "Write-Ahead Logging" and pragma synchronous).
"""

import contextlib
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import ClassVar

import apsw

from identify.keeping import files
from identify.keeping.queries import value
from identify.keeping.schema import check, migrate
from identify.keeping.troubles import RefusedError, disk_troubles

FILE = "identify.sqlite"


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
            if not (self.folder / FILE).exists():
                files.append(self.folder / FILE, b"")  # readable for its owner only, from the start
            self._db = apsw.Connection(str(self.folder / FILE), vfs=self.VFS)
            try:
                self._db.set_busy_timeout(10_000)
                for name, value in self.SETTINGS:
                    self._db.pragma(name, value)
                check(self._db)
                self._db.pragma("journal_mode", "wal")
                migrate(self._db)
            except BaseException:
                self._db.close(True)
                raise

    def close(self) -> None:
        """Ends it. A store that is never closed loses nothing either: it is in the log."""
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
            copy = apsw.Connection(str(target), vfs=self.VFS)
            running = copy.backup("main", self._db, "main")
            try:
                running.step()
                running.finish()
                copy.pragma("journal_mode", "delete")  # one file, whole by itself
            finally:
                running.close(True)
                copy.close(True)

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
