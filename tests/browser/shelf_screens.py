"""Ways to more than the registry of screens leads to: what is open, typed, empty or wrong there."""

import re

from playwright.sync_api import Page, expect

from tests.browser.phone import (
    asking,
    begin,
    choices,
    line,
    see,
)
from tests.browser.phone_storage import add_photo, add_piece, demo, more, place
from tests.browser.registry import written_down


def collection(page: Page) -> None:
    demo(page)
    page.get_by_text("Filter and sort").click()


def empty_collection(page: Page) -> None:
    place(page, "Collection")


def piece(page: Page) -> None:
    add_piece(page, "P 24")
    add_photo(page, 90, 60)
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    page.get_by_label("Price paid").fill("cheap")
    page.get_by_label("Price paid").blur()
    expect(page.get_by_label("Price paid")).to_have_attribute("aria-invalid", "true")
    page.get_by_text("Parts, and what it is kept for").click()


def uncertain_piece(page: Page) -> None:
    demo(page)
    page.get_by_label("Search the collection").fill("horns were off")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    expect(page.get_by_role("button", name=re.compile("It is this one")).first).to_be_visible()


def photo_sheet(page: Page) -> None:
    piece(page)
    page.get_by_role("button", name="Photo 1").click()
    expect(page.get_by_role("dialog")).to_be_visible()


def choosing(page: Page) -> None:
    place(page, "Collection")
    page.get_by_role("button", name="Add a piece").click()
    page.get_by_label("Number or name").fill("coach")
    expect(page.get_by_role("list", name="Found")).to_be_visible()


def other_screens(page: Page) -> None:
    begin(page, "Coach")
    page.get_by_role("button", name="Other screens").click()


def found(page: Page) -> None:
    demo(page)
    more(page, "Search everything")
    page.get_by_label("Search for").fill("corrick")


def changes(page: Page) -> None:
    add_piece(page, "P 24")
    page.get_by_label("Condition", exact=True).select_option("good")
    more(page, "History")


def history(page: Page) -> None:
    add_piece(page, "P 24")
    page.get_by_label("Condition", exact=True).select_option("good")
    page.get_by_role("button", name="History").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("History")


def trash(page: Page) -> None:
    add_piece(page, "P 24")
    page.get_by_role("button", name="Move to the bin").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    more(page, "Bin")


def emptying(page: Page) -> None:
    trash(page)
    page.get_by_role("button", name="Empty the bin").click()


def verdict(page: Page) -> None:
    demo(page)
    place(page, "Identify")
    begin(page, "Coach")
    while asking(page):
        see(page, choices(page)[0])
    line(page, "Price").click()


def look_and_states(page: Page) -> None:
    """Something to look at, of a range of one's own, with what can be seen there."""
    written_down(page)
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button").click()
    page.get_by_role("button", name="What to look at").click()
    page.get_by_role("list", name="What to look at").get_by_role("button").first.click()
    expect(page.get_by_role("list", name="What can be seen there")).to_be_visible()
    page.get_by_text("Two that look alike").click()


SHELF = [
    collection, empty_collection, piece, uncertain_piece, photo_sheet, choosing, other_screens,
    found, changes, history, trash, emptying, verdict, look_and_states,
]  # fmt: skip
