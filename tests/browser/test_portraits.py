"""Where portraits stand: lists, each record's own screen, the table, paper, a page for a friend."""

import re

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.browser.phone import (
    DESK,
    expect_read,
    more_of_question,
    see,
    start,
    violations,
    watched,
)
from tests.browser.phone_storage import add_photo, demo, more, place

PORTRAIT = "svg.portrait"
NUMBERED = re.compile(r"^([A-Z]{1,2} |\d\d/?)\d+")  # the number of an item comes first


def drawn(portrait: Locator) -> None:
    """A portrait is there, with something in it."""
    expect(portrait.locator("path, rect, image").first).to_be_attached()


@pytest.fixture
def owned(page, server) -> Page:
    """The app with the demo collection."""
    page.goto(server.url)
    demo(page)
    return page


@pytest.mark.parametrize("where", ["Collection", "Wants", "Notebook"])
def test_every_entry_of_a_list_that_the_reference_knows_has_its_picture(owned, where):
    place(owned, where)
    entries = owned.locator(".rows .hit")
    expect(entries.first).to_be_visible()
    known = entries.filter(has_text=NUMBERED)
    expect(known.nth(3)).to_be_visible()
    for n in range(min(known.count(), 12)):
        drawn(known.nth(n).locator(PORTRAIT))


def test_duplicates_have_pictures(owned):
    more(owned, "Duplicates")
    drawn(owned.locator(f".rows .hit {PORTRAIT}").first)


def test_candidates_have_pictures(page, server):
    start(page, server.url, "Coach")
    see(page, "Blue")
    more_of_question(page, "What it could be")
    candidates = page.get_by_role("dialog").locator(".candidates > li")
    for n in range(3):
        drawn(candidates.nth(n).locator(PORTRAIT))


@pytest.mark.parametrize("where", ["Collection", "Wants"])
def test_the_screen_of_a_record_shows_it_large_and_says_what_it_is(owned, where):
    place(owned, where)
    owned.locator(".rows .hit").filter(has=owned.locator(PORTRAIT)).first.click()
    figure = owned.locator("figure.own-picture")
    drawn(figure)
    name = owned.get_by_role("heading", level=1).inner_text()
    expect(figure.get_by_role("img", name=re.compile(re.escape(name)))).to_be_visible()
    expect_read(owned, lambda: figure.locator(PORTRAIT).bounding_box()["width"] > 300, True)


def test_a_photo_of_ones_own_stands_in_its_place(owned):
    place(owned, "Collection")
    owned.locator(".rows .hit").filter(has=owned.locator(PORTRAIT)).first.click()
    drawn(owned.locator("figure.own-picture"))
    name = owned.get_by_role("heading", level=1).inner_text()
    add_photo(owned, 300, 200)
    expect(owned.locator("figure.own-picture img")).to_be_visible()
    expect(owned.locator(f"figure.own-picture {PORTRAIT}")).to_have_count(0)
    owned.go_back()
    entry = owned.locator(".rows .hit").filter(has_text=name).filter(has=owned.locator("img"))
    expect(entry.first).to_be_visible()


@pytest.mark.parametrize("what", ["Wants", "Duplicates", "List for the insurer"])
def test_lists_on_paper_have_pictures(page, server, what):
    page.goto(server.url)
    demo(page)
    more(page, "Print or save")
    page.locator("button.hit").filter(has_text=re.compile(f"^{what}")).click()
    first = page.locator(f".paper tbody tr:not(.group) td:first-child {PORTRAIT}").first
    drawn(first)
    page.set_viewport_size({"width": 794, "height": 1123})  # A4 at 96 to the inch
    page.emulate_media(media="print")
    expect_read(page, lambda: 80 < first.bounding_box()["width"] < 120, True)


def test_the_wide_table_has_a_picture_before_each_name(browser, server):
    context = browser.new_context(**DESK)
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    place(page, "Collection")
    row = page.locator(".grid tbody tr").filter(has=page.locator(PORTRAIT)).first
    drawn(row.locator(PORTRAIT))
    height = "() => document.querySelector('.grid tbody tr:has(.portrait)')?.offsetHeight"
    # rows come by turns, and are drawn again
    assert page.wait_for_function(height).json_value() < 60
    assert page.reported == []
    context.close()


@pytest.mark.parametrize("light", ["light", "dark"])
def test_a_list_with_pictures_is_readable(owned, light):
    owned.emulate_media(color_scheme=light)
    place(owned, "Collection")
    drawn(owned.locator(f".rows .hit {PORTRAIT}").first)
    assert violations(owned) == []


def test_wants_for_a_friend_are_shown_with_pictures(page, server, tmp_path):
    page.goto(server.url)
    demo(page)
    more(page, "Print or save")
    with page.expect_download(timeout=60_000) as coming:
        page.get_by_role("button", name="Send the page", exact=True).click()
    coming.value.save_as(tmp_path / "wants.html")
    page.goto((tmp_path / "wants.html").as_uri())
    assert page.locator("li").count() == 14
    images = page.locator("li img")
    assert images.count() == 14
    assert images.first.evaluate("image => image.naturalWidth") > 0
