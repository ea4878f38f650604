"""What the answers say: the chance of every issue, of "not in the reference", of swapped parts.

    i        a row of the pack, one issue          f       a feature that was answered
    l[i,f]   P(answer | row i), by the row's recorded state
    bg[k,f]  P(answer | any piece of kind k), by the background
    r[p]     chance that part p was replaced
    d[p,k,e] chance that the replacement on a piece of kind k comes from one of kind e

    row  i   prior[i] * product over f on the piece of l[i,f]
                      * product over parts p of ((1 - r) * product l[i,f]
                                                 + r * sum over e of d[p,k,e] * product bg[e,f])
    unrecorded, of kind k: its share of the prior * product over all f of bg[k,f]

Products are kept in plain numbers and scaled to add up to 1 after every factor: they cannot run
dry, and adding and multiplying give the same last bit in Python and in JavaScript.
"""

from typing import Any

from .donors import donors, mixed, sharpened
from .lists import filled, place_of, total
from .reading import averaged, channel, heard, usual_errors


def prepare(pack: dict[str, Any]) -> dict[str, Any]:
    """What every other function takes as `engine`: the pack with its reading errors worked out."""
    return prepare_with(pack, usual_errors())


def prepare_with(pack: dict[str, Any], errors: dict[str, float]) -> dict[str, Any]:
    """The same with other errors (keys as in usual_errors), for checks against other methods."""
    sure: list[Any] = []
    unsure: list[Any] = []
    for feature in pack["features"]:
        count = len(feature["states"])
        sure.append(channel(count, feature["mistaken"], errors["sure"]))
        unsure.append(channel(count, feature["mistaken"], errors["unsure"]))
    return {
        "pack": pack,
        "sure": sure,
        "unsure": unsure,
        "unrecorded": errors["unrecorded"],
        "donors": donors(pack),
    }


def in_scope(engine: dict[str, Any], scope: dict[str, Any]) -> list[int]:
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


def said(engine: dict[str, Any], session: dict[str, Any]) -> list[dict[str, Any]]:
    """The answers that say something: [{place, part, like, any}].

    `like` is P(answer | recorded shares) by cell code, `any` the same by kind from the background.
    Raises nothing: a session must have passed `mend` or `problem`.
    """
    pack = engine["pack"]
    out: list[dict[str, Any]] = []
    for answer in session["answers"]:
        if answer["how"] != "cannot":
            place = place_of(pack["features"], answer["feature"])
            chances = heard(engine, place, answer)
            beyond = chances[len(chances) - 1]
            anyhow: list[float] = []
            for shares in pack["backgrounds"][place]:
                anyhow.append(averaged(shares, chances) if beyond < 0.0 else beyond)
            like: list[float] = []
            for shares in pack["cells"][place]["shares"]:
                like.append(averaged(shares, chances))
            part = pack["features"][place]["part"]
            out.append({"place": place, "part": part, "like": like, "any": anyhow})
    return out


def believe(engine: dict[str, Any], session: dict[str, Any]) -> dict[str, Any]:
    """The posterior after a session's answers.

    Returns {rows: [row], chances: [chance of each of those rows], unrecorded: [chance by kind],
    swapped: [by part: [] or, for each of the rows, the chance that the part was replaced if it is
    that row], donors: [by part and kind of piece: chance of each kind that its replacement comes
    from]}. Chances and unrecorded add up to 1.
    """
    pack = engine["pack"]
    rows = in_scope(engine, session["scope"])
    kinds = [pack["rows"]["kind"][i] for i in rows]
    state = {
        "rows": rows,
        "kinds": kinds,
        "chances": [pack["rows"]["prior"][i] for i in rows],
        "unrecorded": filled(len(pack["kinds"]), 0.0),
        "swapped": [],
        "donors": engine["donors"][:],
    }
    share_out(state, engine["unrecorded"])
    things = said(engine, session)
    for thing in things:
        if thing["part"] < 0:
            multiply(state, rows_like(pack, state, thing), thing["any"])
    for p in range(len(pack["parts"])):
        on_part = [t for t in things if t["part"] == p]
        state["swapped"].append(weigh_part(pack, state, on_part, p))
    return state


def share_out(state: dict[str, Any], unrecorded: float) -> None:
    """Set the prior: rows share 1 - unrecorded, and each kind's unrecorded part is in proportion.

    With no row in scope the piece is unrecorded for certain.
    """
    chances = state["chances"]
    kinds = state["kinds"]
    beyond = state["unrecorded"]
    whole = total(chances)
    if whole == 0.0:
        for k in range(len(beyond)):
            beyond[k] = 1.0 / len(beyond)
    for j in range(len(chances)):
        share = chances[j] / whole
        beyond[kinds[j]] = beyond[kinds[j]] + share * unrecorded
        chances[j] = share * (1.0 - unrecorded)


def rows_like(pack: dict[str, Any], state: dict[str, Any], thing: dict[str, Any]) -> list[float]:
    """l[i,f] for one answer: by the row's cell, or by the background where that is not recorded."""
    codes = pack["cells"][thing["place"]]["codes"]
    rows = state["rows"]
    kinds = state["kinds"]
    like = thing["like"]
    anyhow = thing["any"]
    out: list[float] = []
    for j in range(len(rows)):
        code = codes[rows[j]]
        out.append(like[code] if code > 0 else anyhow[kinds[j]])
    return out


def weigh_part(
    pack: dict[str, Any], state: dict[str, Any], things: list[dict[str, Any]], part: int
) -> list[float]:
    """Take the answers on one part into account; returns P(replaced | row), [] with no answer."""
    if len(things) == 0:
        return []
    own = filled(len(state["rows"]), 1.0)
    anyhow = filled(len(pack["kinds"]), 1.0)
    for thing in things:
        like = rows_like(pack, state, thing)
        for j in range(len(own)):
            own[j] = own[j] * like[j]
        for k in range(len(anyhow)):
            anyhow[k] = anyhow[k] * thing["any"][k]
    replaced: list[float] = []
    kinds = state["kinds"]
    swap = pack["parts"][part]["swap"]
    spare = mixed(state["donors"][part], anyhow)
    state["donors"][part] = sharpened(state["donors"][part], anyhow)
    for j in range(len(own)):
        other = swap * spare[kinds[j]]
        own[j] = (1.0 - swap) * own[j] + other
        replaced.append(other / own[j] if own[j] > 0.0 else 0.0)
    multiply(state, own, anyhow)
    return replaced


def multiply(state: dict[str, Any], rows: list[float], beyond: list[float]) -> None:
    """Multiply row chances and unrecorded chances by these factors, and scale them to add up to 1.

    Where nothing is left (no reading error and a contradiction) the piece is unrecorded.
    """
    chances = state["chances"]
    unrecorded = state["unrecorded"]
    whole = 0.0
    for j in range(len(chances)):
        chances[j] = chances[j] * rows[j]
        whole = whole + chances[j]
    for k in range(len(unrecorded)):
        unrecorded[k] = unrecorded[k] * beyond[k]
        whole = whole + unrecorded[k]
    if whole > 0.0:
        for j in range(len(chances)):
            chances[j] = chances[j] / whole
        for k in range(len(unrecorded)):
            unrecorded[k] = unrecorded[k] / whole
    else:
        for k in range(len(unrecorded)):
            unrecorded[k] = 1.0 / len(unrecorded)
