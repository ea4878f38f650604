"""A text as a table: what parts its cells, and the cells (RFC 4180).

The sign that parts cells is the one that gives most rows the same number of them, the same as the
heading has: decimal commas and commas in sentences do not come up that evenly.
"""

from collections.abc import Sequence

from ..edtf import padded
from ..types.importing import CellsRow, FileTable
from ..types.tables import Parsing
from .text_parts import begins, ends, in_thousands, rows_listed, without_blanks, without_signs

DELIMITERS = ["\t", ";", "|", ",", "^", "~", ":"]  # of equals, the first
INSIDE_CELLS = "^~:"  # these come up inside cells
TRIED = 300  # rows looked at for the delimiter
BEGINNING = 400_000  # characters that these are looked for in
NO_PLAIN_TEXT = "This is not a table in plain text. Save it as CSV or XLSX, and choose that file."
LONGEST_CELL = 100_000  # a cell in quotation marks that never end is no cell
MOST_ROWS = 20_000
LINES_A_ROW = 10  # lines of a text that are looked at for each row that can be taken
MOST_COLUMNS = 500
ENDS_OF_LINES = "\r\n"


def unparsed(text: str, delimiter: str) -> Parsing:
    """A text of which nothing was parsed yet."""
    return {"text": text, "delimiter": delimiter, "at": 0, "rows": [], "filled": 0, "loose": []}


def line_end(text: str, start: int) -> int:
    """Where the line that begins here ends, before its line end."""
    at = start
    while at < len(text) and text[at] != "\n" and text[at] != "\r":
        at = at + 1
    return at


def after_line(text: str, end: int) -> int:
    """Where the next line begins."""
    return end + 2 if text[end : end + 2] == "\r\n" else end + 1


def bare_cell(cell: str) -> str:
    """A cell without the quotation marks round it."""
    first = 1 if begins(cell, '"') else 0
    last = len(cell) - 1 if ends(cell, '"') and len(cell) > first else len(cell)
    return cell[first:last]


def line_as_it_stands(line: str, delimiter: str) -> list[str]:
    """The cells of a line whose quotation marks mean nothing."""
    out: list[str] = []
    start = 0
    for at in range(len(line)):
        if line[at] == delimiter:
            out.append(bare_cell(line[start:at]))
            start = at + 1
    out.append(bare_cell(line[start:]))
    return out


def quoted_end(text: str, start: int) -> int:
    """Where the quotation that begins here ends, at its mark; -1 where it does not."""
    at = start + 1
    last = min(len(text), start + LONGEST_CELL)
    while at < last:
        if text[at] == '"':
            if text[at + 1 : at + 2] != '"':
                return at
            at = at + 1
        at = at + 1
    return -1


def single_marks(text: str) -> str:
    """What stands between quotation marks, with each doubled one inside as one."""
    out = ""
    start = 0
    at = 0
    while at < len(text):
        if text[at] == '"':
            out = out + text[start : at + 1]
            at = at + 1
            start = at + 1
        at = at + 1
    return out + text[start:]


def parse_row(parsing: Parsing) -> None:
    """Parses the next row; where its quotation marks do not match, its line as it stands."""
    text = parsing["text"]
    delimiter = parsing["delimiter"]
    begun = parsing["at"]
    cells: list[str] = []
    at = begun
    going = True
    while going:
        cell = ""
        if text[at : at + 1] == '"':
            end = quoted_end(text, at)
            after = text[end + 1 : end + 2]
            if end < 0 or (after not in ["", delimiter] and after not in ENDS_OF_LINES):
                end = line_end(text, begun)
                parsing["rows"].append(line_as_it_stands(text[begun:end], delimiter))
                parsing["loose"].append(len(parsing["rows"]))
                parsing["at"] = after_line(text, end)
                return
            cell = single_marks(text[at + 1 : end])
            at = end + 1
        else:
            start = at
            while at < len(text) and text[at] != delimiter and text[at] not in ENDS_OF_LINES:
                at = at + 1
            cell = text[start:at]
        cells.append(cell)
        going = at < len(text) and text[at] == delimiter
        if going:
            at = at + 1
    parsing["at"] = after_line(text, at)
    parsing["rows"].append([] if len(cells) == 1 and cells[0] == "" else cells)


def parse_on(parsing: Parsing, most: int) -> None:
    """Parses so many rows more, or what is left of them."""
    count = 0
    while count < most and parsing["at"] < len(parsing["text"]):
        parse_row(parsing)
        if is_filled(parsing["rows"][len(parsing["rows"]) - 1]):
            parsing["filled"] = parsing["filled"] + 1
        count = count + 1


def parsed_whole(parsing: Parsing) -> bool:
    """Whether a text was parsed to its end, or to more rows than can be taken."""
    whole = parsing["at"] >= len(parsing["text"]) or parsing["filled"] > MOST_ROWS
    return whole or len(parsing["rows"]) > LINES_A_ROW * MOST_ROWS


def is_filled(cells: Sequence[str]) -> bool:
    """Whether one of these cells holds more than blanks."""
    for cell in cells:
        if without_blanks(cell) != "":
            return True
    return False


