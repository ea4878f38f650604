"""EDTF texts as bounds in decimal years, and what is said of texts that are none."""

import math
import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.reference.years import YearsError, outside, read_years

INF = math.inf


@pytest.mark.parametrize(
    ("text", "start", "end"),
    [
        ("1957", (1957, 1957), (1958, 1958)),
        ("1957/1961", (1957, 1957), (1962, 1962)),
        ("1957~", (1956, 1958), (1957, 1959)),
        ("1957?", (1956, 1958), (1957, 1959)),
        ("1957%", (1955, 1959), (1956, 1960)),
        ("1957~/1961", (1956, 1958), (1962, 1962)),
        ("1957/1961?", (1957, 1957), (1961, 1963)),
        ("195X", (1950, 1950), (1960, 1960)),
        ("195X~", (1940, 1960), (1950, 1970)),
        ("195X/1961", (1950, 1960), (1962, 1962)),
        ("1951/195X", (1951, 1951), (1950, 1960)),
        ("../1959", (-INF, -INF), (1960, 1960)),
        ("1957/..", (1957, 1957), (INF, INF)),
        ("/1959", (-INF, 1960), (1960, 1960)),
        ("1957/", (1957, 1957), (1957, INF)),
        ("1957-01", (1957, 1957), (1957 + 31 / 365, 1957 + 31 / 365)),
        ("1956-03", (1956 + 60 / 366, 1956 + 60 / 366), (1956 + 91 / 366, 1956 + 91 / 366)),
    ],
)
def test_bounds(text: str, start: tuple[float, float], end: tuple[float, float]) -> None:
    years = read_years(text)
    assert years.start == pytest.approx(start, abs=1e-12)
    assert years.end == pytest.approx(end, abs=1e-12)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("1957/1951", '"1957/1951" ends before it begins. Put the earlier year first.'),
        ("1957-08/1957-03", '"1957-08/1957-03" ends before it begins. '),
        ("1957-13", '"1957-13" names a month or a day that does not exist.'),
        ("1957-21", '"1957-21" names a month or a day that does not exist.'),
        ("1957-02-29", '"1957-02-29" names a month or a day that does not exist.'),
        ("1956/1957-02-30", '"1957-02-30" names a month or a day that does not exist.'),
        ("1957-1961", '"1957-1961" is not a year or a span of years in EDTF. Write "1957/1961".'),
        ("1957\u201361", 'in EDTF. Write "1957/1961".'),
        ("1957/61", 'in EDTF. Write "1957/1961".'),
        ("c. 1957", 'in EDTF. Write "1957~".'),
        ("1950s", 'in EDTF. Write "195X".'),
        ("before 1957", 'in EDTF. Write "../1956".'),
        ("late fifties", 'in EDTF. Write "1956/1959".'),
        ("12 May 1957", 'in EDTF. Write "1957-05-12".'),
        ("spring 1957", "Write 1957, 1957~ (about)"),
        ("1957+", 'in EDTF. Write "1957/..".'),
        ("soon", "Write 1957, 1957~ (about), 1957? (uncertain), 1957/1961, 195X, ../1959 or"),
        ("1961-1957", "Write 1957, 1957~ (about)"),
        ("", '"" is not a year'),
        ("/", '"/" is not a year'),
        ("1957 / 1961", '"1957 / 1961" is not a year'),
        ("\u0661\u0669\u0665\u0667", "is not a year"),
        ("1" * 99, f'"{"1" * 40}…" is not a year'),
    ],
)
def test_what_is_wrong_is_said(text: str, said: str) -> None:
    with pytest.raises(YearsError) as error:
        read_years(text)
    assert said in str(error.value)


@pytest.mark.parametrize(
    ("text", "is_outside"),
    [
        ("1950/1959", False),
        ("1949/1955", True),
        ("1955/1960", True),
        ("1950~", False),
        ("1960", True),
        ("../1955", False),
        ("../1960", True),
        ("../..", False),
        ("195X", False),
        ("194X", True),
        ("19XX", False),
        ("195X/1960", True),
    ],
)
def test_outside_the_years_1950_to_1959(text: str, is_outside: bool) -> None:
    assert outside(text, 1950, 1960) is is_outside


PIECES = [
    "1957",
    "195X",
    "19XX",
    "/",
    "..",
    "-",
    "03",
    "13",
    "30",
    "XX",
    "~",
    "?",
    "%",
    "0000",
    " ",
]


@given(st.lists(st.sampled_from(PIECES), max_size=7).map("".join))
def test_any_text_is_read_or_refused_in_a_sentence(text: str) -> None:
    try:
        years = read_years(text)
    except YearsError as error:
        sentence = str(error)
    else:
        sentence = '"" reads.'
        assert years.earliest <= years.first < years.last <= years.latest
        assert years.start[0] <= years.start[1]
        assert years.end[0] <= years.end[1]
    assert re.fullmatch(r'".*" .+\.', sentence)
