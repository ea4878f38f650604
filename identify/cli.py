"""The command line: python -m identify COMMAND."""

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

import orjson
import uvicorn

from identify import phone, terminal
from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes, pack_schema
from identify.reference.mistakes import PackError
from identify.server.app import create_app


def demo(args: argparse.Namespace) -> int:
    """Serve the app with the demo packs until stopped."""
    app = create_app(phone.site(phone.demo_packs()))
    print(
        f"Open http://{args.host}:{args.port}/ in a browser. Ctrl+C stops the server.", flush=True
    )
    uvicorn.run(app, host=args.host, port=args.port, log_level="warning", access_log=False)
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


def parser() -> argparse.ArgumentParser:
    """Every command with its arguments."""
    top = argparse.ArgumentParser(prog="identify", description=__doc__)
    commands = top.add_subparsers(dest="command", required=True, metavar="COMMAND")

    p = commands.add_parser("demo", help="serve the app with the demo packs")
    p.add_argument("--host", default="127.0.0.1", help="address to listen on (this machine only)")
    p.add_argument("--port", type=int, default=8100, help="port to listen on (8100)")
    p.set_defaults(run=demo)

    p = commands.add_parser("check", help="report every mistake in a reference pack")
    p.add_argument("pack", type=Path, help="folder of the pack")
    p.set_defaults(run=check)

    p = commands.add_parser("compile", help="compile a reference pack to JSON")
    p.add_argument("pack", type=Path, help="folder of the pack")
    p.add_argument("-o", "--output", type=Path, help="file to write (standard output)")
    p.set_defaults(run=compile_)

    p = commands.add_parser("schema", help="print the JSON Schema of a compiled pack")
    p.set_defaults(run=schema)

    p = commands.add_parser("ask", help="identify a piece by questions in the terminal")
    p.add_argument("pack", type=Path, help="folder of the pack")
    p.add_argument("--kind", default="", help="kind of piece, to start with")
    p.add_argument("--find", default="", help="number or name, to start with")
    p.set_defaults(run=ask)
    return top


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command; what is wrong is said on standard error, and gives 1."""
    args = parser().parse_args(argv)
    try:
        return int(args.run(args))
    except PackError as error:
        print(error, file=sys.stderr)
    except OSError as error:
        print(f"{error.strerror}: {error.filename or ''}", file=sys.stderr)
    except KeyboardInterrupt:
        print()
    return 1
