"""Guessing what the columns of a table are, by their headings and by what is in them."""

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass
from functools import cache
from typing import Any

from rapidfuzz import fuzz, process

from identify.core.amounts import read_money
from identify.core.look_up import plain
from identify.exchange.dates import order_of, read_date
from identify.exchange.fields import BY_ID, FIELDS, TYPES
from identify.exchange.own_tables import field_named, is_own
from identify.exchange.reference import Reference, stems, unzeroed
from identify.exchange.safe_cells import unguarded
from identify.exchange.table import CellError, Row, Table, letters, quoted
from identify.exchange.values import read_condition, read_yes

LOOKED = 400  # rows looked at, fewer where there are many columns
MOST_LOOKED = 16_000  # cells looked at in all
LIKE = 80  # least likeness of a heading to a known one, of 100
FIRST_ROWS = 20  # rows among which the headings are looked for
BY_CONTENT = 0.75  # how far a column is trusted that is known by its cells only
WANTED = re.compile(r"want|wish|looking|such|gesucht|recherche|gezocht|missing|fehl", re.I)
NOTED = re.compile(r"stall|table|asked|swap ?meet|notebook", re.I)
WRONG = "what is wrong"  # the first column of the file of failed rows


@dataclass
class Column:
    """A column and what it seems to be: a field's id ("" none), how sure, and why in words."""

    name: str
    field: str
    sure: float
    why: str
    order: str


@dataclass
class Guess:
    """A table with its columns: see README.md."""

    header: int
    own: bool
    sort: str
    columns: list[Column]
    rows: list[Row]
    notes: list[str]


def simple(heading: str) -> str:
    """A heading in lower case, without signs and what stands in brackets."""
    bare = re.sub(r"[(\[].*?[)\]]", " ", heading.lower()) or heading.lower()
    return " ".join(re.sub(r"[^\w°'?]+", " ", bare).split())


@cache
def _known() -> dict[str, str]:
    """Every known heading, simple, and its field."""
    return {simple(heading): one.id for one in FIELDS for heading in one.headings}


@cache
def by_heading(heading: str) -> tuple[str, float]:
    """The field that a heading names, and how alike it is to a known one (0 to 1)."""
    text = simple(heading)
    known = _known()
    if text in known:
        return known[text], 1.0
    if len(text) < 4:
        return "", 0.0
    best = process.extractOne(text, known.keys(), scorer=fuzz.ratio, score_cutoff=LIKE)
    if best is not None:
        return known[best[0]], best[1] / 100
    within = [one for one in known if len(one) > 3 and set(one.split()) <= set(text.split())]
    if within:
        return known[max(within, key=len)], LIKE / 100
    return "", 0.0


# ---- the row of headings -------------------------------------------------------------------------


def header_of(rows: list[Row]) -> int:
    """The row of the file that holds the headings, 0 for none."""
    best, heading = 1.0, 0
    for row in rows[:FIRST_ROWS]:
        cells = [cell for cell in row.cells if cell.strip()]
        score = sum(by_heading(cell)[1] for cell in cells if len(cell) < 60)
        if score > best and score >= 0.3 * len(cells):
            best, heading = score, row.row
    if heading:
        return heading
    first, later = rows[0], rows[1:FIRST_ROWS]
    wordy = all(cell.strip() and not re.search(r"\d", cell) for cell in first.cells)
    figures = any(re.search(r"\d", cell) for row in later for cell in row.cells)
    return first.row if wordy and figures and len(set(first.cells)) == len(first.cells) else 0


def _headed(table: Table, header: int) -> tuple[list[str], list[Row], list[str]]:
    """The names of the columns, the rows below, and what to say of rows above."""
    width = max(len(row.cells) for row in table.rows)
    names = [""] * width
    notes = []
    for row in table.rows:
        if row.row == header:
            names = [" ".join(cell.split()) for cell in row.cells] + [""] * width
    above = [row for row in table.rows if row.row < header]
    if above:
        notes.append(
            f"The headings are in row {header}. What is above it was left out: "
            f"{quoted(' '.join(cell for row in above for cell in row.cells if cell))}."
        )
    if header == 0:
        notes.append("No row of headings was found: the columns have letters.")
    full = []
    for place in range(width):
        name = names[place] or f"Column {letters(place)}"
        while name in full:
            name = f"{name} ({letters(place)})"
        full.append(name)
    rows = [Row(row.row, row.cells) for row in table.rows if row.row > header]
    return full, rows, notes


# ---- what the cells say --------------------------------------------------------------------------


