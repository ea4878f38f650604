"""Does it look like this? What to compare on the portrait of the leader, before it is called sure:
where it would differ from its rivals, and from its relatives that nobody has recorded.
"""

from .asking import questions_worth
from .belief import believe
from .checking import PROOF, is_unchecked, look_again
from .focus import by_variant
from .lists import filled, largest
from .reasons import variant_chances
from .session import answered
from .stopping import aimed
from .types.engine import Belief, Engine
from .types.portraits import Ring, Ringed, Sitting
from .types.questions import Scored
from .types.session import Answer, Session

LEADING = 0.6  # from here on the leader is shown; 0.5 saves a second more, but half would not be it
CLEAR = 0.9  # a state of the leader is drawn as its own where it has this much
FEW = 2  # a single look is an ordinary question
MANY = 3  # more rings than this are not looked at


def issues_of(state: Belief, variant: int) -> list[int]:
    """Where in what is believed the issues of a variant stand."""
    return [j for j in range(len(state["rows"])) if state["variants"][j] == variant]


def state_of(engine: Engine, state: Belief, issues: list[int], feature: int) -> int:
    """The one state that these issues of a variant are recorded with, by what is believed of each;
    -1 where it could be several, or nothing is recorded.
    """
    cells = engine["pack"]["cells"][feature]
    held = filled(len(engine["pack"]["features"][feature]["states"]), 0.0)
    whole = 0.0
    for j in issues:
        whole = whole + state["chances"][j]
        shares = cells["shares"][cells["codes"][state["rows"][j]]]
        for s in range(len(shares)):
            held[s] = held[s] + shares[s] * state["chances"][j]
    best = largest(held)
    return best if whole > 0.0 and held[best] >= CLEAR * whole else -1


def drawn(
    engine: Engine, shown: Sitting, state: Belief, leader: int, asked: list[Scored]
) -> list[Ring]:
    """Rings for what the leader's portrait shows of these features, one a layer, the first MANY; []
    for fewer than FEW.
    """
    out: list[Ring] = []
    layers: list[str] = []
    issues = issues_of(state, leader)
    for entry in asked:
        feature = entry["feature"]
        layer = shown["layers"][feature]
        if layer != "" and layer not in layers and len(out) < MANY:
            seen = state_of(engine, state, issues, feature)
            if seen >= 0 and shown["looks"][feature][seen] != "":
                layers.append(layer)
                out.append({"feature": feature, "state": seen, "layer": layer})
    nothing: list[Ring] = []
    return out if len(out) >= FEW else nothing


def settling(engine: Engine, session: Session, compared: list[Ring]) -> list[Ring]:
    """As few of these rings, FEW at least, as leave nothing to ask if all of them fit; all of them
    where no fewer do.
    """
    told = session
    for n in range(len(compared) - 1):
        feature = engine["pack"]["features"][compared[n]["feature"]]
        seen: Answer = {
            "feature": feature["id"],
            "how": "sure",
            "states": [feature["states"][compared[n]["state"]]["id"]],
        }
        told = answered(told, seen)
        if n + 1 >= FEW:
            state = believe(engine, told)
            chances = variant_chances(engine, state)
            if aimed(engine, told, state, chances, [])["stop"] != "":
                return compared[0 : n + 1]
    return compared


def rings(engine: Engine, shown: Sitting, session: Session) -> Ringed:
    """What to compare on the leader's portrait, what tells most first; no rings where the leader
    does not lead enough, or fewer than two looks would still tell something; no more of them than
    settle it. `shown` is from `sitting`. A ring that fits is an answer: that state, seen.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    leader = largest(chances)
    nothing: list[Ring] = []
    if leader < 0 or chances[leader] < LEADING or is_unchecked(session):
        return {"variant": leader, "rings": nothing}
    worthwhile = questions_worth(engine, session, state, by_variant(state), PROOF)["open"]
    best = sorted(worthwhile, key=lambda entry: -entry["bits"])
    compared = drawn(engine, shown, state, leader, best)
    return {"variant": leader, "rings": settling(engine, session, compared)}


def odd_rings(engine: Engine, shown: Sitting, session: Session) -> Ringed:
    """What was seen and does not fit the leader, to be looked at once more on its portrait, which
    shows how the leader is recorded; worst first.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    leader = largest(chances)
    again = look_again(engine, session, state, chances)["open"]
    return {"variant": leader, "rings": drawn(engine, shown, state, leader, again)}
