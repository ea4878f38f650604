"""Years are read as the examples of the EDTF specification explain them."""

import math
from datetime import date

import pytest

from identify.reference.years import YearsError, read_years
from tests.outside.data import read

EXAMPLES = read("edtf_examples.csv")
READ = [row for row in EXAMPLES if row["read"] == "yes"]
REFUSED = [row["example"] for row in EXAMPLES if row["read"] == "no"]


def decimal(day: date, later: int) -> float:
    """A day's beginning, or its end, as a decimal year."""
    length = date(day.year, 12, 31).timetuple().tm_yday
    return day.year + (day.timetuple().tm_yday - 1 + later) / length


def stated(text: str, later: int) -> float:
    """A bound as the table states it."""
    if text in ("open", "unknown"):
        return math.inf if later else -math.inf
    return decimal(date.fromisoformat(text), later)


@pytest.mark.parametrize("row", READ, ids=[row["example"] for row in READ])
def test_strict_bounds_are_those_stated(row: dict[str, str]) -> None:
    years = read_years(row["example"])
    assert years.first == pytest.approx(stated(row["first"], 0), abs=1e-9)
    assert years.last == pytest.approx(stated(row["last"], 1), abs=1e-9)


@pytest.mark.parametrize("row", READ, ids=[row["example"] for row in READ])
def test_only_qualified_dates_reach_further(row: dict[str, str]) -> None:
    years = read_years(row["example"])
    assert (years.earliest < years.first) == (row["qualified"] == "yes")
    assert (years.latest > years.last) == (row["qualified"] == "yes")


@pytest.mark.parametrize("row", READ, ids=[row["example"] for row in READ])
def test_unknown_ends_are_anywhere_and_open_ends_are_not(row: dict[str, str]) -> None:
    years = read_years(row["example"])
    assert (years.start[0] < years.start[1]) == (
        row["first"] == "unknown" or row["qualified"] == "yes"
    )
    assert (years.end[0] < years.end[1]) == (row["last"] == "unknown" or row["qualified"] == "yes")


@pytest.mark.parametrize("text", REFUSED)
def test_what_packs_do_not_use_is_refused_with_a_sentence(text: str) -> None:
    with pytest.raises(YearsError, match=r"^\".+\" (is not|names) .+\.$"):
        read_years(text)


def test_the_table_is_whole() -> None:
    assert len(READ) == 29
    assert len(REFUSED) == 8
