"""A CSV file of which single cells, rows and columns are changed; every other byte stays."""

import csv
import io

from identify.errors import UserError
from identify.reference.mistakes import quoted

BREAKS = ("\r\n", "\n", "\r")


class EditError(UserError):
    """An edit that cannot be made, in a sentence."""


class Row:
    """One row as it is written: `key` names it while lines move; "" in `end` at the file's end."""

    def __init__(self, key: str, raw: list[str], end: str) -> None:
        self.key = key
        self.raw = raw
        self.end = end

    @property
    def cells(self) -> list[str]:
        """What the cells say."""
        return [_said(raw) for raw in self.raw]

    @property
    def text(self) -> str:
        """The row as it stands in the file."""
        return ",".join(self.raw) + self.end

    @property
    def height(self) -> int:
        """How many lines it takes."""
        return len(io.StringIO(self.text, newline="").readlines())

    @property
    def blank(self) -> bool:
        """Whether it says nothing."""
        return not any(cell.strip() for cell in self.cells)


def _said(raw: str) -> str:
    """What a cell says; only quotation marks at its very beginning count."""
    return raw[1:-1].replace('""', '"') if raw.startswith('"') else raw


def _needs_quotes(text: str) -> bool:
    return any(mark in text for mark in ',"\r\n')


def _split(text: str) -> list[Row]:
    """The rows of a file, cut where RFC 4180 cuts them."""
    rows: list[Row] = []
    raw: list[str] = []
    line, start, at, within = 1, 0, 0, False
    begun = 1
    while at < len(text):
        mark = text[at]
        end = next((each for each in BREAKS if text.startswith(each, at)), "")
        if mark == '"' and text[start] == '"':
            within = not within
        elif within or (mark != "," and not end):
            pass
        elif mark == ",":
            raw.append(text[start:at])
            start = at + 1
        if end:
            line += 1
            if not within:
                rows.append(Row(f"r{begun}", [*raw, text[start:at]], end))
                raw, start, begun = [], at + len(end), line
        at += len(end) or 1
    if start < len(text) or raw:
        rows.append(Row(f"r{begun}", [*raw, text[start:]], ""))
    return rows


class CsvText:
    """The text of a file, taken apart into rows. Raises EditError for what is no CSV."""

    def __init__(self, text: str, name: str) -> None:
        self.name = name
        self.rows = _split(text)
        try:
            read = list(csv.reader(io.StringIO(text, newline=""), strict=True))
        except csv.Error as error:
            read = [[str(error)]]
        apart = [row.cells if row.raw != [""] else [] for row in self.rows]
        self.head = next((row for row in self.rows if not row.blank), None)
        if read != apart or self.head is None:
            what = "cannot be read as CSV. Mend its quotation marks in a text editor first."
            raise EditError(f"{name} {what}")
        self.end = self.rows[0].end or "\n"
        written = [raw for row in self.rows for raw in row.raw if raw]
        self.quotes_all = all(raw.startswith('"') for raw in written)

    @property
    def columns(self) -> list[str]:
        """The names of the columns, as they are compared."""
        return [cell.strip().lower() for cell in self.head.cells] if self.head else []

    @property
    def text(self) -> str:
        """The file as it is now."""
        return "".join(row.text for row in self.rows)

    def entries(self) -> list[Row]:
        """The rows that say something, without the header."""
        return [row for row in self.rows if row is not self.head and not row.blank]

    def lines(self) -> dict[str, int]:
        """The line on which each row begins now, by its key."""
        lines, line = {}, 1
        for row in self.rows:
            lines[row.key] = line
            line += row.height
        return lines

    def fields(self, row: Row) -> dict[str, str]:
        """What a row says, by column."""
        said = [cell.strip() for cell in row.cells]
        return {name: cell for name, cell in zip(self.columns, said, strict=False) if name}

    def row(self, key: str) -> Row:
        """The row of that key. Raises EditError."""
        for row in self.rows:
            if row.key == key and row is not self.head:
                return row
        raise EditError(f"{self.name}: that row is no longer there. Read the pack again.")

    def set(self, key: str, column: str, old: str, value: str) -> None:
        """Write one cell that says `old` now. A column that is new comes last. Raises EditError."""
        row = self.row(key)
        now = self.fields(row).get(column, "")
        if now != old:
            what = f"in the column {column} it says {quoted(now)} now and not {quoted(old)}"
            raise EditError(f"{self.name} line {self.lines()[key]}: {what}. Read the pack again.")
        place = self._place(column)
        row.raw += [""] * (place + 1 - len(row.raw))
        row.raw[place] = self._written(value, row.raw[place])

    def add(self, key: str, fields: dict[str, str], column: str = "", like: str = "") -> None:
        """Add a row at the end, or behind the last row that says `like` in a column."""
        for name in fields:
            self._place(name)
        raw = [self._written(fields.get(name, ""), "") for name in self.columns]
        at = len(self.rows)
        while at > 1 and self.rows[at - 1].blank:
            at -= 1
        alike = [row for row in self.entries() if like and self.fields(row).get(column) == like]
        if alike:
            at = self.rows.index(alike[-1]) + 1
        before = self.rows[at - 1]
        end, before.end = before.end, before.end or self.end
        self.rows.insert(at, Row(key, raw, end))

    def _place(self, column: str) -> int:
        """Where the column stands; one that is not there yet is added at the end of every row."""
        if column not in self.columns:
            width = len(self.columns)
            for row in self.rows:
                if not row.blank:
                    row.raw += [""] * (width - len(row.raw))
                    row.raw.insert(width, column if row is self.head else "")
        return self.columns.index(column)

    def _written(self, value: str, before: str) -> str:
        """A cell as it is written: in quotation marks where it must be, or where it was so."""
        habit = before.startswith('"') and not _needs_quotes(_said(before))
        if _needs_quotes(value) or habit or (self.quotes_all and value):
            return '"' + value.replace('"', '""') + '"'
        return value
