"""A range of one's own edited on two devices, and taken back step by step: by the phone's own rules
of keeping and merging, and the compiler that makes the range of what came of it.
"""

import json
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.ranges.compiling import compiled_range
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.usable import usable
from identify.reference.marks_to_merge import marks_to_merge
from tests.own_ranges import TIME, own_ranges
from tests.sampling import sample
from tests.sync.device import Device
from tests.sync.playing import memory
from tests.sync.real_store import Kept
from tests.sync.world import World

pytestmark = pytest.mark.heavy

Json = dict[str, Any]
OF_THE_RECORD = ("id", "type", "made", "changed", "range")
MARKS = marks_to_merge()
slow = settings(
    max_examples=sample(150, 25), deadline=None, suppress_health_check=list(HealthCheck)
)
# an edit: whose, of which record and field, the record that the new value is like, in touch before
edits = st.lists(
    st.tuples(
        st.sampled_from("AB"), st.integers(0, 99), st.integers(0, 99), st.integers(0, 99),
        st.booleans(),
    ),
    max_size=25,
)  # fmt: skip


@contextmanager
def written_down(records: list[Json], seed: int = 0) -> Iterator[World]:
    """A world of devices that all have these records."""
    folder = Path(tempfile.mkdtemp(prefix="ranges", dir=memory()))
    world = World(Kept(folder), seed)
    try:
        for record in records:
            world.records[record["id"]] = record["type"]
            fields = {name: value for name, value in record.items() if name not in ("id", "type")}
            world.write(world.devices["A"], record["id"], fields)
        for name in "AB":
            world.sync(name)
        yield world
    finally:
        world.server.close()
        shutil.rmtree(folder)


def records_of(world: World, device: Device) -> list[Json]:
    """The records as the device has them."""
    return [
        {"id": ident, "type": world.records[ident]}
        | {name: json.loads(text) for name, text in fields.items()}
        for ident, fields in sorted(device.records.items())
    ]


def compiled(world: World, device: Device) -> Any:
    """The range that the device makes of its records."""
    whole, *rows = sorted(records_of(world, device), key=lambda one: one["type"] != "range")
    found = usable(rows_of_records(whole, rows), MARKS)
    return [found, compiled_range(found["rows"], found["first"], found["last"], MARKS)]


def edit(world: World, device: Device, record: int, field: int, like: int) -> tuple[str, Json]:
    """Another value into a field of a record, as one of its like has it, or into or out of the
    trash: what was edited, and what stood there before.
    """
    ident = sorted(device.records)[record % len(device.records)]
    here = device.records[ident]
    fellows = [one for one in sorted(device.records) if world.records[one] == world.records[ident]]
    name = sorted(set(here) - set(OF_THE_RECORD))[field % len(set(here) - set(OF_THE_RECORD))]
    value = json.loads(device.records[fellows[like % len(fellows)]].get(name, '""'))
    if name == "trashed":
        value = TIME if json.loads(here[name]) == "" else ""
    before = {name: json.loads(here[name])}
    world.write(device, ident, {name: value})
    return ident, before


@slow
@given(own_ranges(), edits)
def test_two_devices_come_to_one_range_and_every_value_is_kept(records, changes):
    with written_down(records) as world:
        for whose, record, field, like, touch in changes:
            if touch:
                world.sync(whose)
            edit(world, world.devices[whose], record, field, like)
        world.finish()  # all is equal; every value is shown, offered, or replaced knowingly
        one, other = (compiled(world, world.devices[name]) for name in "AB")
        assert one == other


@slow
@given(own_ranges(), edits)
def test_edits_that_are_undone_and_redone_come_to_the_same_range(records, changes):
    with written_down(records) as world:
        device = world.devices["A"]
        before = compiled(world, device)
        done: list[tuple[str, Json, Json]] = []
        for _, record, field, like, touch in changes:
            ident, was = edit(world, device, record, field, like)
            now = {name: json.loads(device.records[ident][name]) for name in was}
            done.append((ident, was, now))
            if touch:
                world.sync("A")
        after = compiled(world, device)
        for ident, was, _ in reversed(done):
            world.write(device, ident, was)
        world.sync("A")
        assert compiled(world, device) == before
        for ident, _, now in done:
            world.write(device, ident, now)
        world.sync("A")
        assert compiled(world, device) == after
