"""Broken packs: each mistake is said with its file and line, and what would be right."""

import tomllib
from pathlib import Path
from typing import Any

import pytest

from identify.core.ranges.check_names import first_circle
from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.mistakes import PackError
from tests.reference.small_pack import SVG, changed, small_files, write

Files = dict[str, str] | dict[str, bytes]


def said(folder: Path, files: Files) -> list[str]:
    """Every mistake as it is shown."""
    return [str(mistake) for mistake in check_pack(write(folder, files))]


def test_the_small_pack_has_none(tmp_path: Path) -> None:
    assert said(tmp_path, small_files()) == []


BROKEN = tomllib.loads((Path(__file__).parent / "broken.toml").read_text("utf-8"))["broken"]


@pytest.mark.parametrize("row", BROKEN, ids=[f"{row['file']}-{row['new'][:30]}" for row in BROKEN])
def test_a_mistake_is_said(tmp_path: Path, row: dict[str, Any]) -> None:
    found = said(tmp_path, changed(row["file"], row["old"], row["new"]))
    for sentence in row["said"]:
        assert any(each.startswith(sentence) for each in found), "\n".join(found)


def without(name: str) -> Files:
    return {file: text for file, text in small_files().items() if file != name}


def replaced(name: str, data: bytes) -> Files:
    return {file: text.encode() for file, text in small_files().items()} | {name: data}


FEW = (
    "sources.csv: this file is missing. There is changes.csv, items.csv, variants.csv.",
    "features.toml: this file is missing. There is range.toml.",
    "drawings/none.svg: this drawing is missing. It stands for what a piece does not have.",
    'features.toml line 53: the state "red" of "livery" has no drawing. '
    "Add drawings/livery-red.svg.",
    'range.toml line 20: the kind "set" has no drawing. Add drawings/kind-set.svg.',
    "drawings/livery-blue.svg: there is no such state or kind: rename or remove it.",
    "items.csv: this file is empty.",
    "range.toml: this file is empty.",
    "items.csv line 2, character 7: this is not UTF-8. Save the file as UTF-8.",
    "sources.csv line 1, character 1: this is not UTF-8. Save the file as UTF-8.",
    "items.csv line 2: there is a control character (code 0). Remove it.",
    "sources.csv line 1: the columns must be separated by commas. "
    "Save the file as CSV with commas.",
    "features.toml: lists are nested too deep within one another.",
)
FILES = (
    without("sources.csv"),
    without("features.toml"),
    without("drawings/none.svg"),
    without("drawings/livery-red.svg"),
    without("drawings/kind-set.svg"),
    replaced("drawings/livery-blue.svg", SVG.encode()),
    replaced("items.csv", b""),
    replaced("range.toml", b" \n\n"),
    replaced("items.csv", b"number,name\nP1,Caf\xe9\n"),
    replaced("sources.csv", "id,what,year,trust\n".encode("utf-16")),
    replaced("items.csv", b"number,name\nP1,\x00\n"),
    replaced("sources.csv", b"id;what;year;trust\ncat;Catalogue;;1\n"),
    replaced("features.toml", b"a = " + b"[" * 5000 + b"\n"),
)


@pytest.mark.parametrize(("files", "sentence"), list(zip(FILES, FEW, strict=True)), ids=FEW)
def test_a_file_that_is_not_right_is_the_only_mistake(
    tmp_path: Path, files: Files, sentence: str
) -> None:
    assert said(tmp_path, files) == [sentence]


