"""When what was seen was made: the years of every answer's states, whatever the piece is.

They are taken over the issues of every kind and item that the piece may well be, so that "this
coupling was fitted from 1958" is said of the coupling, and not of the one item it sits on.
"""

from .asking import place_of_feature
from .assess import item_chances
from .belief import believe
from .lists import filled, total
from .reasons import variant_chances
from .types.claims import Counting, MayBe, SeenYears
from .types.engine import Belief, Engine
from .types.pack import Feature, Pack
from .types.session import Answer, Session

IN_FULL = 0.99  # shares are rounded
MAY_BE = 0.05  # kinds and items with this much of the recorded chance are reckoned with


def likely_kinds(engine: Engine, state: Belief) -> list[float]:
    """1 for each kind that the piece may be, else 0; all of them where nothing stands out."""
    held = filled(len(engine["pack"]["kinds"]), 0.0)
    whole = total(state["chances"])
    for j in range(len(state["chances"])):
        held[state["kinds"][j]] = held[state["kinds"][j]] + state["chances"][j]
    return [1.0 if p >= MAY_BE * whole else 0.0 for p in held]


def likely_items(engine: Engine, state: Belief) -> list[float]:
    """1 for each item that the piece may be, else 0."""
    whole = total(state["chances"])
    held = item_chances(engine, variant_chances(engine, state))
    return [1.0 if whole > 0.0 and p >= MAY_BE * whole else 0.0 for p in held]


def named_items(pack: Pack, place: int) -> list[float]:
    """1 for each item with running changes of its own for this feature, else 0."""
    out = filled(len(pack["items"]), 0.0)
    for change in pack["changes"]:
        if change["feature"] == place:
            for item in change["items"]:
                out[item] = 1.0
    return out


def may_be(engine: Engine, state: Belief) -> MayBe:
    """The kinds and items that the piece may well be."""
    return {"kinds": likely_kinds(engine, state), "items": likely_items(engine, state)}


def rows_that_count(engine: Engine, likely: MayBe, place: int) -> Counting:
    """The issues, and the running changes, that say when a state of this feature was made on a
    piece such as this. An item with changes of its own counts only where the piece may be that
    item; the others only where it may be one of them.
    """
    pack = engine["pack"]
    kinds = likely["kinds"]
    items = likely["items"]
    named = named_items(pack, place)
    common = 0.0
    for i in range(len(items)):
        common = max(common, items[i] * (1.0 - named[i]))
    if total(items) == 0.0:
        common = 1.0
    rows: list[int] = []
    for i in range(len(pack["rows"]["kind"])):
        item = pack["variants"][pack["rows"]["variant"][i]]["item"]
        counts = items[item] if named[item] > 0.0 else common
        if counts > 0.0 and kinds[pack["rows"]["kind"][i]] > 0.0:
            rows.append(i)
    changes: list[int] = []
    for n in range(len(pack["changes"])):
        change = pack["changes"][n]
        held = 0.0
        for item in change["items"]:
            held = max(held, items[item])
        if len(change["items"]) == 0:
            for kind in change["kinds"]:
                held = max(held, common * kinds[kind])
        if change["feature"] == place and held > 0.0:
            changes.append(n)
    return {"rows": rows, "changes": changes}


def in_full_use(feature: Feature, share: list[float], wanted: list[float]) -> bool:
    """Whether one of the wanted states was in use where the states have these shares. A date mark
    is also met beyond the soft ends of its years, in a smaller share: that is no full use.
    """
    if "seen" not in feature:
        return True
    carried = 0.0
    most = 0.0
    held = 0.0
    for s in range(len(share)):
        if feature["states"][s]["id"] != "none":
            carried = carried + share[s]
            most = max(most, share[s])
            held = max(held, share[s] * wanted[s])
    if held == 0.0:
        return True
    return held * carried >= IN_FULL * most * feature["seen"]


def state_years(engine: Engine, likely: MayBe, answer: Answer, n: int) -> SeenYears:
    """The earliest and latest year in which any of an answer's states was made on what the piece
    may be (from may_be()), the variants that are first and last with it, and who says so; `n` is
    the answer's place in the session.
    """
    pack = engine["pack"]
    place = place_of_feature(engine, answer["feature"])
    feature = pack["features"][place]
    seen = filled(len(feature["states"]), 0.0)
    for s in range(len(seen)):
        if feature["states"][s]["id"] in answer["states"]:
            seen[s] = 1.0
    counted = rows_that_count(engine, likely, place)
    earliest = 0
    latest = 0
    first = 0
    last = 0
    ends: list[int] = [-1, -1]
    for i in counted["rows"]:
        share = pack["cells"][place]["shares"][pack["cells"][place]["codes"][i]]
        held = 0.0
        for s in range(len(share)):
            held = held + share[s] * seen[s]
        if held > 0.0:
            span = pack["spans"][pack["rows"]["span"][i]]
            until = span["first"] + len(span["weights"]) - 1
            first = span["first"] if first == 0 else min(first, span["first"])
            last = max(last, until)
            if in_full_use(feature, share, seen):
                if earliest == 0 or span["first"] < earliest:
                    earliest = span["first"]
                    ends[0] = pack["rows"]["variant"][i]
                if until > latest:
                    latest = until
                    ends[1] = pack["rows"]["variant"][i]
    if earliest == 0:
        earliest = first
        latest = last
    return {
        "feature": place,
        "answer": n,
        "earliest": earliest,
        "latest": latest,
        "first": first,
        "last": last,
        "variants": [v for v in ends if v >= 0],
        "changes": counted["changes"],
    }


def seen_years(engine: Engine, session: Session) -> list[SeenYears]:
    """The years of each answer that names a state, in the order of the answers."""
    likely = may_be(engine, believe(engine, session))
    out: list[SeenYears] = []
    for n in range(len(session["answers"])):
        answer = session["answers"][n]
        if len(answer["states"]) > 0:
            out.append(state_years(engine, likely, answer, n))
    return out
