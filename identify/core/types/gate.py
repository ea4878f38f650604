"""What the gate says of what comes from a file, another device or the storage."""

from typing import Any, TypedDict

Group = dict[str, Any]  # names with values of any sort: what is looked at before it is believed


class Fault(TypedDict):
    """Why something does not fit."""

    why: str  # a word that gate_words.py has a sentence for
    at: str  # the field that it is about, "" for none


class RecordShape(TypedDict):
    """What a sort of record holds."""

    type: str
    fields: list[list[str]]  # [name, sort of value]


class SortWords(TypedDict):
    """The words that a sort of field is held to."""

    sort: str
    words: list[str]
