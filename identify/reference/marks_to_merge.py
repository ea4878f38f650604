"""The date marks as the core merges them into ranges of a country (core/ranges/adding_marks.py)."""

from functools import cache

from identify.core.types.rows import ChangeRow, MarkRowUsed, MarkUsed, SourceRow
from identify.reference.entries import MEMORY, PRACTICE, MarkFeature, MarkRow, MarkSource
from identify.reference.folder_rows import drawing_rows, state_rows
from identify.reference.mark_ends import OPEN, End, ends_of, window_of
from identify.reference.marks import read_marks
from identify.reference.mistakes import PackError

PREFIX = "mark_"
UNNAMED = {PRACTICE: ("practice", 0.5), MEMORY: ("memory", 0.6)}


def _source(end: End, sources: dict[str, MarkSource]) -> SourceRow:
    """Who says so of an end, with how far that is to be believed."""
    if not end.source:
        name, trust = UNNAMED[end.label]
        return {"id": PREFIX + name, "what": end.label.capitalize(), "year": "", "trust": trust}
    named = sources[end.source]
    what = f"{named.what}; {named.read}" if named.read else named.what
    if end.label != MEMORY:
        return {"id": PREFIX + named.id, "what": what, "year": named.year, "trust": named.trust}
    name, trust = UNNAMED[MEMORY]
    what = f"{what}; in part {MEMORY}"
    ident = f"{PREFIX}{named.id}_{name}"
    return {"id": ident, "what": what, "year": named.year, "trust": trust}


def _row(row: MarkRow, sources: dict[str, MarkSource]) -> MarkRowUsed:
    """A wording, as a running change with the sources of its ends that are not open."""
    first, last = ends_of(row)
    start, end = (None if each.open else _source(each, sources) for each in (first, last))
    change: ChangeRow = {
        "feature": PREFIX + row.feature,
        "state": row.state,
        "since": "" if row.earliest == OPEN else row.earliest,
        "until": "" if row.latest == OPEN else row.latest,
        "kinds": [],
        "items": [],
        "source": start["id"] if start else "",
        "other_from": [],
        "note": f"Such as {row.wording.rstrip('.')}. {row.note}".rstrip(),
        "to_source": end["id"] if end else "",
        "hard": [first.hard, last.hard],
    }
    return {
        "countries": row.country,
        "window": window_of(row),
        "change": change,
        "sources": [each for each in (start, end) if each],
    }


def _mark(
    mark: MarkFeature, rows: list[MarkRow], sources: dict[str, MarkSource], drawings: dict[str, str]
) -> MarkUsed:
    drawn = {f"{mark.id}-{state.id}" for state in mark.states}
    return {
        "feature": {
            "id": PREFIX + mark.id,
            "name": mark.name,
            "title": mark.title,
            "question": mark.question,
            "where": mark.where,
            "part": "",
            "seconds": mark.seconds,
            "needs": mark.needs,
            "every": True,
            "kinds": [],
            "when": [],
            "mistaken": [list(pair) for pair in mark.mistaken],
            "states": state_rows(mark.states),
            "layer": "",
            "unseen": "",
            "seen": mark.seen,
        },
        "parts": mark.parts,
        "rows": [_row(row, sources) for row in rows if row.feature == mark.id],
        "drawings": drawing_rows(
            {PREFIX + name: text for name, text in drawings.items() if name in drawn}
        ),
    }


@cache
def marks_to_merge() -> list[MarkUsed]:
    """Every date mark of every country. Raises PackError for a table with mistakes."""
    marks, mistakes = read_marks()
    if mistakes:
        raise PackError(mistakes)
    sources = {source.id: source for source in marks.sources}
    return [_mark(mark, marks.rows, sources, marks.drawings) for mark in marks.features]
