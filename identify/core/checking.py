"""Before anything is called sure: what would prove it wrong, and what should be looked at again."""

from .asking import GRID, cost_of, questions_worth
from .belief import said
from .certainty import VERY
from .focus import by_variant, focus
from .lists import filled, largest, total
from .types.engine import Belief, Engine
from .types.questions import Questions, Scored
from .types.session import Answer, Session
from .types.view import Aim

ENOUGH = 0.95  # one outcome holds this much: stop
PROOF = 0.05  # bits, with what is in no range counted for more (WARY in focus.py)
DOUBT = 0.005  # with less left for what is in no range there is nothing to check
AT_ODDS = 0.15  # an answer less likely than this of the leader, as it is recorded, does not fit


def expected_of(engine: Engine, session: Session, state: Belief, variant: int) -> list[float]:
    """How likely each answer is of a variant, as recorded and with its own parts: of the issues of
    it that the piece may be. 1 for what says nothing or where nothing is recorded.
    """
    out = filled(len(session["answers"]), 1.0)
    for thing in said(engine, session):
        codes = engine["pack"]["cells"][thing["place"]]["codes"]
        whole = 0.0
        held = 0.0
        for j in range(len(state["rows"])):
            if state["variants"][j] == variant:
                code = codes[state["rows"][j]]
                whole = whole + state["chances"][j]
                held = held + state["chances"][j] * (thing["like"][code] if code > 0 else 1.0)
        for n in range(len(out)):
            if session["answers"][n]["feature"] == thing["answer"]["feature"] and whole > 0.0:
                out[n] = held / whole
    return out


def at_odds(engine: Engine, session: Session, state: Belief, variant: int) -> list[int]:
    """The answers (their places) that do not fit a variant, worst first."""
    expected = expected_of(engine, session, state, variant)
    odd = [n for n in range(len(expected)) if expected[n] < AT_ODDS]
    return sorted(odd, key=lambda n: expected[n])


def look_again(engine: Engine, session: Session, state: Belief, chances: list[float]) -> Questions:
    """What to look at once more: the sure answers that do not fit the leader, worst first; not what
    was already looked at again and seen otherwise.
    """
    features = engine["pack"]["features"]
    out: list[Scored] = []
    if chances[largest(chances)] > 0.0:
        for n in at_odds(engine, session, state, largest(chances)):
            answer = session["answers"][n]
            if answer["how"] == "sure" and not is_changed(answer):
                for f in range(len(features)):
                    if features[f]["id"] == answer["feature"]:
                        score = int(GRID / cost_of(features[f]))
                        out.append({"feature": f, "bits": 0.0, "score": score})
    return {"open": out, "shut": [], "focus": focus(state, by_variant(state))}


def is_changed(answer: Answer) -> bool:
    """Whether a sure look before it said something else."""
    return answer.get("changed", False)


def is_unchecked(session: Session) -> bool:
    """Whether the person has skipped the check."""
    return session.get("unchecked", False)


def check(engine: Engine, session: Session, state: Belief, chances: list[float]) -> Aim:
    """What to look at before anything is said to be sure: what does not fit the leader, once more;
    then, where one variant is at least very likely, what would tell it from what is in no range.
    """
    again = look_again(engine, session, state, chances)
    if len(again["open"]) > 0:
        return {"about": "again", "asked": again, "stop": ""}
    unrecorded = total(state["unrecorded"])
    if chances[largest(chances)] < VERY or unrecorded < DOUBT:
        return {"about": "check", "asked": again, "stop": ""}
    asked = questions_worth(engine, session, state, by_variant(state), PROOF)
    return {"about": "check", "asked": asked, "stop": ""}
