"""In which years a wording may stand on new pieces.

A mark is not a running change of one maker: many pieces never carried any. So each year of
production has the wordings that were possible in it, in equal shares, beside pieces without the
mark. Only a mark that is seen says much.
"""

import msgspec

from identify.reference.weights import in_millionths

NONE = "none"


class Windows(msgspec.Struct, frozen=True):
    """(state, from, until) in decimal years, and the share of pieces that carry such a mark."""

    spans: list[tuple[str, float, float]]
    seen: float

    def possible(self, year: int) -> list[str]:
        """The states that may stand on a piece made in the year."""
        found = [state for state, start, end in self.spans if start < year + 1 and end > year]
        return list(dict.fromkeys(found))

    def cell(self, year: int) -> tuple[tuple[str, float], ...]:
        """The share of each state in the year's production."""
        states = self.possible(year)
        if not states:
            return ((NONE, 1.0),)
        shares = in_millionths([self.seen / len(states) for _ in states] + [1.0 - self.seen])
        return tuple(zip([*states, NONE], shares, strict=True))
