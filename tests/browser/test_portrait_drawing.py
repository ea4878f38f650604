"""Portraits as drawn: all of them are, what differs looks different, and nothing breaks them."""

import math
from collections import defaultdict
from collections.abc import Iterator
from xml.etree import ElementTree as ET

import pytest
from hypothesis import HealthCheck, given, settings

from identify.core.looks import LAYERS
from identify.core.portraits import portrait, sitting
from tests import strategies
from tests.browser.drawing import Drawing, drawing
from tests.kept_site import compiled_demo_packs

PACKS = compiled_demo_packs()
ELEMENTS = {"g", "path", "rect", "circle", "text", "defs", "linearGradient", "stop"}
# Looks that are nothing to be seen: no rivets, no horns, no lettering.
NOTHING = {
    "load": ["fixed"],
    "lining": ["plain"],
    "emblem": ["plain"],
    "number": ["none"],
    "lettering": ["ink"],
    "joins": ["smooth"],
    "front": ["plain"],
    "horns": ["none"],
    "power": ["clockwork"],
    "lid": ["none"],
    "track": ["none"],
    "inside": ["empty"],
    "extent": ["long"],
    "smoke": ["none"],
    "pantograph": ["none"],
    "warning": ["none"],
    "gangway": ["none"],
    "footboards": ["none"],
    "under_gear": ["none"],
}
SAME = [["one_end", "printed"]]  # two words for a number that is printed once
# What a layer is seen on.
ON = {
    "load": ["plank_wagon"],
    "number": ["corridor_coach"],
    "windows": ["corridor_coach"],
    "inside": ["corridor_coach"],
    "horns": ["diesel"],
    "front": ["diesel"],
    "bogies": ["corridor_coach"],
    "extent": ["corridor_coach"],
    "axles": ["van"],
    "roof": ["corridor_coach"],
    "roof_shape": ["corridor_coach", "smooth_coach", "short_coach", "van", "guards_van"],
    "gangway": ["corridor_coach", "smooth_coach", "short_coach"],
    "footboards": ["corridor_coach", "short_coach", "van", "plank_wagon"],
    "under_gear": ["corridor_coach", "short_coach"],
    "planks": ["plank_wagon"],
    "train": ["set"],
    "lid": ["set"],
    "track": ["set"],
    "controller": ["set"],
    "base": ["van"],
    "chimney": ["tank_engine", "tender_engine", "lone_engine"],
    "dome": ["tank_engine", "tender_engine"],
    "smoke": ["tank_engine", "tender_engine"],
    "pantograph": ["box_cab", "railcar", "electric"],
    "warning": ["diesel", "nosed_diesel", "railcar", "electric", "shunter"],
}


@pytest.fixture(scope="module")
def draws(tmp_path_factory) -> Iterator[Drawing]:
    with drawing(tmp_path_factory.mktemp("drawing")) as made:
        yield made


def well_formed(text: str) -> ET.Element:
    assert "undefined" not in text
    assert "NaN" not in text
    whole = ET.fromstring(f"<svg>{text}</svg>")
    assert {each.tag for each in whole.iter()} - {"svg"} <= ELEMENTS
    return whole


def of(layers: dict[str, str], **more):
    told = [{"layer": one, "look": look, "looks": [look]} for one, look in layers.items()]
    plain = {"name": "", "number": "", "letters": "", "second": "", "load": "", "contents": []}
    return {"layers": told, **plain, **more}


@pytest.mark.parametrize("small", [True, False])
@pytest.mark.parametrize("pack", PACKS.values(), ids=list(PACKS))
def test_every_variant_has_a_portrait(draws, pack, small):
    shown = sitting(pack)
    for place, variant in enumerate(pack["variants"]):
        told = draws.ask(portrait(pack, shown, [place], []), small)
        assert len(list(well_formed(told["text"]).iter())) > 6, variant["id"]
        for spot in told["places"]:
            assert spot is None or (0 <= spot[0] <= 120 and 0 <= spot[1] <= 66 and spot[2] < 30)


