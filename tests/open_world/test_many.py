"""Many sessions by the compiled engine come to what the engine in Python comes to."""

import random

import msgspec
import orjson
import pytest

from identify.core.belief import prepare
from identify.reference.compile import compile_pack
from tests.open_world.judge import identify
from tests.open_world.leaving import demo
from tests.open_world.many import Job, ended
from tests.open_world.world import Conditions, World

pytestmark = pytest.mark.heavy


def test_both_engines_are_judged_alike(tmp_path):
    like = Conditions(misread=0.0)  # what is read is then the same in both
    world = World(msgspec.to_builtins(compile_pack(demo("tarrowby"))))
    engine = prepare(world.pack)
    rng = random.Random(6)
    rows = list(range(len(world.kinds)))
    pieces = [world.piece(rng, rows, like) for _ in range(4)]
    done = ended(rng, world, [Job(world.pack, pieces)], like, tmp_path)
    for piece, each in zip(pieces, done, strict=True):
        out = identify(rng, world, engine, piece, like)
        assert each.truth == out.truth
        assert each.name == out.name
        assert each.chance == pytest.approx(out.chance, abs=1e-9)
        assert each.unrecorded == pytest.approx(out.unrecorded, abs=1e-9)
        assert each.stop == out.view["stop"]


def test_a_part_that_is_not_there_is_said_to_be_missing_and_not_answered(tmp_path):
    like = Conditions(misread=0.0, boxless=1.0)
    world = World(msgspec.to_builtins(compile_pack(demo("tarrowby"))))
    rng = random.Random(7)
    pieces = [world.piece(rng, list(range(len(world.kinds))), like) for _ in range(12)]
    done = ended(rng, world, [Job(world.pack, pieces)], like, tmp_path)
    assert all(each.asked >= 1 and each.stop for each in done)
    [outcomes] = orjson.loads((tmp_path / "outcomes.json").read_bytes())
    looked_at = {part for outcome in outcomes for part, _ in outcome["replaced"]}
    assert looked_at
    assert "box" not in looked_at