def usual_width(widths: Sequence[int], wider: bool) -> list[int]:
    """The width that most rows have and how many do; of equal ones the widest where `wider` is
    true, else the first.
    """
    counts: dict[str, int] = {}
    best = 0
    many = 0
    for width in widths:
        name = "w" + padded(width, 1)
        counts[name] = counts.get(name, 0) + 1
    for width in widths:
        count = counts["w" + padded(width, 1)]
        if count > many or (count == many and wider and width > best):
            many = count
            best = width
    return [best, many]


def evenness(text: str, delimiter: str) -> float:
    """How evenly a sign parts the rows of a text, 0 where it parts none."""
    parsing = unparsed(text, delimiter)
    parse_on(parsing, TRIED)
    rows = [row for row in parsing["rows"] if len([cell for cell in row if cell != ""]) > 0]
    wide = [len(row) for row in rows if len(row) > 1]
    if len(wide) == 0:
        return 0.0
    usual = usual_width(wide, True)
    score = usual[1] / len(rows) + (0.25 if len(rows[0]) == usual[0] else 0.0)
    score = score + 0.02 * min(usual[0], 10)
    return score - 0.5 if delimiter in INSIDE_CELLS else score


def delimiter_of(text: str) -> str:
    """What parts the cells of a text; "," where nothing does."""
    best = 0.0
    chosen = ","
    start = text[0:BEGINNING]
    for delimiter in DELIMITERS:
        score = evenness(start, delimiter)
        if score > best:
            best = score
            chosen = delimiter
    return chosen


def no_text_in(text: str) -> str:
    """Why a text is none: it holds more control characters than any table; "" where it is one."""
    start = text[0:20_000]
    odd = 0
    for c in start:
        if c < " " and c not in "\t\r\n\u000c\u001a":
            odd = odd + 1
    return NO_PLAIN_TEXT if odd > 5 + len(start) // 100 else ""


def begun_table(text: str) -> Parsing:
    """A text of which the table is to be parsed, by what it says of itself or what parts it."""
    whole = without_signs(text, "\u001a") if ends(text, "\u001a") else text
    end = line_end(whole, 0)
    first = without_blanks(whole[0:end])
    if len(first) == 5 and begins(first.upper(), "SEP="):
        parsing = unparsed(whole, first[4:5])
        parsing["at"] = after_line(whole, end)
        parsing["rows"] = [[]]
        return parsing
    return unparsed(whole, delimiter_of(whole))


def table_parsed(parsing: Parsing) -> FileTable:
    """The table of a text that was parsed to its end, with what is odd about it."""
    rows: list[CellsRow] = []
    notes: list[str] = []
    for n in range(len(parsing["rows"])):
        if is_filled(parsing["rows"][n]):
            rows.append({"row": n + 1, "cells": parsing["rows"][n]})
    if len(parsing["loose"]) > 0:
        notes.append(
            "Quotation marks do not match in " + rows_listed(parsing["loose"])
            + ": taken as part of the text. The file may be cut short."
        )  # fmt: skip
    usual = usual_width([len(row["cells"]) for row in rows], False)[0]
    last = len(rows) - 1
    text = parsing["text"]
    open_end = not ends(text, "\n") and not ends(text, "\r")
    if len(rows) > 2 and open_end and len(rows[last]["cells"]) < usual:
        notes.append(
            "The last row, " + padded(rows[last]["row"], 1) + ", has "
            + padded(len(rows[last]["cells"]), 1) + " cells and no line end, where others have "
            + padded(usual, 1) + ": the file may be cut short."
        )  # fmt: skip
    wide = [row for row in rows if is_filled(row["cells"][usual:])]
    if len(wide) > 0 and 2 * len(wide) <= len(rows) and usual <= MOST_COLUMNS:
        more = " and " + padded(len(wide) - 1, 1) + " more have" if len(wide) > 1 else " has"
        notes.append(
            "Row " + padded(wide[0]["row"], 1) + more + " more cells than the " + padded(usual, 1)
            + " of the others: text with a comma in it may need quotation marks. The rest is in "
            + "columns of its own."
        )  # fmt: skip
    return {"rows": rows, "notes": notes, "sheet": "", "sheets": [], "wrong": ""}


def too_large(rows: Sequence[CellsRow]) -> str:
    """Why a table of that size cannot be taken, "" where it can."""
    if len(rows) == 0:
        return "There is nothing in this table. Choose a file with a row for each piece."
    if len(rows) > MOST_ROWS:
        most = in_thousands(MOST_ROWS)
        return "This table has more than " + most + " rows. Split it into several files."
    widest = rows[0]
    for row in rows:
        if len(row["cells"]) > len(widest["cells"]):
            widest = row
    if len(widest["cells"]) > MOST_COLUMNS:
        return (
            "Row " + padded(widest["row"], 1) + " has " + in_thousands(len(widest["cells"]))
            + " columns, and at most " + padded(MOST_COLUMNS, 1)
            + " are read. Remove the columns that say nothing about the pieces."
        )  # fmt: skip
    return ""
