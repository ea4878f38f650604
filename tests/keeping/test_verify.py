"""A disk that changes what it was given: found when it is read, by a backup and by verify."""

import json
import sqlite3
from datetime import UTC, datetime, timedelta

import orjson
import pytest

from identify import keeping
from identify.cli import main
from identify.core.gate import operation_fault
from identify.errors import UserError
from identify.keeping import backup, ops, photos
from identify.keeping.data_folder import backup_folder
from identify.keeping.queries import rows
from identify.keeping.restore import restore
from identify.keeping.schema import sum_of
from identify.keeping.store import FILE
from identify.keeping.troubles import DamagedError, RefusedError
from identify.keeping.verify import repair, verify
from identify.server.commands import refuse_to_begin_anew
from tests.damaging import cases
from tests.keeping.samples import picture, sha

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)


def rot(folder, before: str, after: str) -> None:
    """Changes some bytes of the database file behind SQLite's back."""
    path = folder / FILE
    data = path.read_bytes()
    assert data.count(before.encode()) >= 1
    path.write_bytes(data.replace(before.encode(), after.encode()))


@pytest.fixture
def rotten(tmp_path, writer):
    """A store of which one change was changed on the disk: {folder, good, bad}."""
    good, bad = (writer.operation(f"r{n}", {"notes": f"price 12{n}"}) for n in (2, 3))
    with keeping.open(tmp_path / "data") as store:
        ops.push(store, [good, bad])
    rot(tmp_path / "data", "price 123", "price 923")
    return tmp_path / "data", good, bad


def test_what_the_disk_changed_is_not_handed_out_and_the_rest_is(rotten):
    folder, good, _ = rotten
    with keeping.open(folder) as store:
        found = ops.pull(store, "", 0, "", 10)
    assert found["ops"] == [good]
    assert found["damaged"] == 1


def test_the_same_change_sent_again_mends_it(rotten):
    folder, good, bad = rotten
    with keeping.open(folder) as store:
        assert ops.push(store, [bad]) == ops.push(store, [bad])
        assert ops.pull(store, "", 0, "", 10)["ops"] == [good, bad]
        other = {**good, "fields": {"notes": "another"}}
        assert ops.push(store, [other])["forked"] == [good["id"]]


def test_no_backup_is_made_of_it_and_the_earlier_ones_stay(tmp_path, writer):
    data, backups = tmp_path / "data", tmp_path / "backups"
    with keeping.open(data) as store:
        ops.push(store, [writer.operation("r3", {"notes": "price 123"})])
        made = backup.backup(store, backups, NOW)
    rot(data, "price 123", "price 923")
    with keeping.open(data) as store:
        with pytest.raises(DamagedError, match="No backup was made, so that the earlier ones stay"):
            backup.nightly(store, backups, NOW + timedelta(days=1))
        assert [one["name"] for one in backup.all_backups(backups)] == [made["name"]]


def test_verify_names_it_and_repair_puts_it_aside_so_that_phones_bring_it_back(rotten):
    folder, good, bad = rotten
    with keeping.open(folder) as store:
        before = ops.pull(store, "", 0, "", 10)
        found = verify(store)
        assert [one["id"] for one in found["wrong"]] == [bad["id"]]
        assert (found["operations"], found["database"]) == (2, "")
        repair(store, found)
        assert verify(store)["wrong"] == []
        (aside,) = verify(store)["aside"]
        assert "price 923" in aside["content"], "nothing is deleted"
        after = ops.pull(store, before["epoch"], before["after"], before["last"], 10)
        assert after["from_start"], "every phone notices, and sends what it has"
        assert ops.push(store, [good, bad])["held"] == [good["id"], bad["id"]]
        assert ops.pull(store, "", 0, "", 10)["ops"] == [good, bad]


def test_a_photo_that_the_disk_changed_is_found_and_comes_again(store, writer):
    data = picture(1)
    name = sha(data)
    fields = {"full": name, "small": name}
    ops.push(store, [writer.operation("p1", fields, "photo")])
    photos.receive(store, name, data, start=0, size=len(data), now=NOW)
    path = photos.path_of(store, name)
    path.write_bytes(data[:-3] + b"\x00" + data[-2:])
    assert verify(store)["photos_wrong"] == [name]
    assert photos.read(store, name) is None
    assert photos.missing(store, [name]) != []
    assert photos.receive(store, name, data, start=0, size=len(data), now=NOW)["whole"]
    assert photos.read(store, name) == data
    path.write_bytes(b"")
    repair(store, verify(store))
    assert (store.folder / "damaged" / path.name).exists()
    assert verify(store)["photos_wrong"] == []


def test_the_command_says_it_in_sentences_and_repairs(rotten, capsys):
    folder, _, bad = rotten
    words = ["verify", "--data", str(folder)]
    assert main(words) == 1
    said = capsys.readouterr().out
    assert f"{bad['id']}, a change of {bad['record']}: It is not what was written" in said
    assert "1 are not" in said
    assert main([*words, "--repair"]) == 0
    assert "nothing was deleted" in capsys.readouterr().out
    out = folder.parent / "aside.json"
    assert main([*words, "--out", str(out)]) == 0
    assert "all are as they were written" in capsys.readouterr().out
    assert [one["id"] for one in orjson.loads(out.read_bytes())] == [bad["id"]]


