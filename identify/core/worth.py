"""What a question is worth: the bits that its answer is expected to tell of what is to be decided.

o        an outcome: a variant, or "not in the reference"   (or an issue, to settle the years)
a        the state that will be answered for feature f
c        a class of rows that look alike for f: the same code, the same kind, the same doubt q that
         the feature's part was replaced
P(a|c)   (1 - q) * P(a | cell) + q * P(a | background), the background that of the kinds which the
         replacement may come from
P(o,a)   sum over the rows of o of chance * P(a|c)
bits     I(O;A) = H(A) - sum over o of P(o) H(A|o)          (Shannon 1948)

Most outcomes have rows of one class only: their H(A|o) is that of the class, worked out once. So a
question costs one look at each row that still counts, and logarithms for each class only.
"""

from math import log

from .donors import mixed
from .lists import blanks, filled, total
from .types.engine import Belief, Engine
from .types.questions import Away, Focus, Joint, Look, Parted, Worth


def bits_of(p: float) -> float:
    """-p log2 p, 0 at 0."""
    return -p * log(p) / log(2.0) if p > 0.0 else 0.0


def entropy(chances: list[float]) -> float:
    """Bits of uncertainty in chances that add up to 1 (Shannon 1948)."""
    out = 0.0
    for p in chances:
        out = out + bits_of(p)
    return out


def spare(engine: Engine, state: Belief, place: int, by_kind: list[float]) -> list[float]:
    """For each kind of piece, a figure of this feature's background where its part was replaced."""
    part = engine["pack"]["features"][place]["part"]
    return by_kind if part < 0 else mixed(state["parts"][part]["donors"], by_kind)


def look_at(engine: Engine, state: Belief, focused: Focus, place: int) -> Look:
    """What says how likely each answer is about one feature."""
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
    spares: list[list[float]] = []
    for n in range(len(engine["sure"][place])):
        spares.append(spare(engine, state, place, [row[n] for row in by_kind]))
    answers = 0 if part < 0 else state["parts"][part]["told"]
    at = part if part >= 0 else len(pack["parts"])
    return {
        "codes": pack["cells"][place]["codes"],
        "varying": engine["varying"][place] if focused["elsewhere"] == 0 and answers == 0 else None,
        "rows": focused["rows"],
        "of": focused["of"][at],
        "first_of": focused["first_of"][at],
        "doubts": doubts,
        "kinds": kinds,
        "by_code": known["by_code"],
        "by_kind": by_kind,
        "spares": spares,
        "made": blanks(len(known["by_code"]) * len(kinds)),
        "by_kin": known["kin"],
        "strange": known["strange"],
        "kin": focused["kin"],
        "kin_of": focused["kin"]["of"][at],
        "strangers": focused["kin"]["strangers"],
    }


def view_from(look: Look, c: int) -> list[float]:
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
    return look["made"][c]


def joint(engine: Engine, state: Belief, focused: Focus, place: int) -> Joint:
    """P(o,a) for one feature, for each outcome and last for the unrecorded."""
    look = look_at(engine, state, focused, place)
    classed = parted(look, focused)
    width = len(look["kinds"])
    scales = focused["chances"][:]
    views: list[list[float]] = []
    for o in range(len(focused["names"])):
        views.append(
            view_from(look, look["codes"][focused["first"][o]] * width + look["first_of"][o])
        )
    for o in classed["mixed"]:
        together = filled(len(look["spares"]), 0.0)
        for n in range(focused["starts"][o], focused["starts"][o + 1]):
            c = look["codes"][look["rows"][n]] * width + look["of"][n]
            add_view(together, look, c, focused["weights"][n])
        scales[o] = 1.0
        views[o] = together
    scales[len(scales) - 1] = 1.0
    views.append(view_beyond(look))
    return {"scales": scales, "views": views}


