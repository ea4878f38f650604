"""Splits variants at the running changes: one issue is a variant in years of one production.

Within one year running changes are taken as independent of one another. So a year needs no row for
each combination of states: one row with the share of each state says the same, exactly. Only a
feature that others depend on (`when`) is split into a row for each of its states. Years with the
same shares make one issue.
"""

from collections.abc import Sequence

import msgspec

from identify.reference.records import Change, Feature, Item, Kind, Pack, Variant
from identify.reference.weights import Weighed, begun, in_millionths, year_weights
from identify.reference.windows import NONE
from identify.reference.years import Years, read_years

MOST = 4096  # rows of one variant in one year

Cell = tuple[tuple[str, float], ...]  # states with their shares; () is not recorded
Shared = list[tuple[dict[str, Cell], float]]  # what a year's production is made up of, with shares


class TooManyError(Exception):
    """A variant would fall into more than MOST rows; carries the features that split it."""

    def __init__(self, features: list[str]) -> None:
        super().__init__(features)
        self.features = features


class Issue(msgspec.Struct):
    """A cell for each feature, and the issue's weight in each year of the range's life."""

    cells: dict[str, Cell]
    years: list[float]

    @property
    def weight(self) -> float:
        """Its share of the variant."""
        return sum(self.years)


def kinds_of(feature: Feature, kinds: Sequence[Kind]) -> list[str]:
    """The kinds that have the feature."""
    return [kind.id for kind in kinds] if feature.kinds is None else feature.kinds


def may_be_none(feature: Feature, kinds: Sequence[Kind]) -> bool:
    """Whether there are pieces to which the feature does not apply."""
    return bool(feature.when) or {kind.id for kind in kinds} > set(kinds_of(feature, kinds))


def read_cell(text: str) -> tuple[str, ...]:
    """A cell as written: a state, states separated by |, or ? for not recorded."""
    return () if text == "?" else tuple(state.strip() for state in text.split("|"))


def _fixed(text: str) -> Cell:
    """The same with equal shares."""
    states = read_cell(text)
    return tuple((state, 1 / len(states)) for state in states)


def parents_first(features: Sequence[Feature]) -> list[Feature]:
    """The features in order, each after those named in its `when`. There must be no cycle."""
    placed: dict[str, Feature] = {}
    left = list(features)
    while left:
        ready = next(each for each in left if all(parent in placed for parent in each.when))
        placed[ready.id] = ready
        left.remove(ready)
    return list(placed.values())


def said_of(entry: Item | Variant) -> list[tuple[str, str]]:
    """Who says which years; nothing where the entry has none."""
    return [(entry.source, entry.years), *entry.other_years] if entry.years else []


