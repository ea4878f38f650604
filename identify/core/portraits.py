"""The portrait of a variant, or of several: what the compiled range records of each layer."""

from .lists import best_from, empty_lists, filled
from .look_up import words
from .looks import (
    BODY_WORDS,
    KIND_WORDS,
    LOADS,
    colour_in,
    first_of,
    layer_by_name,
    look_by_name,
    spaced,
)
from .runs import FIGURES
from .types.pack import Feature, Item, Pack, State
from .types.portraits import Apart, Difference, Layer, Portrait, Sitting
from .types.session import Answer

LEAST = 0.000001  # a smaller share of a state is none


def layer_of(feature: Feature) -> str:
    """The layer that a feature fills: as the range says, else by its name; "" for none."""
    if "layer" in feature:
        return feature["layer"]
    return "" if "unseen" in feature else layer_by_name(feature["name"])


def look_of(state: State, layer: str) -> str:
    """How a state looks: as the range says, else by its id and name; "" where nothing says."""
    return state["look"] if "look" in state else look_by_name(layer, state["id"], state["name"])


def sitting(pack: Pack) -> Sitting:
    """What the portraits of a range are made from, to be kept while they are drawn."""
    rows = empty_lists(len(pack["variants"]))
    for row in range(len(pack["rows"]["variant"])):
        rows[pack["rows"]["variant"][row]].append(row)
    layers: list[str] = []
    looks: list[list[str]] = []
    for feature in pack["features"]:
        layer = "" if feature["id"] == "kind" else layer_of(feature)
        layers.append(layer)
        looks.append([look_of(state, layer) for state in feature["states"] if layer != ""])
    return {"rows": rows, "layers": layers, "looks": looks}


def shares_of(pack: Pack, rows: list[int], feature: int) -> list[float]:
    """The share of each state over rows of one variant; [] where a row has nothing recorded."""
    cells = pack["cells"][feature]
    out = filled(len(pack["features"][feature]["states"]), 0.0)
    for row in rows:
        shares = cells["shares"][cells["codes"][row]]
        if len(shares) == 0:
            return []
        for s in range(len(out)):
            out[s] = out[s] + shares[s] * pack["rows"]["prior"][row]
    return out


def seen_state(pack: Pack, feature: int, answers: list[Answer]) -> int:
    """The one state that was seen of a feature; -1 where none or several were."""
    for answer in answers:
        if answer["feature"] == pack["features"][feature]["id"] and len(answer["states"]) == 1:
            for s in range(len(pack["features"][feature]["states"])):
                if pack["features"][feature]["states"][s]["id"] == answer["states"][0]:
                    return s
    return -1


def layer_told(
    pack: Pack, shown: Sitting, rows: list[int], feature: int, answers: list[Answer]
) -> Layer | None:
    """What a feature says of its layer; None where the piece has no such thing."""
    shares = shares_of(pack, rows, feature)
    states = best_from(shares, LEAST)
    if len(states) == 1 and states[0] == pack["features"][feature]["none"]:
        return None
    seen = seen_state(pack, feature, answers)
    if seen >= 0 and (len(states) == 0 or shares[seen] >= LEAST):
        states = [seen]
    looks: list[str] = []
    for state in states:
        look = shown["looks"][feature][state]
        if look not in looks:
            looks.append(look)
    recorded: Layer = {
        "layer": shown["layers"][feature],
        "look": looks[0] if len(looks) > 0 else "",
        "looks": looks,
        "feature": feature,
        "recorded": "several" if len(looks) > 1 else "known" if len(looks) == 1 else "unknown",
    }
    return recorded


def layers_told(
    pack: Pack, shown: Sitting, variants: list[int], answers: list[Answer]
) -> list[Layer]:
    """What the features say, one entry a layer: of two features the first that knows."""
    out: list[Layer] = []
    item = pack["items"][pack["variants"][variants[0]]["item"]]
    rows: list[int] = []
    for variant in variants:
        for row in shown["rows"][variant]:
            rows.append(row)
    front = item["pack"] + "_" if "pack" in item else ""  # joined: the features of its own range
    for feature in range(len(shown["layers"])):
        about = pack["features"][feature]
        own = about["id"][: len(front)] == front and item["kind"] in about["kinds"]
        if own and shown["layers"][feature] != "":
            layer = layer_told(pack, shown, rows, feature, answers)
            place = -1
            for n in range(len(out)):
                if out[n]["layer"] == shown["layers"][feature]:
                    place = n
            if layer is not None and place < 0:
                out.append(layer)
            elif layer is not None and out[place]["look"] == "" and layer["look"] != "":
                out[place] = layer
    return out


def by_name(layer: str, look: str) -> Layer:
    """A layer that no feature tells, but a name does."""
    recorded: Layer = {
        "layer": layer,
        "look": look,
        "looks": [look],
        "feature": -1,
        "recorded": "said",
    }
    return recorded


