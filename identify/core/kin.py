"""What is in no range is mostly like something that is: the near relatives of every issue.

A range is never complete. Whatever it leaves out is one of three:

    a sibling   an unrecorded variant of a recorded item: as one of its issues, but each feature f
                differs from that with a chance of its own, differs[f][0]
    a cousin    an unrecorded item like a recorded one: the same with differs[f][1]
    a stranger  like none of them: each feature as a relative has it that differs in it

Where a feature of a relative differs it is as the background has it, or in any state there is. So
the relatives of all issues are a mixture with one part for each row, worked out beside the rows
themselves. The chances of differing are learned when a range is compiled, from its own items and
variants, each left out in turn; how much of the prior is in no range is said by the range for each
kind.
"""

from .lists import filled, total
from .types.engine import Beginning, Belief
from .types.pack import Pack

DIFFERS = [0.08, 0.2]  # where a range does not say: as in the demo ranges, about
OPEN = 0.15  # share in no range, where a range does not say: as for "all I know of"
NUMBERED = 0.2  # times as much where its number or name was found: the strongest single clue
SIBLINGS = 0.5  # of what is in no range
STRANGERS = 0.1  # of what is in no range; the rest are cousins
NEW = 0.5  # where a feature differs it is as often any state at all as one by the background


def differing(pack: Pack) -> list[list[float]]:
    """For each feature the chances that it differs on a sibling and on a cousin."""
    return [feature.get("differs", DIFFERS) for feature in pack["features"]]


def strangeness(pack: Pack) -> list[list[list[float]]]:
    """For each feature and kind: the share of each state where the feature differs on a piece that
    is in no range. A state that is recorded on nothing of the kind may well be on that.
    """
    out: list[list[list[float]]] = []
    for place in range(len(pack["features"])):
        feature = pack["features"][place]
        by_kind: list[list[float]] = []
        for k in range(len(pack["kinds"])):
            usual = pack["backgrounds"][place][k]
            drawn = len(usual) - (1 if feature["none"] >= 0 else 0)
            some = NEW if k in feature["kinds"] and drawn > 0 else 0.0
            shares = [(1.0 - some) * share for share in usual]
            for s in range(len(shares)):
                if s != feature["none"] and some > 0.0:
                    shares[s] = shares[s] + some / drawn
            by_kind.append(shares)
        out.append(by_kind)
    return out


def openness(pack: Pack, times: float) -> list[float]:
    """For each kind the share of its pieces that are in no range; times: 0 for a closed world."""
    return [times * kind.get("open", OPEN) for kind in pack["kinds"]]


def share_out(state: Beginning, shares: list[float]) -> None:
    """Set the prior of rows, siblings, cousins and strangers from that of the rows, by the share
    of each kind that is in no range. With no row in scope the piece is a stranger for certain.
    """
    chances = state["chances"]
    kinds = state["kinds"]
    whole = total(chances)
    if whole == 0.0:
        state["strangers"] = filled(len(shares), 1.0 / len(shares))
    for j in range(len(chances)):
        k = kinds[j]
        share = chances[j] / whole
        beyond = share * shares[k]
        chances[j] = share * (1.0 - shares[k])
        state["siblings"].append(beyond * SIBLINGS)
        state["cousins"].append(beyond * (1.0 - SIBLINGS - STRANGERS))
        state["strangers"][k] = state["strangers"][k] + beyond * STRANGERS


def add_up(state: Belief) -> None:
    """Set `unrecorded`: for each kind the chance that the piece is of that kind and in no range."""
    out = state["strangers"][:]
    kinds = state["kinds"]
    siblings = state["siblings"]
    cousins = state["cousins"]
    for j in range(len(kinds)):
        out[kinds[j]] = out[kinds[j]] + siblings[j] + cousins[j]
    state["unrecorded"] = out
