"""Which question to ask next: bits of what is to be decided, by second of looking.

o        an outcome: a variant, or "not in the reference"   (or an issue, to settle the years)
a        the state that will be answered for feature f
P(o,a)   sum over the rows of o of chance * ((1 - q) * P(a | cell) + q * P(a | background)),
         q the chance that the feature's part was replaced if it is that row; the background then
         is that of the kinds which the replacement may come from
bits     I(O;A) = H(O) + H(A) - H(O,A)                      (Shannon 1948)
score    bits / seconds
"""

from math import log
from typing import Any

from .donors import mixed
from .lists import filled, place_of, total
from .reading import averaged

WORTH = 0.02  # bits: less is not worth a look
FAINT = 0.00001  # rows below this share of the best row's chance are left out of the sums
GRID = 1000000000.0  # scores are compared in steps of one part in this


def bits_of(p: float) -> float:
    """-p log2 p, 0 at 0."""
    return -p * log(p) / log(2.0) if p > 0.0 else 0.0


def entropy(chances: list[float]) -> float:
    """Bits of uncertainty in chances that add up to 1 (Shannon 1948)."""
    out = 0.0
    for p in chances:
        out = out + bits_of(p)
    return out


def by_variant(engine: dict[str, Any], state: dict[str, Any]) -> list[int]:
    """The outcome of each row when the variant is to be decided: its variant."""
    variants = engine["pack"]["rows"]["variant"]
    return [variants[i] for i in state["rows"]]


def focus(state: dict[str, Any], outcomes: list[int]) -> dict[str, Any]:
    """The rows that still count, with their outcomes numbered from 0 without gaps.

    Returns {at: [place in state's rows], outcome: [number], names: [outcome of each number],
    chances: [chance of each number, the unrecorded last]}.
    """
    chances = state["chances"]
    best = 0.0
    top = -1
    for j in range(len(chances)):
        best = max(best, chances[j])
        top = max(top, outcomes[j])
    number = filled(top + 1, -1)
    at: list[int] = []
    dense: list[int] = []
    names: list[int] = []
    out: list[float] = []
    for j in range(len(chances)):
        if chances[j] > best * FAINT:
            o = outcomes[j]
            if number[o] < 0:
                number[o] = len(names)
                names.append(o)
                out.append(0.0)
            at.append(j)
            dense.append(int(number[o]))
            out[int(number[o])] = out[int(number[o])] + chances[j]
    out.append(total(state["unrecorded"]))
    return {"at": at, "outcome": dense, "names": names, "chances": out}


def part_doubt(engine: dict[str, Any], state: dict[str, Any], place: int) -> list[float]:
    """For each row, the chance that the part with this feature was replaced; 0 for the piece."""
    pack = engine["pack"]
    part = pack["features"][place]["part"]
    if part < 0:
        return filled(len(state["rows"]), 0.0)
    replaced: list[float] = state["swapped"][part]
    if len(replaced) > 0:
        return replaced
    return filled(len(state["rows"]), pack["parts"][part]["swap"])


def spare(
    engine: dict[str, Any], state: dict[str, Any], place: int, by_kind: list[float]
) -> list[float]:
    """For each kind of piece, a figure of this feature's background where its part was replaced."""
    part = engine["pack"]["features"][place]["part"]
    return by_kind if part < 0 else mixed(state["donors"][part], by_kind)


