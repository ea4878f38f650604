"""What another edition of a range says otherwise is told thing by thing, and nothing else is."""

import copy

import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.ranges.editions import news_of_edition
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from tests.reference.small_pack import FEATURES, small_files, write
from tests.strategies import packs

SWAPPED = {"new": "gone", "variants_new": "variants_gone", "questions_new": "questions_gone"}


def told(before, after):
    """What is told, without what is empty."""
    return {name: found for name, found in news_of_edition(before, after).items() if found}


def compiled(folder, files):
    """The compiled range of these files, as the phone has it."""
    return orjson.loads(pack_bytes(compile_pack(write(folder, files))))


def editions(tmp_path, **changed):
    """The small range, and the same with these files changed: each (name, old text, new text)."""
    files = small_files()
    before = compiled(tmp_path / "one", files)
    for name, (old, new) in changed.items():
        file = f"{name}.toml" if name == "features" else f"{name}.csv"
        assert old in files.get(file, "") or old == "", (file, old)
        files[file] = files.get(file, "").replace(old, new) if old else new
    return before, compiled(tmp_path / "two", files)


@given(packs())
def test_the_same_edition_is_no_news(pack):
    assert told(pack, copy.deepcopy(pack)) == {}


@pytest.mark.heavy
@given(packs(), packs())
def test_what_is_new_one_way_is_gone_the_other(one, other):
    there, back = news_of_edition(one, other), news_of_edition(other, one)
    for name, opposite in SWAPPED.items():
        assert sorted(there[name]) == sorted(back[opposite])
    for name in ("items", "variants"):
        assert sorted(there[name]) == sorted(back[name])


@pytest.mark.heavy
@given(packs(), st.data())
def test_what_a_row_shows_otherwise_is_told_at_its_variant_alone(pack, data):
    row = data.draw(st.sampled_from(range(len(pack["rows"]["variant"]))))
    feature = data.draw(st.sampled_from(range(len(pack["features"]))))
    after = copy.deepcopy(pack)
    cells = after["cells"][feature]
    cells["codes"][row] = data.draw(st.sampled_from(range(len(cells["shares"]))))
    was = pack["cells"][feature]["shares"][pack["cells"][feature]["codes"][row]]
    now = cells["shares"][cells["codes"][row]]
    variant = pack["variants"][pack["rows"]["variant"][row]]["id"]
    assert told(pack, after) == ({} if was == now else {"variants": [variant]})


@pytest.mark.heavy
@given(packs(), st.randoms())
def test_the_order_in_which_things_stand_is_no_news(pack, random):
    """Features and states are matched by what they are called."""
    after = copy.deepcopy(pack)
    order = list(range(1, len(after["features"])))
    random.shuffle(order)
    order = [0, *order]
    after["features"] = [after["features"][f] for f in order]
    after["cells"] = [after["cells"][f] for f in order]
    for feature, cells in zip(after["features"], after["cells"], strict=True):
        turned = list(range(len(feature["states"])))
        random.shuffle(turned)
        feature["states"] = [feature["states"][s] for s in turned]
        cells["shares"] = [[share[s] for s in turned] if share else [] for share in cells["shares"]]
    assert told(pack, after) == {}


def test_a_number_that_is_another_now_is_told_as_that(tmp_path):
    files = small_files()
    moves = "what,from,to,note\nitem,P1,P1 L,\n"
    before = compiled(tmp_path / "one", files)
    for name in ("items.csv", "variants.csv", "changes.csv"):
        files[name] = files[name].replace("P1", "P1 L")
    after = compiled(tmp_path / "two", {**files, "moves.csv": moves})
    assert told(before, after) == {"moved": [["P1", "P1 L"]]}
    files.pop("moves.csv", None)
    unsaid = compiled(tmp_path / "three", files)
    news = told(before, unsaid)
    assert (news["gone"], news["new"]) == (["P1"], ["P1 L"])


def test_what_a_question_says_is_told_by_its_name(tmp_path):
    old = 'question = "What does the coupling look like?"'
    assert old in FEATURES
    before, after = editions(tmp_path, features=(old, 'question = "Which coupling is it?"'))
    assert told(before, after) == {"questions": ["Coupling"]}


def test_what_a_variant_shows_is_told_at_it_and_a_running_change_at_all_it_meets(tmp_path):
    row = "p2b,P2,Red,1956~/..,cat,,0.5,Late,,"
    before, after = editions(tmp_path, variants=(f"{row}red", f"{row}green"))
    assert told(before, after) == {"variants": ["p2b"]}
    change = "coupling,loop,1953"
    before, after = editions(tmp_path / "again", changes=(change, "coupling,loop,1955"))
    assert told(before, after) == {"variants": ["p1a", "p1b", "p2a", "p2b"]}


def test_another_name_is_told_at_the_number(tmp_path):
    before, after = editions(tmp_path, items=("Tank engine", "Saddle tank"))
    assert told(before, after) == {"items": ["P1"]}
