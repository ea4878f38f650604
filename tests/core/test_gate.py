"""The gate: what fits is what the app makes itself; what does not is told in a sentence."""

import copy
from collections.abc import Callable
from random import Random
from typing import Any

import pytest

from identify.core.clock import heard, tick
from identify.core.clock_limits import EXACT, LAST_COUNT, LAST_WALL
from identify.core.gate import (
    LARGEST,
    entry_fault,
    file_record_fault,
    operation_fault,
    photo_fault,
    record_fault,
)
from identify.core.gate_words import fault_words
from identify.core.merging import merged
from identify.keeping.canonical_json import text_of
from identify.keeping.ops import read_operations
from tests.damaging import PHOTO, cases, demo, nested, whole_entry, whole_operation

RECORD = demo()["records"][0]
CHANCE = Random(1)
OPERATION = whole_operation(CHANCE)
ENTRY = whole_entry(CHANCE)


def test_everything_in_the_demo_fits():
    for record in demo()["records"]:
        assert file_record_fault(record) is None, record
    for entry in demo()["journal"]:
        assert entry_fault(entry, False) is None
    assert operation_fault(OPERATION, False) is None
    assert entry_fault(ENTRY, False) is None


CHANGED = {"feature": "f", "how": "cannot", "states": [], "changed": "x"}
WRONG_RECORDS = [
    ({"changed": "zzzz"}, "time", "changed"),
    ({"made": "2026-02-30T00:00:00Z"}, "time", "made"),
    ({"made": "2026-13-01T00:00:00Z"}, "time", "made"),
    ({"made": "2026-01-01T24:00:00Z"}, "time", "made"),
    ({"made": "2026-01-01T00:00:00"}, "time", "made"),
    ({"made": "2026-01-01T00:00:00.Z"}, "time", "made"),
    ({"made": "+010000-01-01T00:00:00.000Z"}, "time", "made"),
    ({"changed": "9999-12-31T23:59:59.999Z"}, "time", "changed"),
    ({"changed": 1_700_000_000_000}, "time", "changed"),
    ({"trashed": "gone"}, "time", "trashed"),
    ({"id": "../x"}, "id", "id"),
    ({"id": "r"}, "id", "id"),
    ({"id": "r" + "a" * 65}, "id", "id"),
    ({"id": None}, "id", "id"),
    ({"type": "__proto__"}, "type", "type"),
    ({"type": "constructor"}, "type", "type"),
    ({"type": ["piece"]}, "type", "type"),
    ({"notes": ["a"]}, "field", "notes"),
    ({"notes": "half \ud83d"}, "unicode", ""),
    ({"condition": "splendid"}, "field", "condition"),
    ({"paid": {"minor": 1.5, "currency": "GBP"}}, "field", "paid"),
    ({"paid": {"minor": 1, "currency": "gbp"}}, "field", "paid"),
    ({"paid": {"minor": 1, "currency": "GBP", "over": 48}}, "field", "paid"),
    ({"paid": {"minor": EXACT + 1, "currency": "GBP"}}, "field", "paid"),
    ({"of": [{"variant": "a", "chance": 2}]}, "field", "of"),
    ({"of": [{"variant": 3, "chance": 1}]}, "field", "of"),
    ({"answers": [{"feature": "f", "how": "so", "states": []}]}, "field", "answers"),
    ({"answers": [CHANGED]}, "field", "answers"),
    ({"photos": "p1"}, "field", "photos"),
    ({"photos": [1]}, "field", "photos"),
    ({"kept": "yes"}, "field", "kept"),
    ({"demo": 1}, "field", "demo"),
    ({"came": {"key": "a", "cells": {"x": 1}, "values": {}}}, "field", "came"),
    ({"x": float("nan")}, "value", ""),
    ({"x": 10**400}, "value", ""),
    ({"x": nested(120)}, "deep", ""),
    ({"x": "a" * 300_000}, "large", ""),
    ({"__proto__": {"x": 1}}, "name", "__proto__"),
    ({"came": {"key": "", "cells": {"constructor": ""}, "values": {}}}, "name", "constructor"),
]


@pytest.mark.parametrize(("change", "why", "at"), WRONG_RECORDS)
def test_a_record_that_does_not_fit_is_told_with_what_it_is_about(change, why, at):
    found = record_fault(copy.deepcopy(RECORD) | change)
    assert found == {"why": why, "at": at}
    said = fault_words(found)
    assert said.endswith(".")
    assert at in said


