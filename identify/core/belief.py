"""What the answers say: the chance of every issue, of what is in no range, of swapped parts.

    i        a row of the pack, one issue          f       a feature that was answered
    l[i,f]   P(answer | row i), by the row's recorded state
    bg[k,f]  P(answer | any piece of kind k), by the background
    m[i,f]   P(answer | a relative of row i), each state of which differs with a chance of its own
    r[p]     chance that part p was replaced
    d[p,k,e] chance that the replacement on a piece of kind k comes from one of kind e

    row  i   prior[i] * product over f on the piece of l[i,f]
                      * product over parts p of ((1 - r) * product l[i,f]
                                                 + r * sum over e of d[p,k,e] * product bg[e,f])
    its relatives: the same with m in place of l, each sort with its own `differs`, without those
                   that differ from it in nothing (kin.py)
    strangers of kind k: their share of the prior * product over all f of bg[k,f]

Products are kept in plain numbers, not logarithms: adding and multiplying give the same last bit in
Python and in JavaScript. They are scaled before they can run dry, and to add up to 1 at the end.

Rows with the same codes share their likelihoods, so those are worked out once for each code, and
once for each set of codes on a part; then every row takes one product for each answer.
"""

from .donors import donors
from .kin import (
    NUMBERED,
    add_up,
    differing,
    openness,
    otherwise,
    sameness,
    share_out,
    shown,
    strangeness,
    take_out,
)
from .lists import filled, place_of, total
from .misreading import (
    ELSE_RECORDED,
    ELSE_REPLACED,
    ELSE_UNRECORDED,
    averaged,
    channel,
    heard,
    in_words,
    usual_errors,
)
from .session import answers_with_kind
from .swapping import are_answers, look_at_part
from .types.engine import Beginning, Belief, Engine, Errors, Heard, PartBelief, Sights
from .types.pack import Pack
from .types.session import Scope, Session

DRY = 1e-60  # products that add up to less are scaled


def prepare(pack: Pack) -> Engine:
    """What every other function takes as `engine`: the pack with its reading errors worked out."""
    return prepare_with(pack, usual_errors())


def prepare_with(pack: Pack, errors: Errors) -> Engine:
    """The same with other errors (keys as in usual_errors), for checks against other methods."""
    sure: list[list[list[float]]] = []
    unsure: list[list[list[float]]] = []
    twice: list[list[list[float]]] = []
    sights: list[Sights] = []
    strange = strangeness(pack)
    differs = differing(pack)
    other = otherwise(pack)
    for place in range(len(pack["features"])):
        feature = pack["features"][place]
        count = len(feature["states"])
        sure.append(channel(count, feature["mistaken"], errors["sure"]))
        unsure.append(channel(count, feature["mistaken"], errors["unsure"]))
        twice.append(channel(count, feature["mistaken"], errors["twice"]))
        sights.append(
            {
                "by_code": answers_to(sure[place], pack["cells"][place]["shares"]),
                "kin": [
                    answers_of_kin(sure[place], rates, other[place], pack["cells"][place]["shares"])
                    for rates in differs[place]
                ],
                "by_kind": answers_to(sure[place], pack["backgrounds"][place]),
                "strange": answers_to(sure[place], strange[place]),
            }
        )
    return {
        "pack": pack,
        "sure": sure,
        "unsure": unsure,
        "twice": twice,
        "sights": sights,
        "differs": differs,
        "otherwise": other,
        "same": sameness(pack, differs),
        "strange": strange,
        "open": openness(pack, errors["unrecorded"]),
        "drawn_all": errors["drawn_all"],
        "donors": donors(pack),
        "varying": varying(pack),
        "begun": [],
        "index": [],
        "shelf": [],
    }


def varying(pack: Pack) -> list[list[int]]:
    """For each feature, the variants whose rows are not all recorded alike."""
    variants = pack["rows"]["variant"]
    out: list[list[int]] = []
    for cells in pack["cells"]:
        codes = cells["codes"]
        first = filled(len(pack["variants"]), -1)
        listed = filled(len(first), 0)
        variants_apart: list[int] = []
        for i in range(len(codes)):
            v = variants[i]
            if first[v] < 0:
                first[v] = codes[i]
            elif first[v] != codes[i] and listed[v] == 0:
                listed[v] = 1
                variants_apart.append(v)
        out.append(variants_apart)
    return out


def answers_to(channels: list[list[float]], records: list[list[float]]) -> list[list[float]]:
    """P(a sure answer | record) for each record, a list of shares: [[chance of each answer]]."""
    return [[averaged(shares, row) for row in channels] for shares in records]


