"""The backup file: all of it in a fresh phone, nothing lost by an old one, broken ones told."""

from pathlib import Path
from typing import Any

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify.exchange.backups import read_backup, write_backup
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import add_photo, add_piece, demo, fill, kept, more, place, records


def backup(page: Page, folder: Path, name: str = "backup.json") -> Path:
    """Make a backup file by one tap."""
    more(page, "Backup")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Make a backup file").click()
    file = folder / name
    waiting.value.save_as(file)
    expect(page.get_by_text("Everything is in the backup of")).to_be_visible()
    return file


def restore(page: Page, file: Path | dict[str, Any]) -> str:
    """Restore a file; what the app says about it."""
    more(page, "Backup")
    while page.get_by_role("alert").count():
        page.get_by_role("alert").get_by_role("button", name="Hide this").click()
    page.get_by_label("Restore a backup file").set_input_files(file)
    expect(page.get_by_role("alert")).to_be_visible()
    return page.get_by_role("alert").inner_text()


@pytest.fixture
def fresh(browser, server):
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    page.goto(server.url)
    yield page
    context.close()
    assert page.reported == []


def test_a_fresh_phone_gets_everything_deep_equal(page, fresh, server, tmp_path):
    page.goto(server.url)
    demo(page)
    add_piece(page, "P 24")
    fill(page, "Notes", "With “quotes”, ümlauts and 12/6")
    add_photo(page, 2000, 900)
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    add_piece(page, "G 25")
    page.get_by_role("button", name="Move to the bin").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    file = backup(page, tmp_path)
    again = tmp_path / "again.json"
    write_backup(again, read_backup(file))  # so the app reads one of the command's like its own
    assert again.read_bytes() == file.read_bytes()
    assert "124 added" in restore(fresh, file)
    here, there = kept(page), kept(fresh)
    assert there["records"] == here["records"]
    assert there["photos"] == here["photos"]
    history = {(e["group"], e["record"]): e for e in there["journal"]}
    for entry in here["journal"]:
        arrived = history[entry["group"], entry["record"]]
        assert (arrived["before"], arrived["after"]) == (entry["before"], entry["after"])
    expect(fresh.get_by_text("Everything is in the backup of")).to_be_visible()
    place(fresh, "Collection")
    expect(fresh.get_by_text("101 pieces.")).to_be_visible()


def test_an_older_backup_loses_nothing_newer_and_a_newer_one_wins(page, fresh, server, tmp_path):
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "first")
    old = backup(page, tmp_path, "old.json")
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    fill(page, "Notes", "second")
    add_piece(page, "P 21")
    before = kept(page)
    assert "2 left as they are" not in restore(page, old)
    after = kept(page)
    assert after["records"] == before["records"]
    assert [r["notes"] for r in records(page, "piece") if r["item"] == "P 24"] == ["second"]
    new = backup(page, tmp_path, "new.json")
    # on the other phone the old state was changed later: that one counts, and keeps the other
    restore(fresh, old)
    place(fresh, "Collection")
    fresh.get_by_role("list", name="Pieces").get_by_role("button").click()
    fill(fresh, "Notes", "third, on the other phone")
    said = restore(fresh, new)
    assert "1 added" in said
    assert "1 left as they are here" in said
    found = {r["item"]: r for r in records(fresh, "piece")}
    assert sorted(found) == ["P 21", "P 24"]
    assert found["P 24"]["notes"] == "third, on the other phone"
    history = [e for e in kept(fresh)["journal"] if e["record"] == found["P 24"]["id"]]
    assert any((e["after"] or {}).get("notes") == "second" for e in history)
    # a second restore of the same file changes nothing at all
    before = kept(fresh)
    restore(fresh, new)
    assert kept(fresh) == before


def test_what_a_newer_backup_replaces_stays_in_the_history(page, fresh, server, tmp_path):
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "old words")
    restore(fresh, backup(page, tmp_path, "one.json"))
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    fill(page, "Notes", "new words")
    assert "1 updated" in restore(fresh, backup(page, tmp_path, "two.json"))
    place(fresh, "Collection")
    fresh.get_by_role("list", name="Pieces").get_by_role("button").click()
    expect(fresh.get_by_label("Notes")).to_have_value("new words")
    fresh.get_by_role("button", name="History").click()
    expect(fresh.get_by_text("Notes: old words → new words").first).to_be_visible()


GOOD = {
    "id": "rgood",
    "type": "want",
    "made": "2026-01-01T00:00:00.000Z",
    "changed": "2026-01-01T00:00:00.000Z",
    "trashed": "",
    "pack": "pellmarsh",
    "item": "P 24",
    "variant": "",
    "least": "",
    "box": "",
    "most": None,
    "urgency": 2,
    "notes": "",
}
HEAD = {"format": 1, "kind": "identify backup", "journal": [], "photos": []}


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "not a backup, or it was cut short"),
        (orjson.dumps(HEAD | {"records": [GOOD]})[:-30], "not a backup, or it was cut short"),
        (b"\xff\xd8\xff\xe0 a photo", "not a backup, or it was cut short"),
        (b"[1, 2]", "something other than a backup"),
        (b'{"kind": "identify backup"}', "something other than a backup"),
        (orjson.dumps(HEAD | {"format": 2, "records": []}), "newer version of the app"),
    ],
)
def test_a_broken_backup_is_said_and_changes_nothing(page, server, content, sentence):
    page.goto(server.url)
    add_piece(page, "P 24")
    before = kept(page)
    told = restore(page, {"name": "b.json", "mimeType": "application/json", "buffer": content})
    assert sentence in told
    assert "Nothing was changed." in told
    assert kept(page) == before


@pytest.mark.parametrize(
    "wrong",
    [
        None,
        7,
        {},
        GOOD | {"id": "../x"},
        GOOD | {"type": "spell"},
        GOOD | {"changed": "yesterday"},
        GOOD | {"most": {"minor": 1.5, "currency": "GBP"}},
        GOOD | {"notes": ["a"]},
        GOOD | {"type": "piece", "of": [{"variant": 3}]},
        GOOD | {"type": "piece", "photos": "p1"},
    ],
)
def test_a_broken_entry_is_left_out_and_the_others_are_restored(page, server, wrong):
    page.goto(server.url)
    file = orjson.dumps(HEAD | {"records": [wrong, GOOD], "photos": [{"id": "p1", "full": "x"}]})
    told = restore(page, {"name": "b.json", "mimeType": "application/json", "buffer": file})
    assert "1 added" in told
    assert "2 in the file could not be read" in told
    assert [r["id"] for r in kept(page)["records"]] == ["rgood"]
    place(page, "Wants")
    expect(page.get_by_role("list", name="Wants")).to_contain_text("P 24")


def test_the_demo_is_not_called_the_collectors_own(page, server):
    page.goto(server.url)
    demo(page)
    place(page, "More")
    expect(page.get_by_role("button", name="Backup")).to_contain_text("Nothing of your own yet")
    add_piece(page, "P 24")
    place(page, "More")
    expect(page.get_by_role("button", name="Backup")).to_contain_text("1 record is only on this")


def test_what_is_not_in_a_backup_yet_is_shown(page, server, tmp_path):
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "one")
    place(page, "More")
    expect(page.get_by_text("1 record is only on this device")).to_be_visible()
    backup(page, tmp_path)
    add_piece(page, "P 21")
    place(page, "More")
    expect(page.get_by_text("1 record is not in the last backup")).to_be_visible()
