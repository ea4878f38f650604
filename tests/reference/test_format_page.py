"""The page on the format of a pack names the very fields that are read."""

import re
import tomllib
from pathlib import Path

import msgspec
import pytest

from identify.reference.csv_files import FILES, MOVES
from identify.reference.entries import (
    Caution,
    Change,
    Entry,
    Feature,
    Item,
    Kind,
    Move,
    Part,
    Range,
    Source,
    State,
    Variant,
)
from identify.reference.toml_files import FEATURES, RANGE

PAGE = Path(__file__).resolve().parents[2] / "identify" / "reference" / "README.md"
BOOKKEEPING = {"line", "lines", "cells"}  # where an entry stands, and its columns for features


def fields(entry: type[Entry]) -> list[str]:
    """The names of an entry's fields as its file writes them, in order."""
    own = [field.encode_name for field in msgspec.structs.fields(entry)]
    return [name for name in own if name not in BOOKKEEPING]


def example(file: str) -> dict:
    """The example that the page gives of a TOML file."""
    text = PAGE.read_text("utf-8").split(f"**{file}**", 1)[1]
    (block,) = re.findall(r"(?s)\A[^\n]*\n\n((?:    [^\n]*\n|\n)+)", text)
    return tomllib.loads(re.sub(r"(?m)^    ", "", block))


@pytest.mark.parametrize("entry", [Item, Variant, Change, Source, Move])
def test_the_columns_of_a_table(entry):
    file = {**FILES, Move: MOVES}[entry]
    text = PAGE.read_text("utf-8").split(f"**{file}**", 1)[1].split("\n\n", 1)[0]
    named = re.search(r"`(\w+(?:,\w+)+)`", text)
    assert named, f"{file}: the page gives no line of columns"
    assert named[1].split(",") == fields(entry)


def test_the_keys_of_the_range():
    told = example(RANGE)
    lists = {"kinds": Kind, "parts": Part, "cautions": Caution}
    assert set(told) - set(lists) == set(fields(Range))
    for name, entry in lists.items():
        assert set(told[name][0]) == set(fields(entry))


def test_the_keys_of_a_feature():
    (told,) = example(FEATURES)["feature"]
    assert set(told) == set(fields(Feature))
    assert {key for state in told["states"] for key in state} == set(fields(State))