def test_what_came_before_there_was_a_gate_is_put_aside_by_the_upgrade(tmp_path, writer):
    folder = tmp_path / "data"
    good = writer.operation("r1", {"notes": "good"})
    with keeping.open(folder) as store:
        ops.push(store, [good])
    odd = {**writer.operation("r1", {"notes": "bad"}), "type": "__proto__"}
    far = {**writer.operation("r2", {"notes": "far"}), "wall": 9 * 10**15, "count": 2**53 - 1}
    database = sqlite3.connect(folder / FILE)
    for one in (odd, far):
        text = orjson.dumps(one, option=orjson.OPT_SORT_KEYS).decode()
        database.execute(
            "insert into ops (id, record, content, trail) values (?, ?, ?, 't')",
            (one["id"], one["record"], text),
        )
    database.execute("drop table aside")
    database.execute("alter table ops drop column sum")
    database.execute("pragma user_version = 4")
    database.commit()
    database.close()
    with keeping.open(folder) as store:
        assert ops.pull(store, "", 0, "", 10)["ops"] == [good, far]
        assert [one["id"] for one in verify(store)["aside"]] == [odd["id"]]
        assert verify(store)["wrong"] == []
        backup.backup(store, tmp_path / "backups", NOW)


def test_what_does_not_fit_in_a_backup_is_put_aside(tmp_path, writer):
    """A backup of somebody else's making: its checksums are right, its operations are none."""
    with keeping.open(tmp_path / "old") as store:
        ops.push(store, [writer.operation("r1", {"name": "good"})])
        with store.write() as db:
            for n, one in enumerate(cases("operation", 300)):
                text = json.dumps(one)
                fits = operation_fault(one, True) is None
                db.execute(
                    "insert or ignore into ops (id, record, content, scrubbed, gone, trail, sum) "
                    "values (?, 'r1', ?, 0, 0, '', ?)",
                    (one["id"] if fits else f"bad{n}", text, sum_of(text)),
                )
        made = backup.backup(store, tmp_path / "backups", NOW)
    with keeping.open(tmp_path / "new") as store:
        found = restore(store, tmp_path / "backups" / made["name"])
        assert found["damaged"] > 150
        assert found["damaged"] == len(verify(store)["aside"])
        assert verify(store)["wrong"] == []
        assert {"name": "good"} in [one["fields"] for one in ops.pull(store, "", 0, "", 999)["ops"]]
        again = restore(store, tmp_path / "backups" / made["name"])
        assert len(verify(store)["aside"]) == again["damaged"]


def test_a_damaged_backup_gives_what_is_whole_in_it(tmp_path, writer):
    good, bad = (writer.operation(f"r{n}", {"notes": f"price 12{n}"}) for n in (2, 3))
    with keeping.open(tmp_path / "data") as store:
        ops.push(store, [good, bad])
        name = backup.backup(store, tmp_path / "backups", NOW)["name"]
    rot(tmp_path / "backups" / name, "price 123", "price 923")
    with keeping.open(tmp_path / "new") as store:
        found = restore(store, tmp_path / "backups" / name)
        assert (found["operations"], found["damaged"]) == (1, 1)
        assert ops.pull(store, "", 0, "", 10)["ops"] == [good]


def test_a_photo_sent_again_while_it_is_deleted_for_good_is_kept(store, writer):
    """Finding 11: its row was taken, then it came again, and then its file was taken away."""
    data = picture(1)
    name = sha(data)
    ops.push(store, [writer.operation("p1", {"full": name, "small": name}, "photo")])
    photos.receive(store, name, data, start=0, size=len(data), now=NOW)
    with store.write() as db:
        gone = writer.operation(
            "p1", {"gone": True, "trashed": "2026-05-01T10:00:00.000Z"}, "photo"
        )
        ops.take(db, gone, ops.checked(gone))
        lost = ops.scrub(db, ["p1"])
    assert lost == [name]
    answer = photos.receive(store, name, data, start=0, size=len(data), now=NOW)
    photos.unlink(store, lost)
    assert answer["whole"]
    assert photos.read(store, name) == data
    with store.read() as db:
        assert rows(db, "select sha from photos") == [(name,)]


def test_a_missing_database_beside_photos_or_a_log_is_told_and_nothing_begun(tmp_path):
    (tmp_path / "data" / "photos" / "ab").mkdir(parents=True)
    (tmp_path / "data" / "photos" / "ab" / f"{'ab' * 32}.jpg").write_bytes(b"x")
    (tmp_path / "log").mkdir()
    (tmp_path / "log" / f"{FILE}-wal").write_bytes(b"x" * 100)
    for folder in (tmp_path / "data", tmp_path / "log"):
        with pytest.raises(RefusedError, match="is missing"):
            keeping.open(folder)
        assert not (folder / FILE).exists()


def test_where_there_are_backups_and_no_data_the_server_does_not_begin_anew(tmp_path):
    data = tmp_path / "data"
    with keeping.open(data) as store:
        name = backup.backup(store, backup_folder(data), NOW)["name"]
    (data / FILE).unlink()
    with pytest.raises(UserError, match=f"restore .*{name} --data"):
        refuse_to_begin_anew(data)
    assert not (data / FILE).exists()


def test_backups_that_bear_a_time_to_come_stay_and_push_no_other_out(tmp_path, writer):
    """Finding 12: twelve of them in months of their own made each night's delete itself."""
    folder = tmp_path / "backups"
    with keeping.open(tmp_path / "data") as store:
        ops.push(store, [writer.operation("r1", {"notes": "a"})])
        for month in range(12):
            backup.backup(store, folder, datetime(2031 + month, month + 1, 3, tzinfo=UTC))
        ahead = {one["name"] for one in backup.all_backups(folder)}
        nights = [backup.nightly(store, folder, NOW + timedelta(days=n)) for n in range(3)]
    there = {one["name"] for one in backup.all_backups(folder)}
    assert {one["name"] for one in nights} <= there
    assert ahead <= there
    assert set(nights[-1]["to_come"]) == ahead
