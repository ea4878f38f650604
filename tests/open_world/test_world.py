"""People and pieces of the world outside the engine, as they are said to be."""

import random

import msgspec
import pytest

from identify.reference.compile import compile_pack
from tests.open_world.__main__ import CARELESS, FINISH
from tests.open_world.leaving import demo
from tests.open_world.world import Conditions, World


@pytest.fixture(scope="module")
def world() -> World:
    return World(msgspec.to_builtins(compile_pack(demo("tarrowby"))), FINISH)


@pytest.mark.heavy
def test_who_is_careless_is_so_throughout_and_all_people_misread_as_often_as_declared(world):
    rng = random.Random(3)
    rates = [world.slips(rng, CARELESS) for _ in range(20000)]
    assert set(rates) == {CARELESS.misread, CARELESS.misread_by_careless}
    assert sum(rates) / len(rates) == pytest.approx(Conditions().misread, abs=0.001)


def test_a_repainted_piece_has_another_finish_and_all_else_as_it_was(world):
    rng = random.Random(4)
    finish = [part["id"] for part in world.pack["parts"]].index("finish")
    like = Conditions(repainted=1.0, swaps=0.0)
    rows = list(range(len(world.kinds)))
    for _ in range(30):
        found = world.piece(rng, rows, like)
        assert found.swapped == {finish}
        for feature, made, now in zip(world.pack["features"], found.made, found.now, strict=True):
            assert feature["id"] in FINISH or made == now
