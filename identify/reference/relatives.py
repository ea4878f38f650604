"""How an unrecorded variant or item differs from the recorded ones: learned from the range itself.

An issue is left out with its variant (or with its whole item), and the issues that are left and
most like it are looked at. For each feature the chance of differing is then found by expectation
and maximisation (Dempster, Laird and Rubin 1977) for the mixture that core/kin.py states. So it is
not guessed: in a range whose items differ in shape and share a livery, that is what is learned.
"""

import operator
from collections.abc import Callable, Sequence

from identify.core.kin import NEW
from identify.reference.compiled import CompiledPack

LEFT_OUT = 40  # issues that are left out in turn, at even steps through the range
MOST_LEFT = 2000  # issues that each of them is held against
NEAREST = 12  # of them, that can count at all
ROUNDS = 6  # of expectation and maximisation
MISREAD = 0.03  # an answer says so much less than what is recorded
DOUBT = (0.5, 4.0)  # half of four looks at each feature beforehand: one in eight differs
TELLS = 0.97  # a feature that nearly every piece has alike says nothing of relatives

Term = tuple[int, float, float]  # a feature, the chance of its state if alike, and if it differs
Group = list[tuple[float, list[Term]]]  # of one issue left out: the prior and terms of each near it


class _Likeness:
    """The issues of a range, held against one another."""

    def __init__(self, pack: CompiledPack) -> None:
        self.pack = pack
        self.codes = list(zip(*(cells.codes for cells in pack.cells), strict=True))
        self.item = [pack.variants[v].item for v in pack.rows.variant]
        self.step = max(1, len(self.item) // MOST_LEFT)

    def nearest(self, row: int, may: Callable[[int], bool]) -> list[int]:
        """The issues recorded most like this one, among those that may count."""
        every = [n for n in range(0, len(self.item), self.step) if may(n)]
        own = self.codes[row]
        alike = {n: sum(map(operator.eq, own, self.codes[n])) for n in every}
        return sorted(every, key=lambda n: -alike[n])[:NEAREST]

    def terms(self, row: int, other: int) -> list[Term]:
        """What each feature says of the one as a relative of the other."""
        out = []
        kind = self.pack.rows.kind[row]
        for place, feature in enumerate(self.pack.features):
            shares = self.pack.cells[place].shares
            seen = shares[self.codes[row][place]]
            there = shares[self.codes[other][place]]
            if not seen or not there:
                continue
            usual = _mean(seen, self.pack.backgrounds[place][kind])
            if kind in feature.kinds:
                usual = (1 - NEW) * usual + NEW / (len(seen) - (feature.none >= 0))
            if usual <= TELLS:
                same = min(1.0, _mean(seen, there) / _mean(seen, seen))
                out.append((place, (1 - MISREAD) * same + MISREAD * usual, usual))
        return out

    def group(self, row: int, may: Callable[[int], bool]) -> Group:
        """The issues near one that is left out."""
        priors = self.pack.rows.prior
        return [(priors[n], self.terms(row, n)) for n in self.nearest(row, may)]

    def sibling(self, row: int) -> Group:
        """Those of other variants of its item."""
        variants = self.pack.rows.variant
        return self.group(
            row, lambda n: self.item[n] == self.item[row] and variants[n] != variants[row]
        )

    def cousin(self, row: int) -> Group:
        """Those of other items."""
        return self.group(row, lambda n: self.item[n] != self.item[row])


def _mean(seen: Sequence[float], there: Sequence[float]) -> float:
    return sum(a * b for a, b in zip(seen, there, strict=True))


def _rates(groups: list[Group], features: int) -> list[float]:
    """For each feature the chance that it differs."""
    rates = [DOUBT[0] / DOUBT[1]] * features
    for _ in range(ROUNDS):
        differed = [DOUBT[0]] * features
        counted = [DOUBT[1]] * features
        for group in groups:
            weights = []
            for prior, terms in group:
                weight = prior
                for place, same, usual in terms:
                    weight *= (1 - rates[place]) * same + rates[place] * usual
                weights.append(weight)
            whole = sum(weights)
            if whole <= 0:
                continue
            for weight, (_, terms) in zip(weights, group, strict=True):
                share = weight / whole
                for place, same, usual in terms:
                    rate = rates[place]
                    differed[place] += share * rate * usual / ((1 - rate) * same + rate * usual)
                    counted[place] += share
        rates = [a / b for a, b in zip(differed, counted, strict=True)]
    return rates


def learn_relatives(pack: CompiledPack) -> None:
    """Put into each feature how often it differs on an unrecorded variant, and on an unrecorded
    item: `differs`.
    """
    likeness = _Likeness(pack)
    count = len(likeness.item)
    step = max(1, count // LEFT_OUT)
    left_out = range(step // 2, count, step)
    features = len(pack.features)
    near = _rates([likeness.sibling(row) for row in left_out], features)
    far = _rates([likeness.cousin(row) for row in left_out], features)
    for feature, one, other in zip(pack.features, near, far, strict=True):
        feature.differs = [round(one, 4), round(other, 4)]
