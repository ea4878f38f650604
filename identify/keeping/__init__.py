"""What the server keeps: operations, photos, paired devices, backups. See README.md."""

from pathlib import Path

from identify.keeping.store import Store


def open(folder: Path) -> Store:
    """The store in this folder, which is made if it is not there. Raises UserError."""
    return Store(folder)
