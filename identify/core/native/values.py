"""What a value that came from elsewhere is, asked so that no value can be a trick."""

import math
from typing import Any

from ..types.gate import Group


def sort_of_value(value: Any) -> str:
    """nothing, flag, number (a finite one), text, list, group (names with values), or else."""
    if value is None:
        return "nothing"
    if isinstance(value, bool):
        return "flag"
    if isinstance(value, str):
        return "text"
    if isinstance(value, int | float):
        try:
            return "number" if math.isfinite(value) else "else"
        except OverflowError:
            return "else"
    if isinstance(value, list):
        return "list"
    if isinstance(value, dict) and all(isinstance(name, str) for name in value):
        return "group"
    return "else"


def names_of(group: Group) -> list[str]:
    """The names in a group."""
    return list(group)


def value_at(group: Group, name: str) -> Any:
    """What a group has under a name; None for nothing."""
    return group.get(name)


def weight_of(text: str) -> int:
    """The bytes of a text in UTF-8; -1 where it holds half of a character."""
    try:
        return len(text.encode())
    except UnicodeEncodeError:
        return -1


def is_whole(number: float) -> bool:
    """Whether a number is a whole one that both platforms hold exactly."""
    return abs(number) < 2**53 and float(number).is_integer()
