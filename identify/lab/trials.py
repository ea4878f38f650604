"""Whole sessions with drawn pieces: how many questions until the engine stops, and is it right?"""

import random
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from identify.core.belief import believe
from identify.core.lists import best_first, total
from identify.core.reasons import variant_chances
from identify.core.session import answered, new_session
from identify.core.stopping import aimed
from identify.core.types.engine import Engine
from identify.core.types.session import Session
from identify.core.worth import entropy
from identify.lab.pieces import Piece, piece, read_by, rows_drawn

Step = Callable[[], None]


@dataclass
class Standing:
    """Where a session stands: chance of each variant, of "unrecorded", and what to ask next."""

    chances: list[float]
    unrecorded: float
    question: int
    stop: str


@dataclass
class Trial:
    """One session: the features asked, the truth's place among the candidates, and what is left."""

    asked: list[int]
    seconds: float
    place: int
    stop: str
    bits: float


class Asker:
    """Asks the best question each time. What it found once after the same answers is kept."""

    def __init__(self, engine: Engine) -> None:
        self.engine = engine
        self.known: dict[tuple[str, ...], Standing] = {}

    def standing(self, session: Session) -> Standing:
        """Where the session stands."""
        key = tuple(
            f"{a['feature']} {a['how']} {a['states'][0]} {a.get('changed', False)}"
            for a in session["answers"]
        )
        if key not in self.known:
            self.known[key] = stands(self.engine, session, [])
        return self.known[key]


class Shuffler:
    """Asks all that the app would still ask in a random order: the order alone differs."""

    def __init__(self, engine: Engine, rng: random.Random) -> None:
        self.engine = engine
        places = range(len(engine["pack"]["features"]))
        self.order = rng.sample(places, len(places))

    def standing(self, session: Session) -> Standing:
        """Where the session stands."""
        return stands(self.engine, session, self.order)


def stands(engine: Engine, session: Session, order: list[int]) -> Standing:
    """Where a session stands, and of what the app would still ask the first in an order; where
    that is empty, the best.
    """
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    aim = aimed(engine, session, state, chances, [])
    still = [entry["feature"] for entry in aim["asked"]["open"]]
    ranked = order or still
    question = min(still, key=ranked.index, default=-1)
    return Standing(chances, total(state["unrecorded"]), question, aim["stop"])


def walked(
    rng: random.Random, asker: Asker | Shuffler, reader: Engine, drawn: Piece
) -> tuple[Standing, list[int]]:
    """Where a session with a piece ends, and the features asked. reader: an engine with the
    person's errors.
    """
    session = new_session(asker.engine)
    asked: list[int] = []
    while not (now := asker.standing(session)).stop:
        asked.append(now.question)
        seen = drawn.states[asker.engine["pack"]["features"][now.question]["id"]]
        session = answered(session, read_by(rng, reader, now.question, seen))
    return now, asked


def session_with(
    rng: random.Random, asker: Asker | Shuffler, reader: Engine, drawn: Piece
) -> Trial:
    """Identify one piece until the engine stops. reader: an engine with the person's errors."""
    pack = asker.engine["pack"]
    now, asked = walked(rng, asker, reader, drawn)
    truth = pack["rows"]["variant"][drawn.row]
    return Trial(
        asked,
        sum(pack["features"][n]["seconds"] for n in asked),
        best_first(now.chances).index(truth) + 1,
        now.stop,
        entropy([*now.chances, now.unrecorded]),
    )


def trials(
    rng: random.Random,
    asker: Asker,
    reader: Engine,
    count: int,
    step: Step,
    *,
    shuffled: bool = False,
) -> list[Trial]:
    """Sessions with so many pieces, in the best order or, each time another, in a random one."""
    out = []
    for row in rows_drawn(rng, reader["pack"], count):
        drawn = piece(rng, reader["pack"], row)
        who = Shuffler(asker.engine, rng) if shuffled else asker
        out.append(session_with(rng, who, reader, drawn))
        step()
    return out


def mean(values: Iterable[float]) -> float:
    """The mean; 0 of nothing."""
    listed = list(values)
    return sum(listed) / len(listed) if listed else 0.0


def among(done: list[Trial], first: int) -> float:
    """The share of sessions in which the truth is among the first so many candidates."""
    return mean(trial.place <= first for trial in done)
