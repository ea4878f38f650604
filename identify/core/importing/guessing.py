"""Guessing what the columns of a table are, by their headings and by what is in them."""

from collections.abc import Sequence

from ..edtf import padded
from ..look_up import plain, slips
from ..types.importing import (
    CellRead,
    CellsRow,
    ColumnOffer,
    ColumnShares,
    FileTable,
    Headed,
    ReadColumn,
    ReadTable,
    Reference,
)
from .cell_dates import order_of_dates, read_when
from .cell_values import is_in_word, looks_like_money, read_condition, read_price, read_yes
from .column_headings import LIST_HEADINGS, list_field, list_fields
from .item_words import place_of_word, stems, unzeroed
from .own_tables import field_named, is_own, unguarded
from .text_parts import (
    blank_parted,
    column_letters,
    is_figure_in,
    joined_by,
    one_line,
    quoted,
    without_blanks,
)

LOOKED_ROWS = 400  # rows looked at, fewer where there are many columns
LOOKED_CELLS = 16_000  # cells looked at in all
LIKE_HEADING = 0.8  # least likeness of a heading to a known one
TOP_ROWS = 20  # rows among which the headings are looked for
LONGEST_HEADING = 60
MOST_NOTES = 40  # sentences about one file
BY_CONTENT = 0.75  # how far a column is trusted that is known by its cells only
CONTENT_LEAST = 0.6
BY_CELLS = ["number", "price", "when", "condition", "boxed", "name"]
FOR_WANTS = [
    "WANT",
    "WISH",
    "LOOKING",
    "SUCH",
    "GESUCHT",
    "RECHERCHE",
    "GEZOCHT",
    "MISSING",
    "FEHL",
]
FOR_NOTES = ["STALL", "TABLE", "ASKED", "SWAPMEET", "SWAP MEET", "NOTEBOOK"]
WRONG_HEADING = "WHAT IS WRONG"  # the first column of the file of failed rows
# of a field that its cells can tell, its name within a sentence
WITHIN: list[list[str]] = [
    ["Catalogue number", "catalogue number"], ["Price", "price"], ["When", "when"],
    ["Condition", "condition"], ["Box, yes or no", "box, yes or no"], ["What it is", "what it is"],
]  # fmt: skip


def without_brackets(text: str) -> str:
    """A text with a space for each part in brackets."""
    out = ""
    at = 0
    while at < len(text):
        end = at
        if text[at] == "(" or text[at] == "[":
            end = at + 1
            while end < len(text) and text[end] != ")" and text[end] != "]":
                end = end + 1
        if end > at and end < len(text):
            out = out + " "
            at = end + 1
        else:
            out = out + text[at]
            at = at + 1
    return out


def simple_heading(heading: str) -> str:
    """A heading in capitals, without signs and what stands in brackets."""
    whole = heading.upper()
    kept = without_brackets(whole)
    out = ""
    for c in kept if without_blanks(kept) != "" else whole:
        out = out + (c if is_in_word(c) or c in "°'?_" else " ")
    return one_line(out)


def has_all_words(text: str, known: str) -> bool:
    """Whether all words of a known heading are among those of a text."""
    said = blank_parted(text)
    for word in blank_parted(known):
        if word not in said:
            return False
    return True


def heading_like(text: str, known: str) -> float:
    """How alike a heading is to a known one, 0 to 1; 0 below LIKE_HEADING."""
    longest = max(len(text), len(known))
    most = int((1.0 - LIKE_HEADING) * longest + 0.001)
    apart = slips(text, known, most)
    return 1.0 - apart / longest if apart <= most else 0.0


def by_heading(heading: str) -> ColumnOffer:
    """The field that a heading names, "" for none, and how alike it is to a known one (0 to 1)."""
    text = simple_heading(heading)
    like = 0.0
    alike = ""
    longest = 0
    within = ""
    for known in LIST_HEADINGS:
        for written in known[1:]:
            simple = simple_heading(written)
            if simple == text:
                return {"sure": 1.0, "place": 0, "field": known[0], "why": ""}
            if len(text) >= 4:
                near = heading_like(text, simple)
                if near > like:
                    like = near
                    alike = known[0]
                if len(simple) > 3 and len(simple) > longest and has_all_words(text, simple):
                    longest = len(simple)
                    within = known[0]
    if alike != "":
        return {"sure": like, "place": 0, "field": alike, "why": ""}
    return {"sure": LIKE_HEADING if within != "" else 0.0, "place": 0, "field": within, "why": ""}


def full_cells(cells: Sequence[str]) -> list[str]:
    """The cells that hold more than blanks."""
    return [cell for cell in cells if without_blanks(cell) != ""]


def is_wordy(cells: Sequence[str]) -> bool:
    """Whether each of these cells holds words, no figures, and no two are the same."""
    seen: list[str] = []
    for cell in cells:
        if without_blanks(cell) == "" or is_figure_in(cell) or cell in seen:
            return False
        seen.append(cell)
    return True


