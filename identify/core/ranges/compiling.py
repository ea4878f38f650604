"""A range's rows as the compiled range that the engine takes; README.md of identify/reference/ has
the format. Of rows without mistakes: `check_rows` in range_mistakes.py finds them, `usable` leaves
them out.
"""

from ..edtf import padded
from ..lists import place_of
from ..types.pack import (
    Caution,
    Change,
    Feature,
    Item,
    Kind,
    Move,
    Pack,
    Part,
    Range,
    Said,
    Source,
    State,
    Variant,
)
from ..types.rows import (
    ChangeRow,
    FeatureRow,
    ItemRow,
    KindRow,
    MarkUsed,
    RangeRows,
    Split,
    StateRow,
    TextPair,
    VariantRow,
)
from .adding_marks import merged_rows
from .issues import cells_of_feature, issue_table, usual_shares
from .relatives import learn_relatives
from .splitting import (
    adds_none,
    at_place,
    has_kind,
    place_of_text,
    prepare_split,
    said_by_entry,
    years_said,
)
from .words import COMPLETE, KIND, NONE, OF_THE_RANGE, OF_VARIANT, OPEN_SHARES


def open_share(complete: str) -> float:
    """The share of the pieces met that are in no range; -1 where nothing is said."""
    place = place_of_text(COMPLETE, complete)
    return OPEN_SHARES[place] if place >= 0 else -1.0


def kind_state(row: KindRow) -> State:
    """A kind as a state of the first feature."""
    out: State = {"id": row["id"], "name": row["name"], "drawing": KIND + "-" + row["id"]}
    if row["caption"] != "":
        out["caption"] = row["caption"]
    return out


def state_of(row: StateRow, feature: str) -> State:
    """A state with its drawing."""
    out: State = {
        "id": row["id"], "name": row["name"], "drawing": feature + "-" + row["id"],
    }  # fmt: skip
    if row["caption"] != "":
        out["caption"] = row["caption"]
    if row["look"] != "":
        out["look"] = row["look"]
    return out


def kind_feature(rows: RangeRows) -> Feature:
    """What sort of piece it is: the feature that every range has, first of all."""
    states: list[State] = []
    kinds: list[int] = []
    for kind in rows["kinds"]:
        kinds.append(len(kinds))
        states.append(kind_state(kind))
    return {
        "id": KIND, "name": "Kind", "title": "What is it?", "question": "What kind of piece is it?",
        "where": "Look at the piece as a whole.", "part": -1, "seconds": 2.0, "needs": "nothing",
        "states": states, "mistaken": [], "kinds": kinds, "none": -1,
    }  # fmt: skip


def feature_of(rows: RangeRows, row: FeatureRow) -> Feature:
    """A feature by places in lists."""
    states: list[State] = []
    for state in row["states"]:
        states.append(state_of(state, row["id"]))
    added = adds_none(row, rows["kinds"])
    if added:
        states.append({"id": NONE, "name": "None", "drawing": NONE})
    kinds: list[int] = []
    for n in range(len(rows["kinds"])):
        if has_kind(row, rows["kinds"][n]["id"]):
            kinds.append(n)
    out: Feature = {
        "id": row["id"], "name": row["name"], "question": row["question"], "where": row["where"],
        "part": place_of(rows["parts"], row["part"]), "seconds": row["seconds"],
        "needs": row["needs"], "states": states,
        "mistaken": [
            [place_of(states, pair[0]), place_of(states, pair[1])] for pair in row["mistaken"]
        ],
        "kinds": kinds, "none": len(states) - 1 if added else -1,
    }  # fmt: skip
    if row["seen"] > 0.0:
        out["seen"] = row["seen"]
    if row["title"] != "":
        out["title"] = row["title"]
    if row["layer"] != "":
        out["layer"] = row["layer"]
    if row["unseen"] != "":
        out["unseen"] = row["unseen"]
    return out


def said_places(split: Split, pairs: list[TextPair]) -> list[Said]:
    """Who says what, by the places of sources; what nobody named says is left out."""
    return [
        [at_place(split["trust"], pair[0]), pair[1]]
        for pair in pairs
        if at_place(split["trust"], pair[0]) >= 0
    ]


def item_of(split: Split, row: ItemRow, place: str) -> Item:
    """An item."""
    life = split["rows"]["range"]["years"]
    return {
        "id": place, "number": row["number"], "name": row["name"],
        "kind": at_place(split["kinds"], row["kind"]),
        "years": row["years"] if row["years"] != "" else life,
        "said": said_places(split, said_by_entry(row)), "formation": row["formation"],
        "contains": [at_place(split["items"], number) for number in row["contains"]],
        "carried": row["carried"], "note": row["note"],
    }  # fmt: skip


def variant_of(split: Split, row: VariantRow) -> Variant:
    """A variant; its years are the item's, or the range's, where it has none."""
    rows = split["rows"]
    place = at_place(split["items"], row["item"])
    item = rows["items"][place]
    years = row["years"] if row["years"] != "" else item["years"]
    return {
        "id": row["id"], "name": row["name"], "item": place,
        "years": years if years != "" else rows["range"]["years"],
        "said": said_places(split, years_said(split, item, row)), "note": row["note"],
    }  # fmt: skip