@pytest.mark.parametrize("value", [None, 7, "r", [], {}, [RECORD]])
def test_what_is_no_record_at_all(value):
    assert record_fault(value) is not None
    assert operation_fault(value, True) is not None
    assert entry_fault(value, True) is not None


def test_a_record_of_a_newer_version_is_kept_and_not_taken_from_a_file():
    newer = {**RECORD, "type": "loan", "to": {"whom": ["a friend"]}}
    assert record_fault(newer) is None
    assert file_record_fault(newer) == {"why": "type", "at": "type"}
    assert record_fault(RECORD | {"of a newer version": {"a": [1.5, None]}, "length": 3}) is None


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"after": None}, "field"),
        ({"after": []}, "field"),
        ({"before": "x"}, "field"),
        ({"time": "zzzz"}, "time"),
        ({"group": None}, "field"),
        ({"record": 7}, "id"),
        ({"type": "__proto__"}, "type"),
        ({"side": "yes"}, "field"),
        ({"settles": 1}, "field"),
    ],
)
def test_a_change_that_does_not_fit(change, why):
    assert entry_fault({**ENTRY, **change}, False)["why"] == why


@pytest.mark.parametrize(
    ("change", "why"),
    [
        ({"op": "bogus"}, "op"),
        ({"op": ["d" + "a" * 16 + ".1"]}, "op"),
        ({"op": "d" + "a" * 16 + ".01"}, "op"),
        ({"parents": "x"}, "parents"),
        ({"parents": ["bogus"]}, "parents"),
        ({"wall": EXACT}, "clock"),
        ({"count": EXACT}, "clock"),
        ({"wall": 1.5}, "clock"),
    ],
)
def test_a_change_that_says_it_is_an_operation_and_is_none(change, why):
    one = {**OPERATION, "op": OPERATION["id"], "after": {}, "held": ""}
    assert entry_fault(one, False) is None
    assert entry_fault({**one, **change}, False)["why"] == why


def test_a_change_that_is_no_operation_is_held_by_no_server():
    """Where one said it was, every sync asked for its id, and ended there."""
    bare = {name: ENTRY[name] for name in ENTRY if name not in ("op", "held")}
    assert entry_fault(bare, True) is None
    for held in ("", "e1 2"):
        assert entry_fault({**bare, "held": held}, True) == {"why": "field", "at": "held"}


@pytest.mark.parametrize("name", ["full", "small"])
@pytest.mark.parametrize("value", ["zzzz", "../pull", "", "AB" * 32, 7, ["ab" * 32]])
def test_what_a_photo_is_called_is_a_checksum(name, value):
    """Where it was not, the server refused to be asked for it, and every sync ended there."""
    photo = {**OPERATION, "record": "p1", "type": "photo", "fields": PHOTO}
    assert operation_fault(photo, False) is None
    assert operation_fault({**photo, "fields": {"gone": True, "full": None}}, False) is None
    bad = {**PHOTO, name: value}
    assert operation_fault({**photo, "fields": bad}, True) == {"why": "field", "at": name}
    entry = {**photo, "op": photo["id"], "after": {}, "held": ""}
    assert entry_fault({**entry, "fields": bad}, True) == {"why": "field", "at": name}
    assert entry_fault({**entry, "fields": None, "after": bad}, True)["at"] == name
    assert operation_fault({**photo, "type": "piece", "fields": bad}, True) is None


def test_a_photo_says_who_it_is():
    assert photo_fault({"id": "p1", "full": "x", "small": "y"}) is None
    for change in ({"id": "r1"}, {"id": 5}, {"full": None}, {"small": {}}):
        assert photo_fault({"id": "p1", "full": "x", "small": "y"} | change) is not None


def test_what_is_kept_already_may_have_a_clock_that_new_ones_may_not():
    for one in ({"wall": 9 * 10**15}, {"wall": EXACT, "count": EXACT}):
        assert operation_fault(OPERATION | one, False)["why"] == "clock"
        assert operation_fault(OPERATION | one, True) is None


def test_no_clock_leads_another_beyond_its_end_and_order_is_kept_to_the_last():
    clock = {"wall": 5, "count": 0}
    for far in ((EXACT, EXACT), (LAST_WALL, EXACT), (LAST_WALL, LAST_COUNT), (10**14, LAST_COUNT)):
        other = {"wall": far[0], "count": far[1]}
        now = heard(clock, other, 1_700_000_000_000)
        for step in (tick(now, 1_700_000_000_000), tick(now, EXACT)):
            assert step["wall"] <= LAST_WALL
            assert step["count"] <= LAST_COUNT
            assert (step["wall"], step["count"]) >= (now["wall"], now["count"])
            assert operation_fault(OPERATION | step, False) is None
    full = {"wall": 10**12, "count": LAST_COUNT}
    assert tick(full, 5) == {"wall": 10**12 + 1, "count": 0}, "where the counter is full it carries"