def _share(cells: list[str], fits: Callable[[str], bool]) -> float:
    counts = Counter(cells)
    fitting = sum(count for cell, count in counts.items() if fits(cell))
    return fitting / len(cells) if cells else 0.0


def _reads(read: Callable[[str], Any], cell: str) -> bool:
    try:
        return bool(read(cell))
    except CellError:
        return False


def contents(cells: list[str], reference: Reference) -> dict[str, float]:
    """How large a share of a column's cells each field could hold."""
    numbers = {entry.plain for entry in reference.entries}
    bare = {entry.unzeroed for entry in reference.entries}
    money = re.compile(r"[£€$¥]|\d[.,]\d\d$|\d+/(?:-|\d)|\b(?:gbp|eur|usd|s|d|gns)\b", re.I)
    return {
        "number": _share(cells, lambda c: plain(c) in numbers or unzeroed(c) in bare),
        "price": _share(
            cells, lambda c: money.search(c) is not None and not read_money(c, "GBP")["problem"]
        ),
        "when": _share(cells, lambda c: re.search(r"\d", c) is not None and _dated(c)),
        "condition": _share(cells, lambda c: _reads(lambda t: read_condition(t)[0], c)),
        "boxed": _share(cells, lambda c: _reads(read_yes, c)),
        "name": _share(cells, lambda c: _names_item(c, reference)),
    }


def _dated(cell: str) -> bool:
    try:
        return bool(read_date(cell, "day"))
    except CellError:
        return False


def _names_item(cell: str, reference: Reference) -> bool:
    """Whether a text has at least two words, or all its words, from the names of items."""
    said = stems(cell)
    known = sum(word in reference.rarity for word in said)
    return known >= 2 or (0 < known == len(said))


# ---- both together -------------------------------------------------------------------------------


def guess(table: Table, reference: Reference, name: str = "", header: int | None = None) -> Guess:
    """What the columns of a table seem to be.

    name: of the file, for what the rows are. header: the row of headings (0: none), if it is known.
    """
    at = header_of(table.rows) if header is None else header
    names, rows, notes = _headed(table, at)
    if WRONG in (simple(name) for name in names):  # rows that were given back
        names = [unguarded(one) for one in names]
        rows = [Row(row.row, [unguarded(cell) for cell in row.cells]) for row in rows]
    if is_own(names):
        columns = [Column(n, f"={f}" if (f := field_named(n)) else "", 1.0, "", "") for n in names]
        return Guess(at, True, "", columns, rows, [])
    texts = []
    some = rows[: min(LOOKED, MOST_LOOKED // len(names))]
    for place in range(len(names)):
        column = (row.cells[place].strip() for row in some if place < len(row.cells))
        texts.append([cell for cell in column if cell])
    columns = _assigned(names, texts, reference)
    for place, one in enumerate(columns):
        if one.field == "when":
            every = (row.cells[place] for row in rows if place < len(row.cells))
            one.order = order_of(every)
    above = " ".join(cell for row in table.rows if row.row < at for cell in row.cells)
    about = f"{name} {table.sheet} {above}"
    sort = "want" if WANTED.search(about) else "note" if NOTED.search(about) else "piece"
    if sort not in TYPES:
        sort = "piece"
    return Guess(at, False, sort, columns, rows, notes)


def _assigned(names: list[str], texts: list[list[str]], reference: Reference) -> list[Column]:
    """Every column with its field; a field goes to the column that counts most for it."""
    offers = []
    for place, name in enumerate(names):
        headed, like = by_heading(name)
        shares = contents(texts[place], reference)
        for field, share in shares.items():
            if share >= 0.6 and field != headed:
                offers.append((BY_CONTENT * share, place, field, _by_cells(field, share)))
        if headed:
            trust = 0.8 + 0.2 * shares[headed] if headed in shares and texts[place] else 0.9
            offers.append((like * trust, place, headed, f"The heading says {quoted(name)}."))
    columns: dict[int, Column] = {}
    taken: set[str] = set()
    for sure, place, field, why in sorted(offers, key=lambda offer: (-offer[0], offer[1])):
        if place not in columns and (field not in taken or field == "notes"):
            taken.add(field)
            columns[place] = Column(names[place], field, round(sure, 2), why, "")
    rest = "This column was not recognised: it goes into the notes."
    for place, name in enumerate(names):
        if simple(name) == WRONG or not texts[place]:
            columns[place] = Column(name, "", 1.0, "Left out.", "")
        elif place not in columns:
            columns[place] = Column(name, "notes", 0.3, rest, "")
    return [columns[place] for place in range(len(names))]


def _by_cells(field: str, share: float) -> str:
    what = BY_ID[field].name.lower()
    return f"{share:.0%} of its cells could be this: {what}."
