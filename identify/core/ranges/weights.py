"""Years as weights: how production spreads over the years, and how much of a year a state saw.

A date evenly likely between two decimal years a and b is T; P(T <= t) is a ramp from 0 at a to 1 at
b, or a step where a = b. All integrals below are in closed form.
"""

from collections.abc import Sequence

from ..lists import filled, total
from ..types.rows import WeighedYears
from .year_bounds import FAR

MILLION = 1000000
GAUSS = 0.28867513459481287  # half of 1/sqrt(3): two such points integrate two ramps exactly


def ramp(t: float, low: float, high: float) -> float:
    """P(T <= t)."""
    if t < low:
        return 0.0
    return 1.0 if t >= high else (t - low) / (high - low)


def within_life(year: float, first: int, last: int) -> float:
    """A bound, with the range's life where it is open."""
    return first if year <= 0 - FAR else last + 1 if year >= FAR else year


def ordered(numbers: list[float]) -> list[float]:
    """The numbers, the smallest first."""
    return sorted(numbers, key=lambda number: number)


def made_in(year: int, start: list[float], end: list[float]) -> float:
    """Integral over the year of P(start <= t) * P(end >= t)."""
    cuts = [year, year + 1.0]
    for bound in [start[0], start[1], end[0], end[1]]:
        if year < bound < year + 1:
            cuts.append(bound)
    cuts = ordered(cuts)
    whole = 0.0
    for n in range(len(cuts) - 1):
        low = cuts[n]
        high = cuts[n + 1]
        for point in [0.5 - GAUSS, 0.5 + GAUSS]:
            t = low + (high - low) * point
            there = ramp(t, start[0], start[1]) * (1.0 - ramp(t, end[0], end[1]))
            whole = whole + (high - low) / 2 * there
    return whole


def scaled(weights: Sequence[float]) -> list[float]:
    """The same weights, adding up to 1; all zero stays all zero."""
    whole = total(weights)
    if whole <= 0:
        return filled(len(weights), 0.0)
    return [weight / whole for weight in weights]


def trusts(said: list[WeighedYears]) -> list[float]:
    """The share of each source by its trust; the same for all where none is trusted at all."""
    shares = scaled([years["trust"] for years in said])
    return shares if total(shares) > 0 else filled(len(said), 1 / len(said))


def year_weights(said: list[WeighedYears], first: int, last: int) -> list[float]:
    """Weight of each year from first to last, adding up to 1, as the sources say together.

    Nothing said: every year of the range's life alike.
    """
    count = last - first + 1
    if len(said) == 0:
        return scaled(filled(count, 1.0))
    mixed = filled(count, 0.0)
    shares = trusts(said)
    for n in range(len(said)):
        years = said[n]["years"]
        start = [within_life(at, first, last) for at in years["start"]]
        end = [within_life(at, first, last) for at in years["end"]]
        made: list[float] = []
        for place in range(count):
            made.append(made_in(first + place, start, end))
        weights = scaled(made)
        for place in range(count):
            mixed[place] = mixed[place] + shares[n] * weights[place]
    return scaled(mixed)


def past_ramp(t: float, low: float, high: float) -> float:
    """Integral of the ramp up to t."""
    if t <= low:
        return 0.0
    return t - (low + high) / 2 if t >= high else (t - low) * (t - low) / (2 * (high - low))


def begun(year: int, said: list[WeighedYears], first: int, last: int) -> float:
    """Mean over the year of P(T <= t): how much of the year's production came after a change.

    T is evenly likely over all that the source's text leaves open.
    """
    mixed = 0.0
    shares = trusts(said)
    for n in range(len(said)):
        low = within_life(said[n]["years"]["earliest"], first, last)
        high = within_life(said[n]["years"]["latest"], first, last)
        mixed = mixed + shares[n] * (past_ramp(year + 1, low, high) - past_ramp(year, low, high))
    return mixed


def in_millionths(weights: list[float]) -> list[float]:
    """The weights rounded to 6 decimals so that they still add up to exactly one million of them.

    What rounding down leaves over goes to the largest remainders, the earlier of equal ones first.
    All zero stays all zero.
    """
    if len([1 for weight in weights if weight != 0]) == 0:
        return weights[:]
    exact = [weight * MILLION for weight in scaled(weights)]
    whole = [amount // 1 for amount in exact]
    places: list[int] = []
    for n in range(len(exact)):
        places.append(n)
    left = MILLION - total(whole)
    for n in sorted(places, key=lambda i: whole[i] - exact[i]):
        if left > 0:
            whole[n] = whole[n] + 1
            left = left - 1
    return [amount / MILLION for amount in whole]
