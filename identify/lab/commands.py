"""The commands of the lab: lab and made-pack."""

import argparse
from pathlib import Path
from typing import Any

from identify.arguments import counted
from identify.lab.generating import made_pack
from identify.lab.measuring import measure
from identify.lab.report import report, summary
from identify.reference.compiled import pack_bytes
from identify.reference.loading import load_pack


def lab(args: argparse.Namespace) -> int:
    """Report how well a pack identifies."""
    pack = load_pack(args.pack)
    output = args.output or Path(f"{pack.id}-lab.html")
    findings = measure(pack, args.pieces, args.seed)
    output.write_text(report(findings), encoding="utf-8")
    print("\n".join(summary(findings)))
    print(f"The whole report is in {output}.")
    return 0


def make(args: argparse.Namespace) -> int:
    """Make a large pack by chance."""
    pack = made_pack(args.rows, args.seed)
    output = args.output or Path(f"{pack.id}.json")
    output.write_bytes(pack_bytes(pack))
    counts = f"{args.rows} rows, {len(pack.variants)} variants, {len(pack.items)} items"
    print(f"{output}: {counts}, {len(pack.features)} features. Nothing in it exists.")
    return 0


def add(commands: Any) -> None:
    """Adds the parsers of these commands."""
    p = commands.add_parser("lab", help="report how well a range identifies")
    p.add_argument("pack", type=Path, help="folder of a range, or a file made from one")
    p.add_argument("-o", "--output", type=Path, help="file to write (the folder's name, -lab.html)")
    pieces = counted(1_000_000)
    p.add_argument("--pieces", type=pieces, default=120, help="pieces drawn for each trial (120)")
    p.add_argument("--seed", type=int, default=1, help="another number draws other pieces (1)")
    p.set_defaults(run=lab)

    p = commands.add_parser("made-pack", help="make a large range by chance, to measure with")
    p.add_argument("rows", type=counted(1_000_000), help="how many rows (issues) it should have")
    p.add_argument("-o", "--output", type=Path, help="file to write (made_ROWS.json)")
    p.add_argument("--seed", type=int, default=1, help="another number makes another range (1)")
    p.set_defaults(run=make)
