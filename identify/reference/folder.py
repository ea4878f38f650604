"""Reads a pack folder as far as it can be read."""

from pathlib import Path

from identify.reference.csv_files import FILES, MOVES, read_table
from identify.reference.drawings import read_drawings
from identify.reference.entries import Change, Feature, Item, Move, Pack, Range, Source, Variant
from identify.reference.from_kit import Picker, drawings_of
from identify.reference.kit import shipped_kit
from identify.reference.mistakes import Mistake
from identify.reference.toml_files import FEATURES, RANGE, read_features, read_range


def read_pack(folder: Path) -> tuple[Pack, list[Mistake]]:
    """The pack as typed records, and every mistake that shows in one file alone."""
    mistakes: list[Mistake] = []
    picker = Picker(shipped_kit)
    about = read_range(folder, mistakes, picker.pick)
    features = read_features(folder, Feature, mistakes, picker.pick)
    columns = None if features is None else [feature.id for feature in features if feature.id]
    sources = read_table(folder, Source, [], mistakes)
    items = read_table(folder, Item, columns, mistakes)
    variants = read_table(folder, Variant, columns, mistakes)
    changes = read_table(folder, Change, [], mistakes)
    there = (folder / MOVES).is_file()
    moves = read_table(folder, Move, [], mistakes, file=MOVES) if there else []
    read = {
        RANGE: about,
        FEATURES: features,
        FILES[Source]: sources,
        FILES[Item]: items,
        FILES[Variant]: variants,
        FILES[Change]: changes,
    }
    range_, kinds, parts, cautions = about or (Range(), [], [], [])
    pack = Pack(
        id=folder.resolve().name,
        range=range_,
        kinds=kinds,
        parts=parts,
        cautions=cautions,
        features=features or [],
        sources=sources or [],
        items=items or [],
        variants=variants or [],
        changes=changes or [],
        drawings=drawings_of(shipped_kit, kinds, features or [], parts)
        | read_drawings(folder, mistakes),
        moves=moves or [],
        unread={file for file, content in read.items() if content is None},
    )
    return pack, mistakes
