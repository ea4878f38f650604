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
from identify.core.ranges.together import put_together, said_by
from identify.core.ranges.usable import names_unknown, usable
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


def test_rows_of_one_key_taken_in_again_stay_as_many():
    twice = [
        ("range_kind", {"name": "New kind", "plural": "New kinds"}), ("range_part", {"swap": 0.1}),
        ("range_source", {"what": "A book"}), ("range_feature", {"name": "Roof"}),
        ("range_state", {"feature": "ra"}), ("range_item", {"number": "101", "kind": "rkindb"}),
        ("range_variant", {"item": "ritema"}),
    ]  # fmt: skip
    records = [row("range", "r0", key="ostwick", name="Ostwick")]
    for sort, fields in twice:
        stem = "r" if sort == "range_feature" else sort.replace("range_", "r")
        records += [row(sort, stem + one, range="r0", key="new", **fields) for one in "ab"]
    rows = rows_of_records(records[0], records[1:])
    again = taken_in(rows, records[0], records[1:])
    first, second = ({one["id"] for one in some} for some in (records, again))
    assert first <= second
    extra = [one for one in again if one["id"] not in first]
    assert [one["type"] for one in extra] == ["range_variant"], "the item that had none has one"
    assert rows_of_records(again[0], again[1:])["kinds"] == rows["kinds"]


def half(number: str, years: str, seen: list[str]) -> list[dict[str, Any]]:
    """A range with one item, of which a feature was looked at."""
    return [
        row("range", "r0", key="ostwick", name="Ostwick", years="1950/1959"),
        row("range_kind", "rkind", range="r0", key="coach", name="Coach", plural="Coaches"),
        row("range_source", "rbook", range="r0", key="book", what="A book", trust=0.8),
        row("range_feature", "rroof", range="r0", key="roof", name="Roof", seconds=2),
        row("range_state", "rgrey", range="r0", feature="rroof", key="grey", name="Grey"),
        row("range_state", "rwhite", range="r0", feature="rroof", key="white", name="White"),
        row("range_item", "ritem", range="r0", number=number, name="Brake coach", kind="rkind",
            years=years, source="rbook", seen_rroof=seen),
        row("range_variant", "rone", range="r0", item="ritem", key="one", name="As made"),
    ]  # fmt: skip


def joined(mine: list[dict[str, Any]], theirs: list[dict[str, Any]]) -> Any:
    rows, other = (rows_of_records(one[0], one[1:]) for one in (mine, theirs))
    return put_together(rows, other, "who_anna", "Anna")


def test_two_halves_make_one():
    out = joined(half("101", "1955", ["rgrey"]), half("102", "1957", ["rwhite"]))
    assert (out["added"], out["differ"]) == (1, 0)
    assert [item["number"] for item in out["rows"]["items"]] == ["101", "102"]
    assert len(out["rows"]["features"]) == len(out["rows"]["sources"]) - 1 == 1
    pairs = [(variant["id"], variant["item"]) for variant in out["rows"]["variants"]]
    assert pairs == [("one", "101"), ("one_", "102")]


def test_where_two_say_different_things_both_are_kept_with_who_says_so():
    out = joined(half("101", "1955", ["rgrey"]), half("101", "1957", ["rwhite"]))
    [item] = out["rows"]["items"]
    assert (out["added"], out["differ"]) == (0, 2)
    assert (item["years"], item["other_years"]) == ("1955", [["book", "1957"]])
    assert item["cells"] == [["roof", "grey|white"]]
    assert item["note"] == "Anna: Roof, White"


def test_what_only_the_other_knows_is_taken():
    out = joined(half("101", "", []), half("101", "1957", ["rwhite"]))
    [item] = out["rows"]["items"]
    assert (out["added"], out["differ"]) == (0, 0)
    assert (item["years"], item["source"], item["cells"]) == ("1957", "book", [["roof", "white"]])


