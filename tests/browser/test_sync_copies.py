"""Copies of a phone, killed tabs, backup files, and what is deleted for good, between devices."""

import shutil
import sqlite3
from contextlib import closing
from typing import Any

import orjson
from playwright.sync_api import Page, expect

from identify import keeping
from identify.keeping import ops
from tests.browser.own_server import (
    OwnServer,
    open_piece,
    operations,
    pair,
    phone,
    same_everywhere,
    settled,
    sync,
)
from tests.browser.phone import PHONE, kept_phone, kill
from tests.browser.phone_storage import add_photo, add_piece, fill, kept, more, records
from tests.browser.test_backup import backup, restore


def notes(page: Page) -> dict[str, str]:
    return {one["item"]: one["notes"] for one in records(page, "piece")}


def own_devices(page: Page) -> set[str]:
    """Under which names this phone wrote its changes."""
    entries = operations(page).values()
    return {e["op"].partition(".")[0] for e in entries if not e["side"]}


def test_an_old_copy_of_a_phone_comes_back_to_life_and_nothing_is_lost(playwright, own, tmp_path):
    """The profile's folder is copied; both go on. The copy takes another name for its changes."""
    first, copy = tmp_path / "first", tmp_path / "copy"
    with kept_phone(playwright, first) as context:
        page = phone(context)
        pair(page, own, "Phone")
        add_piece(page, "P 24")
        add_piece(page, "P 21")
        sync(page)
    shutil.copytree(first, copy, ignore=shutil.ignore_patterns("Singleton*"))
    with kept_phone(playwright, first) as context:
        page = phone(context)
        page.goto(own.url)
        open_piece(page, "P 24")
        fill(page, "Notes", "by the first")
        fill(page, "Where it was bought", "Harrowdale")
        sync(page)
    with kept_phone(playwright, first) as one, kept_phone(playwright, copy) as other:
        pages = [phone(one), phone(other)]
        pages[1].context.set_offline(True)
        pages[1].goto(own.url)
        open_piece(pages[1], "P 24")
        fill(pages[1], "Notes", "by the copy")
        open_piece(pages[1], "P 21")
        fill(pages[1], "Notes", "by the copy as well")
        pages[1].context.set_offline(False)
        pages[0].goto(own.url)
        for page in (pages[1], pages[0], pages[1], pages[0]):
            sync(page)
        same_everywhere(own, *pages)
        assert len(own_devices(pages[1]) - own_devices(pages[0])) == 1
        assert notes(pages[0])["P 21"] == "by the copy as well"
        (piece,) = [one for one in own.records().values() if one["fields"].get("item") == "P 24"]
        assert piece["fields"]["where"] == "Harrowdale"
        (clash,) = piece["clashes"]
        assert {one["value"] for one in clash["values"]} == {"by the first", "by the copy"}


def test_a_tab_killed_while_a_photo_is_sent_goes_on_where_it_was(browser, own):
    context = browser.new_context(**PHONE)
    page = phone(context)
    pair(page, own, "Phone")
    add_piece(page, "P 24")
    add_photo(page, 1600, 1200, noisy=True)
    large = max(len(one["full"]) for one in kept(page)["photos"]) * 3 // 4
    assert large > 3 * 2**18, "several chunks"
    more(page, "Devices and sync")
    settled(page)
    second = f"from={2 * 2**18}"
    with page.expect_request(lambda r: r.method == "PUT" and second in r.url, timeout=30_000):
        page.get_by_role("button", name="Sync now").click()
    kill(page)
    page = phone(context)
    sent: list[str] = []
    page.on("request", lambda r: sent.append(r.url) if r.method == "PUT" else None)
    page.goto(own.url)
    said = sync(page)
    assert "Nothing is waiting to be sent" in said
    assert not any("from=0&" in url for url in sent if f"size={large}" in url[:-1])
    assert sum("/api/photos/" in url for url in sent) < 1 + large // 2**18 + 1
    fresh = phone(browser.new_context(**PHONE))
    pair(fresh, own, "Other")
    sync(page)
    same_everywhere(own, page, fresh)
    fresh.context.close()
    context.close()


