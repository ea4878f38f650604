"""Sessions with pieces drawn from a range: how many questions, how sure, how often right?

A piece is drawn as the lab draws one (`identify/lab/pieces.py`): a row by its prior, each part now
and then from another piece of its kind, each look now and then a slip. It is asked question by
question, so that whoever shows it can pause between two.

Chance numbers are those of Park and Miller, "Random number generators: good ones are hard to find"
(1988): the same seed gives the same pieces.
"""

from .alike import within
from .asking import questions
from .belief import believe
from .focus import by_variant
from .lists import filled, largest, total
from .reasons import variant_chances
from .session import answered, new_session
from .stopping import aimed
from .types.engine import Engine
from .types.session import Answer, Session
from .types.trying import Luck, Trial, Tried

TIMES = 16807
MODULUS = 2147483647


def next_number(luck: Luck) -> float:
    """The next chance number, from 0 to 1."""
    product = luck["at"] * TIMES
    luck["at"] = int(product - (product // MODULUS) * MODULUS)
    return luck["at"] / MODULUS


def seeded(seed: int) -> Luck:
    """A row of chance numbers, the first ones thrown away: those of small seeds are small."""
    out: Luck = {"at": seed}
    for _ in range(8):
        next_number(out)
    return out


def picked_by(weights: list[float], number: float) -> int:
    """A place by its weight; `number` from 0 to 1."""
    left = number * total(weights)
    last = 0
    for n in range(len(weights)):
        if weights[n] > 0.0:
            last = n
            if left < weights[n]:
                return n
        left = left - weights[n]
    return last


def shown_on(engine: Engine, luck: Luck, place: int, row: int) -> int:
    """A state that this issue can show: by its record, or by the background."""
    pack = engine["pack"]
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    if len(shares) == 0:
        shares = pack["backgrounds"][place][pack["rows"]["kind"][row]]
    return picked_by(shares, next_number(luck))


def donor_rows(engine: Engine, luck: Luck, row: int) -> list[int]:
    """By part: the row of the piece that it comes from, mostly this one."""
    pack = engine["pack"]
    kinds = pack["rows"]["kind"]
    prior = pack["rows"]["prior"]
    out: list[int] = []
    for p in range(len(pack["parts"])):
        if next_number(luck) < pack["parts"][p]["swap"]:
            kind = picked_by(engine["donors"][p][kinds[row]], next_number(luck))
            weights = [prior[i] if kinds[i] == kind else 0.0 for i in range(len(kinds))]
            out.append(picked_by(weights, next_number(luck)))
        else:
            out.append(row)
    return out


def new_trial(engine: Engine, seed: int, place: int, count: int) -> Trial:
    """One of `count` pieces, at even steps along the prior, so that chance adds little."""
    pack = engine["pack"]
    luck = seeded(seed + place)
    row = picked_by(pack["rows"]["prior"], (place + next_number(luck)) / count)
    come_from = donor_rows(engine, luck, row)
    says = filled(len(pack["features"]), 0)
    for f in range(len(says)):
        part = pack["features"][f]["part"]
        seen = shown_on(engine, luck, f, come_from[part] if part >= 0 else row)
        slips = [chances[seen] for chances in engine["sure"][f]]
        says[f] = picked_by(slips, next_number(luck))
    return {
        "variant": pack["rows"]["variant"][row], "says": says, "session": new_session(engine),
        "done": False, "right": False, "unknown": False, "chance": 0.0,
    }  # fmt: skip


def ask_on(engine: Engine, trial: Trial) -> None:
    """Ask the next question of a trial and answer it; or end it, where there is none."""
    state = believe(engine, trial["session"])
    chances = variant_chances(engine, state)
    aim = aimed(engine, trial["session"], state, chances, [])
    asked = aim["asked"]["open"]
    if aim["stop"] != "" or len(asked) == 0:
        best = largest(chances)
        trial["done"] = True
        trial["unknown"] = aim["stop"] == "unrecorded"
        trial["right"] = best == trial["variant"] and aim["stop"] != "unrecorded"
        trial["chance"] = chances[best]
    else:
        feature = engine["pack"]["features"][asked[0]["feature"]]
        seen = feature["states"][trial["says"][asked[0]["feature"]]]["id"]
        answer: Answer = {"feature": feature["id"], "how": "sure", "states": [seen]}
        trial["session"] = answered(trial["session"], answer)


def twin_of(engine: Engine, trial: Trial) -> Trial:
    """The same piece, to be identified by another edition of its range: what is seen on it stays,
    by the places of features and states, which have to be the same in both.
    """
    return {
        "variant": trial["variant"], "says": trial["says"], "session": new_session(engine),
        "done": False, "right": False, "unknown": False, "chance": 0.0,
    }  # fmt: skip


def named_as(engine: Engine, session: Session) -> str:
    """The id of the variant that a piece with these answers is named as; "" for one in no range."""
    state = believe(engine, session)
    chances = variant_chances(engine, state)
    best = largest(chances)
    unknown = aimed(engine, session, state, chances, [])["stop"] == "unrecorded"
    return "" if unknown else engine["pack"]["variants"][best]["id"]


def told_of(trials: list[Trial]) -> Tried:
    """What came of trials that are done."""
    out: Tried = {
        "count": len(trials), "right": 0, "unknown": 0, "questions": 0.0, "fewest": 0, "most": 0,
        "sure": 0.0,
    }  # fmt: skip
    for n in range(len(trials)):
        trial = trials[n]
        asked = len(trial["session"]["answers"])
        out["right"] = out["right"] + (1 if trial["right"] in [True] else 0)
        out["unknown"] = out["unknown"] + (1 if trial["unknown"] in [True] else 0)
        out["questions"] = out["questions"] + asked / len(trials)
        out["fewest"] = asked if n == 0 else min(out["fewest"], asked)
        out["most"] = max(out["most"], asked)
        out["sure"] = out["sure"] + trial["chance"] / len(trials)
    return out


def first_asked(engine: Engine, kind: str, most: int) -> list[int]:
    """The features that are asked first of a kind of piece ("" : not known), best first."""
    state = believe(engine, within(new_session(engine), kind))
    asked = questions(engine, new_session(engine), state, by_variant(state))["open"]
    return [entry["feature"] for entry in asked[0:most]]
