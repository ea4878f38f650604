"""Which of these is it? The portraits to choose from, and what a choice says."""

import random
from functools import cache

import pytest

from identify.core.assess import assess
from identify.core.belief import believe, prepare
from identify.core.pictures import (
    AT_A_GLANCE,
    CLOSE_UP,
    FAINT,
    MOST_LOOKS,
    MOST_PICTURES,
    PLAIN_TO_SEE,
    SEEN_TOO,
    WIDE_ONES,
    pictures,
)
from identify.core.portraits import portrait, sitting
from identify.core.reasons import variant_chances
from identify.core.rings import issues_of, state_of
from identify.core.session import answered, new_session
from identify.lab.pieces import piece
from tests.kept_site import compiled_demo_packs
from tests.table_packs import table_pack

PACKS = compiled_demo_packs()
ENGINES = {name: prepare(pack) for name, pack in PACKS.items()}
SHOWN = {name: sitting(pack) for name, pack in PACKS.items()}


@cache
def walk(name, seed):
    """On the way to an answer about a piece that the seed draws: it, the session, what it
    comes to, what is chosen from.
    """
    pack, engine = PACKS[name], ENGINES[name]
    found = piece(random.Random(seed), pack)
    session, way = new_session(engine), []
    for _ in range(8):
        view = assess(engine, session)
        if view["stop"] or view["question"] is None:
            break
        asked = view["question"]["feature"]
        way.append((found, session, view, pictures(engine, SHOWN[name], session, asked)))
        feature = pack["features"][view["question"]["feature"]]["id"]
        seen = {"feature": feature, "how": "sure", "states": [found.states[feature]]}
        session = answered(session, seen)
    return way


def drawn(name, variant, layers):
    """What a picture shows: the looks of the layers that are drawn of it."""
    told = portrait(PACKS[name], SHOWN[name], [variant], [])
    return {each["layer"]: each["look"] for each in told["layers"] if each["layer"] in layers}


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_pictures_differ_and_answer_for_that_and_for_nothing_else(name):
    pack, shown, met = PACKS[name], SHOWN[name], 0
    for seed in range(25):
        for _, session, _, found in walk(name, seed):
            if not found["pictures"]:
                continue
            met += 1
            assert 2 <= len(found["pictures"]) <= MOST_PICTURES
            assert 2 <= len(found["features"]) <= MOST_LOOKS
            told = {answer["feature"] for answer in session["answers"]}
            for feature in found["features"]:
                assert pack["features"][feature]["id"] not in told
                assert pack["features"][feature]["needs"] == "nothing"
                assert shown["layers"][feature] in found["layers"]
            seen = []
            for one in found["pictures"]:
                looks = drawn(name, one["variant"], found["layers"])
                for feature, states in zip(found["features"], one["states"], strict=True):
                    layer = shown["layers"][feature]
                    assert {shown["looks"][feature][state] for state in states} == {looks[layer]}
                seen.append([tuple(states) for states in one["states"]])
            assert len({str(each) for each in seen}) == len(seen)
            for place in range(len(found["features"])):
                assert len({each[place] for each in seen}) > 1
            assert set(found["layers"]) <= {*AT_A_GLANCE, *CLOSE_UP}
            if len(found["pictures"]) > WIDE_ONES:
                assert set(found["layers"]) <= set(AT_A_GLANCE)
            for feature, captioned in zip(found["features"], found["captioned"], strict=True):
                assert captioned == (shown["layers"][feature] not in PLAIN_TO_SEE)
    assert met > 5


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_the_true_picture_is_among_them_and_choosing_it_makes_its_variant_likelier(name):
    pack, engine, there, met = PACKS[name], ENGINES[name], 0, 0
    for seed in range(25):
        for true, session, _, found in walk(name, seed):
            if not found["pictures"]:
                continue
            met += 1
            for one in found["pictures"]:
                told = session
                for feature, states in zip(found["features"], one["states"], strict=True):
                    about = pack["features"][feature]
                    ids = [about["states"][state]["id"] for state in states]
                    if true.states[about["id"]] not in ids:
                        break
                    how = "several" if len(ids) > 1 else "sure"
                    told = answered(told, {"feature": about["id"], "how": how, "states": ids})
                else:
                    there += 1
                    variant = pack["rows"]["variant"][true.row]
                    chance = [
                        next(
                            (v["chance"] for v in assess(engine, s)["variants"] if
                             v["variant"] == variant),
                            0.0,
                        )
                        for s in (session, told)
                    ]  # fmt: skip
                    assert true.replaced or chance[1] > chance[0]
            break
    assert there > 0.75 * met > 3