def test_a_backup_file_and_the_server_tell_the_same_once_only(browser, own, tmp_path):
    """A phone that begins with a backup file of another, then pairs, doubles nothing."""
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    old, new = [phone(context) for context in contexts]
    pair(old, own, "Old")
    add_piece(old, "P 24")
    fill(old, "Notes", "first")
    sync(old)
    file = backup(old, tmp_path)
    open_piece(old, "P 24")
    fill(old, "Notes", "second")
    sync(old)
    new.goto(own.url)
    assert "1 added" in restore(new, file)
    assert notes(new) == {"P 24": "first"}
    pair(new, own, "New")
    sync(old)
    same_everywhere(own, old, new)
    assert notes(new) == {"P 24": "second"}
    (piece,) = [one for one in own.records().values() if one["type"] == "piece"]
    assert piece["clashes"] == []
    before = own.records()
    assert "left as they are here" in restore(new, file)
    sync(new)
    sync(old)
    assert own.records() == before, "an old file says nothing new"
    same_everywhere(own, old, new)
    for context in contexts:
        context.close()


def stored_anywhere(own: OwnServer, text: str) -> bool:
    """Does the server's database hold a text in any operation?"""
    with closing(sqlite3.connect(own.folder / "identify.sqlite")) as database:
        rows = database.execute("select content from ops").fetchall()
    return any(text in content for (content,) in rows)


def test_what_is_deleted_for_good_is_gone_on_every_device_photos_too(browser, own):
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    one, other = [phone(context) for context in contexts]
    pair(one, own, "One")
    pair(other, own, "Other")
    add_piece(one, "P 24")
    add_piece(one, "P 21")
    fill(one, "Notes", "a secret price")
    add_photo(one, 300, 200)
    sync(one)
    sync(other)
    assert len(kept(other)["photos"]) == 1
    open_piece(one, "P 21")
    one.get_by_role("button", name="Move to the bin").click()
    expect(one.get_by_role("heading", level=1)).to_have_text("Collection")
    more(one, "Bin")
    one.get_by_role("button", name="Empty the bin").click()
    one.get_by_role("button", name="Delete for good").click()
    expect(one.get_by_text("The bin is empty")).to_be_visible()
    sync(one)
    sync(other)
    sync(other)
    same_everywhere(own, one, other)
    for page in (one, other):
        there = kept(page)
        assert there["photos"] == []
        assert "a secret price" not in orjson.dumps(there["journal"]).decode()
        assert "a secret price" not in orjson.dumps(there["records"]).decode()
    assert not stored_anywhere(own, "a secret price")
    assert list((own.folder / "photos").glob("*/*.jpg")) == []
    for context in contexts:
        context.close()


def operation(n: int, record: str, sort: str, **fields: Any) -> dict[str, Any]:
    """One that a device with a newer version of the app wrote."""
    bare = {"id": f"d{'n' * 16}.{n}", "record": record, "type": sort, "parents": []}
    clock = {"wall": 1_780_000_000_000 + n, "count": 0, "time": "2026-05-28T20:26:40.000Z"}
    return bare | clock | {"group": "gnew", "what": "New", "undoes": "", "fields": fields, "hue": 7}


def test_what_a_newer_version_wrote_is_kept_and_passed_on_as_it_is(browser, own):
    """An unknown field, a sort of record, and more in the operation itself; odd names too."""
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    one, other = [phone(context) for context in contexts]
    want = {"pack": "pellmarsh", "item": "P 24", "of a newer version": {"a": [1.5, None]}}
    odd = {"length": {"x": 1}, "a b": "c", "1": "ü", "notes": 5, "made": "2026-05-01"}
    sent = [
        operation(1, "rwant", "want", trashed="", **want, **odd),
        operation(2, "rloan", "loan", trashed="", to="a friend"),
    ]
    with keeping.open(own.folder) as store:
        assert len(ops.push(store, sent)["held"]) == 2
    pair(one, own, "One")
    # the server loses all but its devices: the phone brings back what it was told
    own.end()
    with closing(sqlite3.connect(own.folder / "identify.sqlite")) as database:
        database.execute("delete from ops")
        database.execute("update meta set value = 'another epoch' where name = 'epoch'")
        database.commit()
    own.start()
    one.goto(own.url)
    sync(one)
    pair(other, own, "Other")
    with keeping.open(own.folder) as store:
        there = {op["id"]: op for op in ops.pull(store, "", 0, "", 500)["ops"]}
    assert [there[op["id"]] for op in sent] == sent
    shown = {r["id"]: r for r in kept(other)["records"]}
    assert shown["rwant"]["of a newer version"] == {"a": [1.5, None]}
    assert shown["rwant"]["notes"] == "", "what the app cannot show is as in a new want"
    assert shown["rloan"]["to"] == "a friend"
    for context in contexts:
        context.close()
    assert [one.reported, other.reported] == [[], []]
