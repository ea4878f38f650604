"""Phones and the collector's own server: real processes, real SQLite, real Chromium."""

import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import orjson
import pytest
from playwright.sync_api import Browser, Page, Request, expect

from tests.browser.own_server import (
    OwnProcess,
    OwnServer,
    open_piece,
    operations,
    pair,
    phone,
    same_everywhere,
    sync,
)
from tests.browser.phone import PHONE
from tests.browser.phone_storage import add_photo, add_piece, fill, kept, place, records


@contextmanager
def paired_phones(browser: Browser, own: OwnServer) -> Iterator[list[Page]]:
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    pages = [phone(context) for context in contexts]
    for page, name in zip(pages, ("Attic", "Pocket"), strict=True):
        pair(page, own, name)
    yield pages
    for context in contexts:
        context.close()
    assert [page.reported for page in pages] == [[], []]  # type: ignore[attr-defined]


@pytest.fixture
def two(browser, own):
    """Two phones that are paired with the server."""
    with paired_phones(browser, own) as pages:
        yield pages


@pytest.fixture
def two_of_process(browser, own_process):
    """Two phones that are paired with the server as a process."""
    with paired_phones(browser, own_process) as pages:
        yield pages


def to_trash(page: Page, number: str) -> None:
    open_piece(page, number)
    page.get_by_role("button", name="Move to the bin").click()
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
                    found.add((entry["record"], name, text(value)))
    return found


def text(value: Any) -> str:
    return orjson.dumps(value, option=orjson.OPT_SORT_KEYS).decode()


def settle(page: Page, piece: str, field: str, value: str) -> None:
    """On the screen of what is to be settled: tap a value."""
    group = page.get_by_role("group", name=f"{field} of {piece}")
    group.get_by_role("button").filter(has_text=value).first.click()
    expect(group).to_have_count(0)


def day_in_the_attic(page: Page) -> None:
    signal_gone(page)
    open_piece(page, "P 24")
    fill(page, "Notes", "from the attic")
    fill(page, "Price paid", "£12")
    add_photo(page, 900, 600, noisy=True)
    to_trash(page, "P 21")
    to_trash(page, "G 25")
    add_piece(page, "P 30")


def day_in_the_pocket(page: Page) -> None:
    signal_gone(page)
    open_piece(page, "P 24")
    fill(page, "Notes", "from the pocket")
    fill(page, "Where it was bought", "Harrowdale")
    add_photo(page, 600, 600, noisy=True)
    open_piece(page, "P 21")
    fill(page, "Notes", "still wanted")
    to_trash(page, "G 25")


def killed_at_the_first_photo(page: Page, own: OwnProcess) -> None:
    """The server's process ends while a phone is sending to it."""
    killed: list[str] = []

    def kill(request: Request) -> None:
        if request.method == "PUT" and not killed:
            killed.append(request.url)
            own.kill()

    page.on("request", kill)
    signal_gone(page, False)
    page.wait_for_function("() => navigator.onLine")
    assert "cannot be reached" in sync(page)
    assert killed


def settle_by_taps(page: Page) -> None:
    place(page, "More")
    page.get_by_role("button", name="To settle").click()
    expect(page.get_by_text("deleted on one device and changed on another")).to_be_visible()
    page.get_by_role("button", name="Keep P 21").click()
    settle(page, "P 24", "Notes", "from the attic")
    settle(page, "P 24", "Photos", "Both together")
    expect(page.get_by_text("Nothing left to settle")).to_be_visible()


