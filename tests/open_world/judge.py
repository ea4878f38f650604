"""Shares with their intervals, and from when on something counts as said."""

from collections.abc import Sequence
from math import sqrt

SAID = 0.9  # a variant is said to be it from here on


def wilson(hits: int, count: int) -> tuple[float, float]:
    """The interval of 95 % for a share (Wilson 1927)."""
    if count == 0:
        return 0.0, 1.0
    z = 1.959963984540054
    share = hits / count
    middle = (share + z * z / (2 * count)) / (1 + z * z / count)
    half = z * sqrt(share * (1 - share) / count + z * z / (4 * count * count))
    half /= 1 + z * z / count
    return max(0.0, middle - half), min(1.0, middle + half)


def share(hits: Sequence[bool]) -> tuple[float, float, float]:
    """A share with its interval."""
    low, high = wilson(sum(hits), len(hits))
    return (sum(hits) / len(hits) if hits else 0.0), low, high


def said(hits: Sequence[bool]) -> str:
    """The same in words."""
    mean, low, high = share(hits)
    return f"{mean:.1%} ({low:.1%} to {high:.1%}, {len(hits)})"
