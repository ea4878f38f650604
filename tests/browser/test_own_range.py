"""A range of one's own, written down by handling pieces: no file, no server."""

import re

import pytest
from playwright.sync_api import Page, expect

from tests.browser.phone import (
    asking,
    begin,
    choices,
    expect_question,
    question,
    see,
)
from tests.browser.phone_storage import more, place, records


@pytest.fixture
def ostwick(page: Page, server) -> Page:
    """A phone with a new range, nothing in it yet."""
    page.goto(server.url)
    more(page, "Ranges")
    page.get_by_role("button", name="A range of your own").click()
    page.get_by_label("What is it called?").fill("Ostwick")
    page.get_by_role("button", name="Begin").click()
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    return page


def write_down(page: Page, kind: str, number: str = "") -> None:
    """From the range: a new piece of this kind."""
    page.get_by_role("button", name="Write down a piece").click()
    page.locator(".states button").filter(has_text=kind).first.click()
    page.get_by_label("Number").fill(number)
    page.get_by_label("Number").blur()


def answer(page: Page, times: int) -> list[str]:
    """Answers the next cards by the first drawing; gives what was asked."""
    asked = []
    for _ in range(times):
        expect(page.get_by_role("button", name="That will do")).to_be_visible()
        asked.append(question(page))
        page.locator(".states button").first.click()
        expect(page.get_by_role("heading", level=1)).not_to_have_text(asked[-1])
    return asked


def test_a_piece_is_written_down_by_what_is_seen(ostwick):
    write_down(ostwick, "Coach", "104")
    ostwick.get_by_label("Made", exact=True).fill("about 1957 to 61")
    ostwick.get_by_label("Made", exact=True).blur()
    expect(ostwick.get_by_label("Made", exact=True)).to_have_value("about 1957 to 1961")
    ostwick.get_by_role("button", name="Answer what you see").click()
    asked = answer(ostwick, 3)
    ostwick.get_by_role("button", name="That will do").click()
    put_down = ostwick.get_by_role("list", name="Noted")
    expect(put_down.get_by_role("listitem")).to_have_count(3)
    [item] = records(ostwick, "range_item")
    assert (item["number"], item["years"]) == ("104", "1957~/1961~")
    features = {one["id"]: one for one in records(ostwick, "range_feature")}
    seen = {name[5:]: value for name, value in item.items() if name.startswith("seen_")}
    assert set(seen) == set(features)
    states = {one["id"] for one in records(ostwick, "range_state")}
    assert all(set(value) <= states for value in seen.values())
    assert len(asked) == len(set(asked)) == 3
    [variant] = records(ostwick, "range_variant")
    assert variant["item"] == item["id"]


@pytest.mark.parametrize(
    ("engine", "horns"), [("Tank engine, no tender", False), ("Long diesel, flat ends", True)]
)
def test_what_such_a_piece_cannot_have_is_not_asked(ostwick, engine, horns):
    write_down(ostwick, "Locomotive", "7")
    ostwick.get_by_role("button", name="Answer what you see").click()
    expect_question(ostwick, "Engine?")
    ostwick.get_by_role("button", name=engine).click()
    asked = ["Engine?"]
    while asked[-1] != "Motor?":  # what shows from the side comes before what is below
        expect(ostwick.get_by_role("heading", level=1)).not_to_have_text(asked[-1])
        asked.append(question(ostwick))
        ostwick.get_by_role("button", name="Can’t see it").click()
    assert "Coupling?" in asked
    assert ("Horns?" in asked) is horns


def test_each_answer_is_taken_back_by_itself(ostwick):
    write_down(ostwick, "Wagon", "W 3")
    ostwick.get_by_role("button", name="Answer what you see").click()
    answer(ostwick, 2)
    ostwick.get_by_role("button", name="Undo").click()
    expect(ostwick.get_by_text(re.compile("^Undone: .* noted"))).to_be_visible()
    [item] = records(ostwick, "range_item")
    assert len([name for name, value in item.items() if name.startswith("seen_") and value]) == 1


def two_variants(page: Page) -> None:
    """A coach, and a variant of it that differs in the one thing that was seen."""
    write_down(page, "Coach", "104")
    page.get_by_role("button", name="Answer what you see").click()
    [first] = answer(page, 1)
    page.get_by_role("button", name="That will do").click()
    page.get_by_role("button", name="Another variant of it").click()
    page.locator(".states button").first.click()
    expect(page.get_by_role("heading", name=first)).to_be_visible()
    page.locator(".states button").first.click()
    expect(page.get_by_text("A variant of 104")).to_be_visible()


def test_a_variant_is_what_differs(ostwick):
    two_variants(ostwick)
    plain, other = sorted(records(ostwick, "range_variant"), key=lambda one: one["at"])
    [item] = records(ostwick, "range_item")
    [field] = [name for name, value in other.items() if name.startswith("seen_") and value]
    assert field not in plain
    assert other[field] != item[field]
    called = next(
        one["name"] for one in records(ostwick, "range_state") if one["id"] == other[field][0]
    )
    assert other["name"] == called


