"""Dates as people write them come out as EDTF, or are refused in a sentence."""

import datetime

import pytest
from edtf import parse_edtf
from hypothesis import given
from hypothesis import strategies as st

from identify.exchange.dates import order_of, read_date
from identify.exchange.table import CellError
from tests.exchange.strategies import QUICK

READ = {
    "1957": "1957", "57": "1957", "'57": "1957", "about 1957": "1957~", "c.1957": "1957~",
    "c 1957": "1957~", "ca. 1957": "1957~", "circa 1957": "1957~", "1957?": "1957?",
    "1957 (?)": "1957?", "perhaps 1957": "1957?", "c. 1957?": "1957%", "um 1957": "1957~",
    "vers 1957": "1957~", "late 50s": "1956/1959", "early 1950s": "1950/1953",
    "mid-1950s": "1953/1957", "the 50s": "195X", "1950's": "195X", "c. 1950s": "195X~",
    "3/57": "1957-03", "3/1957": "1957-03", "03.1957": "1957-03", "12.5.1957": "1957-05-12",
    "1957-58": "1957/1958", "1957/8": "1957/1958", "1957 - 1959": "1957/1959",
    "between 1957 and 1959": "1957/1959", "1957 or 1958": "1957/1958", "1957 bis 1959": "1957/1959",
    "spring 1957": "1957-21", "Sommer 1957": "1957-22", "automne 1957": "1957-23",
    "Winter '57": "1957-24", "early 1957": "1957-01/1957-04", "May 1957": "1957-05",
    "12 May 1957": "1957-05-12", "May 12, 1957": "1957-05-12", "12th of May 1957": "1957-05-12",
    "12. Mai 1957": "1957-05-12", "1er mai 1957": "1957-05-01", "3 maart 1957": "1957-03-03",
    "May-June 1957": "1957-05/1957-06", "Xmas 1958": "1958-12", "before 1957": "../1957",
    "since 1957": "1957/..", "1957+": "1957/..", "pre-1960": "../1960", "1957-11": "1957-11",
    "1957-05-12": "1957-05-12", "1957-05-12 10:30": "1957-05-12", "195X": "195X",
    "1957/1961": "1957/1961", "../1959": "../1959", "12.5.05": "2005-05-12", "": "", "?": "",
    "unknown": "", "n/k": "", "13/5/57": "1957-05-13", "5/13/57": "1957-05-13",
}  # fmt: skip
REFUSED = {
    "31.2.1957": '"31.2.1957": February 1957 has 28 days.',
    "29.2.1957": '"29.2.1957": February 1957 has 28 days.',
    "30 February 1960": '"30 February 1960": February 1960 has 29 days.',
    "1975-13": '"1975-13": there is no month 13.',
    "1957-02-30": '"1957-02-30": there is no such day or month.',
    "0.5.1957": '"0.5.1957": May 1957 has 31 days.',
    "32/13/57": '"32/13/57": there is no month 13.',
    "1959-1957": '"1959-1957": it ends before it begins. Put the earlier one first.',
    "36500": '"36500" is how a spreadsheet counts days. Set the column\'s format to a date.',
    "12/5/57": '"12/5/57" can be two days: say whether the day or the month stands first in this '
    "column.",
    "from him": '"from him" is not a date that can be read. Write it like 1957, May 1957, 12 May '
    "1957 or about 1957.",
}
DAYS = st.dates(datetime.date(1900, 1, 1), datetime.date(2029, 12, 31))


@pytest.mark.parametrize("text", READ)
def test_what_people_write(text):
    assert read_date(text) == READ[text]


@pytest.mark.parametrize("text", REFUSED)
def test_what_cannot_be(text):
    with pytest.raises(CellError) as told:
        read_date(text)
    assert str(told.value) == REFUSED[text]


@pytest.mark.parametrize(("order", "date"), [("day", "1957-05-12"), ("month", "1957-12-05")])
def test_the_order_decides(order, date):
    assert read_date("12/5/57", order) == date


@QUICK
@given(
    DAYS,
    st.sampled_from(
        ["{0.day}.{0.month}.{0.year}", "{0:%Y-%m-%d}", "{0:%d %B %Y}", "{0:%b} {0.day}, {0.year}",
         "{0:%d. %b. %Y}"]
    ),
)  # fmt: skip
def test_a_day_reads_the_same_however_it_is_written(day, way):
    assert read_date(way.format(day)) == day.isoformat()


@QUICK
@given(DAYS, st.sampled_from("/-"))
def test_figures_read_right_once_the_order_is_known(day, sign):
    for order, text in (("day", f"{day:%d}{sign}{day:%m}"), ("month", f"{day:%m}{sign}{day:%d}")):
        assert read_date(f"{text}{sign}{day.year}", order) == day.isoformat()


@QUICK
@given(
    st.one_of(
        st.text(max_size=16),
        st.text("0123456789/.-~? XcaboutsprinJ'", max_size=14),
        st.sampled_from([*READ, *REFUSED]).map(lambda text: text + "?"),
    )
)
def test_whatever_is_typed_gives_edtf_or_a_sentence(text):
    try:
        date = read_date(text, "day")
    except CellError as error:
        date, sentence = "", str(error)
        assert sentence.endswith(".")
    if date:
        parse_edtf(date)


@QUICK
@given(st.lists(DAYS, min_size=40, max_size=60, unique=True))
def test_a_column_of_days_tells_its_order(days):
    assert order_of([f"{day:%d/%m/%Y}" for day in days]) in ("day", "ask")
    if any(day.day > 12 for day in days):
        assert order_of([f"{day:%d/%m/%Y}" for day in days]) == "day"
        assert order_of([f"{day:%m/%d/%y}" for day in days]) == "month"


def test_columns_that_tell_nothing_or_two_things():
    assert order_of(["1/2/57", "3/4/57"]) == "ask"
    assert order_of(["13/2/57", "3/14/57"]) == "mixed"
    assert order_of(["1957", "May 1957", "2/2/57"]) == ""
