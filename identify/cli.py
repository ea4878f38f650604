"""The command line: python -m identify COMMAND."""

import argparse
import contextlib
import sys
from collections.abc import Sequence
from pathlib import Path
from types import ModuleType

import orjson
import uvicorn

from identify import phone, terminal
from identify.arguments import port, program
from identify.errors import UserError
from identify.exchange import commands as exchange_commands
from identify.keeping import commands as keeping_commands
from identify.keeping import proposal_commands
from identify.lab import commands as lab_commands
from identify.publishing import box_address, published_before
from identify.publishing import publish as publish_site
from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes, pack_schema
from identify.reference.date_command import dated
from identify.reference.new_pack import new_pack as new_pack_folder
from identify.reference.plain_tables import table_pack
from identify.reference.sighting import propose
from identify.server import commands as server_commands
from identify.server.app import create_app
from identify.server.connections import one_listener
from identify.server.devices import offers

# Areas with commands of their own: a module with add(commands), which adds their parsers.
AREAS: tuple[ModuleType, ...] = (
    keeping_commands,
    proposal_commands,
    exchange_commands,
    server_commands,
    lab_commands,
)

PACK = "folder of a range, or a file made from one"
DESCRIPTION = "Tells which variant of a model train you are holding, and when it was made."


def demo(args: argparse.Namespace) -> int:
    """Serve the app with the demo packs until stopped."""
    packs = phone.demo_packs()
    app = create_app(
        phone.site(packs) | phone.written_down(packs),
        [offers()],
    )
    listener = one_listener(args.host, args.port)
    print(
        f"Open http://{args.host}:{args.port}/ in a browser. Ctrl+C stops the server.", flush=True
    )
    with contextlib.suppress(KeyboardInterrupt):
        uvicorn.Server(uvicorn.Config(app, log_level="warning", access_log=False)).run([listener])
    return 0


def check(args: argparse.Namespace) -> int:
    """Print every mistake in a pack; 1 if there are any."""
    mistakes = check_pack(args.pack)
    for mistake in mistakes:
        print(mistake)
    count = len(mistakes)
    print(f"{count} mistake{'' if count == 1 else 's'} in {args.pack}.")
    return 1 if mistakes else 0


def compile_(args: argparse.Namespace) -> int:
    """Write the compiled pack to a file, or to standard output."""
    content = pack_bytes(compile_pack(args.pack))
    if args.output is None:
        sys.stdout.buffer.write(content)
    else:
        args.output.write_bytes(content)
    return 0


def schema(args: argparse.Namespace) -> int:
    """Print the JSON Schema of a compiled pack."""
    del args
    sys.stdout.buffer.write(orjson.dumps(pack_schema(), option=orjson.OPT_INDENT_2))
    return 0


def ask(args: argparse.Namespace) -> int:
    """Identify a piece by questions in the terminal."""
    return terminal.run(args.pack, args.kind, args.find)


def sighting(args: argparse.Namespace) -> int:
    """Print what sightings from the phone would change in a pack."""
    sys.stdout.write(propose(args.file, args.pack))
    return 0


def new_pack(args: argparse.Namespace) -> int:
    """Start a pack of one's own."""
    new_pack_folder(args.folder)
    print(f"Write over the examples in {args.folder}, then: python -m identify check {args.folder}")
    return 0


def table(args: argparse.Namespace) -> int:
    """Compile a plain table to a pack."""
    pack, same = table_pack(args.file, args.name, args.leave_out)
    output = args.output or Path(f"{pack.id}.json")
    output.write_bytes(pack_bytes(pack))
    for column in same:
        print(f'Left out: "{column}" says the same in every row.')
    print(f"{output}: {len(pack.variants)} names, {len(pack.features) - 1} features.")
    return 0


def date(args: argparse.Namespace) -> int:
    """Print what a mark on a piece is, and its years."""
    print("\n".join(dated(" ".join(args.text), args.country.upper())))
    return 0


