"""Parts that may not belong: the chance that each was replaced, whatever the piece is."""

from typing import Any

from .lists import total


def suspects(
    engine: dict[str, Any], session: dict[str, Any], state: dict[str, Any]
) -> list[dict[str, Any]]:
    """[{part, swapped, features}] for each part with an answer, most suspect first.

    `swapped` is the chance that it was replaced, given that the piece is in the reference.
    """
    pack = engine["pack"]
    whole = total(state["chances"])
    out: list[dict[str, Any]] = []
    for p in range(len(pack["parts"])):
        replaced = state["swapped"][p]
        if len(replaced) > 0 and whole > 0.0:
            chance = 0.0
            for j in range(len(replaced)):
                chance = chance + state["chances"][j] * replaced[j]
            out.append(
                {"part": p, "swapped": chance / whole, "features": answered_on(pack, session, p)}
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
