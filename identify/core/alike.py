"""Which variants cannot be told apart by what is recorded, what would tell them, what each feature
is worth.

Two variants are alike where the engine, sure that the piece is one of the two, has nothing visible
left to ask. Taken with an engine without misreading and swapped parts: what it cannot tell, nothing
can.
"""

from .asking import questions
from .belief import believe, prepare_with
from .focus import by_variant, focus
from .kin import RELATIVES
from .lists import empty_lists, filled, total
from .session import new_session
from .swapping import look_at_part
from .types.engine import Belief, Engine, Errors
from .types.pack import Pack, Part
from .types.session import Session
from .types.trying import Alike, ToPart
from .worth import worth

PLAIN = 0.5  # a feature on which two variants differ in so much of their shares tells them apart


def without_errors(pack: Pack) -> Engine:
    """The engine as if nothing were misread and no part ever replaced."""
    errors: Errors = {
        "sure": 0.0, "twice": 0.0, "unsure": 0.0, "unrecorded": 0.0, "drawn_all": 1.0,
    }  # fmt: skip
    parts: list[Part] = []
    for part in pack["parts"]:
        parts.append(
            {"id": part["id"], "name": part["name"], "swap": 0.0, "replaced": part["replaced"]}
        )
    bare: Pack = {
        "format": pack["format"], "id": pack["id"], "version": pack["version"],
        "range": pack["range"], "kinds": pack["kinds"], "parts": parts, "cautions": [],
        "sources": pack["sources"], "features": pack["features"], "items": pack["items"],
        "variants": pack["variants"], "changes": pack["changes"], "rows": pack["rows"],
        "spans": pack["spans"], "cells": pack["cells"], "backgrounds": pack["backgrounds"],
        "drawings": {},
    }  # fmt: skip
    return prepare_with(bare, errors)


def rows_of_variants(pack: Pack) -> list[list[int]]:
    """The rows of each variant."""
    out = empty_lists(len(pack["variants"]))
    for i in range(len(pack["rows"]["variant"])):
        out[pack["rows"]["variant"][i]].append(i)
    return out


def looks_of(pack: Pack, rows: list[int], place: int) -> list[float]:
    """The share of each state of a feature over the rows of one variant."""
    cells = pack["cells"][place]
    prior = pack["rows"]["prior"]
    out = filled(len(pack["features"][place]["states"]), 0.0)
    whole = total([prior[row] for row in rows])
    for i in rows:
        shares = cells["shares"][cells["codes"][i]]
        if len(shares) == 0:
            shares = pack["backgrounds"][place][pack["rows"]["kind"][i]]
        for s in range(len(shares)):
            out[s] = out[s] + shares[s] * prior[i] / whole
    return out


def one_or_other(engine: Engine, first: list[int], second: list[int]) -> Belief:
    """The posterior in which the piece is one of two variants, as likely as each other."""
    pack = engine["pack"]
    rows: list[int] = []
    chances: list[float] = []
    for part in [first, second]:
        whole = total([pack["rows"]["prior"][row] for row in part])
        for i in part:
            rows.append(i)
            chances.append(pack["rows"]["prior"][i] / whole / 2.0)
    state: Belief = {
        "rows": rows,
        "kinds": [pack["rows"]["kind"][row] for row in rows],
        "variants": [pack["rows"]["variant"][row] for row in rows],
        "spans": [pack["rows"]["span"][row] for row in rows],
        "priors": [pack["rows"]["prior"][row] for row in rows],
        "chances": chances,
        "bare": chances,
        "kin": [filled(len(rows), 0.0) for _ in RELATIVES],
        "less": [filled(len(rows), 0.0) for _ in RELATIVES],
        "strangers": filled(len(pack["kinds"]), 0.0),
        "unrecorded": filled(len(pack["kinds"]), 0.0),
        "parts": [],
    }
    for place in range(len(pack["parts"])):
        state["parts"].append(look_at_part(engine, state, [], place))
    return state


def to_part(engine: Engine) -> ToPart:
    """What `alike_with` goes by: `engine` without errors and swaps."""
    pack = engine["pack"]
    visible: list[int] = []
    for f in range(len(pack["features"])):
        if pack["features"][f]["needs"] == "nothing":
            visible.append(f)
    rows = rows_of_variants(pack)
    met: list[int] = []
    priors: list[float] = []
    looks: list[list[list[float]]] = []
    for v in range(len(rows)):
        prior = total([pack["rows"]["prior"][row] for row in rows[v]])
        priors.append(prior)
        if prior > 0.0:
            met.append(v)
            looks.append([looks_of(pack, rows[v], place) for place in visible])
        else:
            looks.append([])
    return {
        "engine": engine, "session": new_session(engine), "rows": rows, "priors": priors,
        "met": met, "looks": looks,
    }  # fmt: skip


def plainly_apart(first: list[list[float]], second: list[list[float]]) -> bool:
    """Whether two variants differ in so much of what can be seen that one look tells them."""
    for f in range(len(first)):
        away = 0.0
        for s in range(len(first[f])):
            away = away + abs(first[f][s] - second[f][s])
        if away / 2.0 >= PLAIN:
            return True
    return False


def alike_with(apart: ToPart, place: int) -> list[Alike]:
    """The variants that cannot be told from the one at this place of `met`, of those after it."""
    engine = apart["engine"]
    met = apart["met"]
    first = met[place]
    out: list[Alike] = []
    for n in range(place + 1, len(met)):
        second = met[n]
        if not plainly_apart(apart["looks"][first], apart["looks"][second]):
            state = one_or_other(engine, apart["rows"][first], apart["rows"][second])
            asked = questions(engine, apart["session"], state, by_variant(state))
            if len(asked["open"]) == 0:
                out.append(
                    {
                        "one": first, "other": second,
                        "would": [entry["feature"] for entry in asked["shut"]],
                        "bits": [entry["bits"] for entry in asked["shut"]],
                        "met": min(apart["priors"][first], apart["priors"][second]),
                    }
                )  # fmt: skip
    return out


def within(session: Session, kind: str) -> Session:
    """The session over one kind of piece; "" all of them."""
    return {
        "pack": session["pack"], "version": session["version"],
        "scope": {"kind": kind, "items": []}, "able": [], "missing": [],
        "answers": session["answers"],
    }  # fmt: skip


def worths(engine: Engine) -> list[float]:
    """For each feature, the bits it tells about the variant as a first question, of the kind of
    piece (or of all of them) where it tells most.
    """
    pack = engine["pack"]
    most = filled(len(pack["features"]), 0.0)
    kinds = [""]
    for kind in pack["kinds"]:
        kinds.append(kind["id"])
    for name in kinds:
        state = believe(engine, within(new_session(engine), name))
        focused = focus(state, by_variant(state))
        for place in range(len(most)):
            most[place] = max(most[place], worth(engine, state, focused, place)["bits"])
    return most
