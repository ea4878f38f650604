"""What a value that came from elsewhere is, asked so that no value can be a trick."""

import math
import re
import unicodedata
from collections.abc import Mapping
from typing import Any

import orjson

from ..types.gate import Group

DECIMAL = re.compile(r"[0-9]{1,15}(\.[0-9]{1,20})?")
BEYOND = re.compile(r"[^ -~]")


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


def is_true(value: Any) -> bool:
    """Whether a value is true, and not merely something."""
    return value is True


def number_in(text: str) -> float | None:
    """The number that a text is, with a point and no exponent; None where it is none."""
    return float(text) if DECIMAL.fullmatch(text) else None


def json_text(value: Any) -> str:
    """JSON with sorted names and numbers as a phone writes them: equal values are equal text."""
    return orjson.dumps(_as_on_phone(value), option=orjson.OPT_SORT_KEYS).decode()


def json_without(group: Mapping[str, Any], names: list[str]) -> str:
    """The same of a group without what it has under these names."""
    return json_text({name: group[name] for name in group if name not in names})


def in_plain_signs(text: str) -> str:
    """JSON with every sign but those of a typewriter written as its number."""
    return BEYOND.sub(_numbered, text)


def _numbered(match: re.Match[str]) -> str:
    halves = match[0].encode("utf-16-be", "surrogatepass").hex()
    return "".join(f"\\u{halves[at : at + 4]}" for at in range(0, len(halves), 4))


def first_halves(text: str, count: int) -> str:
    """The beginning of a text: so many halves of UTF-16, as spreadsheets count, no sign cut."""
    halves = text.encode("utf-16-le", "surrogatepass")[: 2 * count]
    return halves.decode("utf-16-le", "ignore")


def _as_on_phone(value: Any) -> Any:
    """A phone has one sort of number, so that 1.0 is 1 and -0 is 0."""
    if isinstance(value, float):
        return int(value) if value.is_integer() and is_whole(value) else value
    if isinstance(value, list):
        return [_as_on_phone(entry) for entry in value]
    if isinstance(value, dict):
        return {name: _as_on_phone(entry) for name, entry in value.items()}
    return value


def power_of_e(x: float) -> float:
    """e to a power."""
    return math.exp(x)


def root_of(x: float) -> float:
    """The square root."""
    return math.sqrt(x)


def unaccented(text: str) -> str:
    """A text without the accents of its letters; ß as ss."""
    apart = unicodedata.normalize("NFKD", text.replace("ß", "ss"))
    return "".join(c for c in apart if unicodedata.category(c) != "Mn")


def value_in_json(text: str) -> Any:
    """The value that a text of JSON is of; None where it is none."""
    try:
        return orjson.loads(text)
    except (orjson.JSONDecodeError, UnicodeEncodeError):
        return None
