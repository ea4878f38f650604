"""The gate: what comes from a file, another device or the storage fits, or is told why not.

The same on the phone and on the server. A fault is {why, at}: a word, and the field it is about;
None stands for none. gate_words.py has the sentences. Whatever fits can be shown, changed, kept,
sent and taken in by every device, and leaves clocks and times room for what comes after.
Fields that are not known here are welcome: a newer version may have written them.
"""

from typing import Any

from .clock import EXACT, LAST_COUNT, LAST_WALL
from .condition import CONDITIONS
from .native.values import is_whole, names_of, sort_of, value_at, weight_of
from .shapes import BESIDES, fields_of, is_known, words_of

DEEPEST = 100
LARGEST = 256 * 1024  # bytes of one operation, entry or record
LONGEST_NAME = 200
LONGEST_WORD = 100
LONGEST_WHAT = 4000
MOST_PARENTS = 64
# What every object of JavaScript has: as the name of a field it would stand for something else.
NO_NAMES = [
    "__proto__", "constructor", "prototype", "hasOwnProperty", "isPrototypeOf", "toString",
    "propertyIsEnumerable", "toLocaleString", "valueOf", "__defineGetter__", "__defineSetter__",
    "__lookupGetter__", "__lookupSetter__",
]  # fmt: skip
SMALL = "abcdefghijklmnopqrstuvwxyz"
FIGURES = "0123456789"
LETTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ" + SMALL + FIGURES + "_-"
DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31]
FIRST_YEAR = 1000
LAST_YEAR = 9998  # four figures, with a year of room for what is changed after
HOW = ["sure", "unsure", "several", "other", "cannot"]
ROUNDING = 0.000001
# What scanned() gives instead of room that is left.
DEEP = -1
NAME = -2
UNICODE = -3
VALUE = -4
LARGE = -5
SCANNED = ["deep", "name", "unicode", "value", "large"]


def fault_of(why: str, at: str) -> dict[str, Any] | None:
    """A fault."""
    return {"why": why, "at": at}


def scanned(value: Any, deep: int, room: float) -> float:
    """The bytes left of `room` after a value, counted a little generously; below 0 what is wrong
    with it: DEEP, NAME, UNICODE, VALUE or LARGE.
    """
    left = room - 4
    if deep > DEEPEST:
        return DEEP
    if left < 0:
        return LARGE
    sort = sort_of(value)
    if sort == "text":
        return without_text(left, value)
    if sort == "list":
        for one in value:
            left = scanned(one, deep + 1, left)
            if left < 0:
                return left
        return left
    if sort == "group":
        for name in names_of(value):
            if name in NO_NAMES:
                return NAME
            left = without_text(left, name)
            if left >= 0:
                left = scanned(value_at(value, name), deep + 1, left)
            if left < 0:
                return left
        return left
    return VALUE if sort == "else" else left


def without_text(room: float, text: str) -> float:
    """The room that a text leaves."""
    weight = weight_of(text)
    if weight < 0:
        return UNICODE
    return LARGE if weight > room else room - weight


def value_fault(value: Any) -> dict[str, Any] | None:
    """What is wrong with a value whatever it is about: its depth, size, names, text and numbers."""
    if sort_of(value) != "group":
        return fault_of("group", "")
    left = scanned(value, 0, LARGEST)
    if left >= 0:
        return None
    for name in names_of(value):
        if name in NO_NAMES:
            return fault_of("name", name)
        if scanned(value_at(value, name), 1, LARGEST) < 0:
            return fault_of(SCANNED[0 - left - 1], name if weight_of(name) >= 0 else "")
    return fault_of(SCANNED[0 - left - 1], "")


def is_text(value: Any, most: int) -> bool:
    """Whether a value is text of at most so many bytes."""
    if sort_of(value) != "text":
        return False
    weight = weight_of(value)
    return weight >= 0 and weight <= most


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


