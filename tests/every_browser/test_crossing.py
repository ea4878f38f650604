"""A collection goes from browser to browser: by one's own server, and by backup files."""

from pathlib import Path
from typing import Any

import pytest

from tests.browser.own_server import OwnServer
from tests.conftest import Server, serving
from tests.every_browser.driven import Phone
from tests.every_browser.steps import (
    add_piece,
    backup_file,
    choose,
    look_round,
    open_more,
    put_file,
    stored,
    write,
)
from tests.every_browser.syncing import open_piece, pair, sync
from tests.every_browser.things import jpeg


def by_id(values: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    return {one["id"]: one for one in values}


def all_equal(*phones: Phone) -> None:
    """They hold the same records, photos and operations."""
    first, *others = [stored(phone) for phone in phones]
    operations = {one["op"] for one in first["journal"] if "op" in one}
    assert operations
    for there in others:
        assert by_id(there["records"]) == by_id(first["records"])
        assert by_id(there["photos"]) == by_id(first["photos"])
        assert {one["op"] for one in there["journal"] if "op" in one} == operations


def test_offline_in_turn_they_end_equal(three: dict[str, Phone], own: OwnServer, tmp_path: Path):
    chromium, webkit, firefox = three.values()
    for name, phone in three.items():
        pair(phone, own, name)
    add_piece(chromium, "P 24")
    sync(chromium)
    for phone in (webkit, firefox):
        sync(phone)
        open_piece(phone, "P 24")
    open_piece(chromium, "P 24")
    own.end()
    write(chromium, "Notes", "by Chromium")
    write(webkit, "Price paid", "£5")
    put_file(webkit, "Choose a picture", jpeg(tmp_path, webkit))
    webkit.until("document.querySelectorAll('.photos .picture').length === 1")
    choose(firefox, "Condition", "good")
    add_piece(firefox, "G 25")
    own.start()
    sync(firefox)
    own.end()
    add_piece(webkit, "P 21")
    own.start()
    for phone in (webkit, chromium, firefox, webkit, chromium):
        sync(phone)
    all_equal(*three.values())
    (piece,) = [one for one in stored(firefox)["records"] if one.get("item") == "P 24"]
    assert (piece["notes"], piece["paid"]["minor"], piece["condition"], len(piece["photos"])) == (
        "by Chromium", 500, "good", 1,
    )  # fmt: skip
    assert [phone.reported() for phone in three.values()] == [[], [], []]


def test_a_backup_of_each_is_restored_in_each_other(
    three: dict[str, Phone], site: dict[str, bytes], tmp_path: Path
):
    made: dict[str, tuple[Path, dict[str, list[dict[str, Any]]]]] = {}
    for name, phone in three.items():
        with serving(site) as app:
            look_round(phone, app)
            add_piece(phone, "P 24")
            write(phone, "Notes", f"“{name}”, ümlauts and 12/6")
            put_file(phone, "Choose a picture", jpeg(tmp_path, phone))
            phone.until("document.querySelectorAll('.photos .picture').length === 1")
            path = tmp_path / f"{name}.json"
            path.write_text(backup_file(phone))
            made[name] = (path, stored(phone))
    for name, phone in three.items():
        for other, (path, held) in made.items():
            if other != name:
                with serving(site) as app:
                    restored_equal(phone, app, path, held)


def restored_equal(
    phone: Phone, app: Server, path: Path, held: dict[str, list[dict[str, Any]]]
) -> None:
    phone.goto(app.url)
    open_more(phone, "Backup")
    put_file(phone, "Restore a backup file", path)
    phone.sees(f"Restored: {len(held['records'])} added")
    there = stored(phone)
    assert by_id(there["records"]) == by_id(held["records"])
    assert by_id(there["photos"]) == by_id(held["photos"])
    assert phone.reported() == []


@pytest.mark.parametrize("content", ['{"format": 1, "kind": "ident', '{"a": 1}'])
def test_a_broken_backup_is_said(lent: Phone, app: Server, tmp_path: Path, content: str):
    look_round(lent, app)
    open_more(lent, "Backup")
    before = stored(lent)
    path = tmp_path / "b.json"
    path.write_text(content)
    put_file(lent, "Restore a backup file", path)
    lent.sees("Nothing was changed.")
    assert stored(lent) == before


def test_a_phone_syncs_and_is_told_when_the_server_is_away(lent: Phone, own: OwnServer):
    pair(lent, own, "this one")
    add_piece(lent, "P 24")
    assert "cannot be reached" not in sync(lent)
    (held,) = [one for one in own.records().values() if one["type"] == "piece"]
    assert held["fields"]["item"] == "P 24"
    own.end()
    write_later = "The server cannot be reached. What is waiting is sent when it can be reached."
    lent.place("Collection")
    assert write_later in sync(lent)
    own.start()
    assert write_later not in sync(lent)
