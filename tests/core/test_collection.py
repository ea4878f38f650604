"""What the collection says of itself: duplicates, formations, the scale of conditions, dates."""

import csv
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.belief import prepare
from identify.core.condition import condition_rank, conditions, is_better, standard
from identify.core.duplicates import duplicates
from identify.core.formation import incomplete
from identify.core.price import day_number
from tests.core import worlds
from tests.strategies import WORDS_OF_CONDITION, collections, packs, pieces
from tests.table_packs import sharp, table_pack

QUICK = settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
GRADING = Path(__file__).resolve().parents[2] / "fixtures" / "grading.csv"


def engine_of(items: int) -> dict[str, Any]:
    """An engine over items of two variants each."""
    states = [f"s{n}" for n in range(2 * items)]
    rows = [{"x": sharp(states, state)} for state in states]
    pack = table_pack({"x": states}, rows, [1 / len(rows)] * len(rows))
    for place, variant in enumerate(pack["variants"]):
        variant["item"] = place // 2
    return prepare(pack)


def piece(ident: str, variant: int, **more: Any) -> dict[str, Any]:
    of = [{"variant": f"v{variant}", "chance": 1}]
    return {"id": ident, "pack": "table", "item": f"n{variant // 2}", "of": of, **more}


def test_duplicates_by_variant_and_by_item():
    engine = engine_of(2)
    mine = [piece("a", 0), piece("b", 1), piece("c", 0), piece("d", 2)]
    assert duplicates(engine, mine, "variant") == [
        {"item": 0, "variant": 0, "keep": "a", "part_with": ["c"]}
    ]
    assert duplicates(engine, mine, "item") == [
        {"item": 0, "variant": -1, "keep": "a", "part_with": ["c", "b"]}
    ]


@pytest.mark.parametrize(
    "aside", [{"kept": True}, {"purpose": "spare"}, {"purpose": "donor"}, {"trashed": "2024"}]
)
def test_what_is_kept_on_purpose_or_not_owned_is_no_duplicate(aside):
    engine = engine_of(1)
    assert duplicates(engine, [piece("a", 0), piece("b", 0, **aside)], "variant") == []


def test_the_worst_copies_go_first():
    engine = engine_of(1)
    mine = [
        piece("unboxed", 0, condition="good", boxed="no"),
        piece("boxed", 0, condition="good", boxed="yes"),
        piece("best", 0, condition="as new"),
        piece("mended", 0, condition="good", boxed="no", replaced=["wheels"]),
        piece("poor", 0, condition="poor", boxed="yes"),
        piece("unsaid", 0),
    ]
    found = duplicates(engine, mine, "variant")[0]
    assert found["keep"] == "best"
    assert found["part_with"] == ["unsaid", "poor", "mended", "unboxed", "boxed"]


def test_an_uncertain_piece_is_a_copy_of_its_item_only():
    engine = engine_of(1)
    doubtful = piece("b", 0)
    doubtful["of"] = [{"variant": "v0", "chance": 0.6}, {"variant": "v1", "chance": 0.4}]
    mine = [piece("a", 0), doubtful]
    assert duplicates(engine, mine, "variant") == []
    assert [found["keep"] for found in duplicates(engine, mine, "item")] == ["a"]


@pytest.mark.heavy
@QUICK
@given(st.data(), st.sampled_from(["variant", "item"]))
def test_every_duplicate_is_owned_and_named_once(data, by):
    pack = data.draw(packs())
    mine = data.draw(st.lists(pieces(pack), max_size=8, unique_by=lambda p: p["id"]))
    by_id = {p["id"]: p for p in worlds.owned({"pieces": mine})}
    named = []
    for found in duplicates(prepare(pack), mine, by):
        copies = [found["keep"], *found["part_with"]]
        assert len(copies) > 1
        named += copies
        ranks = [standard(by_id[ident]) for ident in [*found["part_with"], found["keep"]]]
        assert ranks == sorted(ranks)
        for ident in copies:
            reading = worlds.readings(pack, by_id[ident])
            at = sum(
                p
                for (item, v), p in reading.items()
                if item == found["item"] and found["variant"] in (-1, v)
            )
            assert at >= 0.95
            assert not by_id[ident]["kept"]
    assert len(named) == len(set(named))


def test_what_is_missing_from_formations_and_sets():
    engine = engine_of(5)
    items = engine["pack"]["items"]
    for i in (0, 1, 2):
        items[i]["formation"] = "Corrick Star"
    items[3]["formation"] = "alone"
    items[4]["contains"] = [0, 3]
    assert incomplete(engine, []) == []
    found = incomplete(engine, [piece("a", 0)])
    assert [(f["sort"], f["item"], f["owned"], f["missing"]) for f in found] == [
        ("set", 4, [0], [3]),
        ("formation", -1, [0], [1, 2]),
    ]
    boxed = incomplete(engine, [piece("a", 0), piece("box", 8)])
    assert [f["sort"] for f in boxed] == ["formation"]
    assert incomplete(engine, [piece("a", 0), piece("b", 3), piece("c", 5), piece("box", 9)]) == []


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_what_is_missing_is_what_would_complete(data):
    pack = data.draw(packs())
    records = data.draw(collections(pack, 4))
    missing = {i for f in incomplete(prepare(pack), records["pieces"]) for i in f["missing"]}
    adds = worlds.completes(pack, records)
    for variant, told in zip(pack["variants"], adds, strict=True):
        assert (variant["item"] in missing) == told


def test_conditions_are_in_order():
    words = conditions()
    assert words == WORDS_OF_CONDITION[1:]
    assert [condition_rank(word) for word in words] == [6, 5, 4, 3, 2, 1]
    assert condition_rank("") == condition_rank("lovely") == 0
    words.clear()
    assert len(conditions()) == 6


@given(st.sampled_from(WORDS_OF_CONDITION), st.sampled_from(WORDS_OF_CONDITION))
def test_nothing_is_better_both_ways(one, other):
    a, b = {"condition": one, "boxed": "yes"}, {"condition": other, "boxed": "no"}
    assert not (is_better(a, b) and is_better(b, a))
    assert not is_better(a, a)


def test_grades_of_other_scales_are_set_against_words_of_the_scale():
    with GRADING.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert {row["condition"] for row in rows} <= set(conditions())
    for scale in {row["scale"] for row in rows}:
        ranks = [condition_rank(row["condition"]) for row in rows if row["scale"] == scale]
        assert ranks == sorted(ranks, reverse=True)
    assert all(row["source"] for row in rows)


@pytest.mark.parametrize(
    ("when", "number"),
    [
        ("1984", 19840000),
        ("1984~", 19840000),
        ("1984-03", 19840300),
        ("1984-03-07?", 19840307),
        ("1984/1986", 19840000),
        ("../1959", 19590000),
        ("195X", 19500000),
        ("19XX", 19000000),
        ("", 0),
        ("a while ago", 0),
        ("198", 0),
    ],
)
def test_dates_have_an_order(when, number):
    assert day_number(when) == number
