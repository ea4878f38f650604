"""Edits of a pack folder, made in the text of its files so that a diff shows just the change.

An edit names a table (`items`, `feature`, ...), an entry by its key (`r12`: the row that began on
line 12 when the folder was read; `feature3`: the fourth [[feature]]; `n...`: one added by an edit
before it) and says what stood there, so that nothing is ever written over unseen.
"""

from pathlib import Path
from typing import Any

import msgspec

from identify.reference.csv_files import FILES, MOVES
from identify.reference.drawings import clean_drawing
from identify.reference.editing_csv import CsvText, EditError
from identify.reference.editing_toml import TOP, TomlText
from identify.reference.fields import fields
from identify.reference.mistakes import quoted
from identify.reference.photo_drawings import URL, as_url, from_url, photo_mistake
from identify.reference.records import (
    Caution,
    Change,
    Entry,
    Feature,
    Item,
    Kind,
    Move,
    Part,
    Range,
    Source,
    Variant,
)
from identify.reference.toml_files import FEATURES, RANGE
from identify.reference.types import TableEntry, TomlTable

TOMLS = {RANGE: ("kinds", "parts", "cautions"), FEATURES: ("feature",)}
CSVS: dict[str, type[Entry]] = {
    "sources": Source,
    "items": Item,
    "variants": Variant,
    "changes": Change,
    "moves": Move,
}
RECORDS: dict[str, type[Entry]] = {
    "range": Range, "kinds": Kind, "parts": Part, "cautions": Caution, "feature": Feature,
    **CSVS,
}  # fmt: skip
FILE_OF = {
    "range": RANGE, **{table: file for file, tables in TOMLS.items() for table in tables},
    **{table: FILES.get(record, MOVES) for table, record in CSVS.items()},
}  # fmt: skip
DRAWINGS = "drawings"
ENDINGS = (".svg", ".jpg")
BOM = "\ufeff"
NAMES = {"items": "number", "variants": "id"}  # what holdings point to
BESIDE = {"variants": "item", "changes": "feature"}  # a new row stands behind those with the same
# Where else an item's number or a variant's id stands: table, column, whether in a list.
POINTERS = {
    "items": (("variants", "item"), ("changes", "items"), ("items", "contains")),
    "variants": (),
}


class SetField(msgspec.Struct, tag_field="do", tag="set"):
    """Write one field; None: it is not there."""

    table: str
    key: str
    field: str
    old: Any
    value: Any


class AddEntry(msgspec.Struct, tag_field="do", tag="add"):
    """Add a row, or an entry of a TOML file."""

    table: str
    key: str
    fields: TomlTable


class RemoveEntry(msgspec.Struct, tag_field="do", tag="remove"):
    """Take a row or an entry away that says `old`."""

    table: str
    key: str
    old: TomlTable


class Draw(msgspec.Struct, tag_field="do", tag="draw"):
    """Put a drawing (SVG) or a photo (a data: URL) in the place of `old`; "": there is none."""

    name: str
    old: str
    value: str


Edit = SetField | AddEntry | RemoveEntry | Draw
Files = dict[str, bytes]


def files_of(folder: Path) -> Files:
    """The files of a pack, by name, as they are on the disk. Raises OSError."""
    names = [*TOMLS, *FILES.values(), MOVES]
    paths = [folder / name for name in names]
    drawn = sorted((folder / DRAWINGS).glob("*.*"))
    paths += [path for path in drawn if path.suffix in ENDINGS]
    return {
        path.relative_to(folder).as_posix(): path.read_bytes() for path in paths if path.is_file()
    }


