"""Where a replaced part comes from: mostly from a piece of the same kind, sometimes from another.

A part fits from another kind that has everything there is to look at on that part: a locomotive's
chassis goes under an unpowered unit, a wagon's wheels under a coach.
"""

from .lists import filled, total
from .types.pack import Pack

FOREIGN = 0.25  # replaced parts that come from another kind, where one fits (a guess, no source)


def kind_shares(pack: Pack) -> list[float]:
    """How often each kind is met: its share of the prior."""
    out = filled(len(pack["kinds"]), 0.0)
    kinds = pack["rows"]["kind"]
    for i in range(len(kinds)):
        out[kinds[i]] = out[kinds[i]] + pack["rows"]["prior"][i]
    return out


def fits_from(pack: Pack, part: int, own: int, other: int) -> bool:
    """Whether the kind `other` has every feature on this part that the kind `own` has."""
    count = 0
    for feature in pack["features"]:
        if feature["part"] == part and own in feature["kinds"]:
            count = count + 1
            if other not in feature["kinds"]:
                return False
    return count > 0


def donors(pack: Pack) -> list[list[list[float]]]:
    """For each part and kind of piece: [chance that the replacement comes from each kind]."""
    shares = kind_shares(pack)
    out: list[list[list[float]]] = []
    for p in range(len(pack["parts"])):
        by_kind: list[list[float]] = []
        for k in range(len(pack["kinds"])):
            weights = filled(len(pack["kinds"]), 0.0)
            for d in range(len(weights)):
                if d != k and fits_from(pack, p, k, d):
                    weights[d] = shares[d]
            whole = total(weights)
            for d in range(len(weights)):
                weights[d] = FOREIGN * weights[d] / whole if whole > 0.0 else 0.0
            weights[k] = 1.0 - FOREIGN if whole > 0.0 else 1.0
            by_kind.append(weights)
        out.append(by_kind)
    return out


def mixed(weights: list[list[float]], by_kind: list[float]) -> list[float]:
    """For each kind of piece, the mean of a figure over the kinds its replacement may be from."""
    out: list[float] = []
    for k in range(len(by_kind)):
        value = 0.0
        for d in range(len(by_kind)):
            value = value + weights[k][d] * by_kind[d]
        out.append(value)
    return out


def sharpened(weights: list[list[float]], by_kind: list[float]) -> list[list[float]]:
    """The chances of where it came from, once what was seen on the part is known: `by_kind` holds
    P(answers on the part | a piece of that kind).
    """
    whole = mixed(weights, by_kind)
    out: list[list[float]] = []
    for k in range(len(by_kind)):
        row: list[float] = []
        for d in range(len(by_kind)):
            w = weights[k][d]
            row.append(w * by_kind[d] / whole[k] if whole[k] > 0.0 else w)
        out.append(row)
    return out
