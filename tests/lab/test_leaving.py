"""What is left out of a pack is gone from what the engine knows; and what is said of it counts."""

import random
from typing import Any

import msgspec
import pytest
from scipy.stats import binomtest

from identify.core.belief import prepare
from identify.lab.intervals import wilson
from identify.lab.leaving import (
    Left,
    Taken,
    by_item,
    confused,
    left_out,
    none_of_these,
    pack_without,
)
from tests.kept_site import compiled_demo_packs
from tests.open_world.leaving import compiled_without, demo


@pytest.fixture(scope="module")
def pack() -> Any:
    return compiled_demo_packs()["tarrowby"]


@pytest.mark.heavy
def test_a_pack_without_an_item_is_as_one_that_never_had_it(pack, tmp_path):
    """The rows, their priors, the backgrounds and what is learned: as compiled from a folder in
    which nothing says a word of the item.
    """
    number = "61A"
    gone = {
        place
        for place, variant in enumerate(pack["variants"])
        if pack["items"][variant["item"]]["number"] == number
    }
    ours = pack_without(pack, gone)
    theirs = msgspec.to_builtins(compiled_without(demo("tarrowby"), tmp_path, items=[number]))
    assert len(ours["rows"]["prior"]) == len(theirs["rows"]["prior"])
    assert ours["rows"]["prior"] == pytest.approx(theirs["rows"]["prior"], abs=2e-6)
    for mine, other in zip(ours["backgrounds"], theirs["backgrounds"], strict=True):
        assert mine == [pytest.approx(each, abs=1e-5) for each in other]
    assert pack["rows"]["variant"] != ours["rows"]["variant"]


@pytest.mark.heavy
def test_what_is_left_out_is_never_named(pack):
    reader: Any = prepare(pack)
    taken = left_out(random.Random(1), reader, by_item(pack)[:3], 3, lambda: None)
    assert len(taken) == 3
    for each in taken:
        assert pack["variants"][each.truth]["item"] < 3
        assert each.truth != each.name


def test_nothing_is_said_of_a_range_too_small_to_take_from(pack):
    first = [place for place, v in enumerate(pack["variants"]) if v["item"] > 0]
    reader: Any = prepare(pack_without(pack, set(first)))
    small = {**reader["pack"], "variants": pack["variants"][: len(pack["variants"]) - len(first)]}
    reader = {**reader, "pack": small}
    assert none_of_these(random.Random(1), reader, 0.25, 3, lambda: None) is None
    assert left_out(random.Random(1), reader, by_item(small), 3, lambda: None) == []


def test_each_pair_is_listed_once_with_its_highest_chance():
    low, high, other = Taken(1, 2, 0.3), Taken(1, 2, 0.8), Taken(3, 2, 0.5)
    left = [Left("an item", [low, other]), Left("a variant", [high])]
    assert confused(left, 10) == [high, other]
    assert confused(left, 1) == [high]
    assert [each.wrong for each in left] == [0, 0]


@pytest.mark.parametrize(("hits", "count"), [(0, 10), (3, 10), (10, 10), (93, 120)])
def test_intervals_are_those_of_scipy(hits, count):
    theirs = binomtest(hits, count).proportion_ci(0.95, "wilson")
    assert wilson(hits, count) == pytest.approx((theirs.low, theirs.high), abs=1e-12)
