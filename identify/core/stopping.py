"""When to stop, and what to ask about until then: the verdict, the variant, what would prove it
wrong, the years.
"""

from .asking import questions
from .certainty import VERY
from .checking import ENOUGH, check, is_unchecked
from .focus import by_variant
from .lists import largest, total
from .types.engine import Belief, Engine
from .types.session import Session
from .types.view import Aim, Stop

TOGETHER = 0.3  # bits: looks that are worth less, all together, are not asked (by measurement)


def standing(chances: list[float], unrecorded: float, open_questions: int) -> Stop:
    """Whether to stop where no variant holds ENOUGH: "", "unrecorded", "nothing", or "sure" of one
    that is very likely, and alone among what is recorded, where there is nothing left to ask.
    """
    best = chances[largest(chances)]
    if unrecorded >= ENOUGH:
        return "unrecorded"
    if open_questions > 0:
        return ""
    if unrecorded > best:
        return "unrecorded"
    return "sure" if best >= VERY and best >= ENOUGH * total(chances) else "nothing"


def aimed(
    engine: Engine,
    session: Session,
    state: Belief,
    chances: list[float],
    kinds: list[int],
) -> Aim:
    """What to ask about, the questions, and whether to stop.

    About the years once a variant is sure, else about the variant; but first, where `kinds` is
    given (what each variant would mean, [] when that is settled), about what it means.
    """
    unrecorded = total(state["unrecorded"])
    outcomes = by_variant(state)
    sure = chances[largest(chances)] >= ENOUGH
    if not sure and len(kinds) > 0 and unrecorded < ENOUGH:
        asked = questions(engine, session, state, [kinds[v] for v in outcomes])
        if len(asked["open"]) > 0:
            return {"about": "verdict", "asked": asked, "stop": ""}
    asked = questions(engine, session, state, outcomes)
    if is_told(session) and total([entry["bits"] for entry in asked["open"]]) < TOGETHER:
        asked["open"] = []
    stop: Stop = "sure" if sure else standing(chances, unrecorded, len(asked["open"]))
    if stop != "" and not is_told(session) and len(state["rows"]) > 0:
        return {"about": "variant", "asked": asked, "stop": "unseen"}
    if stop != "" and not is_unchecked(session):
        checks = check(engine, session, state, chances)
        if len(checks["asked"]["open"]) > 0:
            return checks
    if stop == "sure":
        asked = questions(engine, session, state, state["rows"])
        return {"about": "years", "asked": asked, "stop": "sure"}
    return {"about": "variant", "asked": asked, "stop": stop}


def is_told(session: Session) -> bool:
    """Whether any answer says something."""
    return len([a for a in session["answers"] if a["how"] != "cannot"]) > 0
