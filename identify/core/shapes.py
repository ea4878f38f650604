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
            ["pack", "text"], ["item", "text"], ["called", "text"], ["variant", "text"],
            ["least", "condition"],
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
    {
        "type": "range",
        "fields": [
            ["key", "text"], ["name", "text"], ["maker", "text"], ["gauge", "number"],
            ["scale", "text"], ["material", "text"], ["country", "text"], ["years", "text"],
            ["about", "text"], ["by", "text"], ["invented", "flag"], ["drawings", "pairs"],
            ["learns", "text"], ["shared", "text"],
        ],
    },
    {
        "type": "range_kind",
        "fields": [
            ["range", "text"], ["at", "number"], ["key", "text"], ["name", "text"],
            ["plural", "text"], ["caption", "text"], ["complete", "text"], ["drawing", "text"],
        ],
    },
    {
        "type": "range_part",
        "fields": [
            ["range", "text"], ["at", "number"], ["key", "text"], ["name", "text"],
            ["swap", "number"], ["replaced", "text"], ["altered", "text"],
        ],
    },
    {
        "type": "range_caution",
        "fields": [["range", "text"], ["at", "number"], ["kinds", "texts"], ["text", "text"]],
    },
    {
        "type": "range_feature",
        "fields": [
            ["range", "text"], ["at", "number"], ["key", "text"], ["kit", "text"],
            ["name", "text"], ["title", "text"], ["question", "text"],
            ["where", "text"], ["part", "text"], ["seconds", "number"], ["needs", "needs"],
            ["kinds", "texts"], ["only_if", "pairs"], ["mistaken", "pairs"],
            ["layer", "text"], ["unseen", "text"],
        ],
    },
    {
        "type": "range_state",
        "fields": [
            ["range", "text"], ["feature", "text"], ["at", "number"], ["key", "text"],
            ["name", "text"], ["caption", "text"], ["look", "text"], ["drawing", "text"],
        ],
    },
    {
        "type": "range_item",
        "fields": [
            ["range", "text"], ["at", "number"], ["number", "text"], ["name", "text"],
            ["kind", "text"], ["years", "text"], ["source", "text"], ["other_years", "pairs"],
            ["formation", "text"], ["contains", "texts"], ["carried", "texts"], ["note", "text"],
        ],
    },
    {
        "type": "range_variant",
        "fields": [
            ["range", "text"], ["item", "text"], ["at", "number"], ["key", "text"],
            ["name", "text"], ["years", "text"], ["source", "text"], ["other_years", "pairs"],
            ["common", "number"], ["note", "text"],
        ],
    },
    {
        "type": "range_change",
        "fields": [
            ["range", "text"], ["at", "number"], ["feature", "text"], ["state", "text"],
            ["since", "text"], ["until", "text"], ["kinds", "texts"], ["items", "texts"],
            ["source", "text"], ["other_from", "pairs"], ["note", "text"],
        ],
    },
    {
        "type": "range_source",
        "fields": [
            ["range", "text"], ["at", "number"], ["key", "text"], ["what", "text"],
            ["year", "text"], ["trust", "number"],
        ],
    },
    {
        "type": "range_move",
        "fields": [
            ["range", "text"], ["at", "number"], ["what", "moving"], ["was", "text"],
            ["now", "text"], ["note", "text"],
        ],
    },
]  # fmt: skip
# What any record may have besides, and need not.
BESIDES = [["demo", "flag"], ["gone", "flag"], ["session", "text"], ["came", "came"]]
WORDS: list[SortWords] = [
    {"sort": "boxed", "words": ["", "yes", "no"]},
    {"sort": "box", "words": ["", "yes"]},
    {"sort": "purpose", "words": ["", "spare", "donor"]},
    {"sort": "decision", "words": ["open", "bought", "left"]},
    {"sort": "needs", "words": ["", "nothing", "loupe", "body off"]},
    {"sort": "moving", "words": ["", "item", "variant"]},
]
LISTS = ["chances", "answers", "texts", "pairs"]
SEEN = "seen_"  # on an item or a variant, with the id of a feature behind: what is seen there
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
    if sort in ["money", "came", "number"]:
        return None
    if sort == "flag":
        return False
    if sort == "urgency":
        return URGENCY
    return "open" if sort == "decision" else ""


def new_fields(kind: str) -> list[list[Any]]:
    """What a new record of this sort holds: [[name, value]]."""
    return [[field[0], usual(field[1])] for field in fields_of(kind)]
