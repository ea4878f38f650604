"""Starts a pack of one's own: a folder with every file, explained, and examples to write over."""

import re
import shutil
from pathlib import Path

from identify.reference.mistakes import Mistake, PackError

TEMPLATE = Path(__file__).parent / "template"
ID = re.compile(r"[a-z][a-z0-9_]*")


def new_pack(folder: Path) -> None:
    """Write the template into a folder that is new or empty. Raises PackError."""
    name = folder.resolve().name
    wrong = ""
    if not ID.fullmatch(name):
        wrong = (
            "the folder's name may have lower case letters, digits and _ only, beginning with a "
            "letter."
        )
    elif folder.exists() and not folder.is_dir():
        wrong = "this is a file. Name a folder."
    elif folder.exists() and any(folder.iterdir()):
        wrong = "this folder is not empty. Name a new or an empty one; nothing was changed."
    if wrong:
        raise PackError([Mistake(str(folder), 0, "", wrong)])
    shutil.copytree(TEMPLATE, folder, dirs_exist_ok=True)
