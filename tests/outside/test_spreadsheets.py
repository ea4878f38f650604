"""Spreadsheets written by another program, LibreOffice, are read right.

How the files were made: fixtures/exchange/SOURCES.md.
"""

from pathlib import Path

import pytest

from identify.exchange.table_files import read_table

FOLDER = Path(__file__).parent.parent.parent / "fixtures" / "exchange"
ROWS = [
    ["Cat. no.", "What", "Colour", "Condition", "Box", "Paid", "Bought", "Remarks"],
    ["P 21", "Express electric like a box", "black, silver line", "VG", "yes", "£94.00",
     "2015-10-23", 'Grand "find", says he'],
    ["G 10", "Oil tank wagon", "", "good", "no", "12/06/26", "12/05/98", ""],
    ["43/6", "Dining car, long", "", "C7", "yes", "£25.50", "13/5/1998", "déjà vu – ¾ hour"],
    ["12", "unknown tin thing", "", "fair", "no", "4.5", "about 1957", ""],
]  # fmt: skip
WRITTEN = {
    "utf8-comma": ("", lambda text: text),
    "windows1252-semicolon": ("Windows-1252", lambda text: text),
    "utf16-tab": ("UTF-16", lambda text: text),
    "cp850-bar": ("code page 850 (DOS)", lambda text: text.replace("–", "-")),
    "mac-comma": ("Mac Roman", lambda text: text.replace("¾", "?")),
}


@pytest.mark.parametrize("name", WRITTEN)
def test_text_in_every_encoding(name):
    encoding, changed = WRITTEN[name]
    found = read_table((FOLDER / f"libreoffice-{name}.csv").read_bytes())
    assert [row["cells"] for row in found["rows"]] == [
        [changed(cell) for cell in row] for row in ROWS
    ]
    assert any(f"read as {encoding}" in note for note in found["notes"]) == (encoding != "")
    assert found["notes"][-1].startswith("The cell H5 (Err:509) holds an error")


def test_a_workbook():
    found = read_table((FOLDER / "libreoffice.xlsx").read_bytes())
    assert [row["cells"] for row in found["rows"]] == [
        ["My trains"],
        ["Cat. no.", "What", "Condition", "Paid", "Bought", "Shelf", "Total"],
        ["P 21", "Express electric like a box", "VG", "£94", "2015-10-23", "0003", "£188"],
        ["G 10", "Oil tank wagon", "", "£12.50", "1998-05-12", "0012", "£25"],
        ["43/6", "Dining car, long", "C7", "£25.50", "1998-05-13", "0012"],
        ["P 20", "Main-line electric, flat ends", "fair", "£4", "about 1957", "0007"],
    ]
    assert found["sheets"] == ["Trains", "Wants"]
    assert found["notes"] == [
        "The cell G5 (#DIV/0!) holds an error of the spreadsheet and no value: taken as empty.",
        "Cells are merged (A1:D1, C3:C4): the value counts for the first cell only, the others are "
        "empty. Unmerge them and fill each in, if it is meant for all.",
        "There are formulas (3): the values they had when the file was saved count.",
        'The sheet "Trains" was read. There is "Wants" too.',
    ]
