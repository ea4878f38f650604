"""python -m tests.bench: measures how fast everything is, and compares."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

import msgspec

from identify.arguments import counted
from identify.errors import UserError
from tests.bench.parts import PARTS, Asked, two_commits
from tests.bench.processor import how_busy
from tests.bench.running import Sizes, browsers, left_out, run, saved
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
    p.add_argument("--part", choices=list(PARTS), help="only this one")
    p.add_argument(
        "--pieces",
        type=counted(200_000),
        nargs="+",
        default=[],
        help="with --part: pieces at the stall (100), sizes of a collection (1000 5000 20000), "
        "operations of ten devices (50000), a collection for the aims (20000)",
    )
    p.add_argument("--against", metavar="COMMIT", help="its app and this one's by turns")
    p.add_argument("--rounds", type=counted(1000), default=20, help="turns of each (20)")
    args = p.parse_args(argv)
    asked = Asked(args.seed, args.pieces, args.against or "", args.rounds)
    before = how_busy()
    try:
        if args.against or args.part:
            part = two_commits if args.against else PARTS[args.part]
            with browsers() as playwright:
                if playwright is None:
                    print("\n".join(left_out()), file=sys.stderr)
                    return 1
                figures, text = part(playwright, asked, progress)
            progress("\n")
        else:
            sizes = Sizes(rows=tuple(args.rows)) if args.rows else Sizes()
            figures = run(sizes, args.seed, progress)
            text = table(figures)
    except UserError as error:
        print(error, file=sys.stderr)
        return 1
    print(f"Before: {before.told()}\nAfter: {how_busy().told()}\n{text}")
    if args.json is not None:
        saved(figures | {"before": msgspec.to_builtins(before)}, args.json)
        print(f"The same as JSON is in {args.json}.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
