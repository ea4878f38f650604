"""What somebody else's sighting says of a range, and what it would change."""

from typing import Literal, TypedDict

from .records import Chance
from .rows import VariantRow
from .session import Answer


class Sighted(TypedDict):
    """A sighting (records.py), as far as it concerns the range."""

    item: str  # number, "" not known
    called: str
    unrecorded: bool
    of: list[Chance]  # likeliest first
    answers: list[Answer]  # those that the range knows
    years: str  # EDTF, "" not known
    text: str  # how that is known


class OtherYears(TypedDict):
    """Years that stand beside those of a row from now on."""

    table: Literal["items", "variants", "changes"]
    row: int
    years: str


class Proposal(TypedDict):
    """What a sighting would change."""

    # no item: it does not say which item it is a variant of; unread: its years cannot be read;
    # unsure: its years are new for the likeliest variant, and it is not sure enough of that one
    why: Literal["", "no item", "nothing new", "unread", "unsure"]  # nothing can be made of it
    variants: list[VariantRow]  # a new one, or none
    beside: list[str]  # what was seen of it that no cell can hold, in words
    other: list[OtherYears]
