"""The world outside the engine: pieces as they are met, and people who look at them.

Written from the description of a pack (what is recorded of an issue, how often parts are swapped),
and calls nothing of the engine: what it draws is what the engine is judged by.
"""

import random
from dataclasses import dataclass
from typing import Any

FOREIGN = 0.25  # swapped parts that come from another kind, where one fits
LIKENESS = 4  # a state declared as mistaken for the right one is misread so many times as often


@dataclass(frozen=True)
class Conditions:
    """How the world is: whole numbers of times and shares, as DEVELOPERS.md describes them."""

    misread: float = 0.03
    careless: float = 0.0  # share of people who misread more, all the time
    misread_by_careless: float = 0.14
    swaps: float = 1.0  # times the declared rates
    repainted: float = 0.0  # share of pieces with the finish of another one
    one_donor: bool = False  # all swapped parts of a piece come from the same other piece
    boxless: float = 0.0  # share of pieces without a box


@dataclass(frozen=True)
class Found:
    """A piece: its row, the parts swapped, what it was made with, and what is to be seen now."""

    row: int
    swapped: frozenset[int]
    made: tuple[int, ...]
    now: tuple[int, ...]


class World:
    """Every row of a full pack, to draw pieces from."""

    def __init__(self, pack: dict[str, Any], finish: frozenset[str] = frozenset()) -> None:
        self.pack = pack
        self.finish = finish
        self.kinds = pack["rows"]["kind"]
        self.priors = pack["rows"]["prior"]
        self.columns = [
            [cells["shares"][code] for code in cells["codes"]] for cells in pack["cells"]
        ]
        self.of_kind: dict[int, list[int]] = {}
        for row, kind in enumerate(self.kinds):
            self.of_kind.setdefault(kind, []).append(row)

    def rows_of(self, items: set[str], variants: set[str]) -> list[int]:
        """The rows of these items, by number, and of these variants, by id."""
        named = self.pack["variants"]
        out = []
        for row, place in enumerate(self.pack["rows"]["variant"]):
            number = self.pack["items"][named[place]["item"]]["number"]
            if number in items or named[place]["id"] in variants:
                out.append(row)
        return out

    def state(self, rng: random.Random, row: int, place: int) -> int:
        """A state as this row has it; where nothing is recorded, as some row of the kind has it."""
        shares = self.columns[place][row]
        if not shares:
            alike = [r for r in self.of_kind[self.kinds[row]] if self.columns[place][r]]
            if not alike:
                return rng.randrange(len(self.pack["features"][place]["states"]))
            weights = [self.priors[r] for r in alike]
            shares = self.columns[place][rng.choices(alike, weights)[0]]
        return rng.choices(range(len(shares)), shares)[0]

    def fitting(self, kind: int, part: int) -> list[int]:
        """The other kinds that have all there is to look at on this part of a piece of a kind."""
        on = [set(f["kinds"]) for f in self.pack["features"] if f["part"] == part]
        wanted = [kinds for kinds in on if kind in kinds]
        others = [k for k in self.of_kind if k != kind]
        return [k for k in others if wanted and all(k in kinds for kinds in wanted)]

    def another(self, rng: random.Random, kinds: list[int]) -> int:
        """Some row of these kinds, as often as it is met."""
        rows = [row for kind in kinds for row in self.of_kind[kind]]
        return rng.choices(rows, [self.priors[row] for row in rows])[0]

    def piece(self, rng: random.Random, rows: list[int], like: Conditions) -> Found:
        """A piece of one of these rows, by how often each is met."""
        row = rng.choices(rows, [self.priors[r] for r in rows])[0]
        kind = self.kinds[row]
        features = self.pack["features"]
        made = [self.state(rng, row, place) for place in range(len(features))]
        now = list(made)
        swapped = set()
        donor = self.another(rng, [kind])
        for part, about in enumerate(self.pack["parts"]):
            if about["id"] == "finish" or rng.random() >= min(1.0, about["swap"] * like.swaps):
                continue
            swapped.add(part)
            others = self.fitting(kind, part)
            away = bool(others) and rng.random() < FOREIGN and not like.one_donor
            if away or not like.one_donor:
                donor = self.another(rng, others if away else [kind])
            for place, feature in enumerate(features):
                if feature["part"] == part:
                    now[place] = self.state(rng, donor, place)
        if rng.random() < like.repainted:
            swapped |= {n for n, part in enumerate(self.pack["parts"]) if part["id"] == "finish"}
            donor = self.another(rng, [kind])
            for place, feature in enumerate(features):
                if feature["id"] in self.finish:
                    now[place] = self.state(rng, donor, place)
        return Found(row, frozenset(swapped), tuple(made), tuple(now))

    def slips(self, rng: random.Random, like: Conditions) -> float:
        """How often one person misreads, all the while a piece is in the hand."""
        careless = rng.random() < like.careless
        return like.misread_by_careless if careless else like.misread

    def read(self, rng: random.Random, found: Found, place: int, misread: float) -> str:
        """What a person says who looks at one feature: the id of a state."""
        feature = self.pack["features"][place]
        ids = [state["id"] for state in feature["states"]]
        there = found.now[place]
        if len(ids) > 1 and rng.random() < misread:
            pairs = [set(pair) for pair in feature["mistaken"]]
            others = [n for n in range(len(ids)) if n != there]
            weights = [LIKENESS if {n, there} in pairs else 1 for n in others]
            there = rng.choices(others, weights)[0]
        return str(ids[there])

    def can_be_told(self, found: Found, recorded: list[int]) -> bool:
        """Whether something visible, as it was made, differs from every one of these rows."""
        visible = [n for n, f in enumerate(self.pack["features"]) if f["needs"] == "nothing"]
        return not any(
            all(
                not self.columns[place][row] or self.columns[place][row][found.made[place]] > 0
                for place in visible
            )
            for row in recorded
        )
