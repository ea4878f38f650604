"""Identifying a piece on the phone, from a tap on its kind to the answer."""

import json
import re

import pytest
from playwright.sync_api import expect

from identify.core.assess import assess
from identify.core.session import answered, new_session
from tests.browser.phone import (
    asking,
    choices,
    expect_other_question,
    expect_question,
    more_of_question,
    question,
    see,
    start,
    take_up,
    tap,
    too_small,
    whole_piece,
)
from tests.browser.phone_storage import more, place

# Three demo pieces, by the seed that draws them: a different kind each.
PIECES = [("locomotive", 11), ("coach", 12), ("wagon", 13)]


@pytest.mark.parametrize(("kind", "seed"), PIECES)
def test_a_piece_is_identified_by_what_can_be_seen(page, server, pellmarsh, kind, seed):
    """The phone asks what the engine in Python asks, and ends with the true variant first."""
    pack = pellmarsh["pack"]
    found = whole_piece(pack, kind, seed)
    start(page, server.url, next(one["name"] for one in pack["kinds"] if one["id"] == kind))
    session = new_session(pellmarsh)
    session["scope"]["kind"] = kind
    taps = 0
    while asking(page):
        view = assess(pellmarsh, session)
        feature = pack["features"][view["question"]["feature"]]
        expect_question(page, feature["question"])
        seen = found.states[feature["id"]]
        see(page, next(s["name"] for s in feature["states"] if s["id"] == seen))
        session = answered(session, {"feature": feature["id"], "how": "sure", "states": [seen]})
        taps += 1
    assert taps <= 15
    view = assess(pellmarsh, session)
    truth = pack["rows"]["variant"][found.row]
    assert truth in [entry["variant"] for entry in view["variants"][:3]]
    best = pack["variants"][view["variants"][0]["variant"]]
    item = pack["items"][best["item"]]
    text = page.locator("main").inner_text()
    assert f"{item['number']} {item['name']}" in text
    assert best["name"].casefold() in text.casefold()
    assert f"{view['years']['first']}" in text


def test_a_misread_number_finds_the_item(page, server, pellmarsh):
    item = pellmarsh["pack"]["items"][0]
    wrong = item["number"].replace("1", "I").replace("0", "O")
    assert wrong != item["number"]
    page.goto(server.url)
    page.get_by_role("searchbox").fill(wrong)
    hit = page.get_by_role("list", name="Found").get_by_role("button").first
    expect(hit).to_contain_text("if one character was misread")
    hit.tap()
    expect(page.get_by_role("button", name=re.compile("^So far"))).to_contain_text(item["name"])


def test_a_number_that_matches_nothing_is_said_and_the_way_on_shown(page, server):
    page.goto(server.url)
    page.get_by_role("searchbox").fill("zzzzzz")
    expect(page.get_by_text("Nothing in this range is called “zzzzzz”")).to_be_visible()
    page.get_by_role("searchbox").fill("")
    expect(page.get_by_role("button", name="Coach", exact=True)).to_be_visible()


def test_back_and_undo_take_back_exactly_one_answer(page, server):
    start(page, server.url, "Coach")
    asked = [question(page)]
    for _ in range(3):  # a question, or pictures to choose from
        before = page.locator("main").inner_text()
        page.locator(".states button, .picture-choice").first.click()
        page.wait_for_function("t => document.querySelector('main').innerText !== t", arg=before)
        asked.append(question(page))
    page.go_back()
    expect_question(page, asked[2])
    page.get_by_role("main").get_by_role("button", name="Undo", exact=True).click()
    expect_question(page, asked[1])
    page.go_back()
    expect_question(page, asked[0])
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")


def test_start_again_can_be_undone(page, server):
    start(page, server.url, "Wagon")
    see(page, choices(page)[0])
    asked = question(page)
    more_of_question(page, "Next piece")
    expect_question(page, "What have you got?")
    tap(page, "Undo that")
    expect_question(page, asked)
    more_of_question(page, "1 answer")


