"""The verdict: chances by going through every collection it could be, and when to stop for it."""

import copy

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.deciding import assess_for
from identify.core.reasons import variant_chances
from tests.core import worlds
from tests.sampling import sample
from tests.strategies import collections, hands, packs, pieces, sessions

pytestmark = pytest.mark.heavy

QUICK = settings(
    max_examples=sample(150, 50), deadline=None, suppress_health_check=list(HealthCheck)
)
NO_HAND = {"condition": "", "boxed": "", "asked": None}
NOTHING = {"pieces": [], "wants": []}
EXCLUSIVE = ["same", "other", "new", "unrecorded"]


@QUICK
@given(st.data())
def test_the_verdict_is_that_of_every_collection_it_could_be(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack, 4))
    hand = data.draw(hands())
    engine = prepare(pack)
    session = data.draw(sessions(pack))
    chances = variant_chances(engine, believe(engine, session))
    found = assess_for(engine, session, records, hand)["verdict"]
    by_variant = worlds.outcomes(pack, records)
    for name in ["same", "other", "new"]:
        theirs = sum(p * o[name] for p, o in zip(chances, by_variant, strict=True))
        assert found[name] == pytest.approx(theirs, abs=1e-9), name
    assert sum(found[name] for name in EXCLUSIVE) == pytest.approx(1, abs=1e-9)
    better = worlds.upgrades(pack, records, hand)
    assert found["upgrade"] == pytest.approx(
        sum(p * u for p, u in zip(chances, better, strict=True)), abs=1e-9
    )
    wanted = worlds.wanted(pack, records, hand)
    for name, words in [("wanted", ["yes", "dear"]), ("dear", ["dear"])]:
        theirs = sum(p for p, w in zip(chances, wanted, strict=True) if w in words)
        assert found[name] == pytest.approx(theirs, abs=1e-9)
    theirs = 0.0
    for p, o, w in zip(chances, by_variant, wanted, strict=True):
        theirs += p * o["same"] if w == "no" else 0
    assert found["double"] == pytest.approx(theirs, abs=1e-9)
    adds = worlds.completes(pack, records)
    theirs = sum(p * o["new"] for p, o, a in zip(chances, by_variant, adds, strict=True) if a)
    assert found["completes"] == pytest.approx(theirs, abs=1e-9)


@QUICK
@given(st.data())
def test_one_piece_more_never_makes_it_newer(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack))
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    more = {**records, "pieces": [*records["pieces"], data.draw(pieces(pack))]}
    before = assess_for(engine, session, records, NO_HAND)["verdict"]
    after = assess_for(engine, session, more, NO_HAND)["verdict"]
    assert after["new"] <= before["new"] + 1e-12
    assert after["same"] >= before["same"] - 1e-12


@QUICK
@given(st.data())
def test_the_trash_changes_nothing(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack))
    hand = data.draw(hands())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    kept = {name: [r for r in records[name] if not r["trashed"]] for name in records}
    assert assess_for(engine, session, records, hand) == assess_for(engine, session, kept, hand)


@QUICK
@given(st.data())
def test_records_are_left_as_they_are(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack))
    before = copy.deepcopy(records)
    engine = prepare(pack)
    assess_for(engine, data.draw(sessions(pack)), records, data.draw(hands()))
    assert records == before


@QUICK
@given(st.data())
def test_without_records_the_view_is_that_of_assess(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    view = assess_for(engine, session, NOTHING, data.draw(hands()))
    found = view.pop("verdict")
    assert view == assess(engine, session)
    assert found["new"] == pytest.approx(1 - found["unrecorded"], abs=1e-9)


@settings(QUICK, max_examples=sample(600, 100))
@given(st.data())
def test_it_never_stops_while_two_candidates_would_mean_different_things(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack, 4))
    hand = data.draw(hands())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    view = assess_for(engine, session, records, hand)
    chances = variant_chances(engine, believe(engine, session))
    order = sorted(range(len(chances)), key=lambda v: -chances[v])
    held = [sum(chances[v] for v in order[:n]) for n in range(len(order))]
    left = [v for v, before in zip(order, held, strict=True) if before < 0.95]
    if not view["verdict"]["settled"]:
        assert view["stop"] != "verdict"
        return
    by_variant = worlds.outcomes(pack, records)
    better = worlds.upgrades(pack, records, hand)
    flags = zip(worlds.wanted(pack, records, hand), worlds.completes(pack, records), strict=True)
    assert len({flag for v, flag in enumerate(flags) if v in left}) == 1
    for values in ([o["same"] for o in by_variant], [o["new"] for o in by_variant], better):
        told = [values[v] for v in left]
        assert max(told) - min(told) <= 0.1 + 1e-9
    assert sum(chances[v] for v in left) >= 0.95
    assert view["question"] is None or view["question"]["about"] != "verdict"


@QUICK
@given(st.data())
def test_a_question_about_the_verdict_says_what_each_answer_would_mean(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack))
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    view = assess_for(engine, session, records, NO_HAND)
    question = view["question"]
    if question is None or question["about"] != "verdict":
        return
    for mean in question["means"]:
        assert sum(mean[name] for name in EXCLUSIVE) == pytest.approx(1, abs=1e-9)
    for name in EXCLUSIVE:
        told = zip(question["expected"], question["means"], strict=True)
        theirs = sum(p * mean[name] for p, mean in told)
        assert theirs == pytest.approx(view["verdict"][name], abs=0.001)
