"""python -m tests.bench: measures how fast everything is, and compares."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from identify.errors import UserError
from identify.lab.commands import counted
from tests.bench.running import Sizes, run, saved
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
    args = p.parse_args(argv)
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


if __name__ == "__main__":
    sys.exit(main())
