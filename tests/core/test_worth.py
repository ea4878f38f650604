"""The worth of a question in bits, against SciPy."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scipy.stats import entropy as scipy_entropy

from identify.core.belief import believe, prepare
from identify.core.focus import by_variant, focus
from identify.core.worth import entropy, joint, worth
from tests.strategies import packs, sessions

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))


@QUICK
@given(st.lists(st.floats(0.001, 1), min_size=1, max_size=9))
def test_entropy_is_that_of_scipy(weights):
    chances = [w / sum(weights) for w in weights]
    assert entropy(chances) == pytest.approx(scipy_entropy(chances, base=2), abs=1e-9)


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_gain_is_mutual_information_by_scipy(data):
    """I(O;A) = H(O) + H(A) - H(O,A), each by scipy.stats.entropy."""
    pack = data.draw(packs())
    engine = prepare(pack)
    session = data.draw(sessions(pack))
    state = believe(engine, session)
    focused = focus(state, by_variant(state))
    for place, feature in enumerate(pack["features"]):
        found = joint(engine, state, focused, place)
        rows = [
            [scale * p for p in view]
            for scale, view in zip(found["scales"], found["views"], strict=True)
        ]
        table = [p for row in rows for p in row]
        assert {len(row) for row in rows} == {len(feature["states"])}
        outcomes = [sum(row) for row in rows]
        by_answer = [sum(column) for column in zip(*rows, strict=True)]
        assert outcomes == pytest.approx(focused["chances"], abs=1e-9)
        theirs = sum(scipy_entropy(p, base=2) for p in (outcomes, by_answer))
        theirs -= scipy_entropy(table, base=2)
        ours = worth(engine, state, focused, place)["bits"]
        assert ours == pytest.approx(theirs, abs=1e-9)
