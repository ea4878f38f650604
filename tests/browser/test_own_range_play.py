"""A collector who has never written a range brings in ten items, offline, by handling pieces."""

import pytest
from playwright.sync_api import expect

from tests.browser.handling import Hand, adds_change, photo, writes_down
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import more, records
from tests.conftest import serving
from tests.ostwick import ITEMS

MOST = 20 * 60  # seconds


@pytest.mark.heavy
def test_ten_items_are_written_down_within_twenty_minutes(browser, site, capsys):
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    with serving(site) as server:
        page.goto(server.url)
        page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    page.reload()  # from cold, with no server
    hand = Hand(page)
    more(page, "Ranges")
    hand.effort.taps += 2
    hand.reads()
    hand.presses("A range of your own")
    hand.reads()
    hand.types("What is it called?", "Ostwick")
    hand.presses("Begin")
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    hand.reads()
    for place, item in enumerate(ITEMS):
        writes_down(hand, item, ITEMS[:place])
    adds_change(hand, "Coaches", "wheels", "black", "about 1958")
    adds_change(hand, "Wagons", "coupling", "claw", "1957")
    hand.taps(page.get_by_role("list", name="Written down").get_by_role("button").first)
    expect(page.get_by_label("Number")).to_be_visible()
    hand.presses("Something of your own to look at")
    hand.types("Where do you look? For example: lamp brackets", "Tail lamp")
    hand.types("What you see", "Red lens")
    page.get_by_label("Photograph it").set_input_files(photo())  # type: ignore[arg-type]
    hand.effort.taps += 2
    hand.presses("Put it down")
    expect(page.get_by_role("list", name="Put down")).to_contain_text("Red lens")
    hand.presses("Another source says otherwise")
    hand.types("Made, as another book says", "1953")
    seconds = hand.effort.seconds()
    with capsys.disabled():
        print(f"\nten items written down: {seconds / 60:.1f} min, {hand.effort}")
    assert len(records(page, "range_item")) == len(ITEMS)
    assert len(records(page, "range_variant")) == sum(1 + len(one.variants) for one in ITEMS)
    assert len(records(page, "range_change")) == 2
    assert seconds <= MOST
    context.close()
