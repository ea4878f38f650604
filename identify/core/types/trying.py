"""What is worked out to try a range: what cannot be told apart, sessions with pieces drawn from it,
what is worth a look next time.
"""

from typing import TypedDict

from .engine import Engine
from .session import Session


class Alike(TypedDict):
    """Two variants that nothing visible tells apart, and the features that would."""

    one: int  # index
    other: int
    would: list[int]  # features that need a loupe or a screwdriver
    bits: list[float]  # and what each of them tells
    met: float  # the prior of the rarer of the two


class ToPart(TypedDict):
    """What pairs are looked for by."""

    engine: Engine  # without errors and swaps
    session: Session
    rows: list[list[int]]  # of each variant
    priors: list[float]  # of each variant
    met: list[int]  # the variants that are met at all
    looks: list[list[list[float]]]  # by variant and visible feature: the share of each state


class Luck(TypedDict):
    """Where a row of chance numbers stands."""

    at: int


class Trial(TypedDict):
    """A piece that is drawn from a range and identified, question by question."""

    variant: int  # what it is
    says: list[int]  # by feature: the state that is answered, with slips
    session: Session
    done: bool
    right: bool  # whether it was named as what it is
    unknown: bool  # whether it was said to be in no range
    chance: float  # of what it was named as


class Tried(TypedDict):
    """What came of all of them."""

    count: int
    right: int
    unknown: int
    questions: float  # the mean
    fewest: int  # questions of the quickest and of the longest
    most: int
    sure: float  # the mean chance of what was named


class Unrecorded(TypedDict):
    """A feature that is not recorded everywhere."""

    feature: int  # index
    without: int  # variants of which nothing is recorded
    of: int  # variants that can have it


class LookNext(TypedDict):
    """Something to look at when the piece is in the hand again."""

    variant: int  # index
    feature: int
    score: float
    apart: bool  # whether it may tell it from another that it cannot be told from now
