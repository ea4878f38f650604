"""A range goes out as a folder of files and comes in from one: out and in is the identity."""

import copy
import csv
import io
import tomllib
from typing import Any

import pytest
from hypothesis import given, settings

from identify.core.ranges.folder_in import rows_of_folder
from identify.core.ranges.folder_out import files_of_rows
from identify.core.ranges.own_records import records_of_rows, rows_needed
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.usable import usable
from identify.phone import demo_packs
from identify.reference.check import check_pack
from identify.reference.drawings import read_drawings
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from identify.reference.kit import shipped_kit
from identify.reference.new_pack import TEMPLATE
from tests.own_ranges import own_ranges
from tests.sampling import sample

TABLES = ("items", "variants", "changes", "sources", "moves")


def taken_apart(files: dict[str, str], drawings: list[Any], name: str, kit: bool = True) -> Any:
    """The files of a folder as the core takes them."""
    tables = {
        table: list(csv.reader(io.StringIO(files.get(f"{table}.csv", ""), newline="")))
        for table in TABLES
    }
    return {
        "id": name,
        "about": tomllib.loads(files["range.toml"]),
        "looks": tomllib.loads(files["features.toml"]),
        "drawings": drawings,
        "written": shipped_kit().written if kit else {},
        "drawn": shipped_kit().pack.drawings if kit else {},
        **tables,
    }


def out_and_in(rows: Any) -> Any:
    """The rows, written as files and read again."""
    files = {one["id"]: one["text"] for one in files_of_rows(rows)}
    return rows_of_folder(taken_apart(files, rows["drawings"], rows["id"], kit=False))


@pytest.mark.parametrize("folder", [*demo_packs(), TEMPLATE], ids=lambda path: path.name)
def test_a_folder_is_read_as_the_check_reads_it(folder):
    files = {path.name: path.read_text("utf-8") for path in folder.glob("*.*")}
    drawings = [{"id": id_, "text": text} for id_, text in read_drawings(folder, []).items()]
    found = rows_of_folder(taken_apart(files, drawings, folder.name))
    assert found["unknown"] == []
    assert found["rows"] == rows_of_pack(read_pack(folder)[0])
    assert out_and_in(found["rows"])["rows"] == found["rows"]


def test_what_goes_out_passes_the_check(tmp_path):
    [folder, *_] = demo_packs()
    rows = rows_of_pack(read_pack(folder)[0])
    made = tmp_path / folder.name
    (made / "drawings").mkdir(parents=True)
    for one in files_of_rows(rows):
        (made / one["id"]).write_text(one["text"], "utf-8")
    for one in rows["drawings"]:
        (made / "drawings" / f"{one['id']}.svg").write_text(one["text"], "utf-8")
    assert check_pack(made) == []
    found = rows_of_pack(read_pack(made)[0])
    for each in (found, rows):
        each["drawings"].sort(key=lambda one: one["id"])
    assert found == rows


@settings(max_examples=sample(300, 80), deadline=None)
@given(own_ranges())
def test_out_and_in_is_the_identity(records):
    """Of the rows that can be used, and of the records that they are made of."""
    whole, *rest = records
    rows = usable(rows_of_records(whole, copy.deepcopy(rest)), [])["rows"]
    found = out_and_in(copy.deepcopy(rows))
    assert found == {"rows": rows, "unknown": []}
    fresh = [f"n{n}" for n in range(rows_needed(rows))]
    again = records_of_rows(found["rows"], whole, rest, fresh)
    assert again == records_of_rows(rows, whole, rest, fresh)


def test_a_column_that_means_nothing_is_told_and_the_rest_comes_in():
    rows = rows_of_pack(read_pack(demo_packs()[0])[0])
    files = {one["id"]: one["text"] for one in files_of_rows(rows)}
    head, *lines = files["sources.csv"].splitlines()
    files["sources.csv"] = "\n".join([f"{head},shelf", *(f"{line},3" for line in lines)])
    found = rows_of_folder(taken_apart(files, rows["drawings"], rows["id"], kit=False))
    assert found == {"rows": rows, "unknown": [["sources", "shelf"]]}
