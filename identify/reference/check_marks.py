"""What is wrong in the table of date marks, said as mistakes in a pack are."""

import re
from collections.abc import Iterable, Sequence

from identify.core.ranges.words import NONE
from identify.reference.csv_files import FILES
from identify.reference.entries import (
    AUTHORITIES,
    PRACTICE,
    PUBLISHED,
    Change,
    Entry,
    MarkFeature,
    MarkRow,
    MarkSource,
    Source,
)
from identify.reference.mark_ends import GUESS, HARD, OPEN, read_edge, years_of
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.toml_files import FEATURES
from identify.reference.years import YearsError, read_years

ROWS = FILES[Change]
SOURCES = FILES[Source]
EDGES = 'write "hard", or the years of its tail and who says so, such as "5 guess".'


class MarkCheck:
    """Holds the files against one another."""

    def __init__(
        self,
        features: list[MarkFeature],
        rows: list[MarkRow],
        sources: list[MarkSource],
        mistakes: list[Mistake],
    ) -> None:
        self.features = features
        self.rows = rows
        self.sources = {source.id: source for source in sources}
        self.listed = sources
        self.mistakes = mistakes
        self.states = {each.id: [state.id for state in each.states] for each in features}

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

    def once(self, file: str, entries: Iterable[MarkFeature | MarkSource]) -> bool:
        """Whether no id stands twice."""
        before = len(self.mistakes)
        seen: set[str] = set()
        for entry in entries:
            if entry.id in seen:
                self.wrong(file, entry, "id", f"{quoted(entry.id)} is there twice. Change one.")
            seen.add(entry.id)
        return len(self.mistakes) == before

    def everything(self, drawings: Iterable[str]) -> None:
        """All of it, unless the same id means two things."""
        if self.once(FEATURES, self.features) and self.once(SOURCES, self.listed):
            for feature in self.features:
                self.feature(feature, set(drawings))
            for row in self.rows:
                self.row(row)
            self.drawings(drawings)

    def feature(self, feature: MarkFeature, drawings: set[str]) -> None:
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
        used = {row.state for row in self.rows if row.feature == feature.id}
        for state in feature.states:
            drawing = f"{feature.id}-{state.id}"
            if states.count(state.id) > 1:
                self.wrong(FEATURES, state, "states", f"{quoted(state.id)} is there twice.")
            if state.id not in (*used, NONE):
                text = f"no row of {ROWS} says when {quoted(state.id)} was in use. Add one."
                self.wrong(FEATURES, state, "states", text)
            if drawing not in drawings:
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
        self.end(row, "from", row.earliest, (row.from_label, row.from_source, row.from_edge))
        self.end(row, "to", row.latest, (row.to_label, row.to_source, row.to_edge))

    def end(self, row: MarkRow, side: str, years: str, said: tuple[str, str, str]) -> None:
        """A label, a source that goes with it, and how hard the end is; nothing where open."""
        label, source, edge = said
        names = [f"{side}_label", f"{side}_source", f"{side}_edge"]
        if years == OPEN:
            for name, text in zip(names, said, strict=True):
                if text:
                    self.wrong(ROWS, row, name, f"leave this blank, since that end is {OPEN}.")
            return
        if not label:
            self.wrong(ROWS, row, names[0], "this is blank; say who says so.")
        self.source(row, names[1], label, source)
        read = read_edge(edge)
        if read is None:
            self.wrong(ROWS, row, names[2], EDGES)
        elif edge == HARD and label != PUBLISHED:
            text = f'only a "{PUBLISHED}" end can be {HARD}: give the years of its tail.'
            self.wrong(ROWS, row, names[2], text)
        elif read[1] not in ("", GUESS):
            self.known(ROWS, row, "source", read[1], [*self.sources, GUESS])

    def source(self, row: MarkRow, name: str, label: str, source: str) -> None:
        """Published needs an authority of which something was read; practice has none."""
        known = source and self.known(ROWS, row, "source", source, [*self.sources])
        if label == PRACTICE and source:
            self.wrong(ROWS, row, name, f'leave this blank, since it is "{PRACTICE}".')
        if label != PUBLISHED:
            return
        if not source:
            self.wrong(ROWS, row, name, f'"{PUBLISHED}" needs a source of {SOURCES}.')
        elif known and self.sources[source].kind not in AUTHORITIES:
            kind = self.sources[source].kind
            text = f'"{PUBLISHED}" needs a statute, an office, a standard or a publication, and '
            self.wrong(ROWS, row, name, f"{text}{quoted(source)} is of the kind {quoted(kind)}.")
        elif known and not self.sources[source].read:
            text = f'nothing was read of {quoted(source)}, so this end is not "{PUBLISHED}".'
            self.wrong(ROWS, row, name, text)

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

    def drawings(self, drawings: Iterable[str]) -> None:
        """No drawing of nothing."""
        wanted = [f"{feature}-{state}" for feature, ids in self.states.items() for state in ids]
        for name in drawings:
            if name not in wanted:
                text = f"there is no such state: {instead(name, wanted)}"
                self.mistakes.append(Mistake(f"drawings/{name}.svg", 0, "", text))
