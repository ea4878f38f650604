"""The kit has no mistakes, and a pack that picks from it says what it would in full."""

import json

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.looks import layer_by_name, look_fits
from identify.core.ranges.words import OF_THE_RANGE
from identify.phone import demo_packs
from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.drawings import clean_drawing
from identify.reference.kit import kit_to_pick, read_kit, shipped_kit
from identify.reference.new_pack import TEMPLATE
from identify.shipped import KIT
from tests.reference.small_pack import SVG, changed, write

LONGEST = 22
LIVERY = '[[feature]]\nid = "livery"'
HANDLED = ["locomotive", "coach", "wagon"]


def compiled(folder, files):
    return json.loads(pack_bytes(compile_pack(write(folder, files))))


def with_feature(text, column):
    """The small pack with one more feature, recorded in a column of its own."""
    files = changed(
        "features.toml", '[[feature]]\nid = "livery"', f'{text}\n[[feature]]\nid = "livery"'
    )
    rows = files["variants.csv"].splitlines()
    heads, first, *rest = rows
    files["variants.csv"] = "\n".join(
        [f"{heads},{column[0]}", f"{first},{column[1]}", *(f"{row}," for row in rest), ""]
    )
    return files


def feature_of(pack, name):
    return next(each for each in pack["features"] if each["id"] == name)


def test_no_feature_fills_a_layer_by_its_name_alone():
    """The colour of the lettering is not that of the sides, though its name has the word."""
    kit = read_kit(KIT, [])
    silent = [each for each in kit.pack.features if not each.layer and not each.unseen]
    assert len(silent) > 0
    assert [each.id for each in silent if layer_by_name(each.name)] == []


def test_it_has_no_mistakes_and_each_card_its_short_words():
    mistakes = []
    kit = read_kit(KIT, mistakes)
    assert mistakes == []
    for feature in kit.pack.features:
        assert feature.title, feature.id
        assert feature.kinds, feature.id
        captions = [state.caption or state.name for state in feature.states]
        assert [each for each in captions if len(each) > LONGEST or len(each.split()) > 3] == []
        assert len(set(captions)) == len(captions), feature.id
        assert sum(len(each.split()) for each in captions) <= 2 * len(captions), feature.id
        assert len(feature.title.split()) <= 3, feature.id
        for kind in feature.kinds:
            asked = [each.title for each in kit.pack.features if kind in each.kinds]
            assert asked.count(feature.title) == 1, feature.title
    assert all(kind.caption or len(kind.name) <= LONGEST for kind in kit.pack.kinds)


def test_nothing_stands_twice():
    """What a demo pack or the template draws itself is not the kit's, and no drawing is another."""
    drawn = {}
    for name, text in shipped_kit().pack.drawings.items():
        bare = text.split("</title>")[-1]
        assert drawn.setdefault(bare, name) == name
    for folder in [*demo_packs(), TEMPLATE]:
        for path in (folder / "drawings").glob("*.svg"):
            text = clean_drawing(path.read_text("utf-8"), path.name)[0]
            assert drawn.setdefault(text.split("</title>")[-1], path.stem) == path.stem


def test_a_feature_is_the_kits_in_the_packs_own_names(tmp_path):
    text = """[[feature]]
id = "hook"
kit = "coupling"
seconds = 9
states = [{ id = "wire", kit = "loop" }, { id = "bar" }, { id = "latch", name = "A latch" }]
"""
    files = with_feature(text, ("hook", "wire"))
    files["drawings/hook-latch.svg"] = SVG
    pack = compiled(tmp_path, files)
    kit = next(each for each in kit_to_pick()["features"] if each["id"] == "coupling")
    loop, bar = (next(s for s in kit["states"] if s["id"] == name) for name in ("loop", "bar"))
    found = feature_of(pack, "hook")
    assert (found["question"], found["title"], found["seconds"]) == (
        kit["question"], kit["title"], 9,
    )  # fmt: skip
    assert [(s["id"], s["name"], s.get("caption")) for s in found["states"]] == [
        ("wire", loop["name"], loop.get("caption")),
        ("bar", bar["name"], bar.get("caption")),
        ("latch", "A latch", None),
        ("none", "None", None),
    ]
    assert found["mistaken"] == [[1, 0]]
    assert found["kinds"] == [0, 1]
    assert pack["parts"][found["part"]]["id"] == kit["part"]["id"]
    assert pack["drawings"]["hook-wire"] == loop["drawing"]
    assert pack["drawings"]["hook-latch"] == SVG.replace("/>", "></path>")


