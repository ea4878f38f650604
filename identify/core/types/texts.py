"""What typed texts are cut into before they are read."""

from typing import TypedDict


class Run(TypedDict):
    """Characters of one sort that stand together, in capitals."""

    sort: str
    text: str
