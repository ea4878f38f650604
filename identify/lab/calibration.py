"""Whether stated chances come true: tables of what was stated against what was so.

Expected calibration error as in Naeini, Cooper and Hauskrecht (2015), from memory.
"""

import random
from itertools import pairwise

from identify.core.belief import believe
from identify.core.parts import suspects
from identify.core.reasons import variant_chances
from identify.core.session import answered, new_session
from identify.core.types.engine import Engine
from identify.lab.pieces import piece, read_by

EDGES = [0.0, 0.02, 0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 0.95, 1.0]
LEAST = 0.02  # a variant with less than this is not counted as stated
Stated = list[tuple[float, bool]]


def stated(rng: random.Random, engine: Engine, reader: Engine) -> dict[str, Stated]:
    """Draw a piece, look at some of its features in no order, and note what the engine then says:
    (chance, whether it was so) of every part it saw and of every variant it could be.

    reader: an engine whose errors are those of the person who looks; parts come swapped.
    """
    pack = engine["pack"]
    drawn = piece(rng, pack)
    places = [p for p, f in enumerate(pack["features"]) if f["needs"] == "nothing"]
    session = new_session(engine)
    for place in rng.sample(places, rng.randint(min(4, len(places)), len(places))):
        there = drawn.states[pack["features"][place]["id"]]
        session = answered(session, read_by(rng, reader, place, there))
    state = believe(engine, session)
    parts = [
        (each["swapped"], each["part"] in drawn.replaced)
        for each in suspects(engine, session, state)
    ]
    truth = pack["rows"]["variant"][drawn.row]
    variants = [
        (chance, variant == truth)
        for variant, chance in enumerate(variant_chances(engine, state))
        if chance >= LEAST
    ]
    return {"swapped": parts, "variant": variants}


def calibration(stated: Stated, edges: list[float]) -> list[list[float]]:
    """[from, to, how many, mean stated chance, share that was true] for each bin that has any."""
    out = []
    for low, high in pairwise(edges):
        inside = [(p, t) for p, t in stated if low <= p < high or (p == high == edges[-1])]
        if inside:
            mean = sum(p for p, _ in inside) / len(inside)
            true = sum(t for _, t in inside) / len(inside)
            out.append([low, high, len(inside), mean, true])
    return out


def error_of(table: list[list[float]]) -> float:
    """Expected calibration error: mean distance of stated and true, weighed by how many."""
    count = sum(row[2] for row in table)
    return sum(row[2] * abs(row[3] - row[4]) for row in table) / count