def test_notes_contents_and_former_numbers_that_only_the_other_has_come_in():
    mine, theirs = half("101", "1955", []), half("101", "1955", [])
    mine[-2] |= {"note": "Seldom seen", "carried": ["7", "8"]}
    theirs[-2] |= {"note": "Boxed", "carried": ["8", "9"], "formation": "Night train"}
    theirs[-1] |= {"key": "other", "note": "With a lamp"}
    mine.append(row("range_move", "rm", range="r0", what="item", was="1", now="101"))
    theirs.append(row("range_move", "rm", range="r0", what="item", was="1", now="101", note="!"))
    theirs.append(row("range_move", "rn", range="r0", what="item", was="2", now="101"))
    theirs.append(row("range_move", "ro", range="r0", what="variant", was="old", now="other"))
    rows = joined(mine, theirs)["rows"]
    [item], [variant] = rows["items"], rows["variants"]
    assert item["note"] == "Seldom seen\nAnna: Boxed"
    assert (item["carried"], item["formation"]) == (["7", "8", "9"], "Night train")
    assert (variant["id"], variant["note"]) == ("one", "With a lamp")
    moves = [(move["what"], move["was"], move["now"], move["note"]) for move in rows["moves"]]
    assert moves[:2] == [("item", "1", "101", ""), ("item", "2", "101", "")]
    assert moves[2:] == [("variant", "old", "one", "")]


def test_who_wrote_a_range_stands_where_it_names_no_source():
    records = half("101", "1955", [])
    records.append(row("range_item", "rb", range="r0", number="102", name="Van", kind="rkind"))
    records.append(row("range_variant", "rv", range="r0", item="rb", key="v", years="1957"))
    rows = rows_of_records(records[0], records[1:])
    said_by(rows, "who_anna", "Anna")
    assert [one["what"] for one in rows["sources"]] == ["A book", "Anna"]
    assert {one["number"]: one["source"] for one in rows["items"]} == {
        "101": "book", "102": "who_anna",
    }  # fmt: skip
    assert {one["id"]: one["source"] for one in rows["variants"]} == {"one": "", "v": "who_anna"}


def test_names_that_a_range_does_not_have_are_counted():
    records = half("101", "1955", ["rgrey"])
    rows = rows_of_records(records[0], records[1:])
    assert names_unknown(rows) == 0
    rows["items"][0] |= {"kind": "coatch", "source": "bok", "cells": [["roof", "gray"]]}
    rows["variants"][0]["item"] = "1O1"
    assert names_unknown(rows) == 4
    rows["items"][0]["years"] = "some time"
    assert names_unknown(rows) == 4, "years that cannot be read are kept as they are"


@pytest.mark.heavy
@SLOW
@given(own_ranges(sound=True))
def test_put_together_with_itself_a_range_stays_as_it_was(records):
    before = rows_of_records(records[0], records[1:])
    out = joined(records, records)
    assert (out["added"], out["differ"]) == (0, 0)
    who = [source for source in out["rows"]["sources"] if source["id"] != "who_anna"]
    assert out["rows"] | {"sources": who} == before


@pytest.mark.heavy
@SLOW
@given(own_ranges(sound=True), own_ranges(sound=True))
def test_put_together_nothing_that_either_wrote_is_lost(mine, theirs):
    one, other = (rows_of_records(some[0], some[1:]) for some in (mine, theirs))
    wanted = {item["number"] for item in (*one["items"], *other["items"])}
    years = {text for rows in (one, other) for text in written_years(rows)}
    out = joined(mine, theirs)
    assert {item["number"] for item in out["rows"]["items"]} == wanted
    assert years <= written_years(out["rows"])
    records = taken_in(out["rows"], mine[0], mine[1:])
    assert len({record["id"] for record in records}) == len(records)


def written_years(rows: RangeRows) -> set[str]:
    """Every year that stands at an item or a variant."""
    out = set()
    for entry in (*rows["items"], *rows["variants"]):
        out |= {entry["years"], *(pair[1] for pair in entry["other_years"])}
    return out - {""}
