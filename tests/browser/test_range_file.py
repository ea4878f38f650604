"""A range of one's own goes out as one file and comes in: beside the others, or put together."""

import json
import re

from playwright.sync_api import Page, expect

from tests.browser.phone_storage import more, records
from tests.browser.test_own_range import ostwick, write_down

__all__ = ["ostwick"]


def handed_on(page: Page) -> str:
    """The text of the file that Ostwick is handed on as."""
    more(page, "Ranges")
    with page.expect_download() as downloading:
        page.get_by_role("button", name="Share Ostwick").click()
    return downloading.value.path().read_text("utf-8")


def put_in(page: Page, text: str) -> None:
    """Add a range from a file with this text."""
    file = {"name": "ostwick.json", "mimeType": "application/json", "buffer": text.encode()}
    page.get_by_label("Add a range from a file").set_input_files(file)


def test_a_friends_half_is_put_together_with_mine_and_taken_back_as_one(ostwick):
    write_down(ostwick, "Coach", "104")
    text = handed_on(ostwick)
    rows = json.loads(text)["rows"]
    rows["items"][0]["number"] = "105"
    rows["items"][0]["years"] = "1957"
    for variant in rows["variants"]:
        variant["item"] = "105"
        variant["id"] = "another_one"
    put_in(ostwick, json.dumps({"format": 1, "kind": "identify range", "rows": rows}))
    ostwick.get_by_label("Who wrote it?").fill("Anna")
    ostwick.get_by_role("button", name="Put it together with your Ostwick").click()
    expect(ostwick.get_by_text("1 item imported.")).to_be_visible()
    assert sorted(one["number"] for one in records(ostwick, "range_item")) == ["104", "105"]
    assert len(records(ostwick, "range")) == len(records(ostwick, "range_kind")) == 1
    ostwick.get_by_role("button", name=re.compile("^Undo$")).last.click()
    expect(ostwick.get_by_text(re.compile("^Undone"))).to_be_visible()
    assert [one["number"] for one in records(ostwick, "range_item")] == ["104"]


def test_a_file_that_does_not_hold_together_changes_nothing(ostwick):
    write_down(ostwick, "Coach", "104")
    rows = json.loads(handed_on(ostwick))["rows"]
    rows["items"][0]["cells"] = 7
    put_in(ostwick, json.dumps({"format": 1, "kind": "identify range", "rows": rows}))
    ostwick.get_by_role("button", name="Keep it beside yours").click()
    expect(ostwick.get_by_text("contradicts itself")).to_be_visible()
    assert len(records(ostwick, "range_item")) == 1
