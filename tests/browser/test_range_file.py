"""A range of one's own goes out as one file and comes in: beside the others, or put together."""

import json
import re
from typing import Any

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


def as_file(rows: Any) -> str:
    """The text of a file with these rows."""
    return json.dumps({"format": 1, "kind": "identify range", "rows": rows})


def test_a_friends_half_is_put_together_with_mine_and_taken_back_as_one(ostwick):
    write_down(ostwick, "Coach", "104")
    text = handed_on(ostwick)
    rows = json.loads(text)["rows"]
    rows["items"][0]["number"] = "105"
    rows["items"][0]["years"] = "1957"
    for variant in rows["variants"]:
        variant["item"] = "105"
        variant["id"] = "another_one"
    put_in(ostwick, as_file(rows))
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
    put_in(ostwick, as_file(rows))
    ostwick.get_by_role("button", name="Keep it beside yours").click()
    expect(ostwick.get_by_text("contradicts itself")).to_be_visible()
    assert len(records(ostwick, "range_item")) == 1


def test_beside_mine_it_has_a_key_of_its_own_says_who_wrote_it_and_only_draws(ostwick):
    write_down(ostwick, "Coach", "104")
    rows = json.loads(handed_on(ostwick))["rows"]
    shape = '<path d="M2 2H90" id="app" tabindex="0" filter="url(//a)"/>'
    [drawing] = [one for one in rows["drawings"] if one["id"] == "kind-coach"]
    drawing["text"] = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 96 64">{shape}</svg>'
    ostwick.get_by_role("list", name="Your own").get_by_role("button").click()
    ostwick.get_by_text("About the range").click()
    ostwick.get_by_role("button", name="Delete this range").click()
    ostwick.get_by_role("dialog").get_by_role("button", name="Delete it").click()
    expect(ostwick.get_by_role("heading", name="Ranges", level=1)).to_be_visible()
    put_in(ostwick, as_file(rows))
    ostwick.get_by_label("Who wrote it?").fill("Anna")
    ostwick.get_by_role("button", name="Import it").click()
    expect(ostwick.get_by_text("1 item imported.")).to_be_visible()
    [made] = records(ostwick, "range")
    assert made["key"] != rows["id"], "the one in the bin can be put back"
    [item] = [one for one in records(ostwick, "range_item") if one["range"] == made["id"]]
    [source] = [one for one in records(ostwick, "range_source") if one["id"] == item["source"]]
    assert source["what"] == "Anna"
    ostwick.get_by_role("button", name="Kinds of piece").click()
    ostwick.get_by_role("list", name="Kinds of piece").get_by_role("button").first.click()
    ostwick.get_by_role("button", name="Change the drawing").click()
    expect(ostwick.locator(".drawing-pad path")).to_have_count(1)
    assert ostwick.locator(".drawing-pad :is([id], [tabindex], [filter])").count() == 0


def test_a_damaged_file_is_refused_in_a_sentence(ostwick):
    write_down(ostwick, "Coach", "104")
    rows = json.loads(handed_on(ostwick))["rows"]
    del rows["range"]["name"]
    put_in(ostwick, as_file(rows))
    expect(ostwick.get_by_role("alert")).to_contain_text("this range is damaged")
