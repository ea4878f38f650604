"""The posterior: against the definition written out the long way, and what must always hold."""

from functools import cache
from itertools import product
from math import prod
from typing import Any

import pytest
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from identify.core.belief import believe, prepare, prepare_with
from identify.core.donors import FOREIGN
from identify.core.kin import ALL_SAME, NEW, NUMBERED, RELATIVES, STRANGERS
from identify.core.misreading import (
    ELSE_RECORDED,
    ELSE_REPLACED,
    ELSE_UNRECORDED,
    channel,
    usual_errors,
)
from identify.core.parts import suspects
from identify.core.session import answered, new_session
from tests.strategies import answers, packs, sessions
from tests.table_packs import EXACT, sharp, table_pack

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))


def chance_of_answer(
    engine: dict[str, Any], place: int, answer: dict[str, Any], shares: list[float], other: float
) -> float:
    """P(answer | states by these shares, so much "something else" there), from the definition."""
    if answer["how"] == "other":
        return other * sum(shares)
    feature = engine["pack"]["features"][place]
    rows = engine[{"several": "sure"}.get(answer["how"], answer["how"])][place]
    ids = [s["id"] for s in feature["states"]]
    read = [sum(rows[ids.index(a)][s] for a in answer["states"]) for s in range(len(ids))]
    return (1 - other) * sum(share * p for share, p in zip(shares, read, strict=True))


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


def strange(pack: dict[str, Any], place: int, kind: int) -> list[float]:
    """What a piece in no range shows where it differs: half the background, half anything."""
    usual = pack["backgrounds"][place][kind]
    feature = pack["features"][place]
    drawn = [s for s in range(len(usual)) if s != feature["none"]]
    some = NEW if kind in feature["kinds"] and drawn else 0
    return [(1 - some) * p + (some / len(drawn) if s in drawn else 0) for s, p in enumerate(usual)]


def other_states(pack: dict[str, Any], place: int, state: int) -> list[float]:
    """The share of each other state where a relative differs from this one: half as usual as it is
    with the kinds that have the feature, half any that is drawn.
    """
    held = dict.fromkeys(range(len(pack["kinds"])), 0.0)
    for kind, prior in zip(pack["rows"]["kind"], pack["rows"]["prior"], strict=True):
        held[kind] += prior
    having = pack["features"][place]["kinds"]
    each = [[held[k] * share for share in strange(pack, place, k)] for k in having]
    shares = [sum(column) * (s != state) for s, column in enumerate(zip(*each, strict=True))]
    if sum(shares):
        return [share / sum(shares) for share in shares]
    if len(shares) == 1:
        return [1.0]
    return [(s != state) / (len(shares) - 1) for s in range(len(shares))]


def in_scope(pack: dict[str, Any], scope: dict[str, Any]) -> list[int]:
    """The rows that the search is limited to."""
    out = []
    for i, variant in enumerate(pack["rows"]["variant"]):
        item = pack["items"][pack["variants"][variant]["item"]]
        kind = pack["kinds"][pack["rows"]["kind"][i]]["id"]
        if scope["kind"] in ("", kind) and (not scope["items"] or item["number"] in scope["items"]):
            out.append(i)
    return out


def beyond(engine: dict[str, Any], place: int, answer: dict[str, Any], kind: int) -> float:
    """P(answer | a stranger of this kind)."""
    shares = strange(engine["pack"], place, kind)
    return chance_of_answer(engine, place, answer, shares, ELSE_UNRECORDED)


def elsewhere(engine: dict[str, Any], place: int, answer: dict[str, Any], kind: int) -> float:
    """P(answer | any piece of this kind)."""
    usual = engine["pack"]["backgrounds"][place][kind]
    return chance_of_answer(engine, place, answer, usual, ELSE_REPLACED)


def own(  # noqa: PLR0917
    engine: dict[str, Any], place: int, answer: dict[str, Any], row: int, kind: int, relative: int
) -> float:
    """P(answer | a row, or a relative of it of this sort, each part its own)."""
    pack = engine["pack"]
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    if not shares:
        return elsewhere(engine, place, answer, kind)
    whole = 0.0
    for state, share in enumerate(shares):
        just = [float(s == state) for s in range(len(shares))]
        rate = pack["features"][place]["differs"][relative - 1][state] if relative else 0.0
        off = other_states(pack, place, state)
        same = chance_of_answer(engine, place, answer, just, ELSE_RECORDED)
        differs = chance_of_answer(engine, place, answer, off, ELSE_UNRECORDED)
        whole += share * ((1 - rate) * same + rate * differs)
    return whole


def differs_in_nothing(pack: dict[str, Any], row: int, relative: int) -> float:
    """The chance that a relative of this sort is as the row is recorded, feature by feature."""
    out = 1.0
    for feature, cells in zip(pack["features"], pack["cells"], strict=True):
        shares = cells["shares"][cells["codes"][row]]
        there = [s for s, share in enumerate(shares) if share]
        out *= min((1 - feature["differs"][relative - 1][s] for s in there), default=1)
    return 0.0 if out > ALL_SAME else out


