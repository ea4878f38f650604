"""The process is killed (SIGKILL) at moments drawn by chance; the moments are part of the seed."""

import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path
from random import Random

import apsw
import pytest

from identify import keeping
from identify.keeping import backup, ops, photos
from identify.keeping.restore import restore
from identify.keeping.schema import MIGRATIONS
from identify.keeping.store import FILE
from tests.keeping.power import old_file, read
from tests.keeping.samples import Writer, picture, sha
from tests.keeping.store_contents import operations

pytestmark = pytest.mark.heavy

ROOT = Path(__file__).parents[2]
MOMENTS = range(5)
NOW = datetime(2026, 5, 1, tzinfo=UTC)
MANY = 400


def killed(what: str, folder: Path, after: float) -> list[list[str]]:
    """Kills the work so many seconds after it is ready; the words of each line that it said."""
    command = [sys.executable, "-m", "tests.keeping.killed", what, str(folder)]
    with subprocess.Popen(command, cwd=ROOT, stdout=subprocess.PIPE, text=True) as running:
        assert running.stdout.readline() == "ready\n"
        time.sleep(after)
        running.kill()
        said = running.stdout.read()
    lines = said.split("\n")[:-1]  # the last one may be cut
    return [line.split() for line in lines]


def moment(what: str, number: int, longest: float) -> float:
    """When to kill."""
    return Random(f"{what} {number}").uniform(0, longest)


def filled(data: Path) -> None:
    """A store with something in it."""
    writer = Writer(Random(1))
    with keeping.open(data) as store:
        new = [writer.operation(f"r{n % 40}", {"name": "x" * 500}) for n in range(MANY)]
        ops.push(store, new)
        for number in range(8):
            pic = picture(number)
            photos.receive(store, sha(pic), pic, start=0, size=len(pic), now=NOW)


@pytest.mark.parametrize("number", MOMENTS)
def test_killed_while_pushing(number, tmp_path):
    said = killed("push", tmp_path, moment("push", number, 0.5))
    assert read(tmp_path / "data" / FILE) is not None  # integrity_check
    with keeping.open(tmp_path / "data") as store:
        there = {one["id"] for one in operations(store)}
        assert {ident for word, ident in said if word == "held"} <= there
        for word, ident in said:
            if word == "photo":
                assert sha(photos.read(store, ident)) == ident
        new = Writer(Random(9)).operation("r1", {"name": "later"})
        assert ops.push(store, [{**new, "id": "d" + "z" * 16 + ".1"}])["held"]


@pytest.mark.parametrize("number", MOMENTS)
def test_killed_while_making_a_backup(number, tmp_path):
    filled(tmp_path / "data")
    said = killed("backups", tmp_path, moment("backups", number, 0.6))
    names = {one["name"] for one in backup.all_backups(tmp_path / "backups")}
    assert {name for _, name in said} <= names
    for place, name in enumerate(sorted(names)):
        with keeping.open(tmp_path / f"new{place}") as store:
            found = restore(store, tmp_path / "backups" / name)
            assert (found["operations"], found["photos"], found["missing"]) == (MANY, 8, [])
    with keeping.open(tmp_path / "data") as store:
        assert backup.backup(store, tmp_path / "backups", NOW)["operations"] == MANY


@pytest.mark.parametrize("number", MOMENTS)
def test_killed_while_restoring(number, tmp_path):
    filled(tmp_path / "data")
    with keeping.open(tmp_path / "data") as store:
        name = backup.backup(store, tmp_path / "backups", NOW)["name"]
    said = killed("restored", tmp_path, moment("restored", number, 0.6))
    for place in range(len(said) + 1):
        with keeping.open(tmp_path / f"restored{place}") as store:
            before = len(operations(store))
            assert before in ((MANY,) if place < len(said) else (0, MANY))
            restore(store, tmp_path / "backups" / name)
            assert len(operations(store)) == MANY
            assert len(photos.known(store)) == 8


SMALLEST = (
    '{"count":0,"fields":{},"id":"dxxxxxxxxxxxxxxxx.%d","parents":[],"record":"r9",'
    '"type":"piece","wall":0}'
)


@pytest.mark.parametrize("number", MOMENTS)
def test_killed_while_upgrading(number, tmp_path):
    old_file(1, tmp_path / "data")
    db = apsw.Connection(str(tmp_path / "data" / FILE))
    with db:  # so many that the upgrade takes a while
        db.executemany(
            "insert into ops (id, record, content) values (?, 'r9', ?)",
            ((f"dxxxxxxxxxxxxxxxx.{n}", SMALLEST % n) for n in range(1, 20_000)),
        )
    count = db.execute("select count(*) from ops").get
    db.close()
    killed("upgrade", tmp_path, moment("upgrade", number, 0.2))
    there = read(tmp_path / "data" / FILE)
    assert 1 <= there[""] <= len(MIGRATIONS)
    assert len(there["ops"]) == count
    keeping.open(tmp_path / "data").close()
    there = read(tmp_path / "data" / FILE)
    assert (there[""], len(there["ops"])) == (len(MIGRATIONS), count)
    assert all(row[-1] != "" for row in there["ops"])
