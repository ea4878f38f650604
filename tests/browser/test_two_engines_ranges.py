"""Ranges compiled and checked in Python and in a real Chromium: equal, to the last bit."""

import copy
from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify import phone
from identify.core.ranges.compiling import compiled_range
from identify.core.ranges.editions import news_of_edition
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.usable import usable
from identify.phone import demo_packs
from identify.reference.check import checked_pack
from identify.reference.marks_to_merge import marks_to_merge
from tests.browser.engines import PAGE
from tests.conftest import serving
from tests.core.test_sighted import proposals
from tests.own_ranges import own_ranges
from tests.sampling import sample
from tests.strategies import packs

TOGETHER = """
async marks => {
  const ranging = await import('./ranging.js');
  window.compile = ([rows, first, last]) => ranging.compiled_range(rows, first, last, marks);
  window.grow = ([range, records]) => {
    const found = ranging.usable(ranging.rows_of_records(range, records), marks);
    const { rows, first, last } = found;
    return [found, ranging.compiled_range(rows, first, last, marks)];
  };
  window.propose = (given) => ranging.proposal_of(...given);
  window.news = ([before, after]) => ranging.news_of_edition(before, after);
}"""


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    files = {"index.html": PAGE, "ranging.js": phone.ranging_module().encode()}
    with serving(files) as server:
        page = browser.new_page()
        page.goto(server.url)
        page.evaluate(TOGETHER, marks_to_merge())
        yield page
        page.close()


@pytest.mark.parametrize("folder", demo_packs(), ids=lambda path: path.name)
def test_demo_packs(page, folder):
    found = checked_pack(folder)
    theirs = page.evaluate("given => compile(given)", [found.rows, found.first, found.last])
    assert theirs == compiled_range(found.rows, found.first, found.last, marks_to_merge())


@pytest.mark.heavy
@settings(max_examples=sample(60, 25), deadline=None, suppress_health_check=list(HealthCheck))
@given(own_ranges(), st.randoms())
def test_ranges_of_ones_own(page, records, random):
    whole, *rows = records
    random.shuffle(rows)
    theirs = page.evaluate("given => grow(given)", [whole, rows])
    found = usable(rows_of_records(copy.deepcopy(whole), rows), marks_to_merge())
    pack = compiled_range(found["rows"], found["first"], found["last"], marks_to_merge())
    assert theirs == [found, pack]


@settings(max_examples=sample(60, 25), deadline=None, suppress_health_check=list(HealthCheck))
@given(packs(), packs())
def test_what_an_edition_says_otherwise(page, before, after):
    theirs = page.evaluate("given => news(given)", [before, after])
    assert theirs == news_of_edition(before, after)


@settings(max_examples=sample(60, 25), deadline=None, suppress_health_check=list(HealthCheck))
@given(proposals())
def test_what_a_sighting_would_change(page, drawn):
    assert page.evaluate("given => propose(given)", drawn["given"]) == drawn["made"]
