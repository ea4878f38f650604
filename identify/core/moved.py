"""Holdings that point to what a newer version of a pack calls by another name, or has no more."""

from .lists import plus
from .types.engine import Engine
from .types.holdings import Moved
from .types.pack import Move, Moving
from .types.records import Chance, InPack


def moved_name(moves: list[Move], what: Moving, ident: str, known: list[str]) -> str:
    """What an item's number or a variant's id is now: itself while it is known, "" when gone."""
    name = ident
    for _ in range(len(moves) + 1):
        if name in known:
            return name
        onward = ""
        for move in moves:
            if move["what"] == what and move["from"] == name:
                onward = move["to"]
        name = onward
    return ""


def moved(engine: Engine, records: list[InPack]) -> list[Moved]:
    """The records of this pack that point to what moved or is gone, each with where they point now.

    What is gone stays named as it was. Variants that became one have their chances added.
    """
    pack = engine["pack"]
    moves = pack.get("moves", [])
    numbers = [item["number"] for item in pack["items"]]
    variants = [variant["id"] for variant in pack["variants"]]
    out: list[Moved] = []
    for record in records:
        if record["pack"] == pack["id"]:
            now = moved_record(moves, numbers, variants, record)
            if now["changed"] + now["gone"] > 0:
                out.append(now)
    return out


def moved_record(
    moves: list[Move],
    numbers: list[str],
    variants: list[str],
    record: InPack,
) -> Moved:
    """Where a record points now."""
    now: Moved = {
        "id": record["id"], "changed": 0, "gone": 0,
        "item": record.get("item", ""), "variant": record.get("variant", ""), "of": [],
    }  # fmt: skip
    if len(now["item"]) > 0:
        now["item"] = kept_name(now, moves, "item", now["item"], numbers)
    if len(now["variant"]) > 0:
        now["variant"] = kept_name(now, moves, "variant", now["variant"], variants)
    for chance in record.get("of", []):
        entry: Chance = {"chance": chance["chance"], "variant": chance["variant"]}
        if len(entry["variant"]) > 0:
            entry["variant"] = kept_name(now, moves, "variant", entry["variant"], variants)
        if "item" in chance:
            entry["item"] = chance["item"]
            if len(entry["item"]) > 0:
                entry["item"] = kept_name(now, moves, "item", entry["item"], numbers)
        now["of"] = with_chance(now["of"], entry)
    return now


def kept_name(now: Moved, moves: list[Move], what: Moving, ident: str, known: list[str]) -> str:
    """The name as it is now; one that is gone stays, and `now` is told either way."""
    name = moved_name(moves, what, ident, known)
    if len(name) == 0:
        now["gone"] = now["gone"] + 1
        return ident
    if name != ident:
        now["changed"] = now["changed"] + 1
    return name


def with_chance(of: list[Chance], entry: Chance) -> list[Chance]:
    """The list with one more entry, or its chance added where the variant is named already."""
    for other in of:
        if len(entry["variant"]) > 0 and other["variant"] == entry["variant"]:
            other["chance"] = other["chance"] + entry["chance"]
            return of
    return plus(of, entry)