def test_a_condition_holds_where_the_pack_has_what_it_speaks_of(tmp_path):
    wound = """[[feature]]
id = "hole"
kit = "keyhole"
part = "coupling"
states = [{ id = "left" }, { id = "right" }]
"""
    driven = """
[[feature]]
id = "driven_by"
kit = "power"
part = ""
states = [{ id = "spring", kit = "clockwork" }, { id = "electric" }]
"""
    alone = compiled(tmp_path / "alone", with_feature(wound, ("hole", "left")))
    assert [s["id"] for s in feature_of(alone, "hole")["states"]] == ["left", "right", "none"]
    files = with_feature(wound + driven, ("hole", "left"))
    files["changes.csv"] += "driven_by,spring,,,locomotive,,cat,,\n"
    both = compiled(tmp_path / "both", files)
    place = both["features"].index(feature_of(both, "hole"))
    rows = [n for n, variant in enumerate(both["rows"]["variant"]) if variant == 0]
    cells = both["cells"][place]
    assert {tuple(cells["shares"][cells["codes"][row]]) for row in rows} == {(1.0, 0.0, 0.0)}
    files["changes.csv"] = files["changes.csv"].replace("driven_by,spring", "driven_by,electric")
    files["variants.csv"] = files["variants.csv"].replace(",left", ",?")
    never = compiled(tmp_path / "never", files)
    cells = never["cells"][place]
    assert {tuple(cells["shares"][cells["codes"][row]]) for row in rows} == {(0.0, 0.0, 1.0)}


def test_kinds_and_parts_are_the_kits_too(tmp_path):
    files = changed("range.toml", 'name = "Coach"\nplural = "Coaches"', 'kit = "coach"')
    files["range.toml"] = files["range.toml"].replace(
        'id = "coupling"\nname = "Coupling"\nswap = 0.1', 'id = "coupling"\nkit = "wheels"'
    )
    del files["drawings/kind-coach.svg"]
    del files["drawings/none.svg"]
    pack = compiled(tmp_path, files)
    assert (pack["kinds"][1]["name"], pack["kinds"][1]["plural"]) == ("Coach", "Coaches")
    wheels = next(part for part in shipped_kit().pack.parts if part.id == "wheels")
    assert pack["parts"] == [
        {"id": "coupling", "name": wheels.name, "swap": wheels.swap, "replaced": wheels.replaced}
    ]
    assert pack["drawings"]["kind-coach"] == shipped_kit().pack.drawings["kind-coach"]


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ('kit = "couplin"', 'kit: "couplin" is not in the kit: did you mean "coupling"?'),
        ("kit = 7", 'kit: "7" is not in the kit: known are '),
        (
            'kit = "coupling"\nstates = [{ id = "bar" }, { id = "x", kit = "lop" }]',
            'states: "lop" is not a state of it in the kit: did you mean "loop"?',
        ),
        ('kit = "coupling"\nstates = 3', "states: this must be a list such as "),
        ('kit = "horns"', 'part: there is no part "horns" in range.toml: '),
        ('kit = "roof"\nkinds = 4', "kinds: "),
    ],
)
def test_what_cannot_be_picked_is_said_where_it_stands(tmp_path, text, sentence):
    files = with_feature(f'[[feature]]\nid = "picked"\n{text}\n', ("picked", ""))
    said = [str(each) for each in check_pack(write(tmp_path, files))]
    assert any(each.startswith("features.toml line 4") and sentence in each for each in said), said