def is_type(value: Any) -> bool:
    """Whether a value names a sort of record, known or from a newer version."""
    return is_word(value, SMALL, SMALL + FIGURES + "_-", 40) and value not in NO_NAMES


def is_operation_id(value: Any) -> bool:
    """Whether a value is "d" with 16 letters or figures, a point, and a whole number from 1."""
    if not is_text(value, 28):
        return False
    if len(value) < 19 or value[0:1] != "d" or value[17:18] != ".":
        return False
    if value[18:19] == "0" or not is_made_of(value[18:], FIGURES):
        return False
    return is_made_of(value[1:17], SMALL + FIGURES)


def number_in(text: str, start: int, end: int) -> int:
    """The whole number that stands at a place of a text; -1 where none does."""
    figures = text[start:end]
    if len(figures) != end - start or not is_made_of(figures, FIGURES):
        return -1
    return int(figures)


def is_time(value: Any) -> bool:
    """Whether a value is a time that was or can be: 2026-11-01T10:00:00Z, also with fractions of a
    second, or with +01:00 in place of Z.
    """
    if not is_text(value, 40):
        return False
    year = number_in(value, 0, 4)
    month = number_in(value, 5, 7)
    day = number_in(value, 8, 10)
    marks = value[4:5] + value[7:8] + value[10:11] + value[13:14] + value[16:17]
    if marks != "--T::" or year < FIRST_YEAR or year > LAST_YEAR or month < 1 or month > 12:
        return False
    leap = month == 2 and year == 4 * (year // 4) and (year != 100 * (year // 100))
    leap = leap or (month == 2 and year == 400 * (year // 400))
    days = 29 if leap else DAYS[month - 1]
    if day < 1 or day > days or not is_clock_time(value, 11):
        return False
    return is_zone(after_fraction(value[19:]))


def is_clock_time(text: str, start: int) -> bool:
    """Whether hours, minutes and seconds stand at a place of a text."""
    hour = number_in(text, start, start + 2)
    minute = number_in(text, start + 3, start + 5)
    second = number_in(text, start + 6, start + 8)
    return hour >= 0 and hour < 24 and minute >= 0 and minute < 60 and second >= 0 and second < 60


def after_fraction(text: str) -> str:
    """What stands after ".123" at the beginning of a text."""
    if text[0:1] != ".":
        return text
    end = 1
    while end < len(text) and text[end : end + 1] in FIGURES:
        end = end + 1
    return text[end:] if end > 1 else "none"


def is_zone(text: str) -> bool:
    """Whether a text is Z, or hours and minutes like +01:00."""
    if text == "Z":
        return True
    hour = number_in(text, 1, 3)
    minute = number_in(text, 4, 6)
    signed = (text[0:1] == "+" or text[0:1] == "-") and text[3:4] == ":" and len(text) == 6
    return signed and hour >= 0 and hour < 24 and minute >= 0 and minute < 60


def is_count(value: Any, most: float) -> bool:
    """Whether a value is a whole number from 0 to `most`."""
    if sort_of(value) != "number":
        return False
    return is_whole(value) and value >= 0 and value <= most


def is_money(value: Any) -> bool:
    """Whether a value is an amount: whole minor units, 48ths on top, a currency."""
    if sort_of(value) != "group":
        return False
    minor = value_at(value, "minor")
    over = value_at(value, "over")
    typed = value_at(value, "typed")
    currency = value_at(value, "currency")
    if sort_of(minor) != "number" or not is_word(currency, LETTERS[:26], LETTERS[:26], 3):
        return False
    if not is_whole(minor) or len(currency) != 3:
        return False
    if over is not None and not is_count(over, 47):
        return False
    return typed is None or sort_of(typed) == "text"


def are_texts(value: Any) -> bool:
    """Whether every value of a list is text."""
    for one in value:
        if sort_of(one) != "text":
            return False
    return True


def is_chance(value: Any) -> bool:
    """Whether a value is one of what a piece may be: {variant, chance, item or none}."""
    if sort_of(value) != "group" or sort_of(value_at(value, "variant")) != "text":
        return False
    chance = value_at(value, "chance")
    item = value_at(value, "item")
    if sort_of(chance) != "number" or (item is not None and sort_of(item) != "text"):
        return False
    return chance >= 0 and chance <= 1 + ROUNDING  # type: ignore[no-any-return]


def is_answer(value: Any) -> bool:
    """Whether a value is an answer of a session: {feature, how, states}."""
    if sort_of(value) != "group" or sort_of(value_at(value, "feature")) != "text":
        return False
    how = value_at(value, "how")
    states = value_at(value, "states")
    if sort_of(how) != "text" or sort_of(states) != "list":
        return False
    return how in HOW and are_texts(states)


def is_came(value: Any) -> bool:
    """Whether a value says which row of a list a record came from; None where it came from none."""
    if value is None:
        return True
    if sort_of(value) != "group" or sort_of(value_at(value, "key")) != "text":
        return False
    cells = value_at(value, "cells")
    if sort_of(cells) != "group" or sort_of(value_at(value, "values")) != "group":
        return False
    return are_texts([value_at(cells, name) for name in names_of(cells)])


def is_list_of(sort: str, value: Any) -> bool:
    """Whether a value is a list of what a field of this sort lists."""
    if sort_of(value) != "list":
        return False
    if sort == "texts":
        return are_texts(value)
    for one in value:
        fits = is_chance(one) if sort == "chances" else is_answer(one)
        if not fits:
            return False
    return True


def fits(sort: str, value: Any) -> bool:
    """Whether a value may stand in a field of this sort."""
    if sort == "chances" or sort == "answers" or sort == "texts":
        return is_list_of(sort, value)
    if sort == "money":
        return value is None or is_money(value)
    if sort == "came":
        return is_came(value)
    if sort == "flag":
        return sort_of(value) == "flag"
    if sort == "urgency":
        return is_count(value, 3) and value > 0
    if sort_of(value) != "text":
        return False
    if sort == "condition":
        return value == "" or value in CONDITIONS
    words = words_of(sort)
    return len(words) == 0 or value in words


def misfits(kind: str, record: dict[str, Any]) -> list[str]:
    """The names of known fields of a record that hold something else than they should."""
    out: list[str] = []
    for field in fields_of(kind):
        if misfit(record, field):
            out.append(field[0])
    for field in BESIDES:
        if misfit(record, field):
            out.append(field[0])
    return out


def misfit(record: dict[str, Any], field: list[str]) -> bool:
    """Whether a field is there and does not fit. What was taken away is null, and not there."""
    value = value_at(record, field[0])
    return value is not None and not fits(field[1], value)


def record_fault(record: Any) -> dict[str, Any] | None:
    """What is wrong with a record as it is kept; of a sort that is not known here, only the rest."""
    found = value_fault(record)
    if found is not None:
        return found
    for name in ["made", "changed"]:
        if not is_time(value_at(record, name)):
            return fault_of("time", name)
    trashed = value_at(record, "trashed")
    if not is_id(value_at(record, "id"), "r"):
        return fault_of("id", "id")
    kind = value_at(record, "type")
    if not is_type(kind):
        return fault_of("type", "type")
    if trashed is not None and trashed != "" and not is_time(trashed):
        return fault_of("time", "trashed")
    wrong = misfits(kind, record)
    return None if len(wrong) == 0 else fault_of("field", wrong[0])


def file_record_fault(record: Any) -> dict[str, Any] | None:
    """The same for a record in a file, which is of a sort that is known here."""
    found = record_fault(record)
    if found is not None:
        return found
    return None if is_known(value_at(record, "type")) else fault_of("type", "type")


def entry_fault(entry: Any, stored: bool) -> dict[str, Any] | None:
    """What is wrong with an entry of the journal, be it an operation or not; `stored`: it is kept
    here already, perhaps since before clocks had a limit.
    """
    found = value_fault(entry)
    if found is not None:
        return found
    if not is_time(value_at(entry, "time")):
        return fault_of("time", "time")
    if not is_id(value_at(entry, "record"), "rp"):
        return fault_of("id", "record")
    kind = value_at(entry, "type")
    if kind is not None and kind != "" and not is_type(kind):
        return fault_of("type", "type")
    if not is_text(value_at(entry, "group"), LONGEST_WORD):
        return fault_of("field", "group")
    for name in ["what", "undoes", "held"]:
        if value_at(entry, name) is not None and not is_text(value_at(entry, name), LONGEST_WHAT):
            return fault_of("field", name)
    for name in ["before", "fields", "settles", "more"]:
        if sort_of(value_at(entry, name)) not in ["nothing", "group"]:
            return fault_of("field", name)
    if sort_of(value_at(entry, "after")) != "group":
        return fault_of("field", "after")
    for name in ["side", "pulled", "send", "scrubbed"]:
        if sort_of(value_at(entry, name)) not in ["nothing", "flag"]:
            return fault_of("field", name)
    if value_at(entry, "op") is None:
        return None
    return order_fault(entry, "op", stored)


def order_fault(op: dict[str, Any], name: str, stored: bool) -> dict[str, Any] | None:
    """What is wrong with an operation's own id (under `name`), its parents, type and clock."""
    if not is_operation_id(value_at(op, name)):
        return fault_of("op", name)
    if not is_type(value_at(op, "type")):
        return fault_of("type", "type")
    parents = value_at(op, "parents")
    if sort_of(parents) != "list" or len(parents) > MOST_PARENTS:
        return fault_of("parents", "parents")
    last = ""
    for one in parents:
        if not is_operation_id(one):
            return fault_of("parents", "parents")
        if one == value_at(op, name) or one <= last:
            return fault_of("parents", "parents")
        last = one
    if not is_count(value_at(op, "wall"), EXACT if stored else LAST_WALL):
        return fault_of("clock", "wall")
    most = EXACT if stored else LAST_COUNT
    return None if is_count(value_at(op, "count"), most) else fault_of("clock", "count")


def operation_fault(op: Any, stored: bool) -> dict[str, Any] | None:
    """What is wrong with an operation as it goes between a device and the server; `stored`: the
    server has it already.
    """
    found = value_fault(op)
    if found is not None:
        return found
    if not is_id(value_at(op, "record"), "rp"):
        return fault_of("id", "record")
    found = order_fault(op, "id", stored)
    if found is not None:
        return found
    time = value_at(op, "time")
    if "time" in names_of(op) and time != "" and not is_time(time):
        return fault_of("time", "time")
    for name in ["group", "undoes", "what"]:
        most = LONGEST_WHAT if name == "what" else LONGEST_WORD
        if name in names_of(op) and not is_text(value_at(op, name), most):
            return fault_of("field", name)
    fields = value_at(op, "fields")
    scrubbed = value_at(op, "scrubbed")
    if sort_of(fields) != "group":
        return fault_of("field", "fields")
    if sort_of(scrubbed) not in ["nothing", "flag"]:
        return fault_of("field", "scrubbed")
    for name in names_of(fields):
        if not is_text(name, LONGEST_NAME):
            return fault_of("field", "fields")
    if sort_of(scrubbed) == "flag":
        return left_over(scrubbed, fields)
    return None


def left_over(scrubbed: bool, fields: dict[str, Any]) -> dict[str, Any] | None:
    """The fault that something was deleted for good and holds fields all the same."""
    found = scrubbed and len(names_of(fields)) > 0
    return fault_of("scrubbed", "fields") if found else None


def photo_fault(photo: Any) -> dict[str, Any] | None:
    """What is wrong with what stands beside the two pictures of a photo in a file."""
    if sort_of(photo) != "group":
        return fault_of("group", "")
    if not is_id(value_at(photo, "id"), "p"):
        return fault_of("id", "id")
    for name in ["full", "small"]:
        if sort_of(value_at(photo, name)) != "text":
            return fault_of("field", name)
    return None
