"""Splits variants at the running changes: one issue is one combination of states in some years."""

from collections.abc import Sequence

import msgspec

from identify.reference.records import Change, Feature, Item, Kind, Pack, Variant
from identify.reference.weights import Weighed, begun, year_weights
from identify.reference.years import Years, read_years

MOST = 4096  # combinations of one variant in one year
LEAST = 0.01  # an issue with less of its variant's weight is dropped,
DROPPED = 0.1  # smallest first, until this much of it is gone

Cell = tuple[str, ...]  # the states it may be; () is not recorded
Shared = list[tuple[dict[str, Cell], float]]  # combinations, each with its share
NONE = "none"


class TooManyError(Exception):
    """A variant would fall into more than MOST combinations; carries the features that split it."""

    def __init__(self, count: int, features: list[str]) -> None:
        super().__init__(count, features)
        self.count = count
        self.features = features


class Issue(msgspec.Struct):
    """One combination: a cell per feature, and its weight in each year of the range's life."""

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


def read_cell(text: str) -> Cell:
    """A cell as written: a state, states parted by |, or ? for not recorded."""
    return () if text == "?" else tuple(state.strip() for state in text.split("|"))


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
        self.trust = {source.id: source.trust for source in pack.sources}
        self.items = {item.number: item for item in pack.items}
        self.shares: dict[tuple[tuple[int, ...], int], dict[str, float]] = {}

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
            for n, change in enumerate(self.pack.changes)
            if change.feature == feature.id and (not change.kinds or item.kind in change.kinds)
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

    def _share(self, rows: list[int], year: int) -> dict[str, float]:
        """The share of each state in the year's production; {} where nothing is recorded."""
        key = tuple(rows), year
        if key not in self.shares:
            self.shares[key] = self._new_share([self.pack.changes[n] for n in rows], year)
        return self.shares[key]

    def _new_share(self, rows: list[Change], year: int) -> dict[str, float]:
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
        whole = sum(seen.values())
        return {state: weight / whole for state, weight in seen.items()}

    def _applies(self, feature: Feature, kind: str, cells: dict[str, Cell]) -> bool | None:
        """Whether the feature is on such a piece; None where that is not known."""
        if kind not in kinds_of(feature, self.pack.kinds):
            return False
        answer: bool | None = True
        for parent, states in feature.when.items():
            met = [state in states for state in cells[parent]]
            if met and not any(met):
                return False
            if not met or not all(met):
                answer = None
        return answer

    def _extend(
        self,
        found: Shared,
        feature: Feature,
        variant: Variant,
        year: int,
    ) -> Shared:
        """Every combination with each state that the feature may have on it in that year."""
        item = self.items[variant.item]
        text = variant.cells.get(feature.id) or item.cells.get(feature.id)
        shares = {} if text else self._share(self._rows(feature, item), year)
        longer = []
        for cells, weight in found:
            applies = self._applies(feature, item.kind, cells)
            if applies is False:
                longer.append((cells | {feature.id: (NONE,)}, weight))
            elif text:
                longer.append((cells | {feature.id: read_cell(text)}, weight))
            elif applies is None or not shares:
                longer.append((cells | {feature.id: ()}, weight))
            else:
                for state, share in shares.items():
                    longer.append((cells | {feature.id: (state,)}, weight * share))
        return longer

    def combinations(self, variant: Variant, year: int) -> Shared:
        """Every combination of states in a year's production, with its share of that year.

        Raises TooManyError.
        """
        found: Shared = [({}, 1.0)]
        splitting = []
        for feature in self.features:
            longer = self._extend(found, feature, variant, year)
            if len(longer) > len(found):
                splitting.append(feature.id)
            if len(longer) > MOST:
                raise TooManyError(len(longer), splitting)
            found = longer
        return found

    def issues(self, variant: Variant) -> list[Issue]:
        """The variant's issues, by the year they begin; their weights add up to 1.

        Raises TooManyError.
        """
        _, said = self.said(variant)
        weights = year_weights(self.weigh(said), self.first, self.last)
        merged: dict[tuple[Cell, ...], Issue] = {}
        for place, weight in enumerate(weights):
            if weight == 0.0:
                continue
            for cells, share in self.combinations(variant, self.first + place):
                key = tuple(cells.values())
                if key not in merged:
                    merged[key] = Issue(cells, [0.0] * len(weights))
                merged[key].years[place] += weight * share
        return _worth_keeping(list(merged.values()))


def _worth_keeping(issues: list[Issue]) -> list[Issue]:
    """Without the smallest issues, and with what they weighed shared out among the others."""
    dropped: set[int] = set()
    gone = 0.0
    for n in sorted(range(len(issues)), key=lambda n: (issues[n].weight, -n)):
        weight = issues[n].weight
        if weight >= LEAST or gone + weight > DROPPED:
            break
        dropped.add(n)
        gone += weight
    kept = [issue for n, issue in enumerate(issues) if n not in dropped]
    whole = sum(issue.weight for issue in kept)
    for issue in kept:
        issue.years = [weight / whole for weight in issue.years]
    return kept
