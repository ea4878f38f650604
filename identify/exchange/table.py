"""A table as it was read from a file: cells as text, with their rows in the file."""

import re

import msgspec

from identify.errors import UserError

MOST_BYTES = 20_000_000
MOST_ROWS = 20_000
MOST_COLUMNS = 500
NAMED = 5  # cells of one kind that are named
# How the usual programs write the errors of formulas (from memory).
ERROR = re.compile(r"#(?:DIV/0!|N/A|NAME\?|NULL!|NUM!|REF!|VALUE!)|Err:\d{3}")
MOST_NOTES = 40  # sentences about one file


class FileError(UserError):
    """A file that cannot be taken at all, with what would be right."""


class CellError(Exception):
    """A cell that cannot be read: a sentence about what it says."""


class Row(msgspec.Struct):
    """One row; `row` counts from 1 as the file does."""

    row: int
    cells: list[str]


class Table(msgspec.Struct):
    """What a file holds. `sheets` is empty for a text file. Empty rows are left out."""

    rows: list[Row]
    notes: list[str]
    sheet: str = ""
    sheets: list[str] = []


def quoted(text: str, most: int = 60) -> str:
    """A cell's text for a sentence, on one line and cut where it is long."""
    line = " ".join(text.split())
    return f'"{line if len(line) <= most else line[: most - 1] + "…"}"'


def letters(place: int) -> str:
    """What a spreadsheet calls its column: 0 is A, 26 is AA."""
    name = ""
    place += 1
    while place > 0:
        place, rest = divmod(place - 1, 26)
        name = chr(65 + rest) + name
    return name


def listed(numbers: list[int], most: int = 5) -> str:
    """Row numbers in words: "row 3", "rows 3, 4 and 9", "rows 3, 4, 5 and 12 more"."""
    if len(numbers) == 1:
        return f"row {numbers[0]}"
    shown = [str(n) for n in numbers[:most]]
    if len(numbers) > most:
        return f"rows {', '.join(shown)} and {len(numbers) - most} more"
    return f"rows {', '.join(shown[:-1])} and {shown[-1]}"


def cells_named(cells: list[str]) -> str:
    """Cells for a sentence."""
    if len(cells) == 1:
        return f"The cell {cells[0]}"
    more = f" and {len(cells) - NAMED} more" if len(cells) > NAMED else ""
    return f"The cells {', '.join(cells[:NAMED])}{more}"


def errors_said(errors: list[tuple[str, str]]) -> list[str]:
    """What to say of cells that hold an error: [(cell, what stands there)]."""
    if not errors:
        return []
    what = "holds an error" if len(errors) == 1 else "hold errors"
    named = cells_named([f"{cell} ({text})" for cell, text in errors])
    return [f"{named} {what} of the spreadsheet and no value: taken as empty."]


def without_errors(table: Table) -> Table:
    """The table with what a spreadsheet wrote for its errors taken out, and told."""
    errors = []
    for row in table.rows:
        for place, cell in enumerate(row.cells):
            if ERROR.fullmatch(cell.strip()):
                errors.append((f"{letters(place)}{row.row}", cell.strip()))
                row.cells[place] = ""
    table.notes += errors_said(errors)
    return table


def checked(table: Table) -> Table:
    """The table if it is of a size that can be taken. Raises FileError."""
    if len(table.rows) == 0:
        raise FileError("There is nothing in this table. Choose a file with a row a piece.")
    if len(table.rows) > MOST_ROWS:
        raise FileError(
            f"This table has more than {MOST_ROWS:,} rows. Split it into several files."
        )
    widest = max(table.rows, key=lambda row: len(row.cells))
    if len(widest.cells) > MOST_COLUMNS:
        raise FileError(
            f"Row {widest.row} has {len(widest.cells):,} columns, and at most {MOST_COLUMNS} are "
            "read. Remove the columns that say nothing about the pieces."
        )
    return table
