"""Years of numbers, in Python and compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator

import orjson
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.dated_numbers import check_digit, read_number
from tests.browser.engines import agree, compiled
from tests.strategies import scribbles
from tests.table_packs import sharp, table_pack

ANY = table_pack({"x": ["a"]}, [{"x": sharp(["a"], "a")}], [1.0])
FIGURES = st.text("0123456789", min_size=7, max_size=12)
WRITTEN = (
    scribbles()
    | st.text(max_size=12)
    | st.from_regex(r"\A(?:Regd?\.? ?(?:No\.? ?)?|GB|Pat: )?[0-9]{1,9}\Z")
    | st.from_regex(r"\A[0-9]{1,3}(?:[, ][0-9]{3}){1,2} ?\Z")
    | st.from_regex(r"\A[0-9]{1,6} ?(?:/| ?of ?)(?:1[89])?[0-9]{2}\Z")
    | st.text("0123456789OIlSBZ/ ,-", min_size=1, max_size=13)
    | FIGURES.map(lambda body: f"{body}{check_digit(body)}")
    | st.integers(1, 2_600_000).map(str)
)


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


@settings(max_examples=300, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    st.lists(
        st.tuples(st.sampled_from(["design", "patent", "barcode"]), WRITTEN),
        min_size=10,
        max_size=10,
    )
)
def test_numbers(page, site, texts):
    tables = orjson.loads(site["packs/numbers.json"])
    asked = [["read_number", tables, what, text] for what, text in texts]
    agree(page, ANY, {}, {"read_number": read_number}, asked)
