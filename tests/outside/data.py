"""The open tables in fixtures/outside."""

import csv
from pathlib import Path

OUTSIDE = Path(__file__).resolve().parents[2] / "fixtures" / "outside"


def read(name: str) -> list[dict[str, str]]:
    """The rows of one table, a dict each."""
    with (OUTSIDE / name).open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