def with_names(layers: list[Layer], layer: str, look: str) -> list[Layer]:
    """The layers, with what a name says of one where no feature does."""
    if look == "":
        return layers
    for n in range(len(layers)):
        if layers[n]["layer"] == layer:
            if layers[n]["look"] == "":
                layers[n]["look"] = look
                layers[n]["looks"] = [look]
            return layers
    layers.append(by_name(layer, look))
    return layers


def body_by_name(pack: Pack, item: Item) -> str:
    """The body that an item's name, or else its kind's, speaks of."""
    kind = pack["kinds"][item["kind"]]
    of_kind = first_of(KIND_WORDS, kind["id"] + " " + kind["name"])
    named = "set" if of_kind == "set" else first_of(BODY_WORDS, item["name"])
    if named == "tender" and of_kind == "engine":
        return "tender_engine"
    if named != "" and (named != "set" or of_kind == "set"):
        return named
    return of_kind if of_kind != "" else "piece"


def carried(item: Item, figures: bool, variant: str) -> str:
    """The name (or number, with figures in it) that the piece carries: of several the one that its
    variant's name speaks of; "" for none, or where that does not say which.
    """
    texts: list[str] = []
    for text in item["carried"]:
        has = False
        for c in text:
            has = has or c in FIGURES
        if has == figures:
            texts.append(text)
    if len(texts) == 1:
        return texts[0]
    for text in texts:
        if len(words(text)) > 0 and spaced(words(text)[0]) in spaced(variant):
            return text
    return ""


def body_of(pack: Pack, shown: Sitting, variant: int) -> str:
    """The body of one piece, by its features or its name."""
    for layer in layers_told(pack, shown, [variant], []):
        if layer["layer"] == "body" and layer["look"] != "":
            return layer["look"]
    return body_by_name(pack, pack["items"][pack["variants"][variant]["item"]])


def contents_of(pack: Pack, shown: Sitting, item: Item) -> list[str]:
    """The bodies of what is in a boxed set."""
    out: list[str] = []
    for inside in item["contains"]:
        for v in range(len(pack["variants"])):
            if pack["variants"][v]["item"] == inside:
                out.append(body_of(pack, shown, v))
                break
    return out


def portrait(pack: Pack, shown: Sitting, variants: list[int], answers: list[Answer]) -> Portrait:
    """What is drawn of a variant, or of several of an item: what can be one or the other is then
    `several`. `shown` is from `sitting`; `answers` (of a piece at hand, else []) say which it is
    where one of several is recorded, or nothing.
    """
    item = pack["items"][pack["variants"][variants[0]]["item"]]
    name = pack["variants"][variants[0]]["name"] if len(variants) == 1 else ""
    layers = layers_told(pack, shown, variants, answers)
    body = body_by_name(pack, item)
    layers = with_names(layers, "body", body)
    if body == "set":
        layers.append(by_name("set", "set"))
    sides = colour_in(name, "sides")
    sides = sides if sides != "" else colour_in(item["name"], "sides")
    layers = with_names(layers, "colour", sides)
    layers = with_names(layers, "roof", colour_in(name, "roof"))
    return {
        "layers": layers,
        "name": carried(item, False, name),
        "number": carried(item, True, name),
        "letters": colour_in(name, "letters"),
        "second": colour_in(name, "second"),
        "load": first_of(LOADS, name + ", " + item["name"]),
        "contents": contents_of(pack, shown, item),
    }


def states_seen(
    pack: Pack, shown: Sitting, variants: list[int], feature: int, answers: list[Answer]
) -> list[int]:
    """The states that a piece may have of a feature, what was seen first; [] for not recorded."""
    rows: list[int] = []
    for variant in variants:
        for row in shown["rows"][variant]:
            rows.append(row)
    seen = seen_state(pack, feature, answers)
    return [seen] if seen >= 0 else best_from(shares_of(pack, rows, feature), LEAST)


def differences(
    pack: Pack, shown: Sitting, first: list[int], second: list[int], answers: list[Answer]
) -> Apart:
    """In what two pieces differ: two candidates; or the piece at hand (`first`, with its answers)
    and one at home. What is not recorded of either, or can be the same, is no difference.
    """
    out: Apart = {"seen": [], "unseen": []}
    nothing: list[Answer] = []
    for feature in range(1, len(pack["features"])):
        here = states_seen(pack, shown, first, feature, answers)
        there = states_seen(pack, shown, second, feature, nothing)
        none = pack["features"][feature]["none"]  # it follows from another difference
        both = [state for state in here if state in there]
        comparable = len(here) > 0 and len(there) > 0 and none not in here and none not in there
        if comparable and len(both) == 0:
            apart: Difference = {"feature": feature, "one": here[0], "other": there[0]}
            if shown["layers"][feature] != "":
                out["seen"].append(apart)
            else:
                out["unseen"].append(apart)
    return out
