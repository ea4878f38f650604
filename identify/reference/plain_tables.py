"""Any plain table as a compiled pack: one row an object, one column a feature.

Rows with the same name are specimens of one thing, whose states are shares. A pack folder has no
way to write shares, so the table itself is what is kept and edited, and it is compiled at once.
"""

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Sequence
from pathlib import Path

import msgspec

from identify.core.ranges.issues import usual_shares
from identify.reference import compiled as to
from identify.reference.csv_files import csv_rows, not_commas
from identify.reference.mistakes import Mistake, PackError, instead, quoted
from identify.reference.text_files import read_text

MOST_COLUMNS = 100_000
NUMBER = re.compile(r"[+-]?[0-9]+(?:[.,][0-9]+)?")
MOST_STATES = 100  # more are no answers to choose from
SMOOTHING = 0.5  # specimens added to each state of a thing that is known by several
RESERVED = {"kind", "gauge", "material", "constructor"}  # have another meaning in the engine


class Table(msgspec.Struct):
    """The cells of each column by the column's name, and the name of the thing in each row."""

    names: list[str]
    columns: dict[str, list[str]]


def _header(
    file: str, row: tuple[int, list[str]], name: str, leave_out: Sequence[str]
) -> list[Mistake]:
    """What is wrong with the first row."""
    line, columns = row
    what = not_commas(columns)
    if what:
        return [Mistake(file, line, "", what)]
    if len(columns) > MOST_COLUMNS:
        what = f"the table has {len(columns)} columns, but at most {MOST_COLUMNS} can be read."
        return [Mistake(file, line, f"column {MOST_COLUMNS + 1}", what)]
    mistakes = []
    for place, column in enumerate(columns):
        if not column:
            what = "this column has no name. Give it one in the first row, or remove it."
            mistakes.append(Mistake(file, line, f"column {place + 1}", what))
    for column, count in Counter(columns).items():
        if column and count > 1:
            what = f"the column {quoted(column)} is here {count} times. Keep one of them."
            mistakes.append(Mistake(file, line, column, what))
    for wanted in (name, *leave_out):
        if wanted not in columns:
            what = f"there is no column {quoted(wanted)}: {instead(wanted, columns)}"
            mistakes.append(Mistake(file, line, wanted, what))
    return mistakes


def _short_or_long(file: str, line: int, cells: list[str], columns: list[str]) -> Mistake | None:
    """A row that was cut short, or has more cells than there are columns."""
    if len(cells) == len(columns) or (len(cells) > len(columns) and not any(cells[len(columns) :])):
        return None
    short = len(cells) < len(columns)
    place = columns[len(cells)] if short else f"column {len(columns) + 1}"
    what = f"this row has {len(cells)} cells, but the first row has {len(columns)}."
    return Mistake(file, line, place, f"{what} Was the file cut short?" if short else what)


def read_plain(path: Path, name: str, leave_out: Sequence[str]) -> Table:
    """The table in a CSV file. Raises PackError with everything that is wrong with it."""
    mistakes: list[Mistake] = []
    text = read_text(path, path.name, mistakes)
    rows = csv_rows(text, path.name, mistakes) if text is not None else []
    if rows:
        mistakes += _header(path.name, rows[0], name, leave_out)
    if mistakes or not rows:
        raise PackError(mistakes)
    columns = rows[0][1]
    named = columns.index(name)
    for line, cells in rows[1:]:
        wrong = _short_or_long(path.name, line, cells, columns)
        if wrong is not None:
            mistakes.append(wrong)
        elif not cells[named]:
            what = "this row has no name. Fill it in, or remove the row."
            mistakes.append(Mistake(path.name, line, name, what))
    if len(rows) < 2:
        what = "there is only the row with the names of the columns. Add a row for each thing."
        mistakes.append(Mistake(path.name, rows[0][0], "", what))
    kept = [n for n, column in enumerate(columns) if column not in (name, *leave_out)]
    if not mistakes:
        for n in kept:
            count = len({cells[n] for _, cells in rows[1:]} - {""})
            if count > MOST_STATES:
                what = (
                    f"this column has {count} different values, too many to choose from. Put them "
                    f'into at most {MOST_STATES} groups, or give --leave-out "{columns[n]}".'
                )
                mistakes.append(Mistake(path.name, rows[0][0], columns[n], what))
    if mistakes:
        raise PackError(mistakes)
    return Table(
        [cells[named] for _, cells in rows[1:]],
        {columns[n]: [cells[n] for _, cells in rows[1:]] for n in kept},
    )


def _ids(texts: Iterable[str], front: str, taken: Iterable[str] = ()) -> dict[str, str]:
    """A different id for each text, as like it as an id can be."""
    used = set(taken)
    ids = {}
    for text in texts:
        plain = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().lower()
        word = re.sub(r"[^a-z0-9]+", "_", plain).strip("_") or front
        word = word if word[0].isalpha() else f"{front}_{word}"
        unique, count = word, 1
        while unique in used:
            count += 1
            unique = f"{word}_{count}"
        used.add(unique)
        ids[text] = unique
    return ids


