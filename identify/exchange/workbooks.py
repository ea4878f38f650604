"""Tables in XLSX workbooks (ECMA-376), read by openpyxl as a stream, never all at once.

openpyxl reads XML through defusedxml, which refuses entities. What it does not give while
streaming, merged cells and which formulas have no kept value, is looked for in the sheet's own XML.
"""

import io
import re
import struct
import warnings
import zipfile
import zlib
from collections.abc import Iterator
from datetime import date, datetime, time, timedelta
from typing import Any
from xml.etree.ElementTree import ParseError

from defusedxml.common import DefusedXmlException
from openpyxl import load_workbook
from openpyxl.utils.cell import range_boundaries
from openpyxl.utils.exceptions import InvalidFileException

from identify.core.currencies import written_as
from identify.core.importing.file_kinds import (
    CUT_WORKBOOK,
    errors_said,
    formulas_said,
    merged_said,
    sheets_said,
)
from identify.core.importing.text_parts import column_letters
from identify.core.importing.text_table import MOST_COLUMNS, MOST_ROWS
from identify.core.types.importing import CellsRow, FileTable
from identify.exchange.archives import opened
from identify.exchange.table import FileError

MERGED = re.compile(rb'<(?:\w+:)?mergeCell\s[^>]*?ref="([A-Z]+\d+:[A-Z]+\d+)"')
FORMULA = re.compile(rb"<(?:\w+:)?f[\s/>]")
SYMBOL = re.compile(r"\[\$([^\-\]]*)[^\]]*\]|([£€$¥])|\"([^\"]*)\"")
ZEROS = re.compile(r"0{2,}")
MOST_CELLS = 2_000_000  # looked at, empty ones too

DAMAGED = (
    zipfile.BadZipFile, zlib.error, struct.error, ParseError, EOFError, InvalidFileException,
    NotImplementedError, RuntimeError,
)  # fmt: skip
ODD = (KeyError, ValueError, TypeError, AttributeError, IndexError, OverflowError)
Cells = Iterator[tuple[Any, ...]]


def read_workbook(data: bytes, sheet: str) -> FileTable:
    """The table on a sheet (the first that has rows, if "" is asked for). Raises FileError."""
    try:
        archive = opened(data)
        with warnings.catch_warnings():  # of styles and extensions that do not matter here
            warnings.simplefilter("ignore")
            return _read(data, archive, sheet)
    except (*DAMAGED, *ODD) as error:
        raise FileError(_reason(error)) from error


def _reason(error: BaseException) -> str:
    """What to say of a workbook that cannot be read; openpyxl wraps what went wrong."""
    chain: list[BaseException] = [error]
    while (before := chain[-1].__cause__ or chain[-1].__context__) is not None:
        chain.append(before)
    if any(isinstance(error, DefusedXmlException) for error in chain):
        return (
            "This workbook declares XML entities, which no spreadsheet does and which can be made "
            "to fill the memory. It was not read. Copy the table into a new workbook."
        )
    if any(isinstance(error, DAMAGED) for error in chain):
        return CUT_WORKBOOK
    return (
        "This file is not a workbook that can be read. Open it in a spreadsheet program, save it "
        "as XLSX and choose that file."
    )


def _read(data: bytes, archive: zipfile.ZipFile, asked: str) -> FileTable:
    book = load_workbook(io.BytesIO(data), read_only=True, data_only=True)
    names = [ws.title for ws in book.worksheets]
    if asked and asked not in names:
        raise FileError(f'There is no sheet "{asked}". There are: {", ".join(names)}.')
    if not names:
        raise FileError("There is no sheet with cells in this workbook.")
    table: FileTable = {"rows": [], "notes": [], "sheet": "", "sheets": [], "wrong": ""}
    for ws in book.worksheets:
        if ws.title == asked or (not asked and not table["rows"]):
            table = _sheet(ws, archive, data)
            table["sheet"], table["sheets"] = ws.title, names
    if not asked:
        table["notes"] += sheets_said(table["sheet"], names)
    return table


