"""What is recorded of one feature on a row: states with their shares, each different cell once.

A cell is a code, its place in the table of its feature; 0 is not recorded. So rows are compared by
their codes.
"""

from ..edtf import padded
from ..types.rows import CellTable
from .weights import MILLION


def no_cells() -> CellTable:
    """A table with nothing but "not recorded"."""
    return {"states": [[]], "shares": [[]], "at": {}}


def share_text(share: float, count: int) -> str:
    """A share as text: in millionths, or as one of so many equal ones."""
    parts = int((share * MILLION + 0.5) // 1)
    return padded(parts, 1) if parts / MILLION == share else "of" + padded(count, 1)


def cell_code(table: CellTable, states: list[int], shares: list[float]) -> int:
    """The code of a cell, a new one where it was not met before."""
    if len(states) == 0:
        return 0
    key = ""
    for n in range(len(states)):
        key = key + "s" + padded(states[n], 1) + ":" + share_text(shares[n], len(states))
    code = table["at"].get(key, 0)
    if code == 0:
        code = len(table["states"])
        table["at"][key] = code
        table["states"].append(states)
        table["shares"].append(shares)
    return code


def read_states(text: str) -> list[str]:
    """A cell as written: a state, states parted by |, or ? for not recorded."""
    out: list[str] = []
    if text == "?":
        return out
    part = ""
    for n in range(len(text)):
        c = text[n : n + 1]
        if c == "|":
            out.append(stripped(part))
            part = ""
        else:
            part = part + c
    out.append(stripped(part))
    return out


def stripped(text: str) -> str:
    """A text without spaces around it."""
    first = 0
    last = len(text)
    while first < last and text[first : first + 1] == " ":
        first = first + 1
    while last > first and text[last - 1 : last] == " ":
        last = last - 1
    return text[first:last]