def change_of(split: Split, row: ChangeRow) -> Change:
    """A running change."""
    place = at_place(split["features"], row["feature"]) + 1
    kinds = [at_place(split["kinds"], kind) for kind in row["kinds"]]
    if len(kinds) == 0:
        kinds = [n for n in range(len(split["having"][place])) if split["having"][place][n] == 1]
    said: list[TextPair] = []
    if row["source"] != "":
        said.append([row["source"], row["since"]])
    for pair in row["other_from"]:
        said.append(pair)
    out: Change = {
        "feature": place, "state": place_of_text(split["states"][place], row["state"]),
        "kinds": kinds, "items": [at_place(split["items"], number) for number in row["items"]],
        "from": row["since"], "to": row["until"], "said": said_places(split, said),
        "note": row["note"],
    }  # fmt: skip
    if row["to_source"] != "":
        out["said_to"] = said_places(split, [[row["to_source"], row["until"]]])
    if len(row["hard"]) > 0:
        out["hard"] = row["hard"]
    return out


def range_of(rows: RangeRows, first: int, last: int) -> Range:
    """What the range is."""
    about = rows["range"]
    out: Range = {
        "name": about["name"], "maker": about["maker"], "gauge_mm": about["gauge_mm"],
        "gauge": about["gauge"], "material": about["material"], "scale": about["scale"],
        "country": about["country"], "first": first, "last": last, "about": about["about"],
        "invented": about["invented"],
    }  # fmt: skip
    by = about.get("by", "")
    if by != "":
        out["by"] = by
    return out


def kinds_of_range(rows: RangeRows) -> list[Kind]:
    """The sorts of pieces."""
    out: list[Kind] = []
    for row in rows["kinds"]:
        kind: Kind = {"id": row["id"], "name": row["name"], "plural": row["plural"]}
        if row["caption"] != "":
            kind["caption"] = row["caption"]
        share = open_share(row["complete"])
        if share >= 0:
            kind["open"] = share
        out.append(kind)
    return out


def cautions_of(split: Split) -> list[Caution]:
    """The cautions with the kinds they are said of."""
    out: list[Caution] = []
    for row in split["rows"]["cautions"]:
        kinds = [at_place(split["kinds"], kind) for kind in row["kinds"]]
        if len(kinds) == 0:
            kinds = [at_place(split["kinds"], kind["id"]) for kind in split["rows"]["kinds"]]
        out.append({"kinds": kinds, "text": row["text"]})
    return out


def drawings_shown(rows: RangeRows, features: list[Feature]) -> dict[str, str]:
    """The drawings that are shown."""
    out: dict[str, str] = {}
    names = OF_THE_RANGE[:]
    for feature in features:
        for state in feature["states"]:
            names.append(state["drawing"])
    for variant in rows["variants"]:
        names.append(OF_VARIANT + variant["id"])
    wanted: dict[str, int] = {}
    for name in names:
        wanted["i" + name] = 1
    for drawing in rows["drawings"]:
        if at_place(wanted, drawing["id"]) == 1:
            out[drawing["id"]] = drawing["text"]
    return out


def empty_pack(rows: RangeRows, first: int, last: int) -> Pack:
    """The compiled range before its lists are filled."""
    sources: list[Source] = [
        {"id": row["id"], "what": row["what"], "year": row["year"], "trust": row["trust"]}
        for row in rows["sources"]
    ]
    parts: list[Part] = []
    for told in rows["parts"]:
        part: Part = {
            "id": told["id"], "name": told["name"], "swap": told["swap"],
            "replaced": told["replaced"],
        }  # fmt: skip
        if told["altered"] != "":
            part["altered"] = told["altered"]
        parts.append(part)
    return {
        "format": 1, "id": rows["id"], "version": "", "range": range_of(rows, first, last),
        "kinds": kinds_of_range(rows), "parts": parts, "cautions": [], "sources": sources,
        "features": [], "items": [], "variants": [], "changes": [],
        "rows": {"variant": [], "kind": [], "prior": [], "span": []}, "spans": [], "cells": [],
        "backgrounds": [], "drawings": {},
    }  # fmt: skip


def moves_of(rows: RangeRows) -> list[Move]:
    """What was called otherwise."""
    return [
        {"what": row["what"], "from": row["was"], "to": row["now"], "note": row["note"]}
        for row in rows["moves"]
    ]


def item_ids(count: int) -> list[str]:
    """i0, i1, i2 and so on."""
    return ["i" + padded(n, 1) for n in range(count)]


def compiled_range(whole: RangeRows, first: int, last: int, marks: list[MarkUsed]) -> Pack:
    """The compiled range of rows without mistakes, from its first year to its last, with the date
    marks of its country; all but its version.
    """
    merged = merged_rows(whole, first, last, marks)
    rows = merged["rows"]
    split = prepare_split(rows, merged["marks"], first, last)
    pack = empty_pack(rows, first, last)
    pack["cautions"] = cautions_of(split)
    pack["features"].append(kind_feature(rows))
    for row in rows["features"]:
        pack["features"].append(feature_of(rows, row))
    ids = item_ids(len(rows["items"]))
    for n in range(len(rows["items"])):
        pack["items"].append(item_of(split, rows["items"][n], ids[n]))
    pack["variants"] = [variant_of(split, written) for written in rows["variants"]]
    pack["changes"] = [change_of(split, written) for written in rows["changes"]]
    table = issue_table(split)
    pack["rows"] = table["rows"]
    pack["spans"] = table["spans"]
    for f in range(len(pack["features"])):
        cells = cells_of_feature(split, f, table["codes"][f])
        states = len(pack["features"][f]["states"])
        pack["cells"].append(cells)
        pack["backgrounds"].append(usual_shares(table["rows"], cells, len(rows["kinds"]), states))
    pack["drawings"] = drawings_shown(rows, pack["features"])
    if len(rows["moves"]) > 0:
        pack["moves"] = moves_of(rows)
    learn_relatives(pack)
    return pack
