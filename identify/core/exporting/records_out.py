"""Records as a file: CSV, XLSX or JSON. Each says that it lists valuables in a house: the JSON in a
field, the workbook on a sheet of its own, the CSV by its name, so that nothing is in the way when
it is read again.
"""

from collections.abc import Sequence

from ..importing.rows_matched import BYTE_ORDER_MARK, csv_text
from ..importing.text_parts import joined_by
from ..native.values import json_text
from ..types.exporting import WorkbookPart, WrittenTable
from ..types.importing import Fields
from .workbook_parts import workbook_parts

ABOUT = [
    "This lists valuables in a house. Keep it, and send it, with care.",
    "Pictures are not in it; a backup has them.",
    "Every column may be changed but “record” and “further”. A changed cell is taken up when the "
    "file is imported; an empty “record” makes a new one.",
    "An apostrophe in front of a cell keeps spreadsheets from running it; it is taken off again.",
]


def records_file_name(ending: str, day: str) -> str:
    """What a file of records is called: it says what it holds."""
    return "stallside-collection-valuables-" + day + "." + ending


def records_csv(table: WrittenTable) -> str:
    """A table of records as CSV."""
    lines = [table["names"]]
    for row in table["rows"]:
        lines.append(row)
    return BYTE_ORDER_MARK + csv_text(lines)


def records_workbook(table: WrittenTable) -> list[WorkbookPart]:
    """A table of records as the parts of a workbook."""
    return workbook_parts(table, ABOUT)


def records_json(records: Sequence[Fields], made: str) -> str:
    """Records as JSON. made: the time."""
    about = json_text(joined_by(ABOUT[0:2], " "))
    lines = [json_text(record) for record in records]
    return (
        '{"format":1,"kind":"identify records","made":' + json_text(made) + ',"about":' + about
        + ',"records":[\n' + joined_by(lines, ",\n") + "\n]}\n"
    )  # fmt: skip
