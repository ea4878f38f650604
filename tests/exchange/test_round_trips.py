"""Export, then import: the very same records, in every format; and no cell that runs."""

import csv
import io
import zipfile
from typing import Any
from xml.etree import ElementTree

import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st
from openpyxl import load_workbook

from identify.core.exporting.workbook_parts import workbook_parts
from identify.core.importing.brought_before import is_same_json
from identify.core.importing.item_words import new_reference
from identify.core.importing.own_tables import fit_for_cell, guarded, unguarded
from identify.core.importing.rows_matched import new_importing, rows_given_back
from identify.exchange.import_steps import match_rows, name_rows, read_file
from identify.exchange.writing import write_records, zipped
from tests.exchange.strategies import QUICK, TEXT, records

EMPTY = new_reference([])
FORMATS = ["csv", "xlsx", "json"]
SIGNS = ("=", "+", "-", "@", "\t", "\r", "\n", "\uff1d", "\uff0b", "\uff0d", "\uff20")


def imported(data: bytes, existing: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """What an import makes of each row of a file of ours."""
    table = read_file(data, EMPTY)
    assert table["own"]
    keys = name_rows("", table["columns"], table["rows"])["keys"]
    rows = [row | {"key": key} for row, key in zip(table["rows"], keys, strict=True)]
    return match_rows(new_importing(EMPTY, "", "", table["columns"]), rows, existing)


def unique(found: list[dict[str, Any]]) -> list[dict[str, Any]]:
    return list({record["id"]: record for record in found}.values())


SOME = st.lists(records(), min_size=1, max_size=4).map(unique)


def is_kept_whole(text: str) -> bool:
    """Whether a cell of a workbook can hold a text."""
    return fit_for_cell(text) == text


@pytest.mark.heavy
@pytest.mark.parametrize("ending", FORMATS)
@given(found=SOME)
@QUICK
def test_nothing_is_lost(ending, found):
    rows = imported(write_records(found, ending, []), [])
    assert [row["failed"] for row in rows] == [""] * len(found)
    assert all(is_same_json(row["record"], r) for row, r in zip(rows, found, strict=True))


@pytest.mark.heavy
@pytest.mark.parametrize("ending", FORMATS)
@given(found=SOME)
@QUICK
def test_where_everything_is_there_already_nothing_changes(ending, found):
    rows = imported(write_records(found, ending, []), found)
    assert [row["same"]["sets"] for row in rows] == [{}] * len(found)
    assert [row["same"]["clashes"] for row in rows] == [[]] * len(found)


def test_a_table_of_ours_with_many_long_texts_is_known_as_one():
    """A text too long for a cell goes on in further columns, which no heading of lists names."""
    times = dict.fromkeys(("made", "changed"), "2026-11-28T10:00:00.000Z")
    texts = dict.fromkeys(("kind", "item", "text"), "x" * 33_009)
    sighting = {"id": "r1", "type": "sighting", "trashed": "", "pack": "p", "version": "",
                "called": "", "answers": []} | times | texts  # fmt: skip
    (row,) = imported(write_records([sighting], "xlsx", []), [sighting])
    assert (row["same"]["sets"], row["same"]["clashes"]) == ({}, [])


@pytest.mark.heavy
def test_a_long_text_is_cut_where_spreadsheets_cut_and_comes_back_whole():
    """A cell holds 32,767 characters (Microsoft's page of Excel's limits), those of UTF-16."""
    note = {"id": "r1", "type": "note", "text": "a" + "😀" * 20_000}
    for ending in ("csv", "xlsx"):
        data = write_records([note], ending, [])
        longest = max(len(cell.encode("utf-16-le")) // 2 for cell in cells(data, ending))
        assert longest <= 32_767
        assert imported(data, [])[0]["record"]["text"] == note["text"]


@given(st.lists(TEXT.filter(is_kept_whole), min_size=1, max_size=5))
@QUICK
def test_another_program_reads_each_cell_of_a_workbook_as_it_was_written(texts):
    """openpyxl, and the escape of a character that a text only looks like (ST_Xstring)."""
    table = {"names": [f"Column {n}" for n in range(len(texts))], "rows": [texts]}
    sheet = load_workbook(io.BytesIO(zipped(workbook_parts(table, []))))["records"]
    assert [cell.value or "" for cell in sheet[2]] == texts


def test_a_workbook_is_a_package_as_the_standard_says():
    """ECMA-376 part 2, Open Packaging Conventions, from memory: each part has a content type, and
    is reached from the package's root by relationships, whose ids are used once in each file.
    """
    archive = zipfile.ZipFile(io.BytesIO(write_records([PIECE], "xlsx", [])))
    parts = set(archive.namelist())
    types = ElementTree.fromstring(archive.read("[Content_Types].xml"))
    typed = {one.get("PartName", "").lstrip("/") for one in types if one.get("PartName")}
    assert parts == {"[Content_Types].xml", *typed, *(p for p in parts if p.endswith(".rels"))}
    reached = set()
    for links in (part for part in parts if part.endswith(".rels")):
        folder = links.rpartition("_rels/")[0]
        found = list(ElementTree.fromstring(archive.read(links)))
        assert len({one.get("Id") for one in found}) == len(found)
        reached |= {folder + one.get("Target", "") for one in found}
    assert reached == typed
    assert archive.testzip() is None


def cells(data: bytes, ending: str) -> list[str]:
    """Every cell of a file as a spreadsheet opens it."""
    if ending == "csv":
        return [c for row in csv.reader(io.StringIO(data.decode("utf-8-sig"))) for c in row]
    book = load_workbook(io.BytesIO(data))
    found = [cell for sheet in book for row in sheet.iter_rows() for cell in row]
    assert all(cell.data_type in ("s", "inlineStr", "n") for cell in found)
    assert all(cell.data_type != "n" or cell.value is None for cell in found)
    return [cell.value for cell in found if cell.value is not None]


@pytest.mark.heavy
@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@given(found=SOME)
@QUICK
def test_no_cell_begins_like_a_formula(ending, found):
    for cell in cells(write_records(found, ending, []), ending):
        assert not cell.lstrip(" ").startswith(SIGNS)


@given(TEXT)
def test_guarding_is_taken_off_again(text):
    assert unguarded(guarded(text)) == text
    assert not guarded(text).lstrip().startswith(SIGNS[:4]) or guarded(text).startswith("'")


@given(row=st.lists(TEXT.filter(lambda t: len(t) < 99), min_size=2, max_size=4))
@QUICK
def test_rows_given_back_can_be_imported_once_they_are_right(row):
    names = [f"Column {n}" for n in range(len(row))]
    left = {"row": 2, "cells": ["P 1", *row], "wrong": ["Why."]}
    data = rows_given_back(names, [left]).encode()
    for cell in cells(data, "csv"):
        assert not cell.startswith(SIGNS)
    table = read_file(data, EMPTY, header=1)
    assert table["columns"][0]["field"] == ""
    assert table["rows"][0]["cells"][1] == "P 1"


# ---- a person changes cells in between -----------------------------------------------------------

PIECE = {
    "id": "r1", "type": "piece", "made": "2024-01-01T00:00:00.000Z", "trashed": "",
    "changed": "2024-01-02T00:00:00.000Z", "pack": "pellmarsh", "item": "P 21", "called": "",
    "of": [{"variant": "p21_a", "chance": 0.3333}, {"variant": "p21_b", "chance": 0.6667}],
    "answers": [{"feature": "horns", "how": "sure", "states": ["metal"]}], "condition": "good",
    "boxed": "yes", "box_condition": "", "missing": [], "replaced": [], "where": "a friend",
    "paid": {"minor": 137, "over": 24, "currency": "GBP", "typed": "£1 7s 6d"}, "when": "1998",
    "photos": ["p1"], "notes": "-5 and more", "kept": False, "purpose": "", "asking": None,
}  # fmt: skip


def edited(**changes: str) -> bytes:
    """The exported piece as CSV with some cells changed by hand."""
    text = write_records([PIECE], "csv", []).decode("utf-8-sig")
    names, row = csv.reader(io.StringIO(text))
    out = io.StringIO()
    told = dict(zip(names, row, strict=True)) | changes
    csv.writer(out, delimiter=";").writerows([names, [told[name] for name in names]])
    return out.getvalue().encode("cp1252")


def test_a_changed_cell_changes_just_that_field():
    row = imported(edited(condition="fair", paid="£2"), [PIECE])[0]
    assert row["same"]["sets"] == {
        "condition": "fair",
        "paid": {"minor": 200, "over": 0, "currency": "GBP", "typed": "£2"},
    }
    assert row["same"]["before"] == {"condition": "good", "paid": PIECE["paid"]}


def test_a_changed_chance_counts_before_what_was_kept():
    row = imported(edited(of="p21_a 50 %; p21_b 50 %"), [PIECE])[0]
    assert row["same"]["sets"] == {
        "of": [{"variant": "p21_a", "chance": 0.5}, {"variant": "p21_b", "chance": 0.5}]
    }


def test_what_was_changed_in_the_app_since_is_not_overwritten():
    now = PIECE | {"condition": "poor", "changed": "2024-03-01T00:00:00.000Z"}
    row = imported(edited(condition="fair"), [now])[0]
    assert row["same"]["sets"] == {}
    assert [clash["sentence"] for clash in row["same"]["clashes"]] == [
        'Row 2, "condition": this was changed here and in the file. Here: "poor". In the file: '
        '"fair".'
    ]


WRONG = {
    "condition": (
        {"condition": "splendid"},
        'Row 2, "condition": "splendid" is not a condition the app knows. Write as new, '
        "excellent, very good, good, fair or poor, or a grade from C10 (the best) to C1. It was "
        "left as it was.",
    ),
    "further": (
        {"further": '{"fields": {"de'},
        'Row 2, "further": this cell was cut or changed, so that what it kept besides the other '
        "columns is lost. It was left as it was.",
    ),
    "chance": (
        {"of": "p21_a many"},
        'Row 2, "of": "p21_a many" is not a variant with its chance, such as p1_a 55 %. It was '
        "left as it was.",
    ),
}


@pytest.mark.parametrize("name", WRONG)
def test_cells_that_cannot_be_read_are_told_and_change_nothing(name):
    changes, sentence = WRONG[name]
    row = imported(edited(**changes), [PIECE])[0]
    assert sentence in [problem["sentence"] for problem in row["problems"]]
    assert row["same"]["sets"] == {}


FAILED = {
    "type": ({"type": "engine"}, 'Row 2: The type "engine" is not known. Types are: piece, want, '
             "note, sighting, budget."),
    "record": ({"record": "7"}, 'Row 2: "7" is not a record of this app. Leave the cell empty '
               "for a new one."),
    "other type": ({"type": "want"}, "Row 2: the record r1 is a piece and cannot become a want. "
                   "Leave the cell of the record empty for a new one."),
}  # fmt: skip


@pytest.mark.parametrize("name", FAILED)
def test_rows_that_are_no_records_fail(name):
    changes, sentence = FAILED[name]
    row = imported(edited(**changes), [PIECE])[0]
    assert (row["failed"], row["record"]) == (sentence, None)


def test_every_file_says_that_it_lists_valuables():
    data = write_records([PIECE], "xlsx", [])
    about = load_workbook(io.BytesIO(data))["about"]
    assert about["A1"].value.startswith("This lists valuables in a house.")
    assert orjson.loads(write_records([PIECE], "json", []))["about"].startswith("This lists valu")
