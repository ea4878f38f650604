"""One row of a collector's list as a record: which item it means, and what its cells say.

Nothing is lost: what has no field of its own, or cannot be read, goes into the notes with the
heading of its column.
"""

from collections.abc import Sequence

from ..edtf import is_figures, padded
from ..lists import add_to
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
from .column_headings import LIST_HEADINGS, generic, goes_to
from .item_words import engine_of, near_words, stems
from .matching import SURE, items_meant, ranges_named
from .no_piece import is_scrap, is_total
from .own_tables import MONEYS
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


def say_wrong(draft: RowSoFar, name: str, sentence: str) -> None:
    """Keeps what is wrong with the cell of a column."""
    text = "Row " + padded(draft["row"]["row"], 1) + ', "' + name + '": ' + sentence
    draft["problems"].append({"column": name, "sentence": text})


def note_cell(draft: RowSoFar, name: str, cell: str) -> None:
    """Keeps a cell in the notes, under the heading of its column."""
    if cell != "":
        draft["lines"].append(name + ": " + cell)


def take_quantity(draft: RowSoFar, name: str, cell: str) -> None:
    """Reads how many there are: one record is made, and the rest told."""
    read = read_count(cell)
    count = read["value"]
    if read["wrong"] != "":
        say_wrong(draft, name, read["wrong"] + " One record is made.")
        note_cell(draft, name, cell)
    elif count > 1:
        note_cell(draft, name, cell)
        if is_figures(without_signs(cell, "x ")):
            many = padded(count, 1)
            say_wrong(
                draft,
                name,
                "there are " + many + " of these. One record is made, and a note of it.",
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


def take_field(draft: RowSoFar, text: CellsSaid) -> None:
    """Reads a column that is a field of the record, or goes into the notes."""
    name = text["name"]
    cell = text["cell"]
    target = goes_to(text["field"], draft["sort"])
    if text["field"] == "notes":
        if not is_plain_heading(name):
            note_cell(draft, name, cell)
        elif cell != "":
            draft["lines"].append(cell)
        return
    if target == "":
        note_cell(draft, name, cell)
        return
    draft["heads"][target] = name
    draft["cells"][target] = cell
    wrong = take_value(draft, target, name, cell, text["order"])
    if wrong != "":
        say_wrong(draft, name, wrong + " " + IN_NOTES)
        note_cell(draft, name, cell)


def take_value(draft: RowSoFar, target: str, name: str, cell: str, order: str) -> str:
    """Reads what a cell says into its field; a sentence where it cannot be read."""
    if target in ["boxed", "box"]:
        return take_box(draft, target, name, cell)
    read = said_by_cell(cell, "")
    if target in MONEYS:
        read = read_price(cell, draft["currency"])
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
        note_cell(draft, name, read["more"])
        if read["value"].upper() not in read["more"].upper():
            say_wrong(draft, name, quoted(read["more"]) + ' was taken as "' + read["value"] + '".')
    # the column of the box may have told the condition of it
    if not (target == "box_condition" and read["value"] == "" and target in draft["values"]):
        draft["values"][target] = read["value"]
    return ""


def take_box(draft: RowSoFar, target: str, name: str, cell: str) -> str:
    """Reads whether there is a box, and in what condition; a sentence where that cannot be read."""
    read = read_box(cell)
    if read["wrong"] != "":
        return read["wrong"]
    note_cell(draft, name, read["more"])
    if target == "box":
        draft["values"][target] = read["has"] if read["has"] == "yes" else ""
        return ""
    if read["condition"] != "" and text_of_field(draft["values"], "box_condition") == "":
        draft["values"]["box_condition"] = read["condition"]
    draft["values"][target] = read["has"]
    return ""


def text_of_field(values: Fields, field: str) -> str:
    """The text of a field, "" where it is not there."""
    text: str = values.get(field, "")
    return text


# ---- which item ----------------------------------------------------------------------------------


def said_under(draft: RowSoFar, fields: Sequence[str]) -> list[str]:
    """The cells of some of the fields that say what it is."""
    out: list[str] = []
    for field in fields:
        for text in draft["texts"]:
            if text["field"] == field and text["cell"] != "":
                out.append(text["cell"])
    return out


def cell_of(draft: RowSoFar, fields: Sequence[str]) -> str:
    """The same as one text."""
    return joined_by(said_under(draft, fields), ", ")


def tells(draft: RowSoFar, fields: Sequence[str]) -> bool:
    """Whether one of these fields could be read and holds something."""
    for field in fields:
        if field in draft["values"]:
            value = draft["values"][field]
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


def nameless(draft: RowSoFar) -> str:
    """Why the row can name no piece, "" where it may."""
    number = padded(draft["row"]["row"], 1)
    said = said_under(draft, NAMING)
    if not has_letters(said):
        why = ": nothing says which piece this is: no number, no name, no words."
        return "Row " + number + why
    if is_total(said) and not tells(draft, TELLING):
        return "Row " + number + ": this is a total, not a piece."
    return ""


def why_failed(draft: RowSoFar, offered: int, chosen: int) -> str:
    """Why no record can be made of a row that has words, "" where one can."""
    number = padded(draft["row"]["row"], 1)
    said = said_under(draft, NAMING)
    scrap = offered == 0 and is_scrap(said)
    tells_more = tells(draft, MONEYS) or tells(draft, TELLING)
    if scrap and not tells_more and not is_in_reference(draft["reference"], said):
        return (
            "Row " + number + ": " + quoted(joined_by(said, " "))
            + " names no piece, and nothing else in the row tells of one. If it is one, write "
            + "its number or a longer name."
        )  # fmt: skip
    if chosen < 0 and draft["sort"] == "want":
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
            add_to(places, chances, v, prior)
    order = sorted(range(len(places)), key=lambda at: -chances[at])
    return [
        {
            "variant": pack["variants"][places[place]]["id"],
            "chance": rounded_share(chances[place] / whole),
        }
        for place in order
    ]


def offered_item(draft: RowSoFar, meant: ItemMeant) -> Offer:
    """A candidate with the variants that the words may mean."""
    reference = draft["reference"]
    entry = reference["entries"][meant["entry"]]
    pack = reference["engines"][engine_of(reference, entry["pack"])]["pack"]
    text = cell_of(draft, ["variant", "description", "name"])
    of: list[Chance] = []
    if text != "":
        of = variants_meant(reference, entry["pack"], entry["place"], text)
    known = of[0]["variant"] if len(of) == 1 else ""
    which = ""
    for variant in pack["variants"]:
        if variant["id"] == known:
            which = variant["name"]
    if draft["sort"] == "note":
        several = of if len(of) > 0 else by_prior(pack, entry["place"])
        of = [
            {"item": entry["number"], "variant": each["variant"], "chance": each["chance"]}
            for each in several
        ]
    out: Offer = {
        "pack": entry["pack"],
        "item": entry["number"],
        "name": entry["name"],
        "sure": int(meant["sure"] * 10_000.0 + 0.5) / 10_000.0,
        "how": meant["how"],
        "of": of,
        "variant": known,
        "which": which,
        "sets": {},
    }
    out["sets"] = sets_of(draft, [out])
    return out


def fields_of_item(draft: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """The fields that say what it is: of the offer that was taken, or none."""
    out: Fields = {}
    if len(offers) == 0:
        if draft["sort"] == "piece":
            out["called"] = called_by(draft)
        return out
    out["pack"] = offers[0]["pack"]
    if draft["sort"] != "note":
        out["item"] = offers[0]["item"]
    if draft["sort"] == "want":
        out["variant"] = offers[0]["variant"]
    else:
        out["of"] = offers[0]["of"]
    return out


def called_by(draft: RowSoFar) -> str:
    """What the row calls the piece."""
    parts = [cell_of(draft, ["number"]), cell_of(draft, ["name"])]
    called = joined_by([part for part in parts if part != ""], " ")
    return called if called != "" else cell_of(draft, ["description", "variant"])


def sets_of(draft: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """All fields that say what it is, as they are once this one, or none, was chosen."""
    empty = blank_record(draft["sort"])
    names = ["pack", "item", "of", "called"]
    if draft["sort"] == "note":
        names = ["pack", "of"]
    elif draft["sort"] == "want":
        names = ["pack", "item", "variant"]
    out: Fields = {}
    for name in names:
        out[name] = empty[name]
    put_field(out, WHOLE_ITEM, fields_of_item(draft, offers))
    return out


def keep_words(draft: RowSoFar, record: Fields, matched: bool) -> None:
    """Puts into the notes what was said of the item and is not kept in a field."""
    unsure = not matched
    if draft["sort"] == "want":
        unsure = unsure or record["variant"] == ""
    else:
        unsure = unsure or len(record["of"]) != 1
    lines: list[str] = []
    for text in draft["texts"]:
        field = text["field"]
        kept = field == "description" or (field == "variant" and unsure)
        if field == "range" and not matched:
            kept = len(ranges_named(draft["reference"], text["cell"])) == 0
        if field in ["number", "name"] and not matched:
            kept = draft["sort"] == "note"
        if text["cell"] != "" and kept:
            lines.append(text["name"] + ": " + text["cell"])
    for line in draft["lines"]:
        lines.append(line)
    draft["lines"] = lines


def read_row(draft: RowSoFar) -> None:
    """Reads the cells that do not say what it is."""
    for text in draft["texts"]:
        if text["field"] == "quantity":
            take_quantity(draft, text["name"], text["cell"])
        elif text["field"] not in SAYING and text["field"] != "row_id":
            take_field(draft, text)


def written_record(draft: RowSoFar, offers: Sequence[Offer]) -> Fields:
    """The record that a row makes, with what it came from."""
    record = blank_record(draft["sort"])
    put_field(record, WHOLE_ITEM, fields_of_item(draft, offers))
    keep_words(draft, record, len(offers) > 0)
    said = [text["cell"] for text in draft["texts"] if text["field"] in SAYING]
    draft["cells"][WHOLE_ITEM] = joined_by(said, " | ")
    draft["values"][WHOLE_ITEM] = item_of(record)
    notes = notes_of(draft["sort"])
    draft["cells"][notes] = joined_by(draft["lines"], "\n")
    draft["values"][notes] = draft["cells"][notes]
    came: Fields = {"key": draft["row"]["key"], "cells": draft["cells"], "values": draft["values"]}
    for field in FIELDS_IN_ROWS:
        if field in draft["values"]:
            record[field] = draft["values"][field]
    record["came"] = came
    return record


def outcome_of(about: Importing, sort: str, row: KeyedRow) -> Outcome:
    """What becomes of a row that this app did not write."""
    draft = begun_row(about, sort, row)
    read_row(draft)
    failed = nameless(draft)
    offered: list[Offer] = []
    if failed == "":
        query: Query = {
            "number": cell_of(draft, ["number"]),
            "name": cell_of(draft, ["name"]),
            "description": cell_of(draft, ["description", "variant"]),
            "range": cell_of(draft, ["range"]),
        }
        offered = [offered_item(draft, meant) for meant in items_meant(draft["reference"], query)]
    chosen = -1
    if len(offered) > 0 and offered[0]["sure"] >= SURE:
        chosen = 0
    if failed == "":
        failed = why_failed(draft, len(offered), chosen)
    record = written_record(draft, offered[0:1] if chosen == 0 else [])
    nothing: Fields | None = None
    hopeless = failed != "" and len(offered) == 0
    return {
        "row": row["row"],
        "key": row["key"],
        "failed": failed,
        "record": record if failed == "" else nothing,
        "if_chosen": record if failed != "" and not hopeless else nothing,
        "candidates": offered,
        "none": sets_of(draft, []),
        "chosen": chosen,
        "sure": offered[0]["sure"] if chosen == 0 else 0.0,
        "problems": [] if hopeless else draft["problems"],
        "same": None,
    }
