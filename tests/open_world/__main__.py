"""`python -m tests.open_world`: what the engine says of pieces in a world that it did not make.

Prints a table with intervals; the figures that were found stand in README.md beside this file.
Packs with something left out are compiled anew, which takes most of the time.
"""

import argparse
import random
import tempfile
from collections.abc import Sequence
from pathlib import Path
from statistics import fmean, median
from typing import Any

import msgspec

from identify.errors import UserError
from identify.lab.calibration import EDGES, Stated, calibration, error_of
from identify.lab.intervals import share_said
from identify.reference.compile import compile_pack
from tests.open_world.chance import by_chance
from tests.open_world.leaving import compiled_without, demo
from tests.open_world.many import Ended, Job, ended
from tests.open_world.world import Conditions, World

NAMES = ("pellmarsh", "tarrowby")
FINISH = frozenset(
    {"main_colour", "lining", "emblem", "printing", "finish", "register_marks", "side_name"}
)
STALL = Conditions()
CARELESS = Conditions(misread=0.02, careless=1 / 12)  # 3 % together
KNOWN = {
    "all recorded": STALL,
    "one person in twelve careless": CARELESS,
    "10 % misread": Conditions(misread=0.1),
    "15 % repainted": Conditions(repainted=0.15),
    "twice the swaps": Conditions(swaps=2.0),
    "swaps from one donor": Conditions(one_donor=True),
    "45 % without a box": Conditions(boxless=0.45),
}
MISSING = (0.25, 0.5, 0.75)  # of the items
RANGES = 60  # with so much missing: with fewer, chance alone is off by 0.02 and more
OF_RANGE = 100  # of so many pieces one is of each of these ranges
TENTHS = [tenth / 10 for tenth in range(11)]
REPLACED = 0.6  # "probably replaced" is said from here on


