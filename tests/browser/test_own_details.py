"""What a range of one's own is made of: features and states, parts, sources, drawings, tables."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import (
    DESK,
    expect_read,
    watched,
)
from tests.browser.phone_storage import more, place, records
from tests.browser.registry import to_range, written_down

SHAPES = "line, polyline, rect, circle, ellipse, path, polygon, text"


@pytest.fixture
def ostwick(page: Page, server) -> Page:
    """A phone with a range of one's own: a coach of two variants."""
    page.goto(server.url)
    written_down(page)
    to_range(page)
    return page


def opened(page: Page, table: str, row: str) -> None:
    page.get_by_role("button", name=table).click()
    page.get_by_role("list", name=table).get_by_role("button", name=row).first.click()
    expect(page.get_by_role("heading", level=1)).to_contain_text(row)


def fill(page: Page, label: str, text: str) -> None:
    page.get_by_label(label, exact=True).fill(text)
    page.get_by_label(label, exact=True).blur()


def test_something_of_ones_own_to_look_at_is_made_of_plain_words(ostwick):
    page = ostwick
    page.get_by_role("button", name="What to look at").click()
    page.get_by_role("button", name="Add something to look at").click()
    fill(page, "Name", "Lamp brackets")
    fill(page, "The question in full", "Are there lamp brackets?")
    for words in ("Two on each end", "One on each end"):
        page.get_by_role("button", name="Add what can be seen").click()
        fill(page, "What you see", words)
        expect(page.get_by_text("Saved", exact=True)).to_be_visible()
        page.get_by_role("button", name="Back").click()
    page.get_by_text("Two that look alike").click()
    page.get_by_label("This one").select_option(label="Two on each end")
    page.get_by_label("is mistaken for").select_option(label="One on each end")
    alike = page.get_by_role("list", name="Easily mistaken for each other")
    expect(alike).to_contain_text("Two on each end and one on each end")
    page.get_by_text("Ask it only where something else is seen").click()
    page.get_by_label("Where you look first").select_option(index=1)
    page.get_by_label("What is seen there").select_option(index=1)
    only = page.get_by_role("list", name="Asked only where this is seen")
    expect(only.get_by_role("listitem")).to_have_count(1)
    [feature] = [one for one in records(page, "range_feature") if one["name"] == "Lamp brackets"]
    states = {one["id"] for one in records(page, "range_state") if one["feature"] == feature["id"]}
    assert len(states) == 2
    assert set(feature["mistaken"][0]) == states
    of, seen = feature["only_if"][0]
    assert of != feature["id"]
    [state] = [one for one in records(page, "range_state") if one["id"] == seen]
    assert state["feature"] == of
    only.get_by_role("button", name="Not so").click()
    expect(only).to_have_count(0)


def test_what_cannot_stand_is_refused_with_what_can(ostwick):
    page = ostwick
    opened(page, "Kinds of piece", "Coach")
    fill(page, "Name", "")
    expect(page.locator(".wrong")).to_contain_text("This cannot be empty")
    fill(page, "Words under its drawing", "far too many words for a card")
    expect(page.locator(".wrong").last).to_contain_text("three words and 22 letters")
    [kind] = records(page, "range_kind")
    assert (kind["name"], kind["caption"]) == ("Coach", "")
    to_range(page)
    page.get_by_text("About the range").click()
    fill(page, "Width of the track in mm", "wide")
    expect(page.locator(".wrong")).to_contain_text("for example: 16.5")
    fill(page, "Width of the track in mm", "16,5 mm")
    expect(page.locator(".wrong")).to_have_count(0)
    [range_] = records(page, "range")
    assert range_["gauge"] == 16.5


