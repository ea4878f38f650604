"""Phones with an older app and a newer server, and the other way round, with kept programs.

`tests/keep_build.py` keeps them in fixtures/kept-builds/: the server of that time and the app that
it serves, run as they were.
"""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.browser.own_server import OwnProcess, open_piece, pair, phone, sync
from tests.browser.phone import PHONE
from tests.browser.phone_storage import add_piece, fill, place
from tests.keep_build import unpacked, versions

pytestmark = pytest.mark.heavy

SCRIPT = "fetch('app.js').then((answer) => answer.text())"
TAKE_UPDATE = """
async () => {
  for (const one of await navigator.serviceWorker.getRegistrations()) await one.unregister();
  for (const name of await caches.keys()) await caches.delete(name);
}"""

BIN = re.compile("^Move to the (bin|trash)$")  # it was called the trash before


@pytest.fixture(params=versions())
def old(request, tmp_path) -> Iterator[OwnProcess]:
    """The server of a kept version, running."""
    running = OwnProcess(tmp_path / "data", unpacked(request.param, tmp_path / "program"))
    running.start()
    yield running
    running.kill()


def in_place_of(server: OwnProcess, folder: Path, program: Path | None = None) -> OwnProcess:
    """Another program at the same address, started; the one before has ended."""
    server.end()
    other = OwnProcess(folder) if program is None else OwnProcess(folder, program)
    other.port, other.url = server.port, server.url
    other.start()
    return other


def kept_offline(page: Page) -> str:
    """The app's script, once the phone keeps it for use without a signal."""
    page.evaluate("navigator.serviceWorker.ready.then(() => null)")
    page.reload()
    expect(page.get_by_role("navigation")).to_be_visible()
    return str(page.evaluate(SCRIPT))


def shows(page: Page, *numbers: str) -> None:
    place(page, "Collection")
    pieces = page.get_by_role("list", name="Pieces")
    expect(pieces.get_by_role("button")).to_have_count(len(numbers))
    for number in numbers:
        expect(pieces).to_contain_text(number)


def two_phones(contexts: list[BrowserContext]) -> tuple[Page, Page]:
    one, other = (phone(context) for context in contexts)
    return one, other


@pytest.fixture
def contexts(browser) -> Iterator[list[BrowserContext]]:
    made = [browser.new_context(**PHONE) for _ in range(2)]
    yield made
    for context in made:
        context.close()


def in_step(server: OwnProcess, changed: Page, other: Page) -> None:
    """What each writes comes to the other, a change and an undone deletion too."""
    add_piece(changed, "P 21")
    sync(changed)
    sync(other)
    shows(other, "P 24", "P 21")
    open_piece(other, "P 24")
    fill(other, "Notes", "seen by both")
    sync(other)
    sync(changed)
    open_piece(changed, "P 24")
    expect(changed.get_by_label("Notes")).to_have_value("seen by both")
    open_piece(changed, "P 21")
    changed.get_by_role("button", name=BIN).click()
    sync(changed)
    sync(other)
    shows(other, "P 24")


def test_an_older_app_goes_on_with_todays_server(old, contexts, tmp_path):
    one, other = two_phones(contexts)
    pair(one, old, "Older")
    add_piece(one, "P 24")
    sync(one)
    before = kept_offline(one)
    new = in_place_of(old, old.folder)
    try:
        pair(other, new, "Newer")
        sync(other)
        shows(other, "P 24")
        assert one.evaluate(SCRIPT) == before, "the phone is still at the older app"
        assert other.evaluate(SCRIPT) != before
        in_step(new, one, other)
        there = {one["fields"].get("item", ""): one for one in new.records().values()}
        assert there["P 24"]["fields"]["notes"] == "seen by both"
        assert there["P 21"]["trashed"]
    finally:
        new.end()


def test_todays_app_goes_on_with_an_older_server(old, contexts, tmp_path):
    """The server was brought up to date, a phone took the app of today, and the owner went back."""
    one, other = two_phones(contexts)
    for page, name in ((one, "First"), (other, "Second")):
        pair(page, old, name)
    add_piece(one, "P 24")
    for page in (one, other):
        sync(page)
    before = kept_offline(one)
    old.end()
    new = OwnProcess(old.folder)
    said = new.run("upgrade-check")
    (copy,) = old.folder.with_name("data-backups").glob("before-version-*")
    assert str(copy) in said
    new.port, new.url = old.port, old.url
    new.start()
    one.evaluate(TAKE_UPDATE)
    one.reload()
    expect(one.get_by_role("navigation")).to_be_visible()
    assert kept_offline(one) != before, "this phone is at the app of today"
    add_piece(one, "G 25")
    sync(one)
    new.end()
    again = in_place_of(new, copy, old.program)
    try:
        sync(one)
        sync(other)
        assert one.evaluate(SCRIPT) != before
        shows(one, "P 24", "G 25")
        shows(other, "P 24", "G 25")
        one.get_by_role("list", name="Pieces").get_by_role("button").filter(has_text="G 25").click()
        one.get_by_role("button", name=BIN).click()
        sync(one)
        sync(other)
        in_step(again, one, other)
        in_step_back(again, other, one)
    finally:
        again.end()


def in_step_back(server: OwnProcess, older: Page, newer: Page) -> None:
    """What the older app writes comes to the newer one."""
    open_piece(older, "P 24")
    fill(older, "Notes", "by the older app")
    sync(older)
    sync(newer)
    open_piece(newer, "P 24")
    expect(newer.get_by_label("Notes")).to_have_value("by the older app")