def _shares(specimens: Sequence[str], states: Sequence[str]) -> list[float]:
    """The share of each state among the specimens of one thing; [] where none is known.

    One specimen is taken at its word. Several are a sample, so each state gets a little more.
    """
    counts = Counter(value for value in specimens if value)
    if not counts:
        return []
    more = SMOOTHING if len(specimens) > 1 else 0.0
    whole = counts.total() + more * len(states)
    return [(counts[state] + more) / whole for state in states]


def _feature(ident: str, name: str, states: dict[str, str], file: str) -> to.Feature:
    shown = name.replace("_", " ")
    shown = shown[:1].upper() + shown[1:]
    return to.Feature(
        id=ident,
        name=shown,
        question=f"{shown}?",
        where=f'The column "{name}" of {file}.',
        part=-1,
        seconds=1.0,
        needs="nothing",
        states=[to.State(id=id_, name=value, drawing="") for value, id_ in states.items()],
        mistaken=[],
        kinds=[0],
        none=-1,
    )


def _cells(groups: Sequence[Sequence[int]], column: Sequence[str], states: list[str]) -> to.Cells:
    cells = to.Cells(shares=[[]], codes=[])
    places: dict[tuple[float, ...], int] = {(): 0}
    for rows in groups:
        shares = tuple(_shares([column[row] for row in rows], states))
        if shares not in places:
            places[shares] = len(cells.shares)
            cells.shares.append(list(shares))
        cells.codes.append(places[shares])
    return cells


def _usual(rows: to.Rows, cells: to.Cells, states: int) -> list[list[float]]:
    """The share of each state among the things, smoothed."""
    plain = msgspec.to_builtins(rows), msgspec.to_builtins(cells)
    return usual_shares(*plain, 1, states)


def _about(path: Path, name: str) -> to.Range:
    """What is known of a plain table: no maker, gauge or years."""
    return to.Range(
        name=path.stem, maker="", gauge_mm=0.0, gauge="", material="", scale="", country="",
        first=0, last=0, about=f'Made from the table {path.name}, named by "{name}".',
        invented=False,
    )  # fmt: skip


def _by_number(state: str) -> tuple[bool, float, str]:
    """Numbers by what they come to, before words: 4, 6, 10 and not 10, 4, 6."""
    number = NUMBER.fullmatch(state)
    return number is None, float(state.replace(",", ".")) if number else 0.0, state


def table_pack(
    path: Path, name: str, leave_out: Sequence[str]
) -> tuple[to.CompiledPack, list[str]]:
    """The pack of a table, and the columns in which every row says the same. Raises PackError.

    name: the column that says what each row is. A name that stands in more rows is commoner.
    """
    table = read_plain(path, name, leave_out)
    groups: dict[str, list[int]] = {}
    for row, thing in enumerate(table.names):
        groups.setdefault(thing, []).append(row)
    values = {
        column: sorted({*cells} - {""}, key=_by_number) for column, cells in table.columns.items()
    }
    same = [column for column, states in values.items() if len(states) < 2]
    used = [column for column in table.columns if column not in same]
    if not used:
        what = "no column tells one row from another. At least one must have two different values."
        raise PackError([Mistake(path.name, 1, "", what)])
    (ident,) = _ids([path.stem], "table").values()
    ids = _ids(used, "column", RESERVED)
    states = {column: _ids(values[column], "is") for column in used}
    rows = to.Rows(
        variant=list(range(len(groups))),
        kind=[0] * len(groups),
        prior=[len(each) / len(table.names) for each in groups.values()],
        span=[0] * len(groups),
    )
    features = [_feature("kind", "kind", {name: "thing"}, path.name)]
    cells = [to.Cells(shares=[[], [1.0]], codes=[1] * len(groups))]
    for column in used:
        features.append(_feature(ids[column], column, states[column], path.name))
        cells.append(_cells([*groups.values()], table.columns[column], values[column]))
    pack = to.CompiledPack(
        format=1, id=ident, version="", range=_about(path, name),
        kinds=[to.Kind(id="thing", name=name, plural=name)],
        parts=[], cautions=[], sources=[], features=features,
        items=[_item(n, thing, len(each)) for n, (thing, each) in enumerate(groups.items())],
        variants=[
            to.Variant(id=id_, name="", item=n, years="", said=[], note="")
            for n, id_ in enumerate(_ids(groups, "thing").values())
        ],
        changes=[], rows=rows, spans=[to.Span(first=0, weights=[])], cells=cells,
        backgrounds=[
            _usual(rows, each, len(feature.states))
            for feature, each in zip(features, cells, strict=True)
        ],
        drawings={},
    )  # fmt: skip
    pack.version = to.version_of(pack)
    return pack, same


def _item(place: int, thing: str, count: int) -> to.Item:
    return to.Item(
        id=f"i{place}", number=thing, name="", kind=0, years="", said=[], formation="",
        contains=[], carried=[], note=f"From {count} rows of the table." if count > 1 else "",
    )  # fmt: skip
