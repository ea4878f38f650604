"""The file that says what a backup holds, and that it is one."""

from pathlib import Path
from typing import Any

import orjson

MANIFEST = "manifest.json"
KIND = "identify server backup"


def manifest_of(folder: Path) -> dict[str, Any] | None:
    """What a backup says of itself; None where this folder is none."""
    try:
        found = orjson.loads((folder / MANIFEST).read_bytes())
    except (OSError, orjson.JSONDecodeError):
        return None
    return found if isinstance(found, dict) and found.get("kind") == KIND else None
