"""Rows of a list as records, and what an earlier import made of them. Nothing is written here."""

from collections.abc import Sequence
from typing import Any

from ..edtf import padded
from ..forms import LETTERS, is_made_of
from ..native.values import names_of, sort_of_value, value_at
from ..types.importing import (
    AskedColumn,
    Changes,
    FieldClash,
    Fields,
    Importing,
    KeyedRow,
    LeftOutRow,
    Outcome,
    Reference,
    SameRecord,
)
from .brought_before import KEPT, WHOLE_ITEM, blank_record, changes, held, own_changes, text_at
from .column_headings import SORTS, generic, goes_to
from .list_rows import outcome_of
from .own_tables import (
    FURTHER,
    HIDDEN,
    field_named,
    fit_for_cell,
    guarded,
    own_record,
    own_texts,
    shown_text,
)
from .row_keys import OWN_KEY
from .text_parts import begins, joined_by, quoted, without_blanks

BYTE_ORDER_MARK = "\ufeff"  # by which spreadsheets know UTF-8


def new_importing(
    reference: Reference, sort: str, currency: str, columns: list[AskedColumn]
) -> Importing:
    """What is the same for all rows. sort: what they are to be, "" for a file of this app."""
    return {"reference": reference, "sort": sort, "currency": currency, "columns": columns}


def row_matched(about: Importing, row: KeyedRow, existing: Fields | None) -> Outcome:
    """What becomes of a row. existing: the record of an earlier import of it, None for none."""
    sort = about["sort"]
    if sort == "" or begins(row["key"], OWN_KEY):
        texts = own_texts([column["name"] for column in about["columns"]], row["cells"])
        if begins(row["key"], OWN_KEY) and without_blanks(texts.get("record", "")) != "":
            return own_row(about, row, texts, existing)
        for each in SORTS:
            if (
                about["sort"] == ""
                and without_blanks(texts.get("type", "")).upper() == each.upper()
            ):
                sort = each
    out = outcome_of(about, sort if sort in SORTS else "piece", row)
    if existing is None:
        return out
    if out["record"] is None and was_chosen_before(out, existing):
        out["record"] = out["if_chosen"]
        out["failed"] = ""
    record = out["record"]
    if record is not None and text_at(existing, "type") == record["type"]:
        out["same"] = same_record(about, row, existing, record, changes(record, existing))
    return out


def heads_of(about: Importing) -> dict[str, str]:
    """The column of each field of a table that this app wrote."""
    out: dict[str, str] = {}
    for column in about["columns"]:
        field = field_named(column["name"])
        if field != "":
            out[field] = column["name"]
    return out


def unmade(row: KeyedRow, failed: str) -> Outcome:
    """A row of which nothing is made yet."""
    return {
        "row": row["row"], "key": row["key"], "failed": failed, "record": None, "candidates": [],
        "none": {}, "chosen": -1, "sure": 1.0, "problems": [], "same": None,
    }  # fmt: skip


def own_row(
    about: Importing, row: KeyedRow, texts: dict[str, str], existing: Fields | None
) -> Outcome:
    """What becomes of a row of a table that this app wrote."""
    number = "Row " + padded(row["row"], 1)
    heads = heads_of(about)
    read = own_record(texts, about["currency"])
    record = read["record"]
    wrong = read["wrong"] if read["wrong"] != "" else no_record_of_ours(record, existing)
    out = unmade(row, number + ": " + wrong if wrong != "" else "")
    if wrong != "":
        return out
    not_read: list[str] = []
    for problem in read["problems"]:
        column = heads.get(problem[0], problem[0])
        left = " It was left as it was." if existing is not None else ""
        said = number + ', "' + column + '": ' + problem[1] + left
        out["problems"].append({"column": column, "sentence": said})
        not_read.append(problem[0])
    out["record"] = record
    if existing is None:
        usual = blank_record(record["type"])
        for name in names_of(usual):
            missing = name in not_read or (name not in texts and name not in HIDDEN)
            gone = name in read["absent"] and name not in not_read
            if name not in record and missing and not gone and name != "trashed":
                record[name] = usual[name]
        return out
    if FURTHER in not_read:  # only what the columns themselves change
        kept: Fields = {}
        for name in names_of(record):
            now = without_blanks(texts.get(name, ""))
            if name in KEPT or shown_text(name, value_at(existing, name)) != now:
                kept[name] = record[name]
        record = kept
    out["same"] = same_record(about, row, existing, record, own_changes(record, existing))
    return out


