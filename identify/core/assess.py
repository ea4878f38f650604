"""Everything that the screen shows after an answer, in one call."""

from .asking import reason
from .belief import believe
from .certainty import how_sure
from .checking import ENOUGH, check, is_unchecked
from .fit import fit_of
from .focus import by_variant, focus
from .lists import best_from, empty_lists, filled, largest, total
from .parts import suspects, whole_piece
from .reasons import variant_chances
from .stopping import aimed
from .types.engine import Belief, Engine
from .types.questions import Questions
from .types.session import Session
from .types.view import About, Aim, Candidate, Fit, Question, View, Worthwhile, WouldTell
from .year_chances import likely_years, year_chances, years

SHOWN = 0.0005  # candidates with less are not listed
MOST = 40  # nor are more than this


def ranked(chances: list[float]) -> list[int]:
    """The places of chances, best first, without the faint ones."""
    return best_from(chances, SHOWN)[0:MOST]


def item_chances(engine: Engine, chances: list[float]) -> list[float]:
    """The chance of every item, from that of its variants."""
    variants = engine["pack"]["variants"]
    out = filled(len(engine["pack"]["items"]), 0.0)
    for v in range(len(variants)):
        out[variants[v]["item"]] = out[variants[v]["item"]] + chances[v]
    return out


def candidates(chances: list[float]) -> list[int]:
    """The variants that still count: with at least a hundredth of the leader's chance."""
    best = chances[largest(chances)]
    return [v for v in range(len(chances)) if chances[v] > 0.0 and chances[v] >= best / 100.0]


def dated(engine: Engine, state: Belief, chances: list[float]) -> list[Candidate]:
    """The likeliest variants with their own likely years, given the answers."""
    likely = ranked(chances)
    listed = filled(len(engine["pack"]["variants"]), -1)
    for n in range(len(likely)):
        listed[likely[n]] = n
    spans = empty_lists(len(likely))
    weights = empty_lists(len(likely))
    outcomes = by_variant(state)
    for j in range(len(outcomes)):
        n = listed[outcomes[j]]
        if n >= 0:
            spans[n].append(state["spans"][j])
            weights[n].append(state["chances"][j])
    out: list[Candidate] = []
    for n in range(len(likely)):
        span = likely_years(year_chances(engine, spans[n], weights[n]))
        out.append(
            {
                "variant": likely[n],
                "chance": chances[likely[n]],
                "first": span[0] if len(span) > 0 else 0,
                "last": span[1] if len(span) > 0 else 0,
            }
        )
    return out


def holding(chances: list[float], share: float) -> list[int]:
    """The fewest places that together hold this share of the chances, best first.

    Places that all have less than an even part of what may be left over are never needed.
    """
    out: list[int] = []
    held = 0.0
    whole = total(chances)
    for place in best_from(chances, 0.5 * (1.0 - share) * whole / len(chances)):
        if held < share * whole:
            out.append(place)
            held = held + chances[place]
    return out


def question_card(engine: Engine, state: Belief, asked: Questions, about: About) -> Question | None:
    """The best open question with its reason, or None.

    A question about the verdict too says how many variants each answer leaves.
    """
    if len(asked["open"]) == 0:
        return None
    best = asked["open"][0]
    focused = asked["focus"]
    if about == "verdict":
        focused = focus(state, by_variant(state))
    why = reason(engine, state, focused, best["feature"])
    return {
        "feature": best["feature"],
        "bits": best["bits"],
        "about": about,
        "expected": why["expected"],
        "groups": why["groups"],
    }


def assess(engine: Engine, session: Session) -> View:
    """The view of a session: candidates, years, suspect parts, next question, whether to stop.

    The next question is about the variant; once that is settled, about the years.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    aim = aimed(engine, session, state, chances, [])
    return view_of(engine, session, state, chances, aim)


def view_of(
    engine: Engine,
    session: Session,
    state: Belief,
    chances: list[float],
    aim: Aim,
) -> View:
    """What the screen shows of a state of belief, with the questions as they were aimed."""
    asked = aim["asked"]
    best = largest(chances)
    fit: Fit | None = None
    if best >= 0 and chances[best] > 0.0:
        fit = fit_of(engine, session, state, best)
    unseen: list[int] = []
    if aim["stop"] != "" and is_unchecked(session):
        for entry in check(engine, session, state, chances)["asked"]["open"]:
            unseen.append(entry["feature"])
    passed = False
    if aim["stop"] != "" and len(unseen) == 0 and fit is not None:
        passed = fit["passed"]
    items = item_chances(engine, chances)
    others: list[Worthwhile] = []
    for entry in asked["open"][1:7]:
        others.append({"feature": entry["feature"], "bits": entry["bits"]})
    would: list[WouldTell] = []
    for entry in asked["shut"]:
        needs = engine["pack"]["features"][entry["feature"]]["needs"]
        would.append({"feature": entry["feature"], "bits": entry["bits"], "needs": needs})
    return {
        "unrecorded": total(state["unrecorded"]),
        "variants": dated(engine, state, chances),
        "items": [{"item": i, "chance": items[i]} for i in ranked(items)],
        "possible": len(candidates(chances)),
        "years": years(engine, state),
        "parts": suspects(engine, session, state),
        "whole": whole_piece(engine, state),
        "question": question_card(engine, state, asked, aim["about"]),
        "others": others,
        "stop": aim["stop"],
        "alike": holding(chances, ENOUGH) if aim["stop"] == "nothing" else [],
        "would_tell": would,
        "how_sure": how_sure(chances[best], passed),
        "fit": fit,
        "unseen": unseen,
    }
