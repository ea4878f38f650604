"""What is compared on a leader's portrait, and in what two pieces differ."""

import random
from functools import cache

import pytest

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.portraits import differences, sitting
from identify.core.rings import LEADING, MANY, odd_rings, rings
from identify.core.session import answered, new_session
from identify.lab.pieces import piece
from tests.kept_site import compiled_demo_packs

PACKS = compiled_demo_packs()
ENGINES = {name: prepare(pack) for name, pack in PACKS.items()}
SHOWN = {name: sitting(pack) for name, pack in PACKS.items()}


@cache
def walk(name, seed):
    """The sessions on the way to an answer about a piece that the seed draws, with their views."""
    pack, engine = PACKS[name], ENGINES[name]
    drawn = piece(random.Random(seed), pack)
    session = new_session(engine)
    sessions = []
    for _ in range(20):
        view = assess(engine, session)
        sessions.append((session, view))
        if view["stop"] or view["question"] is None:
            break
        feature = pack["features"][view["question"]["feature"]]
        answer = {"feature": feature["id"], "how": "sure", "states": [drawn.states[feature["id"]]]}
        session = answered(session, answer)
    return sessions


@pytest.mark.parametrize("seed", range(8))
@pytest.mark.parametrize("name", PACKS)
def test_rings_stand_on_the_leader_where_it_is_drawn_and_nothing_was_seen_yet(name, seed):
    pack = PACKS[name]
    for session, view in walk(name, seed):
        compared = rings(ENGINES[name], SHOWN[name], session)
        if not compared["rings"]:
            continue
        best = view["variants"][0]
        assert compared["variant"] == best["variant"]
        assert best["chance"] >= LEADING
        assert 2 <= len(compared["rings"]) <= MANY
        seen = {answer["feature"] for answer in session["answers"]}
        layers = [ring["layer"] for ring in compared["rings"]]
        assert len(set(layers)) == len(layers)
        for ring in compared["rings"]:
            feature = pack["features"][ring["feature"]]
            assert feature["id"] not in seen
            assert feature["needs"] == "nothing"
            assert feature["layer"] == ring["layer"]


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_what_fits_makes_the_leader_more_likely_and_ends_the_comparing(name):
    """All rings that fit are answers like any others: no ring is shown a second time."""
    met = 0
    for seed in range(12):
        for session, view in walk(name, seed):
            compared = rings(ENGINES[name], SHOWN[name], session)
            if not compared["rings"]:
                continue
            met += 1
            told = session
            for ring in compared["rings"]:
                feature = PACKS[name]["features"][ring["feature"]]
                state = feature["states"][ring["state"]]["id"]
                told = answered(told, {"feature": feature["id"], "how": "sure", "states": [state]})
            after = assess(ENGINES[name], told)
            assert after["variants"][0]["variant"] == compared["variant"]
            assert after["variants"][0]["chance"] > view["variants"][0]["chance"]
            again = {ring["feature"] for ring in rings(ENGINES[name], SHOWN[name], told)["rings"]}
            assert not again & {ring["feature"] for ring in compared["rings"]}
            break
    assert met > 5


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_no_more_rings_than_settle_it(name):
    """Fewer than there could be: where all of them fit, nothing is left to ask."""
    pack, engine, fewer = PACKS[name], ENGINES[name], 0
    for seed in range(30):
        for session, _ in walk(name, seed):
            compared = rings(engine, SHOWN[name], session)["rings"]
            told = session
            for place, ring in enumerate(compared):
                feature = pack["features"][ring["feature"]]
                state = feature["states"][ring["state"]]["id"]
                told = answered(told, {"feature": feature["id"], "how": "sure", "states": [state]})
                if 1 <= place < len(compared) - 1:
                    assert not assess(engine, told)["stop"]
            fewer += len(compared) == 2
    assert fewer > 3


def test_no_rings_where_nobody_leads_or_the_check_was_skipped():
    name = "pellmarsh"
    assert rings(ENGINES[name], SHOWN[name], new_session(ENGINES[name]))["rings"] == []
    for session, _ in walk(name, 3):
        skipped = {**session, "unchecked": True}
        assert rings(ENGINES[name], SHOWN[name], skipped)["rings"] == []


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_what_does_not_fit_is_looked_at_again_on_the_leaders_portrait(name):
    """Two answers turned into what the leader is not: rings stand where it was seen otherwise."""
    pack, engine, met = PACKS[name], ENGINES[name], 0
    for seed in range(30):
        session = [each for each, _ in walk(name, seed)][-1]
        wrong = []
        for answer in session["answers"][-2:]:
            states = next(f for f in pack["features"] if f["id"] == answer["feature"])["states"]
            other = next(s["id"] for s in states if s["id"] not in answer["states"])
            wrong.append({**answer, "states": [other]})
        told = {**session, "answers": [*session["answers"][:-2], *wrong]}
        found = odd_rings(engine, SHOWN[name], told)
        met += len(found["rings"]) > 0
        for ring in found["rings"]:
            feature = pack["features"][ring["feature"]]
            said = next(one for one in told["answers"] if one["feature"] == feature["id"])
            assert said["how"] == "sure"
            assert feature["states"][ring["state"]]["id"] not in said["states"]
    assert met > 0


def apart(name, one, other, answers=()):
    pack = PACKS[name]
    places = {each["id"]: n for n, each in enumerate(pack["variants"])}
    found = differences(pack, SHOWN[name], [places[one]], [places[other]], list(answers))
    named = {
        key: {
            pack["features"][each["feature"]]["id"]: tuple(
                pack["features"][each["feature"]]["states"][each[side]]["id"]
                for side in ("one", "other")
            )
            for each in found[key]
        }
        for key in found
    }
    return named["seen"], named["unseen"]


def test_two_candidates_differ_in_what_is_recorded_of_both():
    seen, unseen = apart("pellmarsh", "p51_a", "p51_b")
    assert seen == {}
    assert unseen == {"drive": ("powered", "free")}
    seen, unseen = apart("pellmarsh", "p1_a", "p1_b")
    assert seen == {"main_colour": ("blue", "black"), "emblem": ("roundel", "initials")}
    assert unseen == {}


def test_nothing_differs_from_itself():
    for name, pack in PACKS.items():
        for place in range(0, len(pack["variants"]), 9):
            found = differences(pack, SHOWN[name], [place], [place], [])
            assert found == {"seen": [], "unseen": []}


def test_what_was_seen_of_the_piece_in_hand_counts_before_its_record():
    seen = {"feature": "coupling", "how": "sure", "states": ["claw"]}
    found, _ = apart("pellmarsh", "p1_a", "p1_a", [seen])
    assert found == {"coupling": ("claw", "bar")}
