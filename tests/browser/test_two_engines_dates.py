"""Dates in words in Python and compiled, in a real Chromium: the same reading of the same text."""

from collections.abc import Iterator

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.date_in_words import date_in_words
from identify.core.dates import read_date
from tests.browser.engines import agree, compiled
from tests.written_dates import DAYS, SCRIBBLES, TWO_DAYS, WRITTEN

FREE = {"read_date": read_date, "date_in_words": date_in_words}
LIVES = [{"first": 0, "last": 0}, {"first": 1905, "last": 1930}]


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    with compiled(browser) as page:
        yield page


def ask(page, pack, texts):
    """Have both engines read these texts in every order, and say what they understood."""
    asked = [
        ["read_date", text, order, life]
        for text in texts
        for order in ("", "day", "month")
        for life in LIVES
    ]
    asked += [["date_in_words", text] for text in texts]
    asked += [["date_in_words", read_date(text, "day", LIVES[0])["edtf"]] for text in texts]
    agree(page, pack, {}, FREE, asked)


def test_what_people_write(page, pellmarsh):
    ask(page, pellmarsh["pack"], [*WRITTEN, *TWO_DAYS])


@settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.lists(st.one_of(SCRIBBLES, DAYS.map("{:%d/%m/%Y}".format)), min_size=20, max_size=40))
def test_whatever_is_typed(page, pellmarsh, texts):
    ask(page, pellmarsh["pack"], texts)
