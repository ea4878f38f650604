"""Years as weights: how production spreads over the years, and how much of a year a state saw.

A date evenly likely between two decimal years a and b is T; P(T <= t) is a ramp from 0 at a to 1 at
b, or a step where a = b. All integrals below are in closed form.
"""

import math
from collections.abc import Sequence
from itertools import pairwise

from identify.reference.years import Bound, Years

Weighed = Sequence[tuple[float, Years]]  # what each source says, with its trust

MILLION = 1_000_000
GAUSS = 0.5 / math.sqrt(3.0)  # two such points integrate a product of two ramps exactly


def _ramp(t: float, bound: Bound) -> float:
    """P(T <= t)."""
    low, high = bound
    if t < low:
        return 0.0
    return 1.0 if t >= high else (t - low) / (high - low)


def _within(bound: Bound, first: int, last: int) -> Bound:
    """The bound, with the range's life where it is open."""
    low, high = (
        float(first) if value == -math.inf else float(last + 1) if value == math.inf else value
        for value in bound
    )
    return low, high


def _made(year: int, start: Bound, end: Bound) -> float:
    """Integral over the year of P(start <= t) * P(end >= t)."""
    cuts = [float(year), year + 1.0]
    cuts += [cut for cut in (*start, *end) if year < cut < year + 1]
    cuts.sort()
    whole = 0.0
    for low, high in pairwise(cuts):
        for point in (0.5 - GAUSS, 0.5 + GAUSS):
            t = low + (high - low) * point
            whole += (high - low) / 2 * _ramp(t, start) * (1.0 - _ramp(t, end))
    return whole


def scaled(weights: Sequence[float]) -> list[float]:
    """The same weights, adding up to 1; all zero stays all zero."""
    whole = sum(weights)
    return [weight / whole if whole > 0 else 0.0 for weight in weights]


def trusts(said: Weighed) -> list[float]:
    """The share of each source by its trust; the same for all where none is trusted at all."""
    shares = scaled([trust for trust, _ in said])
    return shares if sum(shares) > 0 else [1 / len(said)] * len(said)


def year_weights(said: Weighed, first: int, last: int) -> list[float]:
    """Weight of each year from first to last, adding up to 1, as the sources say together.

    Nothing said: every year of the range's life alike.
    """
    years = range(first, last + 1)
    if not said:
        return scaled([1.0 for _ in years])
    mixed = [0.0 for _ in years]
    for share, (_, each) in zip(trusts(said), said, strict=True):
        start, end = _within(each.start, first, last), _within(each.end, first, last)
        for place, weight in enumerate(scaled([_made(year, start, end) for year in years])):
            mixed[place] += share * weight
    return scaled(mixed)


def begun(year: int, said: Weighed, first: int, last: int) -> float:
    """Mean over the year of P(T <= t): how much of the year's production came after a change.

    T is evenly likely over all that the source's text leaves open.
    """
    mixed = 0.0
    for share, (_, each) in zip(trusts(said), said, strict=True):
        low, high = _within((each.earliest, each.latest), first, last)

        def past(t: float, low: float = low, high: float = high) -> float:
            """Integral of the ramp up to t."""
            if t <= low:
                return 0.0
            return t - (low + high) / 2 if t >= high else (t - low) ** 2 / (2 * (high - low))

        mixed += share * (past(year + 1) - past(year))
    return mixed


def in_millionths(weights: Sequence[float]) -> list[float]:
    """The weights rounded to 6 decimals so that they still add up to exactly one million of them.

    What rounding down leaves over goes to the largest remainders, the earlier of equal ones first.
    All zero stays all zero.
    """
    if not any(weights):
        return list(weights)
    exact = [weight * MILLION for weight in scaled(weights)]
    whole = [math.floor(each) for each in exact]
    order = sorted(range(len(exact)), key=lambda i: (whole[i] - exact[i], i))
    for i in order[: MILLION - sum(whole)]:
        whole[i] += 1
    return [each / MILLION for each in whole]
