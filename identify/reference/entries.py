"""What the files of a pack say, entry by entry, each with the line it stands on.

Every field has a default, so that an entry with a mistake in one field can still be checked in the
others. What must be given is listed in `needed`; the description of a type is how a mistake in it
is explained.
"""

from typing import Annotated, ClassVar, Final, Literal

import msgspec
from msgspec import Meta

Id = Annotated[
    str,
    Meta(
        pattern=r"^[a-z][a-z0-9_]*\Z",
        description="lower case letters, digits and _, beginning with a letter",
    ),
]
Text = Annotated[str, Meta(min_length=1, description="text")]
Free = Annotated[str, Meta(description="text")]
Chance = Annotated[float, Meta(ge=0, le=1, description="a number from 0 to 1")]
Measure = Annotated[float, Meta(gt=0, le=1000, description="a number above 0, up to 1000")]
Short = Annotated[
    str,
    Meta(
        pattern=r"^(\S+( \S+){0,2})?\Z",
        max_length=22,
        description='at most three words and 22 characters, such as "Hook and loop"',
    ),
]
Country = Annotated[str, Meta(pattern=r"^[A-Z]{2}\Z", description='two capitals such as "GB"')]
Needs = Annotated[
    Literal["nothing", "loupe", "body off"],
    Meta(description='"nothing", "loupe" or "body off"'),
]
Truth = Annotated[bool, Meta(description="true or false")]
Ids = Annotated[list[str], Meta(description='a list of ids such as ["coach"]')]
When = Annotated[
    dict[str, list[str]],
    Meta(description='features with lists of states such as { horns = ["metal"] }'),
]
Pairs = Annotated[
    list[tuple[str, str]],
    Meta(description='a list of pairs of states such as [["loop", "bar"]]'),
]
PUBLISHED: Final = "published"
PRACTICE: Final = "common practice, no source"
MEMORY: Final = "from memory"
Label = Annotated[
    Literal["published", "common practice, no source", "from memory"],
    Meta(description=f'"{PUBLISHED}", "{PRACTICE}" or "{MEMORY}"'),
]
EndLabel = Annotated[
    Literal["", "published", "common practice, no source", "from memory"],
    Meta(description=f'"{PUBLISHED}", "{PRACTICE}" or "{MEMORY}", or blank where open'),
]
AUTHORITIES: Final = ("statute", "office", "standard", "publication")
SourceKind = Annotated[
    Literal["statute", "office", "standard", "publication", "page", "encyclopedia"],
    Meta(
        description='"statute", "office", "standard", "publication", "page" (of a private person) '
        'or "encyclopedia" (that anyone edits)'
    ),
]
Count = Annotated[int, Meta(ge=1, description="a whole number from 1")]
NumberIs = Annotated[
    Literal["first", "given", "unused", "limit"],
    Meta(
        description='"first" (of its year), "given" (in that year), "unused" (from here on) or '
        '"limit" (not reached by that year)'
    ),
]
Texts = Annotated[list[str], Meta(description="texts separated by ;")]
Said = Annotated[
    list[tuple[str, str]],
    Meta(description='"source years; source years" such as book71 1958/1961; ad57 1957'),
]


class Entry(msgspec.Struct, kw_only=True):
    """What every entry has: where it begins, and in TOML the line of each of its keys."""

    needed: ClassVar[tuple[str, ...]] = ()
    line: int = 0
    lines: dict[str, int] = {}


class Range(Entry):
    needed = ("name", "maker", "gauge_mm", "scale", "country", "years", "about")
    name: Text = ""
    maker: Text = ""
    gauge_mm: Measure = 1.0
    scale: Text = ""
    country: Country = ""
    years: Text = ""
    about: Text = ""
    material: Text = ""
    by: Text = ""
    invented: Truth = False


class Kind(Entry):
    """`kit`, here as in what follows: what it is called in the kit that it was picked from."""

    needed = ("id", "name", "plural")
    id: Id = ""
    name: Text = ""
    kit: Free = ""
    plural: Text = ""
    caption: Short = ""
    complete: Text = ""  # one of COMPLETE


class Part(Entry):
    needed = ("id", "name", "swap")
    id: Id = ""
    kit: Free = ""
    name: Text = ""
    swap: Chance = 0.0
    replaced: Free = ""
    altered: Text = ""


class Caution(Entry):
    needed = ("text",)
    kinds: Ids | None = None
    text: Text = ""


class State(Entry):
    needed = ("id", "name")
    id: Id = ""
    kit: Free = ""
    name: Text = ""
    caption: Short = ""
    look: Free = ""


class Look(Entry):
    """Something to look at, and what can be seen there."""

    needed: ClassVar[tuple[str, ...]] = (
        "id",
        "name",
        "question",
        "where",
        "seconds",
        "needs",
        "states",
    )
    id: Id = ""
    name: Text = ""
    title: Short = ""
    question: Text = ""
    where: Text = ""
    seconds: Measure = 1.0
    needs: Needs = "nothing"
    mistaken: Pairs = []
    states: list[State] = []


