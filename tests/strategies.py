"""Every hypothesis strategy of the tests."""

import random
from collections.abc import Sequence
from typing import Any

from hypothesis import strategies as st

from identify.core.looks import COLOURS, LAYERS

NEEDS = ["nothing", "nothing", "nothing", "loupe", "body off"]
FIRST, LAST = 1950, 1959


def shared(weights: list[float]) -> list[float]:
    """Weights scaled to add up to 1."""
    return [w / sum(weights) for w in weights]


@st.composite
def features(draw: st.DrawFn, place: int, parts: int, kinds: int) -> dict[str, Any]:
    count = draw(st.integers(1, 4))
    states = [{"id": f"s{n}", "name": f"state {n}", "drawing": "none"} for n in range(count)]
    none = draw(st.sampled_from([-1, -1, count - 1]))
    mistaken = [[0, 1]] if count > 1 and draw(st.booleans()) else []
    return {
        "id": f"f{place}",
        "name": f"feature {place}",
        "question": "What is it like?",
        "where": "Underneath.",
        "part": draw(st.integers(-1, parts - 1)),
        "seconds": draw(st.sampled_from([2.0, 4.0, 20.0])),
        "needs": draw(st.sampled_from(NEEDS)),
        "states": states,
        "mistaken": mistaken,
        "kinds": draw(st.sampled_from([list(range(kinds)), list(range(kinds)), [0]])),
        "none": none,
        "differs": [
            [draw(st.sampled_from([0.0, 0.02, 0.08, 0.5])) for _ in states] for _ in range(3)
        ],
    }


@st.composite
def packs(draw: st.DrawFn) -> dict[str, Any]:
    """Compiled packs as the engine reads them: small, odd, with gaps and ties."""
    kinds = draw(st.integers(1, 3))
    parts = draw(st.integers(0, 3))
    told = [draw(features(n, parts, kinds)) for n in range(draw(st.integers(1, 6)))]
    per_variant = draw(st.lists(st.integers(1, 3), min_size=1, max_size=8))
    rows = sum(per_variant)
    items = [draw(st.integers(0, min(v, 3))) for v in range(len(per_variant))]
    item_kinds = [draw(st.integers(0, kinds - 1)) for _ in range(4)]
    weight = st.sampled_from([0.2, 1.0, 1.0, 1.0, 3.0])
    variant = [v for v, count in enumerate(per_variant) for _ in range(count)]
    spans = []
    for _ in range(3):
        first = draw(st.integers(FIRST, LAST))
        length = draw(st.integers(1, LAST - first + 1))
        weights = shared([draw(weight) for _ in range(length)])
        spans.append({"first": first, "weights": weights})
    cells, backgrounds = [], []
    for feature in told:
        count = len(feature["states"])
        shares = [[]] + [[float(s == n) for s in range(count)] for n in range(count)]
        shares.append(shared([draw(weight) for _ in range(count)]))
        cells.append(
            {"shares": shares, "codes": [draw(st.integers(0, count + 1)) for _ in range(rows)]}
        )
        backgrounds.append([shared([draw(weight) for _ in range(count)]) for _ in range(kinds)])
    return {
        "format": 1,
        "id": "small",
        "version": "v1",
        "range": {"name": "Small", "first": FIRST, "last": LAST},
        "kinds": [
            {"id": f"k{k}", "name": f"K {k}", "plural": f"Ks {k}",
             "open": draw(st.sampled_from([0.05, 0.2, 0.5]))}
            for k in range(kinds)
        ],
        "parts": [
            {"id": f"p{p}", "name": f"Part {p}", "swap": draw(st.sampled_from([0.0, 0.05, 0.3]))}
            for p in range(parts)
        ],
        "features": told,
        "items": [
            {"id": f"i{i}", "number": f"N {i}O", "name": f"Item {i}", "kind": item_kinds[i],
             "carried": [f"7{i}1"] if i == 2 else [],
             "formation": draw(st.sampled_from(["", "Corrick Star"])) if i < 3 else "",
             "contains": draw(st.sampled_from([[], [0, 1], [2]])) if i == 3 else []}
            for i in range(4)
        ],
        "variants": [{"id": f"v{v}", "name": f"no. {v}", "item": i} for v, i in enumerate(items)],
        "rows": {
            "variant": variant,
            "kind": [item_kinds[items[v]] for v in variant],
            "prior": shared([draw(weight) for _ in range(rows)]),
            "span": [draw(st.integers(0, 2)) for _ in range(rows)],
        },
        "spans": spans,
        "changes": [
            {"feature": f, "state": s, "kinds": [0], "items": [1] * (f % 2)}
            for f in range(len(told)) for s in range(min(f, 1) + 1)
            if s < len(told[f]["states"])
        ],
        "cells": cells,
        "backgrounds": backgrounds,
    }  # fmt: skip


