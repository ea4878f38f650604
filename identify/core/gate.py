"""The gate: what comes from a file, another device or the storage fits, or is told why not.

The same on the phone and on the server. A fault is {why, at}: a word, and the field it is about;
None stands for none. gate_words.py has the sentences. Whatever fits can be shown, changed, kept,
sent and taken in by every device, and leaves clocks and times room for what comes after.
Fields that are not known here are welcome: a newer version may have written them.
"""

from typing import Any

from .clock_limits import EXACT, LAST_COUNT, LAST_WALL
from .fitting import misfits
from .forms import (
    NO_NAMES,
    is_count,
    is_empty,
    is_id,
    is_operation_id,
    is_sum,
    is_text,
    is_time,
    is_type,
)
from .native.values import names_of, sort_of_value, value_at, weight_of
from .shapes import is_known
from .types.gate import Fault, Group

DEEPEST = 100
LARGEST = 262144  # bytes of one operation, entry or record: 256 KB
LONGEST_NAME = 200
LONGEST_WORD = 100
LONGEST_WHAT = 4000
MOST_PARENTS = 64
PICTURES = ["full", "small"]
# What scanned() gives instead of room that is left.
DEEP = -1
NAME = -2
UNICODE = -3
VALUE = -4
LARGE = -5
SCANNED = ["deep", "name", "unicode", "value", "large"]


def fault_of(why: str, at: str) -> Fault | None:
    """A fault."""
    return {"why": why, "at": at}


def scanned(value: Any, deep: int, room: int) -> int:
    """The bytes left of `room` after a value, counted a little generously; below 0 what is wrong
    with it: DEEP, NAME, UNICODE, VALUE or LARGE.
    """
    left = room - 4
    if deep > DEEPEST:
        return DEEP
    if left < 0:
        return LARGE
    sort = sort_of_value(value)
    if sort == "text":
        return without_text(left, value)
    if sort == "list":
        for entry in value:
            left = scanned(entry, deep + 1, left)
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


def without_text(room: int, text: str) -> int:
    """The room that a text leaves."""
    weight = weight_of(text)
    if weight < 0:
        return UNICODE
    return LARGE if weight > room else room - weight


def value_fault(value: Any) -> Fault | None:
    """What is wrong with a value whatever it is about: its depth, size, names, text and numbers."""
    if sort_of_value(value) != "group":
        return fault_of("group", "")
    left = scanned(value, 0, LARGEST)
    if left >= 0:
        return None
    return fault_of(SCANNED[0 - left - 1], bad_name(value) if left == NAME else "")


def bad_name(value: Any) -> str:
    """The first of NO_NAMES in a value; "" for none."""
    bad = ""
    if sort_of_value(value) == "list":
        for entry in value:
            bad = bad_name(entry) if bad == "" else bad
    elif sort_of_value(value) == "group":
        for name in names_of(value):
            if bad == "":
                bad = name if name in NO_NAMES else bad_name(value_at(value, name))
    return bad


def record_fault(record: Any) -> Fault | None:
    """What is wrong with a record as it is kept; one of a sort that is not known here may be."""
    fault = value_fault(record)
    if fault is not None:
        return fault
    for name in ["made", "changed"]:
        if not is_time(value_at(record, name)):
            return fault_of("time", name)
    if not is_id(value_at(record, "id"), "r"):
        return fault_of("id", "id")
    kind = value_at(record, "type")
    if not is_type(kind):
        return fault_of("type", "type")
    trashed = value_at(record, "trashed")
    if trashed is not None and not is_empty(trashed) and not is_time(trashed):
        return fault_of("time", "trashed")
    wrong = misfits(kind, record)
    return None if len(wrong) == 0 else fault_of("field", wrong[0])


def file_record_fault(record: Any) -> Fault | None:
    """The same for a record in a file, which is of a sort that is known here."""
    fault = record_fault(record)
    if fault is not None:
        return fault
    return None if is_known(value_at(record, "type")) else fault_of("type", "type")


def entry_fault(entry: Any, stored: bool) -> Fault | None:
    """What is wrong with an entry of the journal, be it an operation or not; `stored`: it is kept
    here already, perhaps since before clocks had a limit.
    """
    fault = value_fault(entry)
    if fault is not None:
        return fault
    fault = change_fault(entry)
    for name in ["fields", "after"]:
        if fault is None:
            fault = picture_fault(value_at(entry, "type"), value_at(entry, name))
    if fault is not None:
        return fault
    if value_at(entry, "op") is None:  # what is no operation is held by no server
        return None if value_at(entry, "held") is None else fault_of("field", "held")
    return order_fault(entry, "op", stored)


