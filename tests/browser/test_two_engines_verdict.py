"""Money and the verdict, in Python and compiled, in a real Chromium: equal answers."""

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.amounts import read_money
from identify.core.condition import condition_rank, conditions
from identify.core.currencies import currencies
from identify.core.deciding import assess_for
from identify.core.duplicates import duplicates
from identify.core.formation import incomplete
from identify.core.money import add_money, compare_money, money_parts, totals
from identify.core.outside import known_now, outside_alike, outside_named
from identify.core.wants import want_words
from tests.browser.engines import agree, compiled
from tests.sampling import sample
from tests.strategies import (
    CODES,
    WORDS_OF_CONDITION,
    collections,
    hands,
    moneys,
    packs,
    scribbles,
    sessions,
)  # fmt: skip
from tests.table_packs import sharp, table_pack

FREE = {
    "read_money": read_money, "add_money": add_money, "compare_money": compare_money,
    "totals": totals, "money_parts": money_parts, "currencies": currencies,
    "conditions": conditions, "condition_rank": condition_rank, "want_words": want_words,
    "outside_alike": outside_alike, "outside_named": outside_named,
}  # fmt: skip
BOUND = {
    "assess_for": assess_for, "duplicates": duplicates, "incomplete": incomplete,
    "known_now": known_now,
}  # fmt: skip
OUTSIDE = {"type": "piece", "item": "", "kept": False, "purpose": "", "missing": [], "replaced": []}
ANY = table_pack({"x": ["a"]}, [{"x": sharp(["a"], "a")}], [1.0])


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


@pytest.mark.heavy
@settings(max_examples=sample(200, 40), deadline=None, suppress_health_check=list(HealthCheck))
@given(
    st.lists(st.tuples(scribbles(), st.sampled_from([*CODES, "XTS"])), min_size=20, max_size=20),
    st.lists(moneys(), min_size=2, max_size=6),
)
def test_money(page, texts, amounts):
    asked = [["read_money", text, usual] for text, usual in texts]
    asked += [["money_parts", money] for money in amounts]
    asked += [["add_money", *amounts[:2]], ["compare_money", *amounts[:2]], ["totals", amounts]]
    agree(page, ANY, {}, FREE, [*asked, ["currencies"]])


@pytest.mark.heavy
@settings(max_examples=sample(1000, 100), deadline=None, suppress_health_check=list(HealthCheck))
@given(st.data())
def test_random_collections(page, data):
    pack = data.draw(packs())
    records = data.draw(collections(pack))
    word = data.draw(st.sampled_from([*WORDS_OF_CONDITION, "lovely"]))
    names = ["", pack["items"][0]["number"], f"{pack['items'][0]['number']}x", "no 7", "No. 7"]
    outside = [
        OUTSIDE | {"id": f"r{n}", "called": called, "condition": word, "boxed": ""}
        for n, called in enumerate([*names, data.draw(scribbles())])
    ]
    asked = [
        ["assess_for", data.draw(sessions(pack)), records, data.draw(hands())],
        ["duplicates", records["pieces"], "variant"],
        ["duplicates", records["pieces"], "item"],
        *[["known_now", one] for one in outside],
        ["outside_alike", outside],
        *[["outside_named", outside, one["called"][:4]] for one in outside],
        ["incomplete", records["pieces"]],
        ["conditions"],
        ["condition_rank", word],
        *[["want_words", want, most] for want in records["wants"] for most in ("", "£4")],
    ]
    agree(page, pack, BOUND, FREE, asked)
