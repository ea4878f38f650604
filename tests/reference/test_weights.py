"""Year weights and shares of running changes, against values worked out by hand and by summing."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.ranges.weights import begun, in_millionths, year_weights
from identify.core.ranges.year_bounds import years_of_edtf
from identify.core.types.rows import WeighedYears
from identify.reference.years import Years, YearsError, outside, read_years

FIRST, LAST = 1950, 1959
STEPS = 400  # midpoints to a year


def weighed(said: tuple[tuple[float, str], ...]) -> list[WeighedYears]:
    return [{"trust": trust, "years": years_of_edtf(text)} for trust, text in said]


def weights(*said: tuple[float, str]) -> dict[int, float]:
    """The years with any weight."""
    found = year_weights(weighed(said), FIRST, LAST)
    return {FIRST + n: weight for n, weight in enumerate(found) if weight > 1e-12}


def came(year: int, *said: tuple[float, str]) -> float:
    return begun(year, weighed(said), FIRST, LAST)


def test_whole_years_weigh_the_same() -> None:
    assert weights((1, "1952/1955")) == pytest.approx(dict.fromkeys(range(1952, 1956), 0.25))


def test_months_weigh_by_their_days() -> None:
    # 31 December 1952 to 2 January 1953: one day and two, of a leap and of a common year.
    one, two = 1 / 366, 2 / 365
    expected = {1952: one / (one + two), 1953: two / (one + two)}
    assert weights((1, "1952-12-31/1953-01-02")) == pytest.approx(expected)


def test_a_decade_is_even() -> None:
    assert weights((1, "195X")) == pytest.approx(dict.fromkeys(range(1950, 1960), 0.1))


def test_about_begins_and_ends_softly() -> None:
    # Beginning evenly in [1954, 1956], ending evenly in [1956, 1958]: a trapezium 1/4 3/4 3/4 1/4.
    assert weights((1, "1955~/1956~")) == pytest.approx(
        {1954: 0.125, 1955: 0.375, 1956: 0.375, 1957: 0.125}
    )


def test_about_one_year() -> None:
    # Beginning in [1954, 1956], ending in [1955, 1957], independently of one another:
    # the integral of t/2 over [0, 1] is 1/4; of ((1 + t)/2)(1 - t/2) over [0, 1] is
    # 1/2 + 1/8 - 1/12 = 13/24; of (1 - t)/2 over [0, 1] is 1/4. Together 25/24.
    assert weights((1, "1955~")) == pytest.approx({1954: 6 / 25, 1955: 13 / 25, 1956: 6 / 25})


def test_open_ends_are_those_of_the_range() -> None:
    assert weights((1, "1958/..")) == pytest.approx({1958: 0.5, 1959: 0.5})
    assert weights((1, "../1951")) == pytest.approx({1950: 0.5, 1951: 0.5})


def test_an_unknown_end_is_anywhere_after() -> None:
    # Ends evenly in [1958, 1960]: 3/4 of 1958 was made, 1/4 of 1959.
    assert weights((1, "1958/")) == pytest.approx({1958: 0.75, 1959: 0.25})


def test_nothing_said_is_the_whole_life() -> None:
    assert weights() == pytest.approx(dict.fromkeys(range(1950, 1960), 0.1))


def test_sources_count_by_their_trust() -> None:
    mixed = weights((0.9, "1952/1953"), (0.3, "1953"))
    assert mixed == pytest.approx({1952: 0.375, 1953: 0.375 + 0.25})


def test_sources_of_no_trust_count_alike() -> None:
    assert weights((0, "1952"), (0, "1953")) == pytest.approx({1952: 0.5, 1953: 0.5})


@pytest.mark.parametrize(
    ("text", "year", "share"),
    [
        ("1953", 1952, 0.0),
        ("1953", 1953, 0.5),
        ("1953", 1954, 1.0),
        ("1953/1954", 1953, 0.25),
        ("1953/1954", 1954, 0.75),
        ("1953~", 1952, 1 / 6),
        ("1953~", 1953, 0.5),
        ("1953~", 1954, 5 / 6),
        ("1953-01", 1953, 1 - 31 / 365 / 2),
        ("1953-12", 1953, 31 / 365 / 2),
        ("../1950", 1950, 0.5),
        ("1958/..", 1959, 0.75),
    ],
)
def test_how_much_of_a_year_came_after_a_change(text: str, year: int, share: float) -> None:
    assert came(year, (1, text)) == pytest.approx(share)


def test_a_change_by_two_sources() -> None:
    assert came(1953, (0.9, "1953"), (0.3, "1955")) == pytest.approx(0.75 * 0.5)
    assert came(1954, (0.9, "1953"), (0.3, "1955")) == pytest.approx(0.75)


def possible(bound: tuple[float, float], t: float) -> float:
    """P(date <= t) with open ends at the range's."""
    low, high = (min(max(each, FIRST), LAST + 1) if math.isinf(each) else each for each in bound)
    return 1.0 if t >= high else 0.0 if t < low else (t - low) / (high - low)


def summed(years: Years) -> list[float]:
    """The weights again, by adding up small steps."""
    out = []
    for year in range(FIRST, LAST + 1):
        steps = [year + (n + 0.5) / STEPS for n in range(STEPS)]
        out.append(
            sum(possible(years.start, t) * (1 - possible(years.end, t)) for t in steps) / STEPS
        )
    return [each / sum(out) for each in out]


SIDES = ["1951", "1953~", "1955?", "1956%", "195X", "1954-06", "1957-11~", "1958", "1956-02-29"]
SPANS = st.one_of(
    st.sampled_from(SIDES),
    st.tuples(st.sampled_from(["", "..", *SIDES]), st.sampled_from(SIDES)).map("/".join),
    st.tuples(st.sampled_from(SIDES), st.sampled_from(["", "..", *SIDES])).map("/".join),
)


def readable(text: str) -> bool:
    try:
        return not outside(text, FIRST, LAST + 1) and bool(read_years(text))
    except YearsError:
        return False


@given(SPANS.filter(readable))
def test_closed_forms_agree_with_sums(text: str) -> None:
    years = read_years(text)
    found = year_weights(weighed(((1, text),)), FIRST, LAST)
    assert found == pytest.approx(summed(years), abs=0.01)


@given(st.lists(st.floats(0, 1000), min_size=1).filter(lambda each: sum(each) > 1e-3))
def test_millionths_add_up_and_stay_near(each: list[float]) -> None:
    rounded = in_millionths(each)
    assert sum(round(weight * 1e6) for weight in rounded) == 1_000_000
    for old, new in zip(each, rounded, strict=True):
        assert new == pytest.approx(old / sum(each), abs=1e-6)
        assert old > 0 or new == 0


def test_all_zero_stays_all_zero() -> None:
    assert in_millionths([0.0, 0.0]) == [0.0, 0.0]
