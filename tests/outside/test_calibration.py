"""Stated chances come true: on pieces drawn from a pack, with the truth known.

Expected calibration error as in Naeini, Cooper and Hauskrecht (2015), from memory.
"""

import random
from typing import Any

import orjson
import pytest

from identify import phone
from identify.core.belief import believe, prepare
from identify.core.parts import suspects
from identify.core.reasons import variant_chances
from identify.core.session import answered, new_session
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from tests.pieces import as_text, calibration, error_of, piece, read_by

EDGES = [0.0, 0.02, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0]
PIECES = 1500


@pytest.fixture(scope="module")
def told() -> dict[str, list[tuple[float, bool]]]:
    """What was stated of pieces from every demo pack, and whether it was so."""
    rng = random.Random(1957)
    stated: dict[str, list[tuple[float, bool]]] = {"swapped": [], "variant": []}
    for folder in phone.demo_packs():
        engine = prepare(orjson.loads(pack_bytes(compile_pack(folder))))
        for _ in range(PIECES):
            one_piece(rng, engine, stated)
    return stated


def one_piece(rng: random.Random, engine: dict[str, Any], stated: dict[str, list]) -> None:
    """Look at some features of a piece, in no order, and note what the engine then says."""
    pack = engine["pack"]
    found = piece(rng, pack)
    places = [p for p, f in enumerate(pack["features"]) if f["needs"] == "nothing"]
    session = new_session(engine)
    for place in rng.sample(places, rng.randint(4, len(places))):
        state = found.states[pack["features"][place]["id"]]
        session = answered(session, read_by(rng, engine, place, state))
    state = believe(engine, session)
    for suspect in suspects(engine, session, state):
        stated["swapped"].append((suspect["swapped"], suspect["part"] in found.replaced))
    chances = variant_chances(engine, state)
    truth = pack["rows"]["variant"][found.row]
    for variant, chance in enumerate(chances):
        if chance >= 0.02:
            stated["variant"].append((chance, variant == truth))


@pytest.mark.parametrize("what", ["swapped", "variant"])
def test_what_is_called_likely_is_so_as_often_as_it_says(told, what, capsys):
    table = calibration(told[what], EDGES)
    with capsys.disabled():
        print(f"\n{what}: calibration error {error_of(table):.3f}\n{as_text(table)}")
    assert error_of(table) <= 0.03
    for _, _, count, mean, true in table:
        if count >= 50:
            spread = 3 * (mean * (1 - mean) / count) ** 0.5
            assert abs(mean - true) <= 0.06 + spread
