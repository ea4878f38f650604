"""Money and the verdict, in Python and compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.amounts import read_money
from identify.core.currencies import currencies
from identify.core.money import add_money, compare_money, money_parts, totals
from tests.browser.engines import agree, compiled
from tests.strategies import CODES, moneys, scribbles
from tests.tables import sharp, table_pack

FREE = {
    "read_money": read_money, "add_money": add_money, "compare_money": compare_money,
    "totals": totals, "money_parts": money_parts, "currencies": currencies,
}  # fmt: skip
ANY = table_pack({"x": ["a"]}, [{"x": sharp(["a"], "a")}], [1.0])


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


@settings(max_examples=200, deadline=None, suppress_health_check=list(HealthCheck))
@given(
    st.lists(st.tuples(scribbles(), st.sampled_from([*CODES, "XTS"])), min_size=20, max_size=20),
    st.lists(moneys(), min_size=2, max_size=6),
)
def test_money(page, texts, amounts):
    asked = [["read_money", text, usual] for text, usual in texts]
    asked += [["money_parts", money] for money in amounts]
    asked += [["add_money", *amounts[:2]], ["compare_money", *amounts[:2]], ["totals", amounts]]
    agree(page, ANY, {}, FREE, [*asked, ["currencies"]])
