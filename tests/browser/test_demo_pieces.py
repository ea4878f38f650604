"""The prepared pieces of the demo, in the hand: what the phone shows of each."""

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import (
    CHANGED,
    asking,
    in_words,
    line,
    question,
    see,
    take_up,
    unfold,
)
from tests.demo import PIECES, ident, looked_at


def at_hand(page: Page, engine, piece) -> None:
    """The app opened again with everything that was seen; "can't tell" to what it still asks, and
    what is to be looked at again is seen as before."""
    take_up(page, looked_at(engine, piece))
    in_words(page)
    features = {f["question"]: f for f in engine["pack"]["features"]}
    while asking(page):
        before = question(page)
        feature = features[before]
        seen = next(
            (s for s in feature["states"] if s["id"] == piece["seen"].get(feature["id"])), None
        )
        if seen:
            see(page, seen["name"])
            continue
        page.get_by_role("button", name="Can’t see it", exact=True).click()
        page.wait_for_function(CHANGED, arg=before)
        in_words(page)


@pytest.mark.parametrize("piece", PIECES, ids=ident)
def test_the_answer_says_it(page, server, pellmarsh, piece):
    page.goto(server.url)
    at_hand(page, pellmarsh, piece)
    if "claim" in piece:
        line(page, "Seller’s date").click()
        sheet = page.get_by_role("dialog")
        sheet.get_by_text("Say it another way").click()
        sheet.get_by_label("What does the seller say?").fill(piece["claim"])
        sheet.get_by_role("button", name="Check it").click()
        expect(sheet).to_contain_text("The seller says:")
        if "aloud" in piece:
            expect(sheet).to_contain_text(piece["aloud"])
        sheet.get_by_role("button", name="Close").click()
    unfold(page)
    line(page, "Its parts").click()
    for text in piece["says"]:
        expect(page.locator("body")).to_contain_text(text)
    if piece["years"]:
        first, last = piece["years"]
        expect(page.locator("body")).to_contain_text(f"Made {first} to {last}")
    for part, word in piece["parts"].items():
        name = next(p["name"] for p in pellmarsh["pack"]["parts"] if p["id"] == part)
        expect(page.locator("body")).to_contain_text(f"{name.casefold()} {word}", ignore_case=True)