def by_enumeration(engine: dict[str, Any], session: dict[str, Any]) -> tuple[list, ...]:
    """Chances of the rows in scope, of each sort of relatives of theirs, of strangers by kind, and
    of each part having been replaced, by adding up every way in which parts can have been swapped,
    and every kind of piece that the replacements can have come from.
    """
    pack = engine["pack"]
    ids = [f["id"] for f in pack["features"]]
    told = [(ids.index(a["feature"]), a) for a in session["answers"] if a["how"] != "cannot"]
    rows = in_scope(pack, session["scope"])

    @cache
    def spare(part, donor):
        """P(answers on a part | it is from a piece of this kind)."""
        on = [(f, a) for f, a in told if pack["features"][f]["part"] == part]
        singly = prod(elsewhere(engine, f, a, donor) for f, a in on)
        alike = [i for i in rows if pack["rows"]["kind"][i] == donor]
        if not alike:
            return singly
        priors = [pack["rows"]["prior"][i] for i in alike]
        each = [prod(own(engine, f, a, i, donor, 0) for f, a in on) for i in alike]
        together = sum(p * w for p, w in zip(priors, each, strict=True)) / sum(priors)
        return (singly + together) / 2

    whole = sum(pack["rows"]["prior"][i] for i in rows)
    weights: list[list[float]] = [[] for _ in (0, *RELATIVES)]
    strangers = [0.0] * len(pack["kinds"])
    replaced = [0.0] * len(pack["parts"])
    for i in rows:
        kind = pack["rows"]["kind"][i]
        prior = pack["rows"]["prior"][i] / whole
        share = pack["kinds"][kind]["open"] * (NUMBERED if session["scope"]["items"] else 1)
        strangers[kind] += (
            share * STRANGERS * prior * prod(beyond(engine, f, a, kind) for f, a in told)
        )
        priors = [1 - share, *(share * sort for sort in RELATIVES)]
        for relative in range(len(priors)):
            same = differs_in_nothing(pack, i, relative) if relative else 0.0
            weight = 0.0
            kinds = range(len(pack["kinds"]))
            for swapped in product([None, *kinds], repeat=len(pack["parts"])):
                chance = priors[relative] * prior / (1 - same)
                for p, part in enumerate(pack["parts"]):
                    donor = swapped[p]
                    chance *= 1 - part["swap"] if donor is None else part["swap"]
                    chance *= 1 if donor is None else came_from(pack, p, kind, donor)
                for part, donor in enumerate(swapped):
                    if donor is not None:
                        chance *= spare(part, donor)
                kept = [
                    (place, answer)
                    for place, answer in told
                    if (part := pack["features"][place]["part"]) < 0 or swapped[part] is None
                ]
                row = prod(own(engine, place, answer, i, kind, 0) for place, answer in kept)
                near = prod(own(engine, place, answer, i, kind, relative) for place, answer in kept)
                chance *= near - same * row
                weight += chance
                if relative == 0:
                    for p, donor in enumerate(swapped):
                        replaced[p] += 0.0 if donor is None else chance
            weights[relative].append(weight)
    everything = sum(map(sum, weights)) + sum(strangers)
    chances, *kin = ([w / everything for w in each] for each in weights)
    return (
        chances,
        kin,
        [b / everything for b in strangers],
        [r / sum(weights[0]) for r in replaced],
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
    chances, kin, strangers, replaced = by_enumeration(engine, session)
    assert state["chances"] == pytest.approx(chances, rel=1e-9, abs=1e-12)
    for sort, relatives in zip(state["kin"], kin, strict=True):
        assert sort == pytest.approx(relatives, rel=1e-9, abs=1e-12)
    assert state["strangers"] == pytest.approx(strangers, rel=1e-9, abs=1e-12)
    for k, chance in enumerate(state["unrecorded"]):
        alike = [j for j, kind in enumerate(state["kinds"]) if kind == k]
        relatives = sum(sort[j] for sort in state["kin"] for j in alike)
        assert chance == pytest.approx(relatives + state["strangers"][k], rel=1e-9, abs=1e-12)
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
    answer = data.draw(answers(pack["features"][0], ["several"]))
    engine = prepare(pack)
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
    """In a world where all is recorded and drawn, so that it can be worked out by hand."""
    engine = prepare_with(COUPLED, {**usual_errors(), "unrecorded": 0.0, "drawn_all": 1.0})
    session = answered(new_session(engine), told("livery", "green"))
    session = answered(session, told("coupling", "loop"))
    state = believe(engine, session)
    green = 0.5 * 0.97 * (0.9 * 0.03 + 0.1 * 0.5)  # read right, and misread or replaced
    blue = 0.5 * 0.03 * (0.9 * 0.97 + 0.1 * 0.5)
    assert state["chances"][0] == pytest.approx(green / (green + blue))
    replaced = 0.5 * 0.97 * 0.1 * 0.5 + 0.5 * 0.03 * 0.1 * 0.5
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
    before = sum(believe(engine, new_session(engine))["unrecorded"])
    assert sum(state["unrecorded"]) > 2 * before


def test_a_contradiction_with_no_reading_error_is_unrecorded_and_not_a_crash():
    exact = EXACT
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