def _sheet(ws: Any, archive: zipfile.ZipFile, data: bytes) -> FileTable:
    xml = archive.read(ws._worksheet_path)
    rows: list[CellsRow] = []
    errors: list[list[str]] = []
    looked = 0
    ws.reset_dimensions()  # what the sheet says of its own size may be wrong, or a trap
    for number, cells in enumerate(_rows(ws), 1):
        looked += len(cells) + 1
        if looked > MOST_CELLS:
            raise FileError(
                f'The sheet "{ws.title}" goes on for more cells than can be looked at. Copy the '
                "table alone into a new workbook."
            )
        texts: list[str] = []
        for cell in cells:
            text = cell_text(cell.value, getattr(cell, "number_format", "General"))
            if cell.data_type == "e":
                errors.append([f"{column_letters(len(texts))}{number}", text])
                text = ""
            texts.append(text)
        while texts and not texts[-1].strip():
            texts.pop()
        if len(texts) > MOST_COLUMNS:
            raise FileError(
                f"Row {number} has {len(texts):,} columns, and at most {MOST_COLUMNS} are read. "
                "Remove the columns that say nothing about the pieces."
            )
        if texts:
            rows.append({"row": number, "cells": texts})
        if len(rows) > MOST_ROWS:
            break
    notes = []
    notes += errors_said(errors)
    notes += _merged(xml, rows)
    if FORMULA.search(xml):
        notes += _unkept(data, ws.title, rows, {name for name, _ in errors})
    return {"rows": rows, "notes": notes, "sheet": "", "sheets": [], "wrong": ""}


def _rows(ws: Any) -> Cells:
    return iter(ws.iter_rows())


def _merged(xml: bytes, rows: list[CellsRow]) -> list[str]:
    """What to say of merged cells: the value is in the first only."""
    refs = [ref.decode() for ref in MERGED.findall(xml)]
    kept = {row["row"] for row in rows}
    ranges = []
    for ref in refs:
        _, top, _, bottom = range_boundaries(ref)
        if any(row in kept for row in range(top, min(bottom, top + MOST_ROWS) + 1)):
            ranges.append(ref)
    return merged_said(ranges)


def _unkept(data: bytes, title: str, rows: list[CellsRow], wrong: set[str]) -> list[str]:
    """What to say of formulas: some have no value kept beside them. wrong: cells with errors."""
    texts = {row["row"]: row["cells"] for row in rows}
    book = load_workbook(io.BytesIO(data), read_only=True, data_only=False)
    ws = book[title]
    ws.reset_dimensions()
    formulas = 0
    empty = []
    for number, cells in enumerate(_rows(ws), 1):
        for place, cell in enumerate(cells):
            if cell.data_type == "f":
                formulas += 1
                row = texts.get(number, [])
                name = f"{column_letters(place)}{number}"
                if name not in wrong and (place >= len(row) or row[place] == ""):
                    empty.append(name)
        if number > max(texts, default=0) + 1000:
            break
    return formulas_said(formulas, empty)


def cell_text(value: Any, number_format: str) -> str:
    """A cell's value as the text that a person would type for it."""
    if value is None:
        return ""
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, datetime):
        return (
            value.date().isoformat() if value.time() == time() else value.isoformat(" ", "minutes")
        )
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, time | timedelta):
        return str(value)
    if isinstance(value, int | float):
        return _number(value, number_format or "General")
    return str(value)


def _number(value: int | float, number_format: str) -> str:
    """A number with what its format adds: the currency, and the zeros in front."""
    plain = str(int(value)) if float(value).is_integer() else repr(round(float(value), 10))
    first = number_format.split(";", maxsplit=1)[0]
    if ZEROS.fullmatch(first):
        return plain.zfill(len(first))
    match = SYMBOL.search(first)
    symbol = next((part for part in match.groups() if part), "").strip() if match else ""
    if not written_as(symbol.upper(), "marks"):
        return plain
    whole = float(value).is_integer() or round(value, 2) != round(value, 10)
    return f"{symbol}{plain if whole else f'{value:.2f}'}"
