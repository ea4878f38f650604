"""Years: the spread over the candidates, and the likely span."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.belief import believe, prepare
from identify.core.session import new_session
from identify.core.year_chances import likely_years, years
from tests.table_packs import table_pack


def engine_with(spans, priors):
    rows = [{"a": [1.0]}] * len(priors)
    pack = table_pack({"a": ["x"]}, rows, priors)
    pack["range"].update(first=1950, last=1959)
    pack["spans"] = spans
    pack["rows"]["span"] = list(range(len(priors)))
    return prepare(pack)


def test_years_are_weighed_by_the_chance_of_the_issue():
    engine = engine_with(
        [{"first": 1951, "weights": [0.5, 0.5]}, {"first": 1952, "weights": [1.0]}], [0.8, 0.2]
    )
    found = years(engine, believe(engine, new_session(engine)))
    assert found["chances"] == [[1951, pytest.approx(0.4)], [1952, pytest.approx(0.6)]]
    assert (found["first"], found["last"]) == (1951, 1952)


def test_faint_years_are_left_out_of_the_earliest_and_latest():
    spans = [{"first": 1950, "weights": [0.005, 0.0, 0.0, 0.02, 0.955, 0.02]}]
    engine = engine_with(spans, [1.0])
    found = years(engine, believe(engine, new_session(engine)))
    assert [found[k] for k in ("earliest", "first", "last", "latest")] == [1953, 1954, 1954, 1955]


def test_no_candidate_has_no_years():
    engine = engine_with([{"first": 1951, "weights": [1.0]}], [1.0])
    session = new_session(engine)
    session["scope"]["items"] = ["unknown"]
    found = years(engine, believe(engine, session))
    assert found == {"chances": [], "first": 0, "last": 0, "earliest": 0, "latest": 0}


@given(st.lists(st.floats(0.0, 1.0), min_size=1, max_size=12).filter(lambda w: sum(w) > 0.1))
def test_the_likely_span_is_the_shortest_that_holds_nine_tenths(weights):
    chances = [[1950 + n, w / sum(weights)] for n, w in enumerate(weights)]
    first, last = likely_years(chances)

    def held(a, b):
        return sum(c for y, c in chances if a <= y <= b)

    assert held(first, last) >= 0.9 - 1e-6
    for a in range(1950, 1962):
        b = a + last - first - 1
        assert held(a, b) < 0.9 + 1e-6, "a shorter span would have done"
