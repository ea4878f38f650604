"""The check of fit: against every combination of answers, gone through one by one."""

from itertools import product
from math import prod

import pytest

from identify.core.belief import believe, prepare
from identify.core.certainty import how_replaced, how_sure
from identify.core.fit import fit_of, surprise
from identify.core.session import answered, new_session
from tests.table_packs import sharp, table_pack

STATES = {"a": ["x", "y", "z"], "b": ["x", "y"], "c": ["x", "y", "z", "w"]}
PACK = table_pack(
    STATES,
    [
        {name: sharp(states, "x") for name, states in STATES.items()},
        {name: sharp(states, "y") for name, states in STATES.items()},
    ],
    [0.5, 0.5],
    {"c": ("cover", 0.1)},
)


def seen(*answers: str):
    engine = prepare(PACK)
    session = new_session(engine)
    for feature, state in zip(STATES, answers, strict=False):
        session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
    return engine, session, believe(engine, session)


def chances(engine, name: str) -> list[float]:
    """Of each answer of the first row: read right or wrong, the part its own or another's."""
    place = list(STATES).index(name)
    rows = engine["sure"][place]
    own = [row[0] for row in rows]
    if name != "c":
        return own
    usual = PACK["backgrounds"][place][0]
    spare = [sum(p * share for p, share in zip(row, usual, strict=True)) for row in rows]
    return [0.9 * p + 0.1 * q for p, q in zip(own, spare, strict=True)]


@pytest.mark.parametrize("answers", list(product(*STATES.values())))
def test_the_tail_is_the_sum_over_all_that_is_as_surprising(answers):
    engine, session, state = seen(*answers)
    by_feature = [dict(zip(STATES[n], chances(engine, n), strict=True)) for n in STATES]
    limit = sum(surprise(each[a]) for each, a in zip(by_feature, answers, strict=True))
    expected = 0.0
    for other in product(*STATES.values()):
        ps = [each[a] for each, a in zip(by_feature, other, strict=True)]
        if sum(map(surprise, ps)) >= limit:
            expected += prod(ps)
    assert fit_of(engine, session, state, 0)["chance"] == pytest.approx(expected, abs=1e-12)


def test_what_does_not_fit_is_named():
    engine, session, state = seen("x", "y", "x")
    found = fit_of(engine, session, state, 0)
    assert (found["odd"], found["passed"]) == ([1], False)
    assert fit_of(*seen("x", "x", "x"), 0)["passed"]


def test_the_words_for_chances_go_down_with_them():
    words = [how_sure(p, False) for p in (0.96, 0.9, 0.7, 0.3)]
    assert words == ["almost certainly", "very likely", "probably", "could be"]
    assert how_sure(0.995, True) == "it is"
    assert how_sure(0.995, False) == "almost certainly", "it was not checked"
    assert how_sure(0.96, True) == "almost certainly"
    assert how_sure(0.9, True) == "very likely", "only what is nearly certain is said outright"


def test_a_part_is_probably_replaced_from_where_a_piece_probably_is_it():
    steps = [0.19, 0.2, 0.59, 0.6, 0.94, 0.95, 1.0]
    assert [how_replaced(chance) for chance in steps] == [
        "", "perhaps", "perhaps", "probably", "probably", "almost certainly", "almost certainly",
    ]  # fmt: skip
    assert how_sure(0.6, False) == "probably"
