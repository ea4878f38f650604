"""What each sort of record holds: the one list of fields, for the phone, the server and files.

A field's sort says what may stand in it (gate.py) and what does in a new record.
"""

from typing import Any

from .types.gate import RecordShape, SortWords

RECORD_SHAPES: list[RecordShape] = [
    {
        "type": "piece",
        "fields": [
            ["pack", "text"], ["item", "text"], ["called", "text"], ["of", "chances"],
            ["answers", "answers"], ["condition", "condition"], ["boxed", "boxed"],
            ["box_condition", "condition"], ["missing", "texts"], ["replaced", "texts"],
            ["paid", "money"], ["where", "text"], ["when", "text"], ["photos", "texts"],
            ["notes", "text"], ["kept", "flag"], ["purpose", "purpose"], ["asking", "money"],
        ],
    },
    {
        "type": "want",
        "fields": [
            ["pack", "text"], ["item", "text"], ["variant", "text"], ["least", "condition"],
            ["box", "box"], ["most", "money"], ["urgency", "urgency"], ["notes", "text"],
        ],
    },
    {
        "type": "note",
        "fields": [
            ["pack", "text"], ["of", "chances"], ["answers", "answers"], ["condition", "condition"],
            ["boxed", "boxed"], ["hall", "text"], ["table", "text"], ["asked", "money"],
            ["offer", "money"], ["come_back", "text"], ["decision", "decision"],
            ["photos", "texts"], ["text", "text"], ["piece", "text"],
        ],
    },
    {
        "type": "sighting",
        "fields": [
            ["pack", "text"], ["version", "text"], ["kind", "text"], ["item", "text"],
            ["called", "text"], ["unrecorded", "flag"], ["of", "chances"], ["answers", "answers"],
            ["years", "text"], ["text", "text"], ["photos", "texts"],
        ],
    },
    {"type": "budget", "fields": [["day", "text"], ["amount", "money"]]},
]  # fmt: skip
# What any record may have besides, and need not.
BESIDES = [["demo", "flag"], ["gone", "flag"], ["session", "text"], ["came", "came"]]
WORDS: list[SortWords] = [
    {"sort": "boxed", "words": ["", "yes", "no"]},
    {"sort": "box", "words": ["", "yes"]},
    {"sort": "purpose", "words": ["", "spare", "donor"]},
    {"sort": "decision", "words": ["open", "bought", "left"]},
]
LISTS = ["chances", "answers", "texts"]
URGENCY = 2


def fields_of(kind: str) -> list[list[str]]:
    """The fields of a sort of record: [[name, sort]]; none of one that is not known here."""
    for shape in RECORD_SHAPES:
        if shape["type"] == kind:
            return shape["fields"]
    return []


def is_known(kind: str) -> bool:
    """Whether this version knows records of this sort."""
    return len(fields_of(kind)) > 0


def words_of(sort: str) -> list[str]:
    """The words that a field of this sort may hold; none where it is not held to some."""
    for entry in WORDS:
        if entry["sort"] == sort:
            return entry["words"]
    return []


def usual(sort: str) -> Any:
    """What a field of this sort holds in a new record."""
    if sort in LISTS:
        return []
    if sort in ["money", "came"]:
        return None
    if sort == "flag":
        return False
    if sort == "urgency":
        return URGENCY
    return "open" if sort == "decision" else ""


def new_fields(kind: str) -> list[list[Any]]:
    """What a new record of this sort holds: [[name, value]]."""
    return [[field[0], usual(field[1])] for field in fields_of(kind)]
