"""The commands that keep the kept: backup and restore."""

import argparse
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

from identify import keeping
from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping.folders import backup_folder, data_folder
from identify.keeping.restore import restore as restore_from
from identify.keeping.store import FILE


def backup(args: argparse.Namespace) -> int:
    """Make a backup of the server's data, and try it out."""
    data = args.data or data_folder()
    if not (data / FILE).is_file():
        raise UserError(
            f"There is no data in {data}. Name the folder that the server keeps: --data."
        )
    folder = args.to or backup_folder(data)
    with keeping.open(data) as store:
        made = backups.backup(store, folder, datetime.now(UTC))
    print(
        f"{folder / made['name']}: {made['records']} records and {made['photos']} photos, "
        "restored on trial and found the same."
    )
    if made["missing"]:
        print(f"{len(made['missing'])} photos could not be read and are in no earlier backup.")
    return 0


def restore(args: argparse.Namespace) -> int:
    """Merge a backup into the server's data."""
    data = args.data or data_folder()
    with keeping.open(data) as store:
        found = restore_from(store, args.backup)
    print(
        f"Taken in: {found['operations']} changes, {found['photos']} photos and "
        f"{found['devices']} devices that were not here. What was here stayed."
    )
    if found["missing"]:
        print(
            f"{len(found['missing'])} photos are not in this backup. A phone that has them sends "
            "them again."
        )
    print("Look through the list of devices: one shut out after this backup may be in it again.")
    return 0


def add(commands: "argparse._SubParsersAction[Any]") -> None:
    """Adds the parsers of these commands."""
    folder = "folder of the data ($IDENTIFY_DATA, else ~/.local/share/identify)"
    p = commands.add_parser("backup", help="make a backup of the server's data, and try it out")
    p.add_argument("--data", type=Path, help=folder)
    p.add_argument("--to", type=Path, help="folder of the backups (beside the data)")
    p.set_defaults(run=backup)

    p = commands.add_parser("restore", help="merge a backup into the server's data")
    p.add_argument("backup", type=Path, help="folder of the backup")
    p.add_argument("--data", type=Path, help=folder)
    p.set_defaults(run=restore)
