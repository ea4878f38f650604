"""The judge: whole sessions by the questions as the app asks them, and what they come to."""

import random
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from identify.core.assess import assess
from identify.core.session import answered, new_session
from identify.lab.intervals import wilson
from tests.open_world.world import Conditions, Found, World

Known = dict[tuple[str, ...], dict[str, Any]]
SAID = 0.9  # a variant is said to be it from here on


@dataclass(frozen=True)
class Outcome:
    """One session's end. name: the id of the leading variant; chance: what was said of it."""

    truth: str
    name: str
    chance: float
    item: bool  # the leader is of the right item
    unrecorded: float
    asked: int
    seconds: float
    told: bool  # the piece can be told from all that is recorded
    view: dict[str, Any]
    session: dict[str, Any]

    @property
    def right(self) -> bool:
        """Whether the leader is the truth."""
        return self.name == self.truth

    @property
    def wrongly_sure(self) -> bool:
        """Whether something is said that is not so."""
        return self.chance >= SAID and not self.right


def seen(engine: dict[str, Any], session: dict[str, Any], kept: Known | None) -> dict[str, Any]:
    """The view of a session; the first ones are the same for many pieces."""
    told = tuple(
        f"{a['feature']} {a['how']} {a['states']} {a.get('changed', False)}"
        for a in session["answers"]
    )
    if kept is None or len(told) > 5:
        return assess(engine, session)
    if told not in kept:
        kept[told] = assess(engine, session)
    return kept[told]


def identify(  # noqa: PLR0917
    rng: random.Random,
    world: World,
    engine: dict[str, Any],
    found: Found,
    like: Conditions,
    kept: Known | None = None,
) -> Outcome:
    """One piece, asked for until the app stops. kept: views of this engine, to be used again."""
    pack = engine["pack"]
    places = {feature["id"]: n for n, feature in enumerate(world.pack["features"])}
    session = new_session(engine)
    misread = world.slips(rng, like)
    seconds = 0.0
    while True:
        view = seen(engine, session, kept)
        if view["stop"] or view["question"] is None:
            break
        feature = pack["features"][view["question"]["feature"]]
        state = world.read(rng, found, places[feature["id"]], misread)
        known = state in [s["id"] for s in feature["states"]]
        answer = {"feature": feature["id"], "how": "sure" if known else "other"}
        session = answered(session, answer | {"states": [state] if known else []})
        seconds += feature["seconds"] + 3
    truth = world.pack["variants"][world.pack["rows"]["variant"][found.row]]
    best = view["variants"][0] if view["variants"] else {"variant": -1, "chance": 0.0}
    leader = pack["variants"][best["variant"]]
    number = world.pack["items"][truth["item"]]["number"]
    names = {variant["id"] for variant in pack["variants"]}
    recorded = [
        row
        for row, place in enumerate(world.pack["rows"]["variant"])
        if world.pack["variants"][place]["id"] in names
    ]
    return Outcome(
        truth=truth["id"],
        name=leader["id"],
        chance=best["chance"],
        item=pack["items"][leader["item"]]["number"] == number,
        unrecorded=view["unrecorded"],
        asked=len(session["answers"]),
        seconds=seconds,
        told=world.can_be_told(found, recorded),
        view=view,
        session=session,
    )


def share(hits: Sequence[bool]) -> tuple[float, float, float]:
    """A share with its interval."""
    low, high = wilson(sum(hits), len(hits))
    return (sum(hits) / len(hits) if hits else 0.0), low, high


def said(hits: Sequence[bool]) -> str:
    """The same in words."""
    mean, low, high = share(hits)
    return f"{mean:.1%} ({low:.1%} to {high:.1%}, {len(hits)})"