def absence(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> float:
    """The chance that there is nothing to look at: a kind without the feature, or a state "none"
    that no drawing shows. "No horns" that can be seen and tapped is not absent.
    """
    pack = engine["pack"]
    feature = pack["features"][place]
    none = feature["none"]
    cells = pack["cells"][place]
    by_kind: list[float] = []
    for shares in pack["backgrounds"][place]:
        by_kind.append(shares[none] if none >= 0 else 0.0)
    by_code: list[float] = []
    for shares in cells["shares"]:
        by_code.append(shares[none] if none >= 0 and len(shares) > 0 else 0.0)
    lacking = filled(len(pack["kinds"]), 1.0)
    for k in feature["kinds"]:
        lacking[k] = 0.0
    doubt = part_doubt(engine, state, place)
    replaced = spare(engine, state, place, by_kind)
    out = 0.0
    for j in focused["at"]:
        kind = state["kinds"][j]
        code = cells["codes"][state["rows"][j]]
        gone = lacking[kind]
        if gone == 0.0:
            gone = by_kind[kind]
            if code > 0:
                gone = (1.0 - doubt[j]) * by_code[code] + doubt[j] * replaced[kind]
        out = out + state["chances"][j] * gone
    for k in range(len(by_kind)):
        out = out + state["unrecorded"][k] * max(lacking[k], by_kind[k])
    return out


def joint(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> list[float]:
    """P(o,a) for one feature, flat: for each outcome, and last for the unrecorded, its answers."""
    pack = engine["pack"]
    channel = engine["sure"][place]
    count = len(channel)
    cells = pack["cells"][place]
    by_code = [[averaged(shares, row) for row in channel] for shares in cells["shares"]]
    by_kind = [[averaged(shares, row) for row in channel] for shares in pack["backgrounds"][place]]
    spares: list[list[float]] = []
    for n in range(count):
        spares.append(spare(engine, state, place, [row[n] for row in by_kind]))
    doubt = part_doubt(engine, state, place)
    at = focused["at"]
    outcome = focused["outcome"]
    outcomes = len(focused["chances"])
    table = filled(outcomes * count, 0.0)
    for n in range(len(at)):
        j = at[n]
        code = cells["codes"][state["rows"][j]]
        kind = state["kinds"][j]
        other = state["chances"][j] * doubt[j]
        own = state["chances"][j] - other
        start = outcome[n] * count
        if own > 0.0:
            cell = by_code[code] if code > 0 else by_kind[kind]
            for a in range(count):
                table[start + a] = table[start + a] + own * cell[a]
        if other > 0.0:
            for a in range(count):
                table[start + a] = table[start + a] + other * spares[a][kind]
    last = (outcomes - 1) * count
    for k in range(len(by_kind)):
        for a in range(count):
            table[last + a] = table[last + a] + state["unrecorded"][k] * by_kind[k][a]
    return table


def gain(table: list[float], outcomes: int) -> float:
    """Bits that the answer is expected to tell about the outcome: I(O;A) of a joint table, which is
    first scaled to add up to 1.
    """
    count = len(table) // outcomes
    whole = total(table)
    by_answer = filled(count, 0.0)
    out = 0.0
    for o in range(outcomes):
        row = 0.0
        for a in range(count):
            p = table[o * count + a] / whole
            row = row + p
            by_answer[a] = by_answer[a] + p
            out = out - bits_of(p)
        out = out + bits_of(row)
    for a in range(count):
        out = out + bits_of(by_answer[a])
    return out


def unasked(engine: dict[str, Any], session: dict[str, Any]) -> list[int]:
    """Features with no answer yet, on parts that are there."""
    pack = engine["pack"]
    done = [a["feature"] for a in session["answers"]]
    out: list[int] = []
    for f in range(len(pack["features"])):
        feature = pack["features"][f]
        gone = False
        if feature["part"] >= 0:
            gone = pack["parts"][feature["part"]]["id"] in session["missing"]
        if not gone and feature["id"] not in done:
            out.append(f)
    return out


def questions(
    engine: dict[str, Any], session: dict[str, Any], state: dict[str, Any], outcomes: list[int]
) -> dict[str, Any]:
    """Every question worth asking, best first: {open, shut: [{feature, bits, score}], focus}.

    `shut` are those that need something the person has not got. A feature that is likelier absent
    than there is left out, and so is one worth less than WORTH bits.
    """
    pack = engine["pack"]
    focused = focus(state, outcomes)
    ready: list[dict[str, Any]] = []
    shut: list[dict[str, Any]] = []
    for f in unasked(engine, session):
        feature = pack["features"][f]
        if absence(engine, state, focused, f) <= 0.5:
            bits = gain(joint(engine, state, focused, f), len(focused["chances"]))
            if bits >= WORTH:
                score = int(GRID * bits / feature["seconds"])
                entry = {"feature": f, "bits": bits, "score": score}
                if feature["needs"] == "nothing" or feature["needs"] in session["able"]:
                    ready.append(entry)
                else:
                    shut.append(entry)
    return {
        "open": sorted(ready, key=lambda entry: -entry["score"]),
        "shut": sorted(shut, key=lambda entry: -entry["score"]),
        "focus": focused,
    }


def reason(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> dict[str, Any]:
    """What each answer leaves: {expected: [chance of each state], groups: [{state, variants}]}.

    `variants` counts the outcomes with at least a hundredth of the best one's chance, if that is
    seen.
    """
    outcomes = len(focused["chances"])
    table = joint(engine, state, focused, place)
    count = len(table) // outcomes
    whole = total(table)
    expected: list[float] = []
    groups: list[dict[str, int]] = []
    for a in range(count):
        best = 0.0
        column = 0.0
        for o in range(outcomes):
            column = column + table[o * count + a]
            best = max(best, table[o * count + a])
        left = 0
        for o in range(outcomes - 1):
            if table[o * count + a] > best / 100.0:
                left = left + 1
        expected.append(column / whole)
        groups.append({"state": a, "variants": left})
    return {"expected": expected, "groups": groups}


def place_of_feature(engine: dict[str, Any], ident: str) -> int:
    """Where the feature with this id stands, or -1."""
    return place_of(engine["pack"]["features"], ident)
