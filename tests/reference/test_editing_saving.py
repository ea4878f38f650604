"""A pack folder saved from the editor: all of its files or none, and taken back to the byte."""

import os
import shutil
from pathlib import Path

import pytest

from identify.reference import editing_saving
from identify.reference.editing import AddEntry, Draw, Edit, SetField, edited, files_of
from identify.reference.editing_csv import EditError
from identify.reference.editing_saving import ChangedError, PackFolder, opened
from identify.reference.mistakes import PackError
from tests.reference.small_pack import SVG, as_data, jpeg, key_of

PELLMARSH = Path(__file__).parents[2] / "fixtures" / "packs" / "pellmarsh"


def test_mistakes_are_told_with_the_entry_they_are_in(small):
    folder = PackFolder(small)
    model = folder.read()
    key = key_of(small, "variants", id="p1b")
    edits: list[Edit] = [
        AddEntry("variants", "n1", {"id": "p1c", "item": "P1", "name": "x", "common": "many"}),
        SetField("variants", key, "livery", "?", "gren"),
        SetField("feature", "feature2", "seconds", 2.5, "long"),
        SetField("range", "range", "years", "1950/1959", "1950"),
        SetField("kinds", "kinds1", "name", "Coach", ""),
    ]
    told = folder.check(model["version"], edits)
    places = {(m["table"], m["key"], m["column"]) for m in told}
    assert places >= {
        ("variants", "n1", "common"),
        ("variants", key, "livery"),
        ("feature", "feature2", "seconds"),
        ("kinds", "kinds1", "name"),
    }
    assert 'did you mean "green"?' in " ".join(m["text"] for m in told)
    assert folder.save(model["version"], edits) == told
    assert folder.read()["version"] == model["version"], "nothing is saved"
    assert not (small / ".saving").exists()


def test_no_edit_changes_nothing_and_a_save_can_be_taken_back():
    before = files_of(PELLMARSH)
    assert edited(before, []).after() == before


def test_the_last_save_is_taken_back_to_the_byte(small):
    before = files_of(small)
    folder = PackFolder(small)
    key = key_of(small, "items", number="P2")
    edits: list[Edit] = [
        SetField("items", key, "number", "P2", "P2B"),
        Draw("livery-red", SVG, as_data(jpeg())),
    ]
    assert folder.save(folder.read()["version"], edits) == []
    assert files_of(small).keys() > before.keys() - {"drawings/livery-red.svg"}
    assert folder.read()["undo"]
    folder.undo()
    assert files_of(small) == before
    with pytest.raises(EditError, match="no save to take back"):
        folder.undo()


def test_files_changed_by_something_else_are_not_written_over(small):
    folder = PackFolder(small)
    version = folder.read()["version"]
    (small / "items.csv").write_text((small / "items.csv").read_text() + "\n")
    before = files_of(small)
    key = key_of(small, "items", number="P2")
    with pytest.raises(ChangedError, match="Nothing was written"):
        folder.save(version, [SetField("items", key, "name", "Brake coach", "x")])
    assert files_of(small) == before


@pytest.mark.parametrize("at", range(4))
def test_all_files_are_written_or_none(small, monkeypatch, at):
    """The disk fails at the nth file put in place: everything is as it was."""
    before = files_of(small)
    folder = PackFolder(small)
    version = folder.read()["version"]
    key = key_of(small, "items", number="P1")
    real, count = os.replace, iter(range(1000))

    def failing(source: Path, target: Path) -> None:
        if next(count) == at:
            raise OSError(28, "No space left on device")
        real(source, target)

    monkeypatch.setattr(editing_saving.os, "replace", failing)
    with pytest.raises(OSError, match="No space"):
        folder.save(version, [SetField("items", key, "number", "P1", "P7")])
    monkeypatch.undo()
    assert files_of(small) == before
    assert not (small / ".saving").exists()


@pytest.mark.parametrize("at", range(4))
def test_a_save_that_was_broken_off_is_taken_back_at_the_next_reading(small, monkeypatch, at):
    """The process dies at the nth file put in place; another one reads the folder later."""
    before = files_of(small)
    folder = PackFolder(small)
    version = folder.read()["version"]
    key = key_of(small, "items", number="P1")
    real, count = os.replace, iter(range(1000))

    class Killed(BaseException):
        pass

    def dying(source: Path, target: Path) -> None:
        if next(count) == at:
            shutil.copytree(small / ".saving", small.parent / "left")
            raise Killed
        real(source, target)

    monkeypatch.setattr(editing_saving.os, "replace", dying)
    with pytest.raises(Killed):
        folder.save(version, [SetField("items", key, "number", "P1", "P7")])
    monkeypatch.undo()
    shutil.move(small.parent / "left", small / ".saving")  # as a killed process leaves it
    assert PackFolder(small).read()["version"] == version
    assert files_of(small) == before


def test_a_compiled_file_and_two_folders_of_one_name_cannot_be_edited(small, tmp_path):
    file = tmp_path / "small.json"
    file.write_text("{}")
    with pytest.raises(PackError, match="name its folder"):
        opened([file])
    other = shutil.copytree(small, tmp_path / "other" / "small")
    with pytest.raises(PackError, match="another folder of that name"):
        opened([small, other])


def test_files_that_cannot_be_read_are_told(small):
    (small / "items.csv").write_text('number,"name\n')
    with pytest.raises(EditError, match="quotation marks"):
        PackFolder(small).read()
