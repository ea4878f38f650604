"""How an unrecorded variant or item differs from the recorded ones: learned from the range itself.

An issue is left out with its variant (or with its whole item), and the issues that are left and
most like it are looked at. For each state of each feature the chance of differing is then found by
expectation and maximisation (Dempster, Laird and Rubin 1977) for the mixture that core/kin.py
states. So it is not guessed: where every engine comes with an unpowered twin, that is learned.
"""

from collections.abc import Sequence

from ..kin import otherwise
from ..lists import filled, largest
from ..types.pack import Pack
from ..types.rows import LikeTerm, NearIssue

LEFT_OUT = 120  # variants that are left out in turn, at even steps through the range
MOST_LEFT = 2000  # issues that each of them is held against
NEAREST = 12  # of them, that can count at all
ROUNDS = 6  # of expectation and maximisation
DIFFERED = 0.5  # half of four looks at each feature beforehand: one in eight differs
LOOKS = 4.0
SHARED = 2.0  # looks at each state beforehand, that say what the whole feature says
SIBLINGS = [DIFFERED / LOOKS]  # where the search for the rates of each sort begins
TWINS_AND_COUSINS = [0.05, 0.3]
FAINT = 0.0001  # a relation less likely than this is not counted


def alike(pack: Pack, first: int, second: int) -> int:
    """In how many features two issues are recorded the same."""
    count = 0
    for cells in pack["cells"]:
        if cells["codes"][first] == cells["codes"][second]:
            count = count + 1
    return count


def nearest(pack: Pack, row: int, every: list[int]) -> list[int]:
    """The issues recorded most like this one, among these."""
    counts = [alike(pack, row, other) for other in every]
    places: list[int] = []
    for n in range(len(every)):
        places.append(n)
    best = sorted(places, key=lambda place: 0 - counts[place])[0:NEAREST]
    return [every[place] for place in best]


def mean_of(seen: Sequence[float], there: Sequence[float]) -> float:
    """The mean of one by the other."""
    out = 0.0
    for n in range(len(seen)):
        out = out + seen[n] * there[n]
    return out


def terms_between(
    pack: Pack, other: list[list[list[float]]], row: int, near: int
) -> list[LikeTerm]:
    """What each feature says of one issue as a relative of another."""
    out: list[LikeTerm] = []
    for f in range(len(pack["features"])):
        cells = pack["cells"][f]
        seen = cells["shares"][cells["codes"][row]]
        there = cells["shares"][cells["codes"][near]]
        if len(seen) > 1 and len(there) > 1:
            state = largest(there)
            same = min(1.0, mean_of(seen, there) / mean_of(seen, seen))
            apart = mean_of(seen, other[f][state])
            out.append({"feature": f, "state": state, "same": same, "apart": apart})
    return out


def group_near(
    pack: Pack, other: list[list[list[float]]], row: int, every: list[int]
) -> list[NearIssue]:
    """The issues near one that is left out."""
    return [
        {"prior": pack["rows"]["prior"][n], "terms": terms_between(pack, other, row, n)}
        for n in nearest(pack, row, every)
    ]


def even_rates(pack: Pack, rate: float) -> list[list[float]]:
    """For each feature and state the same rate."""
    return [filled(len(feature["states"]), rate) for feature in pack["features"]]


def likeness(rates: list[list[float]], near: NearIssue) -> float:
    """The chance of what was left out as a relative of one issue, by that issue's prior."""
    out = near["prior"]
    for term in near["terms"]:
        rate = rates[term["feature"]][term["state"]]
        out = out * ((1.0 - rate) * term["same"] + rate * term["apart"])
    return out


