"""With no signal, from cold; a tab killed; a new version; a new edition of the pack."""

import orjson
import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import (
    NO_STORAGE,
    asking,
    begin,
    choices,
    expect_answers,
    expect_question,
    kept_phone,
    kill,
    question,
    see,
    start,
    watched,
)
from tests.conftest import serving


def ready_for_no_signal(page: Page) -> None:
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def test_a_piece_is_identified_from_cold_with_the_server_stopped(playwright, own_server, tmp_path):
    with kept_phone(playwright, tmp_path) as context:
        page = context.new_page()
        page.goto(own_server.url)
        ready_for_no_signal(page)
    own_server.stop()
    with kept_phone(playwright, tmp_path) as context:
        context.set_offline(True)
        page = context.new_page()
        failed: list[str] = []
        page.on("requestfailed", lambda request: failed.append(request.url))
        start(page, own_server.url, "Wagon")
        expect(page.get_by_role("status").filter(has_text="No signal")).to_be_visible()
        while asking(page):
            see(page, choices(page)[0])
        expect(page.get_by_text("Take care", exact=True)).to_be_visible()
        assert failed == []


def test_a_killed_tab_comes_back_to_the_same_question(browser, server):
    context = browser.new_context()
    page = context.new_page()
    page.goto(server.url)
    begin(page, "Coach")
    for _ in range(3):
        see(page, choices(page)[0])
    asked = question(page)
    kill(page)
    again = context.new_page()
    again.goto(server.url)
    expect_question(again, asked)
    expect_answers(again, 3)
    context.close()


def test_a_new_version_is_offered_and_nothing_moves_until_it_is_tapped(
    playwright, own_server, site, tmp_path
):
    with kept_phone(playwright, tmp_path) as context:
        page = watched(context.new_page())
        page.goto(own_server.url)
        ready_for_no_signal(page)
        begin(page, "Coach")
        see(page, choices(page)[0])
        asked = question(page)
        own_server.stop()
        changed = dict(site)
        changed["sw.js"] = changed["sw.js"].replace(b'BUILD = "', b'BUILD = "next', 1)
        changed["style.css"] += b"/* next */"
        own_server.files = changed
        own_server.start()
        page.evaluate("navigator.serviceWorker.ready.then(r => r.update())")
        expect(page.get_by_role("status").filter(has_text="A new version is ready")).to_be_visible()
        assert question(page) == asked, "nothing moves in the middle of a piece"
        see(page, choices(page)[0])
        asked = question(page)
        page.get_by_role("button", name="Other screens").tap()
        page.get_by_role("dialog").get_by_role("button", name="Settings").tap()
        with page.expect_navigation():
            page.get_by_role("button", name="Use it now").tap()
        expect(page.get_by_text("Version next")).to_be_visible()
        page.get_by_role("button", name="Back to the piece").tap()
        expect_question(page, asked)


def test_a_saved_piece_meets_a_new_edition_of_its_pack(playwright, own_server, site, tmp_path):
    """An answer whose feature is gone is set aside and named; the others stand."""
    with kept_phone(playwright, tmp_path) as context:
        page = context.new_page()
        page.goto(own_server.url)
        ready_for_no_signal(page)
        begin(page, "Coach")
        asked = []
        for _ in range(2):
            asked.append(question(page))
            see(page, choices(page)[0])
    pack = orjson.loads(site["packs/pellmarsh.json"])
    place = next(n for n, f in enumerate(pack["features"]) if f["question"] == asked[0])
    name = pack["features"][place]["name"]
    pack["features"][place]["id"] = "renamed"
    pack["version"] = "0000000000000000"
    own_server.stop()
    own_server.files = {**site, "packs/pellmarsh.json": orjson.dumps(pack)}
    own_server.files["sw.js"] = site["sw.js"].replace(b'BUILD = "', b'BUILD = "next', 1)
    own_server.start()
    with kept_phone(playwright, tmp_path) as context:
        page = context.new_page()
        page.goto(own_server.url)
        page.evaluate("navigator.serviceWorker.ready.then(r => r.update())")
        expect(page.get_by_role("status").filter(has_text="A new version is ready")).to_be_visible()
        page.get_by_role("button", name="Other screens").tap()
        page.get_by_role("dialog").get_by_role("button", name="Settings").tap()
        with page.expect_navigation():
            page.get_by_role("button", name="Use it now").tap()
        notice = page.get_by_role("alert")
        expect(notice).to_contain_text("Left out of this piece")
        expect(notice).to_contain_text("that question is no longer asked")
        page.get_by_role("button", name="Back to the piece").tap()
        expect_answers(page, 1)
        assert name


@pytest.mark.parametrize("broken", [b"", b"{", b"null", b'{"format": 99}'])
def test_an_unreadable_pack_is_said_and_not_a_blank_screen(browser, site, broken):
    with serving({**site, "packs/pellmarsh.json": broken}) as running:
        context = browser.new_context(service_workers="block")
        page = context.new_page()
        page.goto(running.url)
        expect(page.get_by_role("heading", level=1)).to_have_text("The app cannot go on")
        expect(page.get_by_role("button", name="Try again")).to_be_visible()
        context.close()


def test_a_private_window_that_stores_nothing_still_works_and_says_so(browser, server):
    context = browser.new_context()
    page = context.new_page()
    page.add_init_script(NO_STORAGE)
    page.goto(server.url)
    expect(page.get_by_role("alert")).to_contain_text("does not let the app store anything")
    begin(page, "Coach")
    see(page, choices(page)[0])
    assert asking(page)
    context.close()


def test_it_can_be_installed(playwright, server, tmp_path):
    with kept_phone(playwright, tmp_path) as context:
        page = context.new_page()
        page.goto(server.url)
        ready_for_no_signal(page)
        found = context.new_cdp_session(page).send("Page.getInstallabilityErrors")
        assert found["installabilityErrors"] == []
