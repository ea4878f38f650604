"""Several packs searched as one: gauge and material are asked like any other feature.

The joined pack has every row of each. Kinds stay apart (a feature belongs to the kinds of its own
pack); the question "what sort of piece" has each sort once. When one pack is left, `narrowed` gives
the session in that pack alone, and everything goes on there.
"""

from typing import Any

from .lists import filled, place_of
from .types.pack import Asked, Begins, Listing, Measure, MeasureName, Pack, Said, State
from .types.values import Named, Value

LISTED: list[Listing] = ["kinds", "parts", "sources", "spans", "items", "variants"]
GLANCE = 0.5  # seconds to see gauge and material: so they come first
STRAY = 0.02  # background share of a state that another pack has
GAUGE: Measure = {
    "id": "gauge",
    "told_by": "gauge",
    "name": "Gauge",
    "title": "Which gauge?",
    "question": "How far apart are its wheels?",
    "where": "Between the insides of the wheels, or of the rails it stands on.",
}
MATERIAL: Measure = {
    "id": "material",
    "told_by": "material",
    "name": "Material",
    "title": "What material?",
    "question": "What is the body made of?",
    "where": "The sides. Metal is cold to the touch, and bends.",
}


def copied(record: Value) -> Value:
    """A new dict with the same things in it."""
    given: Any = record
    out: Any = {}
    for key in given:
        out[key] = given[key]
    copy: Value = out
    return copy


def shifted(places: list[int], by: int) -> list[int]:
    """Places moved along by so many."""
    return [place + by for place in places]


def said_by(said: list[Said], by: int) -> list[Said]:
    """[[source, years]] with the sources moved along."""
    return [[pair[0] + by, pair[1]] for pair in said]


def places(packs: list[Pack], common: int) -> list[Begins]:
    """Where each pack's things begin in the joined lists, after so many common features. A pack's
    own features are counted from its second: its first, the kind, is a common one.
    """
    out: list[Begins] = []
    at: Begins = {
        "kinds": 0, "parts": 0, "sources": 0, "spans": 0, "items": 0, "variants": 0, "rows": 0,
        "features": common - 1,
    }  # fmt: skip
    for pack in packs:
        out.append(at)
        after = copied(at)
        for key in LISTED:
            after[key] = at[key] + len(pack[key])
        after["rows"] = at["rows"] + len(pack["rows"]["variant"])
        after["features"] = at["features"] + len(pack["features"]) - 1
        at = after
    return out


def empty_join(packs: list[Pack]) -> Pack:
    """The joined pack before anything is in it; `packs` are the ids."""
    life = copied(packs[0]["range"])
    version = ""
    for pack in packs:
        if pack["range"]["first"] > 0:  # else no year is named in it
            known = life["first"] > 0
            life["first"] = (
                min(life["first"], pack["range"]["first"]) if known else pack["range"]["first"]
            )
            life["last"] = max(life["last"], pack["range"]["last"])
        version = version + pack["id"] + " " + pack["version"] + " "
    life["name"] = ""
    life["about"] = ""
    return {
        "format": 1, "id": "all", "version": version, "packs": [p["id"] for p in packs],
        "range": life, "kinds": [], "parts": [], "cautions": [], "sources": [], "features": [],
        "items": [], "variants": [], "changes": [], "spans": [], "cells": [], "backgrounds": [],
        "rows": {"variant": [], "kind": [], "prior": [], "span": []}, "drawings": {},
    }  # fmt: skip


def renamed(record: Value, pack: Pack) -> Value:
    """A copy whose id says which pack it comes from."""
    out: Any = copied(record)
    out["id"] = pack["id"] + "_" + out["id"]
    named: Value = out
    return named


