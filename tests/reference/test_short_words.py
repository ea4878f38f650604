"""The short words on a picture card: they are there, they fit, and they tell the states apart."""

import json

import pytest

from identify.core.joining import join
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.new_pack import TEMPLATE
from tests.kept_site import compiled_demo_packs
from tests.reference.small_pack import changed, write

PACKS = compiled_demo_packs()
PACKS[TEMPLATE.name] = json.loads(pack_bytes(compile_pack(TEMPLATE)))


def fits(text):
    return 0 < len(text) <= 22 and len(text.split()) <= 3


@pytest.mark.parametrize("name", PACKS)
def test_every_card_of_a_range_that_ships_has_them(name):
    for feature in PACKS[name]["features"]:
        assert fits(feature.get("title", "")), feature["id"]
        captions = [state.get("caption", state["name"]) for state in feature["states"]]
        assert [each for each in captions if not fits(each)] == [], feature["id"]
        assert len(set(captions)) == len(captions), feature["id"]


def test_they_are_compiled_as_they_stand_and_left_out_where_there_are_none(tmp_path):
    files = changed("features.toml", 'name = "Green" }', 'name = "Green", caption = "Grass" }')
    files["features.toml"] = files["features.toml"].replace(
        'name = "Livery"\n', 'name = "Livery"\ntitle = "Which livery?"\n'
    )
    files["range.toml"] = files["range.toml"].replace(
        'plural = "Coaches"\n', 'plural = "Coaches"\ncaption = "Carriage"\n'
    )
    pack = json.loads(pack_bytes(compile_pack(write(tmp_path, files))))
    kind, *_, livery = pack["features"]
    assert (kind["title"], livery["title"]) == ("What is it?", "Which livery?")
    assert [state.get("caption") for state in livery["states"]] == ["Grass", None]
    assert [state.get("caption") for state in kind["states"]] == [None, "Carriage", None]
    assert [each.get("caption") for each in pack["kinds"]] == [None, "Carriage", None]
    assert [each.get("title") for each in pack["features"][1:-1]] == [None, None, None]


def test_ranges_that_are_searched_together_keep_them():
    packs = list(compiled_demo_packs().values())
    joined = join(packs)
    told = {feature["id"]: feature for feature in joined["features"]}
    for pack in packs:
        for feature in pack["features"][1:]:
            there = told[f"{pack['id']}_{feature['id']}"]
            assert there["title"] == feature["title"]
            captions = [state.get("caption") for state in feature["states"]]
            assert [state.get("caption") for state in there["states"]][: len(captions)] == captions
    for feature in joined["features"]:
        assert fits(feature.get("title", "")), feature["id"]
