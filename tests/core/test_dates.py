"""Dates in words come out as EDTF that the edtf library takes, and read back from their words."""

import pytest
from edtf import parse_edtf
from hypothesis import example, given, settings
from hypothesis import strategies as st

from identify.core.date_in_words import date_in_words
from identify.core.dates import figures_order, read_date, says_not_known
from identify.core.edtf import days_in, just_after, just_before, sides_of, written_edtf
from tests.written_dates import DAYS, SCRIBBLES, TWO_DAYS, WRITTEN

QUICK = settings(max_examples=400, deadline=None)
ANY_LIFE = {"first": 0, "last": 0}
REFUSED = {
    "31.2.1957": ("day", "February 1957 has 28 days."),
    "30 February 1960": ("day", "February 1960 has 29 days."),
    "1957-02-30": ("day", "February 1957 has 28 days."),
    "0.5.1957": ("day", "May 1957 has 31 days."),
    "before 31.2.1957": ("day", "February 1957 has 28 days."),
    "1975-13": ("month", "There is no month 13."),
    "32/13/57": ("month", "There is no month 13."),
    "13/57": ("month", "There is no month 13."),
    "1959-1957": ("reversed", "It ends before it begins. Put the earlier one first."),
    "1959/1957": ("reversed", "It ends before it begins. Put the earlier one first."),
    "June to May 1957": ("reversed", "It ends before it begins. Put the earlier one first."),
}
UNREAD = [
    "", "from him", "May", "not 1958", "12345", "1957 1958 1959", "../..", "/", "1/2/3", "model 57",
    "end of May 1957", "catalogue 12", "the catalogue 57", "before", "1957" * 30,
    "\u0661\u0669\u0665\u0667",
    " ".join(["1957 or"] * 40),
]  # fmt: skip


@pytest.mark.parametrize("text", WRITTEN)
def test_what_people_write(text):
    read = read_date(text, "", ANY_LIFE)
    assert read == {"edtf": WRITTEN[text], "problem": "", "why": "", "readings": []}


def test_that_it_is_not_known_is_understood():
    assert all(map(says_not_known, ["don't know", "Don\u2019t know", "unknown", "not sure", "?"]))
    assert not any(map(says_not_known, [*WRITTEN, *TWO_DAYS, *REFUSED, *UNREAD]))


@pytest.mark.parametrize("text", TWO_DAYS)
def test_two_days_are_refused_with_both_unless_the_order_is_known(text):
    read = read_date(text, "", ANY_LIFE)
    first, second = map(date_in_words, TWO_DAYS[text])
    assert (read["problem"], read["readings"]) == ("order", TWO_DAYS[text])
    assert read["why"] == f"It can be {first} or {second}."
    for order, edtf in zip(("day", "month"), TWO_DAYS[text], strict=True):
        assert read_date(text, order, ANY_LIFE)["edtf"] == edtf


@pytest.mark.parametrize("text", REFUSED)
def test_what_cannot_be_is_said(text):
    read = read_date(text, "day", ANY_LIFE)
    assert (read["problem"], read["why"]) == REFUSED[text]


@pytest.mark.parametrize("text", UNREAD)
def test_what_is_no_date_says_what_would_be_one(text):
    read = read_date(text, "day", ANY_LIFE)
    assert (read["edtf"], read["problem"]) == ("", "unread")
    assert read["why"].startswith("Write it like 1957")


def bounds(edtf):
    """The first and the last day of a date by the edtf library; open ends are None."""
    sides = [None if side in ("", "..") else parse_edtf(side) for side in sides_of(edtf)]
    first, last = sides[0], sides[-1]
    return first and first.lower_strict()[:3], last and last.upper_strict()[:3]


def whole(date, last):
    """The first or the last day of YYYY, YYYY-MM or YYYY-MM-DD; None for open."""
    if date == "":
        return None
    year, month, day = [*map(int, date.split("-")), 0, 0][:3]
    month = month or (12 if last else 1)
    return year, month, day or (days_in(year, month) if last else 1)


