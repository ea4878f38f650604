"""How sure is said: words for ranges of chance, here once for every screen."""

from .types.view import HowReplaced, HowSure

CERTAIN = 0.99  # "it is", where it was checked and what was seen fits
ALMOST = 0.95  # almost certainly, from here on
VERY = 0.85
PROBABLY = 0.6
PERHAPS = 0.2  # of a replaced part: with less it could well be original


def how_sure(chance: float, passed: bool) -> HowSure:
    """The word for a chance. passed: it was checked, and what was seen fits."""
    if chance >= CERTAIN and passed in [True]:
        return "it is"
    if chance >= ALMOST:
        return "almost certainly"
    if chance >= VERY:
        return "very likely"
    return "probably" if chance >= PROBABLY else "could be"


def how_replaced(chance: float) -> HowReplaced:
    """The word for the chance that a part was replaced; "" where it could be original. With less
    than PROBABLY, most such parts of repainted pieces were not (tests/open_world/README.md).
    """
    if chance >= ALMOST:
        return "almost certainly"
    if chance >= PROBABLY:
        return "probably"
    return "perhaps" if chance >= PERHAPS else ""
