"""One row of a collector's list as a record: which item it means, and what its cells say.

Nothing is lost: what has no field of its own, or cannot be read, goes into the notes with the
heading of its column.
"""

from collections.abc import Sequence

from ..edtf import is_figures, padded
from ..look_up import words
from ..native.values import sort_of_value
from ..types.dates import DayOrder
from ..types.importing import (
    CellsSaid,
    Fields,
    Importing,
    ItemMeant,
    KeyedRow,
    Offer,
    Outcome,
    Query,
    Reference,
    RowSoFar,
)
from ..types.pack import Pack
from ..types.records import Chance
from .brought_before import WHOLE_ITEM, blank_record, item_of, put_field
from .cell_boxes import read_box
from .cell_dates import read_when, said_by_cell
from .cell_values import (
    is_in_word,
    read_condition,
    read_count,
    read_price,
    read_urgency,
)
from .fields import LIST_HEADINGS, generic, goes_to
from .item_words import engine_of, near_words, stems
from .matching import SURE, items_meant, ranges_named
from .no_piece import is_scrap, is_total
from .own_rows import MONEYS
from .text_parts import blank_parted, joined_by, quoted, without_blanks, without_signs
from .wording import rounded_share, variants_meant

TELLING = ["condition", "least", "boxed", "box", "when"]  # what only a piece has, besides money
SAYING = ["number", "name", "description", "variant", "range"]  # what a row says it is
NAMING = ["number", "name", "description", "variant"]
IN_NOTES = "It is kept in the notes."
# what a row can put into a record, besides what it is
FIELDS_IN_ROWS = [
    "condition", "least", "boxed", "box", "box_condition", "paid", "most", "asked", "asking",
    "offer", "where", "hall", "when", "table", "urgency", "notes", "text",
]  # fmt: skip


def notes_of(sort: str) -> str:
    """The field of a record that is its notes."""
    return "text" if sort == "note" else "notes"


def begun_row(about: Importing, sort: str, row: KeyedRow) -> RowSoFar:
    """A row of which nothing was read yet."""
    texts: list[CellsSaid] = []
    for place in range(len(about["columns"])):
        column = about["columns"][place]
        cell = without_blanks(row["cells"][place]) if place < len(row["cells"]) else ""
        field = generic(column["field"])
        if field != "":
            order = column.get("order", "")
            texts.append({"field": field, "name": column["name"], "cell": cell, "order": order})
    return {
        "reference": about["reference"], "sort": sort, "row": row, "texts": texts,
        "currency": about["currency"], "problems": [], "lines": [], "cells": {}, "values": {},
        "heads": {},
    }  # fmt: skip


# ---- single cells --------------------------------------------------------------------------------


def say_wrong(one: RowSoFar, name: str, sentence: str) -> None:
    """Keeps what is wrong with the cell of a column."""
    text = "Row " + padded(one["row"]["row"], 1) + ', "' + name + '": ' + sentence
    one["problems"].append({"column": name, "sentence": text})


def note_cell(one: RowSoFar, name: str, cell: str) -> None:
    """Keeps a cell in the notes, under the heading of its column."""
    if cell != "":
        one["lines"].append(name + ": " + cell)


def take_quantity(one: RowSoFar, name: str, cell: str) -> None:
    """Reads how many there are: one record is made, and the rest told."""
    read = read_count(cell)
    count = read["value"]
    if read["wrong"] != "":
        say_wrong(one, name, read["wrong"] + " One record is made.")
        note_cell(one, name, cell)
    elif count > 1:
        note_cell(one, name, cell)
        if is_figures(without_signs(cell, "x ")):
            many = padded(count, 1)
            say_wrong(
                one, name, "there are " + many + " of these. One record is made, and a note of it."
            )


def is_plain_heading(name: str) -> bool:
    """Whether a column is headed as notes are, or says nothing."""
    said = blank_parted(name)
    if len(words(name)) == 0:
        return True
    for heading in LIST_HEADINGS:
        if heading[0] == "notes":
            for known in heading[1:]:
                if known.upper() == said[0].upper():
                    return True
    return False


