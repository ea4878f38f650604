"""A large range, which a thread beside the screen reasons about: the same answers, elsewhere."""

from typing import Any

import msgspec
import pytest
from playwright.sync_api import Page, expect

from identify import phone as site_of
from identify.bench.running import only_pack
from identify.bench.serving import served
from identify.bench.sessions import likeliest
from identify.lab.generating import made_pack
from identify.reference.compiled import pack_bytes
from tests.browser.phone import PHONE, asking, begin, choices, question, see, tap, watched

ROWS = 50_000
COUNTED = """
window.asked = [];
const post = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (what, ...more) {
  window.asked.push("study" in what ? "session, study" : Object.keys(what).at(-1));
  return post.call(this, what, ...more);
};"""
NO_THREADS = "delete window.Worker;"
BROKEN = 'window.Worker = class extends Worker { postMessage() { super.postMessage("{"); } };'


@pytest.fixture(scope="module")
def pack() -> bytes:
    return pack_bytes(made_pack(ROWS, seed=3))


@pytest.fixture(scope="module")
def large(pack):
    made = made_pack(ROWS, seed=3)
    files = site_of.site([site_of.PACKS / "pellmarsh"])
    with served(only_pack(files, made, pack)) as site:
        yield site.url


def opened(browser, url: str, script: str) -> Page:
    page = watched(browser.new_context(service_workers="block", **PHONE).new_page())
    page.add_init_script(script)
    page.goto(url)
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?", timeout=60_000)
    return page


def through(page: Page, pack: dict[str, Any], row: int) -> list[str]:
    """All that is said on the way to an answer, telling what this issue has."""
    asked = {feature["question"]: n for n, feature in enumerate(pack["features"])}
    said = []
    begin(page)
    while asking(page):
        said.append(page.locator("main").inner_text())
        place = asked[question(page)]
        states = pack["features"][place]["states"]
        seen = states[likeliest(pack, place, row)]["name"]
        if seen in choices(page):
            see(page, seen)
        else:
            tap(page, "Can’t tell")
    return [*said, page.locator("main").inner_text()]


def twice(page: Page, pack: bytes) -> list[str]:
    """One piece, which goes into the collection, and then another like it."""
    made = msgspec.json.decode(pack)
    first = through(page, made, ROWS // 2)
    page.get_by_role("button", name="Add to the collection").click()
    expect(page.get_by_label("Notes")).to_be_visible()
    page.get_by_role("navigation").get_by_role("button", name="Identify").click()
    page.get_by_role("button", name="Start again").first.click()
    second = through(page, made, ROWS // 2)
    assert first[-1] != second[-1]  # it is owned by now
    return [*first, *second]


@pytest.fixture(scope="module")
def own_engine(browser, large, pack):
    page = opened(browser, large, NO_THREADS)
    yield twice(page, pack)
    page.context.close()


def test_the_thread_says_what_the_own_engine_says(browser, large, pack, own_engine):
    page = opened(browser, large, COUNTED)
    page.wait_for_function("() => window.asked.includes('session')", timeout=60_000)
    assert twice(page, pack) == own_engine
    asked = page.evaluate("() => window.asked")
    assert asked[0] == "version"
    assert asked.count("version") == 1
    assert 1 <= asked.count("session, study") < asked.count("session")
    page.context.close()


def test_where_there_is_no_thread_the_own_engine_answers(browser, large, pack, own_engine):
    page = opened(browser, large, BROKEN)
    assert twice(page, pack) == own_engine
    page.context.close()
