"""What does not go together in a range of one's own is told at its record."""

from hypothesis import given

from identify.core.ranges.faults import faults_of_records
from tests.own_ranges import own_ranges, row

WHOLE = row("range", "r0", key="ostwick", name="Ostwick", years="1950/1959")
KIND = row("range_kind", "k", range="r0", key="coach", name="Coach", plural="Coaches")


def item(ident, number, **fields):
    return row("range_item", ident, range="r0", number=number, name="Coach", kind="k", **fields)


def told(*records):
    """(id, why, other) of each fault."""
    found = faults_of_records(WHOLE, [KIND, *records])
    return [(one["id"], one["why"], one["other"]) for one in found]


def test_a_number_twice_is_told_at_both():
    assert told(item("i1", "104"), item("i2", "104")) == [
        ("i2", "number twice", "i1"), ("i1", "number twice", "i2"),
    ]  # fmt: skip


def test_a_year_outside_the_life_is_told_at_the_item_and_at_the_variant():
    variant = row("range_variant", "v1", range="r0", item="i1", key="v1", years="1975")
    assert told(item("i1", "104", years="1961")) == [("i1", "outside", "")]
    assert ("v1", "outside", "") in told(item("i1", "104"), variant)
    late = row("range_variant", "v1", range="r0", item="i1", key="v1", years="1958")
    assert told(item("i1", "104", years="1951/1953"), late) == [("v1", "outside item", "i1")]


def test_a_variant_whose_item_is_gone_is_told_with_the_item():
    gone = item("i1", "104", trashed="2026-01-01T00:00:00.000Z")
    variant = row("range_variant", "v1", range="r0", item="i1", key="v1")
    assert told(gone, variant) == [("v1", "no item", "i1")]


def test_nothing_is_told_of_what_goes_together():
    variant = row("range_variant", "v1", range="r0", item="i1", key="v1", years="1952")
    assert told(item("i1", "104", years="1951/1953"), variant) == []


@given(own_ranges())
def test_every_fault_is_at_a_record_that_is_there(records):
    whole, *rest = records
    ids = {one["id"] for one in rest if one["trashed"] == ""} | {whole["id"]}
    for fault in faults_of_records(whole, rest):
        assert fault["id"] in ids
