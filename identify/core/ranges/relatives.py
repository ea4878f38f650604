"""How an unrecorded variant or item differs from the recorded ones: learned from the range itself.

An issue is left out with its variant (or with its whole item), and the issues that are left and
most like it are looked at. For each feature the chance of differing is then found by expectation
and maximisation (Dempster, Laird and Rubin 1977) for the mixture that core/kin.py states. So it is
not guessed: in a range whose items differ in shape and share a livery, that is what is learned.
"""

from collections.abc import Sequence

from ..kin import NEW
from ..lists import filled
from ..types.pack import Pack
from ..types.rows import LikeTerm, NearIssue

LEFT_OUT = 40  # issues that are left out in turn, at even steps through the range
MOST_LEFT = 2000  # issues that each of them is held against
NEAREST = 12  # of them, that can count at all
ROUNDS = 6  # of expectation and maximisation
MISREAD = 0.03  # an answer says so much less than what is recorded
DIFFERED = 0.5  # half of four looks at each feature beforehand: one in eight differs
LOOKS = 4.0
TELLS = 0.97  # a feature that nearly every piece has alike says nothing of relatives


def alike(pack: Pack, one: int, other: int) -> int:
    """In how many features two issues are recorded the same."""
    count = 0
    for cells in pack["cells"]:
        if cells["codes"][one] == cells["codes"][other]:
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


def terms_between(pack: Pack, row: int, other: int) -> list[LikeTerm]:
    """What each feature says of one issue as a relative of another."""
    out: list[LikeTerm] = []
    kind = pack["rows"]["kind"][row]
    for f in range(len(pack["features"])):
        cells = pack["cells"][f]
        seen = cells["shares"][cells["codes"][row]]
        there = cells["shares"][cells["codes"][other]]
        if len(seen) > 0 and len(there) > 0:
            usual = mean_of(seen, pack["backgrounds"][f][kind])
            if kind in pack["features"][f]["kinds"]:
                added = 1 if pack["features"][f]["none"] >= 0 else 0
                usual = (1 - NEW) * usual + NEW / (len(seen) - added)
            if usual <= TELLS:
                same = min(1.0, mean_of(seen, there) / mean_of(seen, seen))
                out.append(
                    {"feature": f, "same": (1 - MISREAD) * same + MISREAD * usual, "usual": usual}
                )
    return out


def group_near(pack: Pack, row: int, every: list[int]) -> list[NearIssue]:
    """The issues near one that is left out."""
    return [
        {"prior": pack["rows"]["prior"][n], "terms": terms_between(pack, row, n)}
        for n in nearest(pack, row, every)
    ]


def chances_to_differ(groups: list[list[NearIssue]], features: int) -> list[float]:
    """For each feature the chance that it differs."""
    rates = filled(features, DIFFERED / LOOKS)
    for _ in range(ROUNDS):
        differed = filled(features, DIFFERED)
        counted = filled(features, LOOKS)
        for group in groups:
            weights: list[float] = []
            whole = 0.0
            for near in group:
                weight = near["prior"]
                for term in near["terms"]:
                    rate = rates[term["feature"]]
                    weight = weight * ((1 - rate) * term["same"] + rate * term["usual"])
                weights.append(weight)
                whole = whole + weight
            if whole > 0:
                for n in range(len(group)):
                    share = weights[n] / whole
                    for term in group[n]["terms"]:
                        f = term["feature"]
                        rate = rates[f]
                        either = (1 - rate) * term["same"] + rate * term["usual"]
                        differed[f] = differed[f] + share * rate * term["usual"] / either
                        counted[f] = counted[f] + share
        rates = [differed[place] / counted[place] for place in range(features)]
    return rates


def in_ten_thousandths(chance: float) -> float:
    """A chance to four decimals."""
    return (chance * 10000 + 0.5) // 1 / 10000


def learn_relatives(pack: Pack) -> None:
    """Put into each feature how often it differs on an unrecorded variant, and on an unrecorded
    item: `differs`.
    """
    variants = pack["rows"]["variant"]
    items = [pack["variants"][v]["item"] for v in variants]
    count = len(items)
    step = max(1, count // MOST_LEFT)
    leave = max(1, count // LEFT_OUT)
    siblings: list[list[NearIssue]] = []
    cousins: list[list[NearIssue]] = []
    row = leave // 2
    while row < count:
        same: list[int] = []
        others: list[int] = []
        n = 0
        while n < count:
            if items[n] != items[row]:
                others.append(n)
            elif variants[n] != variants[row]:
                same.append(n)
            n = n + step
        siblings.append(group_near(pack, row, same))
        cousins.append(group_near(pack, row, others))
        row = row + leave
    near = chances_to_differ(siblings, len(pack["features"]))
    far = chances_to_differ(cousins, len(pack["features"]))
    for f in range(len(pack["features"])):
        pack["features"][f]["differs"] = [
            in_ten_thousandths(near[f]), in_ten_thousandths(far[f])
        ]  # fmt: skip
