"""Merges the date marks of a pack's country into the pack, as ordinary features and changes."""

from collections.abc import Sequence

import msgspec

from identify.reference.csv_files import FILES
from identify.reference.mark_ends import OPEN, End, ends_of, window_of
from identify.reference.marks import Marks
from identify.reference.mistakes import Mistake
from identify.reference.records import (
    MEMORY,
    PRACTICE,
    Change,
    Feature,
    MarkChange,
    MarkFeature,
    MarkRow,
    MarkSource,
    MergedMark,
    Pack,
    Source,
)
from identify.reference.splitting import kinds_of
from identify.reference.toml_files import FEATURES
from identify.reference.windows import NONE, Windows

PREFIX = "mark_"
PIECE = "piece"  # among the parts of a mark: the piece itself, which every pack has
UNNAMED = {PRACTICE: ("practice", 0.5), MEMORY: ("memory", 0.6)}


def _carrier(feature: MarkFeature, pack: Pack) -> str | None:
    """The part that carries the mark in this pack, "" for the piece itself; None for no part."""
    parts = [part.id for part in pack.parts]
    part_of = next((part for part in feature.parts if part in (*parts, PIECE)), None)
    return "" if part_of == PIECE else part_of


def _kinds(part: str, pack: Pack) -> list[str] | None:
    """The kinds that have the part: those with another feature on it, else all."""
    having = {
        kind
        for feature in pack.features
        if part and feature.part == part
        for kind in kinds_of(feature, pack.kinds)
    }
    return [kind.id for kind in pack.kinds if kind.id in having] or None


def _source(end: End, sources: dict[str, MarkSource]) -> Source:
    """Who says so of an end, with how far that is to be believed."""
    if not end.source:
        name, trust = UNNAMED[end.label]
        return Source(id=PREFIX + name, what=end.label.capitalize(), trust=trust)
    named = sources[end.source]
    what = f"{named.what}; {named.read}" if named.read else named.what
    if end.label != MEMORY:
        return Source(id=PREFIX + named.id, what=what, year=named.year, trust=named.trust)
    name, trust = UNNAMED[MEMORY]
    what = f"{what}; in part {MEMORY}"
    return Source(id=f"{PREFIX}{named.id}_{name}", what=what, year=named.year, trust=trust)


def _change(row: MarkRow, sources: dict[str, MarkSource]) -> tuple[MarkChange, list[Source]]:
    """The row as a running change, and the sources of its ends that are not open."""
    first, last = ends_of(row)
    start, end = (None if each.open else _source(each, sources) for each in (first, last))
    change = MarkChange(
        feature=PREFIX + row.feature,
        state=row.state,
        came="" if row.earliest == OPEN else row.earliest,
        ended="" if row.latest == OPEN else row.latest,
        source=start.id if start else "",
        to_source=end.id if end else "",
        hard=(first.hard, last.hard),
        note=f"Such as {row.wording.rstrip('.')}. {row.note}".rstrip(),
    )
    return change, [each for each in (start, end) if each]


def _feature(feature: MarkFeature, part: str, kinds: list[str] | None, ids: set[str]) -> MergedMark:
    """The mark with those of its states that can be met."""
    return MergedMark(
        id=PREFIX + feature.id,
        name=feature.name,
        title=feature.title,
        question=feature.question,
        where=feature.where,
        part=part,
        seconds=feature.seconds,
        needs=feature.needs,
        kinds=kinds,
        mistaken=[pair for pair in feature.mistaken if set(pair) <= ids],
        states=[state for state in feature.states if state.id in ids],
        seen=feature.seen,
    )


def _here(row: MarkRow, country: str, first: int, last: int) -> bool:
    """Whether the wording was in use in the country in some of the years, or nearly."""
    return country in row.country and window_of(row).met(first, last)


def _merge_one(
    mark: MarkFeature, rows: Sequence[MarkRow], pack: Pack, life: tuple[int, int]
) -> tuple[MergedMark, Windows] | None:
    """The mark as a feature of the pack; None where it says nothing or has nothing to stand on."""
    first, last = life
    windows = Windows([window_of(row) for row in rows], mark.seen)
    part = _carrier(mark, pack)
    if part is None or len({windows.cell(year) for year in range(first, last + 1)}) < 2:
        return None
    ids = {row.state for row in rows} | {NONE}
    return _feature(mark, part, _kinds(part, pack), ids), windows


def merged(pack: Pack, first: int, last: int, marks: Marks) -> Pack:
    """The pack with each mark of its country that tells some years of its life from others."""
    named = {source.id: source for source in marks.sources}
    features: list[Feature] = [*pack.features]
    changes: list[Change] = [*pack.changes]
    sources = {source.id: source for source in pack.sources}
    drawings = {**pack.drawings}
    windows: dict[str, Windows] = {}
    here = [row for row in marks.rows if _here(row, pack.range.country, first, last)]
    for mark in marks.features:
        rows = [row for row in here if row.feature == mark.id]
        merged = _merge_one(mark, rows, pack, (first, last))
        if merged is None:
            continue
        feature, windows[feature.id] = merged
        features.append(feature)
        for state in feature.states:
            drawings[f"{feature.id}-{state.id}"] = marks.drawings[f"{mark.id}-{state.id}"]
        for row in rows:
            change, said = _change(row, named)
            changes.append(change)
            for source in said:
                sources.setdefault(source.id, source)
    return msgspec.structs.replace(
        pack,
        features=features,
        changes=changes,
        sources=[*sources.values()],
        drawings=drawings,
        marks=windows,
    )


def clashes(pack: Pack) -> list[Mistake]:
    """Ids of a pack that are kept for the marks."""
    mistakes = []
    for file, entries in ((FEATURES, pack.features), (FILES[Source], pack.sources)):
        for entry in entries:
            if entry.id.startswith(PREFIX):
                text = f'ids that begin with "{PREFIX}" are kept for date marks. Choose another.'
                mistakes.append(Mistake(file, entry.lines.get("id", entry.line), "id", text))
    return mistakes
