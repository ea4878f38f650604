"""Which question to ask next: bits of what is to be decided (worth.py), by second of looking."""

from .focus import wary
from .lists import filled, place_of, total
from .session import answers_with_kind
from .types.engine import Belief, Engine
from .types.pack import Feature
from .types.questions import Focus, IfSeen, Leaves, Questions, Scored
from .types.session import Session
from .worth import joint, worth

WORTH = 0.03  # bits, with what is in no range counted for more: less is not worth a look
TAP = 3.0  # seconds to read the question and tap, beside those for the look (a guess)
GLANCED = 1.0  # a look of less than this is had before anything is asked
GRID = 1000000000.0  # scores are compared in steps of one part in this


def unasked(engine: Engine, session: Session) -> list[int]:
    """Features with no answer yet, on parts that are there."""
    pack = engine["pack"]
    done = [a["feature"] for a in answers_with_kind(engine, session)]
    out: list[int] = []
    for f in range(len(pack["features"])):
        feature = pack["features"][f]
        gone = False
        if feature["part"] >= 0:
            gone = pack["parts"][feature["part"]]["id"] in session["missing"]
        if not gone and feature["id"] not in done:
            out.append(f)
    return out


def cost_of(feature: Feature) -> float:
    """Seconds that a question takes: the look and a tap; what is seen as the piece is picked up
    takes no more than itself.
    """
    return feature["seconds"] + (TAP if feature["seconds"] >= GLANCED else 0.0)


def questions(engine: Engine, session: Session, state: Belief, outcomes: list[int]) -> Questions:
    """Every question worth asking, best first.

    A feature that is likelier absent than there is left out, and so is one worth less than WORTH
    bits.
    """
    return questions_worth(engine, session, state, outcomes, WORTH)


def questions_worth(
    engine: Engine, session: Session, state: Belief, outcomes: list[int], least: float
) -> Questions:
    """The same of those that are worth at least so many bits."""
    pack = engine["pack"]
    focused = wary(state, outcomes)
    ready: list[Scored] = []
    shut: list[Scored] = []
    for f in unasked(engine, session):
        feature = pack["features"][f]
        telling = worth(engine, state, focused, f)
        if telling["absent"] <= 0.5 and telling["bits"] >= least:
            score = int(GRID * telling["bits"] / cost_of(feature))
            entry: Scored = {"feature": f, "bits": telling["bits"], "score": score}
            if feature["needs"] == "nothing" or feature["needs"] in session["able"]:
                ready.append(entry)
            else:
                shut.append(entry)
    return {
        "open": sorted(ready, key=lambda entry: -entry["score"]),
        "shut": sorted(shut, key=lambda entry: -entry["score"]),
        "focus": focused,
    }


def reason(engine: Engine, state: Belief, focused: Focus, place: int) -> Leaves:
    """What each answer leaves."""
    table = joint(engine, state, focused, place)
    scales = table["scales"]
    views = table["views"]
    best = filled(len(engine["sure"][place]), 0.0)
    columns = filled(len(best), 0.0)
    left = filled(len(best), 0)
    beyond = focused["chances"][len(focused["chances"]) - 1]
    if beyond > 0.0:
        scales[len(scales) - 1] = focused["beyond"] / beyond  # as it is believed, not feared
    for o in range(len(views)):
        for a in range(len(best)):
            p = scales[o] * views[o][a]
            columns[a] = columns[a] + p
            best[a] = max(best[a], p)
    for o in range(len(views) - 1):
        for a in range(len(best)):
            if scales[o] * views[o][a] > best[a] / 100.0:
                left[a] = left[a] + 1
    whole = total(columns)
    groups: list[IfSeen] = []
    for a in range(len(left)):
        groups.append({"state": a, "variants": left[a]})
    return {"expected": [column / whole for column in columns], "groups": groups}


def place_of_feature(engine: Engine, ident: str) -> int:
    """Where the feature with this id stands, or -1."""
    return place_of(engine["pack"]["features"], ident)
