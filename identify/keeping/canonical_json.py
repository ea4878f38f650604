"""JSON in one way of writing, so that equal values are equal text, whoever wrote them."""

import math
from typing import Any

import orjson

from identify.keeping.troubles import RefusedError

DEEPEST = 100
# Whole numbers beyond this are not exact on the phone (ECMA-262, Number.MAX_SAFE_INTEGER)
EXACT = 2**53 - 1


def text_of(value: Any) -> str:
    """JSON with sorted keys and numbers as a phone writes them. Raises RefusedError."""
    try:
        return orjson.dumps(_plain(value, 0), option=orjson.OPT_SORT_KEYS).decode()
    except orjson.JSONEncodeError:  # half of a surrogate pair
        raise RefusedError(
            "It holds text that is not valid Unicode. Type that text again."
        ) from None


def _plain(value: Any, deep: int) -> Any:
    """As a phone would hand it back: it has one sort of number, so that 1.0 is 1 and -0 is 0."""
    if deep > DEEPEST:
        raise RefusedError(
            f"It is nested more than {DEEPEST} deep, which nothing this app keeps is."
        )
    if value is None or isinstance(value, str | bool):
        return value
    if isinstance(value, int | float):
        return _number(value)
    if isinstance(value, list):
        return [_plain(part, deep + 1) for part in value]
    if isinstance(value, dict) and all(isinstance(name, str) for name in value):
        return {name: _plain(part, deep + 1) for name, part in value.items()}
    raise RefusedError("It holds something that is not a JSON value.")


def _number(value: int | float) -> int | float:
    try:
        exact = float(value)
    except OverflowError:
        exact = math.inf
    if not math.isfinite(exact):
        raise RefusedError("It holds a number that is too large, or not a number.")
    return int(exact) if exact.is_integer() and abs(exact) <= EXACT else exact
