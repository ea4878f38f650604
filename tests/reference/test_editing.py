"""Edits of a pack: made in the text, so that a diff shows just the change; saved whole or not."""

import csv
import difflib
import io
import tomllib
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.editing import AddEntry, Draw, Edit, RemoveEntry, SetField, edited, files_of
from identify.reference.editing_csv import CsvText, EditError
from identify.reference.editing_saving import PackFolder
from identify.reference.editing_toml import TomlText
from tests.reference.small_pack import FEATURES, RANGE, SVG, key_of

PELLMARSH = Path(__file__).parents[2] / "fixtures" / "packs" / "pellmarsh"
TROUBLE = st.text(alphabet='ab ,;"\n\r\u00e9', max_size=6)
WRITTEN = st.text(alphabet='ab ,;"\n\u00e9', max_size=6)  # csv.writer leaves a lone \r bare


def lines_of(before: str, after: str) -> tuple[list[str], list[str]]:
    """The lines taken away, and those put in."""
    diff = difflib.ndiff(before.splitlines(True), after.splitlines(True))
    told = [line for line in diff if line[0] in "-+"]
    return [x[2:] for x in told if x[0] == "-"], [x[2:] for x in told if x[0] == "+"]


@st.composite
def tables(draw: st.DrawFn) -> str:
    """The text of a CSV file, in one of the ways in which programs write them."""
    width = draw(st.integers(2, 4))
    cells = st.lists(WRITTEN, min_size=width, max_size=width)
    rows = draw(st.lists(cells, min_size=1, max_size=6))
    out = io.StringIO(newline="")
    quoting = draw(st.sampled_from([csv.QUOTE_MINIMAL, csv.QUOTE_ALL]))
    end = draw(st.sampled_from(["\n", "\r\n"]))
    header = [f"c{n}" for n in range(width)]
    csv.writer(out, quoting=quoting, lineterminator=end).writerows([header, *rows])
    text = out.getvalue()
    return text.removesuffix(end) if draw(st.booleans()) else text


@pytest.mark.heavy
@settings(max_examples=400, deadline=None)
@given(tables(), st.data())
def test_one_cell_changes_and_every_other_byte_stays(text, data):
    file = CsvText(text, "items.csv")
    assert file.text == text
    rows = file.entries()
    if not rows:
        return
    row = data.draw(st.sampled_from(rows))
    column = data.draw(st.sampled_from(file.columns))
    value = data.draw(TROUBLE)
    was = [(each.key, each.text) for each in file.rows]
    old = file.fields(row).get(column, "")
    file.set(row.key, column, old, value)
    now = [(each.key, each.text) for each in file.rows]
    assert [n for n, (a, b) in enumerate(zip(was, now, strict=True)) if a != b] in (
        [],
        [file.rows.index(row)],
    )
    read = list(csv.reader(io.StringIO(file.text, newline=""), strict=True))
    assert read[file.rows.index(row)][file.columns.index(column)] == value
    file.set(row.key, column, value.strip(), old)
    cells = [[cell.strip() for cell in r] for r in csv.reader(io.StringIO(text, newline=""))]
    again = [[c.strip() for c in r] for r in csv.reader(io.StringIO(file.text, newline=""))]
    assert again == cells


@settings(max_examples=200, deadline=None)
@given(tables(), st.data())
def test_a_row_added_and_taken_away_again_leaves_the_file_as_it_was(text, data):
    file = CsvText(text, "items.csv")
    values = data.draw(st.lists(TROUBLE, min_size=len(file.columns), max_size=len(file.columns)))
    file.add("n1", dict(zip(file.columns, values, strict=True)))
    _, put = lines_of(text, file.text)
    assert "".join(put) or not any(values)
    file.remove("n1")
    assert file.text.rstrip("\r\n") == text.rstrip("\r\n")


TOML_VALUES: dict[str, Any] = {
    "name": ["Other", 'With "marks" and \\', "\u00e9"],
    "question": ["What?"],
    "seconds": [1, 2.5],
    "needs": ["loupe"],
    "kinds": [None, ["coach"], ["locomotive", "set"]],
    "part": [None, "coupling"],
    "mistaken": [None, [["metal", "plastic"]]],
    "when": [None, {"horns": ["metal"]}],
}


