"""Workbooks as they are written: every cell is text, whatever it looks like."""

import io
from typing import Any

from openpyxl import Workbook
from openpyxl.cell import WriteOnlyCell
from openpyxl.styles import Font
from openpyxl.utils import get_column_letter

OWN_SHEETS = ["records", "about"]  # of a workbook that this app writes
WIDEST = 40  # letters that a column is wide at most


def workbook(names: list[str], rows: list[list[str]], about: tuple[str, ...]) -> bytes:
    """A workbook with these headings and rows; about: the lines of a sheet that says what it is."""
    book = Workbook(write_only=True)
    sheet = book.create_sheet(OWN_SHEETS[0] if about else "rows")
    sheet.freeze_panes = "A2"
    for place, name in enumerate(names):
        longest = max([len(name), *(len(row[place]) for row in rows[:200] if place < len(row))])
        sheet.column_dimensions[get_column_letter(place + 1)].width = min(longest + 2, WIDEST)
    sheet.append([_text(sheet, name, bold=True) for name in names])
    for row in rows:
        sheet.append([_text(sheet, cell) if cell else None for cell in row])
    if about:
        notes = book.create_sheet(OWN_SHEETS[1])
        notes.column_dimensions["A"].width = 100
        for line in about:
            notes.append([line])
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _text(sheet: Any, text: str, bold: bool = False) -> Any:
    """A cell that is text whatever it looks like."""
    cell = WriteOnlyCell(sheet, value=text)
    cell.data_type = "s"
    if bold:
        cell.font = Font(bold=True)
    return cell