def header_of(rows: Sequence[CellsRow]) -> int:
    """The row of the file that holds the headings, 0 for none."""
    best = 1.0
    heading = 0
    for row in rows[0:TOP_ROWS]:
        if is_own(row["cells"]):
            return row["row"]  # however many columns long texts were given
        cells = full_cells(row["cells"])
        score = 0.0
        for cell in cells:
            if len(cell) < LONGEST_HEADING:
                score = score + by_heading(cell)["sure"]
        if score > best and score >= 0.3 * len(cells):
            best = score
            heading = row["row"]
    if heading > 0 or not is_wordy(rows[0]["cells"]):
        return heading
    for row in rows[1:TOP_ROWS]:
        for cell in row["cells"]:
            if is_figure_in(cell):
                return rows[0]["row"]
    return 0


def texts_above(table: FileTable, header: int) -> str:
    """What stands above the headings."""
    texts: list[str] = []
    for row in table["rows"]:
        if row["row"] < header:
            for cell in row["cells"]:
                if cell != "":
                    texts.append(cell)
    return joined_by(texts, " ")


def headed(table: FileTable, asked: int) -> Headed:
    """The names of the columns and the rows below. asked: the row of headings where it is known,
    0 for none, -1 where it is to be found.
    """
    header = header_of(table["rows"]) if asked < 0 else asked
    width = 0
    for line in table["rows"]:
        width = max(width, len(line["cells"]))
    notes: list[str] = []
    headings: list[str] = []
    for line in table["rows"]:
        if line["row"] == header:
            headings = [one_line(cell) for cell in line["cells"]]
    above = texts_above(table, header)
    if len([row for row in table["rows"] if row["row"] < header]) > 0:
        notes.append(
            "The headings are in row " + padded(header, 1)
            + ". What is above it was left out: " + quoted(above) + "."
        )  # fmt: skip
    if header == 0:
        notes.append("No row of headings was found: the columns have letters.")
    names: list[str] = []
    for place in range(width):
        name = headings[place] if place < len(headings) else ""
        name = name if name != "" else "Column " + column_letters(place)
        while name in names:
            name = name + " (" + column_letters(place) + ")"
        names.append(name)
    rows = [row for row in table["rows"] if row["row"] > header]
    if len([text for text in names if simple_heading(text) == WRONG_HEADING]) > 0:
        names = [unguarded(text) for text in names]  # rows that were given back
        rows = [unguarded_row(row) for row in rows]
    own = is_own(names)
    out: list[str] = [] if own else notes
    return {"header": header, "own": own, "names": names, "rows": rows, "notes": out}


def unguarded_row(row: CellsRow) -> CellsRow:
    """A row with its cells no longer guarded."""
    return {"row": row["row"], "cells": [unguarded(cell) for cell in row["cells"]]}


def own_columns(names: Sequence[str]) -> list[ReadColumn]:
    """The columns of a table that this app wrote."""
    out: list[ReadColumn] = []
    for name in names:
        field = field_named(name)
        out.append(
            {
                "name": name, "field": "=" + field if field != "" else "", "sure": 1.0, "why": "",
                "order": "",
            }
        )  # fmt: skip
    return out


def sort_of_rows(table: FileTable, headed_rows: Headed, name: str) -> str:
    """What the rows seem to be, by the names of file and sheet and what stands above them; "" for
    a file of its own.
    """
    if is_own(headed_rows["names"]):
        return ""
    about = (name + " " + table["sheet"] + " " + texts_above(table, headed_rows["header"])).upper()
    for word in FOR_WANTS:
        if word in about:
            return "want"
    for word in FOR_NOTES:
        if word in about:
            return "note"
    return "piece"


# ---- what the cells say --------------------------------------------------------------------------


