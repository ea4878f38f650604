"""Every screen: axe (WCAG 2.2 with enhanced contrast) in each light, large text, thumbs."""

import gzip
import re
from collections.abc import Callable
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from identify.phone import WEB
from tests.browser import registry
from tests.browser.phone import (
    LIGHTS,
    PHONE,
    asking,
    begin,
    choices,
    expect_read,
    in_each_light,
    in_words,
    more_of_question,
    see,
    take_up,
    tap,
    too_small,
    too_wide,
    unfold,
    watched,
)
from tests.browser.phone_storage import demo, place
from tests.browser.shelf_screens import SHELF
from tests.demo import PIECES


def made_up() -> dict[str, Any]:
    """The session with everything that was seen of a made-up piece."""
    seen = next(piece["seen"] for piece in PIECES if piece["id"] == "hybrid")
    return {
        "pack": "pellmarsh",
        "version": "",
        "scope": {"kind": "locomotive", "items": []},
        "able": [],
        "missing": [],
        "answers": [{"feature": f, "how": "sure", "states": [s]} for f, s in seen.items()],
    }


def at_start(page: Page) -> None:
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")


def searching(page: Page) -> None:
    page.get_by_role("searchbox").fill("1")
    expect(page.get_by_role("list", name="Found")).to_be_visible()


def asked(page: Page) -> None:
    begin(page, "Coach")
    see(page, choices(page)[0])


def one_of_these(page: Page) -> None:
    asked(page)
    tap(page, "I’m guessing")
    page.get_by_role("button", name="Two or more").click()
    page.locator(".states button").first.click()


def why(page: Page) -> None:
    begin(page, "Coach")  # a question of the app's own, not one asked for in words
    more_of_question(page, "Why this question?")


def candidates(page: Page) -> None:
    asked(page)
    see(page, choices(page)[0])
    page.get_by_role("button", name=re.compile("^So far")).click()
    page.get_by_role("dialog").get_by_role("button", name=re.compile("^Why not")).first.click()


def answers(page: Page) -> None:
    asked(page)
    more_of_question(page, "1 answer")


def answer(page: Page) -> None:
    begin(page, "Wagon")
    while asking(page):
        see(page, choices(page)[0])


def claim_form(page: Page) -> None:
    asked(page)
    more_of_question(page, "Check the seller’s date")
    page.get_by_text("Say it another way").click()
    page.get_by_label("What does the seller say?").fill("purple")
    page.get_by_text("From year to year").click()


def claim(page: Page) -> None:
    claim_form(page)
    page.get_by_label("What does the seller say?").fill("late fifties")
    page.get_by_role("button", name="Check it").click()
    sheet = page.get_by_role("dialog")
    expect(sheet).to_contain_text("The seller says")
    sheet.locator("summary").first.click()


def who_says_so(page: Page) -> None:
    claim(page)
    page.get_by_role("button", name="Who says so?", exact=True).click()
    expect(page.get_by_role("heading", name="Who says so?")).to_be_visible()


def parts_that_do_not_belong(page: Page) -> None:
    """The answer on a made-up piece, with the claim ruled out."""
    take_up(page, made_up(), "1955")
    in_words(page)
    while asking(page):
        tap(page, "Can’t see it")
    unfold(page)
    expect(page.get_by_role("heading", name="Timeline")).to_be_visible()


def sighting(page: Page) -> None:
    parts_that_do_not_belong(page)
    page.get_by_role("button", name="Keep as a sighting").click()
    page.get_by_label("When was it made?").fill("1948")
    page.get_by_label("When was it made?").blur()
    page.get_by_text("Saved").first.wait_for()
    page.reload()
    expect(page.get_by_text("This goes beyond what the sources say")).to_be_visible()


def read_mark(page: Page) -> None:
    place(page, "More")
    page.get_by_role("button", name="Read a mark").click()
    sheet = page.get_by_role("dialog")
    sheet.get_by_label("What does it say?").fill("Pat. No. 654321 W. Germany")
    expect(sheet.get_by_role("status")).to_contain_text("hardly after October 1990")
    sheet.get_by_text("Who says so?").first.click()


SCREENS = [
    at_start, searching, asked, one_of_these, why, candidates, answers, answer,
    claim_form, claim, who_says_so, parts_that_do_not_belong, sighting,
    read_mark, *SHELF,
]  # fmt: skip


@pytest.mark.parametrize("screen", SCREENS, ids=lambda s: s.__name__)
def test_a_screen_is_read_by_all(browser, server, screen: Callable[[Page], None]):
    """Large text on a narrow screen reads without scrolling sideways, on the whole way there; then
    axe finds nothing at the usual size, and nothing to tap is under 48 px.
    """
    narrow = {"viewport": {"width": 320, "height": 640}, "reduced_motion": "reduce"}
    context = browser.new_context(**{**PHONE, **narrow})
    page = watched(context.new_page())
    page.goto(server.url)
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    screen(page)
    assert too_wide(page) == []
    page.evaluate("document.documentElement.style.fontSize = ''")
    page.set_viewport_size(PHONE["viewport"])
    assert in_each_light(page) == []
    assert too_small(page) == [], "nothing to tap is under 48 px"
    context.close()


@pytest.fixture(scope="module")
def screens(browser) -> dict[str, Any]:
    return registry.read(browser)


