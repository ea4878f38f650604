"""Files of every version, of a newer one, of other programs; how the file is opened."""

import stat

import apsw
import pytest

from identify import keeping
from identify.errors import UserError
from identify.keeping import devices, ops, photos
from identify.keeping.queries import rows
from identify.keeping.schema import MIGRATIONS
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DamagedError
from tests.keeping.keep_version import file_of
from tests.keeping.power import old_file
from tests.keeping.store_contents import records


@pytest.mark.parametrize("version", range(1, len(MIGRATIONS) + 1))
def test_a_file_of_every_version_is_opened(version, tmp_path, writer):
    assert file_of(version).exists(), "python -m tests.keeping.keep_version makes it"
    old_file(version, tmp_path / "data")
    with keeping.open(tmp_path / "data") as store:
        with store.read() as db:
            assert db.pragma("user_version") == len(MIGRATIONS)
        found = ops.pull(store, "", 0, "", 100)
        assert found["epoch"] == "0123456789abcdef0123456789abcdef"
        assert [one["id"][-2:] for one in found["ops"]] == [".1", ".2", ".1", ".2"]
        shown = {one["id"]: one for one in records(store)}
        assert shown["r0001"]["fields"]["notes"] == "Côté gauche ½"
        assert shown["r0002"]["gone"] is True
        assert len(devices.all_devices(store)) == (1 if version >= 2 else 0)
        assert len(photos.known(store)) == (1 if version >= 3 else 0)
        new = writer.operation("r0003", {"called": "Wagon"})
        assert ops.push(store, [new])["held"] == [new["id"]]
        again = ops.pull(store, found["epoch"], found["after"], found["last"], 100)
        assert (again["from_start"], len(again["ops"])) == (False, 1)


def test_what_was_there_before_it_had_trails_is_followed_as_well(tmp_path):
    trails = []
    for version in (1, len(MIGRATIONS)):
        old_file(version, tmp_path / str(version))
        with keeping.open(tmp_path / str(version)) as store, store.read() as db:
            trails.append(rows(db, "select trail from ops order by seq"))
    assert trails[0] == trails[1]
    assert len(set(trails[0])) == 4


def test_a_newer_file_is_left_alone(tmp_path):
    keeping.open(tmp_path).close()
    db = apsw.Connection(str(tmp_path / FILE))
    db.pragma("user_version", len(MIGRATIONS) + 1)
    db.close()
    before = (tmp_path / FILE).read_bytes()
    with pytest.raises(UserError, match=r"of version 6, and this program knows versions up to 5"):
        keeping.open(tmp_path)
    assert (tmp_path / FILE).read_bytes() == before


def test_another_programs_file_is_left_alone(tmp_path):
    db = apsw.Connection(str(tmp_path / FILE))
    db.execute("create table theirs (x)")
    db.close()
    before = (tmp_path / FILE).read_bytes()
    with pytest.raises(UserError, match="made by another program"):
        keeping.open(tmp_path)
    assert (tmp_path / FILE).read_bytes() == before


@pytest.mark.parametrize(
    "content", [b"no database at all" * 100, b"SQLite format 3\0" + bytes(900)]
)
def test_a_file_that_is_no_database_is_told(content, tmp_path):
    (tmp_path / FILE).write_bytes(content)
    with pytest.raises(DamagedError, match="restore the newest backup"):
        keeping.open(tmp_path)


def test_it_is_opened_as_promised(store):
    with store.read() as db:
        assert db.pragma("journal_mode") == "wal"
        assert db.pragma("synchronous") == 2  # full (sqlite.org, pragma synchronous)
        assert db.pragma("foreign_keys") == 1
        assert db.pragma("trusted_schema") == 0
        assert db.pragma("secure_delete") == 1


def test_only_the_owner_can_read_it(store):
    assert stat.S_IMODE(store.folder.stat().st_mode) == 0o700
    for path in store.folder.iterdir():
        assert stat.S_IMODE(path.stat().st_mode) & 0o077 == 0, path


def test_two_programs_at_once_see_one_another(store, writer):
    with Store(store.folder) as other:
        new = [writer.operation("r1", {"name": n}) for n in range(4)]
        ops.push(store, new[:2])
        ops.push(other, new[2:])
        assert ops.pull(store, "", 0, "", 9)["ops"] == ops.pull(other, "", 0, "", 9)["ops"]
        other.set_meta("address", "https://trains.example:8100/")
    assert store.meta("address") == "https://trains.example:8100/"
    assert store.meta("unknown") == ""