class Splitter:
    """Splits the variants of one pack, which must have no mistakes."""

    def __init__(self, pack: Pack, first: int, last: int) -> None:
        self.pack = pack
        self.first = first
        self.last = last
        self.features = parents_first(pack.features)
        self.parents = {parent for feature in pack.features for parent in feature.when}
        self.trust = {source.id: source.trust for source in pack.sources}
        self.items = {item.number: item for item in pack.items}
        self.changes: dict[str, list[int]] = {feature.id: [] for feature in pack.features}
        for place, change in enumerate(pack.changes):
            self.changes[change.feature].append(place)
        self.shares: dict[tuple[tuple[int, ...], int], Cell] = {}

    def said(self, variant: Variant) -> tuple[str, list[tuple[str, str]]]:
        """The variant's years and who says so; the item's where the variant has none."""
        item = self.items[variant.item]
        return (
            variant.years or item.years or self.pack.range.years,
            said_of(variant) or said_of(item),
        )

    def weigh(self, said: Sequence[tuple[str, str]]) -> list[tuple[float, Years]]:
        """What sources say, with their trust."""
        return [(self.trust.get(source, 1.0), read_years(years)) for source, years in said]

    def _rows(self, feature: Feature, item: Item) -> list[int]:
        """The running changes of a feature that count for an item, by their place in the file."""
        rows = [
            n
            for n in self.changes[feature.id]
            if not self.pack.changes[n].kinds or item.kind in self.pack.changes[n].kinds
        ]
        own = [n for n in rows if item.number in self.pack.changes[n].items]
        return own or [n for n in rows if not self.pack.changes[n].items]

    def _came(self, change: Change) -> Weighed:
        """When the state came in; nothing for "since the range began"."""
        if not change.came:
            return []
        return self.weigh([(change.source, change.came), *change.other_from])

    def _middle(self, change: Change) -> float:
        """The middle of the time in which the state came in, by which rows follow one another."""
        if not change.came:
            return float(self.first)
        came = read_years(change.came)
        return (max(came.earliest, self.first) + min(came.latest, self.last + 1)) / 2

    def _usual(self, feature: Feature, item: Item, year: int) -> Cell:
        """What the running changes, or the years of a date mark, say of an item in a year."""
        if feature.id in self.pack.marks:
            return self.pack.marks[feature.id].cell(year)
        return self._share(self._rows(feature, item), year)

    def _share(self, rows: list[int], year: int) -> Cell:
        """The share of each state in the year's production; () where nothing is recorded."""
        key = tuple(rows), year
        if key not in self.shares:
            self.shares[key] = self._new_share([self.pack.changes[n] for n in rows], year)
        return self.shares[key]

    def _new_share(self, rows: list[Change], year: int) -> Cell:
        life = self.first, self.last
        seen: dict[str, float] = {}
        for change in rows:
            came = self._came(change)
            here = begun(year, came, *life) if came else 1.0
            later = [each for each in rows if self._middle(each) > self._middle(change)]
            if change.ended:
                here *= 1.0 - begun(year, self.weigh([(change.source, change.ended)]), *life)
            elif later:
                following = min(later, key=self._middle)
                here *= 1.0 - begun(year, self._came(following), *life)
            if here > 0.0:
                seen[change.state] = seen.get(change.state, 0.0) + here
        shares = in_millionths(list(seen.values()))
        return tuple((state, share) for state, share in zip(seen, shares, strict=True) if share)

    def _applies(self, feature: Feature, kind: str, cells: dict[str, Cell]) -> bool | None:
        """Whether the feature is on such a piece; None where that is not known."""
        if kind not in kinds_of(feature, self.pack.kinds):
            return False
        answer: bool | None = True
        for parent, states in feature.when.items():
            met = [state in states for state, _ in cells[parent]]
            if met and not any(met):
                return False
            if not met or not all(met):
                answer = None
        return answer

    def _extend(self, shared: Shared, feature: Feature, variant: Variant, year: int) -> Shared:
        """The rows with the feature's cell; a feature that others depend on splits them."""
        item = self.items[variant.item]
        text = variant.cells.get(feature.id) or item.cells.get(feature.id)
        shares = () if text else self._usual(feature, item, year)
        longer: Shared = []
        for cells, weight in shared:
            applies = self._applies(feature, item.kind, cells)
            if applies is False:
                longer.append((cells | {feature.id: ((NONE, 1.0),)}, weight))
            elif text:
                longer.append((cells | {feature.id: _fixed(text)}, weight))
            elif applies is None:
                longer.append((cells | {feature.id: ()}, weight))
            elif feature.id in self.parents and shares:
                for state, share in shares:
                    longer.append((cells | {feature.id: ((state, 1.0),)}, weight * share))
            else:
                longer.append((cells | {feature.id: shares}, weight))
        return longer

    def production(self, variant: Variant, year: int) -> Shared:
        """What a year's production is made up of, with shares that add up to 1.

        Raises TooManyError.
        """
        shared: Shared = [({}, 1.0)]
        splitting = []
        for feature in self.features:
            longer = self._extend(shared, feature, variant, year)
            if len(longer) > len(shared):
                splitting.append(feature.id)
            if len(longer) > MOST:
                raise TooManyError(splitting)
            shared = longer
        return shared

    def issues(self, variant: Variant) -> list[Issue]:
        """The variant's issues, by the year they begin; their weights add up to 1.

        Raises TooManyError.
        """
        _, said = self.said(variant)
        weights = in_millionths(year_weights(self.weigh(said), self.first, self.last))
        merged: dict[tuple[Cell, ...], Issue] = {}
        for place, weight in enumerate(weights):
            if weight == 0.0:
                continue
            for cells, share in self.production(variant, self.first + place):
                key = tuple(cells.values())
                if key not in merged:
                    merged[key] = Issue(cells, [0.0] * len(weights))
                merged[key].years[place] += weight * share
        return list(merged.values())
