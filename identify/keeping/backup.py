"""Backups: a folder for each, and all their photos once.

    <folder>/<time>/identify.sqlite   the database at one moment, whole by itself
    <folder>/<time>/manifest.json     when, how much, and which photos: {sha, size} each
    <folder>/photos/ab/<sha>.jpg      the photos of all backups

A backup is made under another name, restored on trial and compared, and only then gets its name.
"""

import hashlib
import secrets
import shutil
import threading
from datetime import UTC, datetime, timedelta
from pathlib import Path

import orjson

from identify.keeping import files, photos
from identify.keeping.manifest import KIND, MANIFEST, manifest_of
from identify.keeping.queries import rows, value
from identify.keeping.restore import restore
from identify.keeping.retention import night_before, to_keep
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DamagedError, DiskError, disk_troubles
from identify.keeping.types import BackupLine, KeptPhoto, MadeBackup, Manifest, NightlyBackup
from identify.keeping.verify import damaged

EMPTIED = b""
NOT_BACKED_UP = (
    "No backup was made, so that the earlier ones stay: {count} of the kept changes are not what "
    "was written, most likely because the disk is failing. Check the disk, then run verify."
)
NAMED = "%Y-%m-%dT%H%M%SZ"
LEFT = (".trial-????????", ".restoring-????????", ".upgrading-????????", ".????-??-??T??????Z-*")
UNFINISHED = timedelta(hours=1)  # one at work writes more often
EARLY = timedelta(hours=1)  # backups of one second get names of seconds to come

_one_at_a_time = threading.Lock()


def backup(store: Store, folder: Path, now: datetime) -> MadeBackup:
    """Makes a backup and tries it out: {name, made, operations, records, photos, bytes, missing}.

    missing: photos that could not be read and are in no earlier backup. Raises UserError; then
    there is no new backup, and the earlier ones are as they were.
    """
    folder = folder.absolute()
    with _one_at_a_time, disk_troubles():
        files.make_folder(folder)
        clear_cut_off(folder, now)
        moment = now.astimezone(UTC).replace(microsecond=0)
        while (folder / moment.strftime(NAMED)).exists():
            moment += timedelta(seconds=1)
        name = moment.strftime(NAMED)
        made = folder / f".{name}-{secrets.token_hex(4)}"
        try:
            files.make_folder(made)
            least = set(_held(store))
            manifest = _fill(store, folder, made, moment)
            _try_out(store, folder, made, least)
            files.move(made, folder / name)
        except BaseException:
            shutil.rmtree(made, ignore_errors=True)
            raise
    return {**_line(name, manifest), "missing": manifest["missing"]}


def all_backups(folder: Path) -> list[BackupLine]:
    """The finished backups, newest first: [{name, made, operations, records, photos, bytes}]."""
    lines = []
    for moment in sorted(_moments(folder), reverse=True):
        name = moment.strftime(NAMED)
        manifest = manifest_of(folder / name)
        if manifest is not None:
            lines.append(_line(name, manifest))
    return lines


def nightly_due(folder: Path, now: datetime) -> bool:
    """Whether there is no backup yet since the last 3 o'clock (of the time zone of `now`).

    One that bears a later time than now was made by a clock that was wrong, and does not count.
    """
    return not any(night_before(now) <= moment <= now for moment in _moments(folder))


def nightly(store: Store, folder: Path, now: datetime) -> NightlyBackup:
    """The backup of a night: makes one, lets go of old ones, clears what was left over.

    -> as of `backup`, with to_come: names of backups that bear a time to come.
    """
    made = backup(store, folder, now)
    keep_newest(folder, now)
    photos.tidy(store, now)
    with disk_troubles():
        clear_cut_off(store.folder, now)
    moments = sorted(_moments(folder))
    to_come = [moment.strftime(NAMED) for moment in moments if moment > now + EARLY]
    return {**made, "to_come": to_come}


def keep_newest(folder: Path, now: datetime) -> list[str]:
    """Takes away the backups that need not stay (retention.py), and photos of none; their names.

    Those that bear a time to come were made by a clock that was wrong: they stay, and count for
    nothing.
    """
    with _one_at_a_time, disk_troubles():
        moments = [
            moment
            for moment in _moments(folder)
            if moment <= now + EARLY and manifest_of(folder / moment.strftime(NAMED))
        ]
        going = sorted(set(moments) - to_keep(moments))
        names = [moment.strftime(NAMED) for moment in going]
        for name in names:
            away = folder / f".{name}-going"  # at once no backup any more, however far it gets
            files.move(folder / name, away)
            shutil.rmtree(away)
        if names:
            _clear_photos(folder)
    return names