def count_in(
    rates: list[list[float]],
    near: NearIssue,
    share: float,
    differed: list[list[float]],
    counted: list[list[float]],
) -> None:
    """Add to how often each state differed, and to how often it was looked at."""
    for term in near["terms"]:
        f = term["feature"]
        s = term["state"]
        rate = rates[f][s]
        either = (1.0 - rate) * term["same"] + rate * term["apart"]
        if either > 0.0:
            differed[f][s] = differed[f][s] + share * rate * term["apart"] / either
            counted[f][s] = counted[f][s] + share


def smoothed(differed: list[float], counted: list[float]) -> list[float]:
    """The rate of each state of a feature, drawn towards that of the whole feature."""
    off = DIFFERED
    looks = LOOKS
    for s in range(len(differed)):
        off = off + differed[s]
        looks = looks + counted[s]
    whole = off / looks
    out: list[float] = []
    for s in range(len(differed)):
        out.append((SHARED * whole + differed[s]) / (SHARED + counted[s]))
    return out


def chances_to_differ(
    pack: Pack, groups: list[list[NearIssue]], begin: list[float]
) -> list[list[list[float]]]:
    """For each sort of relative, feature and state the chance that it differs; there are as many
    sorts as rates to begin from.
    """
    rates = [even_rates(pack, rate) for rate in begin]
    for _ in range(ROUNDS):
        differed = [even_rates(pack, 0.0) for begun in begin]
        counted = [even_rates(pack, 0.0) for begun in begin]
        for group in groups:
            chances: list[list[float]] = []
            whole = 0.0
            for sort in rates:
                each = [likeness(sort, near) for near in group]
                for chance in each:
                    whole = whole + chance
                chances.append(each)
            for k in range(len(rates)):
                for n in range(len(group)):
                    if chances[k][n] > FAINT * whole:
                        share = chances[k][n] / whole
                        count_in(rates[k], group[n], share, differed[k], counted[k])
        after: list[list[list[float]]] = []
        for k in range(len(rates)):
            learned: list[list[float]] = []
            for f in range(len(pack["features"])):
                learned.append(smoothed(differed[k][f], counted[k][f]))
            after.append(learned)
        rates = after
    return rates


def in_ten_thousandths(chance: float) -> float:
    """A chance to four decimals."""
    return (chance * 10000 + 0.5) // 1 / 10000


def left_out(pack: Pack) -> list[int]:
    """The likeliest issue of every variant, or of some at even steps."""
    priors = pack["rows"]["prior"]
    variants = pack["rows"]["variant"]
    best = filled(len(pack["variants"]), -1)
    for i in range(len(variants)):
        v = variants[i]
        if best[v] < 0 or priors[i] > priors[best[v]]:
            best[v] = i
    rows = [row for row in best if row >= 0]
    step = max(1.0, len(rows) / LEFT_OUT)
    count = int(len(rows) / step)
    return [rows[int((n + 0.5) * step)] for n in range(count)]


def learn_relatives(pack: Pack) -> None:
    """Put into each feature how often each of its states differs on relatives that are in no range,
    for each sort of them: `differs`.
    """
    variants = pack["rows"]["variant"]
    items = [pack["variants"][v]["item"] for v in variants]
    step = max(1, len(items) // MOST_LEFT)
    other = otherwise(pack)
    siblings: list[list[NearIssue]] = []
    cousins: list[list[NearIssue]] = []
    for row in left_out(pack):
        same: list[int] = []
        others: list[int] = []
        n = 0
        while n < len(items):
            if items[n] != items[row]:
                others.append(n)
            elif variants[n] != variants[row]:
                same.append(n)
            n = n + step
        siblings.append(group_near(pack, other, row, same))
        cousins.append(group_near(pack, other, row, others))
    near = chances_to_differ(pack, siblings, SIBLINGS)
    far = chances_to_differ(pack, cousins, TWINS_AND_COUSINS)
    for f in range(len(pack["features"])):
        learned: list[list[float]] = []
        for sorts in [near, far]:
            for sort in sorts:
                learned.append([in_ten_thousandths(rate) for rate in sort[f]])
        pack["features"][f]["differs"] = learned
