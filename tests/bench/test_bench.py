"""The bench at tiny sizes: every part runs, and its figures have the shape that is promised."""

import importlib.util
from contextlib import nullcontext

import jsonschema
import msgspec
import pytest

from identify.lab.generating import made_pack
from identify.reference.compiled import pack_bytes
from tests.bench import running
from tests.bench.__main__ import main
from tests.bench.engine import answers_at
from tests.bench.own_ranges import compile_table, compile_times
from tests.bench.running import Sizes, left_out, run, saved
from tests.bench.stall import played
from tests.bench.stall_table import stall_table
from tests.bench.table import table

pytestmark = pytest.mark.heavy

NUMBER = {"type": "number", "minimum": 0}
NUMBERS = ["core", "floor", "core_to_floor", "simd", "core_to_lowest", "reading", "python", "peer",
           "peer_to_core", "prepare"]  # fmt: skip
SHAPE = {
    "type": "object",
    "required": [
        "machine",
        "seed",
        "answers",
        "by_features",
        "taps",
        "cold",
        "look_up",
        "packs",
        "sync",
    ],
    "properties": {
        "answers": {
            "minItems": 2,
            "items": {
                "required": [*NUMBERS, "by_answers", "rows", "features"],
                "properties": {
                    **dict.fromkeys(NUMBERS, NUMBER),
                    # null where the floor has other questions than the engine
                    "difference": {"type": "number", "maximum": 1e-9},
                    "by_answers": {"minItems": 3, "items": {"required": ["core", "rows_left"]}},
                },
            },
        },
        "by_features": {
            "prefixItems": [
                {"properties": {"features": {"const": 6}, "rows": {"const": 200}}},
                {"properties": {"features": {"const": 41}, "core": NUMBER}},
            ],
        },
        "taps": {
            "minItems": 2,
            "items": {
                "required": ["pack", "taps", "first", "p50", "p98", "heap_mb"],
                "properties": {"p98": NUMBER, "taps": {"type": "integer", "minimum": 3}},
            },
        },
        "cold": {
            "required": ["median", "slowest", "runs", "kept", "sent"],
            "properties": {
                "kept": {"type": "number", "minimum": 1000},
                "sent": {
                    "properties": {
                        "first": {"maximum": 150_000},
                    }
                },
            },
        },
        "look_up": {"required": ["names", "python", "p50", "p98", "first"]},
        "packs": {"minItems": 3},
        "sync": {
            "required": ["push_s", "pull_s", "photos_s"],
            "properties": {"operations": {"const": 520}, "pulled": {"const": 520}},
        },
        "memory_mb": NUMBER,
    },
}
TINY = Sizes(
    rows=(60, 200),
    pieces=1,
    features=(5, 40),
    rounds=1,
    tapped=1,
    pause=100,
    starts=1,
    names=20,
    operations=520,  # more than a page of what the server hands out
    photos=1,
)


def test_every_part_runs_and_says_so(tmp_path, playwright, monkeypatch):
    said = []
    monkeypatch.setattr(running, "browsers", lambda: nullcontext(playwright))
    found = run(TINY, 1, said.append)
    saved(found, tmp_path / "bench.json")
    jsonschema.validate(msgspec.json.decode((tmp_path / "bench.json").read_bytes()), SHAPE)
    assert found["left_out"] == []
    text = table(found)
    assert "60" in text
    assert "As features are added" in text
    assert "demo" in text
    heard = "".join(said)
    for part in ("an answer at 60 rows", "taps: demo", "cold starts", "look-up", "sync"):
        assert part in heard


def test_the_minute_at_the_stall_is_played(playwright):
    """One piece in every way, and a box of two: each ends in a note, and its figures add up."""
    found = played(playwright, 1, 1, lambda: None, box=2)
    assert [(one["way"], one["collection"]) for one in found["ways"]] == [
        ("kind", "empty"), ("number", "empty"), ("kind", "demo"), ("number", "demo"),
    ]  # fmt: skip
    for one in found["ways"]:
        assert one["questions"][0] + 2 <= one["taps"][0]
        assert one["seconds"][0] > one["practised"][0] > 0
        assert one["reading"] + one["looking"] < one["seconds"][0]
    assert [one["task"] for one in found["tasks"]][-1] == "a box of 2 wagons"
    text = stall_table(found)
    assert "kind first, empty collection" in text
    assert "is it owned?" in text


def test_what_is_not_here_is_named(monkeypatch):
    """The peer and the browser are left out where they are not installed; the rest is measured."""
    monkeypatch.setattr(importlib.util, "find_spec", lambda name: None)
    first, second, third = left_out()
    assert "playwright" in first
    assert "SIMD" in second
    assert "scikit-learn" in third
    assert "pip install" in first
    found = answers_at(pack_bytes(made_pack(60)), None, None, 1, 1)
    assert found["python"] > 0
    assert found["peer"] is None


@pytest.mark.parametrize("rows", ["0", "-3", "many", "9999999"])
def test_a_number_of_rows_that_cannot_be_is_told(rows, capsys):
    with pytest.raises(SystemExit):
        main(["--rows", rows])
    assert "is not a whole number from 1" in capsys.readouterr().err


def test_ranges_of_ones_own_are_made_at_each_size(playwright):
    figures = compile_times(playwright, 1, (10, 40))
    assert [one["variants"] for one in figures] == [10, 40]
    assert all(one["python"] > 0 and one["compiled"] > 0 for one in figures)
    assert "| 40 |" in compile_table(figures)
