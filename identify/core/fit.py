"""Does it fit at all? A check of the leader that needs no alternative.

How usual would answers like these be, were the piece just what it is taken for? The surprise of an
answer is -log P(answer | the leader's likeliest issue), its part replaced or not; the statistic is
the sum over the answers, and the check is the chance that a piece of this very issue, looked at in
the same features, would be as surprising or more. The distribution of the sum is worked out in
steps of 1 / IN_A_NAT nats, exactly in these steps: answer by answer, each state of each feature.
Two features of one part are taken as independent, which they are but for the swap they share.
"""

from math import log

from .belief import said
from .checking import at_odds
from .donors import mixed
from .lists import filled
from .types.engine import Belief, Engine, Heard
from .types.session import Session
from .types.view import Fit

USUAL = 0.02  # a piece that is what it is taken for fails the check so often, at most
IN_A_NAT = 20.0
WORST = 500  # steps: what is more surprising counts as this much
HARDLY = 1e-9


def surprise(chance: float) -> int:
    """Of an answer with this chance, in steps."""
    return min(WORST, int(-log(max(chance, HARDLY)) * IN_A_NAT + 0.5))


def predicted(engine: Engine, state: Belief, thing: Heard, place_in: int) -> list[float]:
    """P(each answer) to the feature of an answer, of one of the rows (by its place in `state`)."""
    place = thing["place"]
    sight = engine["sights"][place]
    code = engine["pack"]["cells"][place]["codes"][state["rows"][place_in]]
    kind = state["kinds"][place_in]
    own = sight["by_code"][code] if code > 0 else sight["by_kind"][kind]
    part = thing["part"]
    if part < 0:
        return own
    swap = engine["pack"]["parts"][part]["swap"]
    out: list[float] = []
    for a in range(len(own)):
        spare = mixed(engine["donors"][part], [row[a] for row in sight["by_kind"]])[kind]
        out.append((1.0 - swap) * own[a] + swap * spare)
    return out


def likeliest(state: Belief, variant: int) -> int:
    """Where in `state` the likeliest row of a variant stands, -1 for none in scope."""
    best = -1
    for j in range(len(state["rows"])):
        if state["variants"][j] == variant and (
            best < 0 or state["chances"][j] > state["chances"][best]
        ):
            best = j
    return best


def tail(engine: Engine, session: Session, state: Belief, variant: int) -> float:
    """The chance of answers as surprising as these, or more, were it this variant."""
    place_in = likeliest(state, variant)
    if place_in < 0:
        return 0.0
    spread = filled(1, 1.0)
    seen = 0
    for thing in said(engine, session):
        if thing["answer"]["how"] in ["sure", "twice"]:
            chances = predicted(engine, state, thing, place_in)
            states = engine["pack"]["features"][thing["place"]]["states"]
            steps = [surprise(p) for p in chances]
            most = 0
            for a in range(len(steps)):
                most = max(most, steps[a])
                if states[a]["id"] == thing["answer"]["states"][0]:
                    seen = seen + steps[a]
            after = filled(len(spread) + most, 0.0)
            for n in range(len(spread)):
                for a in range(len(steps)):
                    after[n + steps[a]] = after[n + steps[a]] + spread[n] * chances[a]
            spread = after
    out = 0.0
    for n in range(seen, len(spread)):
        out = out + spread[n]
    return min(1.0, out)


def fit_of(engine: Engine, session: Session, state: Belief, variant: int) -> Fit:
    """Whether what was seen fits a variant: {chance, odd: [answers, by place, that do not], passed:
    that it does}.
    """
    chance = tail(engine, session, state, variant)
    odd = at_odds(engine, session, state, variant)
    return {"chance": chance, "odd": odd, "passed": chance >= USUAL and len(odd) == 0}
