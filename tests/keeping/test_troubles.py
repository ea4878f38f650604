"""A disk that fails or is full, at every single call that writes: nothing acknowledged is lost."""

import errno
from datetime import UTC, datetime
from pathlib import Path
from random import Random

import pytest

from identify.errors import UserError
from identify.keeping import backup, ops, photos
from identify.keeping.canonical_json import text_of
from identify.keeping.restore import restore
from identify.keeping.store import FILE
from tests.keeping.power import read
from tests.keeping.recording import Trouble, recorded
from tests.keeping.samples import Writer, picture, sha
from tests.keeping.store_contents import operations

pytestmark = pytest.mark.heavy

NOW = datetime(2026, 5, 1, tzinfo=UTC)
LONG = 10**9
KINDS = {
    "fails once": (errno.EIO, 1),
    "is full on and on": (errno.ENOSPC, LONG),
}


class Work:
    """Some work, of which every step is tried again until it is done."""

    def __init__(self, root: Path, opened) -> None:
        root.mkdir(exist_ok=True)
        self.data, self.backups, self.opened = root / "data", root / "backups", opened
        writer = Writer(Random(1))
        self.store = None
        self.acknowledged: set[str] = set()
        self.said: list[str] = []
        self.photo = picture(1)
        name = sha(self.photo)
        self.first = [writer.operation("r1", {"name": "x" * 9000, "trashed": ""}) for _ in range(2)]
        self.second = [
            writer.operation("r2", {"name": "y"}),
            writer.operation("p1", {"full": name, "small": name}, "photo"),
        ]
        self.gone = [writer.operation("r1", {"gone": True})]

    def steps(self):
        half = len(self.photo) // 2
        return [
            self.open,
            lambda: self.push(self.first),
            lambda: self.chunk(0, half),
            lambda: self.chunk(half, len(self.photo)),
            lambda: self.push(self.second),
            lambda: self.push(self.gone),
            self.backup,
            self.restore,
            lambda: backup.keep_newest(self.backups, NOW),
        ]

    def open(self) -> None:
        if self.store is None:
            self.store = self.opened(self.data)

    def push(self, new) -> None:
        self.acknowledged |= set(ops.push(self.store, new)["held"])

    def chunk(self, start: int, end: int) -> None:
        size, name = len(self.photo), sha(self.photo)
        photos.receive(self.store, name, self.photo[start:end], start=start, size=size, now=NOW)

    def backup(self) -> None:
        backup.backup(self.store, self.backups, NOW)

    def restore(self) -> None:
        made = backup.all_backups(self.backups)
        if made:
            restore(self.store, self.backups / made[0]["name"])

    def attempt(self, step) -> bool:
        """Whether it was done; what it said where not."""
        try:
            step()
        except UserError as told:
            self.said.append(str(told))
            return False
        return True

    def with_trouble(self) -> None:
        for step in self.steps():
            if self.store is not None or step == self.open:
                self.attempt(step)

    def held(self) -> dict[str, str]:
        return {one["id"]: text_of(one) for one in operations(self.store)}

    def well_again(self) -> None:
        """All is there that was acknowledged, and everything can be done."""
        assert self.attempt(self.open), self.said
        assert self.acknowledged <= set(self.held())
        for step in self.steps():
            assert self.attempt(step), self.said
        held = self.held()
        for one in self.first:
            assert "xxx" not in held[one["id"]]
        assert held[self.second[0]["id"]] == text_of(self.second[0])
        assert photos.read(self.store, sha(self.photo)) == self.photo
        self.store.close()
        assert len(read(self.data / FILE)["ops"]) == len(held)


def calls_of_the_work(folder: Path) -> int:
    with recorded(folder) as (recorder, opened):
        work = Work(folder, opened)
        work.with_trouble()
        assert work.said == []
        count = recorder.trouble.count
        work.well_again()
    return count


@pytest.mark.parametrize("kind", KINDS)
def test_a_failing_disk_loses_nothing(kind, tmp_path):
    number, times = KINDS[kind]
    calls = calls_of_the_work(tmp_path / "well")
    assert calls > 100
    silent = []
    for at in range(1, calls + 1):
        folder = tmp_path / str(at)
        with recorded(folder) as (recorder, opened):
            recorder.trouble = Trouble(at, times, number)
            work = Work(folder, opened)
            work.with_trouble()
            if not work.said:
                silent.append(at)
            assert all(said.endswith(".") and "xxx" not in said for said in work.said)
            recorder.trouble = Trouble()
            try:
                work.well_again()
            except BaseException as error:
                raise AssertionError(f"call {at} of {calls}; it said {work.said}") from error
    # it may pass over what is tried again later: copying the log into the file, clearing up
    assert len(silent) < calls / 3, silent
