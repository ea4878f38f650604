"""What is in no range is mostly like something that is: the near relatives of every issue.

A range is never complete. Whatever it leaves out is one of four:

    a sibling   an unrecorded variant of a recorded item: as one of its issues, but each feature f
                differs from that with a chance of its own, by its state s: differs[f][0][s]
    a twin      an unrecorded item that is nearly the same as a recorded one, as an engine and the
                unpowered one that goes with it: the same with differs[f][1][s]
    a cousin    an unrecorded item like a recorded one: the same with differs[f][2][s]
    a stranger  like none of them: each feature as a relative has it that differs in it

Where a feature of a relative differs it is in another state: by how usual that is, or any; and in
something it differs, or it would be that very issue. So the relatives of all issues are a mixture
with one part for each row, worked out beside the rows themselves. The chances of differing are
learned when a range is compiled, from its own items and variants, each left out in turn; how much
of the prior is in no range is said by the range for each kind.
"""

from collections.abc import Sequence

from .lists import empty_lists, filled, total
from .types.engine import Beginning, Belief
from .types.pack import Pack

DIFFERS = [0.1, 0.1, 0.2]  # where a range does not say: as in the demo ranges, about
JOINED = 0.01  # of the state "none" that a feature gets where its range is joined to others
OPEN = 0.12  # share in no range, where a range does not say: as for "all I know of"
NUMBERED = 0.2  # times as much where its number or name was found: the strongest single clue
RELATIVES = [0.5, 0.2, 0.2]  # siblings, twins, cousins: of what is in no range
STRANGERS = 0.1  # the rest of it
ALL_SAME = 0.999  # with more, too little is recorded of a row for a relative to differ in it
NEW = 0.5  # where a feature differs it is as often any state at all as one by the background


def differing(pack: Pack) -> list[list[list[float]]]:
    """For each feature and sort of relative: the chance that each state differs."""
    out: list[list[list[float]]] = []
    for feature in pack["features"]:
        given = feature.get("differs", [])
        rates_of: list[list[float]] = []
        for n in range(len(RELATIVES)):
            rates = filled(len(feature["states"]), DIFFERS[n] if len(given) == 0 else JOINED)
            for s in range(len(rates)):
                if n < len(given) and s < len(given[n]):
                    rates[s] = given[n][s]
            rates_of.append(rates)
        out.append(rates_of)
    return out


def otherwise(pack: Pack) -> list[list[list[float]]]:
    """For each feature and state: the share of each other state where it differs on a relative.
    That is by half as usual as the state is with the kinds that have the feature, by half any that
    is drawn.
    """
    held = filled(len(pack["kinds"]), 0.0)
    kinds = pack["rows"]["kind"]
    for i in range(len(kinds)):
        held[kinds[i]] = held[kinds[i]] + pack["rows"]["prior"][i]
    strange = strangeness(pack)
    out: list[list[list[float]]] = []
    for place in range(len(pack["features"])):
        count = len(pack["features"][place]["states"])
        common = filled(count, 0.0)
        for k in pack["features"][place]["kinds"]:
            for s in range(count):
                common[s] = common[s] + held[k] * strange[place][k][s]
        out.append([others(common, own) for own in range(count)])
    return out


def others(common: list[float], own: int) -> list[float]:
    """The shares of the other states: as these are to one another; of one state only, all of it."""
    out = common[:]
    out[own] = 0.0
    whole = total(out)
    if whole == 0.0:
        out = filled(len(common), 1.0 if len(common) == 1 else 1.0 / (len(common) - 1))
        out[own] = 1.0 if len(common) == 1 else 0.0
        return out
    return [share / whole for share in out]


def shown(
    own: list[float], off: list[float], differs: list[float], other: list[list[float]]
) -> list[float]:
    """P(answer | a relative of what has this state) for each state; `own`: P(answer | state) where
    it does not differ, `off`: where it does.
    """
    out: list[float] = []
    for s in range(len(own)):
        away = 0.0
        for t in range(len(own)):
            away = away + other[s][t] * off[t]
        out.append((1.0 - differs[s]) * own[s] + differs[s] * away)
    return out


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


def sameness(pack: Pack, differs: list[list[list[float]]]) -> list[list[float]]:
    """For each sort of relative and row: the chance that it would be recorded as the row is in
    every feature. There is no such relative: it would be that row. 0 where nothing is recorded.
    """
    rows = len(pack["rows"]["variant"])
    out: list[list[float]] = []
    for n in range(len(RELATIVES)):
        same = filled(rows, 1.0)
        for place in range(len(pack["features"])):
            rates = differs[place][n]
            kept = [as_recorded(shares, rates) for shares in pack["cells"][place]["shares"]]
            codes = pack["cells"][place]["codes"]
            for i in range(rows):
                same[i] = same[i] * kept[codes[i]]
        for i in range(rows):
            if same[i] > ALL_SAME:
                same[i] = 0.0
        out.append(same)
    return out


def as_recorded(shares: Sequence[float], differs: list[float]) -> float:
    """The chance that a relative has the state that is recorded; of a choice of states, of the one
    that it has least often.
    """
    most = 0.0
    for s in range(len(shares)):
        if shares[s] > 0.0:
            most = max(most, differs[s])
    return 1.0 - most


def openness(pack: Pack, times: float) -> list[float]:
    """For each kind the share of its pieces that are in no range; times: 0 for a closed world."""
    return [times * kind.get("open", OPEN) for kind in pack["kinds"]]


def share_out(state: Beginning, shares: list[float], same: list[list[float]]) -> None:
    """Set the prior of rows, relatives and strangers from that of the rows, by the share
    of each kind that is in no range. With no row in scope the piece is a stranger for certain.

    The relatives include those that differ in nothing: `less`, times the chance of the row, is what
    they have too much.
    """
    chances = state["chances"]
    kinds = state["kinds"]
    whole = total(chances)
    state["kin"] = empty_lists(len(RELATIVES))
    state["less"] = empty_lists(len(RELATIVES))
    if whole == 0.0:
        state["strangers"] = filled(len(shares), 1.0 / len(shares))
    for j in range(len(chances)):
        k = kinds[j]
        share = chances[j] / whole
        beyond = share * shares[k]
        chances[j] = share * (1.0 - shares[k])
        for n in range(len(RELATIVES)):
            alike = same[n][state["rows"][j]]
            state["kin"][n].append(beyond * RELATIVES[n] / (1.0 - alike))
            odds = shares[k] / (1.0 - shares[k]) if shares[k] < 1.0 else 0.0
            state["less"][n].append(odds * RELATIVES[n] * alike / (1.0 - alike))
        state["strangers"][k] = state["strangers"][k] + beyond * STRANGERS


def take_out(state: Belief) -> None:
    """Take those out of the relatives that differ from their row in nothing."""
    chances = state["chances"]
    for n in range(len(RELATIVES)):
        relatives = state["kin"][n]
        less = state["less"][n]
        for j in range(len(chances)):
            relatives[j] = max(0.0, relatives[j] - less[j] * chances[j])


def add_up(state: Belief) -> None:
    """Set `unrecorded`: for each kind the chance that the piece is of that kind and in no range."""
    out = state["strangers"][:]
    kinds = state["kinds"]
    for relatives in state["kin"]:
        for j in range(len(kinds)):
            out[kinds[j]] = out[kinds[j]] + relatives[j]
    state["unrecorded"] = out
