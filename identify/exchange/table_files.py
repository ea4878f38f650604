"""A file of any sort as a table: which sort it is, by its first bytes and not by its name."""

from identify.core.importing.file_kinds import (
    no_table_in,
    records_table,
    sort_of_file,
    too_heavy,
    without_sheet_errors,
)
from identify.core.importing.own_tables import is_own
from identify.core.types.importing import FileTable
from identify.exchange.table import FileError, checked
from identify.exchange.text_files import read_text, text_in

BEGINNING = 400  # bytes that tell which sort of file it is


def read_table(data: bytes, sheet: str = "") -> FileTable:
    """The table in a file. sheet: which one of a workbook, "" for the first that has rows.

    Raises FileError for what cannot be taken.
    """
    start = data[:BEGINNING].decode("latin-1")
    wrong = too_heavy(len(data)) or no_table_in(start, len(data))
    if wrong:
        raise FileError(wrong)
    sort = sort_of_file(start)
    if sort == "workbook":
        # openpyxl takes as long to load as all the rest of the program: only where it is wanted
        from identify.exchange.workbooks import read_workbook  # noqa: PLC0415

        return checked(read_workbook(data, sheet))
    if sort == "json":
        return checked(records_table(text_in(data)["text"]))
    table = checked(read_text(data))
    return table if is_own(table["rows"][0]["cells"]) else without_sheet_errors(table)
