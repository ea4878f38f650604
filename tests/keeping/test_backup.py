"""Backups: tried out, merged back, and let go of by the calendar."""

import shutil
from datetime import UTC, datetime, timedelta, timezone
from pathlib import Path

import apsw
import orjson
import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from identify import keeping
from identify.cli import main
from identify.errors import UserError
from identify.keeping import backup, devices, ops, photos
from identify.keeping.data_folder import backup_folder, data_folder
from identify.keeping.manifest import KIND, MANIFEST
from identify.keeping.restore import restore
from identify.keeping.retention import to_keep
from identify.keeping.schema import MIGRATIONS
from identify.keeping.store import FILE
from identify.keeping.troubles import DamagedError, DiskError
from tests.keeping.keep_version import file_of
from tests.keeping.samples import picture, sha
from tests.keeping.store_contents import operations, records

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)
DAY = timedelta(days=1)


@pytest.fixture
def folder(tmp_path):
    return tmp_path / "backups"


def add_photo(store, writer, number):
    data = picture(number)
    photos.receive(store, sha(data), data, start=0, size=len(data), now=NOW)
    named = {"full": sha(data), "small": sha(data)}
    ops.push(store, [writer.operation(f"p{number}", named, "photo")])
    return sha(data)


def ids(store):
    return sorted(one["id"] for one in operations(store))


def make(store, folder, now=NOW):
    return folder / backup.backup(store, folder, now)["name"]


def test_a_backup_says_what_is_in_it(store, writer, folder):
    ops.push(store, [writer.operation(f"r{n % 3}", {"name": n}) for n in range(9)])
    shas = sorted([add_photo(store, writer, 1), add_photo(store, writer, 2)])
    made = backup.backup(store, folder, NOW)
    assert made["name"] == "2026-05-01T120000Z"
    assert (made["operations"], made["records"], made["photos"]) == (11, 5, 2)
    assert made["missing"] == []
    manifest = orjson.loads((folder / made["name"] / "manifest.json").read_bytes())
    assert [photo["sha"] for photo in manifest["photos"]] == shas
    there = (folder / made["name"]).iterdir()
    assert sorted(path.name for path in there) == [FILE, "manifest.json"]
    assert made["bytes"] == (folder / made["name"] / FILE).stat().st_size + sum(
        len(picture(n)) for n in (1, 2)
    )
    again = backup.backup(store, folder, NOW)
    assert again["name"] == "2026-05-01T120001Z"
    assert len(list((folder / "photos").glob("*/*.jpg"))) == 2  # once, for all backups
    listed = backup.all_backups(folder)
    assert [one["name"] for one in listed] == [again["name"], made["name"]]
    assert listed[1] == {name: made[name] for name in listed[1]}
    assert backup.all_backups(folder / "nothing") == []


def test_a_restore_merges(store, writer, folder):
    old = [writer.operation("r1", {"name": "a"})]
    ops.push(store, old)
    name = add_photo(store, writer, 1)
    first = devices.pair(store, NOW, secret=devices.new_pairing(store, NOW)["secret"], name="A")
    made = make(store, folder)
    before = ids(store)
    epoch = ops.pull(store, "", 0, "", 1)["epoch"]

    ops.push(store, [writer.operation("r1", {"name": "b"})])
    second = devices.pair(store, NOW, secret=devices.new_pairing(store, NOW)["secret"], name="B")
    devices.revoke(store, first["device"], NOW)
    found = restore(store, made)
    assert found == {"operations": 0, "devices": 0, "photos": 0, "damaged": 0, "missing": []}
    assert len(ids(store)) == len(before) + 1
    assert ops.pull(store, "", 0, "", 1)["epoch"] != epoch
    assert devices.by_token(store, second["token"], NOW)["revoked"] == ""
    assert devices.by_token(store, first["token"], NOW)["revoked"] != ""

    with keeping.open(folder.parent / "new") as new:
        found = restore(new, made)
        assert found == {"operations": 2, "devices": 1, "photos": 1, "damaged": 0, "missing": []}
        assert ids(new) == before
        assert photos.read(new, name) == picture(1)
        assert devices.by_token(new, first["token"], NOW)["revoked"] == ""
        assert restore(new, made) == {
            "operations": 0,
            "devices": 0,
            "photos": 0,
            "damaged": 0,
            "missing": [],
        }
        assert list(new.folder.glob(".*")) == []