def _fill(store: Store, folder: Path, made: Path, moment: datetime) -> Manifest:
    store.copy(made / FILE)
    files.sync(made / FILE)
    with store.opened(made / FILE) as db:
        shas = rows(db, "select sha, size from photos order by sha")
        broken = damaged(db)
        operations = value(db, "select count(*) from ops")
        records = value(db, "select count(distinct record) from ops")
    if broken > 0:
        raise DamagedError(NOT_BACKED_UP.format(count=broken))
    there: list[KeptPhoto] = []
    missing: list[str] = []
    for sha, size in shas:
        if _copied(store, folder, sha):
            there.append({"sha": sha, "size": size})
        else:
            missing.append(sha)
    manifest: Manifest = {
        "kind": KIND,
        "format": 1,
        "made": moment.isoformat(),
        "operations": operations,
        "records": records,
        "photos": there,
        "missing": missing,
        "bytes": (made / FILE).stat().st_size + sum(photo["size"] for photo in there),
    }
    files.write_whole(made / MANIFEST, orjson.dumps(manifest, option=orjson.OPT_INDENT_2))
    return manifest


def _copied(store: Store, folder: Path, sha: str) -> bool:
    """Whether the folder of photos has this one in the end."""
    target = photos.under(folder / "photos", sha)
    if photos.whole(target, sha) is not None:
        return True
    data = photos.whole(photos.path_of(store, sha), sha)
    if data is not None:
        files.write_whole(target, data)
    return data is not None


def _try_out(store: Store, folder: Path, made: Path, least: set[str]) -> None:
    """Restores the backup into an empty store and compares; `least` must be there.

    Raises DiskError where it differs.
    """
    trial = folder / f".trial-{secrets.token_hex(4)}"
    try:
        with type(store)(trial) as empty:
            outcome = restore(empty, made, link=True)
            restored = _held(empty)
            kept = photos.known(empty)
            whole = all(photos.whole(photos.path_of(empty, sha), sha) for sha in kept)
        with store.opened(made / FILE) as db:
            named = {sha for (sha,) in rows(db, "select sha from photos")}
        ours = _held(store)
    finally:
        shutil.rmtree(trial, ignore_errors=True)
    written = manifest_of(made)
    absent = set(written["missing"]) if written is not None else set()
    same = written is not None and least <= set(restored) <= set(ours)
    same = same and all(ours[i] in (content, EMPTIED) for i, content in restored.items())
    same = same and whole and set(kept) == named - absent and set(outcome["missing"]) <= absent
    if not same:
        raise DiskError(
            "The backup was made, but what came back from it on trial was not the same, so it was "
            "removed again. Check the disk and try once more."
        )


def _held(store: Store) -> dict[str, bytes]:
    """A digest of each operation, of those set aside too; of one deleted for good, EMPTIED."""
    with store.read() as db:
        ops_there = [
            *rows(db, "select id, content, 0 from aside"),
            *rows(db, "select id, content, scrubbed from ops"),
        ]
        return {
            str(ident): EMPTIED if scrubbed else hashlib.sha256(str(content).encode()).digest()
            for ident, content, scrubbed in ops_there
        }


def clear_cut_off(folder: Path, now: datetime) -> int:
    """Takes away what runs that were cut off have left; how many folders."""
    before = (now - UNFINISHED).timestamp()
    left = [path for pattern in LEFT for path in folder.glob(pattern) if path.is_dir()]
    old = [path for path in left if path.stat().st_mtime < before]
    for path in old:
        shutil.rmtree(path)
    return len(old)


def _clear_photos(folder: Path) -> None:
    needed: set[str] = set()
    for moment in _moments(folder):
        made = folder / moment.strftime(NAMED)
        manifest = manifest_of(made)
        if manifest is None:
            if (made / FILE).exists():
                return  # who knows which photos it needs
            continue
        needed |= {photo["sha"] for photo in manifest["photos"]}
    for path in photos.kept_in(folder / "photos"):
        if path.stem not in needed:
            files.remove(path)


def _moments(folder: Path) -> list[datetime]:
    moments = []
    for path in folder.iterdir() if folder.is_dir() else ():
        try:
            moments.append(datetime.strptime(path.name, NAMED).replace(tzinfo=UTC))
        except ValueError:
            continue
    return moments


def _line(name: str, manifest: Manifest) -> BackupLine:
    return {
        "name": name,
        "made": manifest["made"],
        "operations": manifest["operations"],
        "records": manifest["records"],
        "photos": len(manifest["photos"]),
        "bytes": manifest["bytes"],
    }
