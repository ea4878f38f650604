"""python -m tests.keep_build COMMIT NAME: keeps the program of a commit, to try later ones with it.

fixtures/kept-builds/<name>.tar.xz holds what `serve` and its app are made of, with one range. Run
it once for a version that people have, and never again for that one.
"""

import io
import subprocess
import sys
import tarfile
from pathlib import Path

from identify.shipped import ROOT

FOLDER = ROOT / "fixtures" / "kept-builds"
RUNS = ("identify", "web", "fixtures")
NEEDLESS = (
    "fixtures/exchange/", "fixtures/outside/", "fixtures/screenshots/",
    "fixtures/kept-builds/", "fixtures/packs/tarrowby/",
)  # fmt: skip


def versions() -> list[str]:
    """The versions that are kept, the oldest first."""
    return sorted(path.name.removesuffix(".tar.xz") for path in FOLDER.glob("*.tar.xz"))


def unpacked(version: str, folder: Path) -> Path:
    """A kept program in a folder, from which `python -m identify` runs it."""
    with tarfile.open(FOLDER / f"{version}.tar.xz") as kept:
        kept.extractall(folder, filter="data")
    return folder


def keep(commit: str, name: str) -> Path:
    """Keeps the program of a commit under a name that says its version."""
    file = FOLDER / f"{name}.tar.xz"
    if file.exists():
        raise SystemExit(f"{file} is there already. A kept version stays as it is.")
    said = subprocess.run(["git", "archive", commit, *RUNS], check=True, capture_output=True)
    with (
        tarfile.open(fileobj=io.BytesIO(said.stdout)) as whole,
        tarfile.open(file, "w:xz", preset=9) as kept,
    ):
        for member in whole:
            named = member.name
            if member.isfile() and not named.startswith(NEEDLESS) and not named.endswith(".md"):
                kept.addfile(member, whole.extractfile(member))
    return file


if __name__ == "__main__":
    made = keep(sys.argv[1], sys.argv[2])
    print(f"{made}: {made.stat().st_size} bytes")
