"""A sighting only ever adds to a range: nothing that its keeper wrote down is changed by it."""

import copy
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.belief import prepare
from identify.core.ranges.compiling import compiled_range
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.sighted import plain_looks, proposal_of, take_in_proposal
from identify.core.ranges.usable import usable
from identify.core.seen import seen_years
from identify.core.session import problem
from identify.reference.marks_to_merge import marks_to_merge
from tests.own_ranges import own_ranges
from tests.strategies import answers

SLOW = settings(deadline=None, suppress_health_check=list(HealthCheck), max_examples=60)
YEARS = st.sampled_from(["", "1955", "1951", "1957/1961", "1956-21", "1890", "195X", "soon"])
LISTS = ("other_years", "other_from")


@st.composite
def sighted(draw: st.DrawFn, pack: dict[str, Any]) -> dict[str, Any]:
    """A sighting of a piece of this range, right or not."""
    drawn = [draw(answers(feature)) for feature in pack["features"][1:]]
    variants = [variant["id"] for variant in pack["variants"]]
    return {
        "item": draw(st.sampled_from(["", "999", *(item["number"] for item in pack["items"])])),
        "called": draw(st.sampled_from(["", "blue"])),
        "unrecorded": draw(st.booleans()),
        "of": [{"item": "", "variant": draw(st.sampled_from([*variants, "gone"])),
                "chance": draw(st.sampled_from([0.4, 0.94, 0.95, 1.0]))}],
        "answers": draw(st.lists(st.sampled_from(drawn), unique_by=lambda one: one["feature"]))
        if drawn else [],
        "years": draw(YEARS),
        "text": draw(st.sampled_from(["", "A dated box."])),
    }  # fmt: skip


@st.composite
def proposals(draw: st.DrawFn) -> dict[str, Any]:
    """A range, a sighting of it, and what it would change."""
    whole, *records = draw(own_ranges(sound=True))
    found = usable(rows_of_records(whole, records), marks_to_merge())
    rows = found["rows"]
    pack: Any = compiled_range(rows, found["first"], found["last"], marks_to_merge())
    engine = prepare(pack)
    said = draw(sighted(pack))
    said["answers"] = [one for one in said["answers"] if problem(engine, one) == ""]
    session: Any = {
        "pack": pack["id"], "version": "", "scope": {"kind": "", "items": []}, "able": [],
        "missing": [], "answers": plain_looks(said["answers"]),
    }  # fmt: skip
    fields = [feature["id"] for feature in rows["features"]]
    seen = seen_years(engine, session)
    given_to = [rows, pack, said, seen, fields]
    return {"given": given_to, "made": proposal_of(rows, pack, said, seen, fields)}


def taken_in(drawn: dict[str, Any]) -> Any:
    rows = drawn["given"][0]
    mine = copy.deepcopy(rows)
    take_in_proposal(rows, drawn["made"], mine)
    return mine


@SLOW
@given(proposals())
def test_what_was_written_down_stays_and_what_comes_names_its_source(drawn):
    rows, mine = drawn["given"][0], taken_in(drawn)
    for table in ("items", "variants", "changes", "features", "kinds", "sources"):
        for before, after in zip(rows[table], mine[table], strict=False):
            for name, value in before.items():
                if name in LISTS:
                    assert after[name][: len(value)] == value
                    assert all(pair[0] == "sighting" for pair in after[name][len(value) :])
                else:
                    assert after[name] == value
        assert len(mine[table]) - len(rows[table]) in (0, 1)


@pytest.mark.heavy
@SLOW
@given(proposals())
def test_nothing_is_proposed_twice(drawn):
    _, pack, said, seen, fields = drawn["given"]
    again = proposal_of(taken_in(drawn), pack, {**said, "unrecorded": False}, seen, fields)
    if drawn["made"]["why"] == "" and not said["unrecorded"]:
        assert again["why"] == "nothing new"


@SLOW
@given(proposals())
def test_years_are_proposed_of_a_variant_only_where_it_is_surely_that_one(drawn):
    likeliest = drawn["given"][2]["of"][0]
    if any(entry["table"] == "variants" for entry in drawn["made"]["other"]):
        assert likeliest["chance"] >= 0.95
    if drawn["made"]["why"] == "unsure":
        assert likeliest["chance"] < 0.95


@pytest.mark.heavy
@SLOW
@given(proposals())
def test_the_range_can_be_used_with_it(drawn):
    found = usable(taken_in(drawn), marks_to_merge())
    assert len(found["rows"]["variants"]) == len(taken_in(drawn)["variants"])
    compiled_range(found["rows"], found["first"], found["last"], marks_to_merge())


@SLOW
@given(proposals())
def test_one_that_changes_nothing_says_why(drawn):
    made, said = drawn["made"], drawn["given"][2]
    assert (made["why"] != "") == (not made["variants"] and not made["other"])
    assert (made["why"] == "unread") == (said["years"] == "soon")
