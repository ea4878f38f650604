"""The parts of a workbook (ECMA-376, SpreadsheetML and Open Packaging Conventions): every cell is
text, whatever it looks like. The platform puts them into a zip file.
"""

from collections.abc import Sequence

from ..edtf import padded
from ..importing.text_parts import column_letters, joined_by
from ..native.values import weight_of
from ..types.exporting import WorkbookPart, WrittenTable

WIDEST = 40  # letters that a column is wide at most
MEASURED = 200  # rows that say how wide it is
HEX = "0123456789ABCDEFabcdef"
PROLOG = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'
MAIN = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"'
OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships"
PACKAGE = "http://schemas.openxmlformats.org/package/2006/"
SHEET_TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml."
STYLES = (
    "<fonts><font/><font><b/></font></fonts>"
    '<fills><fill><patternFill patternType="none"/></fill>'
    '<fill><patternFill patternType="gray125"/></fill></fills>'
    "<borders><border/></borders><cellStyleXfs><xf/></cellStyleXfs>"
    '<cellXfs><xf numFmtId="49"/><xf numFmtId="49" fontId="1" applyFont="1"/></cellXfs>'
    '<cellStyles><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles>'
)
BOLD = ' s="1"'


def marked_up(text: str) -> str:
    """A text as it stands in XML and HTML, between tags and in quotation marks."""
    out: list[str] = []
    start = 0
    for at in range(len(text)):
        c = text[at]
        if c in ["&", "<", ">", '"', "'"]:
            out.append(text[start:at])
            start = at + 1
            if c == "&":
                out.append("&amp;")
            elif c == "<":
                out.append("&lt;")
            elif c == ">":
                out.append("&gt;")
            else:
                out.append("&quot;" if c == '"' else "&#x27;")
    out.append(text[start:])
    return joined_by(out, "")


def is_escape(text: str) -> bool:
    """Whether these seven characters mean another one in a cell: _x000D_ (ECMA-376 part 1,
    ST_Xstring, from memory).
    """
    if len(text) < 7 or text[0:2] != "_x" or text[6] != "_":
        return False
    for c in text[2:6]:
        if c not in HEX:
            return False
    return True


def cell_content(text: str) -> str:
    """The content of a cell: what would be taken for the escape of a character is escaped."""
    out: list[str] = []
    start = 0
    for at in range(len(text)):
        if text[at] == "_" and is_escape(text[at : at + 7]):
            out.append(text[start:at] + "_x005F")
            start = at
    out.append(text[start:])
    return marked_up(joined_by(out, ""))


def width_of(table: WrittenTable, place: int) -> int:
    """How many letters wide a column is; a letter with an accent counts twice."""
    longest = len(table["names"][place])
    for row in table["rows"][0:MEASURED]:
        longest = max(longest, weight_of(row[place]))
    return min(longest + 2, WIDEST)


def sheet_text(columns: Sequence[int], frozen: bool, rows: Sequence[str]) -> str:
    """A sheet of rows by row_text(). columns: how wide each is; frozen: the first row stays."""
    panes = '<pane ySplit="1" topLeftCell="A2" activePane="bottomLeft" state="frozen"/>'
    widths: list[str] = []
    for n in range(len(columns)):
        place = padded(n + 1, 1)
        wide = padded(columns[n], 1)
        widths.append(
            '<col min="' + place + '" max="' + place + '" width="' + wide + '" customWidth="1"/>'
        )
    return (
        PROLOG + "<worksheet " + MAIN + '><sheetViews><sheetView workbookViewId="0">'
        + (panes if frozen else "") + "</sheetView></sheetViews><cols>" + joined_by(widths, "")
        + "</cols><sheetData>" + joined_by(rows, "") + "</sheetData></worksheet>"
    )  # fmt: skip


