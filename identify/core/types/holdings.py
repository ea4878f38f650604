"""What the collector's records come to, held against a pack."""

from typing import Literal, TypedDict

from .records import Chance, Hand, Piece, Want

Met = Literal["met", "short", ""]  # "": not asked for, or not said of the piece in hand
PriceMet = Literal["within", "above", "currency", ""]  # currency: the two cannot be compared
Places = Literal["at", "items"]  # of what is held: its variants or its items
Shares = Literal["chances", "shares"]  # and the chances of them


class Shelf(TypedDict):
    """The pack's items and variants for look-up."""

    items: dict[str, int]  # index, by shelfmark
    variants: dict[str, int]  # index, by shelfmark
    inside: list[list[int]]  # by item: its variants
    shares: list[float]  # by variant: its share of its item's prior


class Held(TypedDict):
    """What a piece can be."""

    record: Piece
    at: list[int]  # index of the variants
    chances: list[float]  # of each of them
    items: list[int]  # index of the items
    shares: list[float]  # chance of each of them


class Holdings(TypedDict):
    """What is owned of what the pack lists."""

    owned: list[Held]
    spares: list[Held]  # spares and donors
    lacking: list[float]  # by variant: chance of owning none
    without: list[float]  # by item: chance of owning none


class Near(TypedDict):
    """A held piece that bears on the one in hand."""

    record: Piece
    items: list[int]
    same: float  # chance that the two are the same variant
    item: float  # chance that they are the same item


class Wanted(TypedDict):
    """A want, held against the piece in hand."""

    record: Want
    item: int  # index
    variant: int  # index, -1: any
    condition: Met
    box: Met
    price: PriceMet


class Together(TypedDict):
    """What belongs together: a formation, or what is in a boxed set."""

    sort: Literal["formation", "set"]
    name: str
    item: int  # index of the set, -1 for a formation
    members: list[int]  # index of the items


class Incomplete(TypedDict):
    """A formation or boxed set of which part is owned."""

    sort: Literal["formation", "set"]
    name: str
    item: int  # index of the set, -1 for a formation
    owned: list[int]  # index of the items
    missing: list[int]


class Completing(Incomplete):
    """What the piece in hand would add to; `missing` is what is missing then."""

    chance: float  # that the piece is one of those missing
    adds: int  # index of the likeliest of them


class Duplicate(TypedDict):
    """What is owned twice or more."""

    item: int  # index
    variant: int  # index, -1 where copies are counted by item
    keep: str  # id of the best copy
    part_with: list[str]  # ids of the others, worst first


class Meanings(TypedDict):
    """What each variant would mean, by variant; the fields are those of the verdict."""

    same: list[float]
    other: list[float]
    new: list[float]
    wanted: list[float]
    dear: list[float]
    double: list[float]
    upgrade: list[float]
    completes: list[float]
    kind: list[int]  # equal for variants that mean the same, chances taken to a tenth


class Studied(TypedDict):
    """The records worked out for the piece in hand, once for many answers."""

    hand: Hand
    held: Holdings
    wants: list[Wanted]
    started: list[Incomplete]
    meanings: Meanings


class Moved(TypedDict):
    """A record that points to what a newer version of its pack calls otherwise, or has no more.

    What is gone stays named.
    """

    id: str
    changed: int  # how many names moved
    gone: int  # how many are no more
    item: str  # where it points now
    variant: str
    of: list[Chance]