def take_field(one: RowSoFar, text: CellsSaid) -> None:
    """Reads a column that is a field of the record, or goes into the notes."""
    name = text["name"]
    cell = text["cell"]
    target = goes_to(text["field"], one["sort"])
    if text["field"] == "notes":
        if not is_plain_heading(name):
            note_cell(one, name, cell)
        elif cell != "":
            one["lines"].append(cell)
        return
    if target == "":
        note_cell(one, name, cell)
        return
    one["heads"][target] = name
    one["cells"][target] = cell
    wrong = take_value(one, target, name, cell, text["order"])
    if wrong != "":
        say_wrong(one, name, wrong + " " + IN_NOTES)
        note_cell(one, name, cell)


def take_value(one: RowSoFar, target: str, name: str, cell: str, order: str) -> str:
    """Reads what a cell says into its field; a sentence where it cannot be read."""
    if target in ["boxed", "box"]:
        return take_box(one, target, name, cell)
    read = said_by_cell(cell, "")
    if target in MONEYS:
        read = read_price(cell, one["currency"])
    elif target in ["condition", "least", "box_condition"]:
        read = read_condition(cell)
    elif target == "when":
        first: DayOrder = ""
        if order == "day":
            first = "day"
        elif order == "month":
            first = "month"
        read = read_when(cell, first)
    elif target == "urgency":
        read = read_urgency(cell)
    if read["wrong"] != "":
        return read["wrong"]
    if read["more"] != "":
        note_cell(one, name, read["more"])
        if read["value"].upper() not in read["more"].upper():
            say_wrong(one, name, quoted(read["more"]) + ' was taken as "' + read["value"] + '".')
    # the column of the box may have told the condition of it
    if not (target == "box_condition" and read["value"] == "" and target in one["values"]):
        one["values"][target] = read["value"]
    return ""


def take_box(one: RowSoFar, target: str, name: str, cell: str) -> str:
    """Reads whether there is a box, and in what condition; a sentence where that cannot be read."""
    read = read_box(cell)
    if read["wrong"] != "":
        return read["wrong"]
    note_cell(one, name, read["more"])
    if target == "box":
        one["values"][target] = read["has"] if read["has"] == "yes" else ""
        return ""
    if read["condition"] != "" and text_of_field(one["values"], "box_condition") == "":
        one["values"]["box_condition"] = read["condition"]
    one["values"][target] = read["has"]
    return ""


def text_of_field(values: Fields, field: str) -> str:
    """The text of a field, "" where it is not there."""
    text: str = values.get(field, "")
    return text


# ---- which item ----------------------------------------------------------------------------------


def said_under(one: RowSoFar, fields: Sequence[str]) -> list[str]:
    """The cells of some of the fields that say what it is."""
    out: list[str] = []
    for field in fields:
        for text in one["texts"]:
            if text["field"] == field and text["cell"] != "":
                out.append(text["cell"])
    return out


def cell_of(one: RowSoFar, fields: Sequence[str]) -> str:
    """The same as one text."""
    return joined_by(said_under(one, fields), ", ")


def tells(one: RowSoFar, fields: Sequence[str]) -> bool:
    """Whether one of these fields could be read and holds something."""
    for field in fields:
        if field in one["values"]:
            value = one["values"][field]
            if value is not None and not (sort_of_value(value) == "text" and value == ""):
                return True
    return False


def is_in_reference(reference: Reference, said: Sequence[str]) -> bool:
    """Whether a word of these stands in the reference, or names a range."""
    text = joined_by(said, " ")
    for word in stems(text):
        if len(near_words(reference, word)) > 0:
            return True
    return len(ranges_named(reference, text)) > 0


def has_letters(cells: Sequence[str]) -> bool:
    """Whether there is a letter or a figure in one of these cells."""
    for cell in cells:
        for c in cell.upper():
            if is_in_word(c):
                return True
    return False


