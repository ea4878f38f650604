"""A range of one's own is tried out while it is written: in words, on the phone."""

import re

from playwright.sync_api import expect

from tests.browser.phone_storage import more, place, records
from tests.browser.test_own_range import answer, ostwick, two_variants, write_down

__all__ = ["ostwick"]


def test_what_is_missing_is_told_and_led_to(ostwick):
    page = ostwick
    write_down(page, "Coach", "104")
    page.get_by_role("button", name="Answer what you see").click()
    answer(page, 2)
    page.get_by_role("button", name="That will do").click()
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Write down a piece").click()
    page.locator(".states button").filter(has_text="Coach").first.click()
    page.get_by_role("list", name="Written down").get_by_role("button").first.click()
    page.get_by_role("button", name="That is all").click()
    page.get_by_label("Number").fill("105")
    page.get_by_label("Number").blur()
    page.get_by_role("button", name="Back").click()
    write_down(page, "Wagon", "201")
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Try it, and see what is missing").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Try Ostwick")
    alike = page.get_by_role("list", name="Not told apart")
    expect(alike.get_by_role("listitem")).to_have_count(1)
    expect(alike).to_contain_text(re.compile("104.*105"))
    expect(page.get_by_role("status").filter(has_text="40 pieces were drawn")).to_contain_text(
        re.compile(r"\d+ were named right, after \d+ questions? as a rule")
    )
    expect(page.get_by_text(re.compile("^Coaches: "))).to_be_visible()
    alike.get_by_role("button").click()
    expect(page.get_by_text("A variant of 105")).to_be_visible()
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Ask me as it would at a stall").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
    expect(page.locator("#range option:checked")).to_have_text("Ostwick")


def test_a_feature_that_is_missing_is_asked_at_once(ostwick):
    page = ostwick
    write_down(page, "Coach", "104")
    page.get_by_role("button", name="Answer what you see").click()
    answer(page, 1)
    page.get_by_role("button", name="That will do").click()
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Write down a piece").click()
    page.locator(".states button").filter(has_text="Coach").first.click()
    page.get_by_role("button", name="Like none of them").click()
    page.get_by_label("Number").fill("105")
    page.get_by_label("Number").blur()
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Try it, and see what is missing").click()
    looks = page.get_by_role("list", name="Worth a look")
    expect(looks).to_contain_text("105")
    gaps = page.get_by_role("list", name="Not written down everywhere")
    expect(gaps).to_contain_text("not of 1 of the 2 variants that can have it")
    looks.get_by_role("button").first.click()
    expect(page.get_by_text("Tap what you see.")).to_be_visible()


def add_of_ostwick(page):
    """Another piece of it in the collection."""
    place(page, "Collection")
    page.get_by_role("button", name="Add a piece").click()
    page.get_by_label("Range", exact=True).select_option(label="Ostwick")
    page.get_by_label("Number or name").fill("104")
    page.get_by_role("list", name="Found").get_by_role("button").first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text("104")


def test_pieces_whose_owner_says_what_they_are_are_learned_from_and_that_is_taken_back(ostwick):
    page = ostwick
    two_variants(page)
    more(page, "Ranges")  # it is there once the range is made
    expect(page.get_by_role("button", name="Share Ostwick")).to_be_visible(timeout=30_000)
    for _ in range(2):
        add_of_ostwick(page)
        page.get_by_label("Variant", exact=True).select_option(index=2)
        expect(page.get_by_text("Saved", exact=True).first).to_be_visible()
    add_of_ostwick(page)  # some variant: it says nothing
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button").click()
    page.get_by_role("button", name="What your pieces show").click()
    expect(page.get_by_text("2 pieces in your collection")).to_be_visible()
    met = page.get_by_role("list", name="How often a variant is met")
    expect(met).to_contain_text(re.compile("2 of your 2: counted as 5[2-9]% of them"))
    expect(met).to_contain_text(re.compile("0 of your 2: counted as 4[1-8]% of them"))
    page.get_by_label("Learn from them").select_option("no")
    expect(page.get_by_text("Saved", exact=True)).to_be_visible()
    assert records(page, "range")[0]["learns"] == "no"
