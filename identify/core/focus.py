"""The rows that still count, by what is to be decided: what questions are weighed over."""

from .lists import filled, largest, total
from .types.engine import Belief
from .types.questions import Focus, Kin
from .types.values import Value

LEFT_OUT = 0.00001  # the faintest rows, this much of the chance together, are left out of the sums
KIN_LEFT_OUT = (
    0.001  # the same of the relatives of rows, which only say what a stray piece looks like
)
FAIR = [1.0, 1.0, 1.0, 1.0]  # relatives of each sort, and strangers, as they are believed
# As often as they count where a question is chosen: to miss one, and give it a wrong name, costs so
# much more than to take one variant for another.
WARY = [6.0, 14.0, 10.0, 10.0]


def by_variant(state: Belief) -> list[int]:
    """The outcome of each row when the variant is to be decided: its variant."""
    return state["variants"]


def faint(chances: list[float], most: float) -> float:
    """Rows with less than this are left out: together they have at most `most` of the chance.

    With LEFT_OUT left out, e, the bits of a question about a feature with s states change by at
    most h(e) + e log2 s, h the entropy of e against 1 - e: by the chain rule I(O;A) = I(D;A) +
    (1 - e) I(O;A|kept) + e I(O;A|left out), D whether the row is left out. That is 0.0002 bits;
    where two questions are as near as that, the other one may be asked.
    """
    best = chances[largest(chances)] if len(chances) > 0 else 0.0
    limits: list[float] = []
    limit = 0.03 * best
    while limit > 1e-8 * best:
        limits.append(limit)
        limit = 0.3 * limit
    lost = filled(len(limits), 0.0)
    for p in chances:
        n = 0
        while n < len(limits) and p < limits[n]:
            lost[n] = lost[n] + p
            n = n + 1
    for n in range(len(limits)):
        if lost[n] <= most:
            return limits[n]
    return 0.0


def focus(state: Belief, outcomes: list[int]) -> Focus:
    """The rows that still count, those of an outcome together, and outcomes numbered from 0."""
    return focus_with(state, outcomes, FAIR)


def wary(state: Belief, outcomes: list[int]) -> Focus:
    """The same with what is in no range counted for more: what questions are chosen by."""
    return focus_with(state, outcomes, WARY)


def focus_with(state: Belief, outcomes: list[int], care: list[float]) -> Focus:
    """The same, and how much relatives of each sort, and strangers, count for."""
    chances = state["chances"]
    variants = state["variants"]
    least = faint(chances, LEFT_OUT)
    top = -1
    for o in outcomes:
        top = max(top, o)
    number = filled(top + 1, -1)
    at: list[int] = []
    names: list[int] = []
    counts: list[int] = []
    out: list[float] = []
    apart = 0  # rows that do not stand with the others of their outcome
    other = 0  # rows whose outcome is not their variant
    for j in range(len(chances)):
        if chances[j] >= least and chances[j] > 0.0:
            o = outcomes[j]
            if number[o] < 0:
                number[o] = len(names)
                names.append(o)
                counts.append(0)
                out.append(0.0)
            n = number[o]
            if n < len(names) - 1:
                apart = apart + 1
            if o != variants[j]:
                other = other + 1
            counts[n] = counts[n] + 1
            out[n] = out[n] + chances[j]
            at.append(j)
    kin = relatives(state, care)
    out.append(kin["whole"] + total(kin["strangers"]))
    starts: list[int] = [0]
    for n in range(len(counts)):
        starts.append(starts[n] + counts[n])
    if apart > 0:
        at = brought_together(at, [number[outcomes[place]] for place in at], starts)
    of = classes_at(state, at)
    return {
        "rows": picked(state["rows"], at),
        "weights": picked(chances, at),
        "of": of,
        "starts": starts,
        "first": picked(picked(state["rows"], at), starts[0 : len(counts)]),
        "first_of": [picked(each, starts[0 : len(counts)]) for each in of],
        "names": names,
        "number": number,
        "many": [each for each in range(len(counts)) if counts[each] > 1],
        "chances": out,
        "beyond": total(state["unrecorded"]),
        "elsewhere": other,
        "kin": kin,
    }


def relatives(state: Belief, care: list[float]) -> Kin:
    """The rows whose relatives count, and how much of what; all of it times what each sort counts
    for.
    """
    siblings = state["kin"][0]
    twins = state["kin"][1]
    cousins = state["kin"][2]
    together: list[float] = []
    for j in range(len(siblings)):
        together.append(care[0] * siblings[j] + care[1] * twins[j] + care[2] * cousins[j])
    least = faint(together, KIN_LEFT_OUT)
    at: list[int] = []
    for j in range(len(together)):
        if together[j] >= least and together[j] > 0.0:
            at.append(j)
    same = filled(len(at), 0.0)
    weights: list[list[float]] = []
    for n in range(len(state["kin"])):
        counts = care[n]
        each = state["kin"][n]
        less = state["less"][n]
        with_same: list[float] = []
        for m in range(len(at)):
            alike = counts * less[at[m]] * state["chances"][at[m]]
            same[m] = same[m] + alike
            with_same.append(counts * each[at[m]] + alike)
        weights.append(with_same)
    of = classes_at(state, at)
    return {
        "rows": picked(state["rows"], at),
        "weights": weights,
        "same": same,
        "of": of,
        "whole": total(together),
        "strangers": [care[3] * chance for chance in state["strangers"]],
    }


def classes_at(state: Belief, at: list[int]) -> list[list[int]]:
    """The class of each of these rows, by part, and last for the piece itself."""
    kinds = picked(state["kinds"], at)
    of: list[list[int]] = []
    for part in state["parts"]:
        of.append(kinds if part["told"] == 0 else picked(part["of"], at))
    of.append(kinds)
    return of


def picked(values: list[Value], at: list[int]) -> list[Value]:
    """The values at these places; the very list where these are all, in order."""
    if len(at) == len(values) and is_in_order(at):
        return values
    return [values[place] for place in at]


def is_in_order(at: list[int]) -> bool:
    """Whether these are 0, 1, 2, ..."""
    for n in range(len(at)):
        if at[n] != n:
            return False
    return True


def brought_together(at: list[int], groups: list[int], starts: list[int]) -> list[int]:
    """The same rows with those of a group together, in their order; groups begin at `starts`."""
    out = at[:]
    free = starts[:]
    for n in range(len(at)):
        out[free[groups[n]]] = at[n]
        free[groups[n]] = free[groups[n]] + 1
    return out