HOWS = ("sure", "sure", "twice", "unsure", "several", "other", "cannot")


@st.composite
def answers(draw: st.DrawFn, feature: dict[str, Any], hows: Sequence[str] = HOWS) -> dict[str, Any]:
    """A well-formed answer to a feature, of one of these sorts."""
    how = draw(st.sampled_from(hows))
    ids = [state["id"] for state in feature["states"]]
    states: list[str] = []
    if how in ("sure", "twice", "unsure"):
        states = [draw(st.sampled_from(ids))]
    elif how == "several":
        states = draw(st.lists(st.sampled_from(ids), min_size=1, unique=True))
    return {"feature": feature["id"], "how": how, "states": states}


@st.composite
def sessions(draw: st.DrawFn, pack: dict[str, Any]) -> dict[str, Any]:
    """A session in any state that taps can bring about."""
    asked = draw(st.lists(st.sampled_from(pack["features"]), unique_by=lambda f: f["id"]))
    numbers = [item["number"] for item in pack["items"]]
    kinds = [kind["id"] for kind in pack["kinds"]]
    parts = [part["id"] for part in pack["parts"]]
    return {
        "pack": pack["id"],
        "version": pack["version"],
        "scope": {
            "kind": draw(st.sampled_from(["", "", *kinds])),
            "items": draw(st.sampled_from([[], [], numbers[:1], numbers[1:3]])),
        },
        "able": draw(st.sampled_from([[], ["loupe"], ["loupe", "body off"]])),
        "missing": draw(st.lists(st.sampled_from(parts), unique=True)) if parts else [],
        "answers": [draw(answers(feature)) for feature in asked],
    }


CODES = ["GBP", "EUR", "USD", "CAD", "AUD", "NZD", "JPY", "CHF", "SEK", "NOK", "DKK", "ISK",
         "PLN", "CZK", "HUF", "RON"]  # fmt: skip
FARTHINGS = ["", "¼", "½", "¾"]


def moneys(codes: list[str] = CODES) -> st.SearchStrategy[dict[str, Any]]:
    """Money as records keep it; some of the sterling was old money once."""
    return st.builds(
        lambda minor, over, code: {
            "minor": minor,
            "over": over if code == "GBP" else 0,
            "currency": code,
            "typed": "",
        },
        st.integers(0, 10**7),
        st.integers(0, 47),
        st.sampled_from(codes),
    )


@st.composite
def old_texts(draw: st.DrawFn) -> tuple[str, int]:
    """An amount in old money as somebody might write it, and what it is in farthings."""
    farthings = draw(st.one_of(st.integers(0, 2000), st.integers(0, 10**6)))
    pence, rest = divmod(farthings, 4)
    shillings, pence = divmod(pence, 12)
    pounds, over = divmod(shillings, 20)
    d = f"{pence}{FARTHINGS[rest]}"
    ways = [f"{shillings}/{d}", f"{shillings}s {d}d", f"{shillings}s.{d}d.", f"{shillings}s {d}"]
    ways += [f"£{pounds} {over}s {d}d", f"£{pounds}-{over}-{d}", f"£{pounds}/{over}/{d}"]
    ways += [f"{pounds} pounds {over} shillings and {d} pence"]
    if f"{shillings}/{d}" not in ("1/2", "1/4", "3/4"):  # a half, or one and tuppence
        ways += [f"{shillings}/{d}d"]
    if f"{over}/{d}" not in ("1/2", "1/4", "3/4"):
        ways += [f"£{pounds} {over}/{d}"]
    if rest:
        quarters = ["", "1/4", "1/2", "3/4"][rest]
        ways += [f"{shillings}/{pence} {quarters}", f"{shillings}s {pence} {quarters}d"]
    if pence == rest == 0:
        ways += [f"{shillings}/-", f"{shillings} bob", f"£{pounds}/{over}/-", f"{shillings}/\u2013"]
    if shillings == 0:
        ways += [f"{d}d", f"-/{d}", f"{d} D"]
    if farthings % 252 == 0:
        guineas, half = divmod(farthings, 1008)
        ways += [f"{guineas}{FARTHINGS[half // 252]} gns"]
    return draw(st.sampled_from(ways)), farthings


