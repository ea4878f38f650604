"""A range of one's own is identified from, like any other: made on the phone, with no signal."""

from playwright.sync_api import expect

from tests.browser.phone import (
    asking,
    begin,
    choices,
    choose_range,
    see,
)
from tests.browser.phone_storage import place
from tests.browser.test_own_range import answer, ostwick, write_down

__all__ = ["ostwick"]


def test_it_is_in_the_list_and_names_a_piece(ostwick):
    ostwick.evaluate("navigator.serviceWorker.ready")
    write_down(ostwick, "Coach", "104")
    ostwick.get_by_role("button", name="Answer what you see").click()
    asked = answer(ostwick, 2)
    ostwick.get_by_role("button", name="That will do").click()
    ostwick.get_by_role("button", name="Back").click()
    write_down(ostwick, "Wagon", "105")
    place(ostwick, "Identify")
    ranges = ostwick.locator("#range")
    expect(ranges.get_by_role("option", name="Ostwick")).to_have_count(1)
    choose_range(ostwick, "Ostwick")
    begin(ostwick)
    see(ostwick, "Coach")
    for _ in asked:
        if not asking(ostwick):
            break
        see(ostwick, choices(ostwick)[0])
    expect(ostwick.get_by_text("104").first).to_be_visible()