def cells_below(rows: Sequence[CellsRow], place: int, columns: int) -> list[str]:
    """The cells of a column that are looked at, those that hold something."""
    most = min(LOOKED_ROWS, LOOKED_CELLS // max(1, columns))
    out: list[str] = []
    for row in rows[0:most]:
        if place < len(row["cells"]):
            cell = without_blanks(row["cells"][place])
            if cell != "":
                out.append(cell)
    return out


def names_item(cell: str, reference: Reference) -> bool:
    """Whether a text has at least two words, or all its words, from the names of items."""
    said = stems(cell)
    known = len([word for word in said if place_of_word(reference, word) >= 0])
    return known >= 2 or (known > 0 and known == len(said))


def is_number_known(cell: str, reference: Reference) -> bool:
    """Whether a text is the number of an item."""
    number = plain(cell)
    bare = unzeroed(cell)
    for entry in reference["entries"]:
        if number == entry["plain"] or bare == entry["unzeroed"]:
            return True
    return False


def says(read: CellRead) -> bool:
    """Whether a cell was read and says something."""
    return len(read["value"]) > 0


def could_be(field: str, cell: str, reference: Reference) -> bool:
    """Whether a cell could be of a field."""
    if field == "number":
        return is_number_known(cell, reference)
    if field == "price":
        return looks_like_money(cell) and read_price(cell, "GBP")["wrong"] == ""
    if field == "when":
        return is_figure_in(cell) and says(read_when(cell, "day"))
    if field == "condition":
        return says(read_condition(cell))
    if field == "boxed":
        return says(read_yes(cell))
    return names_item(cell, reference)


def column_shares(cells: Sequence[str], reference: Reference) -> ColumnShares:
    """How large a share of a column's cells each field could hold."""
    out: ColumnShares = {
        "number": 0.0, "price": 0.0, "when": 0.0, "condition": 0.0, "boxed": 0.0, "name": 0.0,
        "none": 1 if len(cells) == 0 else 0,
    }  # fmt: skip
    counts: dict[str, int] = {}
    each: list[str] = []
    for cell in cells:
        count = counts.get("c" + cell, 0)
        if count == 0:
            each.append(cell)
        counts["c" + cell] = count + 1
    for cell in each:
        share = counts["c" + cell] / len(cells)
        for field in BY_CELLS:
            if could_be(field, cell, reference):
                add_share(out, field, share)
    return out


def add_share(shares: ColumnShares, field: str, share: float) -> None:
    """Adds to the share of a field."""
    shares[field] = shares[field] + share  # type: ignore[literal-required]


# ---- both together -------------------------------------------------------------------------------


def share_said(field: str, share: float) -> str:
    """Why a column is taken for a field by its cells."""
    percent = padded(int(share * 100.0 + 0.5), 1)
    what = list_field(field)[1]
    return percent + "% of its cells could be this: " + lowered_first(what) + "."


def lowered_first(text: str) -> str:
    """A name as it stands within a sentence."""
    for pair in WITHIN:
        if pair[0] == text:
            return pair[1]
    return text


def offers_of(place: int, name: str, shares: ColumnShares) -> list[ColumnOffer]:
    """The fields that a column may be."""
    out: list[ColumnOffer] = []
    heading = by_heading(name)
    for field in BY_CELLS:
        share = shares[field]  # type: ignore[literal-required]
        if share >= CONTENT_LEAST and field != heading["field"]:
            why = share_said(field, share)
            out.append({"sure": BY_CONTENT * share, "place": place, "field": field, "why": why})
    if heading["field"] != "":
        trust = 0.9
        if heading["field"] in BY_CELLS and shares["none"] == 0:
            trust = 0.8 + 0.2 * shares[heading["field"]]  # type: ignore[literal-required]
        why = "The heading says " + quoted(name) + "."
        out.append(
            {"sure": heading["sure"] * trust, "place": place, "field": heading["field"], "why": why}
        )
    return out


def column_of(name: str, field: str, sure: float, why: str) -> ReadColumn:
    """A column with what it seems to be."""
    return {"name": name, "field": field, "sure": sure, "why": why, "order": ""}


def columns_of(names: Sequence[str], shares: Sequence[ColumnShares]) -> list[ReadColumn]:
    """Every column with its field; a field goes to the column that counts most for it."""
    offers: list[ColumnOffer] = []
    out: list[ReadColumn] = []
    settled: list[int] = []
    taken: list[str] = []
    for place in range(len(names)):
        out.append(column_of(names[place], "", 0.0, ""))
        for offer in offers_of(place, names[place], shares[place]):
            offers.append(offer)
    for offer in sorted(offers, key=lambda each: -each["sure"]):
        free = offer["field"] not in taken or offer["field"] == "notes"
        if offer["place"] not in settled and free:
            taken.append(offer["field"])
            settled.append(offer["place"])
            sure = int(offer["sure"] * 100.0 + 0.5) / 100.0
            at = offer["place"]
            out[at] = column_of(names[at], offer["field"], sure, offer["why"])
    for place in range(len(names)):
        if simple_heading(names[place]) == WRONG_HEADING or shares[place]["none"] > 0:
            out[place] = column_of(names[place], "", 1.0, "Left out.")
        elif place not in settled:
            why = "This column was not recognised: it goes into the notes."
            out[place] = column_of(names[place], "notes", 0.3, why)
    return out


def with_orders(columns: list[ReadColumn], rows: Sequence[CellsRow]) -> list[ReadColumn]:
    """The columns, those of dates with what their figures tell of days and months."""
    for place in range(len(columns)):
        if columns[place]["field"] == "when":
            cells = [row["cells"][place] for row in rows if place < len(row["cells"])]
            columns[place]["order"] = order_of_dates(cells)
    return columns


def table_read(
    table: FileTable, headed_rows: Headed, shares: Sequence[ColumnShares], file_name: str
) -> ReadTable:
    """A file as a table with guessed columns, once the cells of each column were looked at."""
    columns = own_columns(headed_rows["names"])
    if not is_own(headed_rows["names"]):
        columns = with_orders(columns_of(headed_rows["names"], shares), headed_rows["rows"])
    notes = table["notes"][:]
    for note in headed_rows["notes"]:
        notes.append(note)
    return {
        "sheet": table["sheet"],
        "sheets": table["sheets"],
        "header": headed_rows["header"],
        "own": headed_rows["own"],
        "type": sort_of_rows(table, headed_rows, file_name),
        "columns": columns,
        "fields": list_fields(),
        "rows": headed_rows["rows"],
        "notes": notes[0:MOST_NOTES],
    }
