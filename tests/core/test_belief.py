"""The posterior: against the definition written out the long way, and what must always hold."""

from itertools import product
from math import prod
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from identify.core.belief import believe, prepare, prepare_with
from identify.core.donors import FOREIGN
from identify.core.misreading import ELSE_RECORDED, ELSE_UNRECORDED, channel
from identify.core.parts import suspects
from identify.core.session import answered, new_session
from tests.strategies import answers, packs, sessions
from tests.table_packs import sharp, table_pack

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))


def chance_of_answer(
    engine: dict[str, Any], place: int, answer: dict[str, Any], state: int
) -> float:
    """P(answer | state), straight from the definition."""
    feature = engine["pack"]["features"][place]
    if answer["how"] == "other":
        return ELSE_RECORDED
    rows = engine["unsure" if answer["how"] == "unsure" else "sure"][place]
    ids = [s["id"] for s in feature["states"]]
    return sum(rows[ids.index(a)][state] for a in answer["states"])


def came_from(pack: dict[str, Any], part: int, own: int, donor: int) -> float:
    """The chance that a part for a piece of the kind `own` is from one of the kind `donor`."""
    having = [set(f["kinds"]) for f in pack["features"] if f["part"] == part]
    wanted = [kinds for kinds in having if own in kinds]
    shares = dict.fromkeys(range(len(pack["kinds"])), 0.0)
    for kind, prior in zip(pack["rows"]["kind"], pack["rows"]["prior"], strict=True):
        shares[kind] += prior
    others = [
        k for k in shares if k != own and wanted and shares[k] and all(k in w for w in wanted)
    ]
    if not others:
        return float(donor == own)
    if donor == own:
        return 1 - FOREIGN
    return FOREIGN * shares[donor] / sum(shares[k] for k in others) if donor in others else 0.0


