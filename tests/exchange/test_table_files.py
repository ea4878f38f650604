"""Files of every sort, and of no sort: what is read, and the sentence where it cannot be."""

import csv
import io
import zipfile

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from identify.core.importing.file_kinds import MOST_BYTES
from identify.exchange import archives
from identify.exchange.table import FileError
from identify.exchange.table_files import read_table
from tests.exchange.books import book, by_hand, written
from tests.exchange.strategies import QUICK

HEAD = ["Number", "What", "Price"]
CELL = st.text("abcdefghiäéß£½ 0123456789.,-'\"\n", min_size=1, max_size=12).filter(str.strip)
UNICODE = ["utf-8", "utf-8-sig", "utf-16", "utf-32"]
OLDER = ["cp1252", "cp850", "mac_roman"]


@QUICK
@given(
    rows=st.lists(st.lists(CELL, min_size=3, max_size=3), min_size=2, max_size=12),
    delimiter=st.sampled_from(",;\t|"),
    line=st.sampled_from(["\n", "\r\n"]),
    codec=st.sampled_from(UNICODE),
)
def test_any_delimiter_encoding_and_line_end_gives_the_same_cells(rows, delimiter, line, codec):
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter, lineterminator=line, quoting=csv.QUOTE_ALL).writerows(
        [HEAD, *rows]
    )
    found = read_table(out.getvalue().encode(codec))
    assert [row["cells"] for row in found["rows"]] == [HEAD, *rows]


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|", "^"])
def test_decimal_commas_and_commas_in_words_do_not_mislead(delimiter):
    rows = [
        ["No.", "What", "Paid"],
        ["P 21", "Electric, like a box", "4,50"],
        ["G 1", "Wagon", "12,00"],
    ]
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter).writerows(rows)
    assert [row["cells"] for row in read_table(out.getvalue().encode())["rows"]] == rows


@pytest.mark.parametrize("codec", OLDER)
def test_older_encodings_are_told_apart(codec):
    text = "Number;What;Paid\nP 21;Façade déjà vu, Kühlwagen – groß;£4.50\n"
    text = text.replace("–", "-") if codec == "cp850" else text
    found = read_table(text.encode(codec))
    assert found["rows"][1]["cells"][1:] == [text.splitlines()[1].split(";")[1], "£4.50"]
    assert "it was read as" in found["notes"][0]


def test_rows_are_counted_as_a_spreadsheet_counts_them():
    found = read_table(b'No,What\n\nP 1,"two\nlines"\nP 2,one\n')
    assert [row["row"] for row in found["rows"]] == [1, 3, 4]


def test_the_line_that_names_the_delimiter_is_followed():
    found = read_table(b"sep=;\nNo;What, and more\nP 1;a, b\n")
    assert [(row["row"], row["cells"]) for row in found["rows"]] == [
        (2, ["No", "What, and more"]),
        (3, ["P 1", "a, b"]),
    ]


def test_many_blanks_in_front_are_no_empty_file():
    found = read_table(b"\r\n" * 250 + b"No;What\r\nP 1;a\r\n")
    assert [(row["row"], row["cells"]) for row in found["rows"]] == [
        (251, ["No", "What"]),
        (252, ["P 1", "a"]),
    ]


# ---- bad input: the file, and the sentence -------------------------------------------------------

