"""The command of those who keep a shared range: who may propose, and what was proposed."""

import argparse
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import orjson

from identify.keeping.proposals import DECLINED, TAKEN, WAITING, Box, Proposal
from identify.keeping.troubles import RefusedError


def follower(args: argparse.Namespace) -> int:
    """Let somebody propose."""
    word = args.box.let_in(args.name, datetime.now(UTC))
    print(f"Tell this word to {args.name}, and nobody else; it is not shown again:\n\n  {word}\n")
    print("It lets in proposals, and opens nothing else. The app asks for it under Sightings.")
    return 0


def followers(args: argparse.Namespace) -> int:
    """Say who may propose."""
    for follower in begun(args.box).followers():
        until = f", ended {follower['ended'][:10]}" if follower["ended"] else ""
        print(f"{follower['id']}  {follower['name']}, since {follower['made'][:10]}{until}")
    return 0


def end(args: argparse.Namespace) -> int:
    """Take nothing more of a follower."""
    begun(args.box).end(args.id, datetime.now(UTC))
    print(f"Nothing more is taken from {args.id}. What came from there stays.")
    return 0


def listed(args: argparse.Namespace) -> int:
    """Say what waits."""
    names = {friend["id"]: friend["name"] for friend in begun(args.box).followers()}
    waiting = args.box.all(WAITING)
    for proposal in waiting:
        by = names.get(proposal["by"], proposal["by"])
        print(f"{proposal['id']}  {proposal['time'][:10]}  {by}: {_about(proposal)}")
    if not waiting:
        print("Nothing is waiting.")
    return 0


def take(args: argparse.Namespace) -> int:
    """Take a proposal: write its file of sightings."""
    out: Path = args.out or Path(f"{args.id}.json")
    if out.exists():
        raise RefusedError(f"{out} is there already. Name another file (--out).")
    proposal = begun(args.box).settle(args.id, TAKEN, args.say)
    out.write_bytes(orjson.dumps(proposal["file"]))
    print(f"{out}: what it would change in a range: python -m identify sighting {out} FOLDER")
    return 0


def decline(args: argparse.Namespace) -> int:
    """Decline a proposal."""
    begun(args.box).settle(args.id, DECLINED, args.say)
    print(f"{args.id} is declined, and kept in the box.")
    return 0


def begun(box: Box) -> Box:
    """The box, if it is one. Raises RefusedError."""
    if not box.begun():
        raise RefusedError(
            f"There is no box for proposals in {box.folder}. Name its folder, or start one there "
            "by letting somebody propose: the act “follower”, with a name."
        )
    return box


def _about(proposal: Proposal) -> str:
    """What was seen, on one line, with nothing that a terminal would obey."""
    pieces = []
    for sighting in proposal["file"]["sightings"]:
        name = sighting.get("called") or sighting.get("item") or "a piece"
        photos = len(sighting.get("photos", []))
        pieces.append(
            f"{sighting['pack']}, {name}"
            + (f" ({photos} photo{'' if photos == 1 else 's'})" if photos else "")
        )
    text = "; ".join(pieces)
    return "".join(letter if letter.isprintable() else " " for letter in text)[:300]


def add(commands: "argparse._SubParsersAction[Any]") -> None:
    """Adds the parser of this command."""
    top = commands.add_parser("proposals", help="look through what followers of a range propose")
    top.add_argument("box", type=lambda text: Box(Path(text)), help="folder of the box")
    acts = top.add_subparsers(dest="act", required=True, metavar="ACT")
    p = acts.add_parser("follower", help="let somebody propose: prints the word for it")
    p.add_argument("name", help="what you call them")
    p.set_defaults(run=follower)
    p = acts.add_parser("followers", help="say who may propose")
    p.set_defaults(run=followers)
    p = acts.add_parser("end", help="take nothing more from a follower")
    p.add_argument("id")
    p.set_defaults(run=end)
    p = acts.add_parser("list", help="say what is waiting")
    p.set_defaults(run=listed)
    p = acts.add_parser("take", help="take a proposal: write its file of sightings")
    p.add_argument("id")
    p.add_argument("--out", type=Path, help="file to write (named after the proposal)")
    p.add_argument("--say", default="", help="what the follower is told")
    p.set_defaults(run=take)
    p = acts.add_parser("decline", help="decline a proposal; it is kept")
    p.add_argument("id")
    p.add_argument("--say", default="", help="what the follower is told")
    p.set_defaults(run=decline)
