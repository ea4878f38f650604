"""What cannot be told apart, what would tell, and what each feature is worth."""

from typing import Any

import pytest

from identify.core.alike import worths
from identify.core.belief import prepare_with
from identify.lab.pairs import alike_pairs
from tests.table_packs import EXACT, sharp, table_pack

AB = ["a", "b"]


def engine(rows: list[dict[str, Any]], needs: dict[str, str], priors: list[float]):
    pack = table_pack(dict.fromkeys(rows[0], AB), rows, priors)
    for feature in pack["features"]:
        feature["needs"] = needs.get(feature["id"], "nothing")
    return prepare_with(pack, EXACT)


def told(x: str, inside: str, mark: str) -> dict[str, Any]:
    return {"x": sharp(AB, x), "inside": sharp(AB, inside), "mark": sharp(AB, mark)}


def test_pairs_are_found_with_what_would_tell():
    rows = [told("a", "a", "a"), told("a", "b", "a"), told("b", "a", "b"), told("b", "a", "b")]
    found = alike_pairs(engine(rows, {"inside": "body off", "mark": "loupe"}, [0.1, 0.1, 0.4, 0.4]))
    assert [(pair.one, pair.other) for pair in found] == [(2, 3), (0, 1)], "the commonest first"
    assert found[0].would == []
    assert found[1].would == [(1, pytest.approx(1.0))]


def test_what_differs_in_part_is_told_apart_if_it_is_worth_a_question():
    rows = [{"x": [1.0, 0.0]}, {"x": [0.99, 0.01]}, {"x": [0.8, 0.2]}, {"x": [0.2, 0.8]}]
    found = alike_pairs(engine(rows, {}, [0.25] * 4))
    assert [(pair.one, pair.other) for pair in found] == [(0, 1)]


def test_the_worth_of_a_feature_is_its_bits_at_first():
    rows = [told("a", "a", "a"), told("a", "a", "b"), told("b", "a", "b"), told("b", "a", "b")]
    bits = worths(engine(rows, {}, [0.25] * 4))
    assert bits == pytest.approx([1.0, 0.0, 0.811278], abs=1e-6)
