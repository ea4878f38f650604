"""Workbooks for the tests, as bytes; XML by hand where no library would write it."""

import io
import zipfile
from collections.abc import Callable
from typing import Any

from openpyxl import Workbook

TYPES = (
    '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
    '<Default Extension="rels" '
    'ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
    '<Override PartName="/xl/workbook.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>'
    '<Override PartName="/xl/worksheets/sheet1.xml" ContentType='
    '"application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/></Types>'
)
OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
RELS = (
    '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">'
    '<Relationship Id="rId1" Type="{kind}" Target="{target}"/></Relationships>'
)
BOOK = (
    '<workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" '
    f'xmlns:r="{OFFICE}"><sheets><sheet name="Trains" sheetId="1" r:id="rId1"/></sheets></workbook>'
)
SHEET = (
    '<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'
    "<sheetData>{rows}</sheetData></worksheet>"
)


def book(fill: Callable[[Any], None]) -> bytes:
    """A workbook whose first sheet is filled by a function."""
    made = Workbook()
    fill(made.active)
    out = io.BytesIO()
    made.save(out)
    return out.getvalue()


def by_hand(rows: str, prolog: str = "", more: dict[str, bytes] | None = None) -> bytes:
    """A workbook with these XML rows, and other parts beside."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("[Content_Types].xml", TYPES)
        archive.writestr(
            "_rels/.rels", RELS.format(kind=f"{OFFICE}/officeDocument", target="xl/workbook.xml")
        )
        archive.writestr("xl/workbook.xml", BOOK)
        archive.writestr(
            "xl/_rels/workbook.xml.rels",
            RELS.format(kind=f"{OFFICE}/worksheet", target="worksheets/sheet1.xml"),
        )
        archive.writestr("xl/worksheets/sheet1.xml", prolog + SHEET.format(rows=rows))
        for name, content in (more or {}).items():
            archive.writestr(name, content)
    return out.getvalue()


def written(*cells: str) -> str:
    """A row of text cells as XML."""
    parts = "".join(f'<c t="inlineStr"><is><t>{cell}</t></is></c>' for cell in cells)
    return f"<row>{parts}</row>"
