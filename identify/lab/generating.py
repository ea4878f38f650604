"""Large packs made by chance: what a thorough reference would be like, at any number of rows.

Every figure here is chosen, none is measured: about as many states, parts, running changes and
unknown cells as the demo packs have. One seed gives one pack, to the byte.
"""

import random
from dataclasses import dataclass, field
from itertools import accumulate, groupby
from typing import Literal

from identify.core.ranges.issues import SMOOTHING
from identify.core.ranges.weights import in_millionths, scaled
from identify.reference.compiled import (
    Cells,
    Change,
    CompiledPack,
    Feature,
    Item,
    Kind,
    Part,
    Range,
    Rows,
    Source,
    Span,
    State,
    Variant,
    version_of,
)

FIRST, LAST = 1920, 1979
KINDS = ("Locomotive", "Coach", "Wagon", "Railcar")
PARTS = (
    ("Coupling", 0.10), ("Wheels", 0.08), ("Bogie", 0.05), ("Chassis", 0.04), ("Buffers", 0.06),
    ("Roof", 0.03), ("Lamps", 0.07), ("Box", 0.15),
)  # fmt: skip
FEATURES = 36  # besides the kind: half of them on parts, half on the whole piece
CHANGING = 14 / 36  # so large a part of them changed over the years
NEEDS: tuple[Literal["nothing", "loupe", "body off"], ...] = (
    "nothing", "nothing", "nothing", "nothing", "nothing", "nothing", "loupe", "body off",
)  # fmt: skip
BEGINNINGS = "Bra Cor Dre Fal Gri Hul Jor Kel Lom Mer Nav Pru Quo Rus Sti Tav Ulv Vor Wex Zan"
ENDINGS = "ben dock fane gart hame ket lisk mond nure pag rill sotte tarn vick wyde"
SHAPES = 8
UNKNOWN = 0.03  # cells that nobody has recorded
EITHER = 0.03  # cells recorded as one of two
LONGEST = 9  # years that a variant was made
DRAWING = '<svg viewBox="0 0 96 64"><path d="M8 48h80M16 {0}h64v{1}H16z"/></svg>'

Shares = tuple[float, ...]


@dataclass
class Plan:
    """A feature, and how it is recorded."""

    feature: Feature
    changes: list[list[tuple[int, int]]] = field(default_factory=list)  # by kind: (year, state)
    needed: tuple[int, int] | None = None  # only where that feature has that state


def made_pack(rows: int, seed: int = 1, features: int = FEATURES) -> CompiledPack:
    """A pack with exactly so many rows, at least 1: several kinds, parts that are swapped, running
    changes, features that hang on another one, unknown cells and cells that are one of two.

    features: how many besides the kind, at least 3.
    """
    return _Maker(rows, seed, features).pack()


