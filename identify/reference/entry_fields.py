"""One entry at a time: turns what a file says into a typed record, collecting every mistake."""

import math
from collections.abc import Callable
from functools import cache
from typing import Annotated, Any, TypeVar, get_args, get_origin

import msgspec

from identify.core.ranges.folder_in import cut_at
from identify.reference.entries import Entry, Said, Texts
from identify.reference.mistakes import Mistake, quoted
from identify.reference.types import TomlTable

E = TypeVar("E", bound=Entry)


def _description(kind: Any) -> str:
    """How a field's type is explained, as its Annotated says."""
    if get_origin(kind) is Annotated:
        return str(get_args(kind)[1].description)
    return next((words for each in get_args(kind) if (words := _description(each))), "")


@cache
def fields(record: type[Entry]) -> dict[str, tuple[str, Any, str]]:
    """The record's fields by the name used in the file: (attribute, type, explanation)."""
    return {
        field.encode_name: (field.name, field.type, _description(field.type))
        for field in msgspec.structs.fields(record)
        if field.name not in ("line", "lines", "cells", "states")
    }


def _shown(value: Any) -> str:
    text = value if isinstance(value, str) else msgspec.json.encode(value, enc_hook=str).decode()
    return quoted(text)


def _said(text: str) -> list[list[str]]:
    """Pairs of source and years; what has no space in it fails as a pair."""
    return [each.split(maxsplit=1) for each in cut_at(text, ";")]


def _value(value: Any, kind: Any, cell: bool) -> Any:
    """The value as its type. In a spreadsheet's cell everything is text to begin with."""
    if cell and kind == Texts:
        return cut_at(value, ";")
    if cell and kind == Said:
        value = _said(value)
    converted = msgspec.convert(value, kind, strict=not cell)
    if isinstance(converted, float) and math.isnan(converted):
        raise ValueError
    return converted


def read_entry(
    record: type[E],
    given: TomlTable,
    line: int,
    mistake: Callable[[str, str], None],
    cell: bool = False,
) -> E:
    """The record, with defaults where `given` is wrong; `mistake(key, text)` is told each mistake.

    `given` holds known keys only. With `cell`, values are the text of a spreadsheet's cells.
    """
    values: TomlTable = {"line": line}
    for key, (name, kind, words) in fields(record).items():
        value = given.get(key)
        if value is None or (cell and value == ""):
            if key in record.needed:
                what = "this is blank" if cell else f"{key} is missing"
                mistake(key, f"{what}; it must be {words}.")
            continue
        try:
            values[name] = _value(value, kind, cell)
        except (ValueError, OverflowError, RecursionError):
            mistake(key, f"{_shown(value)} is not right here; it must be {words}.")
    return record(**values)


def reporter(
    mistakes: list[Mistake], file: str, line_of: Callable[[str], int]
) -> Callable[[str, str], None]:
    """What `read_entry` needs: adds a mistake in a key of the entry at hand."""

    def report(key: str, text: str) -> None:
        mistakes.append(Mistake(file, line_of(key), key, text))

    return report