def test_at_the_end_of_all_clocks_what_was_written_knowing_the_other_still_counts():
    clock = {"wall": LAST_WALL, "count": LAST_COUNT}
    first = {**OPERATION, "id": "dzzzzzzzzzzzzzzzz.1", "parents": [], **clock, "fields": {"a": 1}}
    second = {**first, "id": "daaaaaaaaaaaaaaaa.1", "parents": [first["id"]], "fields": {"a": 2}}
    third = {**first, "id": "daaaaaaaaaaaaaaaa.2", "fields": {"b": 3}}
    assert tick(clock, 10**15) == clock
    for ops in ([first, second, third], [third, second, first]):
        found = merged(read_operations([text_of(one) for one in ops]))
        assert dict(found["fields"]) == {"a": "2", "b": "3"}
        assert found["clashes"] == []


@pytest.mark.heavy
@pytest.mark.parametrize("kind", ["record", "entry", "operation"])
def test_ten_thousand_damaged_ones_are_told_apart_and_never_with_an_error(kind):
    fits = {
        "record": record_fault,
        "entry": lambda one: entry_fault(one, False),
        "operation": lambda one: operation_fault(one, False),
    }[kind]
    whys = set()
    refused = 0
    for one in cases(kind, 10_000):
        found = fits(one)
        if found is not None:
            refused += 1
            whys.add(found["why"])
            assert fault_words(found).endswith("."), found
    assert 5_000 < refused < 10_000
    assert {"group", "deep", "name", "unicode", "large", "time", "id", "type"} <= whys


def test_of_ten_thousand_damaged_operations_those_that_fit_are_merged():
    good = [one for one in cases("operation", 10_000) if operation_fault(one, False) is None]
    for at in range(0, len(good), 7):
        some = {one["id"]: one for one in good[at : at + 7]}
        found = merged(read_operations([text_of(one) for one in some.values()]))
        assert found["heads"]


def longest(fits: Callable[[int], bool], most: int) -> int:
    """The greatest number up to `most` that fits, where all below it do."""
    low, high = 0, most
    while low < high:
        middle = (low + high + 1) // 2
        low, high = (middle, high) if fits(middle) else (low, middle - 1)
    return low


def test_the_size_of_a_record_has_an_end_and_up_to_there_it_fits():
    def record(length: int) -> dict[str, Any]:
        return {**RECORD, "notes": "x" * length}

    most = longest(lambda length: record_fault(record(length)) is None, LARGEST)
    assert LARGEST - 2_000 < most < LARGEST
    assert record_fault(record(most + 1)) == {"why": "large", "at": ""}


@pytest.mark.parametrize(
    ("at_the_end", "beyond", "why"),
    [
        ({"wall": LAST_WALL}, {"wall": LAST_WALL + 1}, "clock"),
        ({"count": LAST_COUNT}, {"count": LAST_COUNT + 1}, "clock"),
        ({"wall": 0, "count": 0}, {"wall": -1}, "clock"),
        ({"fields": {"x": nested(98)}}, {"fields": {"x": nested(99)}}, "deep"),
        ({"fields": {"n" * 200: 1}}, {"fields": {"n" * 201: 1}}, "field"),
        ({"what": "w" * 4000}, {"what": "w" * 4001}, "field"),
        ({"group": "g" * 100}, {"group": "g" * 101}, "field"),
        ({"record": "r" + "a" * 64}, {"record": "r" + "a" * 65}, "id"),
        ({"type": "t" * 40}, {"type": "t" * 41}, "type"),
        ({"time": "9998-12-31T23:59:59.999Z"}, {"time": "9999-01-01T00:00:00.000Z"}, "time"),
        (
            {"parents": [f"d{n:016d}.1" for n in range(64)]},
            {"parents": [f"d{n:016d}.1" for n in range(65)]},
            "parents",
        ),
    ],
    ids=lambda one: str(one)[:30],
)
def test_at_every_limit_it_fits_and_one_beyond_is_told(at_the_end, beyond, why):
    assert operation_fault(OPERATION | at_the_end, False) is None
    found = operation_fault(OPERATION | beyond, False)
    assert found is not None
    assert found["why"] == why
    assert fault_words(found).endswith(".")
