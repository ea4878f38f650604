"""The least number of questions."""

from math import log2

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.belief import prepare_with
from identify.core.worth import entropy
from identify.lab.least_questions import huffman, most_answers, most_told, signatures
from tests.table_packs import EXACT, sharp, table_pack

AB = ["a", "b"]
CHANCES = st.lists(st.floats(0.001, 1), min_size=2, max_size=20)


@given(CHANCES, st.integers(2, 6))
def test_huffman_is_within_one_of_the_entropy(weights, answers):
    """Shannon's theorem: H / log2 k <= mean length < H / log2 k + 1."""
    chances = [w / sum(weights) for w in weights]
    bound = entropy(chances) / log2(answers)
    assert bound - 1e-9 <= huffman(chances, answers) < bound + 1


def test_huffman_by_hand():
    assert huffman([0.5, 0.25, 0.125, 0.125]) == pytest.approx(1.75)
    assert huffman([0.25] * 4, 4) == pytest.approx(1.0)
    assert huffman([0.4, 0.3, 0.2, 0.1], 3) == pytest.approx(1.3)
    assert huffman([1.0]) == 0.0


def test_what_is_recorded_alike_counts_as_one():
    rows = [
        {"x": sharp(AB, "a"), "inside": sharp(AB, "a")},
        {"x": sharp(AB, "a"), "inside": sharp(AB, "b")},
        {"x": sharp(AB, "b"), "inside": sharp(AB, "b")},
        {"x": [], "inside": sharp(AB, "b")},
    ]
    pack = table_pack({"x": AB, "inside": AB}, rows, [0.1, 0.2, 0.3, 0.4])
    pack["features"][1]["needs"] = "body off"
    assert sorted(signatures(pack)) == pytest.approx([0.3, 0.3, 0.4])


def test_no_question_tells_more_than_its_answers():
    states = [f"s{n}" for n in range(8)]
    rows = [{"x": sharp(AB, "a"), "many": sharp(states, s)} for s in states]
    pack = table_pack({"x": AB, "many": states}, rows, [0.125] * 8)
    assert most_answers(pack) == 8
    assert most_told(prepare_with(pack, EXACT)) == pytest.approx(3.0)
    noisy = most_told(prepare_with(pack, {**EXACT, "sure": 0.05}))
    assert noisy == pytest.approx(3.0 - entropy([0.95] + [0.05 / 7] * 7))
    pack["features"][1]["needs"] = "loupe"
    assert (most_answers(pack), most_told(prepare_with(pack, EXACT))) == (2, pytest.approx(1.0))