def test_the_card_that_was_asked_for_is_in_it():
    """Coupling, rivets, number at one end or both, metal or plastic horns, a motor bogie or not."""
    features = {feature.id: feature for feature in shipped_kit().pack.features}
    wanted = {
        "coupling": {"bar", "loop", "claw"},
        "rivets": {"raised", "smooth"},
        "number_ends": {"one_end", "both_ends"},
        "horns": {"metal", "plastic"},
        "drive": {"powered", "free"},
    }
    for name, states in wanted.items():
        assert states <= {state.id for state in features[name].states}


@st.composite
def picked(draw):
    """A feature of the kit with some of its states, some under other ids, as a pack's entry picks
    it and as it would be written in full.
    """
    feature = draw(st.sampled_from(list(shipped_kit().written["feature"].values())))
    states = draw(
        st.lists(st.sampled_from(feature["states"]), min_size=2, unique_by=lambda one: one["id"])
    )
    names = {one["id"]: draw(st.sampled_from([one["id"], f"own_{one['id']}"])) for one in states}
    said = draw(
        st.fixed_dictionaries(
            {},
            optional={
                "name": st.just("Own name"),
                "title": st.just("Own title?"),
                "seconds": st.integers(1, 99),
                "mistaken": st.just([]),
            },
        )
    )
    handled = [kind for kind in feature["kinds"] if kind in ("locomotive", "coach", "set")]
    if not handled:
        said["kinds"] = ["coach"]
    if feature.get("part", "coupling") != "coupling":
        said["part"] = ""
    short = {"id": "picked", "kit": feature["id"], **said}
    short["states"] = [
        {"id": names[one["id"]]} | ({} if names[one["id"]] == one["id"] else {"kit": one["id"]})
        for one in states
    ]
    pairs = [[names[a], names[b]] for a, b in feature.get("mistaken", []) if {a, b} <= {*names}]
    full = {**feature, "mistaken": pairs, "kinds": handled, **said, "id": "picked"}
    full.pop("when", None)
    full["states"] = [look_told(feature, one) | {"id": names[one["id"]]} for one in states]
    drawn = {
        f"drawings/picked-{names[one['id']]}.svg": KIT / f"drawings/{feature['id']}-{one['id']}.svg"
        for one in states
    }
    return short, full, drawn


def look_told(feature, state):
    """A state with its look in words, where its id is the look."""
    told = look_fits(feature.get("layer", ""), state["id"])
    return ({"look": state["id"]} if told else {}) | state


def with_change(text, state):
    """The small pack with one more feature called "picked", recorded by a running change."""
    files = changed("features.toml", LIVERY, f"{text}\n{LIVERY}")
    files["changes.csv"] += f"picked,{state},,,,,cat,,\n"
    return files


def written(value):
    """A value as it stands in a TOML file."""
    if isinstance(value, dict):
        return "{ " + ", ".join(f"{key} = {written(each)}" for key, each in value.items()) + " }"
    if isinstance(value, list):
        return "[" + ", ".join(written(each) for each in value) + "]"
    return json.dumps(value, ensure_ascii=False)


def as_entry(fields):
    return "[[feature]]\n" + "".join(f"{key} = {written(said)}\n" for key, said in fields.items())


@pytest.mark.heavy
@given(picked())
@settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_is_picked_is_as_if_it_were_written_in_full(tmp_path_factory, case):
    short, full, drawn = case
    files = with_change(as_entry(full), full["states"][0]["id"])
    files |= {name: path.read_text("utf-8") for name, path in drawn.items()}
    entry = with_change(as_entry(short), full["states"][0]["id"])
    found = compiled(tmp_path_factory.mktemp("short"), entry)
    wanted = compiled(tmp_path_factory.mktemp("full"), files)
    for pack in (found, wanted):
        pack.pop("version")
        for state in feature_of(pack, "picked")["states"]:
            state.setdefault("look", state["id"])
    for name in OF_THE_RANGE:  # which the small pack does not draw
        assert found["drawings"].pop(name) == shipped_kit().pack.drawings[name]
    assert found == wanted