CSV = b"No;What;Paid\nP 1;a;1\nP 2;b;2\nP 3;c;3\n"
TEMPLATE = by_hand(written("No", "What"))
REFUSED = {
    "empty": (b"  \n", "This file is empty."),
    "a long file of blanks": (
        b" \n" * 300,
        "There is nothing in this table. Choose a file with a row for each piece.",
    ),
    "too large": (
        b"a" * (MOST_BYTES + 1_000_000),
        "This file has 21 MB; at most 20 MB are read. Take pictures out of it, or split it.",
    ),
    "old workbook": (
        b"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1" + bytes(100),
        "This is an old XLS workbook, or one locked with a password. Open it where it was made, "
        "save it as XLSX or CSV, and choose that file.",
    ),
    "PDF": (
        b"%PDF-1.7 ...",
        "This is a PDF. Open it where it was made, save it as XLSX or CSV, and choose that file.",
    ),
    "web page": (
        b"<html><table><tr><td>P 1</td></tr></table></html>",
        "This is a web page or XML, whatever its name says. Open it in a spreadsheet program, save "
        "it as XLSX or CSV, and choose that file.",
    ),
    "bytes": (
        bytes(range(1, 9)) * 40,
        "This is not a table in plain text. Save it as CSV or XLSX, and choose that file.",
    ),
    "backup": (
        b'{"format": 1, "kind": "identify backup", "records": []}',
        "This is a backup. Restore it where backups are made, not here.",
    ),
    "other JSON": (
        b'{"a": 1}',
        "This JSON file holds no records. Choose one that was written here, or CSV or XLSX.",
    ),
    "cut JSON": (
        b'{"format": 1,\n "kind": "identify records", "rec',
        "This JSON file is damaged or was cut short. Fetch it or write it again.",
    ),
    "cut workbook": (
        TEMPLATE[: len(TEMPLATE) // 2],
        "This XLSX file is damaged, or was cut short. Save it or fetch it again.",
    ),
    "other archive": (
        None,
        "This is a zip archive, not a workbook. Choose the file inside it.",
    ),
    "wide text": (
        b";".join([b"x"] * 100_000) + b"\n" + b";".join([b"1"] * 100_000),
        "Row 1 has 100,000 columns, and at most 500 are read. Remove the columns that say "
        "nothing about the pieces.",
    ),
    "wide sheet": (
        by_hand(written(*["x"] * 16_000)),
        "Row 1 has 16,000 columns, and at most 500 are read. Remove the columns that say "
        "nothing about the pieces.",
    ),
    "long text": (
        b"No,What\n" + b"P 1,a\n" * 20_001,
        "This table has more than 20,000 rows. Split it into several files.",
    ),
    "no rows": (
        by_hand("<row/>" * 5),
        "There is nothing in this table. Choose a file with a row for each piece.",
    ),
    "entities": (
        by_hand(
            written("&b;"),
            '<!DOCTYPE w [<!ENTITY a "lol"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;">]>',
        ),
        "This workbook declares XML entities, which no spreadsheet does and which can be made to "
        "fill the memory. It was not read. Copy the table into a new workbook.",
    ),
    "zip bomb": (
        by_hand(written("No"), more={"xl/media/image1.png": bytes(40_000_000)}),
        "Unpacked, this file would take 40 MB. It was not opened. Copy the table into a new "
        "workbook, without empty rows and pictures.",
    ),
    "many parts": (
        by_hand(written("No"), more={f"xl/media/{n}.png": b"" for n in range(2100)}),
        "This file has 2,105 parts inside, where a workbook has a few dozen. It was not opened. "
        "Copy the table into a new workbook.",
    ),
    "far cells": (
        by_hand(
            "".join(
                f'<row r="{n}"><c r="XFD{n}" t="inlineStr"><is><t></t></is></c></row>'
                for n in range(1, 400)
            )
        ),
        'The sheet "Trains" goes on for more cells than can be looked at. Copy the table alone '
        "into a new workbook.",
    ),
    "row numbers": (
        by_hand('<row r="99999999999"><c t="inlineStr"><is><t>x</t></is></c></row>'),
        'The sheet "Trains" goes on for more cells than can be looked at. Copy the table alone '
        "into a new workbook.",
    ),
    "no XML": (
        by_hand("<row><c></row>"),
        "This XLSX file is damaged, or was cut short. Save it or fetch it again.",
    ),
}


def archive() -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w") as made:
        made.writestr("list.csv", CSV)
    return out.getvalue()


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_taken_is_told(name):
    data, sentence = REFUSED[name]
    with pytest.raises(FileError) as told:
        read_table(archive() if data is None else data)
    assert str(told.value) == sentence


TOLD = {
    "cut in a character": (
        "No;What\nP 1;café".encode()[:-1],
        "The file ends inside a character: it was cut short. Look at its last row.",
    ),
    "cut in a row": (
        b"No;What;Paid\nP 1;a;1\nP 2;b;2\nP 3;c",
        "The last row, 4, has 2 cells and no line end, where others have 3: the file may be cut "
        "short.",
    ),
    "cut in quotation marks": (
        b'No;What\nP 1;"a"\nP 2;"b\nP 3;c\n',
        "Quotation marks do not match in row 3: taken as part of the text. The file may be cut "
        "short.",
    ),
    "older encoding": (
        "No;What\nP 1;Kühlwagen\n".encode("cp1252"),
        "The file is not in Unicode; it was read as Windows-1252. If £ or accents look wrong, save "
        "it again as CSV UTF-8.",
    ),
    "two encodings": (
        "No;What\nP 1;Kühlwagen für Größere äöü\n".encode() + "P 2;é\n".encode("cp1252"),
        "The file is in UTF-8, but some characters in line 3 are not: they are shown as “\ufffd”. "
        "Look at those rows.".replace("“", '"').replace("”", '"'),
    ),
    "too many cells": (
        b"No,What\nP 1,a\nP 2,b, c\nP 3,d\n",
        "Row 3 has more cells than the 2 of the others: text with a comma in it may need quotation "
        "marks. The rest is in columns of its own.",
    ),
    "errors": (
        b"No,What\nP 1,#REF!\nP 2,Err:509\n",
        "The cells B2 (#REF!), B3 (Err:509) hold errors of the spreadsheet and no value: taken as "
        "empty.",
    ),
}


@pytest.mark.parametrize("name", TOLD)
def test_what_is_odd_is_told_and_the_rest_is_read(name):
    data, sentence = TOLD[name]
    found = read_table(data)
    assert found["notes"] == [sentence]
    assert found["rows"][0]["cells"][0] == "No"
    assert found["rows"][1]["cells"][0] == "P 1"


def test_a_quotation_mark_never_closed_loses_no_row():
    found = read_table(b'No;What\nP 1;"a"\nP 2;"b\nP 3;"c"\n')
    assert [row["cells"] for row in found["rows"][1:]] == [["P 1", "a"], ["P 2", "b"], ["P 3", "c"]]


# ---- workbooks -----------------------------------------------------------------------------------


def test_merged_cells_count_once_and_are_told():
    def fill(sheet):
        sheet.append(["No", "Condition"])
        sheet.append(["P 1", "good"])
        sheet.append(["P 2", None])
        sheet.merge_cells("B2:B3")

    found = read_table(book(fill))
    assert found["rows"][2]["cells"] == ["P 2"]
    assert found["notes"] == [
        "Cells are merged (B2:B3): the value counts for the first cell only, the others are empty. "
        "Unmerge them and fill each in, if it is meant for all."
    ]


def test_a_formula_without_a_kept_value_is_told():
    def fill(sheet):
        sheet.append(["No", "Paid"])
        sheet.append(["P 1", "=1+1"])

    found = read_table(book(fill))
    assert found["notes"] == [
        "The cell B2 holds a formula without a kept value: taken as empty. Open the file in a "
        "spreadsheet program and save it there."
    ]


def test_kept_values_of_formulas_count():
    cell = '<row><c r="A1"><f>1+1</f><v>2</v></c><c r="B1" t="e"><f>1/0</f><v>#DIV/0!</v></c></row>'
    found = read_table(by_hand(cell))
    assert found["rows"][0]["cells"] == ["2"]
    assert found["notes"] == [
        "The cell B1 (#DIV/0!) holds an error of the spreadsheet and no value: taken as empty.",
        "There are formulas (2): the values they had when the file was saved count.",
    ]


def test_a_million_empty_rows_are_nothing():
    far = '<row r="1048576"><c t="inlineStr"><is><t>P 2</t></is></c></row>'
    found = read_table(by_hand(written("No") + written("P 1") + far))
    assert [(row["row"], row["cells"]) for row in found["rows"]] == [
        (1, ["No"]),
        (2, ["P 1"]),
        (1048576, ["P 2"]),
    ]


def test_more_empty_cells_than_there_is_memory_for_are_not_opened(monkeypatch):
    monkeypatch.setattr(archives, "SMALL", 0)
    monkeypatch.setattr(archives, "MOST_TAGS", 1000)
    assert read_table(by_hand(written("No")))["rows"]
    with pytest.raises(FileError, match=r"has more cells than can be read, empty ones too\."):
        read_table(by_hand(written("No") + "<row>" + '<c s="7"/>' * 1000 + "</row>"))


def test_another_sheet_can_be_asked_for():
    def fill(sheet):
        sheet.append(["No"])
        sheet.append(["P 1"])
        other = sheet.parent.create_sheet("Wants")
        other.append(["No"])
        other.append(["P 2"])

    data = book(fill)
    assert read_table(data)["notes"] == ['The sheet "Sheet" was read. There is "Wants" too.']
    assert read_table(data, "Wants")["rows"][1]["cells"] == ["P 2"]
    with pytest.raises(FileError, match=r'There is no sheet "Spares"\. There are: Sheet, Wants\.'):
        read_table(data, "Spares")


def said(data: bytes) -> str:
    """The sentence with which a file is refused, "" where it is read."""
    try:
        return "" if read_table(data)["rows"] else "nothing read"
    except FileError as error:
        return str(error)


@QUICK
@given(st.binary(max_size=400))
def test_any_bytes_are_read_or_refused_in_a_sentence(data):
    assert said(data) == "" or said(data).endswith(".")


@QUICK
@given(at=st.integers(0, len(TEMPLATE) - 1), value=st.integers(0, 255))
@example(at=TEMPLATE.index(b"PK\1\2") + 6, value=64)  # a zip of a version that is to come
def test_a_damaged_workbook_is_read_or_refused_in_a_sentence(at, value):
    data = TEMPLATE[:at] + bytes([value]) + TEMPLATE[at + 1 :]
    assert said(data) == "" or said(data).endswith(".")
