"""python -m tests.bench: measures how fast everything is, and compares."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from identify.errors import UserError
from identify.lab.commands import counted
from tests.bench.own_ranges import compile_table, compile_times
from tests.bench.running import Sizes, browsers, left_out, run, saved
from tests.bench.stall import played
from tests.bench.stall_table import stall_table
from tests.bench.table import table


def progress(text: str) -> None:
    """What is being done goes to standard error."""
    print(text, end="", file=sys.stderr, flush=True)


def main(argv: Sequence[str] | None = None) -> int:
    """Measure everything, and print it; 1 where something went wrong."""
    p = argparse.ArgumentParser(prog="tests.bench", description=__doc__)
    rows = counted(1_000_000)
    p.add_argument("--rows", type=rows, nargs="+", help="sizes of packs (2000 20000 100000)")
    p.add_argument("--json", type=Path, help="file to write the figures to")
    p.add_argument("--seed", type=int, default=1, help="start of the chance (1)")
    p.add_argument("--part", choices=["stall", "compile"], help="only this one")
    p.add_argument("--pieces", type=counted(10_000), default=100, help="pieces at the stall (100)")
    args = p.parse_args(argv)
    if args.part == "stall":
        return at_the_stall(args.pieces, args.seed, args.json)
    if args.part == "compile":
        return of_ones_own(args.seed, args.json)
    sizes = Sizes(rows=tuple(args.rows)) if args.rows else Sizes()
    try:
        figures = run(sizes, args.seed, progress)
    except UserError as error:
        print(error, file=sys.stderr)
        return 1
    print(table(figures))
    if args.json is not None:
        saved(figures, args.json)
        print(f"The same as JSON is in {args.json}.")
    return 0


def at_the_stall(pieces: int, seed: int, file: Path | None) -> int:
    """The minute at the stall: the figures of a person with the app."""
    with browsers() as playwright:
        if playwright is None:
            print("\n".join(left_out()), file=sys.stderr)
            return 1
        figures = played(playwright, pieces, seed, lambda: progress("."))
    progress("\n")
    print(stall_table(figures))
    if file is not None:
        saved(figures, file)
    return 0


def of_ones_own(seed: int, file: Path | None) -> int:
    """How long ranges of one's own take to be made anew, by size."""
    with browsers() as playwright:
        figures = compile_times(playwright, seed)
    print(compile_table(figures))
    if file is not None:
        saved({"compile": figures}, file)
    return 0


if __name__ == "__main__":
    sys.exit(main())
