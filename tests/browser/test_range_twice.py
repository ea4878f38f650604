"""Two phones take in one range before they sync: one range, or two that stay apart."""

from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from tests.browser.own_server import OwnServer, pair, phone, same_everywhere, sync
from tests.browser.phone import PHONE
from tests.browser.phone_storage import more, records, takes_in
from tests.reference.small_pack import RANGE, small_files, write


@pytest.fixture
def rows(tmp_path) -> Any:
    """Those of a range Club."""
    files = {**small_files(), "range.toml": RANGE.replace("Small", "Club")}
    made: Path = write(tmp_path / "made", files)
    return rows_of_pack(read_pack(made.rename(made.parent / "club"))[0])


def both(browser: Any, own: OwnServer) -> list[Page]:
    pages = [phone(browser.new_context(**PHONE)) for _ in range(2)]
    for page in pages:
        page.goto(own.url)
    return pages


def synced(own: OwnServer, one: Page, other: Page) -> None:
    pair(one, own, "One")
    pair(other, own, "Other")
    for page in (one, other, one, other):
        sync(page)


def test_the_same_file_on_both_is_one_range(browser, own, rows):
    one, other = both(browser, own)
    for page in (one, other):
        takes_in(page, rows)
    synced(own, one, other)
    same_everywhere(own, one, other)
    unlike = [clash["field"] for found in own.records().values() for clash in found["clashes"]]
    assert set(unlike) <= {"made"}, "nobody is asked about anything"
    for page in (one, other):
        assert [found["key"] for found in records(page, "range")] == ["club"]
        assert len(records(page, "range_item")) == 3
        page.context.close()


def test_two_editions_of_one_range_stay_apart_and_that_is_said(browser, own, rows):
    one, other = both(browser, own)
    takes_in(one, rows)
    rows["items"][0]["name"] = "Saddle tank"
    takes_in(other, rows)
    synced(own, one, other)
    for page in (one, other):
        more(page, "Ranges")
        expect(page.get_by_role("list", name="Your own").get_by_role("button")).to_have_count(2)
        expect(page.get_by_role("button", name="Share Club")).to_have_count(2)
    sync(one)
    sync(other)
    same_everywhere(own, one, other)
    for page in (one, other):
        keys = sorted(found["key"] for found in records(page, "range"))
        assert keys[0] == "club"
        assert keys[1].startswith("club_")
        assert len(records(page, "range_item")) == 6
        page.context.close()


def splits(page: Page) -> None:
    """Writes down what was one number so far as two."""
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button", name="Club").click()
    page.get_by_role("button", name="Write down a piece").click()
    page.locator(".states button").filter(has_text="Coach").first.click()
    page.get_by_role("list", name="Written down").get_by_role("button", name="P2").click()
    page.get_by_role("button", name="That is all").click()
    page.get_by_label("Number").fill("P2 A")
    page.get_by_label("Number").blur()
    expect(page.get_by_text("Saved", exact=True)).to_be_visible()


def test_one_item_that_both_split_is_there_twice_and_that_is_said_with_what_to_do(
    browser, own, rows
):
    one, other = both(browser, own)
    takes_in(one, rows)
    pair(one, own, "One")
    sync(one)
    pair(other, own, "Other")
    sync(other)
    for page in (one, other):
        page.context.set_offline(True)
        splits(page)
    for page in (one, other):
        page.context.set_offline(False)
    for page in (one, other, one, other):
        sync(page)
    same_everywhere(own, one, other)
    for page in (one, other):
        numbers = sorted(found["number"] for found in records(page, "range_item"))
        assert numbers == ["P1", "P2", "P2 A", "P2 A", "S 1"]
        more(page, "Ranges")
        page.get_by_role("list", name="Your own").get_by_role("button", name="Club").click()
        told = page.get_by_role("list", name="What does not go together")
        expect(told).to_contain_text("has the number P2 A too. Give one of them another number")
        page.context.close()
