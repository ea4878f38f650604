"""A range of the collector's own as records: a range, and its rows, each a record by itself.

So every row is kept, undone, searched, sent and merged field by field, like a piece. A row names
its range, and other rows, by the ids of their records: a number or a name can be changed and
nothing that points to it breaks. `key` is what the row is called in the compiled range and in a
folder of files ("" : its id); pieces hold it, so it stays as it was made. `at` is its place among
its like; equal ones stand in the order of their ids.

What is seen on an item or a variant stands in a field for each feature, `seen_` and the feature's
id: ids of states (several: one of these; ["?"]: not recorded; empty: as the item or the running
changes say).
"""

from typing import Annotated, Any, Literal, NotRequired

from .records import OfAllRecords

Pair = Annotated[list[Any], str, str]


class OwnRange(OfAllRecords):
    """A range."""

    type: Literal["range"]
    key: str  # the id of the compiled range
    name: str
    maker: str
    gauge: float | None  # millimetres
    scale: str
    material: str  # of the bodies
    country: str  # two capitals, "" not said
    years: str  # EDTF: the life of the range, "" not said
    about: str
    by: str  # who writes it down, "" not said
    invented: bool
    drawings: list[Pair]  # name and drawing of "range-gauge", "range-material", "none"
    learns: Literal["", "no"]  # from the pieces that are owned; "" it does
    shared: Literal["", "yes"]  # whether the own server lets others follow it; "" it does not


class RowOfRange(OfAllRecords):
    """What all rows of a range have."""

    range: str  # id of the range
    at: float | None


class OwnKind(RowOfRange):
    """A sort of piece."""

    type: Literal["range_kind"]
    key: str
    name: str
    plural: str
    caption: str  # of its card, at most three words and 22 characters; "" the name
    complete: str  # how complete the range is, in the words of completeness.py, "" not said
    drawing: str  # SVG, or a photo as a data: URL, "" none


class OwnPart(RowOfRange):
    """A part that can be swapped."""

    type: Literal["range_part"]
    key: str
    name: str
    swap: float | None  # chance that it was replaced on a piece that is met
    replaced: str  # what a replaced one means for the price
    altered: NotRequired[str]  # said in place of "replaced" of what is altered where it is


class OwnCaution(RowOfRange):
    """Something to take care with."""

    type: Literal["range_caution"]
    kinds: list[str]  # ids of kinds; empty: all
    text: str


class OwnFeature(RowOfRange):
    """Something to look at."""

    type: Literal["range_feature"]
    key: str
    kit: str  # the feature of the shelf that it was picked from, "" for none
    name: str
    title: str  # of its card, as short as a caption; "" the name
    question: str
    where: str
    part: str  # id of the part it is on, "" for the piece itself
    seconds: float | None  # that a look takes
    needs: Literal["", "nothing", "loupe", "body off"]
    kinds: list[str]  # ids of the kinds that have it; empty: all
    only_if: list[Pair]  # [id of another feature, id of a state of it]: asked only where it has one
    mistaken: list[Pair]  # ids of states that are taken for one another
    layer: str  # of a portrait (core/looks.py), "" none
    unseen: str  # why it is not in a portrait


class OwnState(RowOfRange):
    """What can be seen there."""

    type: Literal["range_state"]
    feature: str  # id of the feature
    key: str
    name: str
    caption: str
    look: str  # in a portrait: a word of its feature's layer, "" none
    drawing: str


class OwnItem(RowOfRange):
    """What has a number in the catalogue."""

    type: Literal["range_item"]
    number: str
    name: str
    kind: str  # id of the kind
    years: str  # EDTF
    source: str  # id of the source that says so, "" not said
    other_years: list[Pair]  # [id of a source, EDTF]
    formation: str
    contains: list[str]  # ids of the items in a boxed set
    carried: list[str]  # numbers and names on the piece itself
    note: str


class OwnVariant(RowOfRange):
    """A version of an item."""

    type: Literal["range_variant"]
    item: str  # id of the item
    key: str
    name: str
    years: str
    source: str
    other_years: list[Pair]
    common: float | None  # how often it is met; 1 is ordinary
    note: str


class OwnChange(RowOfRange):
    """A running change."""

    type: Literal["range_change"]
    feature: str
    state: str  # that was fitted
    since: str  # EDTF, "" since the range began
    until: str  # EDTF, "" until the next one
    kinds: list[str]
    items: list[str]
    source: str
    other_from: list[Pair]
    note: str


class OwnSource(RowOfRange):
    """Who says so."""

    type: Literal["range_source"]
    key: str
    what: str
    year: str
    trust: float | None  # how far its years are to be believed, 0 to 1


class OwnMove(RowOfRange):
    """A number or a key that was another one before."""

    type: Literal["range_move"]
    what: Literal["", "item", "variant"]
    was: str
    now: str
    note: str


OwnRow = (
    OwnKind | OwnPart | OwnCaution | OwnFeature | OwnState | OwnItem | OwnVariant | OwnChange
    | OwnSource | OwnMove
)  # fmt: skip
