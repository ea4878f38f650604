"""A range of one's own is let be followed from the own server, by a switch on a paired phone."""

from collections.abc import Iterator
from datetime import UTC, datetime
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from identify.keeping import devices
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from identify.server import authority
from identify.server.hosts import checked
from identify.server.pairing import link
from tests.browser.own_server import sync
from tests.browser.phone import PHONE, violations, watched
from tests.browser.phone_storage import more, takes_in
from tests.browser.test_following import (
    ANNAS,
    WAIT,
    Quiet,
    edition,
    followed,
    look_again,
    look_at,
)
from tests.server.own_server import OwnServer, own_server


class WithoutWorker(Quiet):
    """The driver itself writes a line where it keeps a service worker from starting."""

    def append(self, text: str) -> None:
        if "Service Worker registration blocked" not in text:
            super().append(text)


@pytest.fixture
def secure(tmp_path, site) -> Iterator[OwnServer]:
    """The keeper's own server, over https as phones elsewhere reach it."""
    made = tmp_path / "made"
    authority.make(made, checked(["127.0.0.1"]), datetime.now(UTC))
    both = (made / "server.crt", made / "server.key")
    with own_server(tmp_path / "data", files=site, certificate=both, hosts=["127.0.0.1"]) as own:
        yield own


@pytest.fixture
def phones(browser) -> Iterator[Any]:
    """Makes phones, each with nothing on it."""
    made: list[Page] = []

    def new() -> Page:
        told = {"ignore_https_errors": True, "service_workers": "block"}  # not for such a server
        page = watched(browser.new_context(**PHONE, **told).new_page())
        page.reported = WithoutWorker()
        made.append(page)
        return page

    yield new
    for page in made:
        page.context.close()
        assert page.reported == []


def paired(page: Page, own: OwnServer) -> None:
    secret = devices.new_pairing(own.store, own.times.now())["secret"]
    page.goto(link(own.url, secret))
    page.get_by_label("What to call this device").fill("Phone")
    page.get_by_role("button", name="Pair", exact=True).click()
    expect(page.get_by_role("alert").filter(has_text="This device is paired")).to_be_visible()


def written_down_by_anna(page: Page, folder: Any) -> None:
    rows = rows_of_pack(read_pack(edition(folder, ANNAS))[0])
    takes_in(page, rows)


def to_club(page: Page) -> None:
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button", name="Club").click()
    expect(page.get_by_role("heading", name="Let others follow it")).to_be_visible()


def test_a_friend_follows_a_range_from_the_own_server_until_it_is_private_again(
    secure, small_server, phones, tmp_path
):
    anna, friend = phones(), phones()
    paired(anna, secure)
    written_down_by_anna(anna, tmp_path / "club")
    to_club(anna)
    switch = anna.get_by_label("From your own server")
    expect(switch).to_have_value("")
    switch.select_option("yes")
    address = anna.get_by_text(f"{secure.url}ranges/").inner_text()
    assert violations(anna) == []
    sync(anna)

    friend.goto(small_server.url)
    followed(friend, address)
    main = friend.get_by_role("main")
    expect(main).to_contain_text("Written down by Anna. 3 numbers.")

    to_club(anna)
    anna.get_by_role("button", name="P2").click()
    anna.get_by_label("Name", exact=True).fill("Guard's coach")
    anna.get_by_label("Name", exact=True).blur()
    expect(anna.get_by_text("Saved", exact=True)).to_be_visible()
    sync(anna)
    look_again(friend, "Club has a newer edition: 1 number changed.")

    friend.get_by_role("button", name="Import it into a range of your own").click()
    friend.get_by_role("dialog").get_by_role("button", name="Close").click()
    to_club(anna)
    anna.get_by_label("From your own server").select_option("")
    expect(anna.get_by_text(address)).to_be_hidden()
    sync(anna)
    look_again(friend, "There is nothing at this address, or no longer.")
    expect(main).to_contain_text("3 numbers.")
    look_at(friend, address)
    expect(friend.locator("#address-said")).to_contain_text("nothing at this", timeout=WAIT)


def test_a_device_without_a_server_is_told_how_others_follow(small_server, phones, tmp_path):
    page = phones()
    page.goto(small_server.url)
    written_down_by_anna(page, tmp_path / "club")
    to_club(page)
    expect(page.get_by_role("main")).to_contain_text("put that where anybody can fetch it")
    expect(page.get_by_label("From your own server")).to_have_count(0)
