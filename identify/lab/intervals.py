"""How far a share can be trusted that was counted."""

from math import sqrt

Z = 1.959963984540054  # of a normal distribution: 0.95 lies between -Z and Z


def wilson(hits: int, count: int) -> tuple[float, float]:
    """The interval of 95 % for a share (Wilson 1927)."""
    if count == 0:
        return 0.0, 1.0
    share = hits / count
    middle = (share + Z * Z / (2 * count)) / (1 + Z * Z / count)
    half = Z * sqrt(share * (1 - share) / count + Z * Z / (4 * count * count))
    half /= 1 + Z * Z / count
    return max(0.0, middle - half), min(1.0, middle + half)


def share_said(hits: int, count: int) -> str:
    """A share in hundredths with its interval of 95 %."""
    low, high = wilson(hits, count)
    share = hits / count if count else 0.0
    return f"{100 * share:.1f} % ({100 * low:.1f} to {100 * high:.1f})"
