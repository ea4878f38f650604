"""How long a person takes: the keystroke-level model, with times for a phone at a stall.

Card, Moran and Newell, The Psychology of Human-Computer Interaction (1983), give 1.10 s for
pointing, 0.75 s for a key of a code that is read off, and 1.35 s for making up one's mind. That is
counted here once for each screen, and with 1.2 s (Olson and Olson 1990, from memory), as it was
when the aims were set: with 1.35 s a piece of ten screens would take 1.5 s longer. A scroll counts
1.0 s, reading 250 words a minute (both common practice, no source), looking at the piece what the
range says.
"""

from dataclasses import dataclass

TAP = 1.1
DECISION = 1.2
KEY = 0.75
SCROLL = 1.0
WORDS_A_SECOND = 250 / 60


@dataclass
class Effort:
    """What it takes until something is done."""

    questions: int = 0
    taps: int = 0
    keys: int = 0
    scrolls: int = 0
    decisions: int = 0
    words: int = 0  # all that is told on the screens
    few: int = 0  # for who knows the app: the question, and the answer that is tapped
    looking: float = 0

    def seconds(self, practised: bool = False) -> float:
        """All of it together."""
        each = self.operators()
        if practised:
            each["reading"] = self.few / WORDS_A_SECOND
        return sum(each.values())

    def __add__(self, other: "Effort") -> "Effort":
        mine, theirs = vars(self), vars(other)
        return Effort(**{name: mine[name] + theirs[name] for name in mine})

    def __sub__(self, other: "Effort") -> "Effort":
        mine, theirs = vars(self), vars(other)
        return Effort(**{name: mine[name] - theirs[name] for name in mine})

    def operators(self) -> dict[str, float]:
        """The seconds by what is done in them."""
        return {
            "looking": self.looking,
            "reading": self.words / WORDS_A_SECOND,
            "deciding": self.decisions * DECISION,
            "tapping": self.taps * TAP,
            "typing": self.keys * KEY,
            "scrolling": self.scrolls * SCROLL,
        }