@pytest.mark.heavy
@QUICK
@given(SCRIBBLES, st.sampled_from(["day", "month", ""]))
@example("about winter 1957/58", "")
def test_whatever_is_typed_gives_edtf_or_a_sentence(text, order):
    read = read_date(text, order, ANY_LIFE)
    assert (read["edtf"] == "") == (read["problem"] != "") == read["why"].endswith(".")
    if read["edtf"] and "0000" not in read["edtf"]:
        parse_edtf(read["edtf"])
        date = written_edtf(read["edtf"])
        assert date["problem"] == ""
        assert bounds(read["edtf"]) == (whole(date["first"], False), whole(date["last"], True))


@QUICK
@given(SCRIBBLES)
@example("c. 1955 c. to 1955")
@example("1957~/1957?")
def test_what_was_understood_reads_back_from_its_words(text):
    """Seen in the words that a screen shows; ends that are unknown are shown as open ones."""
    edtf = read_date(text, "day", ANY_LIFE)["edtf"]
    if edtf:
        again = read_date(date_in_words(edtf), "", ANY_LIFE)
        assert again["problem"] == ""
        assert date_in_words(again["edtf"]) == date_in_words(edtf)


@QUICK
@given(
    DAYS,
    st.sampled_from(
        ["{0.day}.{0.month}.{0.year}", "{0:%Y-%m-%d}", "{0:%d %B %Y}", "{0:%b} {0.day}, {0.year}",
         "{0:%d. %b. %Y}", "{0:%d-%b-%Y}", "{0:%Y %B %d}"]
    ),
)  # fmt: skip
def test_a_day_reads_the_same_however_it_is_written(day, way):
    assert read_date(way.format(day), "", ANY_LIFE)["edtf"] == day.isoformat()


@pytest.mark.heavy
@QUICK
@given(DAYS, st.sampled_from("/-"))
def test_figures_read_right_once_the_order_is_known(day, sign):
    for order, text in (("day", f"{day:%d}{sign}{day:%m}"), ("month", f"{day:%m}{sign}{day:%d}")):
        figures = f"{text}{sign}{day.year}"
        assert read_date(figures, order, ANY_LIFE)["edtf"] == day.isoformat()
        told = "" if day.day == day.month else order if day.day > 12 else "either"
        assert figures_order(figures) == told


@given(DAYS)
def test_the_day_before_and_the_day_after(day):
    for width in (4, 7, 10):
        date = day.isoformat()[:width]
        assert just_before(date) < date < just_after(date)
        assert just_after(just_before(date)) == date == just_before(just_after(date))


@pytest.mark.parametrize(
    ("life", "edtf"), [((1905, 1930), "1912"), ((1932, 1972), "1912"), ((0, 0), "2012")]
)
def test_a_year_of_two_figures_is_in_the_life_of_the_range(life, edtf):
    assert read_date("'12", "", {"first": life[0], "last": life[1]})["edtf"] == edtf


@pytest.mark.parametrize(
    ("edtf", "words"),
    [
        ("1957-05-12", "12 May 1957"), ("1957-09-03~", "about 3 September 1957"),
        ("1957%", "perhaps about 1957"), ("195X", "the 1950s"), ("190X", "1900 to 1909"),
        ("19XX", "1900 to 1999"), ("1957-21", "spring 1957"), ("1957-XX", "1957"),
        ("1957-01/1957-04", "January to April 1957"), ("../1959", "1959 or earlier"),
        ("1957-05/..", "May 1957 or later"), ("1957~/1961~", "about 1957 to 1961"),
        ("1957~/1961", "from about 1957 to 1961"),
        ("soon", "soon"), ("", ""),
    ],
)  # fmt: skip
def test_dates_in_words(edtf, words):
    assert date_in_words(edtf) == words
