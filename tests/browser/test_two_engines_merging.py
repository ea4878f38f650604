"""Merging in Python and on the phone: the same records of the same operations."""

import json
import random
from collections.abc import Iterator

import pytest
from playwright.sync_api import Page

from identify import phone
from identify.core import merging, syncing
from identify.core.clock import heard, in_reach, tick
from identify.core.clock_limits import LAST_COUNT, LAST_WALL
from identify.core.operation_forms import comparable, for_merging, parts_of_id
from tests.browser.engines import PAGE, same
from tests.conftest import serving
from tests.strategies import random_operations

LOAD = "async () => { window.rules = await import('./merging.js'); }"
ASK = """text => JSON.stringify(
  JSON.parse(text).map(([name, ...given]) => rules[name](...given)))"""
FORMS = {"parts_of_id": parts_of_id, "for_merging": for_merging, "comparable": comparable}
OURS = {
    "merged": merging.merged,
    "tick": tick,
    "heard": heard,
    "in_reach": in_reach,
    **FORMS,
    **{name: getattr(syncing, name) for name in
       ("mark_of", "sealed", "is_late", "pulled", "same_operation", "met", "forked")},
}  # fmt: skip
ODD = [
    "日本",
    "Ünï",
    "hasOwnProperty",
    "toString",
    "valueOf",
    "prototype",
    " ",
    "0",
    "length",
    "a.b",
]


@pytest.fixture(scope="module")
def page(browser) -> Iterator[Page]:
    files = {"index.html": PAGE, "merging.js": phone.merging_module().encode()}
    with serving(files) as server:
        page = browser.new_page()
        page.goto(server.url)
        page.evaluate(LOAD)
        yield page
        page.close()


def agree(page: Page, asked: list[list]) -> None:
    answers = json.loads(page.evaluate(ASK, json.dumps(asked)))
    for n, (call, theirs) in enumerate(zip(asked, answers, strict=True)):
        name, *given = call
        same(OURS[name](*given), theirs, f"{name} {n}")


def test_every_rule_that_the_phone_gets_is_asked_here():
    assert set(OURS) == set(phone.MERGING_EXPORTS)


@pytest.mark.parametrize("start", range(0, 4000, 1000))
def test_records(page, start):
    asked = [["merged", random_operations(seed)] for seed in range(start, start + 1000)]
    assert sum(len(merging.merged(ops)["clashes"]) for _, ops in asked) > 100
    agree(page, asked)


def test_odd_names(page):
    asked = []
    for seed in range(300):
        ops = random_operations(seed)
        for n, op in enumerate(ops):
            value = f'"{n % 3} \\" \' \\\\ ½ {ODD[n % len(ODD)]}"'
            op["fields"].append([ODD[(n + seed) % len(ODD)], value])
        asked.append(["merged", ops])
    agree(page, asked)


def test_long_histories(page):
    asked = [["merged", random_operations(seed, most=500)] for seed in range(10)]
    assert max(len(ops) for _, ops in asked) > 300
    agree(page, asked)


def test_syncing(page):
    asked = [a_call(random.Random(seed)) for seed in range(2000)]
    assert {name for name, *_ in asked} == set(OURS) - {"merged", *FORMS}
    agree(page, asked)


def a_call(chance: random.Random) -> list:
    """A question to one of the rules of clock.py or syncing.py."""
    clock, other = (
        {
            "wall": chance.choice([0, 5, 2**52, LAST_WALL, chance.randint(0, 9)]),
            "count": chance.choice([0, 1, 2, 3, LAST_COUNT]),
        }
        for _ in range(2)
    )
    device = chance.choice(["da", "db"])
    n = chance.choice([0, 9, 10, 99, 1234567, 2**31, 2**33 + 1])
    state = {
        "device": device, "n": n, "clock": clock, "epoch": chance.choice(["", "e1", "e2"]),
        "after": chance.randint(0, 2), "last": chance.choice(["", "t"]),
        "round": chance.choice([0, 1, 10, 205]),
    }  # fmt: skip
    now = chance.choice([0, 4, 2**52 + 1])
    records = ["ra", "rconstructor", "propertyIsEnumerable"]
    heads = [
        {"record": record, "heads": chance.sample(["da.1", "da.10", "da.9", "db.2"], 2)}
        for record in records[: chance.randint(0, 3)]
    ]
    ids = [f"d{chance.choice('abc')}.{chance.randint(1, 12)}" for _ in range(6)]
    ops = [
        {
            "id": ident, "device": ident[:2], "wall": chance.randint(0, 9), "count": 0,
            "here": chance.choice(["", "same", "other"]),
            "held": chance.choice(["", "e1 1", syncing.mark_of(state)]),
            "parents": chance.sample(ids, chance.randint(0, 2)),
        }
        for ident in dict.fromkeys(ids)
    ]  # fmt: skip
    texts = [
        {
            "scrubbed": chance.random() < 0.5,
            "text": chance.choice("ab"),
            "bare": chance.choice("ab"),
        }
        for _ in range(2)
    ]
    asked = {name: chance.choice([state[name], 1]) for name in ("epoch", "after", "last")}
    answer = {"epoch": "e2", "from_start": chance.random() < 0.5, "after": 7, "last": "u"}
    entries = [{"record": chance.choice(records), "time": chance.randint(0, 9)} for _ in range(4)]
    return chance.choice(
        [
            ["tick", clock, now], ["heard", clock, other, now], ["mark_of", state],
            ["in_reach", clock["wall"], n],
            ["sealed", state, entries, heads], ["is_late", state, asked],
            ["pulled", state, answer], ["same_operation", *texts], ["met", state, ops, now],
            ["forked", state, "dz", ops, chance.sample(ids, chance.randint(0, 2))],
        ]
    )  # fmt: skip


def an_operation(chance: random.Random) -> dict:
    """An operation as the server takes it, with what a newer version may say besides."""
    values = [None, True, 0, -1, 1.5, 2**40, "", '½ " \\ 日本 €', [], [1, {"b": [], "a": ""}], {}]
    names = [name for name in [*ODD, "notes", "é"] if name != "0"]  # JavaScript puts "0" first
    op = {
        "id": f"d{'x' * 16}.{chance.choice([1, 9, 10, 123456])}", "record": "r1", "type": "piece",
        "parents": ["dy.1"], "wall": 5, "count": 0, "time": "", "group": "", "what": "Changed",
        "undoes": "", "new": chance.choice(values),
        "fields": {name: chance.choice(values) for name in chance.sample(names, 4)},
    }  # fmt: skip
    return op | chance.choice([{}, {"scrubbed": True}, {"scrubbed": False}, {"scrubbed": 1}])


def test_the_forms_of_operations(page):
    ops = [an_operation(random.Random(seed)) for seed in range(1000)]
    agree(page, [[name, op] for op in ops for name in ("for_merging", "comparable")])
    agree(page, [["parts_of_id", op["id"]] for op in ops])
