"""Pieces drawn from a pack: what a person would find at a stall, with the truth known."""

import itertools
import random
from dataclasses import dataclass, field
from typing import Any

from identify.core.donors import donors


@dataclass
class Piece:
    """One piece: the issue it is, the parts that were replaced, the state of each feature."""

    row: int
    replaced: set[int]
    states: dict[str, str] = field(default_factory=dict)


def drawn(rng: random.Random, options: list[Any], weights: list[float]) -> Any:
    return rng.choices(options, weights)[0]


def state_of(rng: random.Random, pack: dict[str, Any], place: int, row: int) -> int:
    """A state that this issue can show: by its record, or by the background."""
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    shares = shares or pack["backgrounds"][place][pack["rows"]["kind"][row]]
    return drawn(rng, list(range(len(shares))), shares)


def piece(rng: random.Random, pack: dict[str, Any]) -> Piece:
    """A piece by the priors; a replaced part comes as a whole from another piece, mostly of its
    kind.
    """
    rows = pack["rows"]
    row = drawn(rng, list(range(len(rows["prior"]))), rows["prior"])
    swaps = [part["swap"] for part in pack["parts"]]
    replaced = {p for p, swap in enumerate(swaps) if rng.random() < swap}
    sources = {}
    for part, by_kind in enumerate(donors(pack) if replaced else []):
        kind = drawn(rng, list(range(len(pack["kinds"]))), by_kind[rows["kind"][row]])
        weights = [p * (k == kind) for p, k in zip(rows["prior"], rows["kind"], strict=True)]
        if part in replaced:
            sources[part] = drawn(rng, list(range(len(weights))), weights)
    found = Piece(row, replaced)
    for place, feature in enumerate(pack["features"]):
        source = sources.get(feature["part"], row)
        found.states[feature["id"]] = feature["states"][state_of(rng, pack, place, source)]["id"]
    return found


def read_by(
    rng: random.Random, engine: dict[str, Any], place: int, state: str, error: str = "sure"
) -> dict[str, Any]:
    """The answer of a person who looks at this state: right but for the usual errors."""
    ids = [s["id"] for s in engine["pack"]["features"][place]["states"]]
    chances = [row[ids.index(state)] for row in engine[error][place]]
    seen = drawn(rng, ids, chances)
    return {"feature": engine["pack"]["features"][place]["id"], "how": error, "states": [seen]}


def calibration(stated: list[tuple[float, bool]], edges: list[float]) -> list[list[float]]:
    """[from, to, how many, mean stated chance, share that was true] for each bin that has any."""
    out = []
    for low, high in itertools.pairwise(edges):
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


def as_text(table: list[list[float]]) -> str:
    lines = ["    stated         pieces   mean   true"]
    for low, high, count, mean, true in table:
        lines.append(f"    {low:.2f} to {high:.2f}  {count:7d}  {mean:.3f}  {true:.3f}")
    return "\n".join(lines)