@st.composite
def decimal_texts(draw: st.DrawFn) -> tuple[str, int, str]:
    """An amount as it is written today, its minor units, and its currency."""
    code, digits, marks = draw(
        st.sampled_from(
            [("GBP", 2, "£"), ("EUR", 2, "€"), ("JPY", 0, "¥"), ("CHF", 2, "Fr."), ("PLN", 2, "zł"),
             ("CZK", 2, "Kč"), ("USD", 2, "US$"), ("CAD", 2, "CAD"), ("ISK", 0, "isk")]
        )
    )  # fmt: skip
    minor = draw(st.one_of(st.integers(0, 10**5), st.integers(0, 10**9 - 1)))
    point, parting = draw(
        st.sampled_from([(".", ","), (",", "."), (",", " "), (".", "'"), (".", "")])
    )
    whole, part = divmod(minor, 10**digits)
    plain = f"{whole:,}".replace(",", parting)
    if digits:
        plain += f"{point}{part:02d}"
    elif parting == ".":  # a point before three figures is read in two ways
        plain = str(whole)
    ways = [f"{marks}{plain}", f"{marks} {plain}", f"{plain} {marks}", f" {plain}{marks} "]
    ways += [f"{code} {plain}", f"{plain} {code.lower()}"]
    return draw(st.sampled_from(ways)), minor, code


def scribbles() -> st.SearchStrategy[str]:
    """Texts that look like money, and texts that do not."""
    return st.one_of(
        st.text(max_size=12),
        st.text("0123456789.,/-£€$½¼ sdpg'", max_size=10),
        old_texts().map(lambda told: told[0]),
        decimal_texts().map(lambda told: told[0]),
    )


WORDS_OF_CONDITION = ["", "as new", "excellent", "very good", "good", "fair", "poor"]
BOXED = ["", "yes", "no"]


@st.composite
def pieces(draw: st.DrawFn, pack: dict[str, Any]) -> dict[str, Any]:
    """A piece as it is kept: known, uncertain, known by its item only; now and then one that is of
    another pack, not owned, or in the bin.
    """
    variant = draw(st.sampled_from(pack["variants"]))
    numbers = [item["number"] for item in pack["items"]]
    number = numbers[variant["item"]]
    ids = [v["id"] for v in pack["variants"]]
    several = st.lists(
        st.builds(
            lambda v, chance: {"variant": v, "chance": chance},
            st.sampled_from([*ids, "gone"]),
            st.sampled_from([0.0, 0.2, 0.5, 1.0]),
        ),
        max_size=3,
    )
    alone = st.just([{"variant": variant["id"], "chance": 1}])
    return {
        "id": f"r{draw(st.integers(0, 10**6))}",
        "pack": draw(st.sampled_from([pack["id"]] * 6 + ["other"])),
        "item": draw(st.sampled_from([number] * 6 + [numbers[0], "N 99"])),
        "of": draw(st.one_of(alone, alone, several)),
        "condition": draw(st.sampled_from(WORDS_OF_CONDITION)),
        "boxed": draw(st.sampled_from(BOXED)),
        "missing": draw(st.sampled_from([[], ["p0"]])),
        "replaced": [],
        "paid": draw(st.one_of(st.none(), moneys(["GBP", "EUR"]))),
        "when": draw(st.sampled_from(["", "1984", "1984-03~", "2001-12-05", "198X", "../1970"])),
        "kept": draw(st.sampled_from([False, False, True])),
        "purpose": draw(st.sampled_from(["", "", "", "spare", "donor"])),
        "trashed": draw(st.sampled_from(["", "", "", "", "2024-05-01T10:00:00Z"])),
    }