def test_a_device_that_was_shut_out_before_the_backup_is_shut_out_after_it(store, folder):
    first = devices.pair(store, NOW, secret=devices.new_pairing(store, NOW)["secret"])
    early = make(store, folder)
    devices.revoke(store, first["device"], NOW)
    late = make(store, folder)
    with keeping.open(folder.parent / "new") as new:
        restore(new, early)
        restore(new, late)
        assert devices.by_token(new, first["token"], NOW)["revoked"] != ""


def test_what_was_deleted_for_good_since_does_not_come_back(store, writer, folder):
    ops.push(store, [writer.operation("r1", {"name": "Heirloom"})])
    name = add_photo(store, writer, 1)
    made = make(store, folder)
    ops.push(store, [writer.operation("r1", {"trashed": "2026-05-01", "gone": True})])
    ops.push(store, [writer.operation("p1", {"gone": True}, "photo")])
    assert restore(store, made)["photos"] == 0
    assert photos.missing(store, [name])
    assert all(one["gone"] for one in records(store))
    kept = [path for path in store.folder.rglob("*") if path.is_file()]
    assert not any(b"Heirloom" in path.read_bytes() for path in kept)


def test_a_deletion_in_the_backup_empties_what_is_here(store, writer, folder):
    one = writer.operation("r1", {"name": "Heirloom"})
    ops.push(store, [one, writer.operation("r1", {"trashed": "2026-05-01", "gone": True})])
    made = make(store, folder)
    with keeping.open(folder.parent / "new") as new:
        ops.push(new, [one])
        restore(new, made)
        kept = [path for path in new.folder.rglob("*") if path.is_file()]
        assert not any(b"Heirloom" in path.read_bytes() for path in kept)


def test_of_two_contents_under_one_id_both_are_kept(store, writer, folder):
    one = writer.operation("r1", {"name": "in the backup"})
    ops.push(store, [one])
    made = make(store, folder)
    other = {**one, "fields": {"name": "here"}}
    with keeping.open(folder.parent / "new") as new:
        ops.push(new, [other])
        for _ in range(2):
            restore(new, made)
            kept = ops.pull(new, "", 0, "", 10)["ops"]
            assert kept[0] == other
            assert kept[1] == {**one, "id": kept[1]["id"]}
            assert len(kept) == 2
        assert ops.push(new, kept)["held"] == [each["id"] for each in kept]


@pytest.mark.parametrize("version", range(1, len(MIGRATIONS)))
def test_a_backup_of_an_earlier_version_is_taken_back(version, store, folder):
    made = folder / "2026-01-01T000000Z"
    made.mkdir(parents=True)
    db = apsw.Connection(str(made / FILE))
    db.execute(file_of(version).read_text(encoding="utf-8"))
    db.close()
    (made / MANIFEST).write_bytes(orjson.dumps({"kind": KIND}))
    before = (made / FILE).read_bytes()
    found = restore(store, made)
    assert (found["operations"], found["devices"]) == (4, 1 if version >= 2 else 0)
    assert found["missing"] == (["ab" * 32] if version >= 3 else [])
    assert len(ids(store)) == 4
    assert (made / FILE).read_bytes() == before


def test_what_is_no_sound_backup_changes_nothing(store, writer, folder, tmp_path):
    ops.push(store, [writer.operation(f"r{n}", {"name": "x" * 900}) for n in range(30)])
    made = make(store, folder)
    before = ids(store)
    with pytest.raises(UserError, match="is not a backup"):
        restore(store, tmp_path)
    with pytest.raises(UserError, match="is not a backup"):
        restore(store, store.folder)
    content = bytearray((made / FILE).read_bytes())
    for at in range(8192, len(content), 4096):
        content[at : at + 200] = bytes(200)
    (made / FILE).write_bytes(content)
    with pytest.raises(DamagedError, match="This backup is damaged"):
        restore(store, made)
    (made / FILE).write_bytes(b"not a database" * 99)
    with pytest.raises(DamagedError, match="This backup is damaged"):
        restore(store, made)
    assert ids(store) == before
    assert list(store.folder.glob(".*")) == []


