"""What is not recorded in a range, and what is worth a look when a piece is in the hand again."""

from .lists import filled
from .types.pack import Pack
from .types.trying import Alike, LookNext, Unrecorded

APART = 1.0  # bits, for each variant that it cannot be told from now: at best it tells the two


def recorded_of(pack: Pack, place: int) -> list[int]:
    """By variant: how many of its rows a feature is recorded of; -1 where it cannot have it."""
    rows = pack["rows"]
    out = filled(len(pack["variants"]), -1)
    for i in range(len(rows["variant"])):
        v = rows["variant"][i]
        if rows["kind"][i] in pack["features"][place]["kinds"]:
            there = 1 if pack["cells"][place]["codes"][i] > 0 else 0
            out[v] = max(out[v], 0) + there
    return out


def unrecorded_features(pack: Pack) -> list[Unrecorded]:
    """The features that are not recorded of every variant which can have them: those recorded
    nowhere first.
    """
    out: list[Unrecorded] = []
    for f in range(len(pack["features"])):
        recorded = recorded_of(pack, f)
        having = [v for v in range(len(recorded)) if recorded[v] >= 0]
        without = [v for v in having if recorded[v] == 0]
        if len(without) > 0:
            out.append({"feature": f, "without": len(without), "of": len(having)})
    return sorted(out, key=lambda entry: -(entry["without"] / entry["of"]))


def looks_to_take(
    pack: Pack, alike: list[Alike], worth_of: list[float], most: int
) -> list[LookNext]:
    """At most so many looks, the most telling first: a feature that needs nothing in the hand and
    is not recorded of a variant. `worth_of`: the bits of each feature as a first question.
    """
    confused = filled(len(pack["variants"]), 0)
    for pair in alike:
        confused[pair["one"]] = confused[pair["one"]] + 1
        confused[pair["other"]] = confused[pair["other"]] + 1
    out: list[LookNext] = []
    for f in range(len(pack["features"])):
        if pack["features"][f]["needs"] == "nothing":
            recorded = recorded_of(pack, f)
            for v in range(len(recorded)):
                if recorded[v] == 0:
                    score = worth_of[f] + APART * confused[v]
                    out.append(
                        {"variant": v, "feature": f, "score": score, "apart": confused[v] > 0}
                    )
    return sorted(out, key=lambda look: -look["score"])[0:most]
