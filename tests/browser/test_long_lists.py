"""Lists that are drawn a slice at a time: their modules by themselves, on a page of the browser."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from identify.shipped import WEB
from tests.browser.engines import PAGE
from tests.conftest import serving

SCREEN: ViewportSize = {"width": 400, "height": 700}
SLICE = 40  # entries that come at once
COUNT = 5 * SLICE
ENOUGH = 100  # rows of a table that come at once
# a list of which all places are kept, put into the page after its observers looked for it in vain
LATE = """
async (count) => {
  const { longList } = await import("/parts/long-list.js");
  window.came = [];
  const row = (value) => {
    window.came.push(value);
    return String(value);
  };
  const slices = Array.from({ length: count / 40 }, (_, n) => ({ top: n * 2000, height: 2000 }));
  const values = [...Array(count).keys()];
  const nodes = longList("Pieces", values, row, Array(count).fill(null), slices);
  await new Promise((done) => new IntersectionObserver(done).observe(document.createElement("p")));
  document.body.replaceChildren(...nodes);
  scrollTo(0, document.body.scrollHeight);
}"""
TABLE = """
async (count) => {
  const { unfolding } = await import("/exchange/unfolding.js");
  const table = document.createElement("table");
  const bodies = Array.from({ length: count }, () => {
    const body = document.createElement("tbody");
    for (const text of ["one", "two"]) body.insertRow().insertCell().append(text);
    return body;
  });
  table.createTFoot();
  scrollTo(0, 0);
  document.body.replaceChildren(table, unfolding(table, bodies).more);
}"""


@pytest.fixture(scope="module")
def bare(browser) -> Iterator[Page]:
    """An empty page with the modules at hand."""
    files = {path.relative_to(WEB).as_posix(): path.read_bytes() for path in WEB.rglob("*.js")}
    with serving({**files, "index.html": PAGE}) as server:
        context = browser.new_context(viewport=SCREEN)
        page = context.new_page()
        page.goto(server.url)
        yield page
        context.close()


def test_a_list_that_comes_late_into_the_page_is_filled_where_it_is_looked_at_first(bare):
    bare.evaluate(LATE, COUNT)
    bare.wait_for_function("(count) => window.came.length === count", arg=COUNT)
    expect(bare.locator("li[aria-hidden]")).to_have_count(0)
    expect(bare.locator("li")).to_have_text([str(n) for n in range(COUNT)])
    last = COUNT - SLICE
    assert bare.evaluate("window.came.slice(0, 40)") == list(range(last, COUNT))


def test_a_table_of_many_small_groups_comes_on_wherever_its_end_is_scrolled_to(bare):
    bare.evaluate(TABLE, 2 * ENOUGH)
    rows = bare.locator("tr")
    for times in range(1, 5):
        expect(rows).to_have_count(times * ENOUGH)
        bare.evaluate("scrollTo(0, document.body.scrollHeight)")
    expect(bare.get_by_role("button", name="Show more")).to_be_hidden()
