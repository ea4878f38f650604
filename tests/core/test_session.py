"""Sessions: answers put in, taken back, and mended after a pack update."""

import copy

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.session import answered, mend, new_session, problem, undone, without
from tests.strategies import answers, packs, sessions
from tests.table_packs import table_pack

SURE = ("sure", "twice")
QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_an_answer_is_put_in_and_taken_back_and_nothing_else_changes(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    answer = data.draw(answers(pack["features"][0]))
    before = copy.deepcopy(session)
    after = answered(session, answer)
    assert session == before
    said = after["answers"][-1]
    before = [a for a in session["answers"] if a["feature"] == answer["feature"]]
    sure = [a["states"] for a in before if a["how"] in SURE]
    again = answer["how"] in SURE and answer["states"] in sure
    changed = answer["how"] in SURE and bool(sure) and not again
    looked = {"how": "twice"} if again else {"how": "sure", "changed": True} if changed else {}
    assert said == answer | looked
    assert undone(after) == without(session, answer["feature"])
    repeated = answered(after, answer)
    sure = answer["how"] == "sure"
    assert repeated["answers"][-1] == ({**answer, "how": "twice"} if sure else answer)
    assert repeated["answers"][:-1] == after["answers"][:-1]
    assert undone(new_session(prepare(pack))) == new_session(prepare(pack))


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_a_session_that_fits_is_left_alone(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    assert mend(prepare(pack), session) == {"session": session, "dropped": []}


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_after_a_pack_update_what_is_gone_is_named_and_the_rest_goes_on(data):
    old, new = data.draw(packs()), data.draw(packs())
    new["version"] = "v2"
    session = data.draw(sessions(old))
    engine = prepare(new)
    mended = mend(engine, session)
    kept = mended["session"]
    reasons = [d["reason"] for d in mended["dropped"]]
    assert kept["version"] == "v2"
    assert all(problem(engine, answer) == "" for answer in kept["answers"])
    answers_gone = sum(r in ("feature", "state", "how", "count") for r in reasons)
    assert len(kept["answers"]) + answers_gone == len(session["answers"])
    assert len(kept["missing"]) + reasons.count("part") == len(session["missing"])
    assert assess(engine, kept)["stop"] in ("", "sure", "nothing", "unseen", "unrecorded")


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({}, ""),
        ({"feature": "horns"}, "feature"),
        ({"states": ["copper"]}, "state"),
        ({"states": []}, "count"),
        ({"states": ["s0", "s0"], "how": "several"}, "count"),
        ({"states": ["s0"], "how": "other"}, "count"),
        ({"how": "perhaps"}, "how"),
    ],
)
def test_what_is_wrong_with_an_answer(change, code):
    pack = table_pack({"f0": ["s0", "s1"]}, [{"f0": []}], [1.0])
    answer = {"feature": "f0", "how": "sure", "states": ["s0"], **change}
    assert problem(prepare(pack), answer) == code
