"""Which question to ask next: bits of what is to be decided, by second of looking.

o        an outcome: a variant, or "not in the reference"   (or an issue, to settle the years)
a        the state that will be answered for feature f
c        a class of rows that look alike for f: the same code, the same kind, the same doubt q that
         the feature's part was replaced
P(a|c)   (1 - q) * P(a | cell) + q * P(a | background), the background that of the kinds which the
         replacement may come from
P(o,a)   sum over the rows of o of chance * P(a|c)
bits     I(O;A) = H(A) - sum over o of P(o) H(A|o)          (Shannon 1948)
score    bits / seconds

Most outcomes have rows of one class only: their H(A|o) is that of the class, worked out once. So a
question costs one look at each row that still counts, and logarithms for each class only.
"""

from math import log
from typing import Any

from .donors import mixed
from .lists import empty_lists, filled, largest, place_of, total

WORTH = 0.02  # bits: less is not worth a look
LEFT_OUT = 0.000001  # the faintest rows, this much of the chance together, are left out of the sums
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
    return state["variants"]  # type: ignore[no-any-return]


def faint(chances: list[float]) -> float:
    """Rows with less than this are left out: together they have at most LEFT_OUT of the chance.

    With that much left out, e, the bits of a question about a feature with s states change by at
    most h(e) + e log2 s, h the entropy of e against 1 - e: by the chain rule I(O;A) = I(D;A) +
    (1 - e) I(O;A|kept) + e I(O;A|left out), D whether the row is left out. That is 0.00003 bits.
    """
    best = chances[largest(chances)] if len(chances) > 0 else 0.0
    limits = [best * 1e-2, best * 1e-3, best * 1e-4, best * 1e-5, best * 1e-6, best * 1e-8]
    lost = filled(len(limits), 0.0)
    for p in chances:
        n = 0
        while n < len(limits) and p < limits[n]:
            lost[n] = lost[n] + p
            n = n + 1
    for n in range(len(limits)):
        if lost[n] <= LEFT_OUT:
            return limits[n]
    return 0.0


def focus(state: dict[str, Any], outcomes: list[int]) -> dict[str, Any]:
    """The rows that still count, those of an outcome together, and outcomes numbered from 0.

    Returns {rows: [row], weights: [chance of each], of: [by part, and last for the piece itself:
    the class of each row as in state's parts], starts: [where the rows of each outcome begin, and
    last their count], names: [outcome of each number], chances: [chance of each number, the
    unrecorded last]}.
    """
    chances = state["chances"]
    least = faint(chances)
    top = -1
    for o in outcomes:
        top = max(top, o)
    number = filled(top + 1, -1)
    names: list[int] = []
    counts: list[int] = []
    out: list[float] = []
    for j in range(len(chances)):
        if chances[j] >= least and chances[j] > 0.0:
            o = outcomes[j]
            if number[o] < 0:
                number[o] = len(names)
                names.append(o)
                counts.append(0)
                out.append(0.0)
            n = int(number[o])
            counts[n] = counts[n] + 1
            out[n] = out[n] + chances[j]
    out.append(total(state["unrecorded"]))
    starts: list[int] = [0]
    for n in range(len(counts)):
        starts.append(starts[n] + counts[n])
    at = filled(starts[len(counts)], 0)
    free = starts[:]
    for j in range(len(chances)):
        if chances[j] >= least and chances[j] > 0.0:
            n = int(number[outcomes[j]])
            at[free[n]] = j
            free[n] = free[n] + 1
    kinds = [state["kinds"][int(at_row)] for at_row in at]
    of: list[Any] = []
    for part in state["parts"]:
        of.append(kinds if part["told"] == 0 else [part["of"][int(at_row)] for at_row in at])
    of.append(kinds)
    return {
        "rows": [state["rows"][int(at_row)] for at_row in at],
        "weights": [chances[int(at_row)] for at_row in at],
        "of": of,
        "starts": starts,
        "names": names,
        "chances": out,
    }


def spare(
    engine: dict[str, Any], state: dict[str, Any], place: int, by_kind: list[float]
) -> list[float]:
    """For each kind of piece, a figure of this feature's background where its part was replaced."""
    part = engine["pack"]["features"][place]["part"]
    return by_kind if part < 0 else mixed(state["donors"][part], by_kind)


