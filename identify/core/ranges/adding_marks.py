"""Merges the date marks of a range's country into it, as ordinary features and running changes."""

from ..lists import place_of
from ..types.rows import (
    ChangeRow,
    DrawingRow,
    FeatureRow,
    MarkRowUsed,
    MarkUsed,
    MarkYears,
    MergedRows,
    RangeRows,
    SourceRow,
    Window,
)
from .splitting import has_kind
from .windows import mark_cell, window_met
from .words import NONE

PIECE = "piece"  # among the parts of a mark: the piece itself, which every range has
NO_PART = "?"


def carrier(mark: MarkUsed, rows: RangeRows) -> str:
    """The part that carries the mark in this range, "" for the piece itself; NO_PART for none."""
    for part in mark["parts"]:
        if part == PIECE:
            return ""
        if place_of(rows["parts"], part) >= 0:
            return part
    return NO_PART


def kinds_with(part: str, rows: RangeRows) -> list[str]:
    """The kinds that have a part: those with a feature on it; none stands for all."""
    out: list[str] = []
    for kind in rows["kinds"]:
        having = [
            1
            for feature in rows["features"]
            if part != "" and feature["part"] == part and has_kind(feature, kind["id"])
        ]
        if len(having) > 0:
            out.append(kind["id"])
    return out


def says_something(mark: MarkYears, first: int, last: int) -> bool:
    """Whether a mark tells some of these years from others."""
    earliest = mark_cell(mark, first)
    for year in range(first + 1, last + 1):
        cell = mark_cell(mark, year)
        if len(cell) != len(earliest):
            return True
        for n in range(len(cell)):
            if cell[n]["state"] != earliest[n]["state"] or cell[n]["share"] != earliest[n]["share"]:
                return True
    return False


def mark_feature(
    mark: MarkUsed, used: list[MarkRowUsed], part: str, kinds: list[str]
) -> FeatureRow:
    """The mark as a feature, with those of its states that can be met."""
    ids = [row["window"]["state"] for row in used]
    ids.append(NONE)
    feature = mark["feature"]
    return {
        "id": feature["id"], "name": feature["name"], "title": feature["title"],
        "question": feature["question"],
        "where": feature["where"], "part": part, "seconds": feature["seconds"],
        "needs": feature["needs"], "every": len(kinds) == 0, "kinds": kinds, "when": [],
        "mistaken": [pair for pair in feature["mistaken"] if pair[0] in ids and pair[1] in ids],
        "states": [state for state in feature["states"] if state["id"] in ids],
        "layer": "", "unseen": "", "seen": feature["seen"],
    }  # fmt: skip


def used_here(mark: MarkUsed, country: str, first: int, last: int) -> list[MarkRowUsed]:
    """The wordings that were in use in the country in some of the years, or nearly."""
    return [
        row
        for row in mark["rows"]
        if country in row["countries"] and window_met(row["window"], first, last)
    ]


def merge_one(out: MergedRows, whole: RangeRows, mark: MarkUsed, first: int, last: int) -> None:
    """Add a mark to a range, unless it says nothing there or has nothing to stand on."""
    part = carrier(mark, whole)
    used = used_here(mark, whole["range"]["country"], first, last)
    windows: list[Window] = [entry["window"] for entry in used]
    years: MarkYears = {
        "feature": mark["feature"]["id"], "windows": windows, "seen": mark["feature"]["seen"],
    }  # fmt: skip
    if part == NO_PART or not says_something(years, first, last):
        return
    rows = out["rows"]
    feature = mark_feature(mark, used, part, kinds_with(part, whole))
    out["marks"].append(years)
    rows["features"].append(feature)
    for state in feature["states"]:
        name = feature["id"] + "-" + state["id"]
        place = place_of(mark["drawings"], name)
        rows["drawings"].append(mark["drawings"][place])
    for row in used:
        rows["changes"].append(row["change"])
        for source in row["sources"]:
            if place_of(rows["sources"], source["id"]) < 0:
                rows["sources"].append(source)


def merged_rows(whole: RangeRows, first: int, last: int, marks: list[MarkUsed]) -> MergedRows:
    """The range with each mark of its country that tells some years of its life from others."""
    features: list[FeatureRow] = whole["features"][:]
    changes: list[ChangeRow] = whole["changes"][:]
    sources: list[SourceRow] = whole["sources"][:]
    drawings: list[DrawingRow] = whole["drawings"][:]
    out: MergedRows = {
        "rows": {
            "id": whole["id"], "range": whole["range"], "kinds": whole["kinds"],
            "parts": whole["parts"], "cautions": whole["cautions"], "features": features,
            "sources": sources, "items": whole["items"], "variants": whole["variants"],
            "changes": changes, "moves": whole["moves"], "drawings": drawings,
        },
        "marks": [],
    }  # fmt: skip
    for mark in marks:
        merge_one(out, whole, mark, first, last)
    return out
