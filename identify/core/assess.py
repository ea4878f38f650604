"""Everything that the screen shows after an answer, in one call."""

from typing import Any

from .asking import by_variant, questions, reason
from .belief import believe
from .dating import likely_years, year_chances, years
from .lists import best_first, filled, largest, total
from .parts import suspects, whole_piece
from .reasons import variant_chances

ENOUGH = 0.95  # one outcome holds this much: stop
SHOWN = 0.0005  # candidates with less are not listed
MOST = 40  # nor are more than this


def ranked(chances: list[float], name: str) -> list[dict[str, Any]]:
    """[{<name>: place, chance}], best first, without the faint ones."""
    out: list[dict[str, Any]] = []
    for place in best_first(chances):
        if chances[place] >= SHOWN and len(out) < MOST:
            entry = {"chance": chances[place]}
            entry[name] = place
            out.append(entry)
    return out


def item_chances(engine: dict[str, Any], chances: list[float]) -> list[float]:
    """The chance of every item, from that of its variants."""
    variants = engine["pack"]["variants"]
    out = filled(len(engine["pack"]["items"]), 0.0)
    for v in range(len(variants)):
        out[variants[v]["item"]] = out[variants[v]["item"]] + chances[v]
    return out


def dated(
    engine: dict[str, Any], state: dict[str, Any], found: list[dict[str, Any]]
) -> list[dict[str, Any]]:
    """Candidates with their own likely years, given the answers."""
    outcomes = by_variant(engine, state)
    for entry in found:
        rows: list[int] = []
        chances: list[float] = []
        for j in range(len(outcomes)):
            if outcomes[j] == entry["variant"]:
                rows.append(state["rows"][j])
                chances.append(state["chances"][j])
        span = likely_years(year_chances(engine, rows, chances))
        entry["first"] = span[0] if len(span) > 0 else 0
        entry["last"] = span[1] if len(span) > 0 else 0
    return found


def holding(chances: list[float], share: float) -> list[int]:
    """The fewest places that together hold this share of the chances, best first."""
    out: list[int] = []
    held = 0.0
    whole = total(chances)
    for place in best_first(chances):
        if held < share * whole:
            out.append(place)
            held = held + chances[place]
    return out


def question_card(
    engine: dict[str, Any], state: dict[str, Any], asked: dict[str, Any], about: str
) -> Any:
    """The best open question with its reason, or None."""
    if len(asked["open"]) == 0:
        return None
    best = asked["open"][0]
    why = reason(engine, state, asked["focus"], best["feature"])
    return {
        "feature": best["feature"],
        "bits": best["bits"],
        "about": about,
        "expected": why["expected"],
        "groups": why["groups"],
    }


def standing(chances: list[float], unrecorded: float, open_questions: int) -> str:
    """Whether to stop: "", "sure", "unrecorded" or "nothing"."""
    leader = largest(chances)
    if chances[leader] >= ENOUGH:
        return "sure"
    if unrecorded >= ENOUGH:
        return "unrecorded"
    if open_questions > 0:
        return ""
    return "unrecorded" if unrecorded > chances[leader] else "nothing"


def assess(engine: dict[str, Any], session: dict[str, Any]) -> dict[str, Any]:
    """The view of a session: candidates, years, suspect parts, next question, whether to stop.

    The next question is about the variant; once that is settled, about the years.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    unrecorded = total(state["unrecorded"])
    asked = questions(engine, session, state, by_variant(engine, state))
    stop = standing(chances, unrecorded, len(asked["open"]))
    about = "variant"
    told = asked
    if stop == "sure":
        about = "years"
        told = questions(engine, session, state, state["rows"])
    best = chances[largest(chances)]
    others: list[dict[str, Any]] = []
    for entry in told["open"][1:7]:
        others.append({"feature": entry["feature"], "bits": entry["bits"]})
    would: list[dict[str, Any]] = []
    for entry in told["shut"]:
        needs = engine["pack"]["features"][entry["feature"]]["needs"]
        would.append({"feature": entry["feature"], "bits": entry["bits"], "needs": needs})
    return {
        "unrecorded": unrecorded,
        "variants": dated(engine, state, ranked(chances, "variant")),
        "items": ranked(item_chances(engine, chances), "item"),
        "possible": len([p for p in chances if p > 0.0 and p >= best / 100.0]),
        "years": years(engine, state),
        "parts": suspects(engine, session, state),
        "whole": whole_piece(engine, session, state),
        "question": question_card(engine, state, told, about),
        "others": others,
        "stop": stop,
        "alike": holding(chances, ENOUGH) if stop == "nothing" else [],
        "would_tell": would,
    }
