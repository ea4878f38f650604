"""Which sort of file a list is, by its first bytes and not by its name; what of it is no table."""

from collections.abc import Sequence
from typing import Literal

from ..edtf import is_figures, padded
from ..native.values import json_text, json_without, sort_of_value, value_at, value_in_json
from ..types.importing import FileTable
from .brought_before import text_at
from .own_tables import FURTHER, own_fields
from .text_parts import begins, column_letters, in_thousands, joined_by, without_blanks

MOST_BYTES = 20_000_000
NAMED_CELLS = 5  # cells of one kind that are named
# how a file begins that is no table, each byte as the character of its number
NOT_TABLES: list[list[str]] = [
    ["\u00d0\u00cf\u0011\u00e0", "an old XLS workbook, or one locked with a password"],
    ["%PDF", "a PDF"],
    ["\u0089PNG", "a picture"],
    ["\u00ff\u00d8\u00ff", "a picture"],
    ["GIF8", "a picture"],
    ["{\\rtf", "a text document (RTF)"],
    ["\u001f\u008b", "a packed file"],
    ["SQLite format 3", "a database"],
]
PAGES = ["<!DOCTYPE", "<HTML", "<?XML", "<TABLE"]
RECORDS_KIND = "identify records"
# How the usual programs write the errors of formulas (from memory).
SHEET_ERRORS = ["#DIV/0!", "#N/A", "#NAME?", "#NULL!", "#NUM!", "#REF!", "#VALUE!"]
CUT_WORKBOOK = "This XLSX file is damaged, or was cut short. Save it or fetch it again."


