"""What is said of a seller's year, over random looks at pieces: it never contradicts the years
that are shown, a true year is hardly ever called unlikely, and a wrong one is noticed.

The aim: a true year called unlikely or worse in at most 3 %; a false one, four years and more from
all in which such pieces were made, noticed in at least 90 % once the app is sure.
"""

import random
from functools import cache
from typing import Any

import msgspec
import pytest

from identify.core.belief import believe, prepare
from identify.core.claim import row_shares, verdict_on, weigh_claim
from identify.core.reasons import variant_chances
from identify.core.session import answered, new_session
from identify.core.year_chances import years
from identify.reference.compile import compile_pack
from tests.open_world.judge import SAID, said, share
from tests.open_world.leaving import demo
from tests.open_world.world import Conditions, World

pytestmark = pytest.mark.heavy

NAMES = ("pellmarsh", "tarrowby")
PIECES = 150
BEYOND = ("unlikely", "ruled out")
CONDITIONS = {"as declared": Conditions(), "twice": Conditions(misread=0.06, swaps=2.0)}


@cache
def world(name: str) -> World:
    """The full pack, to draw pieces from."""
    return World(msgspec.to_builtins(compile_pack(demo(name))))


def looks(rng: random.Random, found: World, engine: dict[str, Any], like: Conditions):
    """A piece drawn, some of its features looked at: the year it was made in, the first and last
    in which its issue was, and the session.
    """
    piece = found.piece(rng, list(range(len(found.kinds))), like)
    span = found.pack["spans"][found.pack["rows"]["span"][piece.row]]
    [at] = rng.choices(range(len(span["weights"])), span["weights"])
    features = found.pack["features"]
    places = [n for n, feature in enumerate(features) if feature["needs"] == "nothing"]
    session = new_session(engine)
    for place in rng.sample(places, rng.randint(0, 20)):
        state = found.read(rng, piece, place, like.misread)
        answer = {"feature": features[place]["id"], "how": "sure", "states": [state]}
        session = answered(session, answer)
    first = span["first"]
    return (first + at, first, first + len(span["weights"]) - 1), session


@pytest.mark.parametrize("how", CONDITIONS)
@pytest.mark.parametrize("name", NAMES)
def test_what_is_said_of_a_year(name, how, capsys):
    rng = random.Random(57)
    found = world(name)
    engine = prepare(found.pack)
    life = found.pack["range"]
    true, noticed = [], []
    for _ in range(PIECES):
        (made, first, last), session = looks(rng, found, engine, CONDITIONS[how])
        state = believe(engine, session)
        shown = years(engine, state)
        chances = {int(year): chance for year, chance in shown["chances"]}
        sure = max(variant_chances(engine, state)) >= SAID
        for year in range(life["first"], life["last"] + 1):
            claim = {"about": "years", "first": year, "last": year, "edtf": "", "problem": ""}
            shares = row_shares(engine, claim, state["rows"])
            word = verdict_on(engine, state, claim, weigh_claim(state, shares))
            if shown["first"] <= year <= shown["last"]:
                assert word not in BEYOND, "it is one of the years that are shown"
            if word == "ruled out":
                assert chances.get(year, 0) < 0.01
                assert sum(state["chances"]) >= 0.9, "nothing is ruled out of what is in no range"
            if year == made:
                true.append(word in BEYOND)
            elif sure and max(first - year, year - last) >= 4:
                noticed.append(word in BEYOND)
    with capsys.disabled():
        print(f"\n{name}, {how}: a true year called unlikely or worse in {said(true)},")
        print(f"    a wrong one noticed in {said(noticed)}")
    assert share(true)[1] <= 0.03
    assert share(noticed)[0] >= 0.9
