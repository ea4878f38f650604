"""The screens of syncing as those who cannot see well, or have large thumbs, meet them."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from identify import keeping
from identify.keeping import ops
from tests.browser.own_server import OwnServer, open_piece, pair, phone, settled
from tests.browser.phone import PHONE, in_each_light, too_small, too_wide
from tests.browser.phone_storage import more, place

SHELVES = {"pack": "pellmarsh", "trashed": "", "of": [], "photos": ["pone"]}


def operation(device: str, n: int, record: str, parents: list[str], **fields: Any) -> Any:
    ident = f"d{device * 16}.{n}"
    clock = {"wall": 1_780_000_000_000 + n, "count": 0, "time": "2026-05-28T20:26:40.000Z"}
    bare = {"id": ident, "record": record, "type": "piece", "parents": parents, "fields": fields}
    return bare | clock | {"group": "g", "what": "Changed", "undoes": ""}


def test_where_a_server_would_get_it_no_demo_is_offered(page, own):
    page.goto(own.url)
    place(page, "Collection")
    expect(page.get_by_role("button", name="Try the demo")).to_be_visible()
    pair(page, own, "Empty phone")
    for name in ("Collection", "More"):
        place(page, name)
        expect(page.get_by_role("main")).to_contain_text("Nothing is in your collection yet.")
        expect(page.get_by_role("button", name=re.compile("demo|Undo"))).to_have_count(0)


def disagreeing() -> list[Any]:
    """Two devices: one piece changed by both, one deleted by one and changed by the other."""
    first, second = "daaaaaaaaaaaaaaaa.1", "daaaaaaaaaaaaaaaa.2"
    long = "Bought at Harrowdale from the widow of a signalman, with a letter. " * 3
    money = {"minor": 1250, "over": 0, "currency": "GBP", "typed": "£12.50"}
    return [
        operation("a", 1, "rone", [], item="P 24", **SHELVES),
        operation("a", 2, "rtwo", [], item="P 21", **SHELVES),
        operation("a", 3, "rone", [first], notes=long, paid=money, photos=["pone", "ptwo"]),
        operation("b", 1, "rone", [first], notes="Bought new", paid=None, photos=["pone", "p3"]),
        operation("a", 4, "rtwo", [second], trashed="2026-05-28T20:26:40.000Z"),
        operation("b", 2, "rtwo", [second], condition="good"),
    ]


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory, site) -> Iterator[OwnServer]:
    """A server that holds what two devices do not agree on."""
    server = OwnServer(tmp_path_factory.mktemp("own") / "data", site)
    server.start()
    with keeping.open(server.folder) as store:
        assert len(ops.push(store, disagreeing())["held"]) == 6
    yield server
    server.end()


def walk(page: Page, server: OwnServer) -> Iterator[str]:
    """Every screen of syncing, one after another: its name."""
    page.goto(server.url)
    more(page, "Devices and sync")
    expect(page.get_by_label("Code")).to_be_visible()
    page.get_by_label("Code").fill("K7QM")
    page.get_by_role("button", name="Pair", exact=True).click()
    yield "pairing by a code"
    pair(page, server, "Small phone")
    yield "just paired"
    page.get_by_role("button", name="Hide this").click()
    page.get_by_role("button", name="Rename Small phone").first.click()
    yield "renaming"
    page.get_by_role("button", name="Close").click()
    page.get_by_role("button", name="Unpair Small phone").first.click()
    yield "taking off"
    page.get_by_role("button", name="Close").click()
    page.get_by_role("button", name="Add a device").click()
    expect(page.get_by_role("dialog").get_by_role("img")).to_be_visible()
    yield "adding a device"
    page.get_by_role("button", name="Close").click()
    page.context.set_offline(True)
    page.get_by_role("button", name="Sync now").click()
    settled(page)
    expect(page.get_by_role("group", name="Sync")).to_contain_text("cannot be reached")
    yield "without a signal"
    page.context.set_offline(False)
    open_piece(page, "P 24")
    yield "a piece to be settled"
    place(page, "More")
    yield "more"
    page.get_by_role("button", name="To settle").click()
    expect(page.get_by_role("group", name="Notes of P 24")).to_be_visible()
    yield "to settle"


def test_axe_finds_nothing_on_the_screens_of_syncing(browser: Browser, shared: OwnServer):
    context = browser.new_context(**PHONE, reduced_motion="reduce")
    page = phone(context)
    found = {name: (in_each_light(page), too_small(page)) for name in walk(page, shared)}
    assert {name: what for name, what in found.items() if what != ([], [])} == {}
    assert len(found) == 9
    context.close()


def test_large_text_reads_on_a_narrow_screen(browser: Browser, shared: OwnServer):
    context = browser.new_context(**{**PHONE, "viewport": {"width": 320, "height": 640}})
    context.add_init_script(
        "addEventListener('DOMContentLoaded',"
        " () => { document.documentElement.style.fontSize = '200%'; })"
    )
    page = phone(context)
    found = {name: too_wide(page) for name in walk(page, shared)}
    assert {name: wide for name, wide in found.items() if wide} == {}
    context.close()
