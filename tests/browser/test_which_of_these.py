"""Which of these? A few candidates that look different are left: one tap answers several looks."""

import random
import re

import pytest
from playwright.sync_api import Page, expect

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.pictures import pictures
from identify.core.portraits import sitting
from identify.core.session import new_session
from tests.browser.phone import too_small, violations
from tests.browser.test_looks_like_this import answers

CARD = "#screen > .which"


@pytest.fixture(scope="module")
def number(pellmarsh) -> str:
    """A number of which a few variants are told apart by their portraits alone."""
    pack = pellmarsh["pack"]
    engine, shown = prepare(pack), sitting(pack)
    numbers = [item["number"] for item in pack["items"]]
    random.Random(3).shuffle(numbers)
    for one in numbers:
        session = {**new_session(engine), "scope": {"kind": "", "items": [one]}}
        question = assess(engine, session)["question"]
        if not question:
            continue
        found = pictures(engine, shown, session, question["feature"])
        if len(found["pictures"]) == 3 and any(found["captioned"]):
            return one
    raise AssertionError("no item has so few looks")


@pytest.fixture
def shown(page, server, number) -> Page:
    """The pictures of an item that was found by its number."""
    page.goto(server.url)
    page.get_by_role("searchbox").fill(number)
    title = page.locator("strong").filter(has_text=re.compile(rf"^{re.escape(number)} "))
    page.locator(".hit").filter(has=title).first.click()
    page.locator(CARD).wait_for()
    return page


def test_a_picture_answers_what_it_differs_in_and_is_taken_back_in_one_tap(shown, pellmarsh):
    pack = pellmarsh["pack"]
    picture = shown.locator(".picture-choice").first
    said = dict(text.split(": ", 1) for text in picture.locator(".shows").all_text_contents())
    assert len(said) >= 2
    picture.click()
    expect(shown.locator(CARD)).to_have_count(0)
    found = answers(shown)
    names = {feature["id"]: feature for feature in pack["features"]}
    assert {names[answer["feature"]]["name"] for answer in found} == set(said)
    for answer in found:
        feature = names[answer["feature"]]
        state = next(one for one in feature["states"] if one["id"] == answer["states"][0])
        assert said[feature["name"]] == (state.get("caption") or state["name"])
        assert answer["how"] in {"sure", "several"}
    shown.go_back()
    expect(shown.locator(CARD)).to_be_visible()
    assert answers(shown) == []


def test_none_of_these_says_nothing_and_is_asked_in_words_from_then_on(shown):
    shown.get_by_role("button", name="None of these").click()
    shown.locator("#screen > .card .states button").first.wait_for()
    assert answers(shown) == []
    shown.locator(".states button").first.click()
    shown.wait_for_function("() => document.querySelector('.answer, .card')")
    expect(shown.locator(CARD)).to_have_count(0)


@pytest.mark.parametrize("light", ["light", "dark"])
def test_the_pictures_can_be_seen_and_tapped(shown, light):
    shown.emulate_media(color_scheme=light)
    assert violations(shown) == []
    assert too_small(shown) == []
    for picture in shown.locator(".picture-choice").all():
        box = picture.bounding_box()
        assert 0 <= box["y"] < box["y"] + box["height"] <= 740
        assert picture.locator("svg.portrait").bounding_box()["width"] >= 120
    shown.set_viewport_size({"width": 320, "height": 568})
    shown.evaluate("document.documentElement.style.fontSize = '225%'")
    assert shown.evaluate("document.documentElement.scrollWidth") <= 320
