"""The commands that keep the kept: backup and restore."""

import argparse
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import orjson

from identify import keeping
from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping.away import Away, take_away
from identify.keeping.data_folder import backup_folder, data_folder
from identify.keeping.locked_backup import ENDING, read_passphrase, unlocked
from identify.keeping.restore import restore as restore_from
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DAMAGED
from identify.keeping.upgrade import upgrade_check
from identify.keeping.verify import repair
from identify.keeping.verify import verify as checked


def backup(args: argparse.Namespace) -> int:
    """Make a backup of the server's data, and try it out."""
    data = args.data or data_folder()
    _there(data)
    folder = args.to or backup_folder(data)
    away = asked_away(args)
    with keeping.open(data) as store:
        made = backups.backup(store, folder, datetime.now(UTC))
        done = take_away(away, store, folder, made["name"])
    print(
        f"{folder / made['name']}: {made['records']} records and {made['photos']} photos, "
        "restored on trial and found the same."
    )
    if done:
        print(f"It was {done}.")
    if made["missing"]:
        print(f"{len(made['missing'])} photos could not be read and are in no earlier backup.")
    return 0


def upgrade(args: argparse.Namespace) -> int:
    """Say what this version would change in the data, and keep a copy for going back."""
    data = args.data or data_folder()
    checked = upgrade_check(data, args.to or backup_folder(data), datetime.now(UTC))
    print(f"Read: {checked.operations} changes, kept in version {checked.version} of the data.")
    if checked.copy is None:
        print("This program keeps the same version: nothing would change.")
        return 0
    print(f"This program keeps version {checked.newest}. It would bring:")
    for step in checked.steps:
        print(f"  {step}")
    print("Tried on a copy: every change came through the same.")
    print(
        f"To go back to the program you have now, stop the server and put {checked.copy / FILE} "
        "in place of the upgraded file; phones send again what came since."
    )
    return 0


def restore(args: argparse.Namespace) -> int:
    """Merge a backup into the server's data."""
    data = args.data or data_folder()
    with keeping.open(data) as store, _plain(args, store) as folder:
        taken = restore_from(store, folder)
    print(
        f"Restored: {taken['operations']} changes, {taken['photos']} photos and "
        f"{taken['devices']} devices that were not here. What was here stayed."
    )
    if taken["damaged"]:
        print(
            f"{taken['damaged']} changes in this backup are not what was written, and were left "
            "out. Restore the backup before it as well: it may have them whole."
        )
    if taken["missing"]:
        print(
            f"{len(taken['missing'])} photos are not in this backup. A phone that has them sends "
            "them again."
        )
    print(
        "Look through the list of devices: one that was unpaired after this backup may be in it "
        "again."
    )
    return 0


@contextmanager
def _plain(args: argparse.Namespace, store: Store) -> Iterator[Path]:
    """The folder of the backup to restore; a locked one is open as long as this lasts."""
    if not args.backup.name.endswith(ENDING):
        yield args.backup
        return
    if args.passphrase_file is None:
        raise UserError(
            "This backup is locked. Name the file with its passphrase: --passphrase-file."
        )
    with unlocked(args.backup, read_passphrase(args.passphrase_file), store.folder) as folder:
        yield folder


def asked_away(args: argparse.Namespace) -> Away:
    """What is to happen to each backup, by the options of add_away. Raises UserError."""
    if (args.locked is None) != (args.passphrase_file is None):
        raise UserError(
            "A folder for locked backups and a passphrase go together: name both, --locked and "
            "--passphrase-file."
        )
    phrase = read_passphrase(args.passphrase_file) if args.passphrase_file else ""
    return Away(args.locked, phrase, args.after_backup or "")


def add_away(p: argparse.ArgumentParser) -> None:
    """Adds the options for what happens to each backup besides."""
    p.add_argument("--locked", type=Path, help="folder for a locked copy of each backup, one file")
    p.add_argument("--passphrase-file", type=Path, help="file whose first line locks those copies")
    p.add_argument(
        "--after-backup",
        metavar="COMMAND",
        help="run after each backup, with the path of the (locked) backup at its end",
    )


def verify(args: argparse.Namespace) -> int:
    """Say whether the server's data is what was written; with --repair, set aside what is not."""
    data = args.data or data_folder()
    _there(data)
    with keeping.open(data) as store:
        verified = checked(store)
        for change in verified["wrong"]:
            print(f"{change['id']}, a change of {change['record']}: {change['why']}")
        for sha in verified["photos_wrong"]:
            print(f"{sha}, a photo: it is not what was written, or is not there.")
        for row in verified["aside"]:
            print(f"{row['id']}, set aside earlier: {row['why']}")
        if verified["database"]:
            print(f"The database itself is damaged: {verified['database']}")
            raise UserError(DAMAGED)
        if args.out:
            args.out.write_bytes(orjson.dumps(verified["aside"], option=orjson.OPT_INDENT_2))
        wrong = len(verified["wrong"]) + len(verified["photos_wrong"])
        changes, photos = verified["operations"], verified["photos"]
        print(f"Looked at {changes} changes and {photos} photos: ", end="")
        if wrong == 0:
            print("all are as they were written.")
            return 0
        if not args.repair:
            print(f"{wrong} are not. Check the disk, then run verify --repair.")
            return 1
        repair(store, verified)
    print(
        f"{wrong} were set aside, and nothing was deleted. Each phone that syncs sends what it has "
        "of them; what none has is in the backups: restore the newest one."
    )
    return 0


def _there(data: Path) -> None:
    if not (data / FILE).is_file():
        raise UserError(
            f"There is no data in {data}. Name the folder that the server keeps: --data."
        )


def add(commands: "argparse._SubParsersAction[Any]") -> None:
    """Adds the parsers of these commands."""
    folder = "folder of the data ($IDENTIFY_DATA, else ~/.local/share/identify)"
    p = commands.add_parser("backup", help="make a backup of the server's data, and try it out")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--to", type=Path, help="folder of the backups (beside the data)")
    add_away(p)
    p.set_defaults(run=backup)

    p = commands.add_parser("upgrade-check", help="say what this version would change in the data")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--to", type=Path, help="folder for the copy (that of the backups)")
    p.set_defaults(run=upgrade)

    p = commands.add_parser("verify", help="say whether the server's data is undamaged")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--repair", action="store_true", help="set aside what is damaged")
    p.add_argument("--out", type=Path, help="write what was set aside into this file (JSON)")
    p.set_defaults(run=verify)

    p = commands.add_parser("restore", help="merge a backup into the server's data")
    p.add_argument("backup", type=Path, help="folder of the backup, or the file of a locked one")
    p.add_argument("--passphrase-file", type=Path, help="file whose first line opens a locked one")
    p.add_argument("--data", type=Path, help=folder)
    p.set_defaults(run=restore)
