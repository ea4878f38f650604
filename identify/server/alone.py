"""One server at a time on one folder: two would take away each other's photos and share no limit.

The commands run beside a server; they go through SQLite's own locks only.
"""

import contextlib
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import apsw

from identify.errors import UserError
from identify.keeping import files

LOCK = "serving.lock"  # an empty database: SQLite locks it alike on every system


@contextmanager
def alone(folder: Path) -> Iterator[None]:
    """Holds the folder for this server; the lock goes with its process, however that ends.

    Raises UserError where another server has it. Where no lock can be written (a full disk, a
    folder that is read-only or none), the store says what is wrong when it is opened.
    """
    db = None
    try:
        files.make_folder(folder)
        files.append(folder / LOCK, b"")  # readable for its owner only, from the start
        db = apsw.Connection(str((folder / LOCK).absolute()))
        db.execute("begin exclusive")
    except (apsw.BusyError, apsw.LockedError):
        raise UserError(
            f"Another server is running with the data in {folder}. Use that one, or stop it first. "
            "For another collection, name another folder: --data."
        ) from None
    except (apsw.Error, OSError):
        pass
    try:
        yield
    finally:
        if db is not None:
            with contextlib.suppress(apsw.Error):
                db.close(True)
