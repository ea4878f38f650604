"""The two ends of the years of a wording: when, who says so, and how hard each is.

A law's day is hard for what could not be before it. Tools, old stock and paper are used on, so
most ends are soft: in a tail of years beyond them the wording grows rarer, and even beyond the tail
it is only unlikely.
"""

import re

import msgspec

from identify.core.ranges.year_bounds import FAR
from identify.core.types.rows import Window
from identify.reference.entries import MEMORY, PRACTICE, PUBLISHED, MarkRow
from identify.reference.years import read_years

OPEN = ".."
HARD = "hard"
GUESS = "guess"
TAIL = re.compile(r"([1-9]\d?) ([a-z][a-z0-9_]*)", re.ASCII)

# The weight that is left beyond a soft end and its tail: guesses, as no source says how often such
# a wording is met late or early. An end that nobody was read for tells a fifth as much.
DOUBT = {PUBLISHED: 0.01, PRACTICE: 0.05, MEMORY: 0.05}


class End(msgspec.Struct, frozen=True):
    """One end. `at`: decimal years, infinite where open. `tail`: years beyond it, 0 where it is
    hard or open; `tail_source`: who says how long, "guess" where nobody does.
    """

    text: str
    at: float
    label: str = ""
    source: str = ""
    tail: int = 0
    tail_source: str = ""

    @property
    def open(self) -> bool:
        """Whether no year is named."""
        return self.text == OPEN

    @property
    def hard(self) -> bool:
        """Whether it rules out the years beyond it."""
        return not self.open and self.tail == 0

    @property
    def doubt(self) -> float:
        """The weight that is left beyond its tail."""
        return DOUBT[self.label] if self.tail else 0.0


def read_edge(text: str) -> tuple[int, str] | None:
    """How hard an end is, as written: (years of its tail, who says so); None for any other text."""
    if text == HARD:
        return 0, ""
    tail = TAIL.fullmatch(text)
    return (int(tail[1]), tail[2]) if tail else None


def _end(text: str, at: float, said: tuple[str, str, str]) -> End:
    label, source, edge = said
    tail, tail_source = read_edge(edge) or (0, "")
    return End(text, at, label, source, tail, tail_source)


def years_of(row: MarkRow) -> tuple[float, float]:
    """From when and until when, in decimal years; infinite where open. Raises YearsError."""
    start = float("-inf") if row.earliest == OPEN else read_years(row.earliest).earliest
    end = float("inf") if row.latest == OPEN else read_years(row.latest).latest
    return start, end


def ends_of(row: MarkRow) -> tuple[End, End]:
    """The earliest and the latest end of a row without mistakes."""
    start, end = years_of(row)
    return (
        _end(row.earliest, start, (row.from_label, row.from_source, row.from_edge)),
        _end(row.latest, end, (row.to_label, row.to_source, row.to_edge)),
    )


def window_of(row: MarkRow) -> Window:
    """The row as shares are reckoned from it."""
    first, last = ends_of(row)
    return {
        "state": row.state,
        "start": max(first.at, -FAR),
        "end": min(last.at, FAR),
        "rise": first.tail,
        "fall": last.tail,
        "low_before": first.doubt,
        "low_after": last.doubt,
    }
