"""Marks that date by themselves: the tables, and what is read of a text on a piece."""

from typing import Literal, TypedDict

Parts = list[str | int]  # of a sentence, to be joined by who shows it
NumberProblem = Literal[
    "", "none", "empty", "letters", "long", "low", "unused", "beyond", "year", "count", "check"
]


class ShapePiece(TypedDict):
    """A piece of a shape: see core/mark_shapes.py."""

    kind: Literal["figures", "letters", "pence", "word", "district", "text", "gap", "space"]
    least: int
    most: int
    text: str


class StateFrom(TypedDict):
    """A state of a mark, and the number from which it is that one."""

    state: str
    number: int


class SeriesTable(TypedDict):
    """A series of numbers that ran on over the years.

    Each of `rows` is [number, first, before, memory], lowest number first: from this number on
    numbers were given from the year `first` (0: none was until the next row; -1: none by the year
    `before`); numbers below it are of the year `before` at the latest (0: not known); `memory` is 1
    where that is from memory, else 0.
    """

    id: str
    country: str
    kind: str  # id of the mark: design, patent
    name: str
    done: str  # what was done in the year of a number: registered, granted
    example: str
    note: str
    states: list[StateFrom]
    rows: list[list[int]]
    sources: list[int]  # place of the source of each row, -1: none


class BarTables(TypedDict):
    """When bars of these lengths came: [first year, memory]."""

    twelve: list[int]
    thirteen: list[int]


class MarkWordsEntry(TypedDict):
    """Words that name a mark, or stand before the numbers of some series."""

    words: list[str]
    feature: str
    state: str  # "": the number says which
    countries: list[str]
    series: list[str]


class ShapeEntry(TypedDict):
    """What a mark without words looks like."""

    pieces: list[ShapePiece]
    feature: str
    state: str
    countries: list[str]
    series: list[str]  # its figures are a number of one of these


class TaxRate(TypedDict):
    """A rate beside the word for a tax: the wording of the mark "rate", and where both stand."""

    state: str  # "": none
    start: int
    end: int


class MarkEnd(TypedDict):
    """One end of the years of a wording."""

    year: int  # 0: open
    when: str  # "15 February 1971"
    hard: bool  # rules out what is beyond it
    label: str
    source: int  # place, -1: none
    tail: int  # years beyond a soft end in which it grows rarer


class WordingRow(TypedDict):
    """When a wording was in use in some countries."""

    feature: str
    state: str
    countries: list[str]
    wording: str
    since: MarkEnd
    until: MarkEnd
    note: str


class NamedOne(TypedDict):
    """An id with its name."""

    id: str
    name: str


class MarkFeature(TypedDict):
    """A mark and its wordings."""

    id: str
    name: str
    states: list[NamedOne]


class MarkSource(TypedDict):
    """Who says so, where it was read, and what kind of authority that is."""

    what: str
    read: str
    kind: str


class NumberTables(TypedDict):
    """What numbers are read by."""

    series: list[SeriesTable]
    barcode: BarTables


class MarkTables(NumberTables):
    """packs/marks.json."""

    words: list[MarkWordsEntry]
    shapes: list[ShapeEntry]
    rows: list[WordingRow]
    features: list[MarkFeature]
    sources: list[MarkSource]
    countries: list[NamedOne]


class DatedNumber(TypedDict):
    """A number that was read, and when it was given."""

    # none (there is no number) · empty · letters (not figures only) · long (more than 8) · low
    # (below the table) · unused (none given there) · beyond (not reached yet) · year (1234/79: not
    # numbered by the year then) · count (barcode: not 8, 12 or 13) · check
    problem: NumberProblem
    figures: str  # without gaps; where they cannot be read, the text
    # for letters: the text with look-alikes (O, I, S, ...) as figures, "" if that is no number
    # either; it is told, never taken
    meant: str
    # application: a patent's number with its year; UPC-A: with 13 figures, a 0 in front
    kind: Literal["", "application", "EAN-8", "EAN-13", "UPC-A"]
    number: int
    first: int  # years
    last: int  # 0: open
    memory: bool  # some of it is from memory
    row: int  # place in the table, or -1
    # what is right; low: the lowest number and its year; unused: the first number not given and
    # the next that was, or 0; beyond: the number not reached, and by which year; year: the first
    # and the last; check: the last figure
    near: list[int]


class Reading(TypedDict):
    """One thing that a mark can be."""

    feature: str
    state: str  # "": not known
    countries: list[str]
    series: str  # "": no number of a series
    rows: list[int]  # places of the rows that say when
    number: DatedNumber
    bare: bool  # nothing before the number says what it is


class MarkFound(TypedDict):
    """A mark in a text: from where to where, and what it can be."""

    start: int
    end: int
    text: str
    readings: list[Reading]


class MarkRead(TypedDict):
    """What a text on a piece says."""

    problem: Literal["", "empty", "nothing"]
    read: str  # as plain capitals
    changed: bool  # whether figures or letters of another script were read as ours
    # for nothing: the text with letters that look like figures as figures, where that is a mark; it
    # is told, never taken
    meant: str
    marks: list[MarkFound]


class ReadingSaid(TypedDict):
    """A reading in words."""

    what: Parts
    lines: list[Parts]
    who: list[str]


class MarkSpan(TypedDict):
    """The years that a reading leaves, 0 where open."""

    first: int
    last: int
    first_hard: bool
    last_hard: bool


class MarkClash(TypedDict):
    """Two marks of one piece that cannot be of one year, or hardly."""

    late: int  # places among what was seen
    early: int
    hard: bool  # not even with what lies beyond soft ends of their years
