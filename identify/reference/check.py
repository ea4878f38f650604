"""Finds every mistake in a pack folder at once."""

import re
from pathlib import Path

import msgspec

from identify.core.ranges.range_mistakes import check_rows, too_many
from identify.core.types.rows import RangeRows
from identify.reference.check_looks import check_looks
from identify.reference.csv_files import FILES, MOVES
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from identify.reference.marks import read_marks
from identify.reference.marks_to_merge import marks_to_merge
from identify.reference.mistake_words import in_files, tables_unread
from identify.reference.mistakes import Mistake
from identify.reference.toml_files import FEATURES, RANGE

ORDER = [RANGE, FEATURES, *FILES.values(), MOVES]


class CheckedPack(msgspec.Struct):
    """The rows of a folder, its mistakes in the order of files and lines, and the range's first and
    last year, which mean something only where there are no mistakes.
    """

    rows: RangeRows
    mistakes: list[Mistake]
    first: int
    last: int


def checked_pack(folder: Path) -> CheckedPack:
    """A folder as far as it can be read, with everything that is wrong with it."""
    pack, mistakes = read_pack(folder)
    rows = rows_of_pack(pack)
    if not folder.is_dir():
        return CheckedPack(rows, [Mistake(folder.name, 0, "", "there is no such folder.")], 0, 0)
    if not re.fullmatch(r"[a-z][a-z0-9_]*", pack.id):
        text = "the folder's name may have lower case letters, digits and _ only."
        mistakes.append(Mistake(pack.id, 0, "", text))
    checked = check_rows(rows, tables_unread(pack.unread))
    mistakes += [*in_files(pack, checked["mistakes"]), *check_looks(pack.features)]
    if not mistakes:
        mistakes += read_marks()[1]
    if not mistakes:
        many = too_many(rows, checked["first"], checked["last"], marks_to_merge())
        mistakes += in_files(pack, many)
    order = {file: place for place, file in enumerate(ORDER)}
    mistakes.sort(key=lambda each: (order.get(each.file, len(order)), each.line))
    return CheckedPack(rows, mistakes, checked["first"], checked["last"])


def check_pack(folder: Path) -> list[Mistake]:
    """Every mistake in the pack, none if it can be compiled. Never raises for bad input."""
    return checked_pack(folder).mistakes
