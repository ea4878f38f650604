"""Power cuts at any place, under the database, the photos and the backups; see power.py."""

from random import Random

import pytest

from identify.keeping import files, photos
from tests.keeping.disk import Disk, File, Folder, Log
from tests.keeping.power import Backups, History, Lost, Upgrade, cut_one
from tests.keeping.recording import AsIfSynced, RecordedStore, SeldomSynced, TooEarly
from tests.sampling import sample

pytestmark = pytest.mark.heavy

HISTORIES, IMAGES = sample(100, 25), 100
UPGRADES, BACKUPS = sample(20, 10), sample(20, 10)
SEED = 1


def test_no_power_cut_loses_what_was_acknowledged():
    looked_at = sum(cut_one(f"{SEED}/{n}", IMAGES) for n in range(HISTORIES))
    assert looked_at >= HISTORIES * IMAGES


def test_nor_does_one_during_an_upgrade():
    looked_at = sum(cut_one(f"{SEED}/{n}", IMAGES, history=Upgrade) for n in range(UPGRADES))
    assert looked_at == UPGRADES * IMAGES


def test_nor_does_one_during_a_backup_a_restore_or_when_old_ones_go():
    looked_at = sum(cut_one(f"{SEED}/{n}", IMAGES, history=Backups) for n in range(BACKUPS))
    assert looked_at == BACKUPS * IMAGES


@pytest.mark.parametrize("kind", [AsIfSynced, SeldomSynced, TooEarly])
def test_a_store_that_promises_too_much_is_caught(kind):
    with pytest.raises(Lost, match="Replay: python -m"):
        cut_one(f"{SEED}/0", IMAGES, kind)


def cut_photos():
    for n in range(10):
        cut_one(f"{SEED}/{n}", IMAGES, history=Backups)


@pytest.mark.parametrize("careless", ["sync", "sync_folder"])
def test_photos_that_are_not_synced_are_caught(careless, monkeypatch):
    monkeypatch.setattr(files, careless, lambda path: None)
    with pytest.raises(Lost):
        cut_photos()


def test_a_row_before_its_photo_is_caught(monkeypatch):
    finish = photos._finish

    def row_first(store, sha, size, now):
        photos._row(store, sha, size, now.isoformat())
        finish(store, sha, size, now)

    monkeypatch.setattr(photos, "_finish", row_first)
    with pytest.raises(Lost, match="photo"):
        cut_photos()


def test_a_failing_image_can_be_made_again():
    def failure():
        with pytest.raises(Lost) as lost:
            cut_one(f"{SEED}/0", IMAGES, TooEarly)
        return str(lost.value)

    assert failure() == failure()


class TestTheModelOfTheDisk:
    def test_what_was_synced_stays(self):
        file = File(pending=[(0, b"synced")])
        file.sync()
        file.pending = [(0, b"SYNCED"), (6, b"!" * 2000)]
        left = {file.left(Random(n), 0.5, 512) for n in range(300)}
        assert b"synced" in left
        assert all(len(one) >= 6 for one in left)

    def test_sectors_may_be_lost_late_or_torn(self):
        file = File(safe=b"." * 1536, pending=[(0, b"a" * 1536)])
        left = {file.left(Random(n), 0.5, 512) for n in range(500)}
        assert b"." * 512 + b"a" * 1024 in left  # a later sector without an earlier one
        assert b"a" * 512 + b"." * 512 + b"a" * 512 in left
        assert any(one.count(b"a") % 512 for one in left)

    def test_a_name_lasts_once_its_folder_is_synced(self):
        log = Log("/disk")
        log.add("file", "/disk/one")
        log.add("write", "/disk/one", 0, b"data")
        log.add("sync", "/disk/one")
        log.add("move", "/disk/one", "/disk/two")
        disk = Disk(log)
        disk.play(4)
        left = {tuple(disk.after_a_cut(Random(n))) for n in range(100)}
        assert left == {(), ("one",), ("two",), ("one", "two")}
        log.add("sync", "/disk")
        disk.play(5)
        assert all(disk.after_a_cut(Random(n)) == {"two": b"data"} for n in range(100))

    def test_what_is_under_a_folder_goes_with_it(self):
        log = Log("/disk")
        for event in (("folder", "/disk/a"), ("file", "/disk/a/b"), ("sync", "/disk/a")):
            log.add(*event)
        disk = Disk(log)
        disk.play(3)
        assert {tuple(disk.after_a_cut(Random(n))) for n in range(50)} == {(), ("a/b",)}

    def test_the_layer_writes_down_what_is_done(self):
        class Looked(History):
            def run(self, steps):
                super().run(steps)
                disk = Disk(self.recorder.log)
                disk.play(len(self.recorder.log.events))
                for folder in [disk.root]:
                    self.settle(folder)
                kept = disk.root.left(Random(0), 1.0, 512)
                for path in self.data.rglob("*"):
                    if path.is_file() and not path.name.endswith("-shm"):
                        assert kept[str(path.relative_to(self.data.parent))] == path.read_bytes()

            def settle(self, node):
                node.sync()
                for below in node.now.values() if isinstance(node, Folder) else ():
                    self.settle(below)

        assert cut_one(f"{SEED}/layer", 1, RecordedStore, Looked) == 1