def nameless(one: RowSoFar) -> str:
    """Why the row can name no piece, "" where it may."""
    number = padded(one["row"]["row"], 1)
    said = said_under(one, NAMING)
    if not has_letters(said):
        why = ": nothing says which piece this is: no number, no name, no words."
        return "Row " + number + why
    if is_total(said) and not tells(one, TELLING):
        return "Row " + number + ": this is a total, not a piece."
    return ""


def why_failed(one: RowSoFar, offered: int, chosen: int) -> str:
    """Why no record can be made of a row that has words, "" where one can."""
    number = padded(one["row"]["row"], 1)
    said = said_under(one, NAMING)
    scrap = offered == 0 and is_scrap(said)
    tells_more = tells(one, MONEYS) or tells(one, TELLING)
    if scrap and not tells_more and not is_in_reference(one["reference"], said):
        return (
            "Row " + number + ": " + quoted(joined_by(said, " "))
            + " names no piece, and nothing else in the row tells of one. If it is one, write "
            + "its number or a longer name."
        )  # fmt: skip
    if chosen < 0 and one["sort"] == "want":
        return (
            "Row " + number + ": it is not certain which number is meant, and a want needs one. "
            + "Choose one of those offered, or write its number."
        )  # fmt: skip
    return ""


def by_prior(pack: Pack, item: int) -> list[Chance]:
    """The variants of an item with the chance of each before anything is known."""
    places: list[int] = []
    chances: list[float] = []
    whole = 0.0
    for n in range(len(pack["rows"]["variant"])):
        v = pack["rows"]["variant"][n]
        if pack["variants"][v]["item"] == item:
            prior = pack["rows"]["prior"][n]
            whole = whole + prior
            at = -1
            for k in range(len(places)):
                if places[k] == v:
                    at = k
            if at < 0:
                places.append(v)
                chances.append(prior)
            else:
                chances[at] = chances[at] + prior
    order = sorted(range(len(places)), key=lambda at: -chances[at])
    return [
        {
            "variant": pack["variants"][places[one]]["id"],
            "chance": rounded_share(chances[one] / whole),
        }
        for one in order
    ]


def offered_item(one: RowSoFar, found: ItemMeant) -> Offer:
    """A candidate with the variants that the words may mean."""
    reference = one["reference"]
    entry = reference["entries"][found["entry"]]
    pack = reference["engines"][engine_of(reference, entry["pack"])]["pack"]
    text = cell_of(one, ["variant", "description", "name"])
    of: list[Chance] = []
    if text != "":
        of = variants_meant(reference, entry["pack"], entry["place"], text)
    known = of[0]["variant"] if len(of) == 1 else ""
    which = ""
    for variant in pack["variants"]:
        if variant["id"] == known:
            which = variant["name"]
    if one["sort"] == "note":
        several = of if len(of) > 0 else by_prior(pack, entry["place"])
        of = [
            {"item": entry["number"], "variant": each["variant"], "chance": each["chance"]}
            for each in several
        ]
    out: Offer = {
        "pack": entry["pack"],
        "item": entry["number"],
        "name": entry["name"],
        "sure": int(found["sure"] * 10_000.0 + 0.5) / 10_000.0,
        "how": found["how"],
        "of": of,
        "variant": known,
        "which": which,
        "sets": {},
    }
    out["sets"] = sets_of(one, [out])
    return out