@pytest.mark.heavy
def test_a_quick_question_that_tells_more_is_asked_in_words():
    """The same pictures beside the same question, were that looked at in no time at all."""
    for name, pack in PACKS.items():
        quick = {**pack, "features": [{**each, "seconds": 0.01} for each in pack["features"]]}
        engine, met, left = prepare(quick), 0, 0
        for seed in range(8):
            for _, session, view, found in walk(name, seed):
                if found["pictures"]:
                    met += 1
                    asked = view["question"]["feature"]
                    left += len(pictures(engine, SHOWN[name], session, asked)["pictures"]) > 0
        assert left < met / 2


def shared(name, session, found):
    """Of each picture: the candidates that look like it in all that is chosen by, with chances."""
    engine, features = ENGINES[name], found["features"]
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    least = max(FAINT, max(chances) / 50)
    for one in found["pictures"]:
        group = {}
        for variant in [v for v, chance in enumerate(chances) if chance >= least]:
            issues = issues_of(state, variant)
            seen = [state_of(engine, state, issues, feature) for feature in features]
            if all(each in states for each, states in zip(seen, one["states"], strict=True)):
                group[variant] = chances[variant]
        yield one["variant"], group


def can_be(name, variant, layer):
    """How it can look in a layer, likeliest first: [None] where it has no such thing."""
    told = portrait(PACKS[name], SHOWN[name], [variant], [])["layers"]
    return next((each["looks"] for each in told if each["layer"] == layer), [None])


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_what_variants_of_one_picture_do_not_share_is_not_drawn(name):
    """A shared picture shows nothing that a candidate behind it would contradict; what was seen on
    the piece, and the layers that are chosen by, are drawn all the same.
    """
    pack, shown, left_out = PACKS[name], SHOWN[name], 0
    for seed in range(25):
        for _, session, _, found in walk(name, seed):
            if not found["pictures"]:
                continue
            left_out += bool(set(AT_A_GLANCE) - set(found["layers"]))
            told = {answer["feature"] for answer in session["answers"]}
            kept = {
                layer
                for place, layer in enumerate(shown["layers"])
                if place in found["features"] or pack["features"][place]["id"] in told
            }
            for drawn_one, group in shared(name, session, found):
                assert drawn_one in group
                for layer in set(found["layers"]) - kept:
                    own = can_be(name, drawn_one, layer) or [""]
                    others = {v: can_be(name, v, layer) for v in group}
                    unlike = [v for v, looks in others.items() if looks and own[0] not in looks]
                    held = sum(group[v] for v in unlike if own[0])
                    assert held <= SEEN_TOO * sum(group.values()), (seed, layer, session)
    assert left_out > 0


def two_colours(one, other):
    """An engine of four equal things that differ in two features of this one layer and of that."""
    table = {"kind": ["thing"], "sides": ["green", "blue"], "second": ["green", "blue"]}
    rows = [
        {"kind": [1], "sides": sides, "second": second}
        for sides in ([1, 0], [0, 1])
        for second in ([1, 0], [0, 1])
    ]
    pack = table_pack(table, rows, [0.25] * 4)
    layers = {"kind": "", "sides": one, "second": other}
    for feature in pack["features"]:
        feature |= {"name": feature["id"], "layer": layers[feature["id"]]}
        for state in feature["states"]:
            state |= {"name": state["id"], "look": state["id"]}
    return prepare(pack)


def test_two_features_of_one_layer_are_told_apart_by_no_picture():
    """A portrait shows the first of them: four pictures would be two pairs of the same."""
    for layers, count in ((("colour", "base"), 4), (("colour", "colour"), 0)):
        engine = two_colours(*layers)
        found = pictures(engine, sitting(engine["pack"]), new_session(engine), -1)
        assert len(found["pictures"]) == count


@pytest.mark.heavy
def test_none_at_the_start_and_none_where_one_leads():
    for name, engine in ENGINES.items():
        session = new_session(engine)
        asked = assess(engine, session)["question"]["feature"]
        assert pictures(engine, SHOWN[name], session, asked)["pictures"] == []
        for seed in range(10):
            for _, _, view, found in walk(name, seed):
                if view["variants"][0]["chance"] >= 0.9:
                    assert found["pictures"] == []
