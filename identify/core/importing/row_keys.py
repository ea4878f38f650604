"""A name for each row that stays the same when the list is imported again: the list's own number of
the row, if it has one; else number and words, and of equal rows which one it is.
"""

from collections.abc import Sequence

from ..edtf import padded
from ..look_up import plain, words
from ..native.values import unaccented
from ..types.importing import CellsRow, Keys, RowName
from .column_headings import generic
from .own_tables import unguarded
from .text_parts import joined_by, quoted, rows_listed, without_blanks

OWN_KEY = "record:"
WORDY = ["name", "description", "variant"]
MOST_TWICE = 10  # numbers that come twice and are told one by one


def under(fields: Sequence[str], cells: Sequence[str], wanted: Sequence[str]) -> str:
    """The cells of a row in the columns of some fields."""
    out: list[str] = []
    count = min(len(fields), len(cells))
    for place in range(count):
        cell = without_blanks(cells[place])
        if cell != "" and generic(fields[place]) in wanted:
            out.append(cell)
    return joined_by(out, " ")


def name_of_row(sort: str, fields: Sequence[str], row: CellsRow) -> RowName:
    """What a row may be known by again. fields: of each column."""
    own = ""
    for place in range(len(fields)):
        if fields[place] == "=record" and place < len(row["cells"]) and own == "":
            own = without_blanks(unguarded(row["cells"][place]))
    number = under(fields, row["cells"], ["number"])
    named = joined_by(words(under(fields, row["cells"], ["range"])), " ")
    said = joined_by(words(unaccented(under(fields, row["cells"], WORDY))), " ")
    return {
        "own": own,
        "numbered": under(fields, row["cells"], ["row_id"]),
        "number": number,
        "said": sort + ":" + plain(number) + "|" + named + "|" + said,
    }


def keys_of(sort: str, names: Sequence[RowName], rows: Sequence[CellsRow]) -> Keys:
    """The keys of all rows of a table, and sentences about numbers that come twice."""
    counts: dict[str, int] = {}
    seen: dict[str, int] = {}
    keys: list[str] = []
    owns = 0
    for name in names:
        owns = owns + 1 if name["own"] != "" else owns
        counts["n" + name["numbered"]] = counts.get("n" + name["numbered"], 0) + 1
    for name in names:
        if name["own"] != "":
            keys.append(OWN_KEY + name["own"])
        elif name["numbered"] != "" and counts["n" + name["numbered"]] == 1:
            keys.append(sort + ":row " + name["numbered"])
        else:
            again = seen.get("s" + name["said"], 0) + 1
            seen["s" + name["said"]] = again
            keys.append(name["said"] + "|" + padded(again, 1))
    if owns > 0:
        return {"keys": keys, "notes": records_twice([named["own"] for named in names])}
    notes = numbers_twice("The list's own number", [named["numbered"] for named in names], rows)
    for note in numbers_twice("The number", [named["number"] for named in names], rows):
        notes.append(note)
    return {"keys": keys, "notes": notes}


def records_twice(texts: Sequence[str]) -> list[str]:
    """Sentences about records that come more than once."""
    counts: dict[str, int] = {}
    each: list[str] = []
    for text in texts:
        if text != "":
            count = counts.get("r" + text, 0)
            if count == 0:
                each.append(text)
            counts["r" + text] = count + 1
    return [
        "The record " + record + " comes " + padded(counts["r" + record], 1)
        + " times: each row would change it, and the last one counts."
        for record in each
        if counts["r" + record] > 1
    ]  # fmt: skip


def numbers_twice(what: str, texts: Sequence[str], rows: Sequence[CellsRow]) -> list[str]:
    """Sentences about numbers that come more than once."""
    places: dict[str, int] = {}
    each: list[str] = []
    rows_of: list[list[int]] = []
    for n in range(len(texts)):
        if texts[n] != "":
            place = places.get("t" + texts[n], -1)
            if place < 0:
                place = len(each)
                places["t" + texts[n]] = place
                each.append(texts[n])
                rows_of.append([])
            rows_of[place].append(rows[n]["row"])
    again = [at for at in range(len(each)) if len(rows_of[at]) > 1]
    notes = [
        what + " " + quoted(each[twice]) + " is in " + rows_listed(rows_of[twice])
        + ": each makes a record of its own."
        for twice in again[0:MOST_TWICE]
    ]  # fmt: skip
    if len(again) > MOST_TWICE:
        notes.append(padded(len(again) - MOST_TWICE, 1) + " more numbers come more than once.")
    return notes