def answers_of_kin(
    channels: list[list[float]],
    differs: list[float],
    other: list[list[float]],
    records: list[list[float]],
) -> list[list[float]]:
    """P(a sure answer | a relative of what is recorded) for each record: [[chance of each]]."""
    shows = [shown(row, row, differs, other) for row in channels]
    return [[averaged(shares, row) for row in shows] for shares in records]


def in_scope(engine: Engine, scope: Scope) -> list[int]:
    """The rows that the person has limited the search to."""
    pack = engine["pack"]
    kind = -1
    if len(scope["kind"]) > 0:
        kind = place_of(pack["kinds"], scope["kind"])
    numbers = scope["items"]
    wanted: list[int] = []
    for item in pack["items"]:
        wanted.append(1 if len(numbers) == 0 or item["number"] in numbers else 0)
    kinds = pack["rows"]["kind"]
    variants = pack["rows"]["variant"]
    out: list[int] = []
    for i in range(len(kinds)):
        item_at = pack["variants"][variants[i]]["item"]
        if (kind < 0 or kinds[i] == kind) and wanted[item_at] == 1:
            out.append(i)
    return out


def beginning(engine: Engine, scope: Scope) -> Beginning:
    """What is known before the first answer. It is the same for every answer to come, so the engine
    keeps the last one; and in `parts`, what was made of the last answers on each part.
    """
    for kept in engine["begun"]:
        if is_scope(kept, scope):
            return kept
    pack = engine["pack"]
    rows = in_scope(engine, scope)
    out: Beginning = {
        "kind": scope["kind"],
        "items": scope["items"][:],
        "rows": rows,
        "kinds": [pack["rows"]["kind"][i] for i in rows],
        "variants": [pack["rows"]["variant"][i] for i in rows],
        "spans": [pack["rows"]["span"][i] for i in rows],
        "priors": [pack["rows"]["prior"][i] for i in rows],
        "chances": [pack["rows"]["prior"][i] for i in rows],
        "kin": [],
        "less": [],
        "strangers": filled(len(pack["kinds"]), 0.0),
        "parts": [],
    }
    times = NUMBERED if len(scope["items"]) > 0 else 1.0
    share_out(out, [times * share for share in engine["open"]], engine["same"])
    for p in range(len(pack["parts"])):
        out["parts"].append(look_at_part(engine, out, [], p))
    engine["begun"] = [out]
    return out


def is_scope(kept: Beginning, scope: Scope) -> bool:
    """Whether this beginning was made for this scope."""
    if kept["kind"] != scope["kind"] or len(kept["items"]) != len(scope["items"]):
        return False
    for n in range(len(scope["items"])):
        if kept["items"][n] != scope["items"][n]:
            return False
    return True


def said(engine: Engine, session: Session) -> list[Heard]:
    """The answers that say something, and the kind. Raises nothing: a session must have passed
    `mend` or `problem`.
    """
    pack = engine["pack"]
    out: list[Heard] = []
    for answer in answers_with_kind(engine, session):
        if answer["how"] != "cannot":
            place = place_of(pack["features"], answer["feature"])
            chances = heard(engine, place, answer)
            records = pack["cells"][place]["shares"]
            own = [in_words(engine, answer, p, ELSE_RECORDED) for p in chances]
            off = [in_words(engine, answer, p, ELSE_UNRECORDED) for p in chances]
            other = engine["otherwise"][place]
            kin: list[list[float]] = []
            for rates in engine["differs"][place]:
                shows = shown(own, off, rates, other)
                kin.append([averaged(each, shows) for each in records])
            usual = [averaged(each, chances) for each in pack["backgrounds"][place]]
            strange = [averaged(each, chances) for each in engine["strange"][place]]
            out.append(
                {
                    "answer": answer,
                    "place": place,
                    "part": pack["features"][place]["part"],
                    "like": [averaged(each, own) for each in records],
                    "kin": kin,
                    "any": [in_words(engine, answer, p, ELSE_REPLACED) for p in usual],
                    "beyond": [in_words(engine, answer, p, ELSE_UNRECORDED) for p in strange],
                }
            )
    return out


