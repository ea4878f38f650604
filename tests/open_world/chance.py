"""What chance alone does to a calibration error: chances that all come true are off by it too."""

import random
from collections.abc import Sequence
from statistics import fmean

from identify.lab.calibration import calibration, error_of

Said = tuple[tuple[int, str], float]  # the range and the item of a piece; what is said of it
ROUNDS = 100


def by_chance(rng: random.Random, said: Sequence[Said], edges: list[float]) -> tuple[float, float]:
    """The error to expect of so many chances if they were right, and what one in twenty passes.

    An item is missing from a range or it is not: the pieces of it there have one fate, so one
    number is drawn for all of them, and each comes true where that is below what is said of it.
    """
    errors = []
    for _ in range(ROUNDS):
        fates: dict[tuple[int, str], float] = {}
        stated = []
        for which, chance in said:
            fate = fates.setdefault(which, rng.random())
            stated.append((chance, fate < chance))
        errors.append(error_of(calibration(stated, edges)))
    return fmean(errors), sorted(errors)[ROUNDS * 19 // 20]
