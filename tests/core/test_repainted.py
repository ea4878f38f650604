"""A finish that was altered: what shows it goes together, and the piece stays what it is."""

import random
from typing import Any

import pytest

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.session import answered, new_session
from tests.kept_site import compiled_demo_packs

PACKS = compiled_demo_packs()
TRIES = 40


def recorded(pack: dict[str, Any], place: int, row: int) -> int:
    """The state that is recorded for certain, -1 for none."""
    cells = pack["cells"][place]
    shares = cells["shares"][cells["codes"][row]]
    return shares.index(1.0) if 1.0 in shares else -1


def unmarked(pack: dict[str, Any]) -> dict[str, Any]:
    """The same range with nothing marked as the finish."""
    gone = [part["id"] for part in pack["parts"]].index("finish")
    features = [
        feature | {"part": -1 if feature["part"] == gone else feature["part"]}
        for feature in pack["features"]
    ]
    return pack | {"features": features}


def repainted(pack: dict[str, Any], seed: str) -> tuple[int, dict[str, str]]:
    """A variant, and what is seen with the naked eye on a piece of it in the finish of another one
    of its kind, which differs in two things of it and more.
    """
    rng = random.Random(seed)
    rows = pack["rows"]
    parts = [part["id"] for part in pack["parts"]]
    finish = [n for n, f in enumerate(pack["features"]) if parts[f["part"]] == "finish"]
    while True:
        row, donor = rng.choices(range(len(rows["kind"])), rows["prior"], k=2)
        apart = [n for n in finish if recorded(pack, n, row) != recorded(pack, n, donor)]
        if rows["kind"][row] != rows["kind"][donor] or len(apart) < 2:
            continue
        seen = {}
        for n, feature in enumerate(pack["features"]):
            state = recorded(pack, n, donor if n in finish else row)
            if state >= 0 and state != feature["none"] and feature["needs"] == "nothing":
                seen[feature["id"]] = feature["states"][state]["id"]
        return rows["variant"][row], seen


def looked_at(engine: dict[str, Any], seen: dict[str, str]) -> dict[str, Any]:
    session = new_session(engine)
    for feature, state in seen.items():
        session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
    return assess(engine, session)


@pytest.mark.heavy
@pytest.mark.parametrize("name", PACKS)
def test_a_repainted_piece_is_what_it_was_and_its_finish_probably_repainted(name):
    pack = PACKS[name]
    finish = [part["id"] for part in pack["parts"]].index("finish")
    assert pack["parts"][finish]["altered"] == "repainted"
    engine, without = prepare(pack), prepare(unmarked(pack))
    right, told, right_without = 0, 0, 0
    for n in range(TRIES):
        variant, seen = repainted(pack, f"{name} {n}")
        item = pack["variants"][variant]["item"]
        view = looked_at(engine, seen)
        right += view["items"][0]["item"] == item and view["unrecorded"] < 0.5
        how = {part["part"]: part["how"] for part in view["parts"]}
        told += how[finish] in {"probably", "almost certainly"}
        plain = looked_at(without, seen)
        right_without += plain["items"][0]["item"] == item and plain["unrecorded"] < 0.5
    assert right > 0.6 * TRIES
    assert told > 0.4 * TRIES
    assert right > right_without + TRIES / 5


@pytest.mark.parametrize("name", PACKS)
def test_a_finish_as_recorded_is_not_said_to_be_altered(name):
    pack = PACKS[name]
    finish = [part["id"] for part in pack["parts"]].index("finish")
    engine = prepare(pack)
    rng = random.Random(name)
    for row in rng.choices(range(len(pack["rows"]["kind"])), pack["rows"]["prior"], k=20):
        seen = {}
        for n, feature in enumerate(pack["features"]):
            state = recorded(pack, n, row)
            if state >= 0 and state != feature["none"] and feature["needs"] == "nothing":
                seen[feature["id"]] = feature["states"][state]["id"]
        how = {part["part"]: part["how"] for part in looked_at(engine, seen)["parts"]}
        assert how.get(finish, "") == ""
