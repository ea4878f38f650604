"""The compiled pack: all that the engine and the screens need, as plain JSON."""

import hashlib
from typing import Annotated, Any, Literal

import msgspec
from msgspec import Meta

Index = Annotated[int, Meta(ge=0)]
Share = Annotated[float, Meta(ge=0, le=1)]
Said = list[tuple[Index, str]]


class _Closed(msgspec.Struct, kw_only=True, forbid_unknown_fields=True):
    """Nothing but the fields named."""


class Range(_Closed, omit_defaults=True):
    name: str
    maker: str
    gauge_mm: float
    gauge: str
    material: str
    scale: str
    country: str
    first: int
    last: int
    about: str
    invented: bool
    by: str = ""


class Kind(_Closed, omit_defaults=True):
    id: str
    name: str
    plural: str
    caption: str = ""
    open: Share | None = None


class Part(_Closed, omit_defaults=True):
    id: str
    name: str
    swap: Share
    replaced: str
    altered: str = ""


class Caution(_Closed):
    kinds: list[Index]
    text: str


class Source(_Closed):
    id: str
    what: str
    year: str
    trust: Share


class State(_Closed, omit_defaults=True):
    id: str
    name: str
    drawing: str
    caption: str = ""
    look: str = ""


class Feature(_Closed, omit_defaults=True):
    id: str
    name: str
    question: str
    where: str
    part: Annotated[int, Meta(ge=-1)]
    seconds: Annotated[float, Meta(gt=0)]
    needs: Literal["nothing", "loupe", "body off"]
    states: list[State]
    mistaken: list[tuple[Index, Index]]
    kinds: list[Index]
    none: Annotated[int, Meta(ge=-1)]
    title: str = ""
    layer: str = ""
    unseen: str = ""
    seen: Share = 0.0
    differs: list[list[Share]] = []


class Item(_Closed):
    id: str
    number: str
    name: str
    kind: Index
    years: str
    said: Said
    formation: str
    contains: list[Index]
    carried: list[str]
    note: str


class Variant(_Closed):
    id: str
    name: str
    item: Index
    years: str
    said: Said
    note: str


class Change(_Closed, omit_defaults=True):
    feature: Index
    state: Index
    kinds: list[Index]
    items: list[Index]
    came: str = msgspec.field(name="from")
    ended: str = msgspec.field(name="to")
    said: Said
    note: str
    said_to: Said = []
    hard: list[bool] = []


class Move(_Closed):
    what: Literal["item", "variant"]
    old: str = msgspec.field(name="from")
    new: str = msgspec.field(name="to")
    note: str


class Rows(_Closed):
    variant: list[Index]
    kind: list[Index]
    prior: list[Share]
    span: list[Index]


class Span(_Closed):
    first: int
    weights: list[Share]


class Cells(_Closed):
    shares: list[list[Share]]
    codes: list[Index]


class CompiledPack(_Closed, omit_defaults=True):
    format: Literal[1]
    id: str
    version: str
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
    cells: list[Cells]
    backgrounds: list[list[list[Share]]]
    drawings: dict[str, str]
    moves: list[Move] = []


def pack_bytes(compiled: CompiledPack) -> bytes:
    """The compiled pack as JSON: keys sorted, the same bytes for the same pack."""
    return msgspec.json.encode(compiled, order="sorted")


def version_of(compiled: CompiledPack) -> str:
    """The first 16 hex digits of the SHA-256 of everything but the version."""
    everything = msgspec.to_builtins(compiled)
    del everything["version"]
    return hashlib.sha256(msgspec.json.encode(everything, order="sorted")).hexdigest()[:16]


def pack_schema() -> dict[str, Any]:
    """JSON Schema (2020-12) of the compiled pack."""
    schema = msgspec.json.schema(CompiledPack)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
