"""Why not that one: what each answer did to the odds between a variant and the leader."""

from math import log

from .asking import place_of_feature
from .belief import believe
from .focus import by_variant
from .lists import filled, largest
from .session import without
from .types.engine import Belief, Engine
from .types.session import Session
from .types.view import Against

UNSEEN = 1e-300  # stands for a chance of nothing, so that the odds stay numbers


def variant_chances(engine: Engine, state: Belief) -> list[float]:
    """The chance of every variant of the pack."""
    out = filled(len(engine["pack"]["variants"]), 0.0)
    outcomes = by_variant(state)
    for j in range(len(outcomes)):
        out[outcomes[j]] = out[outcomes[j]] + state["chances"][j]
    return out


def odds(chances: list[float], first: int, second: int) -> float:
    """log2 of the odds of `first` against `second`."""
    return log(max(chances[first], UNSEEN) / max(chances[second], UNSEEN)) / log(2.0)


def recorded(engine: Engine, variant: int, place: int) -> list[int]:
    """The states that a variant is recorded with, over all its issues; [] where one is unknown."""
    pack = engine["pack"]
    seen = filled(len(pack["features"][place]["states"]), 0.0)
    variants = pack["rows"]["variant"]
    for i in range(len(variants)):
        if variants[i] == variant:
            code = pack["cells"][place]["codes"][i]
            if code == 0:
                return []
            shares = pack["cells"][place]["shares"][code]
            for s in range(len(shares)):
                seen[s] = seen[s] + shares[s]
    out: list[int] = []
    for s in range(len(seen)):
        if seen[s] > 0.0:
            out.append(s)
    return out


def never_recorded(engine: Engine, session: Session, item: int, place: int) -> bool:
    """Whether what was seen of a feature is recorded for no variant of this item."""
    pack = engine["pack"]
    seen: list[str] = []
    for answer in session["answers"]:
        if answer["feature"] == pack["features"][place]["id"]:
            seen = answer["states"]
    if len(seen) == 0:
        return False
    for variant in range(len(pack["variants"])):
        if pack["variants"][variant]["item"] == item:
            states = recorded(engine, variant, place)
            if len(states) == 0:
                return False
            for state in states:
                if pack["features"][place]["states"][state]["id"] in seen:
                    return False
    return True


def why_not(engine: Engine, session: Session, variant: int) -> list[Against]:
    """What each answer said between this variant and the leader, strongest first.

    Each answer in turn is left out; `bits` is how far putting it back moves the odds towards the
    leader, so it allows for swapped parts and misread answers.
    """
    chances = variant_chances(engine, believe(engine, session))
    leader = largest(chances)
    whole = odds(chances, leader, variant)
    out: list[Against] = []
    for n in range(len(session["answers"])):
        answer = session["answers"][n]
        if answer["how"] != "cannot":
            place = place_of_feature(engine, answer["feature"])
            left = variant_chances(engine, believe(engine, without(session, answer["feature"])))
            out.append(
                {
                    "feature": place,
                    "answer": n,
                    "bits": whole - odds(left, leader, variant),
                    "recorded": recorded(engine, variant, place),
                }
            )
    return sorted(out, key=lambda entry: -entry["bits"])
