"""Names that nothing declares, names that stand twice, years outside the range: for all checks."""

from collections.abc import Iterable, Mapping, Sequence

import msgspec

from identify.reference.csv_files import FILES
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.records import Change, Entry, Feature, Item, Pack, Source, Variant
from identify.reference.splitting import kinds_of, may_be_none
from identify.reference.toml_files import FEATURES, RANGE
from identify.reference.windows import NONE
from identify.reference.years import Years, YearsError, outside, read_years


class Names(msgspec.Struct, frozen=True):
    """Words that may stand somewhere: what they name, the file that declares them, the words."""

    what: str
    home: str
    words: list[str]


class Checker:
    """A pack with what is known in it, and the mistakes found so far."""

    def __init__(self, pack: Pack, mistakes: list[Mistake]) -> None:
        self.pack = pack
        self.mistakes = mistakes
        self.features = {feature.id: feature for feature in pack.features}
        self.items = {item.number: item for item in pack.items}
        self.kind_names = Names("kind", RANGE, [kind.id for kind in pack.kinds])
        self.part_names = Names("part", RANGE, [part.id for part in pack.parts])
        self.feature_names = Names("feature", FEATURES, list(self.features))
        self.source_names = Names("source", FILES[Source], [each.id for each in pack.sources])
        self.item_names = Names("item", FILES[Item], list(self.items))
        self.life = self._life()

    def _life(self) -> tuple[int, int] | None:
        """First and last year of the range, if they can be read."""
        try:
            years = read_years(self.pack.range.years)
        except YearsError:
            return None
        if not (years.first.is_integer() and years.last.is_integer()):
            return None
        return int(years.first), int(years.last) - 1

    def wrong(self, file: str, entry: Entry, column: str, text: str) -> None:
        """Add a mistake."""
        line = entry.lines.get(column, entry.line)
        self.mistakes.append(Mistake(file, line, column, text))

    def known(self, file: str, entry: Entry, column: str, word: str, among: Names) -> bool:
        """Whether a word is among the known; a mistake if it is not.

        Nothing is said where the file or the states that declare such words could not be read.
        """
        if word in among.words:
            return True
        unread = among.home in self.pack.unread or (among.what == "state" and not among.words)
        if not unread:
            near = instead(word, among.words)
            text = f"there is no {among.what} {quoted(word)} in {among.home}: {near}"
            self.wrong(file, entry, column, text)
        return False

    def states(self, feature: Feature) -> Names:
        """The states that may be written for a feature."""
        states = [state.id for state in feature.states]
        if states and NONE not in states and may_be_none(feature, self.pack.kinds):
            states.append(NONE)
        return Names("state", FEATURES, states)

    def applies(self, feature: Feature, kind: str) -> bool:
        """Whether pieces of the kind have the feature."""
        return kind in kinds_of(feature, self.pack.kinds)

    def unique(self, file: str, column: str, names: Sequence[tuple[str, Entry]]) -> None:
        """A mistake for every name that stands twice."""
        seen: dict[str, int] = {}
        for name, entry in names:
            if name and name in seen:
                text = f"{quoted(name)} stands in line {seen[name]} already. Change one of them."
                self.wrong(file, entry, column, text)
            seen.setdefault(name, entry.line)

    def years(self, file: str, entry: Entry, column: str, text: str) -> Years | None:
        """The years, or None with a mistake. They must lie within the range's life."""
        try:
            years = read_years(text)
        except YearsError as error:
            self.wrong(file, entry, column, str(error))
            return None
        first, last = self.life or (0, 9999)
        if outside(text, first, last + 1):
            what = f"{text} lies outside the life of the range, {first} to {last} ({RANGE})."
            self.wrong(file, entry, column, what)
            return None
        return years

    def said(
        self, entry: Item | Variant | Change, years: str, column: str, others: list[tuple[str, str]]
    ) -> Years | None:
        """Check what the sources of an entry say, and return what the first of them says."""
        file = FILES[type(entry)]
        found = None
        if years:
            found = self.years(file, entry, column, years)
            if not entry.source:
                self.wrong(file, entry, "source", f"{column} is given, so its source must be too.")
        elif others:
            text = f"give {column} as well, since other sources are given."
            self.wrong(file, entry, column, text)
        if entry.source:
            self.known(file, entry, "source", entry.source, self.source_names)
        for source, text in others:
            self.known(file, entry, f"other_{column}", source, self.source_names)
            self.years(file, entry, f"other_{column}", text)
        return found


def cycle(parents: Mapping[str, Iterable[str]]) -> list[str]:
    """Names that depend on one another in a circle, from the first back to it; [] if none do."""
    done: set[str] = set()
    for start in parents:
        path: list[str] = []
        turns = [iter([start])]
        while turns:
            name = next(turns[-1], None)
            if name is None:
                turns.pop()
                if path:
                    done.add(path.pop())
            elif name in path:
                return [*path[path.index(name) :], name]
            elif name in parents and name not in done:
                path.append(name)
                turns.append(iter(parents[name]))
    return []
