"""How sure is said: words for ranges of chance, here once for every screen."""

from .types.view import HowSure

ALMOST = 0.95  # almost certainly, from here on; and "it is" where nothing speaks against it
VERY = 0.85
PROBABLY = 0.6


def how_sure(chance: float, passed: bool) -> HowSure:
    """The word for a chance. passed: it was checked, and what was seen fits."""
    if chance >= ALMOST:
        return "it is" if passed in [True] else "almost certainly"
    if chance >= VERY:
        return "very likely"
    return "probably" if chance >= PROBABLY else "could be"
