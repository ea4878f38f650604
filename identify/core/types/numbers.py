"""The year of a number on a piece: a registered design, a patent, a barcode."""

from typing import Literal, TypedDict

Series = list[list[int]]  # [number, first, before, memory], lowest number first: see NumberTables


class BarTables(TypedDict):
    """When bars of these lengths came: [first year, memory]."""

    twelve: list[int]
    thirteen: list[int]


class NumberTables(TypedDict):
    """packs/numbers.json.

    Of a series each row says: from this number on numbers were given from the year `first` (0: none
    was until the next row); numbers below it are of the year `before` at the latest (0: not known);
    `memory` is 1 where that is from memory, else 0.
    """

    design: Series
    patent: Series
    barcode: BarTables


NumberSort = Literal["design", "patent", "barcode"]

# empty · letters (not figures only) · long (more than 8) · low (below the table) · unused (never
# given) · year (1234/79: not numbered by the year then) · count (barcode: not 8, 12 or 13) · check
NumberProblem = Literal["", "empty", "letters", "long", "low", "unused", "year", "count", "check"]


class DatedNumber(TypedDict):
    """A number that was read, and when it was given."""

    problem: NumberProblem
    # without gaps; where they cannot be read, the text after words such as "Regd. No."
    figures: str
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
    # the next that was, or 0; year: the first and the last; check: the last figure
    near: list[int]
