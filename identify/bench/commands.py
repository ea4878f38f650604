"""The commands that measure: made-pack and bench."""

import argparse
import sys
from pathlib import Path
from typing import Any

from identify.bench.running import Sizes, run, saved
from identify.bench.table import table
from identify.lab.generating import made_pack
from identify.reference.compiled import pack_bytes


def counted(text: str) -> int:
    """A count of rows. Raises ArgumentTypeError."""
    if not (text.isdecimal() and 0 < int(text) <= 1_000_000):
        raise argparse.ArgumentTypeError(f"{text!r} is not a whole number from 1 to 1000000.")
    return int(text)


def make(args: argparse.Namespace) -> int:
    """Make a large pack by chance."""
    pack = made_pack(args.rows, args.seed)
    output = args.output or Path(f"{pack.id}.json")
    output.write_bytes(pack_bytes(pack))
    counts = f"{args.rows} rows, {len(pack.variants)} variants, {len(pack.items)} items"
    print(f"{output}: {counts}, {len(pack.features)} features. Nothing in it exists.")
    return 0


def bench(args: argparse.Namespace) -> int:
    """Measure everything, and print it; the progress goes to standard error."""

    def told(text: str) -> None:
        print(text, end="", file=sys.stderr, flush=True)

    sizes = Sizes(rows=tuple(args.rows)) if args.rows else Sizes()
    found = run(sizes, args.seed, told)
    print(table(found))
    if args.json is not None:
        saved(found, args.json)
        print(f"The same as JSON is in {args.json}.")
    return 0


def add(commands: Any) -> None:
    """Add the parsers of these commands."""
    p = commands.add_parser("made-pack", help="make a large pack by chance, to measure with")
    p.add_argument("rows", type=counted, help="how many rows (issues) it shall have")
    p.add_argument("-o", "--output", type=Path, help="file to write (made_ROWS.json)")
    p.add_argument("--seed", type=int, default=1, help="start of the chance (1)")
    p.set_defaults(run=make)

    p = commands.add_parser("bench", help="measure how fast it is, and compare")
    p.add_argument("--rows", type=counted, nargs="+", help="sizes of packs (2000 20000 100000)")
    p.add_argument("--json", type=Path, help="file to write the figures to")
    p.add_argument("--seed", type=int, default=1, help="start of the chance (1)")
    p.set_defaults(run=bench)
