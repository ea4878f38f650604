"""Pieces drawn from a pack: what a person would find at a stall, with the truth known."""

import random
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import accumulate
from typing import Literal, TypeVar

from identify.core.donors import donors
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.types.session import Answer

T = TypeVar("T")
Reading = Literal["sure", "unsure"]


@dataclass
class Piece:
    """One piece: the issue it is, the parts that were replaced, the state of each feature."""

    row: int
    replaced: set[int]
    states: dict[str, str] = field(default_factory=dict)


def drawn(rng: random.Random, options: Sequence[T], weights: Sequence[float]) -> T:
    """One of the options, by their weights."""
    return rng.choices(options, weights)[0]


def rows_drawn(rng: random.Random, pack: Pack, count: int) -> list[int]:
    """So many rows in proportion to the prior: at even steps along it, so that chance adds little
    to what is measured. In no order.
    """
    ends = list(accumulate(pack["rows"]["prior"]))
    start = rng.random()
    at = [(n + start) / count * ends[-1] for n in range(count)]
    rows = [min(bisect_right(ends, each), len(ends) - 1) for each in at]
    rng.shuffle(rows)
    return rows


def state_of(rng: random.Random, pack: Pack, place: int, row: int) -> int:
    """A state that this issue can show: by its record, or by the background."""
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    shares = shares or pack["backgrounds"][place][pack["rows"]["kind"][row]]
    return drawn(rng, range(len(shares)), shares)


def piece(rng: random.Random, pack: Pack, row: int = -1) -> Piece:
    """A piece of this row, or of one by the priors; a replaced part comes as a whole from another
    piece, mostly of its kind.
    """
    rows = pack["rows"]
    if row < 0:
        row = drawn(rng, range(len(rows["prior"])), rows["prior"])
    swaps = [part["swap"] for part in pack["parts"]]
    replaced = {p for p, swap in enumerate(swaps) if rng.random() < swap}
    sources = {}
    for part, by_kind in enumerate(donors(pack) if replaced else []):
        kind = drawn(rng, range(len(pack["kinds"])), by_kind[rows["kind"][row]])
        weights = [p * (k == kind) for p, k in zip(rows["prior"], rows["kind"], strict=True)]
        if part in replaced:
            sources[part] = drawn(rng, range(len(weights)), weights)
    made = Piece(row, replaced)
    for place, feature in enumerate(pack["features"]):
        source = sources.get(feature["part"], row)
        made.states[feature["id"]] = feature["states"][state_of(rng, pack, place, source)]["id"]
    return made


def read_by(
    rng: random.Random, engine: Engine, place: int, state: str, error: Reading = "sure"
) -> Answer:
    """The answer of a person who looks at this state: right but for the usual errors."""
    ids = [s["id"] for s in engine["pack"]["features"][place]["states"]]
    chances = [row[ids.index(state)] for row in engine[error][place]]
    seen = drawn(rng, ids, chances)
    return {"feature": engine["pack"]["features"][place]["id"], "how": error, "states": [seen]}
