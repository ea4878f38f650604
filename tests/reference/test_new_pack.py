"""A pack of one's own begins with a folder that has no mistakes."""

import pytest

from identify.reference.check import check_pack
from identify.reference.csv_files import FILES
from identify.reference.entries import Item, Variant
from identify.reference.loading import load_pack
from identify.reference.mistakes import PackError
from identify.reference.new_pack import new_pack


def test_the_new_folder_passes_as_it_is(tmp_path):
    folder = tmp_path / "my_range"
    new_pack(folder)
    assert check_pack(folder) == []
    pack = load_pack(folder)
    assert (pack.id, pack.range.invented) == ("my_range", True)
    assert len(pack.variants) >= 3


def test_its_examples_are_marked_and_its_settings_explained(tmp_path):
    folder = tmp_path / "my_range"
    new_pack(folder)
    for file in (FILES[Item], FILES[Variant]):
        rows = (folder / file).read_text("utf-8").splitlines()[1:]
        assert rows
        assert all("EXAMPLE" in row for row in rows)
    for file in ("range.toml", "features.toml"):
        assert (folder / file).read_text("utf-8").startswith("# EXAMPLE")


def test_an_empty_folder_will_do(tmp_path):
    folder = tmp_path / "my_range"
    folder.mkdir()
    new_pack(folder)
    assert check_pack(folder) == []


def test_a_folder_with_something_in_it_is_refused_and_left_as_it_was(tmp_path):
    folder = tmp_path / "my_range"
    folder.mkdir()
    (folder / "items.csv").write_text("mine", "utf-8")
    with pytest.raises(PackError, match="this folder is not empty"):
        new_pack(folder)
    assert [path.name for path in folder.iterdir()] == ["items.csv"]
    assert (folder / "items.csv").read_text("utf-8") == "mine"


def test_a_file_is_refused(tmp_path):
    (tmp_path / "my_range").write_text("mine", "utf-8")
    with pytest.raises(PackError, match="this is a file"):
        new_pack(tmp_path / "my_range")


@pytest.mark.parametrize("name", ["My range", "1950s", "über"])
def test_a_name_that_cannot_be_an_id_is_refused(tmp_path, name):
    with pytest.raises(PackError, match="lower case letters, digits and _ only"):
        new_pack(tmp_path / name)
    assert not (tmp_path / name).exists()
