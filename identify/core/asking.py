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
from .lists import blanks, filled, largest, place_of, total

WORTH = 0.02  # bits: less is not worth a look
LEFT_OUT = 0.00001  # the faintest rows, this much of the chance together, are left out of the sums
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


def by_variant(state: dict[str, Any]) -> list[int]:
    """The outcome of each row when the variant is to be decided: its variant."""
    return state["variants"]  # type: ignore[no-any-return]


def faint(chances: list[float]) -> float:
    """Rows with less than this are left out: together they have at most LEFT_OUT of the chance.

    With that much left out, e, the bits of a question about a feature with s states change by at
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
        if lost[n] <= LEFT_OUT:
            return limits[n]
    return 0.0


def focus(state: dict[str, Any], outcomes: list[int]) -> dict[str, Any]:
    """The rows that still count, those of an outcome together, and outcomes numbered from 0.

    Returns {rows: [row], weights: [chance of each], of: [by part, and last for the piece itself:
    the class of each row as in state's parts], starts: [where the rows of each outcome begin, and
    last their count], first, first_of: [row of each outcome's first, and by part its class], names:
    [outcome of each number], number: [of each outcome, -1: none], many: [numbers of outcomes with
    more rows than one], chances: [chance of each number, the unrecorded last], elsewhere: count of
    rows whose outcome is not their variant}.
    """
    chances = state["chances"]
    variants = state["variants"]
    least = faint(chances)
    top = -1
    for o in outcomes:
        top = max(top, o)
    number: list[Any] = filled(top + 1, -1)
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
    out.append(total(state["unrecorded"]))
    starts: list[int] = [0]
    for n in range(len(counts)):
        starts.append(starts[n] + counts[n])
    if apart > 0:
        at = brought_together(at, [number[outcomes[place]] for place in at], starts)
    kinds = picked(state["kinds"], at)
    of: list[Any] = []
    for part in state["parts"]:
        of.append(kinds if part["told"] == 0 else picked(part["of"], at))
    of.append(kinds)
    return {
        "rows": picked(state["rows"], at),
        "weights": picked(chances, at),
        "of": of,
        "starts": starts,
        "first": picked(picked(state["rows"], at), starts[0 : len(counts)]),
        "first_of": [picked(each, starts[0 : len(counts)]) for each in of],
        "names": names,
        "number": number,
        "many": [one for one in range(len(counts)) if counts[one] > 1],
        "chances": out,
        "elsewhere": other,
    }


def picked(values: list[Any], at: list[int]) -> list[Any]:
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


def spare(
    engine: dict[str, Any], state: dict[str, Any], place: int, by_kind: list[float]
) -> list[float]:
    """For each kind of piece, a figure of this feature's background where its part was replaced."""
    part = engine["pack"]["features"][place]["part"]
    return by_kind if part < 0 else mixed(state["parts"][part]["donors"], by_kind)


def look_at(
    engine: dict[str, Any], state: dict[str, Any], focused: dict[str, Any], place: int
) -> dict[str, Any]:
    """What says how likely each answer is about one feature.

    A class of rows is `code * kinds' length + its class of doubt`. Returns {codes, varying
    (None, or the only variants that can have rows of more classes), rows, of, first_of, doubts,
    kinds (by class of doubt), by_code, by_kind (P(answer) by the record), spares (the same
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
    told = 0 if part < 0 else state["parts"][part]["told"]
    at = part if part >= 0 else len(pack["parts"])
    return {
        "codes": pack["cells"][place]["codes"],
        "varying": engine["varying"][place] if focused["elsewhere"] == 0 and told == 0 else None,
        "rows": focused["rows"],
        "of": focused["of"][at],
        "first_of": focused["first_of"][at],
        "doubts": doubts,
        "kinds": kinds,
        "by_code": known["by_code"],
        "by_kind": by_kind,
        "spares": spares,
        "made": blanks(len(known["by_code"]) * len(kinds)),
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
) -> dict[str, Any]:
    """P(o,a) for one feature, for each outcome and last for the unrecorded: {scales, views}, which
    is scales[o] * views[o][a].
    """
    look = look_at(engine, state, focused, place)
    found = parted(look, focused)
    width = len(look["kinds"])
    scales = focused["chances"][:]
    views: list[Any] = []
    for o in range(len(focused["names"])):
        views.append(
            view_from(look, look["codes"][focused["first"][o]] * width + look["first_of"][o])
        )
    for o in found["mixed"]:
        together = filled(len(look["spares"]), 0.0)
        for n in range(focused["starts"][o], focused["starts"][o + 1]):
            c = look["codes"][look["rows"][n]] * width + look["of"][n]
            add_view(together, look, c, focused["weights"][n])
        scales[o] = 1.0
        views[o] = together
    beyond = filled(len(look["spares"]), 0.0)
    for k in range(len(state["unrecorded"])):
        for a in range(len(beyond)):
            beyond[a] = beyond[a] + state["unrecorded"][k] * look["by_kind"][k][a]
    scales[len(scales) - 1] = 1.0
    views.append(beyond)
    return {"scales": scales, "views": views}


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
    first = focused["first"]
    first_of = look["first_of"]
    starts = focused["starts"]
    chances = focused["chances"]
    width = len(look["kinds"])
    alike = filled(len(look["made"]), 0.0)
    for o in range(len(first)):
        c = codes[first[o]] * width + first_of[o]
        alike[c] = alike[c] + chances[o]
    others: list[int] = []
    for o in may_be_mixed(look, focused):
        c = codes[first[o]] * width + first_of[o]
        n = starts[o] + 1
        end = starts[o + 1]
        while n < end and codes[rows[n]] * width + of[n] == c:
            n = n + 1
        if n < end:
            others.append(o)
            alike[c] = alike[c] - chances[o]
    return {"alike": alike, "mixed": others}


def may_be_mixed(look: dict[str, Any], focused: dict[str, Any]) -> list[int]:
    """The outcomes that can have rows of more than one class."""
    if look["varying"] is None:
        return focused["many"]  # type: ignore[no-any-return]
    number = focused["number"]
    return [number[v] for v in look["varying"] if v < len(number) and number[v] >= 0]


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
    classes = filled(len(alike), 0)
    together = filled(len(by_answer), 0.0)
    for o in found["mixed"]:
        count = classes_of(look, focused, o, held, classes)
        for n in range(count):
            c = int(classes[n])
            absent = absent + held[c] * gone_from(away, look, c)
            add_view(together, look, c, held[c])
            held[c] = 0.0
        inside = inside + take_in(by_answer, together, chances[o])
    for k in range(len(state["unrecorded"])):
        p = state["unrecorded"][k]
        absent = absent + p * max(away["lacking"][k], away["by_kind"][k])
        for a in range(len(together)):
            together[a] = together[a] + p * look["by_kind"][k][a]
    inside = inside + take_in(by_answer, together, chances[len(chances) - 1])
    whole = total(chances)
    return {"bits": entropy([x / whole for x in by_answer]) - inside / whole, "absent": absent}


def classes_of(
    look: dict[str, Any],
    focused: dict[str, Any],
    outcome: int,
    held: list[float],
    classes: list[float],
) -> int:
    """How many classes an outcome's rows have: which is put into `classes`, and what each has of
    the chance into `held`.
    """
    codes = look["codes"]
    rows = look["rows"]
    of = look["of"]
    weights = focused["weights"]
    width = len(look["kinds"])
    count = 0
    for n in range(focused["starts"][outcome], focused["starts"][outcome + 1]):
        c = codes[rows[n]] * width + of[n]
        if held[c] == 0.0:
            classes[count] = c
            count = count + 1
        held[c] = held[c] + weights[n]
    return count


def add_view(into: list[float], look: dict[str, Any], c: int, chance: float) -> None:
    """Add P(answer) of rows of the class c, weighed by this chance."""
    seen = view_from(look, c)
    for a in range(len(seen)):
        into[a] = into[a] + chance * seen[a]


def take_in(by_answer: list[float], together: list[float], chance: float) -> float:
    """Add one outcome's P(o,a) to P(a), and clear it; returns P(o) H(A|o)."""
    inside = -bits_of(chance)
    for a in range(len(together)):
        by_answer[a] = by_answer[a] + together[a]
        inside = inside + bits_of(together[a])
        together[a] = 0.0
    return inside


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
    table = joint(engine, state, focused, place)
    scales = table["scales"]
    views = table["views"]
    best = filled(len(engine["sure"][place]), 0.0)
    columns = filled(len(best), 0.0)
    left = filled(len(best), 0)
    for o in range(len(views)):
        for a in range(len(best)):
            p = scales[o] * views[o][a]
            columns[a] = columns[a] + p
            best[a] = max(best[a], p)
    for o in range(len(views) - 1):
        for a in range(len(best)):
            if scales[o] * views[o][a] > best[a] / 100.0:
                left[a] = left[a] + 1
    whole = total(columns)
    groups: list[dict[str, float]] = []
    for a in range(len(left)):
        groups.append({"state": a, "variants": left[a]})
    return {"expected": [column / whole for column in columns], "groups": groups}


def place_of_feature(engine: dict[str, Any], ident: str) -> int:
    """Where the feature with this id stands, or -1."""
    return place_of(engine["pack"]["features"], ident)
