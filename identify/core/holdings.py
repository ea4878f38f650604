"""What the collector owns, as chances.

c[p,v]      chance that piece p is variant v: 1 for a known one, its share of `of` for an uncertain
            one, by the variant's prior where only the item is known
lacking[v]  chance of owning no piece of variant v: product over the pieces of 1 - c[p,v]
without[i]  chance of owning no piece of item i, the same over the item's variants

Spares, donors and pieces in the bin are not owned; the first two are kept apart by name.
"""

from .lists import empty_lists, filled, total
from .types.engine import Engine
from .types.holdings import Held, Holdings, Places, Shares, Shelf
from .types.pack import Item
from .types.records import Kept, Piece


def shelfmark(pack: str, ident: str) -> str:
    """What an item (by its number) or a variant of a pack is looked up by, whatever the text."""
    return pack + " " + ident


def home_of(engine: Engine, item: Item) -> str:
    """The id of the pack that an item is from: its own where packs are joined."""
    return item.get("pack", engine["pack"]["id"])


def items_at(engine: Engine) -> dict[str, int]:
    """Where each item stands, by shelfmark()."""
    out: dict[str, int] = {}
    items = engine["pack"]["items"]
    for i in range(len(items)):
        out[shelfmark(home_of(engine, items[i]), items[i]["number"])] = i
    return out


def variants_at(engine: Engine) -> dict[str, int]:
    """Where each variant stands, by shelfmark(). In joined packs its id begins with its pack's."""
    pack = engine["pack"]
    out: dict[str, int] = {}
    for v in range(len(pack["variants"])):
        ident = pack["variants"][v]["id"]
        home = home_of(engine, pack["items"][pack["variants"][v]["item"]])
        if home != pack["id"]:
            ident = ident[len(home) + 1 : len(ident)]
        out[shelfmark(home, ident)] = v
    return out


def shelf(engine: Engine) -> Shelf:
    """The pack's items and variants for look-up, made once."""
    if len(engine["shelf"]) == 0:
        engine["shelf"] = [new_shelf(engine)]
    return engine["shelf"][0]


def new_shelf(engine: Engine) -> Shelf:
    """The same, made anew."""
    pack = engine["pack"]
    inside = empty_lists(len(pack["items"]))
    for v in range(len(pack["variants"])):
        inside[pack["variants"][v]["item"]].append(v)
    priors = filled(len(pack["variants"]), 0.0)
    variants = pack["rows"]["variant"]
    for i in range(len(variants)):
        priors[variants[i]] = priors[variants[i]] + pack["rows"]["prior"][i]
    shares = filled(len(priors), 0.0)
    for family in inside:
        whole = total([priors[n] for n in family])
        for v in family:
            shares[v] = priors[v] / whole if whole > 0.0 else 1.0 / len(family)
    return {
        "items": items_at(engine),
        "variants": variants_at(engine),
        "inside": inside,
        "shares": shares,
    }


def put_in(at: list[int], chances: list[float], place: int, chance: float) -> None:
    """Add a chance to that of a place, which joins the list where it is new."""
    for n in range(len(at)):
        if at[n] == place:
            chances[n] = chances[n] + chance
            return
    at.append(place)
    chances.append(chance)


def spread(engine: Engine, store: Shelf, piece: Piece) -> Held:
    """What a piece can be.

    Its `of` is scaled to add up to 1. What names no variant of this pack counts as "some variant of
    the item"; a piece whose item is not in the pack either is nowhere.
    """
    item = store["items"].get(shelfmark(piece["pack"], piece["item"]), -1)
    at: list[int] = []
    chances: list[float] = []
    unknown = 0.0
    for entry in piece.get("of", []):
        v = store["variants"].get(shelfmark(piece["pack"], entry["variant"]), -1)
        if v >= 0 and entry["chance"] > 0.0:
            put_in(at, chances, v, entry["chance"])
        elif entry["chance"] > 0.0:
            unknown = unknown + entry["chance"]
    if len(at) == 0:
        unknown = 1.0
    items: list[int] = []
    shares: list[float] = []
    variants = engine["pack"]["variants"]
    if item < 0:
        unknown = 0.0
    whole = total(chances) + unknown
    for n in range(len(at)):
        chances[n] = chances[n] / whole
        put_in(items, shares, variants[at[n]]["item"], chances[n])
    if unknown > 0.0:
        put_in(items, shares, item, unknown / whole)
        for v in store["inside"][item]:
            put_in(at, chances, v, unknown / whole * store["shares"][v])
    return {"record": piece, "at": at, "chances": chances, "items": items, "shares": shares}


def in_use(records: list[Kept]) -> list[Kept]:
    """The records that are not in the bin."""
    return [record for record in records if record.get("trashed", "") == ""]


def spread_all(engine: Engine, pieces: list[Piece]) -> list[Held]:
    """What each of them can be: the same as long as a piece stays the same."""
    store = shelf(engine)
    return [spread(engine, store, piece) for piece in pieces]


def hold(engine: Engine, pieces: list[Piece]) -> Holdings:
    """What is owned of what this pack lists."""
    return held_of(engine, spread_all(engine, in_use(pieces)))


def held_of(engine: Engine, entries: list[Held]) -> Holdings:
    """The same of what each piece can be, by spread_all()."""
    owned: list[Held] = []
    spares: list[Held] = []
    for entry in entries:
        if len(entry["items"]) > 0 and entry["record"].get("purpose", "") == "":
            owned.append(entry)
        elif len(entry["items"]) > 0:
            spares.append(entry)
    return {
        "owned": owned,
        "spares": spares,
        "lacking": none_of(owned, "at", "chances", len(engine["pack"]["variants"])),
        "without": none_of(owned, "items", "shares", len(engine["pack"]["items"])),
    }


def none_of(entries: list[Held], at: Places, chances: Shares, count: int) -> list[float]:
    """For each of `count` places the chance that no entry is there."""
    out = filled(count, 1.0)
    for entry in entries:
        where = entry[at]
        for n in range(len(where)):
            out[where[n]] = out[where[n]] * max(0.0, 1.0 - entry[chances][n])
    return out


def meeting(entry: Held, at: Places, shares: Shares, chances: list[float]) -> float:
    """The chance that a held piece and the piece in hand are the same variant, or item."""
    out = 0.0
    where = entry[at]
    for n in range(len(where)):
        out = out + entry[shares][n] * chances[where[n]]
    return out
