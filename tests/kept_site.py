"""The files of the app as `identify.phone.site` makes them, kept beside pytest's cache: a test run
makes them once, and not in each of its processes again.

`python -m tests.kept_site serve ...` is `python -m identify serve ...` with them.
"""

import hashlib
import pickle
import sys
import tempfile
from collections.abc import Sequence
from functools import cache
from importlib.metadata import PackageNotFoundError, version
from pathlib import Path
from typing import Any

import orjson

from identify import cli, phone
from identify.shipped import ROOT, WEB

KEPT = ROOT / ".pytest_cache" / "sites"
MOST = 40  # that are kept
HALF = ".half"  # at the end of a name: it is being written
MADE_BY = ("pscript", "minify-html", "tdewolff-minify")
UNREAD = "__pycache__"
_made = phone.site


def digest_of(folders: Sequence[Path]) -> str:
    """Made from every file in them with its name."""
    digest = hashlib.sha256()
    for folder in folders:
        paths = sorted(folder.rglob("*")) if folder.is_dir() else [folder]
        for path in paths:
            if path.is_file() and UNREAD not in path.parts:
                digest.update(str(path.relative_to(folder.parent)).encode())
                digest.update(hashlib.sha256(path.read_bytes()).digest())
    return digest.hexdigest()


@cache
def sources() -> str:
    """Of all that what the phone gets can depend on, besides packs; nothing of it changes while
    tests run.
    """
    made_by = []
    for package in MADE_BY:
        try:
            made_by.append(version(package))
        except PackageNotFoundError:
            made_by.append("none")
    return f"{sys.version} {made_by} {digest_of([ROOT / 'identify', WEB, ROOT / 'fixtures'])}"


def name_of(packs: Sequence[Path], proposals: str) -> str:
    """A name made from the contents of all that: another name where any of it is another."""
    told = (sources(), [path.name for path in packs], digest_of(packs), proposals)
    return hashlib.sha256(repr(told).encode()).hexdigest()


def _written(path: Path) -> float:
    """When; another process may have removed it since it was listed."""
    try:
        return path.stat().st_mtime
    except FileNotFoundError:
        return 0


def kept_site(packs: Sequence[Path] = (), proposals: str = "") -> dict[str, bytes]:
    """What `identify.phone.site` gives, from the disk where it was made before."""
    path = KEPT / name_of(packs, proposals)
    try:
        files: dict[str, bytes] = pickle.loads(path.read_bytes())
    except FileNotFoundError:
        files = _made(packs, proposals)
        KEPT.mkdir(parents=True, exist_ok=True)
        with tempfile.NamedTemporaryFile(dir=KEPT, suffix=HALF, delete=False) as half:
            half.write(pickle.dumps(files))
        Path(half.name).replace(path)  # whole, for whichever process looks
        whole = [kept for kept in KEPT.iterdir() if kept.suffix != HALF]
        for old in sorted(whole, key=_written)[:-MOST]:
            old.unlink(missing_ok=True)
    return files


def compiled_demo_packs() -> dict[str, Any]:
    """The demo ranges, compiled, as the phone reads them, by name; new ones each time."""
    folders = phone.demo_packs()
    files = kept_site(folders)
    return {path.name: orjson.loads(files[f"packs/{path.name}.json"]) for path in folders}


if __name__ == "__main__":
    phone.site = kept_site
    sys.exit(cli.main())
