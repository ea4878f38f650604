"""In which years a wording may stand on new pieces, and with what weight.

A mark is not a running change of one maker: many pieces never carried any. So each year of
production has the wordings that were possible in it, in shares by their weight, beside pieces
without the mark. Only a mark that is seen says much.
"""

import math

import msgspec

from identify.reference.weights import in_millionths

NONE = "none"


class Window(msgspec.Struct, frozen=True):
    """The years of a wording, from `start` until `end` in decimal years, infinite where open.

    Beyond a soft end the weight falls evenly, in `rise` or `fall` years, to `low_before` or
    `low_after`, and stays there: a soft end never rules a year out. Beyond a hard one it is 0.
    """

    state: str
    start: float
    end: float
    rise: int = 0
    fall: int = 0
    low_before: float = 0.0
    low_after: float = 0.0

    def weight(self, year: int) -> float:
        """1 in years that have some time within the ends, less beyond them."""
        if year + 1 <= self.start:
            return _beyond(math.floor(self.start) - year, self.rise, self.low_before)
        if year >= self.end:
            return _beyond(year + 1 - math.ceil(self.end), self.fall, self.low_after)
        return 1.0

    def met(self, first: int, last: int) -> bool:
        """Whether the wording belongs to any of the years, or they are near a soft end of it."""
        return any(
            self.weight(year) > (self.low_before if year < self.start else self.low_after)
            for year in range(first, last + 1)
        )


def _beyond(years: int, tail: int, low: float) -> float:
    """The weight so many years beyond an end."""
    return low + (1.0 - low) * max(0.0, 1.0 - years / (tail + 1))


class Windows(msgspec.Struct, frozen=True):
    """The years of every wording of a mark, and the share of pieces that carry such a mark."""

    spans: list[Window]
    seen: float

    def weights(self, year: int) -> dict[str, float]:
        """The weight of each state that may stand on a piece made in the year."""
        weights: dict[str, float] = {}
        for span in self.spans:
            weight = span.weight(year)
            if weight > 0.0:
                weights[span.state] = max(weight, weights.get(span.state, 0.0))
        return weights

    def cell(self, year: int) -> tuple[tuple[str, float], ...]:
        """The share of each state in the year's production."""
        weights = self.weights(year)
        if not weights:
            return ((NONE, 1.0),)
        carried = self.seen * max(weights.values())
        whole = sum(weights.values())
        shares = in_millionths(
            [carried * weight / whole for weight in weights.values()] + [1.0 - carried]
        )
        return tuple(zip([*weights, NONE], shares, strict=True))
