"""One CSV file of a pack of which single rows are changed, and the rest is left as it is."""

import csv
import difflib
import io
from pathlib import Path


class CsvPatch:
    """A file as its lines; a row that is written over keeps its place."""

    def __init__(self, folder: Path, name: str) -> None:
        self.name = name
        self.before = (folder / name).read_text("utf-8-sig")
        self.lines: list[str | None] = [*self.before.splitlines()]
        self.columns = [column.strip().lower() for column in self._cells(1)[0]]

    def _cells(self, line: int) -> tuple[list[str], int]:
        """The cells of the row that begins on this line, and how many lines it takes."""
        reader = csv.reader(each for each in self.lines[line - 1 :] if each is not None)
        return next(reader), reader.line_num

    def row(self, line: int) -> dict[str, str]:
        """The row that begins on this line, by column."""
        return dict(zip(self.columns, self._cells(line)[0], strict=False))

    def add(self, row: dict[str, str]) -> None:
        """Add a row at the end."""
        self.lines.append(self._written(row))

    def add_to(self, line: int, column: str, said: str) -> None:
        """Add to a list in a cell, once."""
        row = self.row(line)
        there = [each.strip() for each in row.get(column, "").split(";") if each.strip()]
        if said in there:
            return
        height = self._cells(line)[1]
        written = self._written({**row, column: "; ".join([*there, said])})
        self.lines[line - 1 : line - 1 + height] = [written, *[None] * (height - 1)]

    def _written(self, row: dict[str, str]) -> str:
        out = io.StringIO(newline="")
        csv.writer(out, lineterminator="").writerow([row.get(name, "") for name in self.columns])
        return out.getvalue()

    @property
    def after(self) -> str:
        """The file with its changes."""
        return "\n".join(line for line in self.lines if line is not None) + "\n"

    def diff(self) -> str:
        """The change as a unified diff; empty for none."""
        before, after = (text.splitlines(keepends=True) for text in (self.before, self.after))
        return "".join(difflib.unified_diff(before, after, f"a/{self.name}", f"b/{self.name}"))