class Folder:
    """The files of a pack while they are edited. Raises EditError where one cannot be read."""

    def __init__(self, files: Files) -> None:
        self.files = dict(files)
        self.boms = {name for name, data in files.items() if data.startswith(BOM.encode())}
        self.csv: dict[str, CsvText] = {}
        self.toml: dict[str, TomlText] = {}
        for table in CSVS:
            name = FILE_OF[table]
            if name in files or name != MOVES:
                self.csv[table] = CsvText(self._text(name), name)
        for name, tables in TOMLS.items():
            self.toml[name] = TomlText(self._text(name), name, tables)

    def _text(self, name: str) -> str:
        if name not in self.files:
            raise EditError(f"{name} is missing. Put it back first.")
        try:
            return self.files[name].decode("utf-8-sig")
        except UnicodeDecodeError as error:
            raise EditError(f"{name} is not UTF-8. Save it as UTF-8 first.") from error

    def entries(self) -> dict[str, list[TableEntry]]:
        """Every entry of every table."""
        tables: dict[str, list[TableEntry]] = {"moves": []}
        for table, csv in self.csv.items():
            lines = csv.lines()
            tables[table] = [
                {"key": row.key, "line": lines[row.key], "fields": csv.fields(row)}
                for row in csv.entries()
            ]
        for toml in self.toml.values():
            for table, keys in toml.keys.items():
                if table == TOP and toml.name != RANGE:
                    continue
                lines_of = toml.lines(table)
                tables[table or "range"] = [
                    {"key": key, "line": lines_of[key][0] + 1, "fields": toml.entry(table, key)}
                    for key in keys
                ]
        return tables

    def drawings(self) -> dict[str, str]:
        """Every drawing by its name: SVG, or a photo as a data: URL."""
        drawings = {}
        for name, data in self.files.items():
            path = Path(name)
            if name.startswith(f"{DRAWINGS}/"):
                text = as_url(data) if path.suffix == ".jpg" else data.decode(errors="replace")
                drawings[path.stem] = text
        return drawings

    def after(self) -> Files:
        """Every file as it is now."""
        texts: dict[str, CsvText | TomlText] = {csv.name: csv for csv in self.csv.values()}
        texts |= self.toml
        for name, text in texts.items():
            mark = BOM if name in self.boms else ""
            self.files[name] = (mark + text.text).encode()
        return dict(self.files)

    def apply(self, edit: Edit) -> None:
        """Make one edit. Raises EditError, and then nothing of it is made."""
        if isinstance(edit, Draw):
            self._draw(edit)
            return
        if edit.table not in FILE_OF:
            raise EditError(f"There is no table {quoted(edit.table)} in a pack.")
        if edit.table in CSVS:
            self._edit_csv(edit)
        else:
            self._edit_toml(edit)

    def _edit_toml(self, edit: SetField | AddEntry | RemoveEntry) -> None:
        toml = self.toml[FILE_OF[edit.table]]
        table = TOP if edit.table == "range" else edit.table
        if isinstance(edit, SetField):
            toml.set(table, edit.key, edit.field, edit.old, edit.value)
        elif table == TOP:
            raise EditError("A pack has one range. Change what it says.")
        elif isinstance(edit, AddEntry):
            known = [*fields(RECORDS[edit.table]), "states"]
            order = sorted(edit.fields, key=lambda n: known.index(n) if n in known else len(known))
            toml.add(table, edit.key, {name: edit.fields[name] for name in order})
        else:
            if toml.entry(table, edit.key) != edit.old:
                raise EditError(_other(toml.name, toml.lines(table)[edit.key][0] + 1))
            toml.remove(table, edit.key)
            if table == "feature":
                for pieces in ("items", "variants"):
                    self.csv[pieces].drop(str(edit.old.get("id", "")))

    def _edit_csv(self, edit: SetField | AddEntry | RemoveEntry) -> None:
        csv = self.table(edit.table)
        if isinstance(edit, AddEntry):
            said = {name: str(value) for name, value in edit.fields.items()}
            near = BESIDE.get(edit.table, "")
            csv.add(edit.key, said, near, said.get(near, ""))
        elif isinstance(edit, RemoveEntry):
            now = csv.fields(csv.row(edit.key))
            if {n: v for n, v in now.items() if v} != {n: v for n, v in edit.old.items() if v}:
                raise EditError(_other(csv.name, csv.lines()[edit.key]))
            csv.remove(edit.key)
        else:
            old, value = str(edit.old or ""), str(edit.value or "")
            csv.set(edit.key, edit.field, old, value)
            if edit.field == NAMES.get(edit.table) and old and value and old != value:
                self._renamed(edit.table, old, value)

    def table(self, table: str) -> CsvText:
        """The text of a CSV file; an empty moves.csv where there is none yet."""
        if table not in self.csv:
            self.csv[table] = CsvText("what,from,to,note\n", FILE_OF[table])
        return self.csv[table]

    def _renamed(self, table: str, old: str, new: str) -> None:
        """What pointed to an item or a variant points to its new name; moves.csv says so."""
        for other, column in POINTERS[table]:
            csv = self.csv[other]
            for row in csv.entries():
                cell = csv.fields(row).get(column, "")
                listed = cell.split(";")
                if old in [name.strip() for name in listed]:
                    renamed = [n.replace(old, new) if n.strip() == old else n for n in listed]
                    csv.set(row.key, column, cell, ";".join(renamed))
        what = table.removesuffix("s")
        moves = self.table("moves")
        for row in moves.entries():
            said = moves.fields(row)
            if said.get("what") == what and said.get("from") == new:
                moves.remove(row.key)  # it is called so again
        count = len(moves.rows)
        moves.add(f"m{count}", {"what": what, "from": old, "to": new})

    def _draw(self, edit: Draw) -> None:
        if not edit.name.replace("-", "").replace("_", "").isalnum() or not edit.name.isascii():
            raise EditError(f"{quoted(edit.name)} is not the name of a drawing.")
        now = self.drawings().get(edit.name, "")
        if now != edit.old:
            raise EditError(f"The drawing {edit.name} was changed meanwhile. Read the pack again.")
        stem = f"{DRAWINGS}/{edit.name}"
        for ending in ENDINGS:
            self.files.pop(stem + ending, None)
        if edit.value.startswith(URL):
            data = from_url(edit.value)
            wrong = photo_mistake(data)
            if wrong:
                raise EditError(f"The photo for {edit.name}: {wrong}")
            self.files[f"{stem}.jpg"] = data
        elif edit.value:
            wrong_there = clean_drawing(edit.value, f"{stem}.svg")[1]
            if wrong_there:
                raise EditError(str(wrong_there[0]))
            self.files[f"{stem}.svg"] = edit.value.encode()


def _other(file: str, line: int) -> str:
    return f"{file} line {line} says something else now than it did. Read the pack again."


def _renames(edit: Edit) -> bool:
    return isinstance(edit, SetField) and edit.field == NAMES.get(edit.table)


def edited(files: Files, edits: list[Edit]) -> Folder:
    """The folder with these edits made, in their order, new names last: they change other rows.

    Raises EditError.
    """
    folder = Folder(files)
    for edit in sorted(edits, key=_renames):
        folder.apply(edit)
    return folder
