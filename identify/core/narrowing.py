"""From several packs to the one that is left: when, and what of the session goes along."""

from .belief import believe
from .lists import filled, largest, total
from .session import new_session, problem
from .types.engine import Engine
from .types.session import Answer, Session

SETTLED = 0.9  # one pack holds this much of what is in any: the others are out


def settled(engine: Engine, session: Session) -> str:
    """The id of the pack that is as good as alone in a session over joined packs, or ""."""
    ids = engine["pack"]["packs"]
    state = believe(engine, session)
    held = filled(len(ids), 0.0)
    variants = engine["pack"]["rows"]["variant"]
    for j in range(len(state["rows"])):
        item = engine["pack"]["variants"][variants[state["rows"][j]]]["item"]
        for n in range(len(ids)):
            if engine["pack"]["items"][item]["pack"] == ids[n]:
                held[n] = held[n] + state["chances"][j]
    best = largest(held)
    return ids[best] if held[best] >= SETTLED * total(held) and total(held) >= 0.5 else ""


def narrowed(alone: Engine, session: Session) -> Session:
    """A session over joined packs, carried over to the engine of one of them alone.

    Answers to features of other packs, and on gauge and material, have done their work.
    """
    out = new_session(alone)
    out["able"] = session["able"]
    front = alone["pack"]["id"] + "_"
    for part in alone["pack"]["parts"]:
        if front + part["id"] in session["missing"]:
            out["missing"].append(part["id"])
    for answer in session["answers"]:
        for feature in alone["pack"]["features"]:
            shared = feature["id"] == "kind" and answer["feature"] == "kind"
            if shared or answer["feature"] == front + feature["id"]:
                own: Answer = {
                    "feature": feature["id"],
                    "how": answer["how"],
                    "states": answer["states"],
                }
                if problem(alone, own) == "":
                    out["answers"].append(own)
    return out
