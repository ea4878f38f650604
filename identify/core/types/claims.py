"""What a seller says about the date, and how it stands against what was seen."""

from typing import Literal, TypedDict

from .view import Question

# unread (not understood) · reversed (it ends before it begins) · outside (not a year in the life of
# the range)
ClaimProblem = Literal["", "unread", "reversed", "outside"]

# by the years that are likely, and by `could`; open: it cannot be said yet; unknown: the piece is
# likelier not in the reference at all
ClaimWord = Literal["fits", "possible", "unlikely", "ruled out", "open", "unknown"]


IssueSaid = Literal["", "first issue", "last issue"]


class Claim(TypedDict):
    """A claim as it was read; with a problem nothing else counts."""

    about: Literal["years", "first issue", "last issue"]
    first: int  # years, inclusive
    last: int
    edtf: str  # the date as it was understood, "" where it names an issue
    problem: ClaimProblem


class YearSpan(TypedDict):
    """Years, inclusive; first 0 for none."""

    first: int
    last: int


class Weight(TypedDict):
    """A claim's chances, given that the piece is in the reference."""

    could: float  # that its variant was in production at some time in the claimed years
    chance: float  # that it was made in them, never more than `could`


class MayBe(TypedDict):
    """1 for each kind and item that the piece may well be, else 0."""

    kinds: list[float]
    items: list[float]


class Counting(TypedDict):
    """What says when a state was made on a piece such as this."""

    rows: list[int]  # index
    changes: list[int]  # index


class SeenYears(TypedDict):
    """When the states of an answer were made, on pieces of the kinds and items that it may be."""

    feature: int  # index
    answer: int  # place in the session's answers
    earliest: int  # years; 0: recorded on none
    latest: int
    first: int  # the same for a date mark with what lies beyond soft ends of its years
    last: int
    variants: list[int]  # the first and the last with it
    changes: list[int]  # every running change of the feature that applies


class Evidence(SeenYears):
    """What an answer says of a claim.

    `bits` are the mean of what the answer does when put to all the others and when it is the only
    one: left out alone, it would count for nothing where another answer says the same.
    """

    bits: float  # below 0: against the claim


class Judgement(TypedDict):
    """A claim held against the answers."""

    word: ClaimWord
    could: float
    chance: float
    evidence: list[Evidence]  # strongest first
    question: Question | None  # the one that would settle it best