def believe(engine: Engine, session: Session) -> Belief:
    """The posterior after a session's answers."""
    pack = engine["pack"]
    start = beginning(engine, session["scope"])
    state: Belief = {
        "rows": start["rows"],
        "kinds": start["kinds"],
        "variants": start["variants"],
        "spans": start["spans"],
        "priors": start["priors"],
        "chances": start["chances"][:],
        "bare": [],
        "kin": [chances[:] for chances in start["kin"]],
        "less": start["less"],
        "strangers": start["strangers"][:],
        "unrecorded": [],
        "parts": [],
    }
    things = said(engine, session)
    for thing in things:
        if thing["part"] < 0:
            multiply_record(state, pack["cells"][thing["place"]]["codes"], thing)
    bare = state["chances"]
    if len([t for t in things if t["part"] >= 0]) > 0:
        state["chances"] = bare[:]
    for p in range(len(pack["parts"])):
        on_part = [t for t in things if t["part"] == p]
        if not are_answers(start["parts"][p]["answers"], on_part):
            start["parts"][p] = look_at_part(engine, start, on_part, p)
        part = start["parts"][p]
        if part["told"] > 0:
            multiply_classes(state, part)
        state["parts"].append(part)
    state["bare"] = bare
    take_out(state)
    scale(state, all_of(state))
    add_up(state)
    return state


def multiply_record(state: Belief, codes: list[int], thing: Heard) -> None:
    """Take one answer to what is on no part: by the row's cell, or by the background where that is
    not recorded.
    """
    chances = state["chances"]
    siblings = state["kin"][0]
    twins = state["kin"][1]
    cousins = state["kin"][2]
    rows = state["rows"]
    kinds = state["kinds"]
    like = thing["like"]
    of_sibling = thing["kin"][0]
    of_twin = thing["kin"][1]
    of_cousin = thing["kin"][2]
    whole = 0.0
    for j in range(len(rows)):
        code = codes[rows[j]]
        if code > 0:
            chance = chances[j] * like[code]
            sibling = siblings[j] * of_sibling[code]
            twin = twins[j] * of_twin[code]
            cousin = cousins[j] * of_cousin[code]
        else:
            usual = thing["any"][kinds[j]]
            chance = chances[j] * usual
            sibling = siblings[j] * usual
            twin = twins[j] * usual
            cousin = cousins[j] * usual
        chances[j] = chance
        siblings[j] = sibling
        twins[j] = twin
        cousins[j] = cousin
        whole = whole + chance + sibling + twin + cousin
    multiply_strangers(state, thing["beyond"], whole)


def multiply_classes(state: Belief, part: PartBelief) -> None:
    """Multiply each row's chance, and those of its relatives, by the factors of its class on a
    part, and the strangers' chances.
    """
    chances = state["chances"]
    siblings = state["kin"][0]
    twins = state["kin"][1]
    cousins = state["kin"][2]
    of = part["of"]
    factors = part["factors"]
    of_sibling = part["kin"][0]
    of_twin = part["kin"][1]
    of_cousin = part["kin"][2]
    whole = 0.0
    for j in range(len(of)):
        c = of[j]
        chance = chances[j] * factors[c]
        chances[j] = chance
        sibling = siblings[j] * of_sibling[c]
        siblings[j] = sibling
        twin = twins[j] * of_twin[c]
        twins[j] = twin
        cousin = cousins[j] * of_cousin[c]
        cousins[j] = cousin
        whole = whole + chance + sibling + twin + cousin
    multiply_strangers(state, part["beyond"], whole)


def multiply_strangers(state: Belief, beyond: list[float], whole: float) -> None:
    """Multiply the strangers' chances by these factors; those of the rows and their relatives,
    adding up to `whole` now, have had theirs. All are scaled where they would run dry.
    """
    strangers = state["strangers"]
    for k in range(len(strangers)):
        strangers[k] = strangers[k] * beyond[k]
        whole = whole + strangers[k]
    if whole < DRY:
        scale(state, whole)


def all_of(state: Belief) -> float:
    """What all chances add up to."""
    whole = total(state["chances"])
    for relatives in state["kin"]:
        whole = whole + total(relatives)
    return whole + total(state["strangers"])


def divide(chances: list[float], whole: float) -> None:
    """Divide all of these."""
    for j in range(len(chances)):
        chances[j] = chances[j] / whole


def scale(state: Belief, whole: float) -> None:
    """Divide all chances by what they add up to.

    Where nothing is left (no reading error and a contradiction) the piece is unrecorded.
    """
    strangers = state["strangers"]
    if whole > 0.0:
        divide(state["chances"], whole)
        divide(strangers, whole)
        for relatives in state["kin"]:
            divide(relatives, whole)
    else:
        for k in range(len(strangers)):
            strangers[k] = 1.0 / len(strangers)
