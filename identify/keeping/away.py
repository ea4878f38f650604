"""What else happens to each new backup: locked with a passphrase, taken to a second place."""

import shlex
import subprocess
from dataclasses import dataclass
from pathlib import Path

from identify.errors import UserError
from identify.keeping import locked_backup
from identify.keeping.backup import all_backups
from identify.keeping.store import Store
from identify.keeping.troubles import DiskError

SECONDS = 3600.0  # that the owner's command may take
AWAY = "away"  # under which the store keeps why it could not be done last time
LAST_WORDS = 300  # characters of what it said that are told


@dataclass(frozen=True)
class Away:
    """How the owner wants it: a folder for locked backups and its passphrase, and a command that is
    run with the path of each new backup (the locked one where there is one), "" for none.
    """

    locked: Path | None = None
    passphrase: str = ""
    command: str = ""


def take_away(away: Away, store: Store, folder: Path, name: str) -> str:
    """Does it for the backup of this name in `folder`; what was done, or "". Raises UserError.

    How it went is kept in the store, for whoever asks how things stand.
    """
    try:
        done = _taken(away, folder, name)
    except UserError as error:
        store.set_meta(AWAY, str(error))
        raise
    store.set_meta(AWAY, "")
    return done


def _taken(away: Away, folder: Path, name: str) -> str:
    path, done = folder / name, []
    if away.locked is not None:
        path = locked_backup.lock(path, away.locked, away.passphrase)
        locked_backup.keep_locked(away.locked, {backup["name"] for backup in all_backups(folder)})
        done.append("locked")
    if away.command != "":
        _run([*shlex.split(away.command), str(path.absolute())])
        done.append("taken away")
    return " and ".join(done)


def _run(words: list[str]) -> None:
    try:
        ended = subprocess.run(words, check=False, capture_output=True, timeout=SECONDS, text=True)
    except OSError as error:
        raise DiskError(
            f"The command after the backup could not be started: {error.strerror}."
        ) from None
    except subprocess.TimeoutExpired:
        raise DiskError(
            f"The command after the backup was still at it after {SECONDS / 60:.0f} minutes."
        ) from None
    if ended.returncode != 0:
        said = (ended.stderr or ended.stdout).strip()[-LAST_WORDS:]
        raise DiskError(f"The command after the backup failed ({ended.returncode}): {said}")
