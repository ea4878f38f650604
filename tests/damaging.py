"""Damage, always the same for the same seed: to records, changes, operations and backup files.

What is damaged is JSON from the demo collection and operations of a device. `DAMAGES` lists the
ways; each case takes one to three of them at places chosen by chance.
"""

import copy
from collections.abc import Callable
from functools import cache
from random import Random
from typing import Any

import orjson

from identify.core.forms import is_operation_id
from identify.phone import DEMO
from tests.keeping.samples import Writer

Json = Any
EXACT = 2**53 - 1


def nested(deep: int) -> Json:
    """Lists in lists."""
    return [] if deep == 0 else [nested(deep - 1)]


# Texts, times, numbers, groups that something or other takes badly.
ODD: list[Json] = [
    None, True, False, 0, -1, 7, 0.5, EXACT, EXACT + 1, -EXACT, 9 * 10**15, 1e308, 10**30, "", " ",
    "zzzz", "bogus", "0", "\u0000", "half \ud83d of a pair", "x" * 300_000, "__proto__",
    "constructor", "toString", "2026-02-30T10:00:00Z", "2026-11-01", "+010000-01-01T00:00:00.000Z",
    "9999-12-31T23:59:59.999Z", "0000-01-01T00:00:00Z", "1e9", "NaN", "../../etc/passwd",
    "<img src=x onerror=alert(1)>", [], {}, [None], [[]], [{}], ["a", 1], {"a": None},
    {"length": 9},
    {"minor": 1.5, "currency": "GBP"}, {"minor": 1, "currency": "gbp"}, [{"variant": 3}],
    [{"variant": "a", "chance": 9}], [{"feature": "f", "how": "no", "states": []}], nested(120),
    {"__proto__": {"x": 1}}, {"constructor": "c"}, {"prototype": []},
]  # fmt: skip
PHOTO = {"full": "ab" * 32, "small": "cd" * 32, "full_size": 9, "small_size": 9, "width": 2}
NAMES = ["__proto__", "constructor", "hasOwnProperty", "", "x" * 300, "op", "gone", "trashed", "é"]


def places(value: Json, at: tuple[Json, ...] = ()) -> list[tuple[Json, ...]]:
    """The ways to every value in a value."""
    out = [at] if at else []
    if isinstance(value, dict):
        for name, one in value.items():
            out += places(one, (*at, name))
    elif isinstance(value, list):
        for place, one in enumerate(value):
            out += places(one, (*at, place))
    return out


def holder(value: Json, at: tuple[Json, ...]) -> Json:
    for step in at[:-1]:
        value = value[step]
    return value


def replaced(value: Json, chance: Random) -> None:
    at = chance.choice(places(value))
    holder(value, at)[at[-1]] = copy.deepcopy(chance.choice(ODD))


def at_the_top(value: Json, chance: Random) -> None:
    value[chance.choice(list(value))] = copy.deepcopy(chance.choice(ODD))


def taken_away(value: Json, chance: Random) -> None:
    at = chance.choice(places(value))
    del holder(value, at)[at[-1]]


def put_in(value: Json, chance: Random) -> None:
    groups = [value, *(one for at in places(value) if isinstance(one := value_at(value, at), dict))]
    chance.choice(groups)[chance.choice(NAMES)] = copy.deepcopy(chance.choice(ODD))


def swapped(value: Json, chance: Random) -> None:
    one, other = chance.choice(list(value)), chance.choice(list(value))
    value[one], value[other] = value[other], value[one]


def value_at(value: Json, at: tuple[Json, ...]) -> Json:
    for step in at:
        value = value[step]
    return value


DAMAGES: list[Callable[[Json, Random], None]] = [
    replaced, at_the_top, at_the_top, taken_away, put_in, swapped,
]  # fmt: skip


def damaged(whole: Json, chance: Random) -> Json:
    """A copy with one to three things wrong with it; now and then no group at all any more."""
    if chance.random() < 0.02:
        return copy.deepcopy(chance.choice(ODD))
    value = copy.deepcopy(whole)
    for _ in range(chance.randint(1, 3)):
        if value:
            chance.choice(DAMAGES)(value, chance)
    return value


@cache
def demo() -> dict[str, Json]:
    found: dict[str, Json] = orjson.loads(DEMO.read_bytes())
    return found


def whole_record(chance: Random) -> Json:
    return chance.choice(demo()["records"])


def whole_entry(chance: Random) -> Json:
    record = whole_record(chance)
    entry = {
        "time": record["changed"], "record": record["id"], "type": record["type"],
        "undoes": "", "side": False, "group": f"g{chance.randint(1, 9)}", "what": "Changed",
        "before": {"notes": ""}, "after": {"notes": "n"},
    }  # fmt: skip
    if chance.random() < 0.5:
        one = whole_operation(chance)
        entry |= {name: one[name] for name in ("parents", "wall", "count", "fields")}
        entry |= {"op": one["id"], "held": ""}
    return entry


def whole_operation(chance: Random) -> Json:
    writer = Writer(chance)
    record = whole_record(chance)
    if chance.random() < 0.15:
        return writer.operation(f"p{chance.randint(1, 9)}", PHOTO, "photo")
    first = writer.operation(record["id"], {"notes": "a"}, record["type"])
    return chance.choice([first, writer.operation(record["id"], {"trashed": record["changed"]})])


def whole_backup(chance: Random) -> Json:
    return {
        "format": 1, "kind": "identify backup", "made": "2026-11-01T00:00:00Z",
        "records": [whole_record(chance) for _ in range(2)],
        "journal": [whole_entry(chance) for _ in range(2)],
        "photos": [{"id": "p1", "full": "data:image/jpeg;base64,AAAA", "small": "x", "width": 1}],
    }  # fmt: skip


WHOLE = {
    "record": whole_record,
    "entry": whole_entry,
    "operation": whole_operation,
    "backup": whole_backup,
}


def cases(kind: str, count: int, seed: int = 20) -> list[Json]:
    """So many damaged values of a kind."""
    chance = Random(f"{seed} {kind}")
    return [damaged(WHOLE[kind](chance), chance) for _ in range(count)]


def apart(value: Json, number: int) -> Json:
    """The value under ids of its own, where the damage left it any: none takes another's place."""
    if not isinstance(value, dict):
        return value
    known = [one["id"] for one in demo()["records"]]
    out = dict(value)
    if value.get("id") in known:
        out["id"] = f"{value['id']}n{number}"
    for name in ("id", "op"):
        if is_operation_id(value.get(name)):
            out[name] = f"d{number:016d}.1"
    return out
