"""Power cuts under the store: a history of real work is recorded, then cut off at many places.

Every image is what a cut may have left (disk.py). A plain SQLite opens it; it must be sound and
hold exactly what was acknowledged last, or, whole, what was under way. One seed gives one history
and one set of images.
"""

import shutil
import tempfile
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from pathlib import Path
from random import Random
from typing import Any

import apsw
import orjson

from identify.keeping import backup, devices, ops, photos
from identify.keeping.canonical_json import text_of
from identify.keeping.manifest import MANIFEST
from identify.keeping.queries import rows
from identify.keeping.restore import restore
from identify.keeping.schema import MIGRATIONS
from identify.keeping.store import FILE, Store
from tests.keeping.disk import Disk
from tests.keeping.recording import RecordedStore, Recorder, everything, recorded
from tests.keeping.samples import Writer, picture, sha
from tests.keeping.store_contents import operations

START = datetime(2026, 5, 1, 9, tzinfo=UTC)
VERSIONS = Path(__file__).parent / "versions"
WITHOUT_FILE = (
    "ab" * 32
)  # a photo in the kept files of earlier versions, which are files of SQL only
SUFFIXES = ("", "-wal", "-journal")

Opener = Callable[[Path], RecordedStore]


class Lost(AssertionError):  # noqa: N818 - it says what happened
    """A power cut lost something, or left half of it."""


def memory() -> str | None:
    """Where images are written: in memory if this system has such a folder."""
    return "/dev/shm" if Path("/dev/shm").is_dir() else None


class History:
    """A few dozen steps of what a server does, drawn by chance."""

    KIND = "work"

    def __init__(self, seed: str, folder: Path, opened: Opener, recorder: Recorder) -> None:
        self.chance = Random(seed)
        self.data = folder / "data"
        self.backups = folder / "backups"
        self.opened = opened
        self.recorder = recorder
        self.writer = Writer(self.chance)
        self.sent: list[dict[str, Any]] = []
        self.records = [f"r{n}" for n in range(6)]
        self.pictures: list[str] = []
        self.now = START
        self.first = 0  # the earliest cut

    def run(self, steps: int) -> None:
        """Does it all, and ends in the middle of work, with the store still open."""
        self.store = self.opened(self.data)
        self.recorder.log.ack("backups", set())
        doing = [self.push] * 8 + [self.again, self.delete, self.delete, self.photo, self.photo]
        doing += [self.photo_gone, self.device, self.checkpoint, self.reopen]
        for _ in range(steps):
            self.now += timedelta(hours=self.chance.choice([1, 30]))
            self.chance.choice(doing)()
        if self.chance.random() < 0.25:
            self.backup()
            self.push()

    def push(self) -> None:
        new = [
            self.writer.operation(self.chance.choice(self.records), self._fields())
            for _ in range(self.chance.randint(1, 4))
        ]
        self._push(new)

    def again(self) -> None:
        some = self.chance.sample(self.sent, min(3, len(self.sent)))
        self._push(some)

    def delete(self) -> None:
        record = self.chance.choice(self.records)
        self._push([self.writer.operation(record, {"trashed": "2026-05-01", "gone": True})])

    def photo(self) -> None:
        data = picture(self.chance.randrange(10**9))
        half = len(data) // 2
        for start, chunk in ((0, data[:half]), (half, data[half:])):
            photos.receive(self.store, sha(data), chunk, start=start, size=len(data), now=self.now)
        record = f"p{len(self.pictures)}"
        self.pictures.append(record)
        named = {"full": sha(data), "small": sha(data), "width": 12, "height": 12}
        self._push([self.writer.operation(record, named, "photo")])

    def photo_gone(self) -> None:
        if self.pictures:
            record = self.chance.choice(self.pictures)
            self._push([self.writer.operation(record, {"gone": True}, "photo")])

    def device(self) -> None:
        if self.chance.random() < 0.2:  # scrypt is slow on purpose
            pairing = devices.new_pairing(self.store, self.now)
            devices.pair(self.store, self.now, secret=pairing["secret"], name="Phone")
        for one in devices.all_devices(self.store)[:1]:
            devices.revoke(self.store, one["id"], self.now)

    def checkpoint(self) -> None:
        self.store.forget()

    def reopen(self) -> None:
        self.store.close()
        self.store = self.opened(self.data)

    def backup(self) -> None:
        made = backup.backup(self.store, self.backups, self.now)
        self._backups_now()
        if self.chance.random() < 0.5:
            restore(self.store, self.backups / made["name"])
        else:
            backup.keep_newest(self.backups, self.now)
            self._backups_now()

    def _backups_now(self) -> None:
        names = {one["name"] for one in backup.all_backups(self.backups)}
        self.recorder.log.ack("backups", names)

    def _fields(self) -> dict[str, Any]:
        size = self.chance.choice([5, 50, 500, 5000])
        return {"name": "x" * self.chance.randint(1, size), "trashed": ""}

    def _push(self, new: list[dict[str, Any]]) -> None:
        found = ops.push(self.store, new)
        assert found["held"] == [one["id"] for one in new], found
        self.sent += new