def change_fault(entry: Group) -> Fault | None:
    """What is wrong with an entry of the journal as a change of a record."""
    if not is_time(value_at(entry, "time")):
        return fault_of("time", "time")
    if not is_id(value_at(entry, "record"), "rp"):
        return fault_of("id", "record")
    kind = value_at(entry, "type")
    if kind is not None and not is_empty(kind) and not is_type(kind):
        return fault_of("type", "type")
    if not is_text(value_at(entry, "group"), LONGEST_WORD):
        return fault_of("field", "group")
    for name in ["what", "undoes", "held"]:
        if value_at(entry, name) is not None and not is_text(value_at(entry, name), LONGEST_WHAT):
            return fault_of("field", name)
    for name in ["before", "fields", "settles", "more"]:
        if sort_of_value(value_at(entry, name)) not in ["nothing", "group"]:
            return fault_of("field", name)
    if sort_of_value(value_at(entry, "after")) != "group":
        return fault_of("field", "after")
    for name in ["side", "pulled", "send", "scrubbed"]:
        if sort_of_value(value_at(entry, name)) not in ["nothing", "flag"]:
            return fault_of("field", name)
    return None


def picture_fault(kind: Any, fields: Any) -> Fault | None:
    """What is wrong with the names of the pictures that a change of a photo tells of, which are
    asked for by these names.
    """
    if kind != "photo" or fields is None:
        return None
    for name in PICTURES:
        if value_at(fields, name) is not None and not is_sum(value_at(fields, name)):
            return fault_of("field", name)
    return None


def order_fault(op: Group, name: str, stored: bool) -> Fault | None:
    """What is wrong with an operation's own id (under `name`), its parents, type and clock."""
    if not is_operation_id(value_at(op, name)):
        return fault_of("op", name)
    if not is_type(value_at(op, "type")):
        return fault_of("type", "type")
    parents = value_at(op, "parents")
    if sort_of_value(parents) != "list" or len(parents) > MOST_PARENTS:
        return fault_of("parents", "parents")
    last = ""
    for parent in parents:
        if not is_operation_id(parent):
            return fault_of("parents", "parents")
        if parent == value_at(op, name) or parent <= last:
            return fault_of("parents", "parents")
        last = parent
    if not is_count(value_at(op, "wall"), EXACT if stored else LAST_WALL):
        return fault_of("clock", "wall")
    most = EXACT if stored else LAST_COUNT
    return None if is_count(value_at(op, "count"), most) else fault_of("clock", "count")


def operation_fault(op: Any, stored: bool) -> Fault | None:
    """What is wrong with an operation as it goes between a device and the server; `stored`: the
    server has it already.
    """
    fault = value_fault(op)
    if fault is not None:
        return fault
    if not is_id(value_at(op, "record"), "rp"):
        return fault_of("id", "record")
    fault = order_fault(op, "id", stored)
    if fault is not None:
        return fault
    time = value_at(op, "time")
    if "time" in names_of(op) and not is_empty(time) and not is_time(time):
        return fault_of("time", "time")
    for name in ["group", "undoes", "what"]:
        most = LONGEST_WHAT if name == "what" else LONGEST_WORD
        if name in names_of(op) and not is_text(value_at(op, name), most):
            return fault_of("field", name)
    fields = value_at(op, "fields")
    scrubbed = value_at(op, "scrubbed")
    if sort_of_value(fields) != "group":
        return fault_of("field", "fields")
    if sort_of_value(scrubbed) not in ["nothing", "flag"]:
        return fault_of("field", "scrubbed")
    for name in names_of(fields):
        if not is_text(name, LONGEST_NAME):
            return fault_of("field", "fields")
    fault = picture_fault(value_at(op, "type"), fields)
    if fault is not None:
        return fault
    if sort_of_value(scrubbed) == "flag":
        return left_over(scrubbed, fields)
    return None


def left_over(scrubbed: bool, fields: Group) -> Fault | None:
    """The fault that something was deleted for good and holds fields all the same."""
    wrong = scrubbed and len(names_of(fields)) > 0
    return fault_of("scrubbed", "fields") if wrong else None


def photo_fault(photo: Any) -> Fault | None:
    """What is wrong with what stands beside the two pictures of a photo in a file."""
    if sort_of_value(photo) != "group":
        return fault_of("group", "")
    if not is_id(value_at(photo, "id"), "p"):
        return fault_of("id", "id")
    for name in ["full", "small"]:
        if sort_of_value(value_at(photo, name)) != "text":
            return fault_of("field", name)
    return None
