"""Texts as tables, while they are parsed."""

from typing import TypedDict


class Parsing(TypedDict):
    """A text of which the rows up to a place are parsed."""

    text: str
    delimiter: str
    at: int
    rows: list[list[str]]
    filled: int  # of these rows, how many hold more than blanks
    loose: list[int]  # rows whose quotation marks do not match, from 1


class OlderText(TypedDict):
    """A text that is not in Unicode, by the likeliest of the older encodings."""

    text: str
    name: str  # of the encoding


class FileText(TypedDict):
    """The text of a file, and what to say about its encoding."""

    text: str
    notes: list[str]
