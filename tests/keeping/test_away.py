"""Each new backup is locked and taken to a second place by a command of the owner's choosing."""

import sys
from datetime import UTC, datetime
from pathlib import Path

import pytest

from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping import ops
from identify.keeping.away import AWAY, Away, take_away
from identify.keeping.locked_backup import unlocked
from identify.keeping.manifest import manifest_of

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)
PHRASE = "four plain words here"
COPY = f"{sys.executable} -c 'import shutil, sys; shutil.copy(sys.argv[2], sys.argv[1])'"


@pytest.fixture
def made(store, writer, tmp_path) -> Path:
    ops.push(store, [writer.operation("r1", {"name": 1})])
    folder = tmp_path / "backups"
    return folder / backups.backup(store, folder, NOW)["name"]


@pytest.mark.heavy
def test_the_command_gets_the_locked_file_and_what_it_copied_opens(store, made, tmp_path):
    second = tmp_path / "second place"
    second.mkdir()
    away = Away(tmp_path / "locked", PHRASE, f"{COPY} '{second}'")
    assert take_away(away, store, made.parent, made.name) == "locked and taken away"
    copied = second / f"{made.name}.tar.age"
    (second / "key.pem").write_bytes((tmp_path / "locked" / "key.pem").read_bytes())
    with unlocked(copied, PHRASE, tmp_path) as folder:
        assert manifest_of(folder) == manifest_of(made)


def test_without_a_passphrase_it_gets_the_folder(store, made, tmp_path):
    seen = tmp_path / "seen.txt"
    write = f"{sys.executable} -c 'import sys; open(sys.argv[1], \"w\").write(sys.argv[2])'"
    assert take_away(Away(command=f"{write} {seen}"), store, made.parent, made.name) == "taken away"
    assert seen.read_text() == str(made)


@pytest.mark.parametrize(
    ("command", "says"),
    [
        ("/no/such/program", "could not be started"),
        (f"{sys.executable} -c 'import sys; sys.exit(\"no route\")'", r"failed \(1\): no route"),
    ],
)
def test_a_command_that_fails_is_told_and_the_backup_stays(store, made, command, says):
    with pytest.raises(UserError, match=says):
        take_away(Away(command=command), store, made.parent, made.name)
    assert manifest_of(made) is not None
    assert store.meta(AWAY).startswith("The command after the backup")
    take_away(Away(command=sys.executable + " -c 0"), store, made.parent, made.name)
    assert store.meta(AWAY) == ""


def test_nothing_asked_for_nothing_done(store, made):
    assert take_away(Away(), store, made.parent, made.name) == ""
