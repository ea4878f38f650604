"""Parts that may not belong: the chance that each was replaced, and when each was made."""

from typing import Any

from .belief import believe, rows_like, said
from .dating import likely_years, year_chances
from .lists import total
from .session import with_answers


def suspects(
    engine: dict[str, Any], session: dict[str, Any], state: dict[str, Any]
) -> list[dict[str, Any]]:
    """[{part, swapped, features, first, last}] for each part with an answer, most suspect first.

    `swapped` is the chance that it was replaced, given that the piece is in the reference; `first`
    and `last` are the likely years of the part by itself, whatever it is fitted to.
    """
    pack = engine["pack"]
    whole = total(state["chances"])
    things = said(engine, session)
    out: list[dict[str, Any]] = []
    for p in range(len(pack["parts"])):
        replaced = state["swapped"][p]
        if len(replaced) > 0 and whole > 0.0:
            chance = 0.0
            for j in range(len(replaced)):
                chance = chance + state["chances"][j] * replaced[j]
            span = part_years(engine, state, [t for t in things if t["part"] == p])
            out.append(
                {
                    "part": p,
                    "swapped": chance / whole,
                    "features": answered_on(pack, session, p),
                    "first": span[0] if len(span) > 0 else 0,
                    "last": span[1] if len(span) > 0 else 0,
                }
            )
    return sorted(out, key=lambda entry: -entry["swapped"])


def answered_on(pack: dict[str, Any], session: dict[str, Any], part: int) -> list[int]:
    """The features on this part that were answered."""
    told = [answer["feature"] for answer in session["answers"] if answer["how"] != "cannot"]
    out: list[int] = []
    for f in range(len(pack["features"])):
        if pack["features"][f]["part"] == part and pack["features"][f]["id"] in told:
            out.append(f)
    return out


def part_years(
    engine: dict[str, Any], state: dict[str, Any], things: list[dict[str, Any]]
) -> list[int]:
    """[first, last] likely years of one part: of the issues in scope that are recorded with what
    was seen on it, by their priors alone.
    """
    pack = engine["pack"]
    weights = [pack["rows"]["prior"][i] for i in state["rows"]]
    for thing in things:
        like = rows_like(pack, state, thing)
        for j in range(len(weights)):
            weights[j] = weights[j] * like[j]
    return likely_years(year_chances(engine, state["rows"], weights))


def whole_piece(
    engine: dict[str, Any], session: dict[str, Any], state: dict[str, Any]
) -> dict[str, Any]:
    """Whether all of it can belong together: {original: chance that no part was replaced, given
    that it is in the reference, first, last: likely years by what is on no part}.
    """
    pack = engine["pack"]
    original = 0.0
    for j in range(len(state["chances"])):
        chance = state["chances"][j]
        for p in range(len(pack["parts"])):
            replaced = state["swapped"][p]
            chance = chance * (
                1.0 - (replaced[j] if len(replaced) > 0 else pack["parts"][p]["swap"])
            )
        original = original + chance
    whole = total(state["chances"])
    on_parts: list[str] = []
    for feature in pack["features"]:
        if feature["part"] >= 0:
            on_parts.append(feature["id"])
    bare = with_answers(session, [a for a in session["answers"] if a["feature"] not in on_parts])
    body = state  # with no answer on a part there is nothing to leave out
    if len(bare["answers"]) < len(session["answers"]):
        body = believe(engine, bare)
    span = likely_years(year_chances(engine, body["rows"], body["chances"]))
    return {
        "original": original / whole if whole > 0.0 else 0.0,
        "first": span[0] if len(span) > 0 else 0,
        "last": span[1] if len(span) > 0 else 0,
    }
