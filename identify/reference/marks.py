"""Date marks: the table in fixtures/marks, with its mistakes reported as those of a pack are."""

import re
from collections.abc import Iterable, Sequence
from functools import cache
from pathlib import Path

import msgspec

from identify.reference.csv_files import FILES, read_table
from identify.reference.drawings import read_drawings
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.records import (
    PRACTICE,
    PUBLISHED,
    Change,
    Entry,
    MarkFeature,
    MarkRow,
    Source,
)
from identify.reference.toml_files import FEATURES, read_features
from identify.reference.windows import NONE
from identify.reference.years import YearsError, read_years
from identify.shipped import MARKS

ROWS = FILES[Change]
SOURCES = FILES[Source]
OPEN = ".."


class Marks(msgspec.Struct):
    """The table: what to look at, when each wording was in use where, and who says so."""

    features: list[MarkFeature]
    rows: list[MarkRow]
    sources: list[Source]
    drawings: dict[str, str]


class MarkError(ValueError):
    """Something that is not in the table, with what is."""


def years_of(row: MarkRow) -> tuple[float, float]:
    """From when and until when, in decimal years; infinite where open. Raises YearsError."""
    start = float("-inf") if row.earliest == OPEN else read_years(row.earliest).earliest
    end = float("inf") if row.latest == OPEN else read_years(row.latest).latest
    return start, end


class _Check:
    """Holds the files against one another."""

    def __init__(self, marks: Marks, mistakes: list[Mistake]) -> None:
        self.marks = marks
        self.mistakes = mistakes
        self.states = {each.id: [state.id for state in each.states] for each in marks.features}

    def wrong(self, file: str, entry: Entry, column: str, text: str) -> None:
        line = entry.lines.get(column, entry.line)
        self.mistakes.append(Mistake(file, line, column, text))

    def known(self, file: str, entry: Entry, column: str, word: str, words: Sequence[str]) -> bool:
        """Whether a word is among the known; a mistake if it is not."""
        if word in words:
            return True
        home = SOURCES if column == "source" else FEATURES
        text = f"there is no {quoted(word)} in {home}: {instead(word, words)}"
        self.wrong(file, entry, column, text)
        return False

    def once(self, file: str, entries: Iterable[MarkFeature | Source]) -> bool:
        """Whether no id stands twice."""
        before = len(self.mistakes)
        seen: set[str] = set()
        for entry in entries:
            if entry.id in seen:
                self.wrong(file, entry, "id", f"{quoted(entry.id)} stands twice. Change one.")
            seen.add(entry.id)
        return len(self.mistakes) == before

    def everything(self) -> None:
        """All of it, unless the same id means two things."""
        marks = self.marks
        if self.once(FEATURES, marks.features) and self.once(SOURCES, marks.sources):
            for feature in marks.features:
                self.feature(feature)
            for row in marks.rows:
                self.row(row)
            self.drawings()

    def feature(self, feature: MarkFeature) -> None:
        """States, a state none among them, a drawing and at least one row for each."""
        states = self.states[feature.id]
        if NONE not in states:
            text = 'add a state "none": many pieces carry no such mark.'
            self.wrong(FEATURES, feature, "states", text)
        if not feature.parts:
            self.wrong(FEATURES, feature, "parts", "name at least one part that carries it.")
        for pair in feature.mistaken:
            for word in pair:
                self.known(FEATURES, feature, "mistaken", word, states)
        used = {row.state for row in self.marks.rows if row.feature == feature.id}
        for state in feature.states:
            drawing = f"{feature.id}-{state.id}"
            if states.count(state.id) > 1:
                self.wrong(FEATURES, state, "states", f"{quoted(state.id)} stands twice.")
            if state.id not in (*used, NONE):
                text = f"no row of {ROWS} says when {quoted(state.id)} was in use. Add one."
                self.wrong(FEATURES, state, "states", text)
            if drawing not in self.marks.drawings:
                text = f"{quoted(state.id)} has no drawing. Add drawings/{drawing}.svg."
                self.wrong(FEATURES, state, "states", text)

    def row(self, row: MarkRow) -> None:
        """A known wording, readable years, and a source that goes with its label."""
        if row.feature and self.known(ROWS, row, "feature", row.feature, [*self.states]):
            said = [state for state in self.states[row.feature] if state != NONE]
            self.known(ROWS, row, "state", row.state, said)
        for code in row.country:
            if not re.fullmatch(r"[A-Z]{2}", code):
                text = f'{quoted(code)} is not a country of ISO 3166-1, such as "GB".'
                self.wrong(ROWS, row, "country", text)
        self.years(row)
        sources = [source.id for source in self.marks.sources]
        if row.source:
            self.known(ROWS, row, "source", row.source, sources)
        if row.label == PUBLISHED and not row.source:
            self.wrong(ROWS, row, "source", f'"{PUBLISHED}" needs a source of {SOURCES}.')
        if row.label == PRACTICE and row.source:
            self.wrong(ROWS, row, "source", f'leave this blank, since it is "{PRACTICE}".')

    def years(self, row: MarkRow) -> None:
        """Each end can be read, and the earliest comes first."""
        for column, text in (("earliest", row.earliest), ("latest", row.latest)):
            if text not in ("", OPEN):
                try:
                    read_years(text)
                except YearsError as error:
                    self.wrong(ROWS, row, column, f"{error} Write .. where it is open.")
                    return
        if row.earliest and row.latest:
            start, end = years_of(row)
            if start >= end:
                text = f"{row.latest} is before {row.earliest}. Put the earlier one first."
                self.wrong(ROWS, row, "latest", text)

    def drawings(self) -> None:
        """No drawing of nothing."""
        wanted = [f"{feature}-{state}" for feature, ids in self.states.items() for state in ids]
        for name in self.marks.drawings:
            if name not in wanted:
                text = f"there is no such state: {instead(name, wanted)}"
                self.mistakes.append(Mistake(f"drawings/{name}.svg", 0, "", text))


