"""A page of the database written over, every one in turn: by noise, by nothing, by another page.

No operation comes back otherwise than it was written, no backup is made of what is damaged, and
whatever cannot be read is told in a sentence.
"""

from collections.abc import Callable
from datetime import UTC, datetime
from pathlib import Path
from random import Random
from typing import Any

import pytest

from identify import keeping
from identify.cli import main
from identify.errors import UserError
from identify.keeping import backup, devices, ops
from identify.keeping.manifest import manifest_of
from identify.keeping.store import FILE, Store
from identify.keeping.troubles import DamagedError
from identify.keeping.verify import verify

NOW = datetime(2026, 5, 1, 12, tzinfo=UTC)
PAGE = 4096
COUNT = 60


def another(data: bytes, page: int, chance: Random) -> bytes:
    other = chance.choice([one for one in range(len(data) // PAGE) if one != page])
    return data[other * PAGE : (other + 1) * PAGE]


WRITTEN: dict[str, Callable[[bytes, int, Random], bytes]] = {
    "noise": lambda _data, _page, chance: chance.randbytes(PAGE),
    "nothing": lambda *_: bytes(PAGE),
    "another page": another,
}


@pytest.fixture
def whole(tmp_path, writer):
    """A file with a device and operations over many pages: {its bytes, the operations}."""
    sent = [writer.operation(f"r{n % 9}", {"notes": f"{n} " + "x" * 500}) for n in range(COUNT)]
    with keeping.open(tmp_path / "whole") as store:
        ops.push(store, sent)
        secret = devices.new_pairing(store, NOW)["secret"]
        devices.pair(store, NOW, secret=secret, name="Phone")
    return (tmp_path / "whole" / FILE).read_bytes(), sent


def tried(act: Callable[[], Any], said: list[str]) -> Any:
    """What it gives, or None with what it said."""
    try:
        return act()
    except UserError as told:
        said.append(str(told))
        return None


def looked_at(store: Store, sent: list[Any], backups: Path) -> list[str]:
    """What was said of a store with a page written over; nothing of it may come out wrong."""
    said: list[str] = []
    pulled = tried(lambda: ops.pull(store, "", 0, "", 999), said)
    if pulled is not None:
        assert all(one in sent for one in pulled["ops"])
    found = tried(lambda: verify(store), said)
    well = found is not None and not found["wrong"] and not found["database"]
    if found is not None and not well:
        said.append("The kept data is damaged.")
    made = tried(lambda: backup.backup(store, backups, NOW), said)
    if made is None:
        assert not well
        assert backup.all_backups(backups) == []
    else:
        manifest = manifest_of(backups / made["name"])
        assert manifest is not None
        assert manifest["operations"] == COUNT, "a backup without all of it counts for one with it"
        assert pulled is not None
        assert pulled["ops"] == sent
    return said


@pytest.mark.parametrize("kind", WRITTEN)
def test_a_page_written_over_is_found_and_nothing_comes_back_otherwise(kind, whole, tmp_path):
    data, sent = whole
    chance = Random(kind)
    pages = len(data) // PAGE
    told = 0
    for page in range(pages):
        over = WRITTEN[kind](data, page, chance)
        folder = tmp_path / str(page)
        folder.mkdir()
        (folder / FILE).write_bytes(data[: page * PAGE] + over + data[(page + 1) * PAGE :])
        said: list[str] = []
        store = tried(lambda folder=folder: keeping.open(folder), said)
        if store is not None:
            with store:
                said += looked_at(store, sent, folder / "backups")
        assert all(one.endswith(".") and "xxx" not in one for one in said), said
        told += any("damaged" in one for one in said)
    # in a table without a row, another page without a row says the same
    assert told >= pages - (3 if kind == "another page" else 0)


def test_the_commands_say_what_to_do(whole, tmp_path, capsys):
    data, _ = whole
    folder = tmp_path / "data"
    folder.mkdir()
    half = len(data) // PAGE // 2 * PAGE
    (folder / FILE).write_bytes(data[:half] + bytes(PAGE) + data[half + PAGE :])
    for words in (["verify"], ["verify", "--repair"], ["backup", "--to", str(tmp_path / "b")]):
        assert main([*words, "--data", str(folder)]) == 1
        assert "restore the newest backup into a new one" in capsys.readouterr().err
    (folder / FILE).write_bytes(bytes(PAGE) + data[PAGE:])
    with pytest.raises(DamagedError, match="restore the newest backup"):
        keeping.open(folder)
