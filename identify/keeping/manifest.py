"""The file that says what a backup holds, and that it is one."""

from pathlib import Path
from typing import Any, Final, TypeGuard

import orjson

from identify.keeping.types import Manifest

MANIFEST = "manifest.json"
KIND: Final = "identify server backup"


def manifest_of(folder: Path) -> Manifest | None:
    """What a backup says of itself; None where this folder is none."""
    try:
        manifest = orjson.loads((folder / MANIFEST).read_bytes())
    except (OSError, orjson.JSONDecodeError):
        return None
    return manifest if _is_manifest(manifest) else None


def _is_manifest(manifest: Any) -> TypeGuard[Manifest]:
    """Whether a file says that it is one; only the server writes them."""
    return isinstance(manifest, dict) and manifest.get("kind") == KIND