@cache
def read_marks(folder: Path = MARKS) -> tuple[Marks, list[Mistake]]:
    """The table of a folder and every mistake in it. Read once."""
    mistakes: list[Mistake] = []
    features = read_features(folder, MarkFeature, mistakes)
    rows = read_table(folder, MarkRow, [], mistakes, file=ROWS)
    sources = read_table(folder, Source, [], mistakes)
    marks = Marks(features or [], rows or [], sources or [], read_drawings(folder, mistakes))
    if features is not None and rows is not None and sources is not None:
        _Check(marks, mistakes).everything()
    for n, each in enumerate(mistakes):
        mistakes[n] = msgspec.structs.replace(each, file=f"{folder.name}/{each.file}")
    return marks, mistakes


def rows_for(marks: Marks, country: str, feature: str, state: str) -> list[MarkRow]:
    """When a wording was in use in a country. Raises MarkError with what is in the table."""
    features = {each.id: each for each in marks.features}
    if feature not in features:
        raise MarkError(f"There is no mark {quoted(feature)}: {instead(feature, features)}")
    here = [row for row in marks.rows if row.feature == feature and country in row.country]
    found = [row for row in here if row.state == state]
    if found:
        return found
    names = {each.id: each.name for each in features[feature].states}
    if state not in names:
        raise MarkError(f"There is no wording {quoted(state)}: {instead(state, names)}")
    elsewhere = [
        code
        for row in marks.rows
        for code in row.country
        if (row.feature, row.state) == (feature, state)
    ]
    seen = ", ".join(dict.fromkeys(names[row.state] for row in here))
    raise MarkError(
        f'"{names[state]}" is not known from {country}, only from '
        f"{', '.join(sorted(set(elsewhere)))}. "
        + (f"Known from {country}: {seen}." if seen else f"Nothing of the kind is from {country}.")
    )
