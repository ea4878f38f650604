"""Records on their way out as files."""

from typing import TypedDict


class Naming(TypedDict):
    """What ranges, their items and their variants are called, by pack and by shelfmark."""

    ranges: dict[str, str]
    items: dict[str, str]
    variants: dict[str, str]


class WrittenTable(TypedDict):
    """A table as it goes into a file, every cell guarded."""

    names: list[str]
    rows: list[list[str]]


class WorkbookPart(TypedDict):
    """A part of a workbook: its name in the zip file, and what is in it."""

    name: str
    text: str
