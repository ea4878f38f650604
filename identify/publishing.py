"""Writes the site into a folder, from which any https host can serve it under any path."""

import json
import os
import re
from collections.abc import Mapping, Sequence
from pathlib import Path
from urllib.parse import urlsplit

from identify.compressed import ENDINGS, packed, packs_well
from identify.errors import UserError
from identify.phone import BUILD, WRITTEN_DOWN

WORKER = "sw.js"
OFFERS = "api/offers"  # where the app asks what its server can do; a plain host can do nothing
LISTED = re.compile(rf'{re.escape(BUILD)}"[0-9a-f]+"; const FILES = (\[.*\]);')


class PublishError(UserError):
    """The folder is not one to write the site into."""


def _published(folder: Path) -> list[str] | None:
    """The files that were published there before, or None if it is no such folder."""
    try:
        with (folder / WORKER).open(encoding="utf-8") as file:
            listed = LISTED.match(file.readline())
    except (OSError, UnicodeDecodeError):
        return None
    return [str(name) for name in json.loads(listed[1])] if listed else None


def published_before(folder: Path) -> list[str]:
    """The files that were published there before, none for a new or empty folder. Raises
    PublishError for a folder that is not one to write the site into.
    """
    if folder.exists() and not folder.is_dir():
        raise PublishError(f"{folder} is a file. Name a folder.")
    before = _published(folder)
    if before is None and folder.exists() and any(folder.iterdir()):
        raise PublishError(
            f"{folder} is not empty, and was not written by publish. Name a new or empty folder."
        )
    return before or []


def _write(path: Path, content: bytes) -> None:
    """The whole file or none of it: a host may be serving the folder."""
    path.parent.mkdir(parents=True, exist_ok=True)
    part = path.with_name(f"{path.name}.part")
    part.write_bytes(content)
    os.replace(part, path)


def box_address(text: str) -> str:
    """The origin of a server with a box for proposals, with a slash. Raises PublishError."""
    parts = urlsplit(text)
    if parts.scheme != "https" or not parts.hostname or parts.path not in ("", "/"):
        raise PublishError(
            f"{text} is not the address of a server with a box for proposals. Give its https "
            "address without a path, such as https://trains.example.org"
        )
    return f"https://{parts.netloc.lower()}/"


def _beside(files: Mapping[str, bytes]) -> dict[str, bytes]:
    """Beside each file that packs well its packed forms, for hosts that hand such out."""
    return {
        name + ending: packed(content, coding)
        for name, content in files.items()
        if packs_well(name, content)
        for coding, ending in ENDINGS.items()
    }


def _with_beside(names: Sequence[str]) -> list[str]:
    """These files, and what may stand beside them."""
    return [name + ending for name in names for ending in ("", *ENDINGS.values())]


def publish(files: Mapping[str, bytes], folder: Path, proposals: str = "") -> int:
    """Write every file of the site; returns how many. Raises PublishError.

    A folder that was published before gets the new version: sw.js comes last, so that a phone which
    looks in the meantime keeps what it has. Files that are not the site's own stay as they are.
    Beside each text stand its .br and .gz, which many hosts hand out to browsers that take them.
    proposals: the origin of a box for proposals (`box_address`), "" for none.
    """
    before = published_before(folder)
    folder.mkdir(parents=True, exist_ok=True)
    able = {"proposals": proposals} if proposals else {}
    files = {OFFERS: json.dumps(able).encode(), **files}
    files |= _beside(files)
    for name in sorted(files, key=lambda name: name.startswith(WORKER)):
        _write(folder / name, files[name])
    ranges = {path.relative_to(folder).as_posix() for path in folder.glob(f"packs/*{WRITTEN_DOWN}")}
    for name in _with_beside([*before, *ranges]):
        gone = folder / name
        if name not in files and gone.is_file() and gone.resolve().is_relative_to(folder.resolve()):
            gone.unlink()
    return sum(1 for name in files if not name.endswith(tuple(ENDINGS.values())))
