"""How the kept data stands: can it be written, when was a backup proven, how much room is left."""

import shutil
from datetime import datetime, timedelta
from pathlib import Path
from typing import TypedDict

from identify.errors import UserError
from identify.keeping.away import AWAY
from identify.keeping.backup import LEFT, all_backups
from identify.keeping.store import Store

PHOTOS_STOP = 500 * 2**20  # bytes free; below that there is room for records only
BACKUP_DAYS = 14  # that may go by without a backup that was proven
CHECKED = "checked"  # under which the store keeps when it was last written to on trial


class Standing(TypedDict):
    """well: nothing here needs anybody.

    writable: the store took a change just now. backup: when the last one was made and restored on
    trial (ISO 8601), "" for never; overdue: that is more than BACKUP_DAYS ago. away: why the last
    one could not be locked or taken to the second place, "" where it could or nobody asked for it.
    free: bytes left on the disk; full: too few for photos. left_over: folders of runs that were cut
    off, which the server clears as it runs.
    """

    well: bool
    writable: bool
    backup: str
    overdue: bool
    away: str
    free: int
    full: bool
    left_over: int


def standing(store: Store, backups: Path, now: datetime) -> Standing:
    """How it stands now. Raises UserError only where not even the disk can be asked."""
    writable = True
    try:
        store.set_meta(CHECKED, now.isoformat())
    except UserError:
        writable = False
    moments = [backup["made"] for backup in all_backups(backups)]
    last = max((made for made in moments if datetime.fromisoformat(made) <= now), default="")
    overdue = last == "" or now - datetime.fromisoformat(last) > timedelta(days=BACKUP_DAYS)
    away = store.meta(AWAY)
    free = room(store)
    full = free < PHOTOS_STOP
    left = [
        path for folder in (backups, store.folder) for each in LEFT for path in folder.glob(each)
    ]
    return {
        "well": writable and not overdue and not full and away == "",
        "writable": writable,
        "backup": last,
        "overdue": overdue,
        "away": away,
        "free": free,
        "full": full,
        "left_over": len(left),
    }


def room(store: Store) -> int:
    """Bytes that are free where the data is kept."""
    return shutil.disk_usage(store.folder).free
