"""Marks read as they stand on a piece, as lines for the terminal."""

from collections.abc import Sequence
from typing import Any

from identify.core.apart import years_apart
from identify.core.mark_words import mark_span, nothing_said, reading_said
from identify.core.marking import read_mark
from identify.core.types.marks import MarkSpan, MarkTables, Reading
from identify.errors import UserError
from identify.reference.mark_tables import mark_tables
from identify.reference.mistakes import quoted


class DateError(UserError, ValueError):
    """What cannot be dated, with what would be right."""


def joined(parts: Sequence[Any]) -> str:
    """The parts of a sentence from the engine as one text, with its first letter a capital."""
    text = "".join(str(part) for part in parts)
    return text[:1].upper() + text[1:]


def dated(text: str, country: str = "") -> list[str]:
    """What stands on a piece, its years and who says so, a line each, and which marks cannot be of
    one year. Marks may be parted by semicolons. `country` keeps the readings of that country where
    there are any.

    Raises DateError where nothing is read, PackError for a table with mistakes.
    """
    tables = mark_tables()
    lines: list[str] = []
    spans: list[MarkSpan] = []
    named: list[str] = []
    for part in text.split(";"):
        reading = read_mark(tables, part)
        if reading["problem"]:
            raise DateError(joined(nothing_said(reading)))
        if reading["changed"]:
            lines.append(f"Read as {quoted(reading['read'])}, in plain figures and letters.")
        for mark in reading["marks"]:
            readings = _of_country(mark["readings"], country)
            lines += _mark(tables, mark["text"], readings)
            spans.append(mark_span(tables, readings[0]))
            named.append(mark["text"])
    return lines + _apart(spans, named)


def _of_country(readings: list[Reading], country: str) -> list[Reading]:
    """The readings of a country, or all where there are none of it."""
    return [each for each in readings if country in each["countries"]] or readings


def _mark(tables: MarkTables, text: str, readings: list[Reading]) -> list[str]:
    """One mark with each of its readings."""
    lines = [text]
    for place, reading in enumerate(readings):
        said = reading_said(tables, reading)
        lines.append(f"  {'Or: ' if place else ''}{joined(said['what'])}")
        lines += [f"    {joined(line)}" for line in said["lines"]]
        lines += [f"    ({who})" for who in said["who"]]
    return lines


def _apart(spans: list[MarkSpan], named: list[str]) -> list[str]:
    """What cannot be of one year."""
    return [
        f"{quoted(named[late])} is from {spans[late]['first']} or later, "
        f"{quoted(named[early])} from {spans[early]['last']} or earlier: not the same year."
        for late, early in years_apart(spans)
    ]
