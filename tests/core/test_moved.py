"""Records follow what moved in a pack, and what is gone stays named as it was."""

from typing import Any

import pytest

from identify.core.moved import moved

MOVES = [
    {"what": "item", "from": "P 1", "to": "P 1L", "note": ""},
    {"what": "item", "from": "P 0", "to": "P 1", "note": "twice"},
    {"what": "variant", "from": "a", "to": "b", "note": "one and the same"},
    {"what": "item", "from": "P 5", "to": "", "note": "no more"},
]
ENGINE: dict[str, Any] = {
    "pack": {
        "id": "x",
        "items": [{"number": "P 1L"}, {"number": "P 2"}],
        "variants": [{"id": "b", "item": 0}, {"id": "c", "item": 1}],
        "moves": MOVES,
    }
}


def of(**chances: float) -> list[dict[str, Any]]:
    return [{"variant": name, "chance": chance} for name, chance in chances.items()]


@pytest.mark.parametrize(
    ("record", "item", "names", "gone"),
    [
        ({"item": "P 1", "of": of(c=1.0)}, "P 1L", {"c": 1.0}, 0),
        ({"item": "P 0", "of": []}, "P 1L", {}, 0),
        ({"item": "P 1L", "of": of(a=0.5, b=0.25, c=0.25)}, "P 1L", {"b": 0.75, "c": 0.25}, 0),
        ({"item": "P 5", "of": []}, "P 5", {}, 1),
        ({"item": "P 1", "of": of(z=1.0)}, "P 1L", {"z": 1.0}, 1),
    ],
)
def test_a_piece_follows(record, item, names, gone):
    (found,) = moved(ENGINE, [{"id": "r1", "pack": "x", **record}])
    assert found["item"] == item
    assert {one["variant"]: one["chance"] for one in found["of"]} == names
    assert found["gone"] == gone


def test_a_want_and_a_note_follow():
    want = {"id": "r1", "pack": "x", "item": "P 1", "variant": "a"}
    note = {"id": "r2", "pack": "x", "of": [{"item": "P 0", "variant": "a", "chance": 1.0}]}
    found = moved(ENGINE, [want, note])
    assert (found[0]["item"], found[0]["variant"]) == ("P 1L", "b")
    assert found[1]["of"] == [{"chance": 1.0, "variant": "b", "item": "P 1L"}]
    assert "item" not in note, "what was given stays as it was"
    assert note["of"][0]["item"] == "P 0"


def test_what_stands_is_not_named():
    still = {"id": "r1", "pack": "x", "item": "P 2", "of": of(c=1.0)}
    elsewhere = {"id": "r2", "pack": "y", "item": "P 1", "of": []}
    assert moved(ENGINE, [still, elsewhere]) == []


def test_moves_in_a_circle_end():
    round_about = [
        {"what": "item", "from": "A", "to": "B", "note": ""},
        {"what": "item", "from": "B", "to": "A", "note": ""},
    ]
    engine = {"pack": {**ENGINE["pack"], "moves": round_about}}
    (found,) = moved(engine, [{"id": "r1", "pack": "x", "item": "A", "of": []}])
    assert (found["item"], found["gone"]) == ("A", 1)


def test_a_pack_without_moves():
    bare = {name: value for name, value in ENGINE["pack"].items() if name != "moves"}
    (found,) = moved({"pack": bare}, [{"id": "r1", "pack": "x", "item": "P 1", "of": []}])
    assert (found["item"], found["gone"]) == ("P 1", 1)
