"""What a piece looks like from the side, as far as it is recorded."""

from typing import Literal, TypedDict

# known: one state is recorded · several: one of these · unknown: not recorded · said: no feature
# tells it, but the name does
Recorded = Literal["known", "several", "unknown", "said"]


class Layer(TypedDict):
    """One layer of a portrait: the body, its colour, the wheels, ..."""

    layer: str  # one of LAYERS in core/looks.py
    look: str  # how it looks, most likely; "" where nothing says
    looks: list[str]  # all that it can be, likeliest first; more than one at `several`
    feature: int  # index of the feature that tells it; -1: the name does
    recorded: Recorded


class Portrait(TypedDict):
    """What is drawn of a variant. A layer that the piece does not have is not in it."""

    layers: list[Layer]
    name: str  # a name that it carries, "" for none
    number: str  # a number that it carries
    letters: str  # colour of the lettering, as its name says; "" where it does not
    second: str  # colour of the lines, the band or the upper half
    load: str  # logs, container, drums or coal; "" where no name says
    contents: list[str]  # of a set: the bodies of what is in it


class Sitting(TypedDict):
    """What the portraits of a range are made from: worked out once, by `sitting`."""

    rows: list[list[int]]  # of each variant
    layers: list[str]  # of each feature; "" for none
    looks: list[list[str]]  # of each feature and state; "" where nothing says


class Ring(TypedDict):
    """A place on the leader's portrait to compare with the piece."""

    feature: int  # index
    state: int  # index: what the portrait shows of it
    layer: str


class Ringed(TypedDict):
    """The leader, and what to compare on its portrait; no rings: nothing."""

    variant: int  # index, -1: there is none
    rings: list[Ring]


class Picture(TypedDict):
    """A portrait to choose, and what that says."""

    variant: int  # index
    states: list[list[int]]  # of each of the features: the states that look like it


class Pictures(TypedDict):
    """Portraits to choose from; none: nothing."""

    features: list[int]  # in which they differ: indexes
    captioned: list[bool]  # of each of these: whether a picture needs words for it
    layers: list[str]  # all that is drawn of them
    pictures: list[Picture]


class Looked(TypedDict):
    """How variants look in a feature."""

    feature: int  # index
    looks: list[str]  # of each variant; "" where it is not recorded
    bits: float  # that telling it would give


class Tally(TypedDict):
    """What looks the same."""

    id: str  # the look
    first: int  # place of the first variant that looks so
    held: float  # their chance together


class Left(TypedDict):
    """The variants that are left to tell apart."""

    variants: list[int]  # indexes, likeliest first
    held: list[float]  # the chance of each
    issues: list[list[int]]  # of each: where in what is believed its issues stand


class Choosing(TypedDict):
    """Pictures that could be shown, and what that would tell."""

    rate: float  # bits by second
    telling: list[Looked]  # in what they differ
    at: list[int]  # places of the variants that are drawn, among those that are left
    names: list[str]  # how each of those that are left looks in all that is looked at


class Difference(TypedDict):
    """A feature in which two pieces differ."""

    feature: int  # index
    one: int  # index of the state that the one has, likeliest
    other: int


class Apart(TypedDict):
    """In what two pieces differ, as far as both are recorded."""

    seen: list[Difference]  # portraits show it
    unseen: list[Difference]
