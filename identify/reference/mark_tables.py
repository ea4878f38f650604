"""All that is known of marks, as the engine (core/marking.py, core/mark_words.py) takes it."""

import re
from functools import cache
from typing import Any

from identify.core.types.marks import MarkEnd, MarkFeature, MarkTables, ShapePiece, WordingRow
from identify.reference.csv_files import read_table
from identify.reference.entries import MarkRow, MarkShape, MarkWords
from identify.reference.mark_ends import End, ends_of
from identify.reference.marks import Marks, read_marks
from identify.reference.mistakes import Mistake, PackError
from identify.reference.number_tables import all_series, number_tables, yearly_table
from identify.reference.years import read_years
from identify.shipped import MARKS

WORDS, SHAPES = "words.csv", "shapes.csv"
PIECE = re.compile(r"\{([^}]*)\}")
MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September",
    "October", "November", "December",
)  # fmt: skip
COUNTRIES = {
    "AT": "Austria", "AU": "Australia", "BE": "Belgium", "CA": "Canada", "CH": "Switzerland",
    "CN": "China", "CZ": "Czechia", "DE": "Germany", "DK": "Denmark", "ES": "Spain",
    "FI": "Finland", "FR": "France", "GB": "Britain", "HK": "Hong Kong", "HR": "Croatia",
    "HU": "Hungary", "IE": "Ireland", "IT": "Italy", "JP": "Japan", "KR": "Korea",
    "LU": "Luxembourg", "MO": "Macau", "NL": "the Netherlands", "NO": "Norway",
    "NZ": "New Zealand", "PL": "Poland", "PT": "Portugal", "RS": "Serbia", "RU": "Russia",
    "SE": "Sweden", "SI": "Slovenia", "SK": "Slovakia", "TW": "Taiwan", "US": "the United States",
}  # fmt: skip


def pieces_of(shape: str) -> list[ShapePiece]:
    """A shape as written, such as "{1-3}/{p}", as the engine takes it. Raises ValueError."""
    out: list[ShapePiece] = []
    at = 0
    while at < len(shape):
        piece = PIECE.match(shape, at)
        if piece:
            out.append(_counted(piece[1]))
            at = piece.end()
        elif shape[at] in " _":
            out.append(_piece("gap" if shape[at] == " " else "space"))
            at += 1
        else:
            end = next((n for n in range(at, len(shape)) if shape[n] in "{ _"), len(shape))
            text = shape[at:end].upper()
            out.append(_piece("text", most=len(text), text=text))
            at = end
    return out


def _piece(kind: Any, least: int = 0, most: int = 0, text: str = "") -> ShapePiece:
    return {"kind": kind, "least": least, "most": most, "text": text}


def _counted(inside: str) -> ShapePiece:
    """What stands in braces: p, w, d, a2, 4 or 1-3."""
    plain = {"p": "pence", "w": "word", "d": "district"}
    if inside in plain:
        return _piece(plain[inside])
    kind = "letters" if inside.startswith("a") else "figures"
    least, _, most = inside.removeprefix("a").partition("-")
    return _piece(kind, int(least), int(most or least))


def plain_date(text: str) -> str:
    """An EDTF date of the table as people write it: "15 February 1971"."""
    day = re.fullmatch(r"(\d{4})-(\d\d)(?:-(\d\d))?", text)
    if not day:
        return text
    month = MONTHS[int(day[2]) - 1]
    return f"{int(day[3])} {month} {day[1]}" if day[3] else f"{month} {day[1]}"


def _end(end: End, sources: list[str], first: bool) -> MarkEnd:
    """One end of the years of a wording."""
    year = 0
    if not end.open:
        years = read_years(end.text)
        year = int(years.earliest) if first else int(years.latest - 1e-9)
    return {
        "year": year,
        "when": "" if end.open else plain_date(end.text),
        "hard": end.hard,
        "label": end.label,
        "source": sources.index(end.source) if end.source else -1,
        "tail": end.tail,
    }


def _row(row: MarkRow, sources: list[str]) -> WordingRow:
    first, last = ends_of(row)
    return {
        "feature": row.feature,
        "state": row.state,
        "countries": row.country,
        "wording": row.wording,
        "since": _end(first, sources, True),
        "until": _end(last, sources, False),
        "note": row.note,
    }


def _table(record: type[Any], file: str) -> list[Any]:
    mistakes: list[Mistake] = []
    rows = read_table(MARKS, record, [], mistakes, file=file) or []
    if mistakes:
        raise PackError(mistakes)
    return rows


def _features(marks: Marks) -> list[MarkFeature]:
    return [
        {
            "id": each.id,
            "name": each.name,
            "states": [{"id": state.id, "name": state.name} for state in each.states],
        }
        for each in marks.features
    ]


def _number_sources(ids: list[str]) -> dict[str, list[int]]:
    """For each series, the place of the source of each of its rows, -1 for none."""
    return {
        each.id: [ids.index(row.source) if row.source else -1 for row in yearly_table(each.id)]
        for each in all_series()
    }


@cache
def mark_tables() -> MarkTables:
    """The tables that the engine reads marks by. Raises PackError for a table with mistakes."""
    marks, mistakes = read_marks()
    if mistakes:
        raise PackError(mistakes)
    ids = [source.id for source in marks.sources]
    words: list[MarkWords] = _table(MarkWords, WORDS)
    shapes: list[MarkShape] = _table(MarkShape, SHAPES)
    tables = number_tables()
    said = _number_sources(ids)
    for series in tables["series"]:
        series["sources"] = said[series["id"]]
    return {
        "series": tables["series"],
        "barcode": tables["barcode"],
        "words": [
            {
                "words": each.words.split(),
                "feature": each.feature,
                "state": each.state,
                "countries": each.country,
                "series": each.series,
            }
            for each in words
        ],
        "shapes": [
            {
                "pieces": pieces_of(each.shape),
                "feature": each.feature,
                "state": each.state,
                "countries": each.country,
                "series": each.series,
            }
            for each in shapes
        ],
        "rows": [_row(row, ids) for row in marks.rows],
        "features": _features(marks),
        "sources": [
            {"what": each.what, "read": each.read, "kind": each.kind} for each in marks.sources
        ],
        "countries": [{"id": code, "name": name} for code, name in COUNTRIES.items()],
    }