def test_every_screen_is_listed_once_with_what_the_walks_need(screens, page, server):
    """A screen that is not in the registry cannot be opened: nothing else loads one."""
    assert list(screens) == registry.NAMES
    assert [name for name, one in screens.items() if not one["load"]] == ["identify"]
    assert all(one["title"] for one in screens.values())
    page.goto(server.url)
    bar = (
        page.get_by_role("navigation")
        .get_by_role("button")
        .evaluate_all("(all) => all.map((one) => [one.dataset.screen, one.textContent])")
    )
    in_bar = [[name, one["title"]] for name, one in screens.items() if one["way"] == ["bar"]]
    assert bar == in_bar
    under_more = [name for name, one in screens.items() if one["way"] == ["more"]]
    assert under_more == [name for name, one in screens.items() if one["menu"]]
    opened = {
        name
        for path in WEB.rglob("*.js")
        for name in re.findall(r'goTo\("(\w+)"', path.read_text("utf-8"))
    }
    assert opened <= set(screens)


@pytest.mark.parametrize("name", registry.NAMES)
def test_axe_finds_nothing_on_a_screen_of_the_registry(browser, server, screens, name):
    context = browser.new_context(**PHONE, reduced_motion="reduce")
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    registry.go(page, screens, name)
    assert in_each_light(page) == []
    assert too_small(page) == [], "nothing to tap is under 48 px"
    page.set_viewport_size({"width": 320, "height": 640})
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    assert too_wide(page) == []
    context.close()


def test_answers_are_large_and_in_reach_of_the_thumb(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    boxes = page.evaluate(
        "() => [...document.querySelectorAll('.states button')]"
        ".map(b => b.getBoundingClientRect()).map(b => [b.top, b.bottom, b.height])"
    )
    assert all(height >= 60 for _, _, height in boxes)
    assert all(bottom <= 740 for _, bottom, _ in boxes)
    for name in ("Undo", "More", "Can’t see it", "I’m guessing"):
        box = page.get_by_role("button", name=name, exact=True).bounding_box()
        assert box is not None
        assert box["y"] >= 0.75 * 740, name


@pytest.mark.parametrize(
    ("wishes", "first"),
    [({}, "day"), ({"color_scheme": "dark"}, "dark"), ({"contrast": "more"}, "sun")],
)
def test_one_button_steps_through_the_lights(browser, server, wishes, first):
    """The first is as the device wishes; the bar of the browser goes along with the ground."""
    page = browser.new_context(**PHONE, **wishes).new_page()
    page.goto(server.url)
    at_start(page)
    shown = "document.documentElement.dataset.light"
    seen = []
    for _ in LIGHTS:
        seen.append(page.evaluate(shown))
        ground = page.evaluate("getComputedStyle(document.documentElement).backgroundColor")
        told = page.locator("meta[name=theme-color]").get_attribute("content").removeprefix("#")
        red, green, blue = (int(told[at : at + 2], 16) for at in (0, 2, 4))
        assert ground == f"rgb({red}, {green}, {blue})"
        page.locator("#light").click()
        page.wait_for_function(f"before => {shown} !== before", arg=seen[-1])
    expect_read(page, lambda: page.evaluate(shown), first)
    assert seen == [*LIGHTS[LIGHTS.index(first) :], *LIGHTS[: LIGHTS.index(first)]]
    page.context.close()


def test_focus_goes_to_the_new_question_and_it_is_announced(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    see(page, choices(page)[0])
    page.wait_for_function("() => document.activeElement.tagName === 'H1'")
    expect(page.get_by_role("status").filter(has_text="still possible")).to_have_count(1)


def test_the_tree_that_a_screen_reader_hears(page, server):
    page.goto(server.url)
    begin(page, "Coach")
    tree = page.locator("main").aria_snapshot()
    assert re.search(r'heading "[^"]+\?" \[level=1\]', tree)
    assert 'group "Tap what you see' in tree
    for name in choices(page):
        assert f'button "{name}"' in tree


def compressed(files: dict[str, bytes], names: list[str]) -> float:
    return sum(len(gzip.compress(files[name])) for name in names) / 1024


def test_what_is_sent_is_small(site, capsys):
    """Compressed: JavaScript at most 70 KB, the shell 80, shell with engine and demo pack 140.

    What the first question does not wait for is loaded later, and counts for itself.
    """
    rules = ("further.js", "merging.js", "ranging.js", "trying.js", "tables.js", "toml.js")
    late = ("later.js", *rules, "thread.js", "fetch-range.js", "later.css")
    late += ("fonts/clear.woff2",)  # letters of the device stand in for it until it is there
    later = [name for name in late if name in site]
    script = [name for name in site if name.endswith(".js") and name not in later]
    shell = [*script, "index.html", "style.css", "manifest.webmanifest"]
    packs = [name for name in site if name == "packs/pellmarsh.json"]
    sizes = [compressed(site, names) for names in (script, shell, [*shell, *packs])]
    with capsys.disabled():
        print("\nscript {:.1f} KB, shell {:.1f} KB, with the pack {:.1f} KB".format(*sizes))
        print(f"loaded later {compressed(site, later):.1f} KB")
    assert sizes[0] <= 70
    assert sizes[1] <= 80
    assert sizes[2] <= 140
