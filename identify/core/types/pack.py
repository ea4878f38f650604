"""A compiled pack: all that the engine and the screens need of a range, as plain JSON.

The same folder gives the same bytes. An index is a place in the list of that name, from 0 on.
"""

from typing import Annotated, Any, Literal, NotRequired, TypedDict

# A pair is a list here: the core has no tuples
Said = Annotated[list[Any], int, str]  # index of a source, and the years that it says (EDTF)


class Range(TypedDict):
    """What the range is, and when it was made."""

    name: str
    maker: str
    gauge_mm: float
    gauge: str  # "22.5 mm"
    material: str
    scale: str
    country: str
    first: int  # year
    last: int  # year
    about: str
    by: NotRequired[str]  # who wrote it down
    invented: bool


class Kind(TypedDict):
    """A sort of piece: locomotive, coach, wagon."""

    id: str
    name: str
    plural: str
    caption: NotRequired[str]
    open: NotRequired[float]  # share of its pieces that the range leaves out, as far as it says


class Part(TypedDict):
    """A part that can be swapped."""

    id: str
    name: str
    swap: float  # chance that it was replaced
    replaced: str  # what that means for the price
    # what is said of it in place of "replaced", as "repainted": it is no piece by itself, is
    # altered where it is and never missing
    altered: NotRequired[str]


class Caution(TypedDict):
    """Something to take care with."""

    kinds: list[int]  # index of the kinds it is said of; empty: all
    text: str


class Source(TypedDict):
    """Who says so."""

    id: str
    what: str
    year: str
    trust: float


class State(TypedDict):
    """One of what a feature can look like."""

    id: str
    name: str
    caption: NotRequired[str]  # of its drawing, at most three words; left out: the name is as short
    drawing: str  # key into the drawings
    look: NotRequired[str]  # in a portrait: a word of its layer (core/looks.py)


Needs = Literal["nothing", "loupe", "body off"]


class Asked(TypedDict):
    """What is said when something is asked about."""

    id: str
    name: str
    title: NotRequired[str]  # of its card, at most three words
    question: str
    where: str  # to look


class Feature(Asked):
    """Something to look at; the first one is always "kind"."""

    part: int  # index of the part it is on; -1: the piece itself
    seconds: float  # that a look takes
    needs: Needs
    states: list[State]
    # pairs of states that are easily mistaken for one another
    mistaken: list[Annotated[list[int], int, int]]
    kinds: list[int]  # index of the kinds that have it
    none: int  # index of a state "none" that the compiler added, or -1
    layer: NotRequired[str]  # of a portrait (core/looks.py)
    unseen: NotRequired[str]  # why it is not in a portrait
    seen: NotRequired[float]  # of a date mark: the share of the pieces that carry such a mark
    # for each sort of relative that is in no range: the chance that each state differs on it
    differs: NotRequired[list[list[float]]]


class Item(TypedDict):
    """What has a number in the catalogue."""

    id: str  # "i" and its place
    number: str
    name: str
    kind: int  # index
    years: str
    said: list[Said]
    formation: str  # the name of what it runs in, "" for none
    contains: list[int]  # index of the items in a boxed set
    carried: list[str]  # numbers and names on the piece itself
    note: str
    pack: NotRequired[str]  # in joined packs: the id of its own


class Variant(TypedDict):
    """A version of an item that collectors tell apart."""

    id: str
    name: str
    item: int  # index
    years: str
    said: list[Said]
    note: str


_Bounds = TypedDict("_Bounds", {"from": str, "to": str})


class Change(_Bounds):
    """A running change: a state of a feature that came `from` then, and went `to` then (EDTF)."""

    feature: int  # index
    state: int  # index among the feature's
    kinds: list[int]  # index of the kinds it applies to
    items: list[int]  # and of the items, where it applies to these alone
    said: list[Said]
    note: str
    said_to: NotRequired[list[Said]]  # of a date mark: who says when it ended
    hard: NotRequired[list[bool]]  # of a date mark: whether each end rules out what is beyond it


Moving = Literal["item", "variant"]


class Move(_Bounds):
    """A number or an id that was `from` in an earlier version, and is `to` now ("": gone)."""

    what: Moving
    note: str


class Rows(TypedDict):
    """One row for each issue of a variant: a span of years and what is recorded of each feature.

    Rows of one variant stand together; priors add up to 1. Within a year running changes are taken
    as independent, so one row with the share of each state says the same as a row for each
    combination, exactly. Years with the same shares make one row; a feature named in a `when` is
    split into a row for each of its states.
    """

    variant: list[int]  # index, by row
    kind: list[int]  # index, by row
    prior: list[float]
    span: list[int]  # index, by row


class Span(TypedDict):
    """Years of production, from `first` on; the weights add up to 1."""

    first: int
    weights: list[float]


class Cells(TypedDict):
    """What is recorded of one feature."""

    # the share of each state, to 6 decimals where running changes give it; the first is [], and
    # means not recorded
    shares: list[list[float]]
    codes: list[int]  # index into shares, by row


class Pack(TypedDict):
    """A compiled pack, or several joined by `join`."""

    format: Literal[1]
    id: str  # the folder's name; "all" for joined ones
    version: str  # first 16 hex digits of the SHA-256 of everything else
    range: Range
    kinds: list[Kind]
    parts: list[Part]
    cautions: list[Caution]
    sources: list[Source]
    features: list[Feature]
    items: list[Item]
    variants: list[Variant]
    changes: list[Change]
    rows: Rows
    spans: list[Span]
    cells: list[Cells]  # one a feature
    # by feature and kind the share of each state among recorded rows of the kind, by prior, with
    # half a row shared out evenly over the states
    backgrounds: list[list[list[float]]]
    drawings: dict[str, str]  # svg text, or a photo as a data: URL
    moves: NotRequired[list[Move]]  # left out where there are none
    packs: NotRequired[list[str]]  # in joined packs: their ids


MeasureName = Literal["gauge", "material"]


class Measure(Asked):
    """Something that is asked of joined packs, and told of each by its range."""

    told_by: MeasureName  # the range's field


Listing = Literal["kinds", "parts", "sources", "spans", "items", "variants"]


class Begins(TypedDict):
    """Where a pack's things begin in the joined lists."""

    kinds: int
    parts: int
    sources: int
    spans: int
    items: int
    variants: int
    rows: int
    features: int
