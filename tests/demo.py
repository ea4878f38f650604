"""The prepared pieces of the demo, looked at as a person would."""

from pathlib import Path
from typing import Any

import orjson

from identify.core.assess import assess
from identify.core.session import answered, new_session

FILE = Path(__file__).resolve().parents[1] / "fixtures" / "demo" / "pieces.json"
PIECES: list[dict[str, Any]] = orjson.loads(FILE.read_bytes())["pieces"]


def ident(piece: dict[str, Any]) -> str:
    """What a test of this piece is called."""
    return str(piece["id"])


def looked_at(engine: dict[str, Any], piece: dict[str, Any]) -> dict[str, Any]:
    """The session with everything that was seen."""
    session = new_session(engine)
    session["scope"]["kind"] = piece["kind"]
    session["able"] = piece.get("able", [])
    for feature, state in piece["seen"].items():
        how = "unsure" if feature in piece.get("unsure", []) else "sure"
        session = answered(session, {"feature": feature, "how": how, "states": [state]})
    return session


def asked_out(engine: dict[str, Any], session: dict[str, Any]) -> dict[str, Any]:
    """The session after "can't tell" to all that is asked, until the app stops.

    What is to be looked at again is seen as before.
    """
    while True:
        view = assess(engine, session)
        if view["stop"]:
            return session
        feature = engine["pack"]["features"][view["question"]["feature"]]["id"]
        before = [a for a in session["answers"] if a["feature"] == feature]
        unseen = {"feature": feature, "how": "cannot", "states": []}
        session = answered(session, before[0] if before else unseen)
