"""python -m tests.keeping.killed WHAT FOLDER: work that a test kills. It says what is acknowledged.

Every line it prints is flushed at once, so that what was printed had happened.
"""

import sys
from datetime import UTC, datetime
from itertools import count
from pathlib import Path
from random import Random

from identify import keeping
from identify.keeping import backup, ops, photos
from identify.keeping.restore import restore
from tests.keeping.samples import Writer, picture, sha

NOW = datetime(2026, 5, 1, tzinfo=UTC)


def say(*what: object) -> None:
    """One line at once."""
    print(*what, flush=True)


def push(folder: Path) -> None:
    """Pushes, sends photos and deletes for good without end."""
    writer = Writer(Random(0))
    with keeping.open(folder / "data") as store:
        say("ready")
        for number in count():
            record = f"r{number % 20}"
            new = [writer.operation(record, {"name": f"n{number}" * 50}) for _ in range(3)]
            if number % 10 == 9:
                new.append(writer.operation(record, {"gone": True}))
            for ident in ops.push(store, new)["held"]:
                say("held", ident)
            data = picture(number)
            photos.receive(store, sha(data), data, start=0, size=len(data), now=NOW)
            say("photo", sha(data))


def backups(folder: Path) -> None:
    """Makes backups without end."""
    with keeping.open(folder / "data") as store:
        say("ready")
        while True:
            say("backup", backup.backup(store, folder / "backups", NOW)["name"])


def restored(folder: Path) -> None:
    """Restores one backup into new folders without end."""
    made = backup.all_backups(folder / "backups")[0]["name"]
    say("ready")
    for number in count():
        with keeping.open(folder / f"restored{number}") as store:
            restore(store, folder / "backups" / made)
            say("restored", number)


def upgrade(folder: Path) -> None:
    """Opens a file of an earlier version."""
    say("ready")
    keeping.open(folder / "data").close()
    say("upgraded")


if __name__ == "__main__":
    work = {"push": push, "backups": backups, "restored": restored, "upgrade": upgrade}
    work[sys.argv[1]](Path(sys.argv[2]))
