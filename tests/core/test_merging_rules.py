"""Merging against a second reading of its rules: sets of operations instead of lists of places."""

import random

import pytest

from identify.core.merging import merged

NAMES = ["notes", "condition", "constructor", "1", "trashed", "gone"]


def ops_by(seed: int, devices: int = 3, count: int = 12) -> list[dict]:
    """Operations of one record as devices write them that hear of one another now and then."""
    chance = random.Random(seed)
    seen: dict[int, set[str]] = {d: set() for d in range(devices)}
    made: dict[str, dict] = {}
    for step in range(count):
        d = chance.randrange(devices)
        if chance.random() < 0.4:
            seen[d] |= seen[chance.randrange(devices)]
        named = {p for i in seen[d] for p in made[i]["parents"]}
        n = sum(1 for one in made.values() if one["device"] == f"d{d}") + 1
        name = chance.choice(NAMES)
        text = {"trashed": chance.choice(['""', f'"{step}"']), "gone": "true"}.get(
            name, f'"{chance.randrange(3)}"'
        )
        ident = f"d{d}.{n}"
        made[ident] = {
            "id": ident, "device": f"d{d}", "n": n, "parents": sorted(seen[d] - named),
            "wall": chance.randrange(20), "count": 0, "type": "piece", "fields": [[name, text]],
        }  # fmt: skip
        seen[d].add(ident)
    return list(made.values())


def ancestors(ops: dict[str, dict], ident: str) -> set[str]:
    found: set[str] = set()
    wanted = list(ops[ident]["parents"])
    while wanted:
        one = wanted.pop()
        if one in ops and one not in found:
            found.add(one)
            wanted += ops[one]["parents"]
    return found


def oracle(listed: list[dict]) -> tuple[dict[str, set[str]], bool]:
    """The current values of each field, and whether the record is in the trash."""
    ops = {one["id"]: one for one in listed}
    above = {ident: ancestors(ops, ident) for ident in ops}
    wrote = {ident: dict(one["fields"]) for ident, one in ops.items()}
    dead = {a for i in ops if wrote[i].get("gone") == "true" for a in above[i]}
    live = set(ops) - dead
    current = {
        name: {i for i in live if name in wrote[i]}
        - {a for i in live if name in wrote[i] for a in above[i]}
        for name in NAMES
    }
    away = {i for i in current["trashed"] if wrote[i]["trashed"] != '""'}
    away |= {i for i in current["gone"] if wrote[i]["gone"] == "true"}
    edits = {
        i for i in live if set(wrote[i]) - {"gone", "trashed"} or wrote[i].get("trashed") == '""'
    }
    back = any(all(e not in above[t] | {t} and t not in above[e] for t in away) for e in edits)
    values = {n: {wrote[i][n] for i in found} for n, found in current.items() if found}
    return values, bool(away) and not back


@pytest.mark.parametrize("seed", range(300))
def test_the_rules_read_twice_say_the_same(seed):
    ops = ops_by(seed)
    if seed % 3 == 0:
        ops = random.Random(seed).sample(ops, 8)  # some have not arrived
    found = merged(ops)
    values, trashed = oracle(ops)
    shown = dict(found["fields"])
    assert set(shown) == set(values)
    assert found["trashed"] == trashed, seed
    clashes = {one["field"]: [v["text"] for v in one["values"]] for one in found["clashes"]}
    for name in set(values) - {"trashed", "gone"}:
        assert shown[name] in values[name]
        assert set(clashes.get(name, [shown[name]])) == values[name], seed


@pytest.mark.parametrize("seed", range(50))
def test_the_order_in_which_they_come_does_not_matter(seed):
    ops = ops_by(seed)
    other = ops[:]
    random.Random(seed).shuffle(other)
    assert merged(ops) == merged(other)


def test_a_ring_that_no_device_writes_ends():
    ops = ops_by(1)
    ops[0]["parents"] = [ops[5]["id"]]
    ops[5]["parents"] = [ops[0]["id"]]
    assert merged(ops)["type"] == "piece"