def test_a_state_is_drawn_stroke_by_stroke_and_each_is_taken_back(ostwick):
    page = ostwick
    page.get_by_role("button", name="What to look at").click()
    page.get_by_role("list", name="What to look at").get_by_role("button").first.click()
    page.get_by_role("button", name="Add what can be seen").click()
    page.get_by_role("button", name="Draw or photograph it").click()
    pad = page.get_by_role("img", name="The drawing. Its shapes are listed below it.")
    box = pad.bounding_box()
    assert box
    assert box["y"] + box["height"] <= 740, "the pad is on the screen at once"
    page.get_by_label("Rectangle").check()
    page.get_by_label("Filled with").select_option(label="Maroon")
    pad.scroll_into_view_if_needed()
    box = pad.bounding_box()
    assert box
    page.mouse.move(box["x"] + 30, box["y"] + 30)
    page.mouse.down()
    page.mouse.move(box["x"] + 150, box["y"] + 90)
    page.mouse.up()
    shapes = page.get_by_role("list", name="Shapes")
    expect(shapes.get_by_role("listitem")).to_have_count(1)
    expect(page.locator(".pad-shown rect")).to_have_attribute("fill", "#7a1f2b")
    page.get_by_role("button", name="Put one in the middle").click()
    expect(page.locator(".pad-shown rect")).to_have_count(2)
    page.get_by_role("button", name="Take back").click()
    expect(page.locator(".pad-shown rect")).to_have_count(1)

    def rectangles() -> int:
        state = max(records(page, "range_state"), key=lambda one: one["at"])
        return state["drawing"].count("<rect")

    expect_read(page, rectangles, 1)


def test_a_shape_is_chosen_moved_and_taken_away_with_the_keyboard(ostwick):
    page = ostwick
    opened(page, "Kinds of piece", "Coach")
    page.get_by_role("button", name="Change the drawing").click()
    shapes = page.get_by_role("list", name="Shapes")
    expect(shapes.get_by_role("listitem").first).to_be_visible()
    before = shapes.get_by_role("listitem").count()
    [kind] = records(page, "range_kind")
    shapes.get_by_role("button").first.press("Enter")
    shapes.get_by_role("button").first.press("ArrowRight")
    shapes.get_by_role("button").first.press("Delete")
    expect(shapes.get_by_role("listitem")).to_have_count(before - 1)
    kept = page.locator(f".pad-shown :is({SHAPES})")
    expect(kept).to_have_count(before - 1)
    expect_read(page, lambda: records(page, "range_kind")[0]["drawing"] != kind["drawing"], True)


def test_the_collection_follows_a_new_number_and_undo_takes_it_all_back(ostwick):
    page = ostwick
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    page.get_by_role("button", name="It is mine: add to collection").click()
    expect(page.get_by_role("button", name="It is in your collection")).to_be_visible()
    fill(page, "Number", "104 L")
    expect(page.get_by_text("Saved", exact=True)).to_be_visible()
    assert [one["item"] for one in records(page, "piece")] == ["104 L"]
    [move] = records(page, "range_move")
    assert (move["was"], move["now"]) == ("104", "104 L")
    fill(page, "Number", "")
    expect(page.locator(".wrong")).to_contain_text("goes by this number")
    page.get_by_role("group").get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Undone: number changed")).to_be_visible()
    assert [one["item"] for one in records(page, "piece")] == ["104"]
    assert [one["number"] for one in records(page, "range_item")] == ["104"]


def test_a_new_number_is_kept_for_pieces_that_are_elsewhere(ostwick):
    """On another device, in the bin, or with somebody who was given the range."""
    page = ostwick
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    moves = []
    for number in ("", "105", "106", "105"):
        fill(page, "Number", number)
        expect(page.get_by_text("Saved", exact=True)).to_be_visible()
        to_range(page)
        moves.append([(one["was"], one["now"]) for one in records(page, "range_move")])
        page.get_by_role("list", name="Written down").get_by_role("button").click()
    assert moves == [[], [], [("105", "106")], [("106", "105")]]


def test_what_is_held_of_it_is_told_before_a_deletion(ostwick):
    page = ostwick
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    page.get_by_role("button", name="It is mine: add to collection").click()
    expect(page.get_by_role("button", name="It is in your collection")).to_be_visible()
    page.get_by_role("button", name="Delete").click()
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("1 record of yours is of it")
    expect(sheet).to_contain_text("change the number instead")
    sheet.get_by_role("button", name="Close").click()
    assert len(records(page, "range_item")) == 1
    to_range(page)
    page.get_by_text("About the range").click()
    page.get_by_role("button", name="Delete this range").click()
    expect(sheet).to_contain_text("1 record of your collection")
    sheet.get_by_role("button", name="Delete it").click()
    expect(page.get_by_role("heading", name="Ranges", level=1)).to_be_visible()
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text("104")
    more(page, "Bin")
    page.get_by_role("button", name="Put back").first.click()
    to_range(page)
    expect(page.get_by_role("list", name="Written down")).to_contain_text("104")


