"""Does it look like this? The leader's portrait with rings, before anything is called sure."""

import random
from typing import Any

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.portraits import sitting
from identify.core.rings import rings
from identify.core.session import answered, new_session
from identify.lab.pieces import Piece, piece
from tests.browser.phone import in_words, question, start, too_small, violations

CARD = "#screen > .looks-like-this"


@pytest.fixture(scope="module")
def pack(site) -> Any:
    return orjson.loads(site["packs/pellmarsh.json"])


def is_compared(engine: Any, found: Piece) -> bool:
    """Whether the engine shows rings on the way to an answer about this piece."""
    pack, shown = engine["pack"], sitting(engine["pack"])
    session = new_session(engine)
    for _ in range(12):
        view = assess(engine, session)
        if view["stop"] or view["question"] is None:
            return False
        if rings(engine, shown, session)["rings"]:
            return True
        feature = pack["features"][view["question"]["feature"]]["id"]
        seen = {"feature": feature, "how": "sure", "states": [found.states[feature]]}
        session = answered(session, seen)
    return False


@pytest.fixture
def held(page, server, pack) -> Page:
    """A piece that is answered up to where its portrait is held beside it."""
    engine = prepare(pack)
    pieces = (piece(random.Random(seed), pack) for seed in range(40))
    found = next(one for one in pieces if is_compared(engine, one))
    features = {feature["question"]: feature for feature in pack["features"]}
    start(page, server.url)
    while not page.locator(f"{CARD}:not(.which)").count():
        if page.locator(f"{CARD}.which").count():
            in_words(page)
        feature = features[question(page)]
        shown = found.states[feature["id"]]
        name = next(one["name"] for one in feature["states"] if one["id"] == shown)
        before = page.locator("main").inner_text()
        exact = page.get_by_text(name, exact=True)
        page.locator(".card .states button").filter(has=exact).first.click()
        page.wait_for_function("t => document.querySelector('main').innerText !== t", arg=before)
    return page


PIECE = """() => new Promise((resolve, reject) => {
  const opening = indexedDB.open('identify');
  opening.onerror = () => reject(opening.error);
  opening.onsuccess = () => {
    const asked = opening.result.transaction('kept').objectStore('kept').get('piece');
    asked.onerror = () => reject(asked.error);
    asked.onsuccess = () => { opening.result.close(); resolve(asked.result); };
  };
})"""


def answers(page: Page) -> list[dict[str, Any]]:
    """What is answered so far, as it is stored."""
    found: list[dict[str, Any]] = page.evaluate(PIECE)["steps"][-1]["session"]["answers"]
    return found


def test_what_fits_is_answered_in_one_tap_and_taken_back_in_one(held):
    count, before = held.locator(f"{CARD} button.ring").count(), answers(held)
    assert 2 <= count <= 3
    text = held.locator(CARD).inner_text()
    held.get_by_role("button", name="All fits").click()
    held.wait_for_function("t => document.querySelector('main').innerText !== t", arg=text)
    after = answers(held)
    assert after[: len(before)] == before
    assert len(after) == len(before) + count
    assert {answer["how"] for answer in after[len(before) :]} == {"sure"}
    held.go_back()
    expect(held.locator(CARD)).to_be_visible()
    assert answers(held) == before


def said_of(page: Page, pack: Any, marked: int) -> list[tuple[Any, Any]]:
    """What is said once the first rings are marked: the features, each with its answer."""
    before = answers(page)
    rings = page.locator(f"{CARD} button.ring")
    names = [ring.get_attribute("aria-label").split(": ")[1] for ring in rings.all()]
    text = page.locator(CARD).inner_text()
    for n in range(marked):
        rings.nth(n).click()
        expect(rings.nth(n)).to_have_attribute("aria-pressed", "true")
    page.get_by_role("button", name="The rest fits").click()
    page.wait_for_function("t => document.querySelector('main').innerText !== t", arg=text)
    after = answers(page)
    assert after[: len(before)] == before
    features = {one["id"]: one for one in pack["features"]}
    told = [(features[one["feature"]], one) for one in after[len(before) :]]
    assert [feature["name"] for feature, _ in told] == names
    return told


@pytest.mark.parametrize("marked", [1, 2])
def test_a_ring_that_does_not_fit_is_anything_but_what_is_shown(held, pack, marked):
    portrayed = {
        ring.get_attribute("aria-label").split(": ")[1]: ring.get_attribute("aria-label")
        for ring in held.locator(f"{CARD} button.ring").all()
    }
    told = said_of(held, pack, marked)
    for place, (feature, answer) in enumerate(told):
        if place >= marked:
            assert answer["how"] == "sure"
            continue
        there = [one for one in feature["states"] if one["id"] in answer["states"]]
        unsaid = [one for one in feature["states"] if one["id"] not in answer["states"]]
        shown = [one.get("caption", one["name"]) for one in unsaid]
        assert any(one in portrayed[feature["name"]] for one in shown)
        if answer["how"] == "several":
            assert len(there) == len(feature["states"]) - 1
        else:
            assert len(there) == 1


def test_a_mark_on_a_ring_is_taken_back_by_another_tap(held):
    ring = held.locator(f"{CARD} button.ring").first
    ring.click()
    ring.click()
    expect(ring).to_have_attribute("aria-pressed", "false")
    expect(held.get_by_role("button", name="All fits")).to_be_visible()


def test_it_can_be_asked_in_words(held):
    held.get_by_role("button", name="Ask in words").click()
    held.locator("#screen > .card .states button").first.wait_for()


def test_every_ring_stands_on_the_portrait_and_is_told_in_words(held):
    picture = held.locator(f"{CARD} svg.portrait").bounding_box()
    marks = held.locator(f"{CARD} button.ring")
    for n in range(marks.count()):
        box = marks.nth(n).bounding_box()
        x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
        assert picture["x"] <= x <= picture["x"] + picture["width"]
        assert picture["y"] <= y <= picture["y"] + picture["height"]
        top = "([x, y]) => document.elementFromPoint(x, y).closest('button').ariaLabel"
        assert held.evaluate(top, [x, y]) == marks.nth(n).get_attribute("aria-label")
    assert held.locator(f"{CARD} .ringed-list li").count() == marks.count()


def test_no_ring_lies_on_the_number_of_another(held):
    """Also where they stand close: the second one is put up and to the left of the first."""
    met = held.evaluate(
        """card => {
          const [first, second] = document.querySelectorAll(`${card} button.ring`);
          second.style.left = `calc(${first.style.left} - 12px)`;
          second.style.top = `calc(${first.style.top} - 12px)`;
          const { left, top, width, height } = first.firstChild.getBoundingClientRect();
          const there = document.elementFromPoint(left + width / 2, top + height / 2);
          return there === first.firstChild;
        }""",
        CARD,
    )
    assert met


@pytest.mark.parametrize("light", ["light", "dark"])
def test_it_can_be_read_and_tapped(held, light):
    held.emulate_media(color_scheme=light)
    assert violations(held) == []
    assert too_small(held) == []
    held.set_viewport_size({"width": 320, "height": 568})
    held.evaluate("document.documentElement.style.fontSize = '225%'")
    assert held.evaluate("document.documentElement.scrollWidth") <= 320
