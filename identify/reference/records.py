"""What the files of a pack say, entry by entry, each with the line it stands on.

Every field has a default, so that an entry with a mistake in one field can still be checked in the
others. What must be given is listed in `needed`; the description of a type is how a mistake in it
is explained.
"""

from typing import Annotated, ClassVar, Final, Literal, NamedTuple

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


CAPTION: Final = "At most three words; blank: the name"


class Shown(NamedTuple):
    """How the editor in the app shows a field: what it is called there, what to write in it, and
    how it is typed or chosen where its type does not say so (editor_fields.py).
    """

    label: str
    hint: str = ""
    sort: str = ""


class Entry(msgspec.Struct, kw_only=True):
    """What every entry has: where it begins, and in TOML the line of each of its keys."""

    needed: ClassVar[tuple[str, ...]] = ()
    line: int = 0
    lines: dict[str, int] = {}


class Range(Entry):
    needed = ("name", "maker", "gauge_mm", "scale", "country", "years", "about")
    name: Annotated[Text, Shown("Name", "What people call the range")] = ""
    maker: Annotated[Text, Shown("Maker")] = ""
    gauge_mm: Annotated[Measure, Shown("Gauge in mm")] = 1.0
    scale: Annotated[Text, Shown("Scale")] = ""
    country: Annotated[Country, Shown("Country", "Two capitals, such as GB")] = ""
    years: Annotated[Text, Shown("Life of the range", sort="years")] = ""
    about: Annotated[Text, Shown("About it", "One paragraph, shown in the app", sort="long")] = ""
    material: Annotated[Text, Shown("What the bodies are made of", "May be left out")] = ""
    invented: Annotated[Truth, Shown("This range was made up")] = False


class Kind(Entry):
    """`kit`, here as in what follows: what it is called in the kit that it was picked from."""

    needed = ("id", "name", "plural")
    id: Annotated[Id, Shown("Id")] = ""
    name: Annotated[Text, Shown("Name")] = ""
    kit: Annotated[Free, Shown("Picked from the kit", "What it is called there")] = ""
    plural: Annotated[Text, Shown("Name of several")] = ""
    caption: Annotated[Short, Shown("Caption", CAPTION)] = ""
    complete: Annotated[
        Text,
        Shown("How complete", "All I know of; a beginning; or: every catalogue gone through"),
    ] = ""  # one of COMPLETE


class Part(Entry):
    needed = ("id", "name", "swap")
    id: Annotated[Id, Shown("Id")] = ""
    kit: Annotated[Free, Shown("Picked from the kit", "What it is called there")] = ""
    name: Annotated[Text, Shown("Name")] = ""
    swap: Annotated[
        Chance, Shown("Chance that it was replaced", "From 0 to 1, of pieces met at a stall")
    ] = 0.0
    replaced: Annotated[Free, Shown("What a replaced one means for the price", sort="long")] = ""


class Caution(Entry):
    needed = ("text",)
    kinds: Annotated[Ids | None, Shown("For these kinds", "None ticked: for every kind")] = None
    text: Annotated[Text, Shown("Caution", sort="long")] = ""


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
    id: Annotated[Id, Shown("Id")] = ""
    name: Annotated[Text, Shown("Name", "Short, for lists")] = ""
    title: Annotated[Short, Shown("Title of its card", CAPTION)] = ""
    question: Annotated[Text, Shown("Question")] = ""
    where: Annotated[Text, Shown("Where to look")] = ""
    seconds: Annotated[Measure, Shown("Seconds it takes to look")] = 1.0
    needs: Annotated[Needs, Shown("What it needs")] = "nothing"
    mistaken: Annotated[Pairs, Shown("Taken for one another")] = []
    states: Annotated[list[State], Shown("What can be seen")] = []


class Feature(Look):
    kit: Annotated[Free, Shown("Picked from the kit", "What it is called there")] = ""
    part: Annotated[
        Free,
        Shown(
            "Part it is on", "None: on the piece itself, which cannot be swapped", sort="one:parts"
        ),
    ] = ""
    kinds: Annotated[Ids | None, Shown("Kinds that have it", "None ticked: every kind")] = None
    when: Annotated[When, Shown("Asked only where")] = {}
    layer: Annotated[Free, Shown("What it shows in a portrait")] = ""
    unseen: Annotated[Free, Shown("Why a portrait does not show it")] = ""


