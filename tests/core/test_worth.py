"""The worth of a question in bits, against SciPy."""

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from scipy.stats import entropy as scipy_entropy

from identify.core.belief import believe, prepare
from identify.core.focus import by_variant, focus
from identify.core.session import answered
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


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_an_answer_brings_what_was_expected_of_it(data):
    """How likely "in no range" is with an answer, by the table of the question and by the answer
    itself. That says a little less: something else might have been said, of a relative of a row
    sooner than of the row.
    """
    pack = data.draw(packs())
    engine = prepare(pack)
    session = data.draw(sessions(pack))
    state = believe(engine, session)
    asked = {answer["feature"] for answer in session["answers"]}
    on_piece = [
        place
        for place, feature in enumerate(pack["features"])
        if feature["part"] < 0 and feature["id"] not in asked
    ]
    assume(state["rows"] and on_piece)
    for place in on_piece:
        feature = pack["features"][place]
        found = joint(engine, state, focus(state, by_variant(state)), place)
        *recorded, beyond = [
            [scale * p for p in view]
            for scale, view in zip(found["scales"], found["views"], strict=True)
        ]
        for a, one in enumerate(feature["states"]):
            told = {"feature": feature["id"], "how": "sure", "states": [one["id"]]}
            after = believe(engine, answered(session, told))
            odds = sum(after["unrecorded"]) / sum(after["chances"])
            expected = beyond[a] / sum(row[a] for row in recorded)
            assert 0.89 <= odds / expected <= 1.01