def no_record_of_ours(record: Fields, existing: Fields | None) -> str:
    """Why this app cannot hold a record, "" where it can."""
    ident = text_at(record, "id")
    if len(ident) < 2 or ident[0:1] != "r" or not is_made_of(ident[1:], LETTERS + "_"):
        return '"' + ident + '" is not a record of this app. Leave the cell empty for a new one.'
    if existing is not None and text_at(existing, "type") != record["type"]:
        return (
            "the record " + ident + " is a " + text_at(existing, "type") + " and cannot become a "
            + text_at(record, "type") + ". Leave the cell of the record empty for a new one."
        )  # fmt: skip
    return ""


def was_chosen_before(out: Outcome, existing: Fields) -> bool:
    """Whether the item of an unsure row was chosen at an earlier import, for the same words."""
    chosen = out["if_chosen"]
    came = value_at(existing, "came")
    if chosen is None or sort_of_value(came) != "group":
        return False
    cells = value_at(came, "cells")
    if sort_of_value(cells) != "group":
        return False
    now = value_at(chosen["came"]["cells"], WHOLE_ITEM)
    return text_at(cells, WHOLE_ITEM) == now and WHOLE_ITEM in cells


def same_record(
    about: Importing, row: KeyedRow, existing: Fields, record: Fields, changed: Changes
) -> SameRecord:
    """What an import changes in a record that is there already."""
    before: Fields = {}
    for name in names_of(changed["sets"]):
        if name != "came":
            before[name] = value_at(existing, name)
    return {
        "id": existing["id"],
        "sets": changed["sets"],
        "before": before,
        "clashes": [clash_of(about, row, field, existing, record) for field in changed["both"]],
    }


def column_of_field(about: Importing, sort: str, field: str) -> str:
    """The name of the last column that a field of a record comes from."""
    name = field
    for column in about["columns"]:
        listed = generic(column["field"])
        own = column["field"] == "=" + field
        if own or (listed not in ["", "notes"] and goes_to(listed, sort) == field):
            name = column["name"]
    return name


def clash_of(
    about: Importing, row: KeyedRow, name: str, existing: Fields, record: Fields
) -> FieldClash:
    """A field that was changed in the app and in the file."""
    ours = held(existing, name)
    theirs = held(record, name)
    cell = ""
    came = value_at(record, "came")
    if sort_of_value(came) == "group":
        cell = text_at(value_at(came, "cells"), name)
    sentence = (
        "Row " + padded(row["row"], 1) + ', "' + column_of_field(about, record["type"], name)
        + '": this was changed here and in the file. Here: ' + value_said(name, ours)
        + ". In the file: " + value_said(name, theirs) + "."
    )  # fmt: skip
    return {"field": name, "ours": ours, "theirs": theirs, "cell": cell, "sentence": sentence}


def value_said(field: str, value: Any) -> str:
    """What a field holds, for a person; "nothing" where it holds nothing."""
    text = ""
    if field == WHOLE_ITEM:
        of = value_at(value, "of")
        variants = text_at(value, "variant")
        if sort_of_value(of) == "list":
            named = [entry["variant"] for entry in of if entry["variant"] != ""]
            variants = joined_by(named, "; ") if len(named) > 0 else variants
        parts = [part for part in [text_at(value, "item"), variants] if part != ""]
        text = joined_by(parts, ", ")
        text = text if text != "" else text_at(value, "called")
    else:
        text = shown_text(field, value)
    return quoted(text) if text != "" else "nothing"


# ---- rows that are given back --------------------------------------------------------------------


def csv_text(rows: Sequence[Sequence[str]]) -> str:
    """A table as text, all cells in quotation marks; lines end as RFC 4180 says."""
    lines: list[str] = []
    for row in rows:
        cells: list[str] = []
        for cell in row:
            marks: list[str] = []
            for c in cell:
                marks.append('""' if c == '"' else c)
            cells.append('"' + joined_by(marks, "") + '"')
        lines.append(joined_by(cells, ",") + "\r\n")
    return joined_by(lines, "")


def rows_given_back(header: Sequence[str], rows: Sequence[LeftOutRow]) -> str:
    """The file (CSV) of rows that could not be imported, each with what is wrong in front."""
    first = ["what is wrong"]
    for name in header:
        first.append(guarded(fit_for_cell(name)))
    table: list[list[str]] = [first]
    for row in rows:
        cells = [guarded(fit_for_cell(joined_by(row["wrong"], " ")))]
        for cell in row["cells"]:
            cells.append(guarded(fit_for_cell(cell)))
        table.append(cells)
    return BYTE_ORDER_MARK + csv_text(table)