def test_ten_mistakes_at_once_are_all_said_in_order(tmp_path: Path) -> None:
    files = small_files()
    for file, old, new in [
        ("range.toml", "swap = 0.1", "swap = -1"),
        ("features.toml", "seconds = 4", "seconds = true"),
        ("features.toml", "{ horns =", "{ hornes ="),
        ("sources.csv", "1971", "71"),
        ("items.csv", "1950/1957", "1950-1957"),
        ("items.csv", "P1;P2", "P1;P22"),
        ("variants.csv", "red|green", "red|grene"),
        ("variants.csv", "0.5", "half"),
        ("changes.csv", "coupling,loop", "coupling,loops"),
        ("drawings/livery-red.svg", "<path", '<path onclick="a()"'),
    ]:
        assert old in files[file]
        files[file] = files[file].replace(old, new, 1)
    found = said(tmp_path, files)
    places = [sentence.split(":")[0] for sentence in found]
    assert places == [
        "range.toml line 28, swap",
        "features.toml line 7, seconds",
        "features.toml line 38, when",
        "sources.csv line 3, year",
        "items.csv line 2, years",
        "items.csv line 4, contains",
        "variants.csv line 4, livery",
        "variants.csv line 5, common",
        "changes.csv line 3, state",
        "drawings/livery-red.svg line 1",
    ]
    with pytest.raises(PackError) as error:
        compile_pack(tmp_path / "small")
    assert str(error.value).splitlines() == found


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    assert [str(each) for each in check_pack(tmp_path / "gone")] == [
        "gone: there is no such folder."
    ]


def test_a_folder_whose_name_cannot_be_an_id(tmp_path: Path) -> None:
    folder = write(tmp_path, small_files()).rename(tmp_path / "Small pack")
    assert [str(each) for each in check_pack(folder)] == [
        "Small pack: the folder's name may have lower case letters, digits and _ only."
    ]


def test_a_directory_in_place_of_a_file(tmp_path: Path) -> None:
    folder = write(tmp_path, small_files())
    (folder / "items.csv").unlink()
    (folder / "items.csv").mkdir()
    assert [str(each) for each in check_pack(folder)] == [
        "items.csv: this file cannot be read: is a directory."
    ]


@pytest.mark.heavy
def test_too_many_rows_in_one_year(tmp_path: Path) -> None:
    count = 13
    files = small_files()
    for n in range(count):
        for name in (f"a{n}", f"b{n}"):
            when = f'when = {{ a{n} = ["x"] }}\n' if name[0] == "b" else ""
            files["features.toml"] += (
                f'[[feature]]\nid = "{name}"\nname = "A"\nquestion = "What?"\nwhere = "There."\n'
                f'seconds = 1\nneeds = "nothing"\n{when}'
                'states = [{ id = "x", name = "X" }, { id = "y", name = "Y" }]\n'
            )
            files |= {f"drawings/{name}-{state}.svg": SVG for state in "xy"}
            files["changes.csv"] += f"{name},x,,,,,cat,,\n{name},y,1953,,,,cat,,\n"
    found = said(tmp_path, files)
    assert found[0] == (
        'variants.csv line 2, id: "p1a" falls into more than 4096 rows in one year, by '
        f"{', '.join(f'a{n}' for n in range(count))}, on which other features depend. Fill in some."
    )


@pytest.mark.parametrize("file", ["range.toml", "features.toml", "items.csv", "changes.csv"])
def test_a_byte_order_mark_and_other_line_ends_are_no_mistake(tmp_path: Path, file: str) -> None:
    text = small_files()[file].replace("\n", "\r\n")
    files = {name: each.encode() for name, each in small_files().items()}
    assert said(tmp_path, files | {file: b"\xef\xbb\xbf" + text.encode()}) == []


def test_lines_are_counted_through_cells_of_several_lines(tmp_path: Path) -> None:
    files = changed("variants.csv", ",1,,none,", ',1,"Seen\ntwice",none,')
    files["variants.csv"] = files["variants.csv"].replace("red|green", "red|gren")
    assert [each.split(":")[0] for each in said(tmp_path, files)] == ["variants.csv line 5, livery"]


@pytest.mark.parametrize(
    ("parents", "circle"),
    [
        ({"a": ["b"], "b": ["c"], "c": ["d"]}, []),
        ({"a": ["b", "c"], "b": ["c"], "c": []}, []),
        ({"a": ["b"], "b": ["c"], "c": ["b"]}, ["b", "c", "b"]),
        ({"a": [], "b": ["b"]}, ["b", "b"]),
    ],
)
def test_circles(parents: dict[str, list[str]], circle: list[str]) -> None:
    assert first_circle([*parents], [*parents.values()]) == circle


def test_blank_rows_and_spaces_are_no_mistake(tmp_path: Path) -> None:
    files = changed("sources.csv", "cat,Cat", " cat , Cat")
    files["sources.csv"] += ",,,\n\n , ,,,,\n"
    assert said(tmp_path, files) == []