class Backups(History):
    """Backups with photos: several on one day, of which the newest stays."""

    KIND = "backup"

    def run(self, steps: int) -> None:
        self.store = self.opened(self.data)
        self.recorder.log.ack("backups", set())
        for _ in range(3):
            self.photo()
            self.push()
            self.photo_gone()
            self.backup()
            self.now += timedelta(hours=1)


class Upgrade(History):
    """A file of an earlier version is opened, and worked with a little."""

    KIND = "upgrade"

    def run(self, steps: int) -> None:
        version = self.chance.randint(1, len(MIGRATIONS) - 1)
        old_file(version, self.data, self.recorder)
        self.first = len(self.recorder.log.events)
        self.store = self.opened(self.data)
        self.push()


def old_file(version: int, data: Path, recorder: Recorder | None = None) -> None:
    """Puts the kept file of an earlier version into a folder, safe on the recorded disk."""
    data.mkdir(parents=True)
    db = apsw.Connection(str(data / FILE))
    db.execute((VERSIONS / f"version{version}.sql").read_text(encoding="utf-8"))
    states = [everything(db)]
    db.pragma("journal_mode", "wal")
    db.close()
    if recorder is None:
        return
    content = (data / FILE).read_bytes()
    root = str(data.parent)
    for event in (
        ("folder", str(data)),
        ("sync", root),
        ("file", str(data / FILE)),
        ("write", str(data / FILE), 0, content),
        ("sync", str(data / FILE)),
        ("sync", str(data)),
    ):
        recorder.log.add(*event)
    db = apsw.Connection(":memory:")
    db.execute((VERSIONS / f"version{version}.sql").read_text(encoding="utf-8"))
    for step, migration in enumerate(MIGRATIONS[version:], version + 1):
        migration(db)
        db.pragma("user_version", step)
        states.append(everything(db))
    for state in states:  # any of them may be found from now on
        recorder.log.ack("upgrade", state)
    db.close()


