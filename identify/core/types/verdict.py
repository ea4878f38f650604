"""The verdict: what the piece in hand means for the collector. Chances, unless said otherwise."""

from typing import Literal, TypedDict

from .holdings import Completing, Met, PriceMet
from .money import Money
from .records import Boxed, Condition

# item: owns one of the item, but it is not known whether it is this variant; "": none has 95 %
Word = Literal["", "unrecorded", "wanted", "upgrade", "same", "completes", "other", "item", "new"]


Weighty = Literal["unrecorded", "wanted", "upgrade", "same", "completes", "other"]
Better = Literal["yes", "no", ""]  # than the best owned copy; "": a condition is not said


class Reason(TypedDict):
    """The verdict in a word, and what it rests on."""

    word: Word  # the first of these that has 95 %, in the order above but for "item" before "new"
    candidates: int  # how many variants hold 95 % together
    records: list[str]  # ids of the wants or pieces that it rests on


class NearPiece(TypedDict):
    """An owned piece that may be the same."""

    piece: str  # id
    same: float  # the same variant
    item: float  # the same item


class SetNear(TypedDict):
    """An owned boxed set with a piece like this inside."""

    piece: str  # id of the set's record
    item: int  # index of the set
    chance: float


class WantNear(TypedDict):
    """A want that the piece in hand may meet."""

    want: str  # id
    chance: float
    met: bool  # not short of what it asks, if it is the right piece
    condition: Met
    box: Met
    price: PriceMet


class ToBeat(TypedDict):
    """The best owned copy: "better than this?"."""

    piece: str  # id
    condition: Condition
    boxed: Boxed
    better: Better  # the one in hand


class Paid(TypedDict):
    """What was paid for such a piece."""

    piece: str  # id
    money: Money
    when: str  # EDTF
    same: float
    item: float


class Weighed(TypedDict):
    """What the piece may mean, each weighed by the chances of the variants.

    A piece held without its variant counts for each variant of the item by its prior; spares,
    donors and the bin are not owned.
    """

    same: float  # owns this very variant; same, other, new and unrecorded add up to 1
    other: float  # owns another variant of the item
    new: float  # owns none of the item
    wanted: float  # a want is met: right item and variant, and not short of condition or box
    dear: float  # the same, and more is asked than any such want allows
    double: float  # same, and no want is met
    # same, and better than every copy: in better condition, or in equal condition and boxed where
    # the copy is not; nothing is better while one of the conditions is not said
    upgrade: float
    completes: float  # new, and others of its formation or boxed set are owned


class Verdict(Weighed):
    """The verdict on the piece in hand, and the records that say so."""

    unrecorded: float  # it is not in the reference
    # the likeliest variants that hold 95 % together all mean the same: equal in wanted, dear and
    # completes, and to a tenth in same, new and upgrade
    settled: bool
    reason: Reason
    owned: list[NearPiece]  # likeliest first
    spares: list[NearPiece]  # the same for spares and donors
    sets: list[SetNear]
    wants: list[WantNear]
    beat: ToBeat | None
    completing: list[Completing]
    paid: list[Paid]  # newest first
