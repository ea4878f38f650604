"""Ranges of one's own: records and rows say the same, whatever is done to them and undone."""

import copy
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.ranges.compiling import compiled_range
from identify.core.ranges.own_records import records_of_rows, rows_needed
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.usable import usable
from identify.core.session import new_session
from identify.core.types.pack import Pack
from identify.core.types.rows import RangeRows
from identify.phone import demo_packs
from identify.reference.check import checked_pack
from identify.reference.marks_to_merge import marks_to_merge
from tests.own_ranges import own_ranges, row

SLOW = settings(deadline=None, suppress_health_check=list(HealthCheck), max_examples=60)


def compiled(records: list[dict[str, Any]]) -> Pack:
    """The compiled range of its records, the range's first."""
    found = usable(rows_of_records(records[0], records[1:]), marks_to_merge())
    return compiled_range(found["rows"], found["first"], found["last"], marks_to_merge())


def taken_in(rows: RangeRows, whole: dict[str, Any], there: list[Any]) -> list[dict[str, Any]]:
    """The rows as records, beside those that are there."""
    fresh = [f"rfresh{n}" for n in range(rows_needed(rows))]
    return records_of_rows(rows, whole, there, fresh)


@pytest.mark.parametrize("folder", demo_packs(), ids=lambda path: path.name)
def test_a_folder_as_records_and_back_is_the_same(folder):
    rows = checked_pack(folder).rows
    records = taken_in(rows, row("range", "r0"), [])
    back = rows_of_records(records[0], records[1:])
    first, second = ({one["id"]: one["text"] for one in some["drawings"]} for some in (rows, back))
    assert first == second
    assert back | {"drawings": []} == rows | {"drawings": []}


@pytest.mark.heavy
@SLOW
@given(own_ranges(sound=True))
def test_records_as_rows_and_back_compile_to_the_same(records):
    rows = rows_of_records(records[0], records[1:])
    again = taken_in(rows, records[0], [])
    assert rows_of_records(again[0], again[1:]) == rows
    assert compiled(again) == compiled(records)


@pytest.mark.heavy
@SLOW
@given(own_ranges(sound=True))
def test_taken_in_again_every_record_keeps_its_id(records):
    rows = rows_of_records(records[0], records[1:])
    again = taken_in(rows, records[0], records[1:])
    assert {one["id"] for one in again} == {one["id"] for one in records}


@pytest.mark.heavy
@SLOW
@given(own_ranges())
def test_whatever_is_written_down_can_be_identified_from(records):
    pack = compiled(records)
    numbers = [item["number"] for item in pack["items"]]
    assert len(set(numbers)) == len(numbers)
    if pack["variants"]:
        engine = prepare(pack)
        assert assess(engine, new_session(engine))["variants"]


@pytest.mark.heavy
@SLOW
@given(own_ranges(), st.data())
def test_edits_taken_back_compile_to_the_same(records, data):
    before = compiled(copy.deepcopy(records))
    now = copy.deepcopy(records)
    undo = []
    for _ in range(data.draw(st.integers(1, 6))):
        at = data.draw(st.integers(0, len(now) - 1))
        field = data.draw(st.sampled_from(sorted(set(now[at]) - {"id", "type", "range"})))
        undo.append((at, field, now[at][field]))
        donor = data.draw(st.sampled_from(records))
        now[at][field] = copy.deepcopy(donor.get(field, now[at][field]))
        compiled(copy.deepcopy(now))  # stands, whatever was written
    for at, field, value in reversed(undo):
        now[at][field] = value
    assert compiled(now) == before


@pytest.mark.heavy
@SLOW
@given(own_ranges(), st.randoms())
def test_the_order_in_which_records_come_makes_no_difference(records, random):
    rest = records[1:]
    shuffled = copy.deepcopy(rest)
    random.shuffle(shuffled)
    assert compiled([records[0], *shuffled]) == compiled([records[0], *rest])
