"""A sighting becomes a change of the pack's files that the checker accepts, or a clear sentence."""

import json
import re
from pathlib import Path
from typing import Any

import pytest

from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.mistakes import PackError
from identify.reference.sighting import SightingError, propose
from tests.reference.small_pack import changed, small_files, write


def saw(**states: str) -> list[dict[str, Any]]:
    return [{"feature": f, "how": "sure", "states": s.split("|")} for f, s in states.items()]


def file_of(folder: Path, **more: Any) -> Path:
    """A file as the phone exports it, with fields that are not needed here."""
    one = {"pack": "small", "id": "rabc", "photos": [], "answers": [], **more}
    path = folder / "sightings.json"
    path.write_text(
        json.dumps({"format": 1, "kind": "identify sightings", "made": "", "sightings": [one]})
    )
    return path


@pytest.fixture
def small(tmp_path: Path) -> Path:
    return write(tmp_path / "small", small_files())


def applied(diff: str, folder: Path) -> None:
    """Apply a unified diff, hunk by hunk."""
    for part in re.split(r"(?m)^--- a/", diff)[1:]:
        name, _, rest = part.partition("\n")
        path = folder / name.strip()
        lines = path.read_text("utf-8").splitlines(keepends=True)
        shift = 0
        for hunk in re.split(r"(?m)^@@ ", rest)[1:]:
            head, *body = hunk.splitlines(keepends=True)
            start = int(re.match(r"-(\d+)", head)[1]) - 1 + shift
            old = [line[1:] for line in body if line[0] in " -"]
            new = [line[1:] for line in body if line[0] in " +"]
            assert lines[start : start + len(old)] == old, "the diff fits the file"
            lines[start : start + len(old)] = new
            shift += len(new) - len(old)
        path.write_text("".join(lines), "utf-8")


def test_a_variant_nobody_wrote_down_becomes_a_row(small, tmp_path):
    path = file_of(
        tmp_path,
        item="P1",
        called="red, with horns of plastic",
        unrecorded=True,
        text="At a club sale.\nWith a dated receipt.",
        years="1955",
        answers=saw(livery="red", coupling="loop", kind="locomotive"),
    )
    diff = propose(path, small)
    applied(diff, small)
    assert check_pack(small) == []
    added = next(v for v in compile_pack(small).variants if "seen1" in v.id)
    assert (added.name, added.years) == ("red, with horns of plastic", "1955")
    assert "At a club sale. With a dated receipt." in added.note
    source = next(s for s in compile_pack(small).sources if s.id == "sighting")
    assert source.trust == 0.5
    removed = [line for line in diff.splitlines() if re.match(r"-(?!--)", line)]
    assert removed == [], "nothing that the keeper wrote is taken away"


def test_a_state_seen_before_its_year_stands_beside_the_known_one(small, tmp_path):
    path = file_of(tmp_path, kind="coach", years="1951", answers=saw(coupling="loop"))
    diff = propose(path, small)
    assert "sighting 1951" in diff
    assert diff.count("+++") == 2, "changes.csv, and the source"
    applied(diff, small)
    assert check_pack(small) == []
    change = next(c for c in compile_pack(small).changes if len(c.said) > 2)
    assert [years for _, years in change.said][-1] == "1951"


def test_years_of_a_variant_count_where_it_is_surely_that_one(small, tmp_path):
    sure = [{"item": "P1", "variant": "p1a", "chance": 0.96}]
    diff = propose(file_of(tmp_path, years="1956", of=sure), small)
    applied(diff, small)
    assert check_pack(small) == []
    p1a = next(v for v in compile_pack(small).variants if v.id == "p1a")
    assert "1956" in str(p1a.said)


def test_a_season_is_told_in_months(small, tmp_path):
    path = file_of(tmp_path, kind="coach", years="1951-21", answers=saw(coupling="loop"))
    diff = propose(path, small)
    assert "sighting 1951-03/1951-05" in diff
    applied(diff, small)
    assert check_pack(small) == []


def test_a_state_seen_after_its_time_puts_the_next_one_later(small, tmp_path):
    path = file_of(tmp_path, kind="coach", years="1958", answers=saw(coupling="bar"))
    diff = propose(path, small)
    assert "sighting 1958" in diff
    applied(diff, small)
    assert check_pack(small) == []


def test_a_second_proposal_of_the_same_adds_nothing(small, tmp_path):
    path = file_of(tmp_path, kind="coach", years="1951", answers=saw(coupling="loop"))
    applied(propose(path, small), small)
    with pytest.raises(SightingError, match="says nothing that the range does not say already"):
        propose(path, small)


@pytest.mark.parametrize(
    ("more", "sentence"),
    [
        ({"pack": "other"}, 'The sighting is of "other", and the range is small.'),
        ({"years": "late fifties"}, "is not a year or a span of years in EDTF"),
        ({"unrecorded": True}, "does not say which item it is a variant of"),
        ({"unrecorded": True, "item": "K 999"}, "does not say which item it is a variant of"),
        ({}, "says nothing that the range does not say already"),
        ({"years": "1955", "answers": saw(coupling="loop")}, "says nothing that the range"),
        (
            {"years": "1956", "of": [{"item": "P1", "variant": "p1a", "chance": 0.6}]},
            "it may be one of several variants",
        ),
        ({"answers": saw(gone="away"), "years": "1955"}, "says nothing that the range"),
        (
            {"unrecorded": True, "item": "P1", "years": "1999", "answers": saw(livery="red")},
            "does not fit the rest of the range",
        ),
    ],
)
def test_what_cannot_be_proposed_is_said_in_a_sentence(small, tmp_path, more, sentence):
    before = {path.name: path.read_bytes() for path in small.iterdir() if path.is_file()}
    with pytest.raises(SightingError, match=re.escape(sentence)):
        propose(file_of(tmp_path, **more), small)
    assert before == {path.name: path.read_bytes() for path in small.iterdir() if path.is_file()}


@pytest.mark.parametrize(
    "text", ["", "{", "[]", '{"format": 1}', '{"format": 1, "kind": "identify backup"}', "\x00"]
)
def test_a_file_that_is_none_is_said_to_be_none(small, tmp_path, text):
    path = tmp_path / "x.json"
    path.write_text(text)
    with pytest.raises(SightingError, match=r"x\.json is not a file of sightings"):
        propose(path, small)


def test_a_pack_with_mistakes_is_not_touched(tmp_path):
    broken = write(tmp_path / "small", changed("changes.csv", "loop", "lop"))
    with pytest.raises(PackError):
        propose(file_of(tmp_path, years="1951"), broken)
