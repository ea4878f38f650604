"""What does not go together in a range of one's own is said on the screen where it is."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone_storage import more, records
from tests.browser.registry import to_range, written_down


@pytest.fixture
def ostwick(page: Page, server) -> Page:
    page.goto(server.url)
    written_down(page)
    to_range(page)
    return page


def fill(page: Page, label: str, text: str) -> None:
    page.get_by_label(label, exact=True).fill(text)
    page.get_by_label(label, exact=True).blur()
    expect(page.get_by_text("Saved", exact=True).first).to_be_visible()


def test_a_year_outside_the_life_of_the_range_is_said_at_the_item(ostwick):
    page = ostwick
    expect(page.get_by_role("list", name="What does not go together")).to_have_count(0)
    page.get_by_text("About the range").click()
    fill(page, "Made", "1950 to 1960")
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    # the range, which is left, has such a field too
    expect(page.get_by_role("heading", level=1)).to_have_text("104")
    fill(page, "Made", "1975")
    page.get_by_role("button", name="Back").click()
    wrong = page.get_by_role("list", name="What does not go together")
    expect(wrong).to_contain_text("1975 lies outside the years of the range, 1950 to 1960.")
    wrong.get_by_role("button").click()
    expect(page.locator(".warn")).to_contain_text("Until then it counts as not known.")
    assert [one["years"] for one in records(page, "range_item")] == ["1975"], "nothing is lost"
    fill(page, "Made", "1955")
    page.get_by_role("button", name="Back").click()
    expect(wrong).to_have_count(0)


def test_a_variant_without_its_item_offers_to_put_the_item_back(ostwick):
    page = ostwick
    variants = len(records(page, "range_variant"))
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    page.get_by_role("button", name="Delete").click()
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    more(page, "Bin")
    page.get_by_role("button", name="Put back: Variant").first.click()
    to_range(page)
    wrong = page.get_by_role("list", name="What does not go together")
    expect(wrong).to_contain_text("The item that it is a variant of was deleted.")
    wrong.get_by_role("button", name="Put 104 back").click()
    expect(wrong).to_have_count(0)
    expect(page.get_by_role("list", name="Written down")).to_contain_text("104")
    assert variants == 2
    left = [one for one in records(page, "range_variant") if one["trashed"] == ""]
    assert len(left) == 1