def test_a_state_that_is_used_is_told_of_and_comes_back_whole(ostwick):
    page = ostwick
    [item] = records(page, "range_item")
    [field] = [name for name, value in item.items() if name.startswith("seen_") and value]
    [state] = [one for one in records(page, "range_state") if one["id"] == item[field][0]]
    [feature] = [one for one in records(page, "range_feature") if one["id"] == state["feature"]]
    opened(page, "What to look at", feature["name"])
    states = page.get_by_role("list", name="What can be seen there")
    states.get_by_role("button", name=state["name"]).first.click()
    page.get_by_role("button", name="Delete").click()
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("1 place in this range says so")
    sheet.get_by_role("button", name="Delete it").click()
    expect(page.get_by_role("heading", level=1)).to_have_text(feature["name"])
    assert records(page, "range_item")[0][field] == [state["id"]], "what was seen stays written"


def test_a_variant_whose_item_is_gone_for_good_can_be_opened_and_deleted(ostwick):
    page = ostwick
    page.get_by_role("list", name="Written down").get_by_role("button").click()
    page.get_by_role("button", name="Delete").click()
    expect(page.get_by_text("It is in the bin.")).to_be_visible()
    more(page, "Bin")
    variant = page.get_by_role("listitem").filter(has_text=re.compile("ariant"))
    variant.last.get_by_role("button", name="Put back").click()
    page.get_by_role("button", name="Empty the bin").click()
    page.get_by_role("button", name="Delete for good").click()
    expect(page.get_by_text("The bin is empty")).to_be_visible()
    to_range(page)
    faults = page.get_by_role("list", name="What does not go together")
    faults.get_by_role("button").first.click()
    expect(page.get_by_text("The item that it is a variant of is not there")).to_be_visible()
    expect(page.get_by_text(re.compile("^A variant of"))).to_have_count(0)
    page.get_by_role("button", name="Delete").click()
    expect(page.get_by_text("It is in the bin.")).to_be_visible()
    assert records(page, "range_variant") == []


def test_items_are_typed_in_a_table_with_the_keyboard_alone(browser, server):
    context = browser.new_context(**DESK)
    page = watched(context.new_page())
    page.goto(server.url)
    written_down(page)
    to_range(page)
    page.get_by_role("button", name="Items as a table").click()
    page.get_by_label("Number: 104").press("Enter")
    rows = page.locator(".row-table tbody tr")
    expect(rows).to_have_count(2)
    page.keyboard.type("105")
    page.keyboard.press("Tab")
    page.keyboard.type("Brake coach")
    page.keyboard.press("Enter")
    expect(rows).to_have_count(3)
    page.keyboard.type("104")
    page.keyboard.press("ArrowUp")
    expect(page.locator(".row-table .wrong").filter(has_text="104 has this number")).to_be_visible()
    rows.nth(2).get_by_label(re.compile("^Number")).fill("106")
    for at in (1, 2):
        rows.nth(at).get_by_role("checkbox").check()
    page.get_by_label("What to change").select_option(label="Made")
    page.get_by_label("Made of all of them").fill("about 1958")
    page.get_by_role("button", name="Change them").click()
    expect(page.get_by_text("2 rows changed.")).to_be_visible()
    items = sorted(records(page, "range_item"), key=lambda one: one["at"])
    assert [(one["number"], one["years"]) for one in items] == [
        ("104", ""), ("105", "1958~"), ("106", "1958~"),
    ]  # fmt: skip
    assert items[1]["name"] == "Brake coach"
    assert len(records(page, "range_variant")) == 4
    to_range(page)
    page.get_by_role("button", name="Variants as a table").click()
    of = page.get_by_label(re.compile("^Item: ")).first.locator("option")
    assert [one[:3] for one in of.all_inner_texts()] == ["104", "105", "106"], "no variant of none"
    assert page.reported == []
    context.close()
