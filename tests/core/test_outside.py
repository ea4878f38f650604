"""Pieces and wants in no range: found, twice, and known by a range later."""

from typing import Any

import pytest

from identify.core.belief import prepare
from identify.core.outside import known_now, outside_alike, outside_named
from tests.kept_site import compiled_demo_packs


def piece(name: str, **more: Any) -> dict[str, Any]:
    plain = {"id": f"r{name}", "type": "piece", "item": "", "called": name, "condition": ""}
    return plain | {"kept": False, "purpose": "", "boxed": "", "missing": [], "replaced": []} | more


def test_capitals_spaces_and_signs_make_no_other_piece():
    pieces = [
        piece("304 Brake coach", condition="good"),
        piece("12 signal box"),
        piece("304 brake-coach", id="rtwin", condition="fair"),
    ]
    [found] = outside_alike(pieces)
    assert (found["keep"], found["part_with"]) == ("r304 Brake coach", ["rtwin"])


@pytest.mark.parametrize("more", [{"kept": True}, {"purpose": "spare"}, {"item": "304"}])
def test_what_is_kept_on_purpose_a_spare_or_in_a_range_is_no_copy(more):
    assert outside_alike([piece("304 coach"), piece("304 coach", id="rtwin", **more)]) == []


def test_what_is_called_nothing_is_no_copy_of_anything():
    assert outside_alike([piece(""), piece("", id="rtwin"), piece(" - ")]) == []


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("304", ["r304 brake coach"]),
        ("30", ["r304 brake coach"]),
        ("coach brake", ["r304 brake coach"]),
        ("bra", ["r304 brake coach"]),
        ("ake", []),
        ("304 signal", []),
        ("", []),
    ],
)
def test_a_number_or_words_find_it(text, found):
    assert outside_named([piece("304 brake coach"), piece("12 signal box")], text) == found


def test_a_range_that_comes_to_know_it_is_told_by_number_then_by_name():
    pack = compiled_demo_packs()["pellmarsh"]
    engine = prepare(pack)
    for place, item in enumerate(pack["items"]):
        alone = [one for one in pack["items"] if one["number"] == item["number"]]
        if len(alone) == 1 and any(c.isdigit() for c in item["number"]):
            squeezed = item["number"].replace(" ", "").lower()
            assert known_now(engine, piece(f"{squeezed} from a box of odds")) == [place]
            assert known_now(engine, piece(f"grey {item['number']}, odd wheels")) == [place]
    named = known_now(engine, piece(pack["items"][3]["name"]))
    assert 3 in named
    assert known_now(engine, piece("QX 99999 unheard of")) == []
    assert known_now(engine, piece("P 1", item="P 1")) == []