@pytest.mark.heavy
@pytest.mark.parametrize("end", ["\n", "\r\n"])
@settings(max_examples=120, deadline=None)
@given(st.data())
def test_one_field_of_a_feature_changes_and_its_lines_only(end, data):
    text = "# Comment at the top\n" + FEATURES.replace("seconds = 4", "seconds = 4  # about")
    text = text.replace("\n", end)
    file = TomlText(text, "features.toml", ("feature",))
    assert file.text == text
    place = data.draw(st.integers(0, 3))
    field = data.draw(st.sampled_from(sorted(TOML_VALUES)))
    value = data.draw(st.sampled_from(TOML_VALUES[field]))
    key = f"feature{place}"
    old = file.entry("feature", key).get(field)
    file.set("feature", key, field, old, value)
    taken, put = lines_of(text, file.text)
    assert len(taken) <= 1
    assert len(put) <= 1
    assert all(line.startswith(field) for line in [*taken, *put])
    file.set("feature", key, field, value, old)
    assert tomllib.loads(file.text) == tomllib.loads(text)
    if old is not None and value is not None and field not in ("mistaken", "when"):
        assert file.text == text, "put back, it is as it was"


def test_states_are_changed_line_by_line():
    file = TomlText(FEATURES, "features.toml", ("feature",))
    states = file.entry("feature", "feature1")["states"]
    now = [states[0], {"id": "brass", "name": "Brass"}, {**states[2], "name": "None at all"}]
    file.set("feature", "feature1", "states", states, now)
    assert lines_of(FEATURES, file.text) == (
        ['  { id = "plastic", name = "Plastic" },\n', '  { id = "none", name = "No horns" },\n'],
        ['  { id = "brass", name = "Brass" },\n', '  { id = "none", name = "None at all" },\n'],
    )


def test_a_caption_comes_and_goes_in_its_own_line():
    file = TomlText(FEATURES, "features.toml", ("feature",))
    states = file.entry("feature", "feature1")["states"]
    now = [states[0], {**states[1], "caption": "Of plastic"}, *states[2:]]
    file.set("feature", "feature1", "states", states, now)
    (line,) = lines_of(FEATURES, file.text)[1]
    assert line == '  { id = "plastic", name = "Plastic", caption = "Of plastic" },\n'
    file.set("feature", "feature1", "states", now, states)
    assert file.text == FEATURES


def test_entries_come_behind_those_of_their_kind_and_comments_stay():
    text = RANGE.replace("[[parts]]", "# Parts that can be swapped.\n[[parts]]")
    file = TomlText(text, "range.toml", ("kinds", "parts", "cautions"))
    file.add("kinds", "n1", {"id": "wagon", "name": "Wagon", "plural": "Wagons"})
    assert lines_of(text, file.text)[0] == []
    assert 'plural = "Wagons"\n\n# Parts that' in file.text
    file.remove("kinds", "n1")
    assert file.text == text


def test_what_cannot_be_changed_in_place_is_refused_in_a_sentence():
    text = FEATURES.replace('name = "Coupling"', 'name = """\n[[feature]]\n"""')
    file = TomlText(text, "features.toml", ("feature",))
    with pytest.raises(EditError, match="in a text editor"):
        file.remove("feature", "feature1")
    assert file.text == text


def test_an_edit_of_what_says_something_else_by_now_is_refused(small):
    files = files_of(small)
    key = key_of(small, "items", number="P1")
    with pytest.raises(EditError, match=r'items.csv line 2: .* says "Tank engine" now'):
        edited(files, [SetField("items", key, "name", "Another", "Third")])
    with pytest.raises(EditError, match=r"features\.toml line 1: "):
        edited(files, [SetField("feature", "feature0", "name", "Another", "Third")])
    with pytest.raises(EditError, match=r"items\.csv line 2 says something else"):
        edited(files, [RemoveEntry("items", key, {"number": "P9"})])
    with pytest.raises(EditError, match="no table"):
        edited(files, [SetField("things", key, "name", "", "x")])


def test_a_byte_order_mark_and_a_new_column_at_the_end(small):
    path = small / "variants.csv"
    path.write_bytes(b"\xef\xbb\xbf" + path.read_bytes())
    key = key_of(small, "variants", id="p1a")
    after = edited(files_of(small), [SetField("variants", key, "coupling", None, "bar")]).after()
    text = after["variants.csv"].decode("utf-8-sig")
    assert after["variants.csv"].startswith(b"\xef\xbb\xbf")
    assert text.splitlines()[0].endswith(",livery,coupling")
    assert text.splitlines()[1] == "p1a,P1,No horns,1950/1953,cat,,1,,none,,bar"
    assert all(line.endswith(",") for line in text.splitlines()[2:])


