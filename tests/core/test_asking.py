"""The next question: its worth in bits, its order, and when to stop."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.asking import WORTH, questions
from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.focus import by_variant
from identify.core.reasons import never_recorded, why_not
from identify.core.session import answered, new_session
from tests.kept_site import compiled_demo_packs
from tests.strategies import packs, sessions
from tests.table_packs import sharp, table_pack

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
AB = ["a", "b"]


def told(feature: str, state: str) -> dict[str, Any]:
    return {"feature": feature, "how": "sure", "states": [state]}


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_only_what_is_open_is_asked(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    state = believe(engine, session)
    found = questions(engine, session, state, by_variant(state))
    done = {a["feature"] for a in session["answers"]}
    for entry in found["open"] + found["shut"]:
        feature = pack["features"][entry["feature"]]
        assert entry["bits"] >= WORTH
        assert feature["id"] not in done
        if feature["part"] >= 0:
            assert pack["parts"][feature["part"]]["id"] not in session["missing"]
    for entry in found["open"]:
        assert pack["features"][entry["feature"]]["needs"] in ["nothing", *session["able"]]
    scores = [entry["score"] for entry in found["open"]]
    assert scores == sorted(scores, reverse=True)


def pack_of_four() -> dict[str, Any]:
    """Four rows; `half` parts them two and two, `one` parts one from the rest."""
    rows = [
        {"half": sharp(AB, "a"), "one": sharp(AB, "a")},
        {"half": sharp(AB, "a"), "one": sharp(AB, "b")},
        {"half": sharp(AB, "b"), "one": sharp(AB, "b")},
        {"half": sharp(AB, "b"), "one": sharp(AB, "b")},
    ]
    return table_pack({"one": AB, "half": AB}, rows, [0.25] * 4)


def test_the_even_split_comes_first_unless_it_takes_too_long():
    pack = pack_of_four()
    engine = prepare(pack)
    assert assess(engine, new_session(engine))["question"]["feature"] == 1
    pack["features"][1]["seconds"] = 5.0
    assert assess(engine, new_session(engine))["question"]["feature"] == 0


def test_equal_questions_are_asked_in_the_order_of_the_pack():
    rows = [{"x": sharp(AB, s), "y": sharp(AB, s)} for s in AB]
    engine = prepare(table_pack({"x": AB, "y": AB}, rows, [0.5, 0.5]))
    view = assess(engine, new_session(engine))
    assert view["question"]["feature"] == 0
    assert [entry["feature"] for entry in view["others"]] == [1]


def test_it_stops_when_sure_and_says_what_cannot_be_told_apart():
    engine = prepare(pack_of_four())
    session = answered(answered(new_session(engine), told("half", "a")), told("one", "a"))
    assert assess(engine, session)["variants"][0]["variant"] == 0
    session = answered(answered(new_session(engine), told("half", "b")), told("one", "b"))
    view = assess(engine, session)
    assert (view["stop"], view["question"]) == ("nothing", None)
    assert sorted(view["alike"])[-2:] == [2, 3]


def test_what_needs_tools_is_named_and_not_asked():
    pack = pack_of_four()
    pack["features"][1]["needs"] = "body off"
    engine = prepare(pack)
    view = assess(engine, new_session(engine))
    assert view["question"]["feature"] == 0
    assert [(e["feature"], e["needs"]) for e in view["would_tell"]] == [(1, "body off")]
    able = {**new_session(engine), "able": ["body off"]}
    assert assess(engine, able)["question"]["feature"] == 1


def test_what_is_likelier_absent_is_not_asked():
    pack = pack_of_four()
    pack["features"][1]["none"] = 1
    engine = prepare(pack)
    session = answered(new_session(engine), told("one", "b"))
    assert assess(engine, session)["question"] is None
    assert assess(engine, new_session(engine))["question"]["feature"] == 1
    pack["features"][1]["none"] = -1
    assert assess(engine, session)["question"]["feature"] == 1, "seeing none is an answer"
    pack["features"][1]["kinds"] = []
    assert assess(engine, session)["question"] is None, "this kind has no such thing"


def test_the_reason_counts_what_each_answer_leaves():
    engine = prepare(pack_of_four())
    question = assess(engine, new_session(engine))["question"]
    assert question["groups"] == [{"state": 0, "variants": 4}, {"state": 1, "variants": 4}]
    assert question["expected"] == pytest.approx([0.5, 0.5])
    engine = prepare(pack_of_four())
    session = answered(answered(new_session(engine), told("half", "a")), told("one", "b"))
    against, neither = why_not(engine, session, 0)
    assert against["bits"] > 1
    assert neither["bits"] == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("states", "never"), [(["b"], True), (["a"], False), (["a", "b"], False)])
def test_what_no_variant_of_an_item_is_recorded_with(states, never):
    engine = prepare(pack_of_four())
    place = [feature["id"] for feature in engine["pack"]["features"]].index("half")
    how = "sure" if len(states) == 1 else "several"
    session = answered(new_session(engine), {"feature": "half", "how": how, "states": states})
    assert never_recorded(engine, session, 0, place) is never
    assert not never_recorded(engine, new_session(engine), 0, place), "it was not looked at"


def test_an_empty_scope_is_not_in_the_reference():
    engine = prepare(pack_of_four())
    session = new_session(engine)
    session["scope"]["items"] = ["no such number"]
    view = assess(engine, session)
    assert (view["stop"], view["unrecorded"], view["variants"]) == ("unrecorded", 1.0, [])


def test_the_kind_that_was_chosen_is_an_answer_and_is_not_asked_again():
    engine = prepare(compiled_demo_packs()["pellmarsh"])
    session = new_session(engine)
    session["scope"] = {"kind": "wagon", "items": []}
    state = believe(engine, session)
    asked = questions(engine, session, state, by_variant(state))
    places = [entry["feature"] for entry in asked["open"] + asked["shut"]]
    assert "kind" not in [engine["pack"]["features"][place]["id"] for place in places]
    wagons = [kind["id"] == "wagon" for kind in engine["pack"]["kinds"]]
    others = [chance for chance, ours in zip(state["unrecorded"], wagons, strict=True) if not ours]
    assert sum(others) < 0.1 * sum(state["unrecorded"])
    told_too = believe(engine, answered(session, told("kind", "wagon")))
    assert state["chances"] == pytest.approx(told_too["chances"])
