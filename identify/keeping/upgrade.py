"""What a new version of the program would change in the kept data, tried out on a copy of it first.

<backups>/before-version-5-<time>/identify.sqlite    the data as the version before can read it
"""

import hashlib
import shutil
import tempfile
from datetime import UTC, datetime
from pathlib import Path
from typing import NamedTuple

import apsw

from identify.keeping import files
from identify.keeping.backup import NAMED
from identify.keeping.queries import rows
from identify.keeping.schema import MIGRATIONS, check
from identify.keeping.store import FILE, Store, copy_database
from identify.keeping.troubles import DamagedError, RefusedError, disk_troubles


class Upgrade(NamedTuple):
    """From which version to which, what each step brings, how many changes are kept, and the copy
    for going back; None where nothing would change.
    """

    version: int
    newest: int
    steps: list[str]
    operations: int
    copy: Path | None


def upgrade_check(data: Path, backups: Path, now: datetime) -> Upgrade:
    """Copies the data as it is, lets this version upgrade a second copy, and compares.

    The data itself is only read; a server may run. Photos are files that no step touches. Raises
    UserError: RefusedError where there is no data, DamagedError where the trial went wrong.
    """
    if not (data / FILE).is_file():
        raise RefusedError(f"There is no data in {data}. Name the folder that the server keeps.")
    with disk_troubles(), tempfile.TemporaryDirectory(dir=data, prefix=".upgrading-") as trial:
        copied = Path(trial) / FILE
        version = _copied(data / FILE, copied)
        before = _held(copied)
        kept = Path(trial) / "kept.sqlite"
        shutil.copyfile(copied, kept)
        with Store(Path(trial)) as store, store.read() as db:  # opening it is what upgrades it
            sound = rows(db, "pragma integrity_check") == [("ok",)]
        if not sound or _held(copied) != before:
            raise DamagedError(
                "The upgrade was tried on a copy, and something was not the same afterwards. "
                "Do not upgrade; the data is as it was."
            )
        copy = None
        if version < len(MIGRATIONS):
            time = now.astimezone(UTC).strftime(NAMED)
            copy = backups / f"before-version-{len(MIGRATIONS)}-{time}"
            files.copy_whole(kept, copy / FILE)
    steps = [step.__doc__ or "" for step in MIGRATIONS[version:]]
    return Upgrade(version, len(MIGRATIONS), steps, len(before), copy)


def _copied(source: Path, target: Path) -> int:
    """Copies a database as it is at one moment; its version."""
    files.append(target, b"")  # readable for its owner only, from the start
    old = apsw.Connection(str(source), flags=apsw.SQLITE_OPEN_READONLY)
    try:
        check(old)
        copy_database(old, target)
        return int(old.pragma("user_version"))
    finally:
        old.close(True)


def _held(file: Path) -> list[tuple[str, str]]:
    """Each operation's id, and a digest of what it holds, by id."""
    db = apsw.Connection(str(file))
    try:
        ops_there = rows(db, "select id, content from ops")
        if rows(db, "select 1 from sqlite_schema where name = 'aside'"):  # what does not fit
            ops_there += rows(db, "select id, content from aside")
    finally:
        db.close(True)
    return sorted((id_, hashlib.sha256(text.encode()).hexdigest()) for id_, text in ops_there)
