"""Packs from folders and from compiled files."""

from pathlib import Path

import pytest

from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes
from identify.reference.loading import load_pack
from identify.reference.mistakes import PackError
from tests.reference.small_pack import small_files, write


@pytest.fixture
def folder(tmp_path) -> Path:
    return write(tmp_path, small_files())


def test_a_folder_and_the_file_compiled_from_it_are_the_same_pack(folder, tmp_path):
    file = tmp_path / "small.json"
    file.write_bytes(pack_bytes(compile_pack(folder)))
    assert pack_bytes(load_pack(file)) == pack_bytes(load_pack(folder)) == file.read_bytes()


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        (b"", b"", "pack.json: this is not a range made here: input data was truncated"),
        (
            b'"prior":[',
            b'"prior":["x",',
            "this is not a range made here: expected `float`",
        ),
        (
            b'"format":1',
            b'"format":2',
            "this is not a range made here: invalid enum value 2",
        ),
        (b'"Red"', b'"Rad"', "this was changed after it was made."),
    ],
)
def test_a_damaged_file_is_refused_with_a_sentence(folder, tmp_path, old, new, said):
    good = pack_bytes(compile_pack(folder))
    file = tmp_path / "pack.json"
    file.write_bytes(good.replace(old, new) if old else good[: len(good) // 2])
    with pytest.raises(PackError) as raised:
        load_pack(file)
    assert said in str(raised.value)


@pytest.mark.parametrize("data", [b"", b"\xff\xfe", b"[" * 100_000, b"null"])
def test_what_is_no_pack_at_all(tmp_path, data):
    file = tmp_path / "pack.json"
    file.write_bytes(data)
    with pytest.raises(PackError, match="this is not a range made here"):
        load_pack(file)


def test_a_file_that_is_not_there(tmp_path):
    with pytest.raises(PackError, match=r"none\.json: this file cannot be read: no such file"):
        load_pack(tmp_path / "none.json")
