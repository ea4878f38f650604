"""Large ranges are reasoned about in a thread beside the screen: the same answers, elsewhere.

What counts as large is made small here, so that the demo's ranges are.
"""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.browser.phone import (
    PHONE,
    asking,
    begin,
    choices,
    expect_question,
    line,
    more_of_question,
    question,
    see,
    tap,
    watched,
)
from tests.browser.phone_storage import demo, records
from tests.conftest import Server, serving

LARGE = b"rows.kind.length>=5e4"  # as the minifier writes it, the constant in its place
FEWER = b"rows.kind.length>=100"
WATCHED = """
window.asked = [];
window.threads = 0;
window.Worker = class extends Worker {
  constructor(...what) { super(...what); window.threads += 1; }
  terminate() { super.terminate(); window.threads -= 1; }
  postMessage(what, ...more) {
    window.asked.push("study" in what ? "session, study" : Object.keys(what).at(-1));
    super.postMessage(what, ...more);
  }
};"""
NO_THREADS = "delete window.Worker;"
FAILING = """
window.Worker = class extends Worker {
  set onmessage(act) {
    super.onmessage = ({ data }) =>
      act({ data: data.view ? { number: data.number, problem: "it fails" } : data });
  }
};"""
DYING = """
window.Worker = class extends Worker {
  postMessage(what, ...more) {
    if (what.session) this.dispatchEvent(new Event("error"));
    else super.postMessage(what, ...more);
  }
};"""
SLOW = """
window.Worker = class extends Worker {
  postMessage(...what) { setTimeout(() => super.postMessage(...what), 400); }
};"""
OPEN = "() => window.threads === 1 && window.asked.includes('session')"


@pytest.fixture(scope="module")
def small_is_large(site) -> Iterator[Server]:
    assert site["app.js"].count(LARGE) == 1
    with serving({**site, "app.js": site["app.js"].replace(LARGE, FEWER)}) as server:
        yield server


def opened(browser: Browser, server: Server, script: str) -> Page:
    page = watched(
        browser.new_context(service_workers="block", reduced_motion="reduce", **PHONE).new_page()
    )
    page.add_init_script(script)
    page.goto(server.url)
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
    return page


def through(page: Page) -> list[list[str]]:
    """What is asked on the way to an answer, how sure it is by then, and the whole answer.

    A check is asked on a portrait without a thread, and in words from there: why it is asked is
    said there only, and the answers stand in the order of any other question. So the second by
    the alphabet is tapped.
    """
    said = []
    begin(page, "Wagon")
    while asking(page):
        buttons = page.locator(".states button").all_inner_texts()
        answers = sorted(text.splitlines()[-1] for text in buttons)  # in full, behind its caption
        said.append([question(page), page.locator("#tools").inner_text(), *answers])
        see(page, answers[:2][-1])
    return [*said, [page.locator("main").inner_text()]]


def everything(page: Page) -> list[list[str]]:
    """A piece in one range, with a collection that has a say in it; one in all ranges at once."""
    demo(page)
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    said = through(page)
    page.get_by_role("button", name="Next piece").first.click()
    page.get_by_label("Range", exact=True).select_option("Any range")
    expect(page.get_by_role("button", name="Tender", exact=True)).to_be_visible()
    return [*said, *through(page)]


@pytest.fixture(scope="module")
def own_engine(browser, small_is_large) -> Iterator[list[list[str]]]:
    page = opened(browser, small_is_large, NO_THREADS)
    yield everything(page)
    page.context.close()


def test_the_thread_says_what_the_own_engine_says(browser, small_is_large, own_engine):
    page = opened(browser, small_is_large, WATCHED)
    page.wait_for_function(OPEN)
    assert everything(page) == own_engine
    asked = page.evaluate("() => window.asked")
    assert asked[0] == "version"
    assert asked.count("version") <= 3, "a thread for each range, and no more"
    assert 1 <= asked.count("session, study") < asked.count("session")
    page.wait_for_function("() => window.threads === 1")
    assert page.reported == []
    page.context.close()


@pytest.mark.parametrize("script", [FAILING, DYING])
def test_where_the_thread_fails_the_own_engine_answers(browser, small_is_large, own_engine, script):
    page = opened(browser, small_is_large, script)
    assert everything(page) == own_engine
    assert page.reported == []
    page.context.close()


def test_ranges_are_changed_while_a_thread_is_at_work(browser, small_is_large):
    page = opened(browser, small_is_large, SLOW + WATCHED)
    first = question_of(page)
    for name in ("tarrowby", "pellmarsh", "tarrowby", "pellmarsh"):
        page.get_by_label("Range", exact=True).select_option(name)
        page.wait_for_timeout(300)  # within the time that a thread takes to open
    page.wait_for_function(OPEN)
    assert question_of(page) == first
    page.wait_for_function("() => window.threads === 1")
    assert page.reported == []
    page.context.close()


def question_of(page: Page) -> tuple[str, str]:
    """The first question where nothing is said, and how many it leaves; back at the start."""
    begin(page)
    found = question(page), page.locator(".strip-more").inner_text()
    tap(page, "Undo")
    return found


def test_back_while_the_thread_is_at_work_takes_one_answer_back(browser, small_is_large):
    page = opened(browser, small_is_large, SLOW + WATCHED)
    page.wait_for_function(OPEN)
    begin(page, "Wagon")
    first = question(page)
    see(page, choices(page)[0])
    second = question(page)
    page.locator(".states button").first.click()
    page.go_back()
    expect_question(page, second)
    page.go_back()
    expect_question(page, first)
    page.context.close()


def test_a_note_taken_while_the_thread_is_at_work_has_the_last_answer(browser, small_is_large):
    page = opened(browser, small_is_large, SLOW.replace("400", "4000") + WATCHED)
    page.wait_for_function(OPEN)
    begin(page, "Wagon")
    see(page, choices(page)[0])
    page.locator(".states button").first.click()
    more_of_question(page, "Save for later")
    expect(page.get_by_label("Price asked")).to_be_visible()
    (note,) = records(page, "note")
    assert len(note["answers"]) == 2
    page.context.close()


def test_a_tap_after_a_price_is_typed_is_not_lost(browser, small_is_large):
    page = opened(browser, small_is_large, SLOW + WATCHED)
    page.wait_for_function(OPEN)
    demo(page)  # a price means something to who keeps a collection
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    through(page)
    line(page, "Price").click()
    page.get_by_label("Price asked").fill("5")
    page.get_by_role("button", name="Done", exact=True).click()
    page.get_by_role("button", name="Close", exact=True).click()
    page.get_by_role("button", name="Next piece").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
    page.context.close()