def recorded(pack, shown, place, feature):
    """The states a variant is recorded with; None where one of its rows has nothing recorded."""
    cells = pack["cells"][feature]
    found = [cells["shares"][cells["codes"][row]] for row in shown["rows"][place]]
    if any(not shares for shares in found):
        return None
    return {state for shares in found for state, share in enumerate(shares) if share > 0}


@pytest.mark.parametrize("pack", PACKS.values(), ids=list(PACKS))
def test_variants_that_differ_in_what_is_seen_from_the_side_look_different(draws, pack):
    """A feature that is said to be unseen, or a date mark, is not seen from the side."""
    shown = sitting(pack)
    alike = defaultdict(list)
    for place in range(len(pack["variants"])):
        alike[draws.text(portrait(pack, shown, [place], []))].append(place)
    seen = [n for n, each in enumerate(pack["features"]) if "layer" in each]
    for places in alike.values():
        for one in places:
            for other in places:
                for feature in seen:
                    here, there = (recorded(pack, shown, n, feature) for n in (one, other))
                    apart = here is not None and there is not None and not here & there
                    ids = [pack["variants"][n]["id"] for n in (one, other)]
                    assert not apart, (*ids, pack["features"][feature]["id"])


@pytest.mark.parametrize("layer", [one for one in LAYERS if one not in ("body", "keyhole", "key")])
def test_every_look_of_a_layer_is_another_picture(draws, layer):
    for body in ON.get(layer, ["tank_engine"]):
        base = {"body": body, "colour": "green", "emblem": "crest", "windows": "flat"}
        if body == "set":
            base["set"] = "set"
        made = defaultdict(list)
        for look in [one for one in LAYERS[layer] if one != "letters"]:
            made[draws.text(of({**base, layer: look}, number="12"))].append(look)
        without = draws.text(of({**base, layer: ""}, number="12"))
        same = [looks for looks in made.values() if len(looks) > 1]
        assert same in ([], SAME)
        assert set(made.get(without, [])) <= set(NOTHING.get(layer, []))


@pytest.mark.parametrize("layer", LAYERS)
def test_a_ring_finds_every_layer_where_it_is_drawn(draws, layer):
    for body in ON.get(layer, ["tank_engine"]):
        set_too = {"set": "set"} if body == "set" else {}
        told = of({"body": body, **set_too, layer: LAYERS[layer][0]})
        place = draws.ask(told, False)["places"][-1]
        assert place is not None, body
        assert 0 <= place[0] <= 120
        assert 0 <= place[1] <= 66


def test_every_body_is_another_picture_even_in_a_list(draws):
    alike = {"brake_coach", "coach", "corridor_coach", "plank_wagon", "wagon", "set", "piece"}
    for small in (True, False):
        made = defaultdict(list)
        for body in set(LAYERS["body"]) - alike:
            made[draws.text(of({"body": body, "colour": "green"}), small)].append(body)
        assert [bodies for bodies in made.values() if len(bodies) > 1] == []


def test_every_side_of_a_keyhole_and_every_key_is_another_picture(draws):
    made = {
        draws.text(of({"body": "tank_engine", "keyhole": side, "key": key}))
        for side in LAYERS["keyhole"]
        for key in LAYERS["key"]
    }
    assert len(made) == len(LAYERS["keyhole"]) * len(LAYERS["key"])


def test_what_is_not_recorded_is_not_drawn_as_if_it_were(draws):
    """Of a piece of which only the kind is known nothing has a colour but what all pieces have."""
    whole = well_formed(draws.text(of({"body": "corridor_coach", "colour": "", "wheels": ""})))
    fills = {each.get("fill") for each in whole.iter()} - {None, "none"}
    assert fills <= {"#3a3f43", "#f7f7f5"}


@given(told=strategies.portraits())
@settings(max_examples=200, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_a_range_records_is_drawn(draws, told):
    for small in (True, False):
        answer = draws.ask(told, small)
        well_formed(answer["text"])
        for spot in answer["places"]:
            assert spot is None or all(math.isfinite(number) for number in spot)
