"""What every command reads of its arguments, with a sentence for what is wrong."""

import argparse
import sys
from collections.abc import Callable
from pathlib import Path

MOST_PORTS = 65535


def program() -> str:
    """How this program was started, for its help: "stallside" or "python -m identify"."""
    name = Path(sys.argv[0]).name
    return "stallside" if name.startswith("stallside") else "python -m identify"


def counted(most: int) -> Callable[[str], int]:
    """What reads a count from 1 to `most`; raises ArgumentTypeError."""

    def read(text: str) -> int:
        if not (text.isascii() and text.isdecimal() and 0 < int(text) <= most):
            raise argparse.ArgumentTypeError(f"“{text}” is not a whole number from 1 to {most}.")
        return int(text)

    return read


port = counted(MOST_PORTS)
