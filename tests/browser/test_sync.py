"""Phones and the collector's own server: real processes, real SQLite, real Chromium."""

import shutil
import signal
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Request, expect

from tests.browser.keeping import add_piece, fill, kept, photo, place, records
from tests.browser.own import OwnServer, by_id, operations, pair, phone, same_everywhere, settled, sync
from tests.browser.phone import PHONE, kept_phone, kill, watched


@pytest.fixture
def own(tmp_path):
    server = OwnServer(tmp_path / "data")
    server.start()
    yield server
    server.end(signal.SIGKILL)


@pytest.fixture
def two(browser, own):
    """Two phones that are paired with it."""
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    pages = [phone(context) for context in contexts]
    for page, name in zip(pages, ("Attic", "Pocket"), strict=True):
        pair(page, own, name)
    yield pages
    for context in contexts:
        context.close()
    assert [page.reported for page in pages] == [[], []]


def open_piece(page: Page, number: str) -> None:
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").filter(has_text=number).click()
    expect(page.get_by_label("Notes")).to_be_visible()


def add_photo(page: Page, width: int, height: int, noisy: bool = False) -> None:
    count = page.get_by_role("button", name="Photo", exact=False).count()
    page.get_by_label("Choose a picture").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": photo(page, width, height, noisy)}
    )
    expect(page.locator(".photos .picture")).to_have_count(count + 1)


def to_trash(page: Page, number: str) -> None:
    open_piece(page, number)
    page.get_by_role("button", name="Move to the trash").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")


def signal_gone(page: Page, gone: bool = True) -> None:
    page.context.set_offline(gone)


def written(page: Page) -> set[tuple[str, str, str]]:
    """Every value that a phone ever said it had saved: record, field and value."""
    found = set()
    for entry in kept(page)["journal"]:
        if not entry["side"] or entry.get("send"):
            for name, value in entry["after"].items():
                if name not in ("id", "type", "changed"):
                    found.add((entry["record"], name, repr(value)))
    return found


def settle(page: Page, piece: str, field: str, value: str) -> None:
    """On the screen of what is to be settled: tap a value."""
    group = page.get_by_role("group", name=f"{field} of {piece}")
    group.get_by_role("button").filter(has_text=value).first.click()
    expect(group).to_have_count(0)


def test_a_day_without_signal_a_killed_server_and_last_nights_backup(two, own):
    """Two phones change the same pieces; the server dies in the middle of it and is an old one then."""
    attic, pocket = two
    for number in ("P 24", "P 21", "G 25"):
        add_piece(attic, number)
    open_piece(attic, "P 24")
    add_photo(attic, 700, 500)
    sync(attic)
    sync(pocket)
    same_everywhere(own, attic, pocket)
    own.run("backup")
    (backup,) = [p for p in (own.folder.parent / "data-backups").glob("*") if p.name != "photos"]

    # the evening after the backup: the server has it, and will have lost it
    open_piece(attic, "G 25")
    fill(attic, "Notes", "after the backup")
    sync(attic)
    sync(pocket)

    for page in two:
        signal_gone(page)
    open_piece(attic, "P 24")
    fill(attic, "Notes", "from the attic")
    fill(attic, "Price paid", "£12")
    add_photo(attic, 900, 600, noisy=True)
    to_trash(attic, "P 21")
    to_trash(attic, "G 25")
    add_piece(attic, "P 23")
    open_piece(pocket, "P 24")
    fill(pocket, "Notes", "from the pocket")
    fill(pocket, "Where it was bought", "Harrowdale")
    add_photo(pocket, 600, 600, noisy=True)
    open_piece(pocket, "P 21")
    fill(pocket, "Notes", "still wanted")
    to_trash(pocket, "G 25")
    said = written(attic) | written(pocket)

    killed: list[str] = []

    def at_first_photo(request: Request) -> None:
        if request.method == "PUT" and not killed:
            killed.append(request.url)
            own.end(signal.SIGKILL)

    attic.on("request", at_first_photo)
    signal_gone(attic, False)
    attic.wait_for_function("() => navigator.onLine")
    assert "cannot be reached" in sync(attic)
    assert killed
    shutil.rmtree(own.folder)
    own.run("restore", str(backup))
    own.start()

    signal_gone(pocket, False)
    for page in (attic, pocket, attic, pocket):
        sync(page)
    same_everywhere(own, attic, pocket)
    known = {
        (entry["record"], name, repr(value))
        for entry in operations(pocket).values()
        for name, value in entry["after"].items()
    }
    assert said <= known

    found = {one["item"]: one for one in records(attic, "piece")}
    assert sorted(found) == ["P 21", "P 23", "P 24"], "one comes back, one was deleted by both"
    assert found["P 24"]["where"] == "Harrowdale"
    assert found["P 24"]["paid"]["minor"] == 1200
    gone = [one for one in kept(pocket)["records"] if one.get("item") == "G 25"]
    assert [one["notes"] for one in gone] == ["after the backup"]

    place(pocket, "More")
    pocket.get_by_role("button", name="To settle").click()
    expect(pocket.get_by_text("it was deleted on one device and changed on another")).to_be_visible()
    pocket.get_by_role("button", name="Keep P 21").click()
    settle(pocket, "P 24", "Notes", "from the attic")
    settle(pocket, "P 24", "Photos", "Both together")
    expect(pocket.get_by_text("Nothing is left to settle")).to_be_visible()
    sync(pocket)
    sync(attic)
    same_everywhere(own, attic, pocket)
    piece = next(one for one in records(attic, "piece") if one["item"] == "P 24")
    assert piece["notes"] == "from the attic"
    assert len(piece["photos"]) == 3
    assert not any(one["clashes"] for one in own.records().values())
    place(attic, "More")
    expect(attic.get_by_role("button", name="First steps")).to_be_visible()
    expect(attic.get_by_role("button", name="To settle")).to_have_count(0)
