"""A backup in one file that only its passphrase opens."""

import io
import shutil
import subprocess
import tarfile
from datetime import UTC, datetime
from pathlib import Path

import pyrage
import pytest

from identify import keeping
from identify.cli import main
from identify.errors import UserError
from identify.keeping import backup as backups
from identify.keeping import locked_backup, ops, photos
from tests.keeping.samples import picture, sha
from tests.keeping.store_contents import operations, records

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)
PHRASE = "four plain words here"


@pytest.fixture
def made(store, writer, tmp_path) -> Path:
    """A plain backup with two records' changes and a photo."""
    data = picture(1)
    photos.receive(store, sha(data), data, start=0, size=len(data), now=NOW)
    named = {"full": sha(data), "small": sha(data)}
    ops.push(store, [writer.operation("p1", named, "photo"), writer.operation("r1", {"name": 1})])
    folder = tmp_path / "backups"
    return folder / backups.backup(store, folder, NOW)["name"]


@pytest.mark.heavy
def test_what_was_locked_comes_back_the_same(store, made, tmp_path):
    locked = locked_backup.lock(made, tmp_path / "away", PHRASE)
    assert locked.name == f"{made.name}.tar.age"
    assert sorted(path.name for path in made.parent.iterdir()) == [made.name, "photos"]
    with keeping.open(tmp_path / "new") as new:
        words = ["restore", str(locked), "--data", str(tmp_path / "new"), "--passphrase-file"]
        phrase = tmp_path / "phrase.txt"
        phrase.write_text(f"{PHRASE}\n")
        assert main([*words, str(phrase)]) == 0
        assert sorted(one["id"] for one in operations(new)) == sorted(
            one["id"] for one in operations(store)
        )
        assert records(new) == records(store)
        assert photos.known(new) == photos.known(store)
    assert sorted(path.name for path in (tmp_path / "new").iterdir() if path.is_dir()) == ["photos"]


@pytest.mark.heavy
def test_it_is_ages_own_format_and_opens_without_this_program(made, tmp_path):
    """age-encryption.org/v1: the archive is for one key, as OpenSSH locks keys."""
    locked = locked_backup.lock(made, tmp_path / "away", PHRASE)
    key = locked.with_name("key.pem")
    assert all(file.stat().st_mode & 0o077 == 0 for file in (locked, key))
    assert locked.read_bytes().startswith(b"age-encryption.org/v1\n-> ssh-ed25519 ")
    tool = shutil.which("ssh-keygen")
    assert tool, "ssh-keygen is missing: apt-get install openssh-client"
    taken = [tool, "-p", "-f", str(key), "-P", PHRASE, "-N", ""]  # takes the passphrase away
    subprocess.run(taken, check=True, capture_output=True)
    plain = pyrage.decrypt(locked.read_bytes(), [pyrage.ssh.Identity.from_buffer(key.read_bytes())])
    with tarfile.open(fileobj=io.BytesIO(plain)) as tar:
        names = tar.getnames()
    assert names[:2] == [f"{made.name}/identify.sqlite", f"{made.name}/manifest.json"]
    assert len(names) == 3


@pytest.mark.heavy
def test_nothing_readable_is_in_it(made, tmp_path):
    locked = locked_backup.lock(made, tmp_path / "away", PHRASE)
    assert b"SQLite format" not in locked.read_bytes()
    assert b"manifest" not in locked.read_bytes()


@pytest.mark.heavy
def test_another_passphrase_or_a_damaged_file_is_said_and_nothing_is_left(made, tmp_path):
    locked = locked_backup.lock(made, tmp_path / "away", PHRASE)

    def opened(phrase: str = PHRASE) -> None:
        with locked_backup.unlocked(locked, phrase, tmp_path / "stage"):
            raise AssertionError("it opened")

    with pytest.raises(UserError, match="passphrase does not open"):
        opened("four other words")
    whole = locked.read_bytes()
    for damaged in (whole[:-100], whole[:300] + b"x" + whole[301:], b""):
        locked.write_bytes(damaged)
        with pytest.raises(UserError, match="damaged or cut short"):
            opened()
    locked.write_bytes(whole)
    locked.with_name("key.pem").unlink()
    with pytest.raises(UserError, match=r"no key\.pem beside this backup"):
        opened()
    assert list((tmp_path / "stage").iterdir()) == []


def test_a_short_passphrase_is_refused(tmp_path):
    file = tmp_path / "phrase.txt"
    file.write_text("too short\n")
    with pytest.raises(UserError, match="shorter than 12 characters"):
        locked_backup.read_passphrase(file)


@pytest.mark.heavy
def test_only_those_go_whose_plain_ones_went(made, tmp_path):
    away = tmp_path / "away"
    locked = locked_backup.lock(made, away, PHRASE)
    (away / "2020-01-01T030000Z.tar.age").write_bytes(b"old")
    (away / "holiday.txt").write_text("not ours")
    locked_backup.keep_locked(away, {made.name})
    assert {path.name for path in away.iterdir()} == {"holiday.txt", "key.pem", locked.name}
