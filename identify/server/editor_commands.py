"""The command edit: packs of one's own, edited in the app."""

import argparse
from pathlib import Path
from typing import Any

import uvicorn

from identify.errors import UserError
from identify.reference.editing_saving import opened
from identify.server.editor import EditorApp

HOST = "127.0.0.1"


def edit(args: argparse.Namespace) -> int:
    """Serve the app with the editor for these packs, on this machine only, until stopped."""
    url = f"http://{HOST}:{args.port}/"
    compiled = [path for path in args.packs if path.suffix == ".json" and path.is_file()]
    folders = opened([path for path in args.packs if path not in compiled])
    if not folders:
        raise UserError(
            "A compiled pack is shown, but not edited. Name the folder of a pack as well."
        )
    app = EditorApp(folders, url, compiled)
    for error in app.left_out:
        print(f"{error}\nThe app does without this pack until that is mended.")
    print(f"Open {url} in a browser: More, Ranges, Edit. Ctrl+C stops the server.", flush=True)
    uvicorn.run(
        app, host=HOST, port=args.port, log_level="warning", access_log=False, lifespan="off"
    )
    return 0


def add(commands: "argparse._SubParsersAction[Any]") -> None:
    """Adds the parser of this command."""
    p = commands.add_parser("edit", help="edit packs of your own in the app")
    p.add_argument(
        "packs",
        type=Path,
        nargs="+",
        metavar="PACK",
        help="folder of a pack, or (only shown) a compiled file",
    )
    p.add_argument("--port", type=int, default=8100, help="port to listen on (8100)")
    p.set_defaults(run=edit)
