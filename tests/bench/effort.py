"""How long a person takes: the keystroke-level model, with times for a phone at a stall.

Card, Moran and Newell, The Psychology of Human-Computer Interaction (1983), give 1.1 s for
pointing, 1.2 s and more for making up one's mind (here once for each screen), and 0.75 s for a key
of a code that is read off; these values are quoted from memory. A scroll counts 1.0 s, reading 250
words a minute (both common practice, no source), looking at the piece what the range says.
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
        return (
            self.taps * TAP
            + self.keys * KEY
            + self.scrolls * SCROLL
            + self.decisions * DECISION
            + (self.few if practised else self.words) / WORDS_A_SECOND
            + self.looking
        )

    def __add__(self, other: "Effort") -> "Effort":
        mine, theirs = vars(self), vars(other)
        return Effort(**{name: mine[name] + theirs[name] for name in mine})