def view_beyond(look: Look) -> list[float]:
    """P(not in any range, answer) for each answer: of the relatives of the rows that count, without
    those that would differ from their row in nothing, and of the strangers.
    """
    kin = look["kin"]
    codes = look["codes"]
    rows = kin["rows"]
    of = look["kin_of"]
    width = len(look["kinds"])
    by_kind = look["strange"]
    classes: list[int] = []
    for n in range(len(rows)):
        classes.append(codes[rows[n]] * width + of[n])
    same = held_by(classes, kin["same"], len(look["made"]))
    sorts = [held_by(classes, weights, len(same)) for weights in kin["weights"]]
    out = filled(len(look["spares"]), 0.0)
    for c in range(len(same)):
        held = 0.0 - same[c]
        for n in range(len(sorts)):
            held = held + sorts[n][c]
        if held > 0.0:
            code = c // width
            kind = look["kinds"][c - code * width]
            doubt = look["doubts"][c - code * width]
            for a in range(len(out)):
                own = held * look["by_kind"][kind][a]
                if code > 0:
                    own = 0.0 - same[c] * look["by_code"][code][a]
                    for n in range(len(sorts)):
                        own = own + sorts[n][c] * look["by_kin"][n][code][a]
                out[a] = out[a] + max(
                    0.0, (1.0 - doubt) * own + doubt * held * look["spares"][a][kind]
                )
    counted = total(out)
    scale = kin["whole"] / counted if counted > 0.0 else 0.0  # for those left out
    for a in range(len(out)):
        out[a] = scale * out[a]
    for k in range(len(by_kind)):
        for a in range(len(out)):
            out[a] = out[a] + look["strangers"][k] * by_kind[k][a]
    return out


def held_by(classes: list[int], weights: list[float], count: int) -> list[float]:
    """What rows of each class have together."""
    out = filled(count, 0.0)
    for n in range(len(classes)):
        out[classes[n]] = out[classes[n]] + weights[n]
    return out


def gone(engine: Engine, state: Belief, place: int) -> Away:
    """How likely it is that there is nothing to look at: a kind without the feature, or a state
    "none" that no drawing shows. "No horns" that can be seen and tapped is not absent.
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


def gone_from(away: Away, look: Look, c: int) -> float:
    """The chance that there is nothing to look at, of rows of the class c."""
    width = len(look["kinds"])
    code = c // width
    kind = look["kinds"][c - code * width]
    doubt = look["doubts"][c - code * width]
    if away["lacking"][kind] > 0.0:
        return 1.0
    if code > 0:
        return (1.0 - doubt) * away["by_code"][code] + doubt * away["replaced"][kind]
    return away["by_kind"][kind]


def parted(look: Look, focused: Focus) -> Parted:
    """The outcomes all of whose rows are of one class, and the others."""
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


def may_be_mixed(look: Look, focused: Focus) -> list[int]:
    """The outcomes that can have rows of more than one class."""
    if look["varying"] is None:
        return focused["many"]
    number = focused["number"]
    return [number[v] for v in look["varying"] if v < len(number) and number[v] >= 0]


def worth(engine: Engine, state: Belief, focused: Focus, place: int) -> Worth:
    """What a question about one feature is worth."""
    look = look_at(engine, state, focused, place)
    away = gone(engine, state, place)
    classed = parted(look, focused)
    alike = classed["alike"]
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
    for o in classed["mixed"]:
        count = classes_of(look, focused, o, held, classes)
        for n in range(count):
            c = classes[n]
            absent = absent + held[c] * gone_from(away, look, c)
            add_view(together, look, c, held[c])
            held[c] = 0.0
        inside = inside + take_in(by_answer, together, chances[o])
    for k in range(len(state["unrecorded"])):
        absent = absent + state["unrecorded"][k] * max(away["lacking"][k], away["by_kind"][k])
    inside = inside + take_in(by_answer, view_beyond(look), chances[len(chances) - 1])
    whole = total(chances)
    return {"bits": entropy([x / whole for x in by_answer]) - inside / whole, "absent": absent}


def classes_of(
    look: Look,
    focused: Focus,
    outcome: int,
    held: list[float],
    classes: list[int],
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


def add_view(into: list[float], look: Look, c: int, chance: float) -> None:
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
