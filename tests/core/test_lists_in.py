"""A collector's own list, read into items and variants."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.ranges.lists_in import (
    column_uses,
    heading_field,
    kind_in_name,
    listed_items,
    read_lines,
    states_meant,
)
from identify.reference.kit import kit_to_pick


def choice(one):
    """A state or a kind of the kit, with what it is called."""
    known = [
        one["name"],
        one.get("caption", ""),
        one["id"].replace("_", " "),
        one.get("plural", ""),
    ]
    return {"id": one["id"], "texts": [text for text in known if text]}


KIT = kit_to_pick()
FEATURES = [
    {
        "id": one["id"],
        "texts": [one["name"], one.get("title", "")],
        "states": [choice(state) for state in one["states"]],
    }
    for one in KIT["features"]
]
KINDS = [choice(kind) for kind in KIT["kinds"]]
STATES = {one["id"]: one["states"] for one in FEATURES}


@pytest.mark.parametrize("feature", FEATURES, ids=lambda one: one["id"])
def test_every_state_of_the_kit_is_known_by_its_own_name(feature):
    for state in feature["states"]:
        assert states_meant(state["texts"][0], feature["states"]) == [state["id"]]
        assert states_meant(state["texts"][0].upper(), feature["states"]) == [state["id"]]


COUPLING = [
    {"id": "bar", "texts": ["Flat metal bar"]},
    {"id": "loop", "texts": ["Wire loop"]},
    {"id": "claw", "texts": ["Plastic claw", "Claw"]},
    {"id": "none", "texts": ["No coupling"]},
]


@pytest.mark.parametrize(
    ("text", "states"),
    [
        ("wire loops", ["loop"]),
        ("loop", ["loop"]),
        ("wyre loop", ["loop"]),
        ("plastc claw", ["claw"]),
        ("a bar", ["bar"]),
        ("bar or loop", ["bar", "loop"]),
        ("loop / claw", ["loop", "claw"]),
        ("none", ["none"]),
        ("?", ["?"]),
        ("hook", []),
        ("loop or hook", []),
        ("loop, hook", []),
        ("", []),
    ],
)
def test_names_of_states_are_recognised_forgivingly(text, states):
    assert states_meant(text, COUPLING) == states


def test_a_text_that_fits_two_alike_is_not_guessed():
    two = [
        {"id": "dark", "texts": ["Dark green"]},
        {"id": "light", "texts": ["Light green"]},
    ]
    assert states_meant("green", two) == []
    assert states_meant("dk green dark", two) == ["dark"]


@pytest.mark.parametrize(
    ("heading", "field"),
    [
        ("Cat. No.", "number"), ("Nr", "number"), ("Description", "name"), ("Version", "variant"),
        ("Years made", ""), ("Date", "years"), ("Remarks", "note"), ("Couplings", ""),
        ("Running numbers", "carried"), ("", ""),
    ],
)  # fmt: skip
def test_headings_are_known(heading, field):
    assert heading_field(heading) == field


def test_columns_are_guessed_by_headings_and_by_what_is_in_them():
    headings = ["No.", "Description", "Coupling", "Roof", "Stand"]
    coupling = STATES["coupling"]
    lines = [
        ["101", "Goods van", coupling[0]["texts"][0], "", "top shelf"],
        ["102", "Brake coach", coupling[1]["texts"][0], "", "loft"],
    ]
    uses = column_uses(headings, lines, FEATURES, KINDS)
    assert [(one["field"], one["feature"]) for one in uses[:3]] == [
        ("number", ""), ("name", ""), ("seen", "coupling"),
    ]  # fmt: skip
    assert uses[4]["field"] == ""
    assert kind_in_name("Brake coach", KINDS) == "coach"
    assert kind_in_name("Goods van", KINDS) == "wagon"
    assert kind_in_name("Shunters", KINDS) == "locomotive"
    assert kind_in_name("Coach wagon", KINDS) == ""


def test_a_column_that_could_be_of_many_is_left_to_the_person():
    lines = [["7", "Two"], ["8", "None"]]
    uses = column_uses(["Number", "Shelf"], lines, FEATURES, KINDS)
    assert [one["field"] for one in uses] == ["number", ""]


def use(field, feature="", states=()):
    return {"field": field, "feature": feature, "states": list(states), "sure": 1.0}


COLUMNS = [use("number"), use("name"), use("variant"), use("years"), use("seen", "c", COUPLING)]


def test_rows_of_one_number_are_variants_and_what_all_say_is_the_items():
    lines = [
        ["104", "Brake coach", "", "1957", "bar"],
        ["", "", "late", "1958", "loop"],
        ["105", "Goods van", "", "1957", "hook"],
        ["", "", "", "", ""],
    ]
    reads = read_lines(lines, COLUMNS)
    assert [one["unread"] for one in reads] == [[], [], [{"column": 4, "text": "hook"}]]
    coach, van = listed_items(reads)
    assert (coach["number"], coach["name"], coach["years"], coach["seen"]) == (
        "104", "Brake coach", "", [],
    )  # fmt: skip
    assert [(one["name"], one["years"], one["seen"]) for one in coach["variants"]] == [
        ("", "1957", [["c", ["bar"]]]), ("late", "1958", [["c", ["loop"]]]),
    ]  # fmt: skip
    assert (van["years"], len(van["variants"])) == ("1957", 1)


CELL = st.sampled_from(["", "", "104", "bar", "loop", "Bar or loop", "hook", "1957", "x"])


@given(st.lists(st.lists(CELL, max_size=6), max_size=8))
def test_no_row_that_says_a_number_or_name_is_lost(lines):
    reads = read_lines(lines, COLUMNS)
    items = listed_items(reads)
    assert sorted(line for one in items for line in one["lines"]) == [one["line"] for one in reads]
    said = [n for n, line in enumerate(lines) if any(cell for cell in line[:2])]
    assert set(said) <= {one["line"] for one in reads}
    for item in items:
        assert len(item["variants"]) == len(item["lines"])
        mine = [one for one in reads if one["line"] in item["lines"]]
        for read, variant in zip(mine, item["variants"], strict=True):
            told = [*item["seen"], *variant["seen"]]
            assert all(any(seen == one for one in told) for seen in read["seen"])