def test_a_newer_backup_is_told(store, folder):
    made = make(store, folder)
    db = apsw.Connection(str(made / FILE))
    db.pragma("user_version", len(MIGRATIONS) + 1)
    db.close()
    with pytest.raises(UserError, match="Update the program"):
        restore(store, made)


def test_a_photo_that_is_damaged_here_stays_whole_in_the_backup(store, writer, folder):
    name = add_photo(store, writer, 1)
    other = add_photo(store, writer, 2)
    make(store, folder)
    photos.path_of(store, name).write_bytes(b"rotten")
    assert backup.backup(store, folder, NOW + DAY)["missing"] == []
    new = add_photo(store, writer, 3)
    photos.path_of(store, new).unlink()
    made = backup.backup(store, folder, NOW + 2 * DAY)
    assert made["missing"] == [new]
    with keeping.open(folder.parent / "new") as fresh:
        assert restore(fresh, folder / made["name"])["missing"] == [new]
        assert set(photos.known(fresh)) == {name, other}
        assert [one["sha"] for one in photos.missing(fresh, [name, other, new])] == [new]


def test_a_backup_that_comes_back_otherwise_does_not_count(store, writer, folder, monkeypatch):
    ops.push(store, [writer.operation("r1", {"name": "a"})])
    copy = type(store).copy

    def forgetful(self, target):
        copy(self, target)
        db = apsw.Connection(str(target))
        db.execute("delete from ops")
        db.close()

    monkeypatch.setattr(type(store), "copy", forgetful)
    with pytest.raises(DiskError, match="was not the same"):
        backup.backup(store, folder, NOW)
    assert [path.name for path in folder.iterdir()] == []


moments = st.lists(
    st.datetimes(datetime(2020, 1, 1), datetime(2026, 1, 1), timezones=st.just(UTC)), max_size=60
)


@given(moments)
def test_what_stays_is_the_newest_of_its_day_week_or_month(all_of):
    kept = to_keep(all_of)
    assert kept <= set(all_of)
    assert len(kept) <= 7 + 5 + 12
    assert to_keep(kept) == kept  # asked again, nothing more goes
    if all_of:
        assert max(all_of) in kept
    for form, most in (("%Y-%m-%d", 7), ("%G-%V", 5), ("%Y-%m", 12)):
        periods = sorted({moment.strftime(form) for moment in all_of}, reverse=True)[:most]
        for period in periods:
            newest = max(moment for moment in all_of if moment.strftime(form) == period)
            assert newest in kept
    for moment in kept:  # and nothing stays for no reason
        assert any(
            moment
            == max(other for other in all_of if other.strftime(form) == moment.strftime(form))
            for form in ("%Y-%m-%d", "%G-%V", "%Y-%m")
        )


@settings(max_examples=8, deadline=None)
@given(st.datetimes(datetime(2020, 1, 1), datetime(2026, 1, 1), timezones=st.just(UTC)))
@example(datetime(2024, 2, 29, 3, tzinfo=UTC))
def test_night_by_night_for_two_years(start):
    there: set[datetime] = set()
    for night in range(730):
        there = to_keep({*there, start + night * DAY})
    last = start + 729 * DAY
    assert {last - n * DAY for n in range(7)} <= there
    assert min(there) < last - timedelta(days=300)
    assert len(there) <= 24