def by_enumeration(engine: dict[str, Any], session: dict[str, Any]) -> tuple[list, list, list]:
    """Chances of rows in scope, of unrecorded by kind, and of each part having been replaced,
    by adding up every way in which parts can have been swapped, and every kind of piece that the
    replacements can have come from.
    """
    pack = engine["pack"]
    told = [a for a in session["answers"] if a["how"] != "cannot"]
    ids = [f["id"] for f in pack["features"]]

    def like(place, answer, shares):
        if not shares:
            return None
        return sum(
            share * chance_of_answer(engine, place, answer, s) for s, share in enumerate(shares)
        )

    def anyhow(place, answer, kind):
        if answer["how"] == "other":
            return ELSE_UNRECORDED
        return like(place, answer, pack["backgrounds"][place][kind])

    scope = session["scope"]
    rows = []
    for i, variant in enumerate(pack["rows"]["variant"]):
        item = pack["items"][pack["variants"][variant]["item"]]
        kind = pack["kinds"][pack["rows"]["kind"][i]]["id"]
        if scope["kind"] in ("", kind) and (not scope["items"] or item["number"] in scope["items"]):
            rows.append(i)
    whole = sum(pack["rows"]["prior"][i] for i in rows)
    weights, beyond = [], [0.0] * len(pack["kinds"])
    replaced = [0.0] * len(pack["parts"])
    for i in rows:
        kind = pack["rows"]["kind"][i]
        prior = pack["rows"]["prior"][i] / whole
        beyond[kind] += (
            engine["unrecorded"]
            * prior
            * prod(anyhow(ids.index(a["feature"]), a, kind) for a in told)
        )
        weight = 0.0
        kinds = range(len(pack["kinds"]))
        for swapped in product([None, *kinds], repeat=len(pack["parts"])):
            chance = (1 - engine["unrecorded"]) * prior
            for p, part in enumerate(pack["parts"]):
                donor = swapped[p]
                own = donor is None
                chance *= 1 - part["swap"] if own else part["swap"]
                chance *= 1 if own else came_from(pack, p, kind, donor)
            for a in told:
                place = ids.index(a["feature"])
                part = pack["features"][place]["part"]
                cells = pack["cells"][place]
                own = like(place, a, cells["shares"][cells["codes"][i]])
                if part >= 0 and swapped[part] is not None:
                    own = anyhow(place, a, swapped[part])
                elif own is None:
                    own = anyhow(place, a, kind)
                chance *= own
            weight += chance
            for p, donor in enumerate(swapped):
                replaced[p] += 0.0 if donor is None else chance
        weights.append(weight)
    everything = sum(weights) + sum(beyond)
    return (
        [w / everything for w in weights],
        [b / everything for b in beyond],
        [r / sum(weights) for r in replaced],
    )


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_it_is_the_sum_over_every_way_of_swapping_parts(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    state = believe(engine, session)
    assume(state["rows"])
    chances, beyond, replaced = by_enumeration(engine, session)
    assert state["chances"] == pytest.approx(chances, rel=1e-9, abs=1e-12)
    assert state["unrecorded"] == pytest.approx(beyond, rel=1e-9, abs=1e-12)
    for suspect in suspects(engine, session, state):
        assert suspect["swapped"] == pytest.approx(replaced[suspect["part"]], rel=1e-9, abs=1e-12)


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_what_always_holds(data):
    pack = data.draw(packs())
    session = data.draw(sessions(pack))
    engine = prepare(pack)
    state = believe(engine, session)
    assert sum(state["chances"]) + sum(state["unrecorded"]) == pytest.approx(1)
    assert all(c > 0 for c in state["chances"]), "no answer may rule a row out for good"
    backwards = {**session, "answers": session["answers"][::-1]}
    assert believe(engine, backwards)["chances"] == pytest.approx(state["chances"])
    told = [a for a in session["answers"] if a["how"] != "cannot"]
    assert believe(engine, {**session, "answers": told}) == state


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_one_of_these_lies_between_its_states(data):
    pack = data.draw(packs())
    engine = prepare(pack)
    feature = pack["features"][0]
    answer = data.draw(answers(feature))
    assume(answer["how"] == "several")
    fresh = new_session(engine)
    together = believe(engine, answered(fresh, answer))["chances"]
    singly = [
        believe(engine, answered(fresh, {**answer, "how": "sure", "states": [s]}))["chances"]
        for s in answer["states"]
    ]
    for row, chance in enumerate(together):
        alone = [chances[row] for chances in singly]
        assert min(alone) - 1e-12 <= chance <= max(alone) + 1e-12


@pytest.mark.parametrize("error", [0.0, 0.03, 0.25])
@pytest.mark.parametrize("count", [1, 2, 5])
def test_a_state_is_answered_as_something(count, error):
    mistaken = [[0, 1]] if count > 1 else []
    rows = channel(count, mistaken, error)
    for s in range(count):
        assert sum(rows[a][s] for a in range(count)) == pytest.approx(1)
    if count == 5 and error:
        assert rows[1][0] == pytest.approx(4 * rows[2][0]), "a look-alike takes four shares"


COUPLED = table_pack(
    {"coupling": ["hook", "loop"], "livery": ["green", "blue"]},
    [
        {"coupling": sharp(["hook", "loop"], "hook"), "livery": sharp(["green", "blue"], "green")},
        {"coupling": sharp(["hook", "loop"], "loop"), "livery": sharp(["green", "blue"], "blue")},
    ],
    [0.5, 0.5],
    {"coupling": ("coupling", 0.1)},
)


def told(feature: str, state: str, how: str = "sure") -> dict[str, Any]:
    return {"feature": feature, "how": how, "states": [state] if state else []}


def test_a_contradiction_on_a_part_is_a_swapped_part_and_not_another_variant():
    engine = prepare(COUPLED)
    session = answered(new_session(engine), told("livery", "green"))
    session = answered(session, told("coupling", "loop"))
    state = believe(engine, session)
    green = 0.49 * 0.97 * (0.9 * 0.03 + 0.1 * 0.5)  # read right, and misread or replaced
    blue = 0.49 * 0.03 * (0.9 * 0.97 + 0.1 * 0.5)
    unrecorded = 0.02 * 0.5 * 0.5
    assert state["chances"][0] == pytest.approx(green / (green + blue + unrecorded))
    replaced = 0.49 * 0.97 * 0.1 * 0.5 + 0.49 * 0.03 * 0.1 * 0.5
    expected = replaced / (green + blue)
    assert suspects(engine, session, state)[0]["swapped"] == pytest.approx(expected)


def test_an_unsure_answer_says_less():
    engine = prepare(COUPLED)
    sure = believe(engine, answered(new_session(engine), told("livery", "green")))
    unsure = believe(engine, answered(new_session(engine), told("livery", "green", "unsure")))
    assert sure["chances"][0] > unsure["chances"][0] > 0.5


def test_something_else_speaks_for_a_piece_that_is_not_recorded():
    engine = prepare(COUPLED)
    state = believe(engine, answered(new_session(engine), told("livery", "", "other")))
    assert sum(state["unrecorded"]) > 0.3


def test_a_contradiction_with_no_reading_error_is_unrecorded_and_not_a_crash():
    exact = {"sure": 0.0, "unsure": 0.0, "unrecorded": 0.0}
    engine = prepare_with(
        table_pack({"a": ["x", "y"], "b": ["x", "y"]}, [{"a": [1.0, 0.0], "b": [0.0, 1.0]}], [1.0]),
        exact,
    )
    session = answered(new_session(engine), told("a", "x"))
    session = answered(session, told("b", "x"))
    state = believe(engine, session)
    assert (state["chances"], sum(state["unrecorded"])) == ([0.0], 1.0)


def test_a_hundred_answers_do_not_run_dry():
    """A product of a hundred small factors would be below the smallest number."""
    names = {f"f{n}": [f"s{k}" for k in range(8)] for n in range(200)}
    row = {name: sharp(states, "s0") for name, states in names.items()}
    other = {name: sharp(states, "s1") for name, states in names.items()}
    engine = prepare(table_pack(names, [row, other], [0.5, 0.5]))
    session = new_session(engine)
    for name in names:
        session = answered(session, told(name, "s2"))
    state = believe(engine, session)
    assert sum(state["chances"]) + sum(state["unrecorded"]) == pytest.approx(1)