@pytest.mark.parametrize("way", ["unsure", "several", "other", "cannot"])
def test_answers_that_are_not_simple(page, server, pellmarsh, way):
    start(page, server.url, "Coach")
    pack = pellmarsh["pack"]
    first = question(page)
    names = choices(page)
    feature = next(f for f in pack["features"] if f["question"] == first)
    by_name = {s["name"]: s["id"] for s in feature["states"]}
    told = {"feature": feature["id"], "how": way, "states": []}
    if way == "unsure":
        tap(page, "I’m guessing")
        told["states"] = [by_name[names[1]]]
        see(page, names[1])
    elif way == "several":
        tap(page, "I’m guessing")
        page.get_by_role("button", name="Two or more").tap()
        for name in names[:2]:
            button = page.locator(".states button").filter(has=page.get_by_text(name, exact=True))
            button.tap()
            expect(button).to_have_attribute("aria-pressed", "true")
        told["states"] = [s["id"] for s in feature["states"] if s["name"] in names[:2]]
        tap(page, "Done")
    else:
        tap(page, "Can’t see it" if way == "cannot" else "Something else")
    session = new_session(pellmarsh)
    session["scope"]["kind"] = "coach"
    view = assess(pellmarsh, answered(session, told))
    expect_question(page, pack["features"][view["question"]["feature"]]["question"])


def test_a_part_that_is_not_there_is_asked_no_more(page, server, pellmarsh):
    """Can't tell, until a question on the box comes; then there is no box."""
    pack = pellmarsh["pack"]
    box = next(n for n, part in enumerate(pack["parts"]) if part["id"] == "box")
    on_box = {f["question"] for f in pack["features"] if f["part"] == box}
    start(page, server.url, "Boxed set")
    asked = []
    while asking(page):
        asked.append(question(page))
        there_is_no_box = page.get_by_role("button", name="No box", exact=True)
        if there_is_no_box.count():
            tap(page, "No box")
            break
        tap(page, "Can’t see it")
    assert asked[-1] in on_box
    while asking(page):
        assert question(page) not in on_box
        tap(page, "Can’t see it")


def test_why_this_question_and_another_one_instead(page, server):
    start(page, server.url, "Coach")
    asked = question(page)
    more_of_question(page, "Why this question?")
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("This should rule out")
    other = sheet.get_by_role("list").last.get_by_role("button").first
    other.tap()
    expect(sheet).to_have_count(0)
    expect_other_question(page, asked)
    more_of_question(page, "Back to the suggested question")
    expect_question(page, asked)


def test_why_not_that_variant(page, server):
    start(page, server.url, "Coach")
    for _ in range(3):
        see(page, choices(page)[0])
    page.get_by_role("button", name=re.compile("^So far")).tap()
    sheet = page.get_by_role("dialog")
    sheet.get_by_role("button", name=re.compile("^Why not")).first.tap()
    expect(sheet).to_contain_text(re.compile("It is recorded with|It fits what you saw too"))


def test_number_keys_choose_on_a_keyboard(page, server):
    start(page, server.url, "Coach")
    asked = question(page)
    second = choices(page)[1]
    page.keyboard.press("2")
    expect_other_question(page, asked)
    more_of_question(page, "1 answer")
    expect(page.get_by_role("dialog")).to_contain_text(second)


def test_the_question_is_changed_in_the_list_of_answers(page, server):
    start(page, server.url, "Coach")
    asked = question(page)
    see(page, choices(page)[0])
    more_of_question(page, "1 answer")
    page.get_by_role("dialog").get_by_role("button", name=re.compile("Change")).first.tap()
    expect_question(page, asked)
    expect(page.get_by_text("Your answer was")).to_be_visible()


def test_what_is_seen_can_be_told_unasked(page, server, pellmarsh):
    """A feature that no question is about: from the reason of a question, and from the answer."""
    start(page, server.url, "Coach")
    more_of_question(page, "Point something out")
    sheet = page.get_by_role("dialog")
    names = sheet.get_by_role("list", name="All you can point out").get_by_role("button")
    pack = pellmarsh["pack"]
    coach = next(n for n, kind in enumerate(pack["kinds"]) if kind["id"] == "coach")
    there = [f for f in pack["features"][1:] if coach in f["kinds"]]
    expect(names).to_have_count(len(there))
    feature = next(f for f in pack["features"] if f["id"] == "coupling")
    names.filter(has_text=feature["name"]).first.click()
    expect_question(page, feature["question"])
    see(page, feature["states"][1]["name"])
    expect_other_question(page, feature["question"])
    more_of_question(page, "1 answer so far")
    expect(page.get_by_role("dialog")).to_contain_text(feature["states"][1]["name"])
    expect(page.get_by_role("dialog")).to_contain_text("Point something out")