class Checker:
    """Looks at images, each written into `folder` over the one before."""

    def __init__(self, history: History, folder: Path) -> None:
        self.history, self.folder = history, folder
        self.log = history.recorder.log
        self.place = str(history.data.relative_to(self.log.root))
        self.backups = str(history.backups.relative_to(self.log.root))
        self.upgrade = [state for _, what, state in self.log.acks if what == "upgrade"]

    def check(self, cut: int, image: dict[str, bytes]) -> None:
        """Raises Lost with what is wrong."""
        promised = self.log.promised(cut, str(self.history.data))
        opened = bool(self.log.promised(cut, str(self.history.data))) and any(
            place <= cut for place, what, _ in self.log.acks if what == str(self.history.data)
        )
        said = self._database(image)
        if not opened and self._may_be_under_way(said):
            return
        if said not in promised:
            raise Lost(f"{_short(said)} is there; promised: {[_short(one) for one in promised]}")
        for name, size, _ in (said or {}).get("photos", []):
            if name == WITHOUT_FILE:
                continue
            data = image.get(f"{self.place}/photos/{name[:2]}/{name}.jpg", b"")
            if sha(data) != name or len(data) != size:
                raise Lost(
                    f"photo {name[:8]} is promised, and {len(data)} of {size} bytes are there"
                )
        self._backups(cut, image)

    def _may_be_under_way(self, said: dict[str, Any] | None) -> bool:
        """Before the first opening has ended: a step of the upgrade, or of an empty new file."""
        if self.upgrade:
            return said in self.upgrade
        return said is None or all(not said.get(name) for name in ("ops", "devices", "photos"))

    def _database(self, image: dict[str, bytes]) -> dict[str, Any] | None:
        """What the database says; None where there is none."""
        if f"{self.place}/{FILE}" not in image:
            return None
        (self.folder / f"{FILE}-shm").unlink(missing_ok=True)  # of the image before
        for suffix in SUFFIXES:
            self._lay(self.folder / f"{FILE}{suffix}", image.get(f"{self.place}/{FILE}{suffix}"))
        return read(self.folder / FILE)

    def _lay(self, path: Path, data: bytes | None) -> None:
        if data is None:
            path.unlink(missing_ok=True)
        else:
            path.write_bytes(data)

    def goes_on(self, image: dict[str, bytes]) -> None:
        """The real store opens the image, keeps all of it, and takes in more."""
        before = {content for *_, content in self._ops(read(self.folder / FILE))}
        shutil.rmtree(self.folder / "again", ignore_errors=True)
        for path, data in image.items():
            if path.startswith(f"{self.place}/"):
                target = self.folder / "again" / path
                target.parent.mkdir(parents=True, exist_ok=True)
                target.write_bytes(data)
        with Store(self.folder / "again" / self.place) as store:
            new = Writer(Random(0)).operation("rnew", {"name": "after the cut"})
            new["id"] = "d" + "9" * 16 + ".1"
            if ops.push(store, [new])["held"] != [new["id"]]:
                raise Lost("nothing more can be kept")
            after = {text_of(one) for one in operations(store)}
        if after != before | {text_of(new)}:
            raise Lost("what was there is not there after opening")

    def _ops(self, said: dict[str, Any] | None) -> list[tuple[Any, ...]]:
        return [row[:4] for row in (said or {}).get("ops", [])]

    def _backups(self, cut: int, image: dict[str, bytes]) -> None:
        """Each backup that bears its name is whole; those acknowledged are there."""
        names = {path.split("/")[1] for path in image if path.startswith(f"{self.backups}/")}
        there = {name for name in names if not name.startswith(".") and name != "photos"}
        promised: list[set[str]] = self.log.promised(cut, "backups") or [set()]
        if not set.intersection(*promised) <= there <= set.union(*promised):
            raise Lost(f"backups {promised} are promised, and {there} are there")
        for name in there:
            place = f"{self.backups}/{name}"
            try:
                manifest = orjson.loads(image[f"{place}/{MANIFEST}"])
                self._lay(self.folder / "backup", image[f"{place}/{FILE}"])
            except (KeyError, orjson.JSONDecodeError):
                raise Lost(f"backup {name} is there, and not whole") from None
            said = read(self.folder / "backup")
            if said is None or len(said["ops"]) != manifest["operations"]:
                raise Lost(f"backup {name} does not hold what its manifest says")
            for photo in manifest["photos"]:
                data = image.get(
                    str(photos.under(Path(self.backups) / "photos", photo["sha"])), b""
                )
                if sha(data) != photo["sha"]:
                    raise Lost(f"backup {name} lacks photo {photo['sha'][:8]}")


def read(path: Path) -> dict[str, Any] | None:
    """What a plain SQLite reads in a file. Raises Lost where it is not sound."""
    db = apsw.Connection(str(path))
    try:
        sound = rows(db, "pragma integrity_check")
        if sound != [("ok",)]:
            raise Lost(f"integrity_check: {sound[:3]}")
        return everything(db)
    except apsw.Error as error:
        raise Lost(f"SQLite cannot read it: {error}") from None
    finally:
        db.close(True)


def _short(said: dict[str, Any] | None) -> str:
    if said is None:
        return "no database"
    counts = {name: len(found) for name, found in said.items() if name}
    return f"version {said['']} with {counts}"


def cut_one(
    seed: str,
    images: int,
    kind: type[RecordedStore] = RecordedStore,
    history: type[History] = History,
    steps: int = 25,
) -> int:
    """Plays one history and looks at `images` cuts of it; how many were looked at. Raises Lost."""
    folder = Path(tempfile.mkdtemp(prefix="power-", dir=memory()))
    try:
        root = folder / "disk"
        root.mkdir()
        (folder / "image").mkdir()
        with recorded(root, kind) as (recorder, opened):
            played = history(seed, root, opened, recorder)
            played.run(steps)
            checker = Checker(played, folder / "image")
            disk = Disk(recorder.log)
            chance = Random(f"{seed} cuts")
            last = len(recorder.log.events)
            cuts = sorted(chance.randint(played.first, last) for _ in range(images))
            for number, cut in enumerate(cuts):
                disk.play(cut)
                image = disk.after_a_cut(Random(f"{seed} image {number}"))
                try:
                    checker.check(cut, image)
                    if number % 40 == 0:
                        checker.goes_on(image)
                except Lost as lost:
                    raise Lost(
                        f"{lost}. Cut {number} of history {seed!r}, after {cut} of "
                        f"{last} calls. Replay: "
                        f"python -m tests.soak --history {seed} --kind {history.KIND} "
                        f"--images {images}"
                    ) from None
            played.store.close()
        return len(cuts)
    finally:
        shutil.rmtree(folder, ignore_errors=True)