def look_at(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> dict[str, Any]:
    """What says how likely each answer is about one feature.

    A class of rows is `code * kinds' length + its class of doubt`. Returns {codes, rows, of,
    doubts, kinds (by class of doubt), by_code, by_kind (P(answer) by the record), spares (the same
    where the part was replaced), made (what view_from found, by class; []: not yet)}.
    """
    pack = engine["pack"]
    part = pack["features"][place]["part"]
    known = engine["sights"][place]
    by_kind = known["by_kind"]
    kinds: list[int] = []
    doubts = filled(len(by_kind), 0.0)
    for k in range(len(by_kind)):
        kinds.append(k)
    if part >= 0:
        kinds = state["parts"][part]["kind"]
        doubts = state["parts"][part]["swapped"]
    spares: list[Any] = []
    for n in range(len(engine["sure"][place])):
        spares.append(spare(engine, state, place, [row[n] for row in by_kind]))
    return {
        "codes": pack["cells"][place]["codes"],
        "rows": focused["rows"],
        "of": focused["of"][part if part >= 0 else len(pack["parts"])],
        "doubts": doubts,
        "kinds": kinds,
        "by_code": known["by_code"],
        "by_kind": by_kind,
        "spares": spares,
        "made": empty_lists(len(known["by_code"]) * len(kinds)),
    }


def view_from(look: dict[str, Any], c: int) -> list[float]:
    """P(answer) for each answer, of rows of the class c."""
    if len(look["made"][c]) == 0:
        width = len(look["kinds"])
        code = c // width
        kind = look["kinds"][c - code * width]
        doubt = look["doubts"][c - code * width]
        own = look["by_code"][code] if code > 0 else look["by_kind"][kind]
        out: list[float] = []
        for a in range(len(look["spares"])):
            out.append((1.0 - doubt) * own[a] + doubt * look["spares"][a][kind])
        look["made"][c] = out
    return look["made"][c]  # type: ignore[no-any-return]


def joint(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> list[float]:
    """P(o,a) for one feature, flat: for each outcome, and last for the unrecorded, its answers."""
    look = look_at(engine, state, focused, place)
    codes = look["codes"]
    rows = look["rows"]
    of = look["of"]
    starts = focused["starts"]
    weights = focused["weights"]
    width = len(look["kinds"])
    count = len(look["spares"])
    table = filled(len(starts) * count, 0.0)
    for o in range(len(starts) - 1):
        for n in range(starts[o], starts[o + 1]):
            chances = view_from(look, codes[rows[n]] * width + of[n])
            for a in range(count):
                table[o * count + a] = table[o * count + a] + weights[n] * chances[a]
    last = (len(starts) - 1) * count
    for k in range(len(state["unrecorded"])):
        for a in range(count):
            table[last + a] = table[last + a] + state["unrecorded"][k] * look["by_kind"][k][a]
    return table


def gone(engine: dict[str, Any], state: dict[str, Any], place: int) -> dict[str, Any]:
    """How likely it is that there is nothing to look at: a kind without the feature, or a state
    "none" that no drawing shows. "No horns" that can be seen and tapped is not absent.

    Returns {lacking: [1 for each kind without it], by_code, by_kind, replaced (by kind)}.
    """
    pack = engine["pack"]
    feature = pack["features"][place]
    none = feature["none"]
    by_kind: list[float] = []
    for shares in pack["backgrounds"][place]:
        by_kind.append(shares[none] if none >= 0 else 0.0)
    by_code: list[float] = []
    for shares in pack["cells"][place]["shares"]:
        by_code.append(shares[none] if none >= 0 and len(shares) > 0 else 0.0)
    lacking = filled(len(pack["kinds"]), 1.0)
    for k in feature["kinds"]:
        lacking[k] = 0.0
    replaced = spare(engine, state, place, by_kind)
    return {"lacking": lacking, "by_code": by_code, "by_kind": by_kind, "replaced": replaced}


def gone_from(away: dict[str, Any], look: dict[str, Any], c: int) -> float:
    """The chance that there is nothing to look at, of rows of the class c."""
    width = len(look["kinds"])
    code = c // width
    kind = look["kinds"][c - code * width]
    doubt = look["doubts"][c - code * width]
    if away["lacking"][kind] > 0.0:
        return 1.0
    if code > 0:
        return (1.0 - doubt) * away["by_code"][code] + doubt * away["replaced"][kind]  # type: ignore[no-any-return]
    return away["by_kind"][kind]  # type: ignore[no-any-return]


def parted(look: dict[str, Any], focused: dict[str, Any]) -> dict[str, Any]:
    """{alike: [by class: the chance of the outcomes all of whose rows are of it], mixed: [the
    other outcomes]}.
    """
    codes = look["codes"]
    rows = look["rows"]
    of = look["of"]
    starts = focused["starts"]
    chances = focused["chances"]
    width = len(look["kinds"])
    alike = filled(len(look["made"]), 0.0)
    others: list[int] = []
    for o in range(len(starts) - 1):
        n = starts[o]
        end = starts[o + 1]
        c = codes[rows[n]] * width + of[n]
        n = n + 1
        while n < end and codes[rows[n]] * width + of[n] == c:
            n = n + 1
        if n == end:
            alike[c] = alike[c] + chances[o]
        else:
            others.append(o)
    return {"alike": alike, "mixed": others}


def worth(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> dict[str, float]:
    """{bits: what the answer about one feature is expected to tell of the outcome, absent: the
    chance that there is nothing to look at}.
    """
    look = look_at(engine, state, focused, place)
    away = gone(engine, state, place)
    found = parted(look, focused)
    alike = found["alike"]
    chances = focused["chances"]
    by_answer = filled(len(look["spares"]), 0.0)
    inside = 0.0  # sum of P(o) H(A|o)
    absent = 0.0
    for c in range(len(alike)):
        if alike[c] > 0.0:
            inside = inside + alike[c] * entropy(view_from(look, c))
            absent = absent + alike[c] * gone_from(away, look, c)
            add_view(by_answer, look, c, alike[c])
    held = filled(len(alike), 0.0)
    for o in found["mixed"]:
        together = filled(len(by_answer), 0.0)
        for c in classes_of(look, focused, o, held):
            absent = absent + held[c] * gone_from(away, look, c)
            add_view(together, look, c, held[c])
            held[c] = 0.0
        inside = inside + take_in(by_answer, together, chances[o])
    beyond = filled(len(by_answer), 0.0)
    for k in range(len(state["unrecorded"])):
        p = state["unrecorded"][k]
        absent = absent + p * max(away["lacking"][k], away["by_kind"][k])
        for a in range(len(beyond)):
            beyond[a] = beyond[a] + p * look["by_kind"][k][a]
    inside = inside + take_in(by_answer, beyond, chances[len(chances) - 1])
    whole = total(chances)
    return {"bits": entropy([x / whole for x in by_answer]) - inside / whole, "absent": absent}


def classes_of(
    look: dict[str, Any], focused: dict[str, Any], outcome: int, held: list[float]
) -> list[int]:
    """The classes of an outcome's rows; what each has of the chance is put into `held`."""
    codes = look["codes"]
    rows = look["rows"]
    of = look["of"]
    weights = focused["weights"]
    width = len(look["kinds"])
    out: list[int] = []
    for n in range(focused["starts"][outcome], focused["starts"][outcome + 1]):
        c = codes[rows[n]] * width + of[n]
        if held[c] == 0.0:
            out.append(c)
        held[c] = held[c] + weights[n]
    return out


def add_view(into: list[float], look: dict[str, Any], c: int, chance: float) -> None:
    """Add P(answer) of rows of the class c, weighed by this chance."""
    seen = view_from(look, c)
    for a in range(len(seen)):
        into[a] = into[a] + chance * seen[a]


def take_in(by_answer: list[float], together: list[float], chance: float) -> float:
    """Add one outcome's P(o,a) to P(a); returns P(o) H(A|o)."""
    for a in range(len(together)):
        by_answer[a] = by_answer[a] + together[a]
    return entropy(together) - bits_of(chance)


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
        found = worth(engine, state, focused, f)
        if found["absent"] <= 0.5 and found["bits"] >= WORTH:
            score = int(GRID * found["bits"] / feature["seconds"])
            entry = {"feature": f, "bits": found["bits"], "score": score}
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
