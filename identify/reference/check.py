"""Finds every mistake in a pack folder at once."""

import math
import re
from pathlib import Path

from identify.reference.adding_marks import clashes, merged
from identify.reference.check_looks import check_looks
from identify.reference.check_names import Checker
from identify.reference.check_range import (
    check_drawings,
    check_features,
    check_range,
    check_sources,
    check_used,
)
from identify.reference.check_rows import (
    VARIANTS,
    check_changes,
    check_items,
    check_moves,
    check_variants,
)
from identify.reference.csv_files import FILES, MOVES
from identify.reference.folder import read_pack
from identify.reference.marks import read_marks
from identify.reference.mistakes import Mistake
from identify.reference.records import Pack
from identify.reference.splitting import MOST, Splitter, TooManyError
from identify.reference.toml_files import FEATURES, RANGE

ORDER = [RANGE, FEATURES, *FILES.values(), MOVES]


def checked_pack(folder: Path) -> tuple[Pack, list[Mistake], tuple[int, int] | None]:
    """The pack, its mistakes in the order of files and lines, and the range's first and last year.

    The years are None only where there are mistakes.
    """
    pack, mistakes = read_pack(folder)
    if not folder.is_dir():
        return pack, [Mistake(folder.name, 0, "", "there is no such folder.")], None
    if not re.fullmatch(r"[a-z][a-z0-9_]*", pack.id):
        text = "the folder's name is the pack's id: lower case letters, digits and _ only."
        mistakes.append(Mistake(pack.id, 0, "", text))
    check = Checker(pack, mistakes)
    check_range(check)
    check_features(check)
    check_looks(check)
    check_sources(check)
    check_items(check)
    check_variants(check)
    check_changes(check)
    check_moves(check)
    check_drawings(check)
    check_used(check)
    if not mistakes and check.life:
        marks, wrong = read_marks()
        mistakes += [*wrong, *clashes(pack)]
        if not mistakes:
            pack = merged(pack, *check.life, marks)
            mistakes += _too_many(pack, *check.life)
    order = {file: place for place, file in enumerate(ORDER)}
    mistakes.sort(key=lambda each: (order.get(each.file, len(order)), each.line))
    return pack, mistakes, check.life


def _too_many(pack: Pack, first: int, last: int) -> list[Mistake]:
    """Variants that fall into more rows than can be reasoned over."""
    splitter = Splitter(pack, first, last)
    states = {feature.id: len(feature.states) + 1 for feature in pack.features}
    if math.prod(states[parent] for parent in splitter.parents) <= MOST:
        return []
    mistakes = []
    for variant in pack.variants:
        try:
            splitter.issues(variant)
        except TooManyError as error:
            text = (
                f'"{variant.id}" falls into more than {MOST} rows in one year, by '
                f"{', '.join(error.features)}, on which other features depend. Fill in some."
            )
            mistakes.append(Mistake(VARIANTS, variant.line, "id", text))
    return mistakes


def check_pack(folder: Path) -> list[Mistake]:
    """Every mistake in the pack, none if it can be compiled. Never raises for bad input."""
    return checked_pack(folder)[1]
