"""Fits the weights of matching to invented rows: python -m tests.exchange.fitting prints them."""

from functools import cache

import numpy as np
from scipy.optimize import minimize

from identify.core.importing.item_words import new_reference
from identify.core.importing.matching import WEIGHTS, against_all, evidence
from identify.core.types.importing import Clue, Reference
from identify.phone import demo_packs
from identify.reference.loading import load_engine
from tests.exchange.labelled import labelled

KEYS = list(WEIGHTS)
ROWS, SEED = 3000, 1
HELD = 0.0003  # how strongly weights are held to small values


@cache
def demo_reference() -> Reference:
    """The items of the demo packs."""
    engines = [load_engine(path) for path in demo_packs()]
    return new_reference(engines)


def vector(clues: list[Clue]) -> list[float]:
    """Evidence as numbers in the order of KEYS."""
    sizes = {clue["word"]: clue["size"] for clue in clues}
    return [sizes.get(key, 0.0) for key in KEYS]


def fitted(reference: Reference, count: int = ROWS) -> dict[str, float]:
    """The weights that make so many labelled rows likeliest."""
    rows = labelled(reference, count, SEED)
    seen = np.array(
        [
            [
                *(vector(one) for one in evidence(reference, row.query)),
                vector(against_all(row.query)),
            ]
            for row in rows
        ]
    )
    right = np.array([row.place for row in rows])  # -1 is the last: none

    def loss(weights: np.ndarray) -> tuple[float, np.ndarray]:
        scores = seen @ weights
        scores -= scores.max(axis=1, keepdims=True)
        shares = np.exp(scores)
        shares /= shares.sum(axis=1, keepdims=True)
        at = np.arange(len(rows))
        slope = (np.einsum("re,rek->k", shares, seen) - seen[at, right].sum(axis=0)) / len(
            rows
        ) + 2 * HELD * weights / 10
        value = -np.log(shares[at, right] + 1e-300).mean() + HELD * (weights**2).sum() / 10
        return float(value), slope

    start = np.array([WEIGHTS[key] for key in KEYS])
    best = minimize(loss, start, jac=True, method="L-BFGS-B")
    return {key: round(float(weight), 2) for key, weight in zip(KEYS, best.x, strict=True)}


if __name__ == "__main__":
    for key, weight in fitted(demo_reference()).items():
        print(f'    "{key}": {weight},')