def add_lists(out: Pack, pack: Pack, at: Begins) -> None:
    """Add what is merely listed: parts, sources, kinds, cautions, spans, drawings."""
    for part in pack["parts"]:
        out["parts"].append(renamed(part, pack))
    for source in pack["sources"]:
        out["sources"].append(renamed(source, pack))
    for kind in pack["kinds"]:
        named = renamed(kind, pack)
        named["name"] = kind["name"] + ", " + pack["range"]["name"]
        named["plural"] = kind["plural"] + ", " + pack["range"]["name"]
        out["kinds"].append(named)
    for caution in pack["cautions"]:
        kinds = caution["kinds"]
        if len(kinds) == 0:
            kinds = counted(len(pack["kinds"]))
        out["cautions"].append({"kinds": shifted(kinds, at["kinds"]), "text": caution["text"]})
    for span in pack["spans"]:
        out["spans"].append(span)
    for key in pack["drawings"]:
        out["drawings"][pack["id"] + " " + key] = pack["drawings"][key]


def counted(count: int) -> list[int]:
    """0, 1, 2 and so on: so many."""
    out: list[int] = []
    for n in range(count):
        out.append(n)
    return out


def add_rows(out: Pack, pack: Pack, at: Begins, share: float) -> None:
    """Add items, variants, changes and rows; the rows of this pack share `share` of the prior."""
    for item in pack["items"]:
        named = renamed(item, pack)
        named["pack"] = pack["id"]
        named["kind"] = item["kind"] + at["kinds"]
        named["said"] = said_by(item["said"], at["sources"])
        named["contains"] = shifted(item["contains"], at["items"])
        out["items"].append(named)
    for variant in pack["variants"]:
        version = renamed(variant, pack)
        version["item"] = variant["item"] + at["items"]
        version["said"] = said_by(variant["said"], at["sources"])
        out["variants"].append(version)
    for change in pack["changes"]:
        running = copied(change)
        running["feature"] = change["feature"] + at["features"]
        running["kinds"] = shifted(change["kinds"], at["kinds"])
        running["items"] = shifted(change["items"], at["items"])
        running["said"] = said_by(change["said"], at["sources"])
        out["changes"].append(running)
    rows = pack["rows"]
    for i in range(len(rows["variant"])):
        out["rows"]["variant"].append(rows["variant"][i] + at["variants"])
        out["rows"]["kind"].append(rows["kind"][i] + at["kinds"])
        out["rows"]["span"].append(rows["span"][i] + at["spans"])
        out["rows"]["prior"].append(rows["prior"][i] * share)


def drawn_from(pack: Pack, state: State) -> State:
    """A copy of a state whose drawing is looked for among this pack's."""
    drawn = copied(state)
    drawn["drawing"] = pack["id"] + " " + state["drawing"]
    return drawn


def widened(shares: list[float], count: int) -> list[float]:
    """Shares with nothing on the states added; [] (not recorded) stays so."""
    if len(shares) == 0:
        return shares
    out = filled(count, 0.0)
    for s in range(len(shares)):
        out[s] = shares[s]
    return out


def add_feature(out: Pack, pack: Pack, at: Begins, f: int) -> None:
    """Add one feature of a pack; the rows and kinds of the other packs have state "none" of it."""
    feature = renamed(pack["features"][f], pack)
    states = [drawn_from(pack, state) for state in pack["features"][f]["states"]]
    none = place_of(states, "none")
    if none < 0:
        none = len(states)
        feature["none"] = none
        there: State = {"id": "none", "name": "None", "drawing": "none"}
        states.append(drawn_from(pack, there))
    nothing = filled(len(states), 0.0)
    nothing[none] = 1.0
    shares = [widened(share, len(states)) for share in pack["cells"][f]["shares"]]
    shares.append(nothing)
    codes: list[int] = []
    for _ in out["rows"]["variant"]:
        codes.append(len(shares) - 1)
    own = pack["cells"][f]["codes"]
    for i in range(len(own)):
        codes[at["rows"] + i] = own[i]
    backgrounds: list[list[float]] = []
    for _ in out["kinds"]:
        backgrounds.append(nothing)
    for k in range(len(pack["kinds"])):
        backgrounds[at["kinds"] + k] = widened(pack["backgrounds"][f][k], len(states))
    feature["states"] = states
    feature["kinds"] = shifted(feature["kinds"], at["kinds"])
    feature["part"] = feature["part"] + at["parts"] if feature["part"] >= 0 else -1
    out["features"].append(feature)
    out["cells"].append({"shares": shares, "codes": codes})
    out["backgrounds"].append(backgrounds)


