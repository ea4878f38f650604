"""What a pack says of pieces that it does not hold: items and variants are left out, and drawn."""

import random
from collections.abc import Callable, Sequence
from copy import deepcopy
from dataclasses import dataclass

from identify.core.belief import prepare
from identify.core.lists import largest, total
from identify.core.ranges.issues import usual_shares
from identify.core.ranges.relatives import learn_relatives
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.lab.calibration import Stated, calibration, error_of
from identify.lab.pieces import Piece, drawn, piece
from identify.lab.trials import Asker, walked

Step = Callable[[], None]
FOLDS = 10  # a tenth is left out at a time
MISSING = [0.25, 0.5, 0.75]  # of the items, taken out at random
SAID = 0.9  # from here on a name is said as if it were so
EDGES = [0.0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0]


@dataclass
class Taken:
    """A piece of what was left out, the variant it was taken for, and with which chance."""

    truth: int
    name: int
    chance: float


@dataclass
class Left:
    """Sessions with pieces of what was left out: "an item" or "a variant"."""

    what: str
    taken: list[Taken]

    @property
    def wrong(self) -> int:
        """How many were given a name with SAID and more."""
        return sum(each.chance >= SAID for each in self.taken)


@dataclass
class Nothing:
    """The chance of "none of these" where so much of the items is missing: its error, its table."""

    missing: float
    error: float
    table: list[list[float]]

    @property
    def stated(self) -> float:
        """The mean chance that was stated."""
        return self._mean(3)

    @property
    def true(self) -> float:
        """The share in which it was so."""
        return self._mean(4)

    def _mean(self, column: int) -> float:
        return sum(row[2] * row[column] for row in self.table) / sum(row[2] for row in self.table)


def pack_without(pack: Pack, variants: set[int], open_share: float | None = None) -> Pack:
    """A pack without the rows of these variants, by their places, and what is learned from rows
    learned again; open_share: of each kind in no range, where it is not as the pack says.
    """
    out = deepcopy(pack)
    rows = pack["rows"]
    kept = [i for i, variant in enumerate(rows["variant"]) if variant not in variants]
    whole = sum(rows["prior"][i] for i in kept)
    out["rows"] = {
        "variant": [rows["variant"][i] for i in kept],
        "kind": [rows["kind"][i] for i in kept],
        "prior": [rows["prior"][i] / whole for i in kept],
        "span": [rows["span"][i] for i in kept],
    }
    for place, cells in enumerate(out["cells"]):
        cells["codes"] = [pack["cells"][place]["codes"][i] for i in kept]
        states = len(pack["features"][place]["states"])
        out["backgrounds"][place] = usual_shares(out["rows"], cells, len(pack["kinds"]), states)
    if open_share is not None:
        for kind in out["kinds"]:
            kind["open"] = open_share
    learn_relatives(out)
    return out


def by_item(pack: Pack) -> list[list[int]]:
    """The variants of each item that has any, by their places."""
    out: list[list[int]] = [[] for _ in pack["items"]]
    for place, variant in enumerate(pack["variants"]):
        out[variant["item"]].append(place)
    return [each for each in out if each]


def of_variants(rng: random.Random, reader: Engine, variants: set[int]) -> Piece:
    """A piece of one of these variants, by their priors."""
    rows = reader["pack"]["rows"]
    weights = [
        prior * (variant in variants)
        for prior, variant in zip(rows["prior"], rows["variant"], strict=True)
    ]
    return piece(rng, reader["pack"], drawn(rng, range(len(weights)), weights))


def left_out(
    rng: random.Random, reader: Engine, groups: Sequence[Sequence[int]], count: int, step: Step
) -> list[Taken]:
    """So many pieces of groups of variants, of which a tenth is left out at a time."""
    order = rng.sample(list(groups), len(groups))
    folds = [order[n::FOLDS] for n in range(min(FOLDS, len(order)))]
    out = []
    for n, fold in enumerate(folds):
        gone = {variant for group in fold for variant in group}
        if len(gone) == len({*reader["pack"]["rows"]["variant"]}):
            continue  # there is but one: nothing is left to take it for
        asker = Asker(prepare(pack_without(reader["pack"], gone)))
        for _ in range(len(range(n, count, len(folds)))):
            taken = of_variants(rng, reader, gone)
            end, _ = walked(rng, asker, reader, taken)
            name = largest(end.chances)
            truth = reader["pack"]["rows"]["variant"][taken.row]
            out.append(Taken(truth, name, end.chances[name]))
            step()
    return out


def none_of_these(
    rng: random.Random, reader: Engine, missing: float, count: int, step: Step
) -> Nothing | None:
    """Whether the chance of "none of these" comes true where so much of the items is missing and
    the range says so; None where the range has too few items for that.
    """
    groups = by_item(reader["pack"])
    chosen = rng.sample(groups, round(missing * len(groups)))
    if not 0 < len(chosen) < len(groups):
        return None
    gone = {variant for group in chosen for variant in group}
    rows = reader["pack"]["rows"]
    share = total([
        prior
        for prior, variant in zip(rows["prior"], rows["variant"], strict=True)
        if variant in gone
    ])  # fmt: skip
    asker = Asker(prepare(pack_without(reader["pack"], gone, share)))
    noted: Stated = []
    for _ in range(count):
        taken = piece(rng, reader["pack"])
        end, _ = walked(rng, asker, reader, taken)
        noted.append((end.unrecorded, rows["variant"][taken.row] in gone))
        step()
    table = calibration(noted, EDGES)
    return Nothing(missing, error_of(table), table)


def confused(left: Sequence[Left], most: int) -> list[Taken]:
    """What was most nearly taken for a recorded variant, each pair once; likeliest first."""
    pairs: dict[tuple[int, int], Taken] = {}
    for taken in sorted((t for each in left for t in each.taken), key=lambda t: -t.chance):
        pairs.setdefault((taken.truth, taken.name), taken)
    return list(pairs.values())[:most]
