"""One operation in its forms: as the rules of merging take it, and as it is held against another.

The phone, the server and the tests' devices all make them here.
"""

from .native.values import is_true, json_text, json_without, names_of, value_at
from .types.operations import Compared, Operation, OperationId, Written

EMPTIED = ["fields", "what", "scrubbed"]  # what deleting for good changes


def parts_of_id(ident: str) -> OperationId:
    """The device and the number in an operation's id, "<device>.<n>"."""
    point = 0
    for at in range(len(ident)):
        if ident[at : at + 1] == ".":
            point = at
    return {"device": ident[0:point], "n": int(ident[point + 1 :])}


def for_merging(op: Operation) -> Written:
    """An operation as merging.py takes it."""
    parts = parts_of_id(op["id"])
    fields = op["fields"]
    return {
        "id": op["id"],
        "device": parts["device"],
        "n": parts["n"],
        "parents": op["parents"],
        "wall": op["wall"],
        "count": op["count"],
        "type": op["type"],
        "fields": [[name, json_text(value_at(fields, name))] for name in names_of(fields)],
    }


def comparable(op: Operation) -> Compared:
    """An operation as it is held against another under the same id."""
    return {
        "scrubbed": is_true(op.get("scrubbed", False)),
        "text": json_text(op),
        "bare": json_without(op, EMPTIED),
    }