def row_text(line: int, row: Sequence[str], texts: list[str], style: str) -> str:
    """A row of a sheet, counted from 1; its texts are added to those that all cells share."""
    number = padded(line, 1)
    cells: list[str] = []
    for place in range(len(row)):
        if row[place] != "":
            where = '<c r="' + column_letters(place) + number + '"' + style
            cells.append(where + ' t="s"><v>' + padded(len(texts), 1) + "</v></c>")
            texts.append('<si><t xml:space="preserve">' + cell_content(row[place]) + "</t></si>")
    return '<row r="' + number + '">' + joined_by(cells, "") + "</row>"


def linked(parts: Sequence[Sequence[str]]) -> str:
    """The relationships of a part: [[what the other one is, where]]."""
    out = ""
    for n in range(len(parts)):
        kind = OFFICE + "/" + parts[n][0]
        out = out + '<Relationship Id="rId' + padded(n + 1, 1) + '" Type="' + kind + '"'
        out = out + ' Target="' + parts[n][1] + '"/>'
    return (
        PROLOG + '<Relationships xmlns="' + PACKAGE + 'relationships">' + out + "</Relationships>"
    )


def kinds_of_parts() -> str:
    """What each part of the package is."""
    out = ""
    for part in [
        ["workbook", "sheet.main"], ["worksheets/sheet1", "worksheet"],
        ["worksheets/sheet2", "worksheet"], ["styles", "styles"],
        ["sharedStrings", "sharedStrings"],
    ]:  # fmt: skip
        out = out + '<Override PartName="/xl/' + part[0] + '.xml" ContentType="' + SHEET_TYPE
        out = out + part[1] + '+xml"/>'
    relations = "application/vnd.openxmlformats-package.relationships+xml"
    return (
        PROLOG + '<Types xmlns="' + PACKAGE + 'content-types"><Default Extension="rels" '
        + 'ContentType="' + relations + '"/><Default Extension="xml" '
        + 'ContentType="application/xml"/>' + out + "</Types>"
    )  # fmt: skip


def book_text(names: Sequence[str]) -> str:
    """The workbook itself: what its sheets are called."""
    sheets = ""
    for n in range(len(names)):
        at = padded(n + 1, 1)
        link = '" sheetId="' + at + '" r:id="rId' + at + '"/>'
        sheets = sheets + '<sheet name="' + names[n] + link
    office = 'xmlns:r="' + OFFICE + '"'
    return (
        PROLOG + "<workbook " + MAIN + " " + office + "><sheets>" + sheets + "</sheets></workbook>"
    )


def workbook_parts(table: WrittenTable, about: Sequence[str]) -> list[WorkbookPart]:
    """The parts of a workbook with a table on the sheet "records", and what it is on "about"."""
    texts: list[str] = []
    rows = [row_text(1, table["names"], texts, BOLD)]
    for n in range(len(table["rows"])):
        rows.append(row_text(n + 2, table["rows"][n], texts, ""))
    notes: list[str] = []
    for n in range(len(about)):
        notes.append(row_text(n + 1, about[n : n + 1], texts, ""))
    widths: list[int] = []
    for place in range(len(table["names"])):
        widths.append(width_of(table, place))
    links = [
        ["worksheet", "worksheets/sheet1.xml"], ["worksheet", "worksheets/sheet2.xml"],
        ["styles", "styles.xml"], ["sharedStrings", "sharedStrings.xml"],
    ]  # fmt: skip
    shared = PROLOG + "<sst " + MAIN + ">" + joined_by(texts, "") + "</sst>"
    styles = PROLOG + "<styleSheet " + MAIN + ">" + STYLES + "</styleSheet>"
    return [
        {"name": "[Content_Types].xml", "text": kinds_of_parts()},
        {"name": "_rels/.rels", "text": linked([["officeDocument", "xl/workbook.xml"]])},
        {"name": "xl/workbook.xml", "text": book_text(["records", "about"])},
        {"name": "xl/_rels/workbook.xml.rels", "text": linked(links)},
        {"name": "xl/worksheets/sheet1.xml", "text": sheet_text(widths, True, rows)},
        {"name": "xl/worksheets/sheet2.xml", "text": sheet_text([100], False, notes)},
        {"name": "xl/styles.xml", "text": styles},
        {"name": "xl/sharedStrings.xml", "text": shared},
    ]