def too_heavy(size: int) -> str:
    """Why a file of so many bytes is not read, "" where it is."""
    if size <= MOST_BYTES:
        return ""
    most = padded(MOST_BYTES // 1_000_000, 1)
    return (
        "This file has " + in_thousands((size + 500_000) // 1_000_000) + " MB; at most " + most
        + " MB are read. Take pictures out of it, or split it."
    )  # fmt: skip


def sort_of_file(start: str) -> Literal["workbook", "json", "text"]:
    """Which sort of file begins so, each byte as the character of its number."""
    if begins(start, "PK"):
        return "workbook"
    return "json" if begins(without_mark(start), "{") else "text"


def without_mark(start: str) -> str:
    """How a file begins, without a mark of UTF-8 and blanks."""
    kept = start[3:] if begins(start, "\u00ef\u00bb\u00bf") else start
    return without_blanks(kept)


def no_table_in(start: str, size: int) -> str:
    """Why a file of so many bytes that begins so holds no table, "" where it may."""
    if len(start) == size and without_mark(start) == "":
        return "This file is empty."
    for known in NOT_TABLES:
        if begins(start, known[0]):
            return (
                "This is " + known[1] + ". Open it where it was made, save it as XLSX or CSV, and "
                + "choose that file."
            )  # fmt: skip
    page = without_mark(start).upper()
    for tag in PAGES:
        if begins(page, tag):
            return (
                "This is a web page or XML, whatever its name says. Open it in a spreadsheet "
                + "program, save it as XLSX or CSV, and choose that file."
            )
    return ""


def no_workbook_in(names: Sequence[str], mimetype: str) -> str:
    """Why an archive with files of these names is no workbook that is read, "" where it may be.

    mimetype: what the file of that name says, "" for none.
    """
    if begins(mimetype, "application/vnd.oasis"):
        return "This is an OpenDocument file. Save it as XLSX or CSV."
    if "xl/workbook.bin" in names:
        return "This is a binary workbook (XLSB). Save it as XLSX or CSV."
    if "[Content_Types].xml" not in names:
        return "This is a zip archive, not a workbook. Choose the file inside it."
    return ""


def refused_file(wrong: str) -> FileTable:
    """A file that cannot be taken at all."""
    return {"rows": [], "notes": [], "sheet": "", "sheets": [], "wrong": wrong}


def records_table(text: str) -> FileTable:
    """The table of a JSON file that this app wrote."""
    file = value_in_json(text)
    if sort_of_value(file) != "group":
        return refused_file(
            "This JSON file is damaged or was cut short. Fetch it or write it again."
        )
    kind = value_at(file, "kind")
    if sort_of_value(kind) == "text" and kind == "identify backup":
        return refused_file("This is a backup. Restore it where backups are made, not here.")
    records = value_at(file, "records")
    ours = sort_of_value(kind) == "text" and kind == RECORDS_KIND
    if not ours or sort_of_value(records) != "list" or not are_groups(records):
        return refused_file(
            "This JSON file holds no records. Choose one that was written here, or CSV or XLSX."
        )
    if json_text(value_at(file, "format")) != "1":
        return refused_file("This file was written by a newer version. Update the app first.")
    out = refused_file("")
    out["rows"].append({"row": 1, "cells": ["record", "type", FURTHER]})
    for record in records:
        ident = text_at(record, "id")
        sort = text_at(record, "type")
        absent = [field for field in own_fields(sort) if field not in record]
        rest = json_without(record, ["id", "type"])
        further = '{"fields":' + rest + ',"absent":' + json_text(absent) + "}"
        cells = [ident, sort, further]
        out["rows"].append({"row": len(out["rows"]) + 1, "cells": cells})
    return out


def are_groups(values: Sequence[object]) -> bool:
    """Whether each of these values is a group of named fields."""
    for value in values:
        if sort_of_value(value) != "group":
            return False
    return True


# ---- what a spreadsheet's cells hold besides text ------------------------------------------------


def cells_named(cells: Sequence[str]) -> str:
    """Cells for a sentence."""
    if len(cells) == 1:
        return "The cell " + cells[0]
    more = ""
    if len(cells) > NAMED_CELLS:
        more = " and " + padded(len(cells) - NAMED_CELLS, 1) + " more"
    return "The cells " + joined_by(cells[0:NAMED_CELLS], ", ") + more


def errors_said(errors: Sequence[Sequence[str]]) -> list[str]:
    """What to say of cells that hold an error: [[cell, what stands there]]."""
    out: list[str] = []
    if len(errors) > 0:
        what = " holds an error" if len(errors) == 1 else " hold errors"
        named = cells_named([error[0] + " (" + error[1] + ")" for error in errors])
        out.append(named + what + " of the spreadsheet and no value: taken as empty.")
    return out


def merged_said(merged: Sequence[str]) -> list[str]:
    """What to say of merged cells (A1:D1): the value is in the first only."""
    out: list[str] = []
    if len(merged) > 0:
        more = ""
        if len(merged) > NAMED_CELLS:
            more = " and " + padded(len(merged) - NAMED_CELLS, 1) + " more"
        out.append(
            "Cells are merged (" + joined_by(merged[0:NAMED_CELLS], ", ") + more
            + "): the value counts for the first cell only, the others are empty. Unmerge them and "
            + "fill each in, if it is meant for all."
        )  # fmt: skip
    return out


def formulas_said(count: int, empty: Sequence[str]) -> list[str]:
    """What to say of so many formulas; empty: the cells of those without a kept value."""
    out: list[str] = []
    if len(empty) > 0:
        what = " holds a formula" if len(empty) == 1 else " hold formulas"
        out.append(
            cells_named(empty) + what + " without a kept value: taken as empty. Open the file in a "
            + "spreadsheet program and save it there."
        )  # fmt: skip
    elif count > 0:
        out.append(
            "There are formulas (" + padded(count, 1)
            + "): the values they had when the file was saved count."
        )  # fmt: skip
    return out


def sheets_said(sheet: str, sheets: Sequence[str]) -> list[str]:
    """What to say of a workbook with several sheets, where nobody asked for one."""
    others = ['"' + name + '"' for name in sheets if name != sheet]
    ours = len(sheets) == 2 and sheets[0] == "records" and sheets[1] == "about"
    out: list[str] = []
    if len(others) > 0 and not ours:
        there = " There is " if len(others) == 1 else " There are "
        out.append(
            'The sheet "' + sheet + '" was read.' + there + joined_by(others, ", ") + " too."
        )
    return out


def is_sheet_error(cell: str) -> bool:
    """Whether a cell of a text says that a spreadsheet had an error there."""
    if cell in SHEET_ERRORS:
        return True
    return len(cell) == 7 and begins(cell, "Err:") and is_figures(cell[4:])


def without_sheet_errors(table: FileTable) -> FileTable:
    """The table of a text with what a spreadsheet wrote for its errors taken out, and told."""
    errors: list[list[str]] = []
    for row in table["rows"]:
        for place in range(len(row["cells"])):
            cell = without_blanks(row["cells"][place])
            if is_sheet_error(cell):
                errors.append([column_letters(place) + padded(row["row"], 1), cell])
                row["cells"][place] = ""
    for note in errors_said(errors):
        table["notes"].append(note)
    return table