def test_a_number_twice_is_refused_with_what_to_do(ostwick):
    write_down(ostwick, "Coach", "104")
    ostwick.get_by_role("button", name="Back").click()
    ostwick.get_by_role("button", name="Write down a piece").click()
    ostwick.locator(".states button").filter(has_text="Coach").first.click()
    ostwick.get_by_role("button", name="Like none of them").click()
    ostwick.get_by_label("Number").fill("104")
    ostwick.get_by_label("Number").blur()
    said = ostwick.locator(".wrong")
    expect(said).to_contain_text("104 has this number already")
    expect(said).to_contain_text("add it there as a variant")
    assert sorted(one["number"] for one in records(ostwick, "range_item")) == ["", "104"]


def test_what_no_drawing_shows_is_named(ostwick):
    write_down(ostwick, "Wagon", "W 3")
    ostwick.get_by_role("button", name="Answer what you see").click()
    expect(ostwick.get_by_role("button", name="That will do")).to_be_visible()
    first = question(ostwick)
    ostwick.get_by_role("button", name="Something else").click()
    sheet = ostwick.get_by_role("dialog")
    sheet.get_by_role("button", name="Add it").click()
    expect(sheet.get_by_text("Name what you see first")).to_be_visible()
    sheet.get_by_label("What you see").fill("Sliding roof")
    sheet.get_by_role("button", name="Add it").click()
    expect(ostwick.get_by_role("heading", level=1)).not_to_have_text(first)
    assert "Sliding roof" in [one["name"] for one in records(ostwick, "range_state")]


def test_a_piece_that_is_in_no_range_goes_into_ones_own_with_its_answers(page, server):
    page.goto(server.url)
    begin(page, "Wagon")
    answers = 0
    while asking(page):
        see(page, choices(page)[0])
        answers += 1
    page.get_by_role("button", name="Add to your own range").click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name="Begin a new range").click()
    expect(sheet.get_by_text("Name the range first")).to_be_visible()
    sheet.get_by_label("What is it called?").fill("Ostwick")
    sheet.get_by_role("button", name="Begin a new range").click()
    expect(page.get_by_role("list", name="Noted")).to_be_visible()
    [item] = records(page, "range_item")
    seen = [name for name, value in item.items() if name.startswith("seen_") and value]
    assert 3 <= len(seen) <= answers
    [kind] = records(page, "range_kind")
    assert kind["key"] == "wagon"
    page.get_by_label("Number").fill("W 7")
    page.get_by_label("Number").blur()
    page.get_by_role("button", name="It is mine: add to collection").click()
    expect(page.get_by_role("button", name="It is in your collection")).to_be_visible()
    [piece] = records(page, "piece")
    [range_] = records(page, "range")
    assert (piece["pack"], piece["item"]) == (range_["key"], "W 7")
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text("W 7")


def kept_outside(page: Page, button: str, typed: str) -> None:
    """A piece or want that is in no range, by what is typed of it."""
    page.get_by_role("button", name=button).click()
    page.get_by_label("Number or name").fill(typed)
    page.get_by_role("button", name="Not in any range").click()
    expect(page.get_by_label("What it is")).to_have_value(typed)


def test_what_is_in_no_range_is_kept_wanted_and_counted_twice(page, server):
    page.goto(server.url)
    for typed in ("QX 304 brake coach", "qx304 Brake-Coach"):
        place(page, "Collection")
        kept_outside(page, "Add a piece", typed)
    assert {(one["pack"], one["item"]) for one in records(page, "piece")} == {("", "")}
    place(page, "Wants")
    kept_outside(page, "Add a want", "QX 305 goods van")
    place(page, "Wants")
    expect(page.get_by_role("list", name="Wants")).to_contain_text("QX 305 goods van")
    more(page, "Duplicates")
    expect(page.get_by_text("1 to part with.")).to_be_visible()
    more(page, "Search everything")
    page.get_by_label("Search for").fill("qx 304")
    pieces = page.get_by_role("list", name="Collection")
    expect(pieces.get_by_role("button")).to_have_count(2)


def test_a_range_that_knows_it_by_now_is_offered(page, server, pellmarsh):
    item = pellmarsh["pack"]["items"][4]
    page.goto(server.url)
    place(page, "Collection")
    kept_outside(page, "Add a piece", f"{item['number']} from the attic")
    place(page, "Collection")
    page.get_by_text("1 is in a range now").click()
    page.get_by_role("list", name="In a range now").get_by_role("button").click()
    page.get_by_role("button", name=f"It is {item['number']} {item['name']} in Pellmarsh").click()
    expect(page.get_by_role("heading", level=1)).to_contain_text(item["name"])
    [piece] = records(page, "piece")
    assert (piece["pack"], piece["item"]) == ("pellmarsh", item["number"])
    assert piece["called"] == f"{item['number']} from the attic", "what was typed is not lost"
    place(page, "Collection")
    expect(page.get_by_text("in a range now")).to_have_count(0)