class Feature(Look):
    kit: Free = ""
    part: Free = ""
    kinds: Ids | None = None
    when: When = {}
    layer: Free = ""
    unseen: Free = ""


class MarkFeature(Look):
    """A mark that dates by itself. `parts`: the first of these that a pack has carries it."""

    needed = (*Look.needed, "parts", "seen")
    parts: Ids = []
    seen: Chance = 0.0


class Source(Entry):
    needed: ClassVar[tuple[str, ...]] = ("id", "what", "trust")
    id: Id = ""
    what: Text = ""
    year: Free = ""
    trust: Chance = 1.0


class Item(Entry):
    needed = ("number", "name", "kind")
    number: Text = ""
    name: Text = ""
    kind: Text = ""
    years: Free = ""
    source: Free = ""
    other_years: Said = []
    formation: Free = ""
    contains: Texts = []
    carried: Texts = []
    note: Free = ""
    cells: dict[str, str] = {}


class Variant(Entry):
    needed = ("id", "item", "name", "common")
    id: Id = ""
    item: Text = ""
    name: Text = ""
    years: Free = ""
    source: Free = ""
    other_years: Said = []
    common: Measure = 1.0
    note: Free = ""
    cells: dict[str, str] = {}


class Change(Entry):
    needed = ("feature", "state")
    feature: Text = ""
    state: Text = ""
    came: Annotated[str, Meta(description="text")] = msgspec.field(name="from", default="")
    ended: Annotated[
        str,
        Meta(description="text"),
    ] = msgspec.field(name="to", default="")
    kinds: Texts = []
    items: Texts = []
    source: Free = ""
    other_from: Said = []
    note: Free = ""


class Move(Entry):
    """An item's number or a variant's id that was changed, or is no more."""

    needed = ("what", "from")
    what: Annotated[Literal["item", "variant"], Meta(description='"item" or "variant"')] = "item"
    old: Annotated[str, Meta(min_length=1, description="text")] = msgspec.field(
        name="from", default=""
    )
    new: Annotated[str, Meta(description="text")] = msgspec.field(name="to", default="")
    note: Free = ""


class MarkRow(Entry):
    """The years in which a wording may stand on new pieces of these countries.

    Each end has its own label, source and edge: "hard", or the years of its tail and who says so.
    """

    needed = ("country", "feature", "state", "wording", "earliest", "latest")
    country: Texts = []
    feature: Text = ""
    state: Text = ""
    wording: Text = ""
    earliest: Text = ""
    from_label: EndLabel = ""
    from_source: Free = ""
    from_edge: Free = ""
    latest: Text = ""
    to_label: EndLabel = ""
    to_source: Free = ""
    to_edge: Free = ""
    note: Free = ""


class MarkSource(Source):
    """Who says when a mark was in use: what kind of authority that is, and where it was read.

    `read` is blank where nothing of it was read, so that it can bear out no end as published.
    """

    needed: ClassVar[tuple[str, ...]] = ("id", "what", "trust", "kind")
    kind: SourceKind = "page"
    read: Free = ""


class NumberRow(Entry):
    """A number of a yearly series, and what is known of it."""

    needed = ("number", "what", "label")
    number: Count = 1
    what: NumberIs = "first"
    year: Free = ""
    source: Free = ""
    label: Label = PUBLISHED


class Series(Entry):
    """A series of numbers that ran on over the years; its numbers are in numbers/<id>.csv."""

    needed = ("id", "country", "kind", "name", "done", "example")
    id: Id = ""
    country: Country = ""
    kind: Text = ""
    name: Text = ""
    done: Text = ""
    example: Text = ""
    wordings: Texts = []
    note: Free = ""


class MarkWords(Entry):
    """Words on a piece, and what they are: a wording of a mark, the lead of a number, or both."""

    needed = ("words",)
    words: Text = ""
    feature: Free = ""
    state: Free = ""
    country: Texts = []
    series: Texts = []


class MarkShape(Entry):
    """What a mark without words looks like, such as a price or a code; how: core/mark_shapes.py."""

    needed = ("shape", "feature", "state", "country")
    shape: Text = ""
    feature: Text = ""
    state: Text = ""
    country: Texts = []
    series: Texts = []


class Pack(msgspec.Struct, kw_only=True):
    """A pack as its files say it. `unread`: files that could not be read at all."""

    id: str
    range: Range
    kinds: list[Kind]
    parts: list[Part]
    cautions: list[Caution]
    features: list[Feature]
    sources: list[Source]
    items: list[Item]
    variants: list[Variant]
    changes: list[Change]
    drawings: dict[str, str]
    unread: set[str]
    moves: list[Move] = []
