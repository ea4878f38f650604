"""items.csv, variants.csv, changes.csv and sources.csv as typed records."""

import csv
import io
from pathlib import Path
from typing import TypeVar

from identify.reference.entries import Change, Entry, Item, Source, Variant
from identify.reference.entry_fields import fields, read_entry, reporter
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.text_files import read_text

FILES: dict[type[Entry], str] = {
    Source: "sources.csv",
    Item: "items.csv",
    Variant: "variants.csv",
    Change: "changes.csv",
}
MOVES = "moves.csv"  # a pack may do without

E = TypeVar("E", bound=Entry)


def csv_rows(text: str, file: str, mistakes: list[Mistake]) -> list[tuple[int, list[str]]]:
    """(line, cells) of every row that is not blank."""
    rows: list[tuple[int, list[str]]] = []
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    line = 1
    while True:
        try:
            cells = next(reader, None)
        except csv.Error as error:
            what = f"this row cannot be read as CSV ({error}). Check its quotation marks."
            mistakes.append(Mistake(file, line, "", what))
            return rows
        if cells is None:
            return rows
        if any(cell.strip() for cell in cells):
            rows.append((line, [cell.strip() for cell in cells]))
        line = reader.line_num + 1


def not_commas(columns: list[str]) -> str:
    """What is wrong with a header whose columns no commas separate; "" if nothing is."""
    if len(columns) == 1 and any(mark in columns[0] for mark in ";\t|"):
        return "the columns must be separated by commas. Save the file as CSV with commas."
    return ""


def _header(
    columns: list[str], line: int, file: str, record: type[Entry], features: list[str] | None
) -> tuple[list[str], list[Mistake]]:
    """The header with "" for columns that mean nothing, and what is wrong with it."""
    fixed = list(fields(record))
    known = [*fixed, *(features or [])]
    mistakes = []
    what = not_commas(columns)
    if what:
        return [], [Mistake(file, line, "", what)]
    kept: list[str] = []
    for place, column in enumerate(columns):
        name = column.lower()
        if name in kept and name:
            what = f"the column {quoted(name)} is here twice. Keep one of them."
        elif name in known or (features is None and record in (Item, Variant) and name):
            kept.append(name)
            continue
        elif name:
            what = f"the column {quoted(name)} is not known: {instead(name, known)}"
        else:
            what = f"column {place + 1} has no name. Give it one, or remove it."
        mistakes.append(Mistake(file, line, name, what))
        kept.append("")
    for name in fixed:
        if name not in kept:
            what = f'the column "{name}" is missing. The header must have {",".join(fixed)}.'
            mistakes.append(Mistake(file, line, name, what))
    return kept, mistakes


def read_table(
    folder: Path,
    record: type[E],
    features: list[str] | None,
    mistakes: list[Mistake],
    *,
    file: str = "",
) -> list[E] | None:
    """The records of one CSV file, or None if it cannot be read at all.

    features: the features that may have a column; None: they are not known.
    file: its name, where it is not one of a pack's.
    """
    file = file or FILES[record]
    text = read_text(folder / file, file, mistakes)
    if text is None:
        return None
    rows = csv_rows(text, file, mistakes)
    if not rows:
        return None
    columns, wrong = _header(rows[0][1], rows[0][0], file, record, features)
    mistakes += wrong
    if not columns:
        return None
    fixed = fields(record)
    missing = {name for name in fixed if name not in columns}
    entries = []
    for line, cells in rows[1:]:
        if len(cells) != len(columns) and any(cells[len(columns) :] or ["few"]):
            what = f"this row has {len(cells)} cells, but the header has {len(columns)} columns."
            mistakes.append(Mistake(file, line, "", what))
        given = {name: cell for name, cell in zip(columns, cells, strict=False) if name}

        def line_of(key: str, line: int = line) -> int:
            return line

        wrong = []
        entry = read_entry(record, given, line, reporter(wrong, file, line_of), cell=True)
        mistakes += [each for each in wrong if each.column not in missing]
        if isinstance(entry, Item | Variant):
            entry.cells = {n: cell for n, cell in given.items() if n not in fixed and cell}
        entries.append(entry)
    return entries