@st.composite
def wants(draw: st.DrawFn, pack: dict[str, Any]) -> dict[str, Any]:
    """Something looked for, with and without limits."""
    variant = draw(st.sampled_from(pack["variants"]))
    return {
        "id": f"r{draw(st.integers(0, 10**6))}",
        "pack": draw(st.sampled_from([pack["id"]] * 6 + ["other"])),
        "item": pack["items"][variant["item"]]["number"],
        "variant": draw(st.sampled_from(["", variant["id"], variant["id"], "gone"])),
        "least": draw(st.sampled_from(WORDS_OF_CONDITION)),
        "box": draw(st.sampled_from(["", "", "yes"])),
        "most": draw(st.one_of(st.none(), moneys(["GBP", "EUR"]))),
        "urgency": draw(st.sampled_from([1, 2, 3])),
        "trashed": draw(st.sampled_from(["", "", "", "2024-05-01T10:00:00Z"])),
    }


def collections(pack: dict[str, Any], most: int = 5) -> st.SearchStrategy[dict[str, Any]]:
    """A collector's records about one pack, for assess_for()."""
    return st.fixed_dictionaries(
        {
            "pieces": st.lists(pieces(pack), max_size=most),
            "wants": st.lists(wants(pack), max_size=2),
        }
    )


def hands() -> st.SearchStrategy[dict[str, Any]]:
    """What is said of the piece in hand besides the answers."""
    return st.fixed_dictionaries(
        {
            "condition": st.sampled_from(WORDS_OF_CONDITION),
            "boxed": st.sampled_from(BOXED),
            "asked": st.one_of(st.none(), moneys(["GBP"])),
        }
    )


FIELDS = ["notes", "paid", "constructor", "__proto__", "length", "1", "", "café", "trashed", "gone"]
VALUES = ['"1"', '"2"', '"3"', "1.5", "null", '"\\"\'"', '{"a":[1]}']
OWN_VALUES = {
    "trashed": ['""', '"2024"', '"2025"', "null"],
    "gone": ["true", "true", "false", "null"],
}


def random_operations(seed: int, most: int = 14) -> list[dict[str, Any]]:
    """Operations of one record, as devices write them that hear of one another now and then, in any
    order; some may not have arrived. Clocks are wrong as often as not.
    """
    chance = random.Random(seed)
    seen: list[set[str]] = [set() for _ in range(chance.randint(1, 4))]
    made: list[dict[str, Any]] = []
    count = [0] * len(seen)
    for _ in range(chance.randint(1, most)):
        d = chance.randrange(len(seen))
        if chance.random() < 0.5:
            seen[d] |= chance.choice(seen)
        named = {p for op in made if op["id"] in seen[d] for p in op["parents"]}
        count[d] += 1
        names = sorted(chance.sample(FIELDS, chance.randint(0, 3)))
        fields = [[name, chance.choice(OWN_VALUES.get(name, VALUES))] for name in names]
        made.append(
            {
                "id": f"d{d}.{count[d]}", "device": f"d{d}", "n": count[d],
                "parents": sorted(seen[d] - named), "wall": chance.randint(0, 5),
                "count": chance.randint(0, 1), "type": "piece", "fields": fields,
            }
        )  # fmt: skip
        seen[d].add(made[-1]["id"])
    return chance.sample(made, chance.randint(max(1, len(made) - 2), len(made)))


def operation_sets() -> st.SearchStrategy[list[dict[str, Any]]]:
    """Sets of operations of one record, each made from a number that is small where it can be."""
    return st.integers(0, 10**9).map(random_operations)


@st.composite
def portraits(draw: st.DrawFn) -> dict[str, Any]:
    """What `portrait` of the core may give, of any range: any layers with any looks, any texts."""
    layers = []
    for layer in draw(st.lists(st.sampled_from([*LAYERS, "set"]), unique=True)):
        known = st.sampled_from(LAYERS.get(layer, ["set"])) | st.just("#1a2b3c") | st.just("")
        text = st.text(min_size=1, max_size=24).map("letters: {}".format)
        looks = draw(st.lists(known | text if layer == "emblem" else known, max_size=4))
        layers.append({"layer": layer, "look": looks[0] if looks else "", "looks": looks})
    colour = st.sampled_from(["", *COLOURS])
    return {
        "layers": layers,
        "name": draw(st.text(max_size=40)),
        "number": draw(st.text(max_size=12)),
        "letters": draw(colour),
        "second": draw(colour),
        "load": draw(st.sampled_from(["", "logs", "container", "drums", "coal"])),
        "contents": draw(st.lists(st.sampled_from(LAYERS["body"]), max_size=7)),
    }
