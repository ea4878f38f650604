"""The bin and Undo, on the phone."""

import re

import orjson
from playwright.sync_api import expect

from tests.browser.phone_storage import (
    add_photo,
    add_piece,
    choose,
    fill,
    kept,
    more,
    picture,
    place,
    records,
)


def test_what_was_deleted_comes_back_with_its_photo(page, server):
    page.goto(server.url)
    add_piece(page, "P 24")
    add_photo(page, 300, 200)
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    before = kept(page)
    page.get_by_role("button", name="Move to the bin").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    assert records(page, "piece") == []
    more(page, "Bin")
    page.get_by_role("button", name=re.compile("^Put back: Piece: P 24")).click()
    expect(page.get_by_role("main").get_by_text("Nothing is in the bin.")).to_be_visible()
    after = kept(page)
    assert after["photos"] == before["photos"]
    changed = {"changed": after["records"][0]["changed"]}
    assert after["records"] == [before["records"][0] | changed]
    # a photo taken away from its piece is in the bin too
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").click()
    page.get_by_role("button", name="Photo 1").click()
    page.get_by_role("button", name="Remove").click()
    expect(page.get_by_role("button", name="Photo 1")).to_have_count(0)
    page.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    assert picture(kept(page)["photos"][0]["full"])[:2] == b"\xff\xd8"


def test_emptying_the_trash_leaves_nothing_of_it(page, server):
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "secret words")
    add_photo(page, 30, 20)
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    page.get_by_role("button", name="Move to the bin").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Collection")
    more(page, "Bin")
    page.get_by_role("button", name="Empty the bin").click()
    page.get_by_role("button", name="Delete for good").click()
    expect(page.get_by_role("main").get_by_text("Nothing is in the bin.")).to_be_visible()
    left = kept(page)
    assert left["photos"] == []
    assert "secret words" not in orjson.dumps(left).decode()
    assert [sorted(r) for r in left["records"]] == [
        ["changed", "gone", "id", "made", "trashed", "type"]
    ]


def test_undo_takes_back_one_change_after_another(page, server):
    page.goto(server.url)
    add_piece(page, "P 24")
    choose(page, "Condition", "fair")
    choose(page, "Condition", "good")
    fill(page, "Notes", "one")
    for condition, notes in (("good", ""), ("fair", ""), ("", "")):
        page.get_by_role("button", name="Undo", exact=True).click()
        expect(page.get_by_label("Condition", exact=True)).to_have_value(condition)
        expect(page.get_by_label("Notes", exact=True)).to_have_value(notes)
    page.get_by_role("alert").get_by_role("button", name="Put it back").click()
    expect(page.get_by_label("Condition", exact=True)).to_have_value("fair")
    page.get_by_role("button", name="History").click()
    expect(page.get_by_role("main").get_by_text("Condition: fair → good")).to_be_visible()
    page.get_by_role("listitem").filter(has_text="Notes: nothing → one").get_by_role(
        "button", name=re.compile("after")
    ).click()
    expect(page.get_by_role("alert")).to_contain_text("The earlier version is back.")
    assert records(page, "piece")[0]["notes"] == "one"


def test_undo_is_offered_as_soon_as_something_was_done(page, server):
    page.goto(server.url)
    place(page, "Notebook")
    undo = page.get_by_role("button", name="Undo", exact=True)
    expect(undo).to_have_count(0)
    fill(page, "Today’s budget", "£50")
    undo.click()
    expect(page.get_by_role("alert")).to_contain_text("Undone")
    expect(page.get_by_label("Today’s budget")).to_have_value("")
