"""What a portrait shows of a variant: recorded states, names, and nothing that is neither."""

import msgspec
import pytest

from identify.core.looks import LAYERS, colour_in, look_by_name, look_fits
from identify.core.portraits import portrait, sitting
from tests.kept_site import compiled_demo_packs

PACKS = compiled_demo_packs()


def shown(pack, ident, answers=()):
    place = [each["id"] for each in pack["variants"]].index(ident)
    return portrait(pack, sitting(pack), [place], list(answers))


def layer(picture, name):
    found = [each for each in picture["layers"] if each["layer"] == name]
    assert len(found) < 2
    return found[0] if found else None


def test_a_recorded_state_is_known_and_looks_as_the_range_says():
    told = layer(shown(PACKS["pellmarsh"], "p1_a"), "body")
    assert (told["look"], told["recorded"]) == ("tank_engine", "known")


def test_a_running_change_within_the_years_leaves_several_likeliest_first():
    told = layer(shown(PACKS["pellmarsh"], "p8_b"), "coupling")
    assert (told["looks"], told["recorded"]) == (["loop", "bar"], "several")


def test_what_was_seen_of_the_piece_settles_what_is_recorded_as_several():
    seen = {"feature": "coupling", "how": "sure", "states": ["bar"]}
    told = layer(shown(PACKS["pellmarsh"], "p8_b", [seen]), "coupling")
    assert (told["looks"], told["recorded"]) == (["bar"], "known")


def test_what_was_seen_against_the_record_does_not_change_it():
    seen = {"feature": "main_colour", "how": "sure", "states": ["yellow"]}
    assert layer(shown(PACKS["pellmarsh"], "p8_b", [seen]), "colour")["look"] == "black"


def test_what_is_not_recorded_is_unknown():
    told = layer(shown(PACKS["tarrowby"], "l18_e"), "buffers")
    assert (told["look"], told["recorded"]) == ("", "unknown")


def test_what_a_piece_does_not_have_is_not_in_its_portrait():
    picture = shown(PACKS["pellmarsh"], "g1_a")
    assert layer(picture, "horns") is None
    assert layer(picture, "roof") is None


def test_several_variants_of_an_item_make_one_portrait_of_what_they_can_be():
    pack = PACKS["pellmarsh"]
    places = [n for n, each in enumerate(pack["variants"]) if each["id"] in ("p1_a", "p1_b")]
    picture = portrait(pack, sitting(pack), places, [])
    assert sorted(layer(picture, "colour")["looks"]) == ["black", "blue"]
    assert layer(picture, "plan")["recorded"] == "known"


def test_a_set_shows_what_is_in_it():
    picture = shown(PACKS["pellmarsh"], "s1_a")
    assert picture["contents"] == ["tank_engine", "plank_wagon", "van", "guards_van"]
    assert layer(picture, "set") is not None


@pytest.mark.parametrize("pack", PACKS.values(), ids=list(PACKS))
def test_every_look_of_every_portrait_is_one_that_is_drawn(pack):
    made = sitting(pack)
    for place in range(len(pack["variants"])):
        picture = portrait(pack, made, [place], [])
        assert layer(picture, "body")["look"] in LAYERS["body"]
        for each in picture["layers"]:
            for look in each["looks"]:
                assert look == "" or each["layer"] == "set" or look_fits(each["layer"], look)


@pytest.mark.parametrize("pack", PACKS.values(), ids=list(PACKS))
def test_every_feature_of_the_demo_is_shown_or_says_why_it_is_not(pack):
    marks = [each["id"] for each in pack["features"] if "seen" in each]
    for feature in pack["features"][1:]:
        if feature["id"] not in marks:
            assert ("layer" in feature) != ("unseen" in feature), feature["id"]


def test_a_range_that_says_nothing_of_portraits_still_has_them():
    pack = msgspec.json.decode(msgspec.json.encode(PACKS["pellmarsh"]))
    for feature in pack["features"]:
        feature.pop("layer", None)
        feature.pop("unseen", None)
        for state in feature["states"]:
            state.pop("look", None)
    picture = shown(pack, "g6_b")
    assert layer(picture, "body")["look"] == "van"
    assert layer(picture, "colour")["look"] == "grey"
    assert layer(picture, "wheels")["look"] == "cast"


@pytest.mark.parametrize(
    ("text", "sides", "second", "letters"),
    [
        ("maroon and cream, stamped", "maroon", "cream", ""),
        ("blue, letters", "blue", "", ""),
        ("black, yellow lettering, printed", "black", "", "yellow"),
        ("blue with white band", "blue", "white", ""),
        ("green, cream line", "green", "cream", ""),
        ("picture of a bridge", "", "", ""),
    ],
)
def test_colours_in_a_name(text, sides, second, letters):
    assert colour_in(text, "sides") == sides
    assert colour_in(text, "second") == second
    assert colour_in(text, "letters") == letters


def test_what_fits_a_layer():
    assert look_fits("colour", "#2f6B3c")
    assert not look_fits("colour", "#2f6b3")
    assert not look_fits("coupling", "#2f6b3c")
    assert look_fits("emblem", "letters: Northfell")
    assert not look_fits("emblem", "letters")
    assert not look_fits("emblem", "letters: " + "a" * 25)
    assert not look_fits("no_layer", "none")


def test_a_look_is_understood_by_id_before_name():
    assert look_by_name("wheels", "black", "Grey metal, cast") == "black"
    assert look_by_name("wheels", "w1", "Cast, open spokes") == "cast"
    assert look_by_name("colour", "c7", "Bright red") == "red"
    assert look_by_name("horns", "h", "No horns") == ""