def test_a_running_change_is_a_sentence_of_three_taps_and_a_year(ostwick):
    write_down(ostwick, "Coach", "104")
    ostwick.get_by_role("button", name="Back").click()
    ostwick.get_by_role("button", name="Add a running change").click()
    tiles = ostwick.locator(".states button")
    tiles.filter(has_text="Coaches").click()
    expect(ostwick.get_by_role("heading", name="What changed?")).to_be_visible()
    tiles.filter(has_text="Coupling").first.click()
    expect(ostwick.get_by_text("Tap what is seen from then on.")).to_be_visible()
    tiles.first.click()
    ostwick.get_by_label("From").fill("about 1956")
    ostwick.get_by_label("From").blur()
    heading = ostwick.get_by_role("heading", level=1)
    expect(heading).to_contain_text("from about 1956, on all coaches.")
    expect(ostwick.get_by_text("It says what is seen on 104.")).to_be_visible()
    ostwick.get_by_role("button", name="Back").click()
    sentences = ostwick.get_by_role("list", name="Running changes")
    expect(sentences).to_contain_text("from about 1956, on all coaches.")
    [change] = records(ostwick, "range_change")
    [kind] = records(ostwick, "range_kind")
    assert (change["since"], change["kinds"]) == ("1956~", [kind["id"]])
    seen = next(one for one in records(ostwick, "range_state") if one["id"] == change["state"])
    assert seen["feature"] == change["feature"]


def test_a_piece_like_another_is_asked_only_what_differs(ostwick):
    write_down(ostwick, "Coach", "104")
    ostwick.get_by_role("button", name="Answer what you see").click()
    [first, _] = answer(ostwick, 2)
    ostwick.get_by_role("button", name="That will do").click()
    ostwick.get_by_role("button", name="Back").click()
    ostwick.get_by_role("button", name="Write down a piece").click()
    ostwick.locator(".states button").filter(has_text="Coach").first.click()
    ostwick.get_by_role("list", name="Written down").get_by_role("button", name="104").click()
    expect(ostwick.get_by_role("heading", name="What is different?")).to_be_visible()
    tiles = ostwick.locator(".states button")
    expect(tiles).to_have_count(2)
    tiles.first.click()
    expect(ostwick.get_by_role("heading", name=first)).to_be_visible()
    ostwick.locator(".states button").first.click()
    ostwick.get_by_role("button", name="That is all").click()
    expect(ostwick.get_by_label("Number")).to_have_value("")
    old, new = sorted(records(ostwick, "range_item"), key=lambda one: one["at"])
    seen = [name for name in old if name.startswith("seen_")]
    assert sorted(old[name] == new[name] for name in seen) == [False, True]
    assert len(records(ostwick, "range_variant")) == 2


def test_the_number_keys_find_what_is_owned_in_no_range(page, server):
    page.goto(server.url)
    place(page, "Collection")
    kept_outside(page, "Add a piece", "QX 304 brake coach")
    place(page, "Identify")
    page.get_by_role("searchbox").fill("qx30")
    found = page.get_by_role("list", name="Found").get_by_role("button").first
    expect(found).to_contain_text("In your collection")
    found.click()
    expect(page.get_by_label("What it is")).to_have_value("QX 304 brake coach")


def test_a_running_change_shows_what_it_does_and_is_let_speak(ostwick):
    page = ostwick
    write_down(page, "Coach", "104")
    page.get_by_label("Made", exact=True).fill("1953 to 60")
    page.get_by_label("Made", exact=True).blur()
    page.get_by_role("button", name="Answer what you see").click()
    [asked] = answer(page, 1)
    page.get_by_role("button", name="That will do").click()
    page.get_by_role("button", name="Back").click()
    page.get_by_role("button", name="Add a running change").click()
    tiles = page.locator(".states button")
    tiles.filter(has_text="Coaches").click()
    tiles.first.click()  # what was put down of the coach
    expect(page.get_by_role("heading", level=1)).to_have_text(asked)
    tiles.nth(1).click()
    page.get_by_label("From").fill("about 1956")
    page.get_by_label("From").blur()
    expect(page.get_by_text("It changes nothing yet on 104")).to_be_visible()
    page.get_by_role("button", name="Another source says otherwise").click()
    page.get_by_label("From, as another book says").fill("1958")
    page.get_by_label("From, as another book says").blur()
    line = page.get_by_role("list", name="Timeline")
    expect(line.get_by_role("listitem")).to_have_count(2)
    expect(line).to_contain_text("from about 1956")
    expect(line).to_contain_text("from 1958 (Another book)")
    page.get_by_role("button", name=re.compile("until then, .* after")).click()
    expect(page.get_by_text("It says what is seen on 104.")).to_be_visible()
    expect(line.get_by_role("listitem")).to_have_count(3)
    expect(line).to_contain_text("from the start")
    page.get_by_role("button", name="Undo").last.click()
    expect(page.get_by_text(re.compile("^Undone"))).to_be_visible()
    assert len(records(page, "range_change")) == 1
    [item] = records(page, "range_item")
    assert [value for name, value in item.items() if name.startswith("seen_")] != [[]]
