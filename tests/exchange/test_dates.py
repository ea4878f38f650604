"""Dates in lists: read by the core, refused in a sentence, and a column tells its order."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.importing.cell_dates import order_of_dates, read_when
from tests.exchange.strategies import QUICK
from tests.written_dates import DAYS, SCRIBBLES, TWO_DAYS, WRITTEN

REFUSED = {
    "31.2.1957": '"31.2.1957" is not a date that can be read. February 1957 has 28 days.',
    "1975-13": '"1975-13" is not a date that can be read. There is no month 13.',
    "1959-1957": '"1959-1957" is not a date that can be read. It ends before it begins. Put the '
    "earlier one first.",
    "36500": '"36500" is how a spreadsheet counts days. Set the column\'s format to a date.',
    "12/5/57": '"12/5/57" can be 12 May 1957 or 5 December 1957. Say whether the day or the month '
    "comes first in this column.",
    "from him": '"from him" is not a date that can be read. Write it like 1957, May 1957, 12 May '
    "1957, about 1957 or 1957 to 1961.",
}


@pytest.mark.parametrize("text", WRITTEN)
def test_what_people_write(text):
    assert read_when(f" {text},", "")["value"] == WRITTEN[text]


@pytest.mark.parametrize("text", ["", " ", "?", "unknown", "N/K", "n.d.", "unbekannt"])
def test_what_says_that_nothing_is_known(text):
    assert (read_when(text, "")["value"], read_when(text, "")["wrong"]) == ("", "")


@pytest.mark.parametrize("text", REFUSED)
def test_what_cannot_be(text):
    assert read_when(text, "")["wrong"] == REFUSED[text]


@pytest.mark.parametrize("text", TWO_DAYS)
def test_the_order_decides(text):
    assert [read_when(text, order)["value"] for order in ("day", "month")] == TWO_DAYS[text]


@QUICK
@given(SCRIBBLES)
def test_whatever_is_typed_gives_a_date_or_a_sentence(text):
    read = read_when(text, "day")
    assert read["wrong"] == "" or (read["wrong"].endswith(".") and read["value"] == "")


@QUICK
@given(st.lists(DAYS, min_size=40, max_size=60, unique=True))
def test_a_column_of_days_tells_its_order(days):
    assert order_of_dates([f"{day:%d/%m/%Y}" for day in days]) in ("day", "ask")
    if any(day.day > 12 for day in days):
        assert order_of_dates([f"{day:%d/%m/%Y}" for day in days]) == "day"
        assert order_of_dates([f"{day:%m/%d/%y}" for day in days]) == "month"


def test_columns_that_tell_nothing_or_two_things():
    assert order_of_dates(["1/2/57", "3/4/57"]) == "ask"
    assert order_of_dates(["13/2/57", "3/14/57"]) == "mixed"
    assert order_of_dates(["1957", "May 1957", "2/2/57"]) == ""
