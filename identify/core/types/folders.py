"""A range as a folder of files, read and written: what its files hold."""

from typing import TypedDict

from .gate import Group
from .rows import DrawingRow, RangeRows


class FolderFiles(TypedDict):
    """The files of a folder, its TOML and its tables taken apart. A table that is not there is
    empty.
    """

    id: str
    about: Group  # range.toml
    looks: Group  # features.toml
    items: list[list[str]]  # the first row names the columns
    variants: list[list[str]]
    changes: list[list[str]]
    sources: list[list[str]]
    moves: list[list[str]]
    drawings: list[DrawingRow]
    written: Group  # the kit: kinds, parts and features as they are written there, by their ids
    drawn: Group  # the kit's drawings, by name


class NotInKit(TypedDict):
    """A name that the kit has not."""

    nth: int  # of the entries
    key: str  # where it stands
    name: str
    known: list[str]


class Picked(TypedDict):
    """The entries of one folder while they are filled in from the kit."""

    written: Group
    kinds: dict[str, list[str]]  # by what they are called in the kit: their ids here
    parts: dict[str, list[str]]
    wrong: list[NotInKit]


class FolderRead(TypedDict):
    """The rows of a folder, and the columns that mean nothing: [file, column]."""

    rows: RangeRows
    unknown: list[list[str]]