def test_a_new_variant_stands_with_those_of_its_item(small):
    new = AddEntry("variants", "n1", {"id": "p1c", "item": "P1", "name": 'So-called "late"'})
    after = edited(files_of(small), [new]).after()
    before = (small / "variants.csv").read_text()
    taken, put = lines_of(before, after["variants.csv"].decode())
    assert (taken, put) == ([], ['p1c,P1,"So-called ""late""",,,,,,,\n'])
    assert after["variants.csv"].decode().splitlines()[3].startswith("p1c,")


def test_a_new_number_goes_everywhere_and_is_written_down(small):
    key = key_of(small, "items", number="P1")
    variant = key_of(small, "variants", id="p2a")
    edits: list[Edit] = [
        SetField("items", key, "number", "P1", "P1 L"),
        SetField("variants", variant, "id", "p2a", "p2_first"),
    ]
    folder = PackFolder(small)
    assert folder.save(folder.read()["version"], edits) == []
    assert (small / "moves.csv").read_text() == (
        "what,from,to,note\nitem,P1,P1 L,\nvariant,p2a,p2_first,\n"
    )
    assert "P1 L;P2" in (small / "items.csv").read_text()
    assert (small / "variants.csv").read_text().count(",P1 L,") == 2
    assert "P1 L" in (small / "changes.csv").read_text()
    compiled = compile_pack(small)
    assert [(m.what, m.old, m.new) for m in compiled.moves] == [
        ("item", "P1", "P1 L"),
        ("variant", "p2a", "p2_first"),
    ]
    key = key_of(small, "items", number="P1 L")
    back: list[Edit] = [SetField("items", key, "number", "P1 L", "P1")]
    assert folder.save(folder.read()["version"], back) == []
    assert "item,P1 L,P1,\n" in (small / "moves.csv").read_text()
    assert "item,P1,P1 L,\n" not in (small / "moves.csv").read_text()


def test_a_pack_without_moves_is_compiled_to_the_same_bytes_as_ever(small):
    assert b'"moves"' not in pack_bytes(compile_pack(small))


@pytest.mark.parametrize(
    ("rows", "text"),
    [
        ("item,P1,P2,\n", "there is such an item still"),
        ("item,P9,P8,\n", 'there is no item "P8": '),
        ("variant,a,b,\nvariant,b,a,\n", "these lead in a circle: a -> b -> a"),
        ("item,P9,P1,\nitem,P9,P2,\n", "stands in line 2 already"),
        ("thing,P9,P1,\n", 'it must be "item" or "variant"'),
    ],
)
def test_mistakes_in_moves_are_told(small, rows, text):
    (small / "moves.csv").write_text("what,from,to,note\n" + rows)
    assert any(text in m.text and m.file == "moves.csv" for m in check_pack(small))


@pytest.mark.parametrize("name", ["../x", "a/b", "x.svg", ""])
def test_drawings_stay_in_their_folder(small, name):
    with pytest.raises(EditError, match="not the name of a drawing"):
        edited(files_of(small), [Draw(name, "", SVG)])


def test_a_drawing_with_a_script_is_refused(small):
    with pytest.raises(EditError, match="<script> is not allowed"):
        edited(files_of(small), [Draw("livery-red", SVG, SVG.replace("<path", "<script/><path"))])


def test_a_feature_goes_with_its_columns(small):
    folder = PackFolder(small)
    model = folder.read()
    old = next(e for e in model["tables"]["feature"] if e["fields"]["id"] == "livery")
    edits: list[Edit] = [
        RemoveEntry("feature", old["key"], old["fields"]),
        Draw("livery-red", SVG, ""),
        Draw("livery-green", SVG, ""),
    ]
    assert folder.save(model["version"], edits) == []
    assert (small / "items.csv").read_text().splitlines()[1].endswith("Night train,,101;102,")
    assert (small / "variants.csv").read_text().splitlines()[2].endswith(",2,,metal")
    assert "livery" not in "".join(path.read_text() for path in small.glob("*.*"))