def main() -> None:
    """Measure what is asked for, or all of it."""
    parser = argparse.ArgumentParser(prog="python -m tests.open_world", description=__doc__)
    parser.add_argument("--pieces", type=int, default=4000, help="of each range, all recorded")
    parser.add_argument("--each", type=int, default=12, help="of each item or variant left out")
    parser.add_argument(
        "--every", type=int, default=2, help="1 for every variant, 2 for every second"
    )
    parser.add_argument("--seed", type=int, default=12)
    parser.add_argument("--range", choices=NAMES, action="append")
    parser.add_argument(
        "--part", choices=("known", "items", "variants", "missing"), action="append"
    )
    asked = parser.parse_args()
    parts = asked.part or ["known", "items", "variants", "missing"]
    for name in asked.range or NAMES:
        world = World(msgspec.to_builtins(compile_pack(demo(name))), FINISH)
        with tempfile.TemporaryDirectory() as folder:
            into = Path(folder)
            if "known" in parts:
                for how, like in KNOWN.items():
                    rng = random.Random(f"{asked.seed} {name} {how}")
                    print(f"{name}, {how}: {of_known(rng, world, like, into, asked.pieces)}")
            pack = world.pack
            items = [item["number"] for item in pack["items"]]
            of = [variant["item"] for variant in pack["variants"]]
            variants = [v["id"] for v in pack["variants"] if of.count(v["item"]) > 1]
            left = {
                "items": [({number}, set[str]()) for number in items],
                "variants": [(set[str](), {ident}) for ident in variants[:: asked.every]],
            }
            for part in [part for part in left if part in parts]:
                rng = random.Random(f"{asked.seed} {name} {part}")
                said = of_left_out(rng, world, name, left[part], asked.each, into)
                print(f"{name}, {part} left out one by one: {said}")
            for share in MISSING if "missing" in parts else ():
                rng = random.Random(f"{asked.seed} {name} {share}")
                said = of_missing(rng, world, name, share, asked.pieces // OF_RANGE, into)
                print(f"{name}, {share} of the items missing: {said}")


def of_known(rng: random.Random, world: World, like: Conditions, into: Path, pieces: int) -> str:
    """What is said of pieces all of which are recorded."""
    rows = list(range(len(world.kinds)))
    drawn = [world.piece(rng, rows, like) for _ in range(pieces)]
    done = ended(rng, world, [Job(world.pack, drawn)], like, into)
    error = error_of(calibration([(each.chance, each.right) for each in done], EDGES))
    wrong = [each.wrongly_sure for each in done if each.said]
    parts = [part for each in done for part in each.replaced]
    wrongly = [not true for chance, true in parts if chance >= REPLACED]
    return (
        f"right {told([each.right for each in done])}; calibration error {error:.3f}; wrong of "
        f"what is said with 90 % {told(wrong)}; wrong of what is probably replaced "
        f"{told(wrongly)}, of {len(wrongly)}; {effort(done)}"
    )


def of_left_out(  # noqa: PLR0917
    rng: random.Random,
    world: World,
    name: str,
    gone: Sequence[tuple[set[str], set[str]]],
    each: int,
    into: Path,
) -> str:
    """What is said of pieces of these (items, variants), left out in turn; those apart that
    nothing visible tells from what is recorded.
    """
    jobs, tells = [], []
    for items, variants in gone:
        pack = msgspec.to_builtins(compiled_without(demo(name), into / "left", items, variants))
        rows = world.rows_of(items, variants)
        rest = [row for row in range(len(world.kinds)) if row not in set(rows)]
        pieces = [world.piece(rng, rows, STALL) for _ in range(each)]
        tells += [world.can_be_told(piece, rest) for piece in pieces]
        jobs.append(Job(pack, pieces))
    done = ended(rng, world, jobs, STALL, into)
    apart = [one.wrongly_sure for one, tell in zip(done, tells, strict=True) if tell]
    alike = [one.wrongly_sure for one, tell in zip(done, tells, strict=True) if not tell]
    return (
        f"a wrong name with 90 % {told(apart)}, of {len(apart)}; of the {len(alike)} besides "
        f"that nothing visible tells apart {told(alike)}; {effort(done)}"
    )


def of_missing(  # noqa: PLR0917
    rng: random.Random, world: World, name: str, share: float, pieces: int, into: Path
) -> str:
    """How far off "none of these" is where so many items are missing, in ranges that say how many
    are, and in ranges that say "all I know of".
    """
    pack = world.pack
    numbers = [item["number"] for item in pack["items"]]
    items = [numbers[pack["variants"][place]["item"]] for place in pack["rows"]["variant"]]
    jobs: list[Job] = []
    while len(jobs) < RANGES:
        gone = set(rng.sample(numbers, round(share * len(numbers))))
        try:
            rest = msgspec.to_builtins(compiled_without(demo(name), into / "left", gone))
        except UserError:  # a feature that nothing records any more: another draw
            continue
        rows = list(range(len(world.kinds)))
        jobs.append(Job(rest, [world.piece(rng, rows, STALL) for _ in range(pieces)]))
    out = []
    for words, declared in (("where it says so", share), ("where it says “all I know of”", None)):
        ranges = [Job(opened(job.pack, declared), job.pieces) for job in jobs]
        done = ended(random.Random(1), world, ranges, STALL, into)
        stated: Stated = [(each.unrecorded, each.gone) for each in done]
        mean = fmean(each.unrecorded for each in done)
        true = fmean(each.gone for each in done)
        error = error_of(calibration(stated, TENTHS))
        which = [(n, items[found.row]) for n, job in enumerate(ranges) for found in job.pieces]
        chances = [each.unrecorded for each in done]
        usual, rarely = by_chance(rng, list(zip(which, chances, strict=True)), TENTHS)
        out.append(
            f"{words} off by {error:.3f} (mean {mean:.3f}, true {true:.3f}; by chance alone "
            f"{usual:.3f}, one in twenty {rarely:.3f})"
        )
    return "; ".join(out)


def opened(pack: dict[str, Any], declared: float | None) -> dict[str, Any]:
    """The pack that says how much of each kind it lacks."""
    if declared is None:
        return pack
    return {**pack, "kinds": [{**kind, "open": declared} for kind in pack["kinds"]]}


def told(hits: Sequence[bool]) -> str:
    """A share with its interval."""
    return share_said(sum(hits), len(hits))


def effort(done: Sequence[Ended]) -> str:
    """What it took."""
    asked = [each.asked for each in done]
    seconds = fmean(each.seconds for each in done)
    return f"questions {median(asked):g} (median), {fmean(asked):.2f}; {seconds:.1f} s"


if __name__ == "__main__":
    main()
