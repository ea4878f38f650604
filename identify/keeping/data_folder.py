"""Where the server keeps its data."""

import os
from pathlib import Path


def data_folder() -> Path:
    """IDENTIFY_DATA, or `identify` where the user's data belongs (XDG Base Directory, 0.8)."""
    chosen = os.environ.get("IDENTIFY_DATA", "")
    if chosen != "":
        return Path(chosen).expanduser()
    home = os.environ.get("XDG_DATA_HOME", "")
    if home != "" and Path(home).is_absolute():  # a relative one is to be ignored, it says
        return Path(home) / "identify"
    return Path.home() / ".local" / "share" / "identify"


def backup_folder(data: Path) -> Path:
    """Where backups go unless another folder is named: beside the data, not in it."""
    return data.with_name(f"{data.name}-backups")
