"""What a range learns from pieces that are owned."""

from typing import TypedDict

from .session import Answer


class Specimen(TypedDict):
    """A piece whose owner says which variant it is, with what was seen of it."""

    item: str  # number
    variant: str  # id
    answers: list[Answer]
    replaced: list[str]  # ids of parts that its owner knows to be replaced


class VariantTold(TypedDict):
    """How often a variant is owned, of the pieces of its item."""

    variant: int  # index
    owned: int
    of: int
    share: float  # how often it is met among the variants of its item, as is now reckoned


class StateTold(TypedDict):
    """What was seen of a feature on the pieces of one variant."""

    variant: int  # index
    feature: int
    seen: list[int]  # by state: how many pieces
    of: int
    shares: list[float]  # by state, as is now reckoned


class PartTold(TypedDict):
    """How often a part was replaced."""

    part: int  # index
    replaced: int
    of: int  # pieces on which it was looked at
    swap: float  # as is now reckoned


class Learned(TypedDict):
    """All that owned pieces tell."""

    pieces: int
    variants: list[VariantTold]
    states: list[StateTold]
    parts: list[PartTold]


class Gap(TypedDict):
    """How much of a kind is not written down, as is now reckoned."""

    kind: int  # index
    new: int  # pieces that the range would not know without them
    of: int
    share: float  # of the pieces met that are in no range
