"""The forms of what records and operations are made of: ids, times, counts, words."""

from typing import Any

from .edtf import days_in
from .native.values import is_whole, sort_of_value, weight_of

# What every object of JavaScript has: as the name of a field it would stand for something else.
NO_NAMES = [
    "__proto__", "constructor", "prototype", "hasOwnProperty", "isPrototypeOf", "toString",
    "propertyIsEnumerable", "toLocaleString", "valueOf", "__defineGetter__", "__defineSetter__",
    "__lookupGetter__", "__lookupSetter__",
]  # fmt: skip
SMALL = "abcdefghijklmnopqrstuvwxyz"
CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
NUMERALS = "0123456789"
HEXADECIMAL = "0123456789abcdef"
LETTERS = CAPITALS + SMALL + NUMERALS + "_-"
FIRST_YEAR = 1000
LAST_YEAR = 9998  # four figures, with a year of room for what is changed after


def is_text(value: Any, most: int) -> bool:
    """Whether a value is text of at most so many bytes."""
    if sort_of_value(value) != "text":
        return False
    weight = weight_of(value)
    return weight >= 0 and weight <= most


def is_empty(value: Any) -> bool:
    """Whether a value is text without a letter: not 0, nor an empty list, which equal "" there."""
    return sort_of_value(value) == "text" and value == ""


def is_made_of(text: str, letters: str) -> bool:
    """Whether a text has no other characters than these."""
    for i in range(len(text)):
        if text[i : i + 1] not in letters:
            return False
    return True


def is_word(value: Any, firsts: str, others: str, most: int) -> bool:
    """Whether a value is text of 1 to `most` characters, the first of `firsts`, then `others`."""
    if not is_text(value, most):
        return False
    if len(value) < 1 or value[0:1] not in firsts:
        return False
    return is_made_of(value[1:], others)


def is_id(value: Any, firsts: str) -> bool:
    """Whether a value is an id of a record: a letter of `firsts` and 1 to 64 letters or figures."""
    return is_word(value, firsts, LETTERS, 65) and len(value) > 1


def is_sum(value: Any) -> bool:
    """Whether a value is a SHA-256 in hexadecimal figures: what a picture is called."""
    return is_word(value, HEXADECIMAL, HEXADECIMAL, 64) and len(value) == 64


def is_type(value: Any) -> bool:
    """Whether a value names a sort of record, known or from a newer version."""
    return is_word(value, SMALL, SMALL + NUMERALS + "_-", 40) and value not in NO_NAMES


def is_operation_id(value: Any) -> bool:
    """Whether a value is "d" with 16 letters or figures, a point, and a whole number from 1."""
    if not is_text(value, 28):
        return False
    if len(value) < 19 or value[0:1] != "d" or value[17:18] != ".":
        return False
    if value[18:19] == "0" or not is_made_of(value[18:], NUMERALS):
        return False
    return is_made_of(value[1:17], SMALL + NUMERALS)


def whole_number_at(text: str, start: int, end: int) -> int:
    """The whole number that stands at a place of a text; -1 where none does."""
    figures = text[start:end]
    if len(figures) != end - start or not is_made_of(figures, NUMERALS):
        return -1
    return int(figures)


def is_time(value: Any) -> bool:
    """Whether a value is a time that was or can be: 2026-11-01T10:00:00Z, also with fractions of a
    second, or with +01:00 in place of Z.
    """
    if not is_text(value, 40):
        return False
    year = whole_number_at(value, 0, 4)
    month = whole_number_at(value, 5, 7)
    day = whole_number_at(value, 8, 10)
    marks = value[4:5] + value[7:8] + value[10:11] + value[13:14] + value[16:17]
    if marks != "--T::" or year < FIRST_YEAR or year > LAST_YEAR or month < 1 or month > 12:
        return False
    days = days_in(year, month)
    if day < 1 or day > days or not is_clock_time(value, 11):
        return False
    return is_zone(after_fraction(value[19:]))


def is_clock_time(text: str, start: int) -> bool:
    """Whether hours, minutes and seconds stand at a place of a text."""
    hour = whole_number_at(text, start, start + 2)
    minute = whole_number_at(text, start + 3, start + 5)
    second = whole_number_at(text, start + 6, start + 8)
    return hour >= 0 and hour < 24 and minute >= 0 and minute < 60 and second >= 0 and second < 60


def after_fraction(text: str) -> str:
    """What stands after ".123" at the beginning of a text."""
    if text[0:1] != ".":
        return text
    end = 1
    while end < len(text) and text[end : end + 1] in NUMERALS:
        end = end + 1
    return text[end:] if end > 1 else "none"


def is_zone(text: str) -> bool:
    """Whether a text is Z, or hours and minutes like +01:00."""
    if text == "Z":
        return True
    hour = whole_number_at(text, 1, 3)
    minute = whole_number_at(text, 4, 6)
    signed = (text[0:1] == "+" or text[0:1] == "-") and text[3:4] == ":" and len(text) == 6
    return signed and hour >= 0 and hour < 24 and minute >= 0 and minute < 60


def is_count(value: Any, most: float) -> bool:
    """Whether a value is a whole number from 0 to `most`."""
    if sort_of_value(value) != "number":
        return False
    return is_whole(value) and value >= 0 and value <= most