def fields_of_item(one: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """The fields that say what it is: of the offer that was taken, or none."""
    out: Fields = {}
    if len(offers) == 0:
        if one["sort"] == "piece":
            out["called"] = called_by(one)
        return out
    out["pack"] = offers[0]["pack"]
    if one["sort"] != "note":
        out["item"] = offers[0]["item"]
    if one["sort"] == "want":
        out["variant"] = offers[0]["variant"]
    else:
        out["of"] = offers[0]["of"]
    return out


def called_by(one: RowSoFar) -> str:
    """What the row calls the piece."""
    parts = [cell_of(one, ["number"]), cell_of(one, ["name"])]
    called = joined_by([part for part in parts if part != ""], " ")
    return called if called != "" else cell_of(one, ["description", "variant"])


def sets_of(one: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """All fields that say what it is, as they are once this one, or none, was chosen."""
    empty = blank_record(one["sort"])
    names = ["pack", "item", "of", "called"]
    if one["sort"] == "note":
        names = ["pack", "of"]
    elif one["sort"] == "want":
        names = ["pack", "item", "variant"]
    out: Fields = {}
    for name in names:
        out[name] = empty[name]
    put_field(out, WHOLE_ITEM, fields_of_item(one, offers))
    return out


def keep_words(one: RowSoFar, record: Fields, matched: bool) -> None:
    """Puts into the notes what was said of the item and is not kept in a field."""
    unsure = not matched
    if one["sort"] == "want":
        unsure = unsure or record["variant"] == ""
    else:
        unsure = unsure or len(record["of"]) != 1
    lines: list[str] = []
    for text in one["texts"]:
        field = text["field"]
        kept = field == "description" or (field == "variant" and unsure)
        if field == "range" and not matched:
            kept = len(ranges_named(one["reference"], text["cell"])) == 0
        if field in ["number", "name"] and not matched:
            kept = one["sort"] == "note"
        if text["cell"] != "" and kept:
            lines.append(text["name"] + ": " + text["cell"])
    for line in one["lines"]:
        lines.append(line)
    one["lines"] = lines


def read_row(one: RowSoFar) -> None:
    """Reads the cells that do not say what it is."""
    for text in one["texts"]:
        if text["field"] == "quantity":
            take_quantity(one, text["name"], text["cell"])
        elif text["field"] not in SAYING and text["field"] != "row_id":
            take_field(one, text)


def written_record(one: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """The record that a row makes, with what it came from."""
    record = blank_record(one["sort"])
    put_field(record, WHOLE_ITEM, fields_of_item(one, offers))
    keep_words(one, record, len(offers) > 0)
    said = [text["cell"] for text in one["texts"] if text["field"] in SAYING]
    one["cells"][WHOLE_ITEM] = joined_by(said, " | ")
    one["values"][WHOLE_ITEM] = item_of(record)
    notes = notes_of(one["sort"])
    one["cells"][notes] = joined_by(one["lines"], "\n")
    one["values"][notes] = one["cells"][notes]
    came: Fields = {"key": one["row"]["key"], "cells": one["cells"], "values": one["values"]}
    for field in FIELDS_IN_ROWS:
        if field in one["values"]:
            record[field] = one["values"][field]
    record["came"] = came
    return record


def outcome_of(about: Importing, sort: str, row: KeyedRow) -> Outcome:
    """What becomes of a row that this app did not write."""
    one = begun_row(about, sort, row)
    read_row(one)
    failed = nameless(one)
    offered: list[Offer] = []
    if failed == "":
        query: Query = {
            "number": cell_of(one, ["number"]),
            "name": cell_of(one, ["name"]),
            "description": cell_of(one, ["description", "variant"]),
            "range": cell_of(one, ["range"]),
        }
        offered = [offered_item(one, found) for found in items_meant(one["reference"], query)]
    chosen = -1
    if len(offered) > 0 and offered[0]["sure"] >= SURE:
        chosen = 0
    if failed == "":
        failed = why_failed(one, len(offered), chosen)
    record = written_record(one, offered[0:1] if chosen == 0 else [])
    nothing: Fields | None = None
    hopeless = failed != "" and len(offered) == 0
    return {
        "row": row["row"],
        "key": row["key"],
        "failed": failed,
        "record": record if failed == "" else nothing,
        "if_chosen": record if failed != "" and not hopeless else nothing,
        "candidates": offered,
        "none": sets_of(one, []),
        "chosen": chosen,
        "sure": offered[0]["sure"] if chosen == 0 else 0.0,
        "problems": [] if hopeless else one["problems"],
        "same": None,
    }