def test_a_day_without_signal_a_killed_server_and_last_nights_backup(two_of_process, own_process):
    """Two phones change the same pieces; the server dies meanwhile, and comes back an old one."""
    attic, pocket = two_of_process
    own = own_process
    for number in ("P 24", "P 21", "G 25"):
        add_piece(attic, number)
    open_piece(attic, "P 24")
    add_photo(attic, 700, 500)
    sync(attic)
    sync(pocket)
    same_everywhere(own, attic, pocket)
    backup = own.run("backup").partition(": ")[0]
    open_piece(attic, "G 25")  # the server has this, and will have lost it
    fill(attic, "Notes", "after the backup")
    sync(attic)
    sync(pocket)

    day_in_the_attic(attic)
    day_in_the_pocket(pocket)
    said = written(attic) | written(pocket)
    killed_at_the_first_photo(attic, own)
    shutil.rmtree(own.folder)
    own.run("restore", backup)
    own.start()
    signal_gone(pocket, False)
    for page in (attic, pocket, attic, pocket):
        sync(page)

    same_everywhere(own, attic, pocket)
    known = {
        (entry["record"], name, text(value))
        for entry in operations(pocket).values()
        for name, value in entry["after"].items()
    }
    assert said <= known
    found = {one["item"]: one for one in records(attic, "piece")}
    assert sorted(found) == ["P 21", "P 24", "P 30"], "one comes back, one was deleted by both"
    assert found["P 24"]["where"] == "Harrowdale"
    assert found["P 24"]["paid"]["minor"] == 1200
    gone = [one for one in kept(pocket)["records"] if one.get("item") == "G 25"]
    assert [one["notes"] for one in gone] == ["after the backup"]

    settle_by_taps(pocket)
    sync(pocket)
    sync(attic)
    same_everywhere(own, attic, pocket)
    piece = next(one for one in records(attic, "piece") if one["item"] == "P 24")
    assert (piece["notes"], len(piece["photos"])) == ("from the attic", 3)
    assert not any(one["clashes"] for one in own.records().values())
    place(attic, "More")
    expect(attic.get_by_role("button", name="To settle")).to_have_count(0)


def test_what_was_settled_can_be_undone(two, own):
    """Undo offers both values once more; a second tap settles again, and all agree."""
    attic, pocket = two
    add_piece(attic, "P 24")
    sync(attic)
    sync(pocket)
    for page, note in ((attic, "one"), (pocket, "other")):
        signal_gone(page)
        open_piece(page, "P 24")
        fill(page, "Notes", note)
    for page in two:
        signal_gone(page, False)
        sync(page)
    sync(attic)
    open_piece(attic, "P 24")
    shown = attic.get_by_label("Notes").input_value()
    attic.get_by_role("button", name="Changed on two devices").click()
    group = attic.get_by_role("group", name="Notes of P 24")
    expect(group.get_by_role("button")).to_have_count(2)
    expect(group).to_contain_text("Pocket, ")
    settle(attic, "P 24", "Notes", shown)
    attic.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(group.get_by_role("button")).to_have_count(2)
    hidden = {"one": "other", "other": "one"}[shown]
    settle(attic, "P 24", "Notes", hidden)
    sync(attic)
    sync(pocket)
    same_everywhere(own, attic, pocket)
    assert [one["notes"] for one in records(pocket, "piece")] == [hidden]


def test_two_budgets_for_one_day_are_one_to_be_settled(two, own):
    """Neither is shown on one phone only, nor lost; one that was undone is written anew."""
    attic, pocket = two
    for page, amount in ((attic, "£40"), (pocket, "£60")):
        signal_gone(page)
        place(page, "Notebook")
        fill(page, "Today’s budget", "£5")
        place(page, "Collection")
        place(page, "Notebook")
        page.get_by_role("button", name="Undo", exact=True).click()
        expect(page.get_by_label("Today’s budget")).to_have_value("")
        fill(page, "Today’s budget", amount)
    for page in two:
        signal_gone(page, False)
    for page in (attic, pocket, attic):
        sync(page)
    same_everywhere(own, attic, pocket)
    (budget,) = records(attic, "budget")
    for page in two:
        place(page, "Notebook")
        amount = f"£{budget['amount']['minor'] // 100}"
        expect(page.get_by_label("Today’s budget")).to_have_value(amount)
    place(pocket, "More")
    pocket.get_by_role("button", name="To settle").click()
    group = pocket.get_by_role("group", name=re.compile("^Amount of Budget of "))
    expect(group.get_by_role("button")).to_have_count(2)
    group.get_by_role("button").filter(has_text="£40").click()
    expect(group).to_have_count(0)
    sync(pocket)
    sync(attic)
    same_everywhere(own, attic, pocket)
    for page in two:
        place(page, "Notebook")
        expect(page.get_by_label("Today’s budget")).to_have_value(re.compile("40"))
    place(pocket, "More")
    expect(pocket.get_by_role("button", name="To settle")).to_have_count(0)
