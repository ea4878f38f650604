"""The same sessions for everything that is measured: pieces of a pack, answered as they are."""

from identify.core.asking import questions
from identify.core.belief import believe
from identify.core.focus import by_variant
from identify.core.session import answered, new_session
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.types.session import Answer, Session

STEPS = 8


def likeliest(pack: Pack, place: int, row: int) -> int:
    """The state that this issue most likely shows."""
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    shares = shares or pack["backgrounds"][place][pack["rows"]["kind"][row]]
    return int(shares.index(max(shares)))


def rows_of(pack: Pack, count: int) -> list[int]:
    """So many rows at even steps through the pack."""
    rows = len(pack["rows"]["kind"])
    return [min(rows - 1, int(rows * (n + 0.4) / count)) for n in range(count)]


def walked(engine: Engine, row: int, steps: int = STEPS) -> list[Session]:
    """The session with one piece, at each of its steps: the best question answered every time."""
    pack = engine["pack"]
    session = new_session(engine)
    out = [session]
    for _ in range(steps):
        state = believe(engine, session)
        found = questions(engine, session, state, by_variant(state))["open"]
        if not found:
            break
        place = found[0]["feature"]
        feature = pack["features"][place]
        seen = feature["states"][likeliest(pack, place, row)]["id"]
        told: Answer = {"feature": feature["id"], "how": "sure", "states": [seen]}
        session = answered(session, told)
        out.append(session)
    return out


def numbered(pack: Pack, session: Session) -> list[list[int]]:
    """A session's answers as [place of the feature, place of the state]."""
    out = []
    for answer in session["answers"]:
        ids = [feature["id"] for feature in pack["features"]]
        place = ids.index(answer["feature"])
        states = [state["id"] for state in pack["features"][place]["states"]]
        out.append([place, states.index(answer["states"][0])])
    return out
