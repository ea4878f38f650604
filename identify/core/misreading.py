"""What an answer says about what is really there: people misread, and more so when unsure.

s        the state that is there          a        the state that was answered
error    chance that an answer of this kind is wrong
P(a|s)   1 - error where a is s; the rest is shared out over the other states, and a state
         declared as mistaken for s takes MISTAKEN shares of it
"""

from collections.abc import Sequence

from .lists import filled, place_of
from .types.engine import Engine, Errors
from .types.session import Answer

MISTAKEN = 4.0
ELSE_RECORDED = 0.01  # "something else" though the state is one of those drawn
ELSE_UNRECORDED = 0.25  # "something else" where nothing is known of the piece or the part


def usual_errors() -> Errors:
    """How often answers are wrong, and how often a piece is in no reference (design figures)."""
    return {"sure": 0.03, "unsure": 0.25, "unrecorded": 0.02}


def channel(count: int, mistaken: list[list[int]], error: float) -> list[list[float]]:
    """P(a|s) as rows by answer a and columns by state s; every column adds up to 1."""
    shares: list[list[float]] = []
    for _ in range(count):
        shares.append(filled(count, 1.0))
    for pair in mistaken:
        shares[pair[0]][pair[1]] = MISTAKEN
        shares[pair[1]][pair[0]] = MISTAKEN
    rows: list[list[float]] = []
    for _ in range(count):
        rows.append(filled(count, 0.0))
    for s in range(count):
        others = 0.0
        for a in range(count):
            if a != s:
                others = others + shares[a][s]
        for a in range(count):
            if count == 1:
                rows[a][s] = 1.0
            elif a == s:
                rows[a][s] = 1.0 - error
            else:
                rows[a][s] = error * shares[a][s] / others
    return rows


def heard(engine: Engine, place: int, answer: Answer) -> list[float]:
    """P(answer | state) for each state of the feature at `place`, with one more number at the end:
    the chance of that answer where the state is "something else", or -1 where it has none.
    """
    states = engine["pack"]["features"][place]["states"]
    if answer["how"] == "other":
        out = filled(len(states), ELSE_RECORDED)
        out.append(ELSE_UNRECORDED)
        return out
    rows = engine["unsure"][place] if answer["how"] == "unsure" else engine["sure"][place]
    out = filled(len(states), 0.0)
    for ident in answer["states"]:
        a = place_of(states, ident)
        for s in range(len(states)):
            out[s] = out[s] + rows[a][s]
    out.append(-1.0)
    return out


def averaged(shares: Sequence[float], chances: Sequence[float]) -> float:
    """The sum of share times chance: the mean of `chances`, weighed by shares that add up to 1."""
    out = 0.0
    for s in range(len(shares)):
        out = out + shares[s] * chances[s]
    return out
