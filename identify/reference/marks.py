"""Date marks: the table in fixtures/marks, and looking a wording up in it."""

from functools import cache
from pathlib import Path

import msgspec

from identify.reference.check_marks import MarkCheck
from identify.reference.csv_files import FILES, read_table
from identify.reference.drawings import read_drawings
from identify.reference.entries import Change, MarkFeature, MarkRow, MarkSource, Source
from identify.reference.mistakes import Mistake
from identify.reference.toml_files import read_features
from identify.shipped import MARKS

ROWS = FILES[Change]
SOURCES = FILES[Source]


class Marks(msgspec.Struct):
    """The table: what to look at, when each wording was in use where, and who says so."""

    features: list[MarkFeature]
    rows: list[MarkRow]
    sources: list[MarkSource]
    drawings: dict[str, str]


@cache
def read_marks(folder: Path = MARKS) -> tuple[Marks, list[Mistake]]:
    """The table of a folder and every mistake in it. Read once."""
    mistakes: list[Mistake] = []
    features = read_features(folder, MarkFeature, mistakes)
    rows = read_table(folder, MarkRow, [], mistakes, file=ROWS)
    sources = read_table(folder, MarkSource, [], mistakes, file=SOURCES)
    marks = Marks(features or [], rows or [], sources or [], read_drawings(folder, mistakes))
    if features is not None and rows is not None and sources is not None:
        check = MarkCheck(marks.features, marks.rows, marks.sources, mistakes)
        check.everything(marks.drawings)
    for n, each in enumerate(mistakes):
        mistakes[n] = msgspec.structs.replace(each, file=f"{folder.name}/{each.file}")
    return marks, mistakes
