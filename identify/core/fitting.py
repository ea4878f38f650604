"""What may stand in the fields of a record, by their sorts (shapes.py)."""

from typing import Any

from .condition import CONDITIONS
from .forms import CAPITALS, is_count, is_word
from .native.values import is_whole, names_of, sort_of_value, value_at
from .shapes import BESIDES, LISTS, SEEN, fields_of, words_of
from .types.gate import Group

HOW = ["sure", "twice", "unsure", "several", "other", "cannot"]
ROUNDING = 0.000001


def is_amount(value: Any) -> bool:
    """Whether a value is an amount: whole minor units, 48ths on top, a currency."""
    if sort_of_value(value) != "group":
        return False
    minor = value_at(value, "minor")
    over = value_at(value, "over")
    typed = value_at(value, "typed")
    currency = value_at(value, "currency")
    if sort_of_value(minor) != "number" or not is_word(currency, CAPITALS, CAPITALS, 3):
        return False
    if not is_whole(minor) or len(currency) != 3:
        return False
    if over is not None and not is_count(over, 47):
        return False
    return typed is None or sort_of_value(typed) == "text"


def are_texts(value: Any) -> bool:
    """Whether every value of a list is text."""
    for entry in value:
        if sort_of_value(entry) != "text":
            return False
    return True


def is_between(number: float, least: float, most: float) -> bool:
    """Whether a number lies between two others, or is one of them."""
    return number >= least and number <= most


def is_chance(value: Any) -> bool:
    """Whether a value is one of what a piece may be: {variant, chance, item or none}."""
    if sort_of_value(value) != "group" or sort_of_value(value_at(value, "variant")) != "text":
        return False
    chance = value_at(value, "chance")
    item = value_at(value, "item")
    if sort_of_value(chance) != "number" or (item is not None and sort_of_value(item) != "text"):
        return False
    return is_between(chance, 0.0, 1.0 + ROUNDING)


def is_answer(value: Any) -> bool:
    """Whether a value is an answer of a session: {feature, how, states}, perhaps changed."""
    if sort_of_value(value) != "group" or sort_of_value(value_at(value, "feature")) != "text":
        return False
    how = value_at(value, "how")
    states = value_at(value, "states")
    if sort_of_value(how) != "text" or sort_of_value(states) != "list":
        return False
    if sort_of_value(value_at(value, "changed")) not in ["nothing", "flag"]:
        return False
    return how in HOW and are_texts(states)


def is_came(value: Any) -> bool:
    """Whether a value says which row of a list a record came from; None where it came from none."""
    if value is None:
        return True
    if sort_of_value(value) != "group" or sort_of_value(value_at(value, "key")) != "text":
        return False
    cells = value_at(value, "cells")
    if sort_of_value(cells) != "group" or sort_of_value(value_at(value, "values")) != "group":
        return False
    return are_texts([value_at(cells, name) for name in names_of(cells)])


def is_list_of(sort: str, value: Any) -> bool:
    """Whether a value is a list of what a field of this sort lists."""
    if sort_of_value(value) != "list":
        return False
    if sort == "texts":
        return are_texts(value)
    for entry in value:
        fits = (
            is_pair(entry)
            if sort == "pairs"
            else is_chance(entry)
            if sort == "chances"
            else is_answer(entry)
        )
        if not fits:
            return False
    return True


def is_pair(value: Any) -> bool:
    """Whether a value is two texts."""
    if sort_of_value(value) != "list":
        return False
    return len(value) == 2 and are_texts(value)


def fits(sort: str, value: Any) -> bool:
    """Whether a value may stand in a field of this sort."""
    if sort in LISTS:
        return is_list_of(sort, value)
    if sort == "money":
        return value is None or is_amount(value)
    if sort == "came":
        return is_came(value)
    if sort in ["flag", "number"]:
        return sort_of_value(value) == sort
    if sort == "urgency":
        return is_count(value, 3) and value > 0
    if sort_of_value(value) != "text":
        return False
    if sort == "condition":
        return value == "" or value in CONDITIONS
    words = words_of(sort)
    return len(words) == 0 or value in words


def misfits(kind: str, record: Group) -> list[str]:
    """The names of known fields of a record that hold something else than they should."""
    out: list[str] = []
    for field in fields_of(kind):
        if misfit(record, field):
            out.append(field[0])
    for field in BESIDES:
        if misfit(record, field):
            out.append(field[0])
    for name in names_of(record):
        if name[0 : len(SEEN)] == SEEN and misfit(record, [name, "texts"]):
            out.append(name)
    return out


def misfit(record: Group, field: list[str]) -> bool:
    """Whether a field is there and does not fit. What was taken away is null, and not there."""
    value = value_at(record, field[0])
    return value is not None and not fits(field[1], value)