class _Maker:
    def __init__(self, count: int, seed: int, features: int) -> None:
        self.count = count
        self.features = features
        self.rng = random.Random(seed)
        self.seed = seed
        self.plans = self.planned()
        self.items: list[Item] = []
        self.variants: list[Variant] = []
        self.rows = Rows(variant=[], kind=[], prior=[], span=[])
        self.spans: dict[tuple[int, Shares], int] = {}
        self.codes: list[dict[Shares, int]] = [{(): 0} for _ in self.plans]
        self.columns: list[list[int]] = [[] for _ in self.plans]
        self.weights = [[self.one_sided(len(p.feature.states)) for _ in KINDS] for p in self.plans]

    def one_sided(self, states: int) -> list[float]:
        """Running totals of how common each state is: few are common, most are rare."""
        return list(accumulate(self.rng.expovariate(1.0) + 0.1 for _ in range(states)))

    def planned(self) -> list[Plan]:
        kind = self.feature(0, -1, [k.lower() for k in KINDS], list(range(len(KINDS))))
        kind.id, kind.name, kind.needs, kind.seconds = "kind", "Kind", "nothing", 2.0
        plans = [Plan(kind)]
        places = range(1, self.features + 1)
        changing = set(self.rng.sample(places, round(CHANGING * self.features)))
        for place in places:
            part = (place - 1) % len(PARTS) if 2 * place <= self.features else -1
            states = [f"s{n}" for n in range(self.rng.randint(3, 8))]
            having = [k for k in range(len(KINDS)) if self.rng.random() < 0.8] or [0]
            feature = self.feature(place, part, states, having)
            plan = Plan(feature)
            if place in changing:
                plan.changes = [self.history(len(states)) for _ in KINDS]
            elif part < 0 and place > 2 and self.rng.random() < 0.25:
                steady = [n for n, p in enumerate(plans) if n and not p.changes and not p.needed]
                if steady:
                    parent = self.rng.choice(steady)
                    plan.needed = parent, self.rng.randrange(len(plans[parent].feature.states))
            if plan.needed or len(having) < len(KINDS):
                feature.none = len(feature.states)
                feature.states.append(State(id="none", name="None", drawing="shape-0"))
            plans.append(plan)
        return plans

    def feature(self, place: int, part: int, states: list[str], having: list[int]) -> Feature:
        pair = [(0, 1)] if self.rng.random() < 0.5 else []
        needs = self.rng.choice(NEEDS)
        return Feature(
            id=f"f{place}",
            name=f"Detail {place}",
            question=f"What is detail {place} like?",
            where="Look at the drawing.",
            part=part,
            seconds={"nothing": self.rng.choice([2.0, 3.0, 5.0]), "loupe": 20.0}.get(needs, 120.0),
            needs=needs,
            states=[
                State(id=s, name=s.capitalize(), drawing=f"shape-{(place + n) % SHAPES}")
                for n, s in enumerate(states)
            ],
            mistaken=pair,
            kinds=having,
            none=-1,
        )

    def history(self, states: int) -> list[tuple[int, int]]:
        """(from year, state): two to four states, one after the other."""
        count = self.rng.randint(2, min(4, states))
        years = [FIRST, *sorted(self.rng.sample(range(FIRST + 3, LAST - 2), count - 1))]
        return list(zip(years, self.rng.sample(range(states), count), strict=True))

    def pack(self) -> CompiledPack:
        while len(self.rows.variant) < self.count:
            self.add_item()
        self.rows.prior = scaled(self.rows.prior)
        pack = CompiledPack(
            format=1,
            id=f"made_{self.count}",
            version="",
            range=self.range(),
            kinds=[Kind(id=k.lower(), name=k, plural=f"{k}s") for k in KINDS],
            parts=[Part(id=n.lower(), name=n, swap=swap, replaced="") for n, swap in PARTS],
            cautions=[],
            sources=[Source(id="chance", what="Drawn by chance", year="", trust=0.5)],
            features=[plan.feature for plan in self.plans],
            items=self.items,
            variants=self.variants,
            changes=self.change_list(),
            rows=self.rows,
            spans=[Span(first=first, weights=list(weights)) for first, weights in self.spans],
            cells=[
                Cells(shares=[list(shares) for shares in codes], codes=column)
                for codes, column in zip(self.codes, self.columns, strict=True)
            ],
            backgrounds=[self.backgrounds(place) for place in range(len(self.plans))],
            drawings={f"shape-{n}": DRAWING.format(44 - 3 * n, 2 + 3 * n) for n in range(SHAPES)},
        )
        pack.version = version_of(pack)
        return pack

    def range(self) -> Range:
        return Range(
            name=f"Drawn by chance, {self.count} rows",
            maker="No maker",
            gauge_mm=22.5,
            gauge="22.5 mm",
            material="Plastic",
            scale="",
            country="GB",
            first=FIRST,
            last=LAST,
            about=f"A pack made by chance (seed {self.seed}), to measure with; nothing is real.",
            invented=True,
        )

    def change_list(self) -> list[Change]:
        return [
            Change(
                feature=place,
                state=state,
                kinds=[kind],
                items=[],
                came="" if year == FIRST else str(year),
                ended="",
                said=[],
                note="",
            )
            for place, plan in enumerate(self.plans)
            for kind, history in enumerate(plan.changes)
            if kind in plan.feature.kinds
            for year, state in history
        ]

    def add_item(self) -> None:
        place = len(self.items)
        kind = self.rng.randrange(len(KINDS))
        name = self.rng.choice(BEGINNINGS.split()) + self.rng.choice(ENDINGS.split())
        first = self.rng.randint(FIRST, LAST - 2)
        last = min(LAST, first + self.rng.randint(2, 2 * LONGEST))
        self.items.append(
            Item(
                id=f"i{place}",
                number=f"{KINDS[kind][0]}{1000 + place}",
                name=f"{KINDS[kind]} {name}",
                kind=kind,
                years=f"{first}/{last}",
                said=[],
                formation=f"{name} set {place // 40}" if self.rng.random() < 0.1 else "",
                contains=[],
                carried=[str(self.rng.randint(100, 99999))] if self.rng.random() < 0.3 else [],
                note="",
            )
        )
        fixed = [self.cell(n, kind) for n in range(len(self.plans))]
        for number in range(self.rng.randint(1, 6)):
            if len(self.rows.variant) < self.count:
                cells = fixed if number == 0 else self.varied(fixed, kind)
                self.add_variant(place, number, kind, (first, last), cells)

    def cell(self, place: int, kind: int) -> Shares:
        """What is recorded of a feature that does not change over the years; () for nothing."""
        plan = self.plans[place]
        count = len(plan.feature.states)
        if place == 0:
            return _sharp(count, kind)
        if kind not in plan.feature.kinds:
            return _sharp(count, plan.feature.none)
        if self.rng.random() < UNKNOWN:
            return ()
        options = [n for n in range(count) if n != plan.feature.none]
        totals = self.weights[place][kind][: len(options)]
        state = self.rng.choices(options, cum_weights=totals)[0]
        other = self.rng.choice(options)
        if state != other and self.rng.random() < EITHER and not self.is_needed(place):
            return tuple(0.5 if n in (state, other) else 0.0 for n in range(count))
        return _sharp(count, state)

    def is_needed(self, place: int) -> bool:
        return any(plan.needed and plan.needed[0] == place for plan in self.plans)

    def varied(self, fixed: list[Shares], kind: int) -> list[Shares]:
        """The cells of another variant of the same item: one to three features differ."""
        cells = list(fixed)
        for place in self.rng.sample(range(1, len(cells)), self.rng.randint(1, 3)):
            cells[place] = self.cell(place, kind)
        return cells

    def add_variant(
        self, item: int, number: int, kind: int, years: tuple[int, int], cells: list[Shares]
    ) -> None:
        cells = list(cells)
        first = self.rng.randint(years[0], years[1])
        last = min(years[1], first + self.rng.randint(0, LONGEST))
        common = self.rng.choice([0.2, 0.5, 1.0, 1.0, 1.0, 2.0, 5.0])
        self.variants.append(
            Variant(
                id=f"{item}_{number}",
                name="" if number == 0 else f"variant {number + 1}",
                item=item,
                years=f"{first}/{last}",
                said=[(0, f"{first}/{last}")],
                note="",
            )
        )
        for place, plan in enumerate(self.plans):
            if plan.needed:
                parent, state = plan.needed
                if cells[parent] and cells[parent][state] == 0.0:
                    cells[place] = _sharp(len(plan.feature.states), plan.feature.none)
        changing = [
            n for n, plan in enumerate(self.plans) if plan.changes and kind in plan.feature.kinds
        ]
        unknown = [n for n in changing if self.rng.random() < UNKNOWN]
        moving = [n for n in changing if n not in unknown]
        for place in unknown:
            cells[place] = ()
        every = range(first, last + 1)
        shown = {year: tuple(self.in_year(n, kind, year) for n in moving) for year in every}
        for _, alike in groupby(every, key=lambda year: shown[year]):
            if len(self.rows.variant) == self.count:
                return
            run = list(alike)
            row = dict(zip(moving, shown[run[0]], strict=True))
            self.add_row(kind, common * len(run) / len(every), run, cells, row)

    def in_year(self, place: int, kind: int, year: int) -> Shares:
        """The shares of the states in a year: half and half in the year of a change."""
        plan = self.plans[place]
        count = len(plan.feature.states)
        now = [state for came, state in plan.changes[kind] if came <= year][-1]
        before = [state for came, state in plan.changes[kind] if came < year]
        if before and before[-1] != now:
            return tuple(0.5 if n in (now, before[-1]) else 0.0 for n in range(count))
        return _sharp(count, now)

    def add_row(
        self,
        kind: int,
        weight: float,
        years: list[int],
        cells: list[Shares],
        row: dict[int, Shares],
    ) -> None:
        rows = self.rows
        rows.variant.append(len(self.variants) - 1)
        rows.kind.append(kind)
        rows.prior.append(weight)
        key = years[0], tuple(in_millionths([1.0] * len(years)))
        rows.span.append(self.spans.setdefault(key, len(self.spans)))
        for place, fixed in enumerate(cells):
            shares = row.get(place, fixed)
            codes = self.codes[place]
            self.columns[place].append(codes.setdefault(shares, len(codes)))

    def backgrounds(self, place: int) -> list[list[float]]:
        """By kind, as rows.background makes it, in one pass over the rows for all kinds."""
        shares = list(self.codes[place])
        held: dict[tuple[int, int], float] = {}
        counts = [0] * len(KINDS)
        rows = self.rows
        for kind, code, prior in zip(rows.kind, self.columns[place], rows.prior, strict=True):
            if code:
                counts[kind] += 1
                held[kind, code] = held.get((kind, code), 0.0) + prior
        out = []
        states = len(self.plans[place].feature.states)
        for kind, count in enumerate(counts):
            seen = [0.0] * states
            for (of, code), weight in held.items():
                if of == kind:
                    seen = [a + weight * b for a, b in zip(seen, shares[code], strict=True)]
            even = [1 / states] * states
            known = scaled(seen) if count else even
            out.append([(s * count + SMOOTHING / states) / (count + SMOOTHING) for s in known])
        return out


def _sharp(count: int, state: int) -> Shares:
    return tuple(1.0 if n == state else 0.0 for n in range(count))
