"""Marks read in Python and compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.apart import years_apart
from identify.core.dated_numbers import check_digit
from identify.core.mark_words import mark_span, nothing_said, reading_said
from identify.core.marking import read_mark
from identify.reference.mark_tables import mark_tables
from tests.browser.engines import compiled, same
from tests.sampling import sample
from tests.strategies import scribbles

TABLES = mark_tables()
FIGURES = st.text("0123456789", min_size=7, max_size=12)
WRITTEN = (
    scribbles()
    | st.text(st.characters(max_codepoint=0xFFFF), max_size=12)  # places are counted as each counts
    | st.from_regex(r"\A(?:Regd?\.? ?(?:No\.? ?)?|GB|Pat: )?[0-9]{1,9}\Z")
    | st.from_regex(r"\A[0-9]{1,3}(?:[, ][0-9]{3}){1,2} ?\Z")
    | st.from_regex(r"\A[0-9]{1,6} ?(?:/| ?of ?)(?:1[89])?[0-9]{2}\Z")
    | st.text("0123456789OIlSBZ/ ,-", min_size=1, max_size=13)
    | FIGURES.map(lambda body: f"{body}{check_digit(body)}")
    | st.integers(1, 2_600_000).map(str)
    | st.sampled_from(
        ["DRGM", "D.R.P. ", "Regd. Des. ", "Pat. No. ", "U.S. Pat. ", "GB", "DBGM ", "W. Germany "]
    ).flatmap(lambda lead: st.from_regex(r"\A[0-9 ,./]{0,9}\Z").map(lambda rest: lead + rest))
    | st.sampled_from(
        [
            "£2.99 inc. VAT",
            "8 M\u00fcnchen 2",
            "(0171) 555",
            "49/11",
            "Brevet\u00e9 S.G.D.G.",
            "(22a) X",
        ]
    )
)


READ = """texts => texts.map(text => {
  const found = core.read_mark(tables, text);
  const readings = found.marks.flatMap(mark => mark.readings);
  const spans = readings.map(reading => core.mark_span(tables, reading));
  return structuredClone({
    found, spans, said: readings.map(reading => core.reading_said(tables, reading)),
    nothing: core.nothing_said(found), apart: core.years_apart(spans),
  });
})"""


@pytest.fixture(scope="module")
def page(browser, site) -> Iterator[Page]:
    with compiled(browser) as page:
        hold = "async tables => Object.assign(window, {tables, core: await import('./engine.js')})"
        page.evaluate(f"async tables => {{ await ({hold})(tables); }}", TABLES)
        yield page


def read(text: str) -> dict[str, Any]:
    """All that Python makes of a text."""
    found = read_mark(TABLES, text)
    readings = [reading for mark in found["marks"] for reading in mark["readings"]]
    spans = [mark_span(TABLES, reading) for reading in readings]
    return {
        "found": found,
        "spans": spans,
        "said": [reading_said(TABLES, reading) for reading in readings],
        "nothing": nothing_said(found),
        "apart": years_apart(spans),
    }


@pytest.mark.heavy
@settings(max_examples=sample(100, 40), deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(WRITTEN, min_size=10, max_size=10))
def test_marks_are_read_and_said_alike(page, texts):
    for text, here, there in zip(texts, map(read, texts), page.evaluate(READ, texts), strict=True):
        same(here, there, text)