def test_there_is_none_is_offered_only_where_it_can_be(page, server, pellmarsh):
    """A wagon has no lining to speak of, a coach has: the added state is for the first only."""
    lining = next(f for f in pellmarsh["pack"]["features"] if f["id"] == "lining")
    assert lining["none"] >= 0
    start(page, server.url, "Coach")
    seen = {"main_colour": "brown", "coach_type": "corridor"}
    while asking(page):
        if question(page) == lining["question"]:
            assert "None" not in choices(page)
            return
        asked = next(f for f in pellmarsh["pack"]["features"] if f["question"] == question(page))
        names = [each["name"] for each in asked["states"] if each["id"] == seen.get(asked["id"])]
        see(page, names[0] if names else choices(page)[0])
    pytest.fail("the lining was never asked for")


def test_the_second_tap_of_a_double_tap_answers_nothing(page, server):
    start(page, server.url, "Coach")
    asked = question(page)
    page.locator(".states button").first.dblclick()
    expect_other_question(page, asked)
    page.wait_for_timeout(500)  # time for a second answer, were there one
    more_of_question(page, "1 answer so far")


def test_done_with_nothing_ticked_says_so(page, server):
    start(page, server.url, "Coach")
    asked = question(page)
    tap(page, "I’m guessing")
    expect(page.get_by_role("button", name="Can’t see it")).to_be_visible()
    page.get_by_role("button", name="Two or more").tap()
    page.get_by_role("button", name="Done").tap()
    expect(page.get_by_role("group", name="Tick at least one first")).to_be_visible()
    expect_question(page, asked)


def test_the_way_to_the_piece_is_found_after_more_screens_than_a_browser_remembers(page, server):
    page.goto(server.url)
    for _ in range(35):  # Chromium keeps 50 entries
        more(page, "Settings")
    place(page, "Identify")
    more(page, "Settings")
    page.go_back()
    expect(page.get_by_role("heading", level=1)).to_have_text("More")


def laid_out(page) -> dict[str, float]:
    """Where the title, the answers and the last row of buttons end, and the height there is."""
    return page.evaluate(
        """() => {
          const ends = (sight) => Math.max(...[...document.querySelectorAll(sight)]
            .map((one) => one.getBoundingClientRect().bottom));
          const all = [...document.querySelectorAll(".states button")];
          const frame = document.querySelector(".choices").getBoundingClientRect();
          const seen = all.filter((one) => one.getBoundingClientRect().bottom <= frame.bottom + 1);
          return { title: ends("#screen h1"), last: ends(".reach button"), high: innerHeight,
            page: document.scrollingElement.scrollHeight, answers: all.length, seen: seen.length,
            cut: document.querySelector(".states").scrollHeight
              - document.querySelector(".states").clientHeight };
        }"""
    )


@pytest.mark.parametrize("range_", ["pellmarsh", "tarrowby"])
def test_every_answer_of_every_question_is_on_one_screen(page, server, site, range_):
    """At 360 by 740 nothing scrolls, whatever is asked; each answer has room for a thumb."""
    pack = json.loads(site[f"packs/{range_}.json"])
    page.goto(server.url)
    page.get_by_role("heading", level=1).wait_for()
    session = {
        "pack": range_, "version": "", "scope": {"kind": "", "items": []},
        "able": [], "missing": [], "answers": [],
    }  # fmt: skip
    for feature in pack["features"][1:]:
        take_up(page, session, asked=feature["id"])
        expect_question(page, feature["question"])
        room = laid_out(page)
        assert room["cut"] <= 0, feature["id"]
        assert room["page"] == room["high"] == 740, feature["id"]
        assert room["title"] < 110, feature["id"]
        assert too_small(page) == [], feature["id"]


@pytest.mark.parametrize(("wide", "high"), [(360, 740), (320, 568)])
def test_with_large_letters_the_question_and_two_answers_are_seen(page, server, wide, high):
    page.set_viewport_size({"width": wide, "height": high})
    start(page, server.url, "Wagon")
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    room = laid_out(page)
    assert room["seen"] >= (2 if high > 600 else 1)
    assert room["last"] <= high, "Undo and More stay in the thumb's reach"
    assert room["page"] == high
