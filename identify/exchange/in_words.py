"""A value of a record for a sentence."""

from typing import Any

from identify.exchange.again import ITEM
from identify.exchange.flat import shown
from identify.exchange.table import quoted


def in_words(field: str, value: Any) -> str:
    """What a field holds, for a person; "nothing" where it holds nothing."""
    if field == ITEM:
        number = value.get("item") or ""
        variants = "; ".join(one["variant"] for one in value.get("of", []) if one["variant"])
        text = ", ".join(part for part in (number, variants or value.get("variant", "")) if part)
        text = text or value.get("called", "")
    else:
        text = shown(field, value)
    return quoted(text) if text else "nothing"
