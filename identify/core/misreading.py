"""What an answer says about what is really there: people misread, and more so when unsure. (A
misread number is for look_up.py.)

s        the state that is there          a        the state that was answered
error    chance that an answer of this kind is wrong
P(a|s)   1 - error where a is s; the rest is shared out over the other states, and a state
         declared as mistaken for s takes MISTAKEN shares of it
other    chance that "something else" is answered: rare where what is there is drawn, less so where
         it may be on no drawing. Each other answer has 1 - other of P(a|s), so that the chances of
         all answers to one question add up to 1

"One of these" has the sum over what is named; "can't tell" says nothing. The rates are design
figures without a source: a slip in about one sure look of 33, in one of 100 where a second look
said the same, in one of four where the person was not sure. A rate that is known only roughly (one
careless or dark session) is not modelled: it was tried, and a session is too short to learn it from
(tests/open_world/README.md).
"""

from collections.abc import Sequence

from .lists import filled, place_of
from .types.engine import Engine, Errors
from .types.session import Answer

MISTAKEN = 4.0
ELSE_RECORDED = 0.01  # "something else" though the state is one of those drawn
ELSE_REPLACED = 0.03  # on a part from elsewhere, or where nothing is recorded
ELSE_UNRECORDED = 0.1  # where a piece that is in no range differs from those that are


def usual_errors() -> Errors:
    """How often answers are wrong (design figures). unrecorded: 1 for as many pieces in no range as
    the range says, 0 for none; drawn_all: 0 where "something else" can be answered.
    """
    return {"sure": 0.03, "twice": 0.01, "unsure": 0.25, "unrecorded": 1.0, "drawn_all": 0.0}


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
    """P(answer | state) for each state of the feature at `place`, given that one of those drawn is
    answered; 1 for "something else", which in_words() takes from here.
    """
    states = engine["pack"]["features"][place]["states"]
    if answer["how"] == "other":
        return filled(len(states), 1.0)
    rows = engine["sure"][place]
    if answer["how"] == "unsure":
        rows = engine["unsure"][place]
    if answer["how"] == "twice":
        rows = engine["twice"][place]
    out = filled(len(states), 0.0)
    for ident in answer["states"]:
        a = place_of(states, ident)
        for s in range(len(states)):
            out[s] = out[s] + rows[a][s]
    return out


def in_words(engine: Engine, answer: Answer, chance: float, beyond: float) -> float:
    """P(answer): `beyond` for "something else", and what that leaves of `chance` for the others."""
    other = beyond * (1.0 - engine["drawn_all"])
    return other * chance if answer["how"] == "other" else (1.0 - other) * chance


def averaged(shares: Sequence[float], chances: Sequence[float]) -> float:
    """The sum of share times chance: the mean of `chances`, weighed by shares that add up to 1."""
    out = 0.0
    for s in range(len(shares)):
        out = out + shares[s] * chances[s]
    return out
