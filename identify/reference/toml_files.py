"""range.toml and features.toml as typed records."""

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

from identify.reference.entries import Caution, Entry, Kind, Look, Part, Range, State
from identify.reference.entry_fields import fields, read_entry, reporter
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.text_files import TomlLines, read_toml
from identify.reference.types import TomlTable

RANGE = "range.toml"
FEATURES = "features.toml"

E = TypeVar("E", bound=Entry)
L = TypeVar("L", bound=Look)
Wrong = Callable[[int, str, str], None]  # told a mistake: in which entry, under which key, what
Pick = Callable[[str, list[TomlTable], Wrong], list[TomlTable]]  # the entries of a table, filled in


def as_written(_: str, given: list[TomlTable], __: Wrong) -> list[TomlTable]:
    """Nothing is picked from anywhere: the entries as they stand."""
    return given


def _tables(
    data: TomlTable, table: str, file: str, lines: TomlLines, mistakes: list[Mistake]
) -> list[TomlTable]:
    """The [[table]] entries of a file; anything else under that name is a mistake."""
    listed = data.get(table, [])
    if isinstance(listed, list) and all(isinstance(each, dict) for each in listed):
        return listed
    line = lines.key("", 0, table)
    mistakes.append(Mistake(file, line, table, f"write each of these under [[{table}]]."))
    return []


def _entry(
    record: type[E],
    given: TomlTable,
    place: tuple[str, str, int],
    lines: TomlLines,
    mistakes: list[Mistake],
    *,
    beside: tuple[str, ...] = (),
) -> E:
    """One record; place is (file, table, nth), beside the keys that are read elsewhere."""
    file, table, nth = place
    known = fields(record)
    for key in given:
        if key not in known and key not in beside:
            what = f"{quoted(key)} means nothing here: {instead(key, [*known, *beside])}"
            mistakes.append(Mistake(file, lines.key(table, nth, key), key, what))
    report = reporter(mistakes, file, lambda key: lines.key(table, nth, key))
    entry = read_entry(record, given, lines.line(table, nth, ""), report)
    entry.lines = {key: lines.key(table, nth, key) for key in given}
    return entry


def _picked(
    data: TomlTable, place: tuple[str, str], lines: TomlLines, mistakes: list[Mistake], pick: Pick
) -> list[TomlTable]:
    """The entries of a table as they are meant; place is (file, table)."""
    file, table = place

    def wrong(nth: int, key: str, text: str) -> None:
        mistakes.append(Mistake(file, lines.key(table, nth, key), key, text))

    return pick(table, _tables(data, table, file, lines, mistakes), wrong)


def read_entries(
    record: type[E],
    data: TomlTable,
    place: tuple[str, str],
    lines: TomlLines,
    mistakes: list[Mistake],
    *,
    pick: Pick,
) -> list[E]:
    """The entries of a table; place is (file, table)."""
    given = _picked(data, place, lines, mistakes, pick)
    return [_entry(record, each, (*place, n), lines, mistakes) for n, each in enumerate(given)]


def read_range(
    folder: Path, mistakes: list[Mistake], pick: Pick = as_written
) -> tuple[Range, list[Kind], list[Part], list[Caution]] | None:
    """range.toml, or None if it cannot be read at all."""
    read = read_toml(folder / RANGE, RANGE, mistakes)
    if read is None:
        return None
    data, lines = read
    beside = ("kinds", "parts", "cautions")
    about = _entry(Range, data, (RANGE, "", 0), lines, mistakes, beside=beside)

    def entries(record: type[E], table: str) -> list[E]:
        return read_entries(record, data, (RANGE, table), lines, mistakes, pick=pick)

    kinds = entries(Kind, "kinds")
    if not data.get("kinds"):
        mistakes.append(Mistake(RANGE, 0, "kinds", "at least one [[kinds]] is needed."))
    return about, kinds, entries(Part, "parts"), entries(Caution, "cautions")


def _states(
    given: Any, place: tuple[str, int], lines: TomlLines, mistakes: list[Mistake]
) -> list[State]:
    """The states of a feature; place is (file, nth)."""
    file, nth = place
    if not (given and isinstance(given, list) and all(isinstance(each, dict) for each in given)):
        line = lines.key("feature", nth, "states")
        what = 'this must be a list such as [{ id = "bar", name = "Flat metal bar" }].'
        mistakes.append(Mistake(file, line, "states", what))
        return []
    states = []
    known = fields(State)
    seen: dict[str, int] = {}
    for each in given:
        id_ = str(each.get("id", ""))
        line = lines.state(nth, id_, seen.get(id_, 0))
        seen[id_] = seen.get(id_, 0) + 1
        for key in each:
            if key not in known:
                what = f"{quoted(key)} means nothing here: {instead(key, known)}"
                mistakes.append(Mistake(file, line, "states", what))

        def report(key: str, text: str, line: int = line) -> None:
            mistakes.append(Mistake(file, line, "states", f"in a state, {key}: {text}"))

        states.append(read_entry(State, each, line, report))
    return states


def read_features(
    folder: Path,
    record: type[L],
    mistakes: list[Mistake],
    pick: Pick = as_written,
    file: str = FEATURES,
) -> list[L] | None:
    """A file of features, or None if it cannot be read at all."""
    read = read_toml(folder / file, file, mistakes)
    if read is None:
        return None
    data, lines = read
    for key in data:
        if key != "feature":
            what = f"{quoted(key)} means nothing here: {instead(key, ['feature'])}"
            mistakes.append(Mistake(file, lines.key("", 0, key), key, what))
    features = []
    for n, given in enumerate(_picked(data, (file, "feature"), lines, mistakes, pick)):
        place = (file, "feature", n)
        feature = _entry(record, given, place, lines, mistakes, beside=("states",))
        if "states" in given:
            feature.states = _states(given["states"], (file, n), lines, mistakes)
        features.append(feature)
    return features
