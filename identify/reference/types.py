"""What the editor of packs is told, and what a TOML file says before it is read."""

from typing import Any, TypedDict

TomlTable = dict[str, Any]  # what stands in a TOML file, by its keys: of any sort until it is read


class TableEntry(TypedDict):
    """A row of a CSV file, or an entry of a TOML file."""

    key: str
    line: int
    fields: TomlTable


class PlacedMistake(TypedDict):
    """A mistake with the entry that it is in."""

    file: str
    line: int
    column: str
    text: str
    table: str  # "" for none
    key: str


class EditedPack(TypedDict):
    """Everything of a pack that can be edited."""

    id: str
    version: str  # of the files
    tables: dict[str, list[TableEntry]]
    columns: dict[str, list[str]]  # of each CSV table
    fields: dict[
        str, list[list[str]]
    ]  # of each table: [name, label, sort, hint] (editor_fields.py)
    files: dict[str, str]  # the file of each table
    drawings: dict[str, str]  # SVG, or a photo as a data: URL
    mistakes: list[PlacedMistake]
    undo: bool  # the last save can be taken back