def publish(args: argparse.Namespace) -> int:
    """Write the site into a folder."""
    proposals = box_address(args.proposals) if args.proposals else ""
    packs = args.packs or phone.demo_packs()
    published_before(args.folder)  # what cannot be written into is told before the site is made
    files = phone.site(packs, proposals=proposals) | phone.written_down(packs)
    count = publish_site(files, args.folder, proposals)
    print(f"{count} files in {args.folder}. Serve it over https, under any path.")
    print(
        "Others can follow these ranges from their own app, by this address, if the host answers "
        "the files in packs/ with the header Access-Control-Allow-Origin: *"
    )
    return 0


def parser() -> argparse.ArgumentParser:
    """Every command with its arguments."""
    top = argparse.ArgumentParser(prog=program(), description=DESCRIPTION)
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")

    p = commands.add_parser("demo", help="serve the app with the demo ranges")
    p.add_argument("--host", default="127.0.0.1", help="address to listen on (this machine only)")
    p.add_argument("--port", type=port, default=8100, help="port to listen on (8100)")
    p.set_defaults(run=demo)

    p = commands.add_parser("check", help="report every mistake in a range")
    p.add_argument("pack", type=Path, help="folder of the range")
    p.set_defaults(run=check)

    p = commands.add_parser("compile", help="make the one file of a range that the app reads")
    p.add_argument("pack", type=Path, help="folder of the range")
    p.add_argument("-o", "--output", type=Path, help="file to write (standard output)")
    p.set_defaults(run=compile_)

    p = commands.add_parser("schema", help="print the JSON Schema of that file")
    p.set_defaults(run=schema)

    p = commands.add_parser("ask", help="identify a piece by questions in the terminal")
    p.add_argument("pack", type=Path, help=PACK)
    p.add_argument("--kind", default="", help="kind of piece, to start with")
    p.add_argument("--find", default="", help="number or name, to start with")
    p.set_defaults(run=ask)

    p = commands.add_parser("sighting", help="say what sightings would change in a range")
    p.add_argument("file", type=Path, help="file of sightings, exported on the phone")
    p.add_argument("pack", type=Path, help=PACK)
    p.set_defaults(run=sighting)

    p = commands.add_parser("new-pack", help="start a range of your own")
    p.add_argument("folder", type=Path, help="new or empty folder")
    p.set_defaults(run=new_pack)

    p = commands.add_parser("table-pack", help="make a range out of a plain table")
    p.add_argument(
        "file",
        type=Path,
        help="CSV file: a row for each object, a column for each thing to look at",
    )
    p.add_argument("--name", required=True, help="column that says what each row is")
    p.add_argument("--leave-out", nargs="+", default=[], help="columns not to ask about")
    p.add_argument("-o", "--output", type=Path, help="file to write (the table's name, .json)")
    p.set_defaults(run=table)

    p = commands.add_parser("date", help="read a mark as it is on a piece, and date it")
    p.add_argument(
        "text",
        nargs="+",
        help="the words as they are on it, with ; between several marks of one piece",
    )
    p.add_argument(
        "--country",
        default="",
        help="country of the maker, as two letters such as GB: only what a mark means there",
    )
    p.set_defaults(run=date)

    p = commands.add_parser("publish", help="write the app into a folder, for any https host")
    p.add_argument("folder", type=Path, help="new or empty folder, or one published before")
    p.add_argument("packs", type=Path, nargs="*", metavar="PACK", help=f"{PACK} (the demo ranges)")
    p.add_argument(
        "--proposals",
        default="",
        metavar="URL",
        help="https address of the server that takes proposals (none)",
    )
    p.set_defaults(run=publish)

    for area in AREAS:
        area.add(commands)
    return top


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; what is wrong is said on standard error, and gives 1."""
    args = parser().parse_args(argv)
    try:
        return int(args.run(args))
    except UserError as error:
        print(error, file=sys.stderr)
    except OSError as error:
        print(f"{error.strerror}: {error.filename or ''}", file=sys.stderr)
    except KeyboardInterrupt:
        print()
    return 1