def test_old_backups_go_and_their_photos_with_them(store, writer, folder):
    first = add_photo(store, writer, 1)
    kept = add_photo(store, writer, 2)
    make(store, folder, NOW)
    theirs = folder / "photos" / first[:2] / "holiday.jpg"
    theirs.write_bytes(b"not ours")
    (folder / "2026-04-30T000000Z").mkdir()  # no backup of ours
    ops.push(store, [writer.operation("p1", {"gone": True}, "photo")])
    make(store, folder, NOW + timedelta(hours=1))
    assert backup.keep_newest(folder, NOW + timedelta(hours=1)) == ["2026-05-01T120000Z"]
    assert [one["name"] for one in backup.all_backups(folder)] == ["2026-05-01T130000Z"]
    assert not photos.under(folder / "photos", first).exists()
    assert photos.under(folder / "photos", kept).exists()
    assert theirs.exists()
    assert (folder / "2026-04-30T000000Z").is_dir()
    assert backup.keep_newest(folder, NOW + timedelta(hours=1)) == []


def test_once_a_night(store, folder):
    east = timezone(timedelta(hours=2))
    night = datetime(2026, 5, 2, 3, tzinfo=east)
    assert backup.nightly_due(folder, night - DAY)
    backup.nightly(store, folder, night - DAY)
    assert not backup.nightly_due(folder, night - DAY)
    assert not backup.nightly_due(folder, night - timedelta(seconds=1))
    assert backup.nightly_due(folder, night)
    backup.backup(store, folder, night + 4000 * DAY)  # by a clock that was wrong
    assert backup.nightly_due(folder, night)
    backup.nightly(store, folder, night + timedelta(hours=5))
    assert not backup.nightly_due(folder, night + timedelta(hours=23))
    assert backup.nightly_due(folder, night + DAY)


def test_leftovers_of_runs_that_were_cut_off_go(store, folder):
    make(store, folder)
    left = [folder / ".trial-0123abcd", folder / ".2026-05-01T120000Z-0123abcd"]
    left.append(store.folder / ".restoring-0123abcd")
    theirs = [folder / ".settings", store.folder / ".settings"]
    for path in (*left, *theirs):
        path.mkdir()
    backup.nightly(store, folder, datetime.now(UTC))
    assert all(path.exists() for path in left)  # one may be at work
    backup.nightly(store, folder, datetime.now(UTC) + 2 * DAY)
    assert not any(path.exists() for path in left)
    assert all(path.exists() for path in theirs)


def test_the_commands(store, writer, folder, capsys, monkeypatch):
    monkeypatch.setenv("IDENTIFY_DATA", str(store.folder))
    ops.push(store, [writer.operation("r1", {"name": "a"})])
    add_photo(store, writer, 1)
    assert main(["backup", "--to", str(folder)]) == 0
    (made,) = backup.all_backups(folder)
    said = capsys.readouterr().out
    assert f"{folder / made['name']}: 2 records and 1 photos, restored on trial" in said
    new = folder.parent / "new"
    assert main(["restore", str(folder / made["name"]), "--data", str(new)]) == 0
    assert "Restored: 2 changes, 1 photos and 0 devices" in capsys.readouterr().out
    with keeping.open(new) as restored:
        assert ids(restored) == ids(store)
    assert main(["restore", str(folder), "--data", str(new)]) == 1
    assert "is not a backup" in capsys.readouterr().err
    assert main(["backup", "--data", str(folder.parent / "nothing")]) == 1
    assert "There is no data in" in capsys.readouterr().err
    shutil.rmtree(folder / "photos")
    fresh = folder.parent / "fresh"
    assert main(["restore", str(folder / made["name"]), "--data", str(fresh)]) == 0
    assert "1 photos are not in this backup" in capsys.readouterr().out


def test_where_the_data_is(monkeypatch):
    monkeypatch.setenv("HOME", "/home/someone")
    for name in ("IDENTIFY_DATA", "XDG_DATA_HOME"):
        monkeypatch.delenv(name, raising=False)
    home = Path("/home/someone")
    assert data_folder() == home / ".local/share/identify"
    monkeypatch.setenv("XDG_DATA_HOME", "relative")
    assert data_folder() == home / ".local/share/identify"
    monkeypatch.setenv("XDG_DATA_HOME", "/data")
    assert data_folder() == Path("/data/identify")
    monkeypatch.setenv("IDENTIFY_DATA", "~/trains")
    assert data_folder() == home / "trains"
    assert backup_folder(home / "trains") == home / "trains-backups"