class MarkFeature(Look):
    """A mark that dates by itself. `parts`: the first of these that a pack has carries it."""

    needed = (*Look.needed, "parts", "seen")
    parts: Ids = []
    seen: Chance = 0.0


class Source(Entry):
    needed: ClassVar[tuple[str, ...]] = ("id", "what", "trust")
    id: Annotated[Id, Shown("Id")] = ""
    what: Annotated[Text, Shown("What it is")] = ""
    year: Annotated[Free, Shown("Year", sort="years")] = ""
    trust: Annotated[Chance, Shown("How far its years are to be trusted", "From 0 to 1")] = 1.0


class Item(Entry):
    needed = ("number", "name", "kind")
    number: Annotated[Text, Shown("Number", "As printed on the box end")] = ""
    name: Annotated[Text, Shown("Name")] = ""
    kind: Annotated[Text, Shown("Kind", sort="one:kinds")] = ""
    years: Annotated[Free, Shown("Years", sort="years")] = ""
    source: Annotated[Free, Shown("Source of the years", sort="one:sources")] = ""
    other_years: Annotated[Said, Shown("What other sources say")] = []
    formation: Annotated[
        Free, Shown("Formation", "A name shared by pieces that belong together")
    ] = ""
    contains: Annotated[
        Texts, Shown("Contains (boxed set)", "Numbers of items, separated by ;")
    ] = []
    carried: Annotated[
        Texts, Shown("Printed on the piece", "Running numbers or names, separated by ;")
    ] = []
    note: Annotated[Free, Shown("Note", sort="long")] = ""
    cells: dict[str, str] = {}


class Variant(Entry):
    needed = ("id", "item", "name", "common")
    id: Annotated[Id, Shown("Id")] = ""
    item: Annotated[Text, Shown("Item", sort="one:items")] = ""
    name: Annotated[Text, Shown("Name")] = ""
    years: Annotated[Free, Shown("Years", "Blank: as the item", sort="years")] = ""
    source: Annotated[Free, Shown("Source of the years", sort="one:sources")] = ""
    other_years: Annotated[Said, Shown("What other sources say")] = []
    common: Annotated[Measure, Shown("How often it is met", "1 is ordinary, 0.2 seldom")] = 1.0
    note: Annotated[Free, Shown("Note", sort="long")] = ""
    cells: dict[str, str] = {}


class Change(Entry):
    needed = ("feature", "state")
    feature: Annotated[Text, Shown("Feature", sort="one:feature")] = ""
    state: Annotated[Text, Shown("State that was fitted", sort="state")] = ""
    came: Annotated[
        str, Meta(description="text"), Shown("From", "Blank: since the range began", sort="years")
    ] = msgspec.field(name="from", default="")
    ended: Annotated[
        str,
        Meta(description="text"),
        Shown("To", "Blank: until the next change of the same feature", sort="years"),
    ] = msgspec.field(name="to", default="")
    kinds: Annotated[
        Texts,
        Shown(
            "Only these kinds", "None ticked: every kind that has the feature", sort="cell:kinds"
        ),
    ] = []
    items: Annotated[Texts, Shown("Only these items", "Numbers, separated by ;")] = []
    source: Annotated[Free, Shown("Source", sort="one:sources")] = ""
    other_from: Annotated[Said, Shown("What other sources say")] = []
    note: Annotated[Free, Shown("Note", sort="long")] = ""


class Move(Entry):
    """An item's number or a variant's id that was changed, or is no more."""

    needed = ("what", "from")
    what: Annotated[
        Literal["item", "variant"], Meta(description='"item" or "variant"'), Shown("What")
    ] = "item"
    old: Annotated[str, Meta(min_length=1, description="text"), Shown("Was called")] = (
        msgspec.field(name="from", default="")
    )
    new: Annotated[
        str, Meta(description="text"), Shown("Is called now", "Blank: it is no more")
    ] = msgspec.field(name="to", default="")
    note: Annotated[Free, Shown("Note", sort="long")] = ""


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
