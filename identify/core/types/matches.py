"""Finding an item by a number or a name."""

from typing import Literal, TypedDict

# misread: look-alikes or a slip had to be forgiven; carried: on the piece itself
HowFound = Literal["number", "misread", "carried", "name"]


class Match(TypedDict):
    """An item that a text could mean."""

    item: int  # index
    score: float  # 0 to 1
    how: HowFound
    matched: str  # the recorded text


class Spelt(TypedDict):
    """A number as it is compared."""

    plain: str  # capitals and figures only
    canonical: str  # every look-alike as its figure


class Listed(Spelt):
    """A number of the pack."""

    item: int  # index
    text: str  # as it is recorded
    carried: int  # 1: on the piece itself, 0: in the catalogue


class Fitting(TypedDict):
    """An item that every word of a text fits."""

    item: int
    score: float


class Index(TypedDict):
    """What is looked through."""

    numbers: list[Listed]
    words: list[str]  # every word once
    figures: list[int]  # how many figures each word has
    items: list[list[int]]  # of each word, the items with it
    count: int  # how many items there are
