"""Finding by number or name, with characters misread."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rapidfuzz.distance import OSA

from identify.core.belief import prepare
from identify.core.look_up import LOOK_ALIKES, canonical, find, plain, slips
from tests.table_packs import table_pack

ITEMS = [
    ("P 21", "Tank locomotive 'Bracken'", ["47 106"]),
    ("K405", "Mail coach", []),
    ("K 4O5B", "Mail coach, blue", []),
    ("88/1", "Heron of Vale", ["Heron"]),
]


@pytest.fixture(scope="module")
def engine():
    pack = table_pack({"a": ["x"]}, [{"a": [1.0]}] * 4, [0.25] * 4)
    for item, (number, name, carried) in zip(pack["items"], ITEMS, strict=True):
        item.update(number=number, name=name, carried=carried)
    return prepare(pack)


@pytest.mark.parametrize(
    ("text", "first", "how"),
    [
        ("P 21", 0, "number"),
        ("p21", 0, "number"),
        ("P2I", 0, "misread"),
        ("PZ1", 0, "misread"),
        ("K4O5", 1, "misread"),
        ("K40S", 1, "misread"),
        ("K405B", 2, "misread"),
        ("K40", 1, "number"),
        ("BB/I", 3, "misread"),
        ("47106", 0, "carried"),
        ("471O6", 0, "misread"),
        ("bracken", 0, "name"),
        ("brakcen", 0, "name"),
        ("tank loco", 0, "name"),
        ("coach mail blue", 2, "name"),
        ("herron", 3, "misread"),
        ("vale heron", 3, "name"),
        ("K4055", 1, "misread"),
    ],
)
def test_it_finds(engine, text, first, how):
    hits = find(engine, text, 5)
    assert (hits[0]["item"], hits[0]["how"]) == (first, how), hits


@pytest.mark.parametrize("text", ["", " ", "!?", "zzzzzz", "tank zebra", "9"])
def test_it_finds_nothing_rather_than_anything(engine, text):
    assert find(engine, text, 5) == []


def test_an_exact_number_comes_before_a_misread_one(engine):
    hits = find(engine, "K405", 5)
    assert [hit["item"] for hit in hits[:2]] == [1, 2]
    assert len(find(engine, "K405", 1)) == 1


@pytest.mark.parametrize("pair", LOOK_ALIKES)
def test_every_look_alike_is_forgiven_both_ways(engine, pair):
    assert canonical(pair[0]) == canonical(pair[1])
    engine["pack"]["items"][1]["number"] = f"K{pair[0]}7"
    assert find(prepare(engine["pack"]), f"k{pair[1]}7", 1)[0]["item"] == 1
    engine["pack"]["items"][1]["number"] = "K405"


@given(st.text("AB01", max_size=7), st.text("AB01", max_size=7), st.integers(0, 3))
def test_slips_are_the_optimal_string_alignment_distance(one, other, most):
    """Against rapidfuzz, an independent implementation."""
    apart = OSA.distance(one, other)
    found = slips(one, other, most)
    assert found == apart if apart <= most else found > most


def test_slips_on_published_examples():
    """kitten/sitting is the textbook example of Levenshtein (1966) distance 3; CA/ABC is that of
    optimal string alignment, 3, against 2 without its restriction. From memory.
    """
    assert slips("KITTEN", "SITTING", 3) == 3
    assert slips("CA", "ABC", 3) == 3


@given(st.text(max_size=20))
def test_plain_text_stays_plain(text):
    assert plain(plain(text)) == plain(text)
    assert canonical(canonical(text)) == canonical(text)
