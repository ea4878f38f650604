"""Before an upgrade: what it would change, tried on a copy, and a copy for going back."""

from datetime import UTC, datetime

import apsw
import pytest

from identify import keeping
from identify.cli import main
from identify.errors import UserError
from identify.keeping import ops, schema
from identify.keeping.queries import rows, value
from identify.keeping.schema import MIGRATIONS
from identify.keeping.store import FILE
from identify.keeping.upgrade import upgrade_check
from tests.keeping.power import old_file
from tests.keeping.store_contents import operations

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)


@pytest.mark.parametrize("version", range(1, len(MIGRATIONS)))
def test_each_version_is_tried_and_left_as_it_was(version, tmp_path):
    data = tmp_path / "data"
    old_file(version, data)
    before = (data / FILE).read_bytes()
    found = upgrade_check(data, tmp_path / "backups", NOW)
    assert (found.version, found.newest, found.operations) == (version, len(MIGRATIONS), 4)
    assert len(found.steps) == len(MIGRATIONS) - version
    assert all(step.endswith(".") for step in found.steps)
    assert (data / FILE).read_bytes() == before
    assert all(path.name.startswith(FILE) for path in data.iterdir())  # its log may be beside it
    assert found.copy is not None
    db = apsw.Connection(str(found.copy / FILE))
    assert db.pragma("user_version") == version  # what the program of before can read
    assert value(db, "select count(*) from ops") == 4
    db.close()


def test_going_back_works_with_the_copy_and_is_refused_without(tmp_path, monkeypatch):
    data = tmp_path / "data"
    old_file(3, data)
    copy = upgrade_check(data, tmp_path / "backups", NOW).copy
    keeping.open(data).close()  # the new version upgrades it
    monkeypatch.setattr(schema, "MIGRATIONS", MIGRATIONS[:3])  # the program of before
    with pytest.raises(UserError, match="knows versions up to 3"):
        keeping.open(data)
    for left in data.glob(f"{FILE}*"):
        left.unlink()
    (data / FILE).write_bytes((copy / FILE).read_bytes())
    with keeping.open(data) as store, store.read() as db:
        assert len(rows(db, "select id from ops")) == 4


def test_where_nothing_would_change_no_copy_is_made(tmp_path, capsys):
    data = tmp_path / "data"
    keeping.open(data).close()
    assert main(["upgrade-check", "--data", str(data)]) == 0
    assert "nothing would change" in capsys.readouterr().out
    assert not (tmp_path / "data-backups").exists()


def test_a_running_server_is_not_disturbed(tmp_path, writer):
    data = tmp_path / "data"
    with keeping.open(data) as store:
        ops.push(store, [writer.operation("r1", {"name": 1})])
        assert upgrade_check(data, tmp_path / "backups", NOW).operations == 1
        ops.push(store, [writer.operation("r1", {"name": 2})])
        assert len(operations(store)) == 2


def test_a_step_that_changes_an_operation_is_noticed(tmp_path, monkeypatch):
    def damaging(db: apsw.Connection) -> None:
        """A step that goes wrong."""
        db.execute("update ops set content = '{}' where seq = 2")

    data = tmp_path / "data"
    keeping.open(data).close()
    monkeypatch.setattr(schema, "MIGRATIONS", (*MIGRATIONS, damaging))
    monkeypatch.setattr("identify.keeping.upgrade.MIGRATIONS", (*MIGRATIONS, damaging))
    old_file(len(MIGRATIONS), tmp_path / "old")
    with pytest.raises(UserError, match="Do not upgrade"):
        upgrade_check(tmp_path / "old", tmp_path / "backups", NOW)
    assert not (tmp_path / "backups").exists()


def test_without_data_it_says_so(tmp_path):
    with pytest.raises(UserError, match="There is no data in"):
        upgrade_check(tmp_path, tmp_path / "backups", NOW)
