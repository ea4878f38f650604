"""A file of any sort as a table: which sort it is, by its first bytes and not by its name."""

import orjson

from identify.exchange.own_tables import is_own, rows_of
from identify.exchange.table import MOST_BYTES, FileError, Table, checked, without_errors
from identify.exchange.text_files import read_text

NOT_TABLES = (
    (b"\xd0\xcf\x11\xe0", "an old XLS workbook, or one locked with a password"),
    (b"%PDF", "a PDF"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"{\\rtf", "a text document (RTF)"),
    (b"\x1f\x8b", "a packed file"),
    (b"SQLite format 3", "a database"),
)
RECORDS = "identify records"


def read_table(data: bytes, sheet: str = "") -> Table:
    """The table in a file. sheet: which one of a workbook, "" for the first that has rows.

    Raises FileError for what cannot be taken.
    """
    if len(data) > MOST_BYTES:
        raise FileError(
            f"This file has {len(data) / 1e6:,.0f} MB; at most {MOST_BYTES // 1_000_000} MB are "
            "read. Take pictures out of it, or split it."
        )
    if not data.strip():
        raise FileError("This file is empty.")
    if data.startswith(b"PK"):
        # openpyxl takes as long to load as all the rest of the program: only where it is wanted
        from identify.exchange.workbooks import read_workbook  # noqa: PLC0415

        return checked(read_workbook(data, sheet))
    for start, what in NOT_TABLES:
        if data.startswith(start):
            raise FileError(
                f"This is {what}. Open it where it was made, save it as XLSX or CSV, and choose "
                "that file."
            )
    start = data[:400].lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if start.startswith((b"<!doctype", b"<html", b"<?xml", b"<table")):
        raise FileError(
            "This is a web page or XML, whatever its name says. Open it in a spreadsheet program, "
            "save it as XLSX or CSV, and choose that file."
        )
    if start.startswith(b"{"):
        return checked(_records(data))
    table = checked(read_text(data))
    return table if is_own(table.rows[0].cells) else without_errors(table)


def _records(data: bytes) -> Table:
    """The table of a JSON file that this app wrote. Raises FileError."""
    try:
        file = orjson.loads(data)
    except orjson.JSONDecodeError as error:
        raise FileError(
            f"This JSON file is damaged or was cut short, at line {error.lineno}, column "
            f"{error.colno}. Fetch it or write it again."
        ) from error
    kind = file.get("kind") if isinstance(file, dict) else None
    if kind == "identify backup":
        raise FileError("This is a backup. Restore it where backups are made, not here.")
    records = file.get("records") if kind == RECORDS else None
    if not isinstance(records, list) or not all(isinstance(record, dict) for record in records):
        raise FileError(
            "This JSON file holds no records. Choose one that was written here, or CSV or XLSX."
        )
    if file.get("format") != 1:
        raise FileError("This file was written by a newer version. Update the app first.")
    return rows_of(records)
