"""The kit: sorts of piece, parts and features of the trade that a range picks from.

It stands in fixtures/kit and is written like a pack without items, its features in a file for each
area (`features/*.toml`). What a pack makes of it: from_kit.py.
"""

from functools import cache
from pathlib import Path
from typing import Any

import msgspec

from identify.core.ranges.range_mistakes import features_and_drawings
from identify.core.ranges.words import NONE, OF_THE_RANGE
from identify.reference.check_looks import check_looks
from identify.reference.drawings import read_drawings
from identify.reference.entries import Entry, Feature, Kind, Pack, Part, Range
from identify.reference.folder_rows import rows_of_pack
from identify.reference.mistake_words import in_files
from identify.reference.mistakes import Mistake, PackError
from identify.reference.text_files import read_toml
from identify.reference.toml_files import RANGE, Wrong, read_entries, read_features
from identify.reference.types import TomlTable
from identify.shipped import KIT

PIECES = "pieces.toml"
AREAS = "features"


class Kit(msgspec.Struct):
    """What can be picked: as it is written, by table and id, and as it is read."""

    written: dict[str, dict[str, TomlTable]]
    pack: Pack  # without items


def read_kit(folder: Path, mistakes: list[Mistake]) -> Kit:
    """The kit of a folder, and every mistake in it."""
    written: dict[str, dict[str, TomlTable]] = {"kinds": {}, "parts": {}, "feature": {}}

    def noted(table: str, given: list[TomlTable], wrong: Wrong) -> list[TomlTable]:
        for nth, each in enumerate(given):
            if each.get("id") in written[table]:
                wrong(nth, "id", f'"{each["id"]}" is in the kit already. Change one of them.')
            written[table][str(each.get("id", ""))] = each
        return given

    kinds: list[Kind] = []
    parts: list[Part] = []
    read = read_toml(folder / PIECES, PIECES, mistakes)
    if read is not None:
        kinds = read_entries(Kind, read[0], (PIECES, "kinds"), read[1], mistakes, pick=noted)
        parts = read_entries(Part, read[0], (PIECES, "parts"), read[1], mistakes, pick=noted)
    areas = {
        path.relative_to(folder).as_posix(): read_features(
            folder, Feature, mistakes, noted, path.relative_to(folder).as_posix()
        )
        or []
        for path in sorted((folder / AREAS).glob("*.toml"))
    }
    pack = Pack(
        id=folder.name,
        range=Range(),
        kinds=kinds,
        parts=parts,
        cautions=[],
        features=[feature for listed in areas.values() for feature in listed],
        sources=[],
        items=[],
        variants=[],
        changes=[],
        drawings=read_drawings(folder, mistakes),
        unread=set(),
    )
    _check(pack, areas, mistakes)
    return Kit(written, pack)


def _check(pack: Pack, areas: dict[str, list[Feature]], mistakes: list[Mistake]) -> None:
    """What a pack is checked for as well: names that are not known, and the drawings."""
    files = [area for area, listed in areas.items() for _ in listed]
    rows = rows_of_pack(pack)
    for wrong in features_and_drawings(rows):
        (said,) = in_files(pack, [wrong])
        file = files[wrong["row"]] if wrong["table"] == "features" else said.file
        mistakes.append(msgspec.structs.replace(said, file={RANGE: PIECES}.get(file, file)))
    for mistake in check_looks(pack.features):
        mistakes.append(msgspec.structs.replace(mistake, file=AREAS))


@cache
def shipped_kit() -> Kit:
    """The kit that comes with the app. Raises PackError where it has mistakes."""
    mistakes: list[Mistake] = []
    kit = read_kit(KIT, mistakes)
    if mistakes:
        raise PackError([msgspec.structs.replace(m, file=f"{KIT.name}/{m.file}") for m in mistakes])
    return kit


def kit_to_pick() -> dict[str, Any]:
    """The kit as the phone gets it: each feature with its part and its drawings, no blanks."""
    pack = shipped_kit().pack
    parts = {part.id: _said(part) for part in pack.parts}
    features = []
    for feature in pack.features:
        states = [
            _said(state) | {"drawing": pack.drawings[f"{feature.id}-{state.id}"]}
            for state in feature.states
        ]
        said = _said(feature) | {"states": states}
        features.append(said | {"part": parts[feature.part]} if feature.part else said)
    kinds = [_said(kind) | {"drawing": pack.drawings[f"kind-{kind.id}"]} for kind in pack.kinds]
    shared = {name: pack.drawings[name] for name in (NONE, *OF_THE_RANGE)}
    return {
        "kinds": kinds, "parts": list(parts.values()), "features": features, "drawings": shared,
    }  # fmt: skip


def _said(entry: Entry) -> dict[str, Any]:
    """An entry without what it leaves blank, and without where it stands."""
    return {
        key: value
        for key, value in msgspec.to_builtins(entry).items()
        if key not in ("line", "lines") and value not in ("", [], {}, None)
    }
