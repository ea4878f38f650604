"""The verdict by going through every way in which an uncertain collection can be."""

import itertools
from collections.abc import Iterator
from typing import Any

World = tuple[
    tuple[int, int], ...
]  # the (item, variant) of every piece owned, variant -1: unlisted


def readings(pack: dict[str, Any], piece: dict[str, Any]) -> dict[tuple[int, int], float]:
    """What one piece can be, with chances; {} for a piece that is nowhere in this pack."""
    if piece["pack"] != pack["id"]:
        return {}
    item = next((i for i, it in enumerate(pack["items"]) if it["number"] == piece["item"]), None)
    prior = [0.0] * len(pack["variants"])
    for v, p in zip(pack["rows"]["variant"], pack["rows"]["prior"], strict=True):
        prior[v] += p
    inside = [v for v, variant in enumerate(pack["variants"]) if variant["item"] == item]
    ids = {variant["id"]: v for v, variant in enumerate(pack["variants"])}
    out: dict[tuple[int, int], float] = {}
    entries = [e for e in piece["of"] if e["chance"] > 0]
    if not any(e["variant"] in ids for e in entries):
        entries = [{"variant": "gone", "chance": 1.0}]
    for entry in entries:
        v = ids.get(entry["variant"])
        if v is not None:
            at = (pack["variants"][v]["item"], v)
            out[at] = out.get(at, 0.0) + entry["chance"]
        elif item is not None and not inside:
            out[item, -1] = out.get((item, -1), 0.0) + entry["chance"]
        elif item is not None:
            for w in inside:
                share = prior[w] / sum(prior[x] for x in inside)
                out[item, w] = out.get((item, w), 0.0) + entry["chance"] * share
    whole = sum(out.values())
    return {at: chance / whole for at, chance in out.items()} if out else {}


def owned(records: dict[str, Any]) -> list[dict[str, Any]]:
    return [p for p in records["pieces"] if p["purpose"] == "" and p["trashed"] == ""]


def worlds(pack: dict[str, Any], pieces: list[dict[str, Any]]) -> Iterator[tuple[float, World]]:
    """Every way the pieces can be, with its chance."""
    each = [readings(pack, piece) or {(-1, -1): 1.0} for piece in pieces]
    for world in itertools.product(*(reading.items() for reading in each)):
        chance = 1.0
        for _, p in world:
            chance *= p
        yield chance, tuple(at for at, _ in world)


def outcomes(pack: dict[str, Any], records: dict[str, Any]) -> list[dict[str, float]]:
    """For each variant the chances that it is owned, another of its item is, or none is."""
    out = [{"same": 0.0, "other": 0.0, "new": 0.0} for _ in pack["variants"]]
    for chance, world in worlds(pack, owned(records)):
        items = {item for item, _ in world}
        for v, variant in enumerate(pack["variants"]):
            if any(w == v for _, w in world):
                out[v]["same"] += chance
            elif variant["item"] in items:
                out[v]["other"] += chance
            else:
                out[v]["new"] += chance
    return out


def is_better(hand: dict[str, Any], piece: dict[str, Any]) -> bool:
    """By the order of the words, written out."""
    words = ["poor", "fair", "good", "very good", "excellent", "as new"]
    if hand["condition"] == "" or piece["condition"] == "":
        return False
    ours, theirs = words.index(hand["condition"]), words.index(piece["condition"])
    return ours > theirs or (ours == theirs and (hand["boxed"], piece["boxed"]) == ("yes", "no"))


def upgrades(pack: dict[str, Any], records: dict[str, Any], hand: dict[str, Any]) -> list[float]:
    """For each variant the chance that some of it is owned, and all of that worse than the hand."""
    pieces = owned(records)
    out = [0.0] * len(pack["variants"])
    for chance, world in worlds(pack, pieces):
        for v in range(len(out)):
            copies = [p for p, (_, w) in zip(pieces, world, strict=True) if w == v]
            if copies and all(is_better(hand, piece) for piece in copies):
                out[v] += chance
    return out


def wanted(pack: dict[str, Any], records: dict[str, Any], hand: dict[str, Any]) -> list[str]:
    """For each variant "no", "yes" or "dear"."""
    words = ["", "poor", "fair", "good", "very good", "excellent", "as new"]
    ids = [v["id"] for v in pack["variants"]]
    out = []
    for variant in pack["variants"]:
        found = "no"
        for want in records["wants"]:
            right = want["item"] == pack["items"][variant["item"]]["number"]
            right = right and (want["variant"] not in ids or want["variant"] == variant["id"])
            ours, least = words.index(hand["condition"]), words.index(want["least"])
            short = (0 < ours < least) or (want["box"] == "yes" and hand["boxed"] == "no")
            if want["pack"] != pack["id"] or want["trashed"] or not right or short:
                continue
            most, asked = want["most"], hand["asked"]
            dear = bool(most and asked and most["currency"] == asked["currency"])
            dear = dear and (asked["minor"], asked["over"]) > (most["minor"], most["over"])
            found = "dear" if dear and found != "yes" else "yes"
        out.append(found)
    return out


def completes(pack: dict[str, Any], records: dict[str, Any]) -> list[bool]:
    """For each variant whether its item is missing where others of a formation or set are owned."""
    chance_of = [0.0] * len(pack["items"])
    for chance, world in worlds(pack, owned(records)):
        for item in {item for item, _ in world if item >= 0}:
            chance_of[item] += chance
    have = {i for i, p in enumerate(chance_of) if p >= 0.5}
    names = {it["formation"] for it in pack["items"]} - {""}
    wholes = [{i for i, it in enumerate(pack["items"]) if it["formation"] == n} for n in names]
    wholes += [set(it["contains"]) for i, it in enumerate(pack["items"]) if i not in have]
    adds = {i for whole in wholes if whole & have for i in whole - have}
    return [variant["item"] in adds for variant in pack["variants"]]
