"""Years of numbers: what each problem is, and what is right instead."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.dated_numbers import (
    check_digit,
    parts_of_year,
    read_applications,
    read_bars,
    read_series,
    whole_figures,
    years_meant,
)

# A made-up registry: a year has a hundred numbers, none was given from 300 to 499, and 900 was not
# reached by 1960.
ROWS = [
    [100, 1950, 0, 0], [200, 1951, 1950, 1], [300, 0, 1952, 0], [500, 1953, 1952, 0],
    [900, -1, 1960, 1],
]  # fmt: skip
BARS = {"twelve": [1970, 0], "thirteen": [1980, 1]}


@pytest.mark.parametrize(
    ("number", "first", "last", "memory", "row"),
    [
        (100, 1950, 1950, True, 0),
        (199, 1950, 1950, True, 0),
        (200, 1951, 1952, True, 1),
        (299, 1951, 1952, True, 1),
        (500, 1953, 1960, True, 3),
    ],
)
def test_years_between_the_rows(number, first, last, memory, row):
    found = read_series(ROWS, str(number))
    assert found["problem"] == ""
    keys = ("number", "first", "last", "memory", "row")
    assert [found[key] for key in keys] == [number, first, last, memory, row]


@pytest.mark.parametrize(
    ("figures", "problem", "near", "memory"),
    [
        ("1000", "long", [3], False),
        ("123456789", "long", [3], False),
        ("99", "low", [100, 1950], False),
        ("000", "low", [100, 1950], False),
        ("300", "unused", [300, 500], False),
        ("499", "unused", [300, 500], False),
        ("900", "beyond", [900, 1960], True),
        ("999", "beyond", [900, 1960], True),
    ],
)
def test_what_is_wrong_and_what_would_be_right(figures, problem, near, memory):
    found = read_series(ROWS, figures)
    assert [found["problem"], found["near"], found["memory"]] == [problem, near, memory]
    assert found["row"] == -1


def test_a_series_that_ended_for_good():
    assert read_series(ROWS[:3], "301")["near"] == [300, 0]


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("12150", "12150"), ("12,150", "12150"), ("1 234 567", "1234567"), ("1.234.567", "1234567"),
        ("1 50", ""), ("1234 567", ""), ("1,,234", ""), ("I50", ""), ("", ""),
    ],
)  # fmt: skip
def test_figures_parted_by_threes(text, figures):
    assert whole_figures(text) == figures


@pytest.mark.parametrize("text", ["12/09", "12 / 1909", "12 of 1909", "12OF09"])
def test_a_number_with_its_year(text):
    (found,) = read_applications(parts_of_year(text))
    assert (found["problem"], found["kind"], found["number"]) == ("", "application", 12)
    assert (found["first"], found["last"], found["memory"]) == (1909, 1909, False)


# Numbers began again each year from 1852 to 1978, so that two figures leave one year, two or none.
@pytest.mark.parametrize(
    ("year", "years"),
    [
        ("97", [1897]), ("79", [1879]), ("99", [1899]), ("00", [1900]), ("51", [1951]),
        ("52", [1852, 1952]), ("78", [1878, 1978]), ("1851", []), ("1979", []), ("1852", [1852]),
    ],
)  # fmt: skip
def test_the_century_that_two_figures_leave(year, years):
    assert years_meant(year) == years


def test_a_year_without_such_numbers_is_said():
    (found,) = read_applications(["12", "1979"])
    assert (found["problem"], found["near"]) == ("year", [1852, 1978])


@pytest.mark.parametrize(
    ("text", "kind", "first", "memory"),
    [
        ("5012345678900", "EAN-13", 1980, True),
        ("96385074", "EAN-8", 1980, True),
        ("0 12345-67890 5", "UPC-A", 1970, False),
        ("0012345678905", "UPC-A", 1970, False),
    ],
)
def test_barcodes(text, kind, first, memory):
    found = read_bars(BARS, text)
    keys = ("problem", "kind", "first", "last", "memory")
    assert [found[key] for key in keys] == ["", kind, first, 0, memory]


@pytest.mark.parametrize(
    ("text", "problem", "meant", "near"),
    [
        (" - ", "empty", "", []),
        ("5O12345678900", "letters", "5012345678900", []),
        ("bars", "letters", "", []),
        ("1234567", "count", "", []),
        ("5012345678907", "check", "", [0]),
    ],
)
def test_what_is_no_barcode(text, problem, meant, near):
    found = read_bars(BARS, text)
    assert [found["problem"], found["meant"], found["near"]] == [problem, meant, near]


bodies = st.sampled_from([7, 11, 12]).flatmap(
    lambda size: st.text("0123456789", min_size=size, max_size=size)
)


@given(st.text("0123456789", min_size=1, max_size=17))
def test_the_check_digit_makes_the_weighed_sum_a_whole_ten(body):
    figures = [int(c) for c in body + str(check_digit(body))]
    assert (sum(figures[::-1][::2]) + 3 * sum(figures[::-1][1::2])) % 10 == 0
    assert 0 <= figures[-1] <= 9


@given(bodies, st.data())
def test_one_wrong_figure_is_always_found(body, data):
    right = f"{body}{check_digit(body)}"
    assert read_bars(BARS, right)["problem"] == ""
    place = data.draw(st.integers(0, len(right) - 1))
    other = data.draw(st.sampled_from([each for each in "0123456789" if each != right[place]]))
    assert read_bars(BARS, right[:place] + other + right[place + 1 :])["problem"] == "check"


@given(bodies)
def test_zeros_in_front_do_not_change_the_check_digit(body):
    assert check_digit(body) == check_digit(body.zfill(13))


@given(st.integers(100, 899), st.integers(100, 899))
def test_a_higher_number_is_never_older(one, other):
    low, high = (read_series(ROWS, str(each)) for each in sorted((one, other)))
    if low["problem"] == high["problem"] == "":
        assert low["first"] <= high["first"]