def add_shared(
    out: Pack, asked: Asked, seconds: float, of_kind: list[int], states: list[State]
) -> None:
    """Add a feature that every row has, by its kind: of_kind[k] is the state of kind k."""
    shares: list[list[float]] = [[]]
    for s in range(len(states)):
        sharp = filled(len(states), 0.0)
        sharp[s] = 1.0
        shares.append(sharp)
    backgrounds: list[list[float]] = []
    for k in range(len(of_kind)):
        smooth = filled(len(states), STRAY / len(states))
        smooth[of_kind[k]] = smooth[of_kind[k]] + 1.0 - STRAY
        backgrounds.append(smooth)
    out["features"].append(
        {
            "id": asked["id"],
            "name": asked["name"],
            "title": asked.get("title", asked["name"]),
            "question": asked["question"],
            "where": asked["where"],
            "part": -1,
            "seconds": seconds,
            "needs": "nothing",
            "states": states,
            "mistaken": [],
            "kinds": counted(len(of_kind)),
            "none": -1,
        }
    )
    out["cells"].append(
        {"shares": shares, "codes": [1 + of_kind[at] for at in out["rows"]["kind"]]}
    )
    out["backgrounds"].append(backgrounds)


def add_kind(out: Pack, packs: list[Pack]) -> None:
    """Add the question which sort of piece it is, each sort once."""
    states: list[State] = []
    of_kind: list[int] = []
    for pack in packs:
        for state in pack["features"][0]["states"]:
            if place_of(states, state["id"]) < 0:
                states.append(drawn_from(pack, state))
            of_kind.append(place_of(states, state["id"]))
    asked = packs[0]["features"][0]
    add_shared(out, asked, asked["seconds"], of_kind, states)


def add_measure(out: Pack, packs: list[Pack], asked: Measure) -> None:
    """Add the gauge or the material, each once; `asked` holds id, name, question and where."""
    named: list[Named] = []
    states: list[State] = []
    of_kind: list[int] = []
    for pack in packs:
        text = pack["range"][asked["told_by"]]
        if place_of(named, text) < 0:
            named.append({"id": text})
            state: State = {
                "id": asked["id"] + "_" + pack["id"], "name": text,
                "drawing": "range-" + asked["id"],
            }  # fmt: skip
            states.append(drawn_from(pack, state))
        for _ in pack["kinds"]:
            of_kind.append(place_of(named, text))
    add_shared(out, asked, GLANCE, of_kind, states)


def said_by_all(packs: list[Pack], name: MeasureName) -> bool:
    """Whether every range says this of itself."""
    for pack in packs:
        if len(pack["range"][name]) == 0:
            return False
    return True


def join(packs: list[Pack]) -> Pack:
    """One pack from several compiled ones, to be given to `prepare`.

    Ids get the pack's id in front; an item also says its `pack`. Packs weigh by their variants.
    """
    out = empty_join(packs)
    measures: list[Measure] = []
    for measure in [GAUGE, MATERIAL]:
        if said_by_all(packs, measure["told_by"]):
            measures.append(measure)
    where = places(packs, 1 + len(measures))
    variants = 0
    for pack in packs:
        variants = variants + len(pack["variants"])
    for n in range(len(packs)):
        add_lists(out, packs[n], where[n])
        add_rows(out, packs[n], where[n], len(packs[n]["variants"]) / variants)
    add_kind(out, packs)
    for measure in measures:
        add_measure(out, packs, measure)
    for n in range(len(packs)):
        for f in range(1, len(packs[n]["features"])):
            add_feature(out, packs[n], where[n], f)
    return out
