"""Rows of a table that this app wrote, as records again (exporting/own_tables.py writes them).

Each field has a column with a text that a person can read and change; where that would not give
back the very same value, it is in the column "further" as JSON as well. A value there counts as
long as its column still says what was written for it; a changed cell counts before it.
"""

from collections.abc import Sequence
from typing import Any

from ..amounts import read_money
from ..edtf import is_figures, padded, written_edtf
from ..fitting import fits
from ..money import money_parts
from ..native.values import (
    first_halves,
    is_true,
    names_of,
    number_in,
    sort_of_value,
    value_at,
    value_in_json,
)
from ..shapes import fields_of
from ..types.importing import CellRead, Fields, Further, OwnRecord
from ..types.money import Money
from ..types.records import Chance
from .cell_dates import read_when, said_by_cell, unread_cell
from .cell_values import read_condition, read_price, read_urgency, read_yes
from .text_parts import begins, joined_by, one_line, split_at, without_blanks, without_signs

FURTHER = "further"
# The columns in their order; the two in words are for reading only.
WHAT = "what it is"
WHICH = "which variant"
OWN_COLUMNS = [
    "record", "type", "pack", "item", WHAT, WHICH, "variant", "of", "called", "condition", "boxed",
    "box_condition", "missing", "replaced", "paid", "asking", "where", "when", "least", "box",
    "most", "urgency", "hall", "table", "asked", "offer", "come_back", "decision", "text", "notes",
    "purpose", "kept", "piece", "version", "kind", "unrecorded", "years", "day", "amount",
    "trashed", "made", "changed",
]  # fmt: skip
ALWAYS = ["trashed", "made", "changed"]
HIDDEN = ["answers", "photos"]  # in "further" only
MONEYS = ["paid", "asking", "most", "asked", "offer", "amount"]
FLAGS = ["kept", "unrecorded"]
LISTS_IN_CELLS = ["missing", "replaced"]
OWN_SORTS = ["piece", "want", "note", "sighting", "budget"]
RISKY = "=+-@＝＋－＠﹦﹢﹣﹫'"  # noqa: RUF001
QUARTER_SIGNS = ["", "¼", "½", "¾"]
LONGEST_TEXT = 32_000  # halves of UTF-16; a cell of a spreadsheet holds 32,767
NO_CHARACTERS = ["\ufffe", "\uffff"]
UNFIT = "x005F_"  # what workbooks write for a sign that they cannot hold
CUT_OR_CHANGED = (
    "this cell was cut or changed, so that what it kept besides the other columns is lost."
)


def is_risky(text: str) -> bool:
    """Whether a spreadsheet may take a text for a formula (OWASP, "CSV Injection", from memory: one
    that begins with = + - @, a tab or a line end), or an apostrophe stands in front.
    """
    first = text[0:1]
    if first in ["\t", "\r", "\n"]:
        return True
    start = without_blanks(text)[0:1]
    return start != "" and start in RISKY


def guarded(text: str) -> str:
    """The text as it goes into a cell: where a spreadsheet may run it, an apostrophe in front."""
    return "'" + text if is_risky(text) else text


def unguarded(cell: str) -> str:
    """The text of a cell that was guarded."""
    return cell[1:] if begins(cell, "'") and is_risky(cell[1:]) else cell


def is_fit(c: str) -> bool:
    """Whether a workbook can hold a character: XML 1.0 can, and a reader does not take it out."""
    if c < " ":
        return c in ["\t", "\n"]
    odd = "\u007f" <= c <= "\u009f" or "\ufdd0" <= c <= "\ufdef" or c in NO_CHARACTERS
    return not odd


def fit_for_cell(text: str) -> str:
    """The text without what a cell cannot hold. Where that changes it, it is lost here."""
    out: list[str] = []
    start = 0
    at = 0
    while at < len(text):
        unfit = begins(text[at : at + 6], UNFIT)
        if unfit or not is_fit(text[at]):
            out.append(text[start:at])
            if text[at] == "\r":
                out.append("" if text[at + 1 : at + 2] == "\n" else "\n")
            at = at + 6 if unfit else at + 1
            start = at
        else:
            at = at + 1
    out.append(text[start:])
    return first_halves(joined_by(out, ""), LONGEST_TEXT)


def field_named(name: str) -> str:
    """The field of a column of ours, "" for any other column."""
    heading = one_line(name).upper()
    if heading == FURTHER.upper() or is_further_part(heading):
        return FURTHER
    for column in OWN_COLUMNS:
        if joined_by(split_at(column, "_"), " ").upper() == joined_by(split_at(heading, "_"), " "):
            return column
    return ""


def is_further_part(heading: str) -> bool:
    """Whether a heading is that of a further part of what is kept: FURTHER 2."""
    parts = split_at(heading, " ")
    return len(parts) > 1 and parts[0] == FURTHER.upper() and is_figures(parts[1])


def is_own(names: Sequence[str]) -> bool:
    """Whether these are the columns of a table that this app wrote."""
    fields = [field_named(name) for name in names]
    return "record" in fields and "type" in fields and FURTHER in fields


# ---- one value as text ---------------------------------------------------------------------------


def money_text(money: Money) -> str:
    """Money that can be read again: as it was typed where that says it all."""
    typed = money.get("typed", "")
    read = read_money(typed, "")["money"]
    if read is not None and is_same_money(read, money):
        return typed
    parts = money_parts(money)
    old = parts["old"]
    exact = is_true(parts["exact"])
    if old is not None and not exact:
        quarter = QUARTER_SIGNS[old["farthings"]]
        pounds = "£" + padded(old["pounds"], 1) + " " + padded(old["shillings"], 1) + "s "
        return pounds + padded(old["pence"], 1) + quarter + "d"
    digits = parts["digits"]
    cents = "." + padded(parts["part"], digits) if digits > 0 else ""
    return padded(parts["whole"], 1) + cents + " " + parts["currency"]


def is_same_money(first: Money, second: Money) -> bool:
    """Whether two amounts are the same, however they were typed."""
    same = first["minor"] == second["minor"] and first["currency"] == second["currency"]
    return same and first.get("over", 0) == second.get("over", 0)


def percent_text(share: float) -> str:
    """A share as a percentage with three figures: 55, 33.3, 0.0457."""
    percent = 100.0 * share
    decimals = 0
    scaled = percent
    while decimals < 18 and scaled < 100.0 and scaled != int(scaled + 0.5):
        scaled = scaled * 10.0
        decimals = decimals + 1
    whole = int(scaled + 0.5)
    text = padded(whole, decimals + 1)
    at = len(text) - decimals
    after = text[at:]
    last = len(after)
    while last > 0 and after[last - 1 : last] == "0":
        last = last - 1
    return text[0:at] + ("." + after[0:last] if last > 0 else "")


def chance_text(entry: Chance, count: int) -> str:
    """What one of `count` things that a piece may be is written as."""
    item = entry.get("item", "")
    text = entry["variant"] if item == "" else item + ": " + entry["variant"]
    if count == 1 and entry["chance"] == 1:
        return text
    return text + " " + percent_text(entry["chance"]) + " %"


def sort_of_field(kind: str, field: str) -> str:
    """The sort of value of a field, "" where records of that type have none of that name."""
    for entry in fields_of(kind):
        if entry[0] == field:
            return entry[1]
    return "text" if field in ALWAYS else ""


def sort_by_name(field: str) -> str:
    """The sort of value of a field by its name alone."""
    for kind in OWN_SORTS:
        sort = sort_of_field(kind, field)
        if sort != "":
            return sort
    return ""


def shown_text(field: str, value: Any) -> str:
    """The text for a field's column; "" for a value of another sort than the field has."""
    if field in HIDDEN or value is None:
        return ""
    if sort_of_value(value) == "text" and field not in MONEYS and field not in LISTS_IN_CELLS:
        return "" if field in FLAGS or field == "of" else without_blanks(fit_for_cell(value))
    if not fits(sort_by_name(field), value):
        return ""
    out = ""
    if field in MONEYS:
        out = money_text(value)
    elif field in FLAGS:
        out = "yes" if is_true(value) else ""
    elif field == "urgency":
        out = padded(value, 1)
    elif field in LISTS_IN_CELLS:
        out = joined_by(value, "; ")
    elif field == "of":
        out = joined_by([chance_text(entry, len(value)) for entry in value], "; ")
    return without_blanks(fit_for_cell(out))


def value_in(field: str, text: str, usual: str) -> CellRead:
    """What the text in a field's column says. usual: the currency meant where none is written."""
    written = without_blanks(text)
    out = said_by_cell(written, "")
    if field in HIDDEN:
        nothing: list[str] = []
        out["value"] = nothing
    elif field in MONEYS:
        out = read_price(written, usual)
    elif field in FLAGS:
        out = read_yes(written)
        out["value"] = out["value"] == "yes"
    elif field == "urgency":
        out = read_urgency(written)
    elif field in LISTS_IN_CELLS:
        out["value"] = list_in(written)
    elif field == "of":
        out = chances_in(written)
    elif field in ["condition", "least", "box_condition"]:
        out = read_condition(written)
    elif field in ["boxed", "box"]:
        out = read_yes(written)
    elif field in ["when", "years"] and written_edtf(written)["problem"] != "":
        out = read_when(written, "")
    return out


def list_in(text: str) -> list[str]:
    """The texts of a list in a cell."""
    return [without_blanks(part) for part in split_at(text, ";") if without_blanks(part) != ""]


def chances_in(text: str) -> CellRead:
    """What a piece may be, in a cell: "p21_c 80 %; p21_b 20 %"."""
    chances: list[Chance] = []
    for part in list_in(text):
        colon = -1
        for at in range(len(part)):
            if part[at : at + 2] == ": ":
                colon = at
        rest = part[colon + 2 :] if colon >= 0 else part
        space = len(rest)
        for at in range(len(rest)):
            if rest[at] == " " and space == len(rest):
                space = at
        share: float | None = 1
        if without_blanks(rest[space:]) != "":
            share = number_in(without_blanks(without_signs(rest[space:], " %")))
            share = share / 100.0 if share is not None else None
        if share is None:
            return unread_cell(
                '"' + part + '" is not a variant with its chance, such as p1_a 55 %.'
            )
        entry: Chance = {"variant": rest[0:space], "chance": share}
        if colon >= 0:
            entry["item"] = part[0:colon]
        chances.append(entry)
    out = said_by_cell("", "")
    out["value"] = chances
    return out


# ---- a row as a record ---------------------------------------------------------------------------


def own_fields(kind: str) -> list[str]:
    """The fields of a record of its type that have a column, or are in "further"."""
    out = [entry[0] for entry in fields_of(kind)]
    for field in ALWAYS:
        out.append(field)
    return out


def own_texts(names: Sequence[str], cells: Sequence[str]) -> dict[str, str]:
    """The cells of a row of ours by field, no longer guarded; the parts of "further" together."""
    out: dict[str, str] = {}
    count = min(len(names), len(cells))
    for place in range(count):
        field = field_named(names[place])
        if field == FURTHER:
            out[field] = out.get(field, "") + unguarded(cells[place])
        elif field != "":
            out[field] = unguarded(cells[place])
    return out


def further_in(texts: dict[str, str]) -> Further:
    """What "further" says: the fields, which ones are absent, and what is wrong with it."""
    nothing: Fields = {}
    absent: list[str] = []
    text = without_blanks(texts.get(FURTHER, ""))
    if text == "":
        return {"fields": nothing, "absent": absent, "wrong": ""}
    kept = value_in_json(text)
    if sort_of_value(kept) == "group":
        fields = value_at(kept, "fields")
        gone = value_at(kept, "absent")
        whole = fields is None or sort_of_value(fields) == "group"
        if whole and (gone is None or fits("texts", gone)):
            return {
                "fields": nothing if fields is None else fields,
                "absent": absent if gone is None else gone,
                "wrong": "",
            }
    return {"fields": nothing, "absent": absent, "wrong": CUT_OR_CHANGED}


def own_record(texts: dict[str, str], usual: str) -> OwnRecord:
    """The record of a row, by own_texts(), and what was wrong.

    A field whose column is not there, and which is not in "further" either, is left out. A cell
    that cannot be read gives what "further" says, and else nothing.
    """
    further = further_in(texts)
    fields = further["fields"]
    kind = without_blanks(texts.get("type", ""))
    for sort in OWN_SORTS:
        if sort.upper() == kind.upper():
            kind = sort
    out: OwnRecord = {
        "record": {}, "problems": [], "absent": further["absent"], "wrong": "",
    }  # fmt: skip
    if further["wrong"] != "":
        out["problems"].append([FURTHER, further["wrong"]])
    ident = without_blanks(texts.get("record", ""))
    out["record"]["id"] = value_at(fields, "id") if "id" in fields else ident
    out["record"]["type"] = value_at(fields, "type") if "type" in fields else kind
    kind = out["record"]["type"]
    if sort_of_value(kind) != "text" or kind not in OWN_SORTS:
        name = kind if sort_of_value(kind) == "text" else ""
        known = joined_by(OWN_SORTS, ", ")
        out["wrong"] = 'The type "' + name + '" is not known. Types are: ' + known + "."
        return out
    whole = FURTHER in texts and further["wrong"] == ""
    settled: list[str] = ["id", "type"]
    for field in own_fields(kind):
        kept = field in fields
        if field in HIDDEN and whole and not kept and field not in further["absent"]:
            nothing: list[str] = []
            out["record"][field] = nothing
        if field in texts and field not in HIDDEN:
            cell = without_blanks(texts[field])
            same = kept and shown_text(field, value_at(fields, field)) == cell
            if not same and not (cell == "" and field in further["absent"]):
                read = value_in(field, cell, usual)
                if read["wrong"] == "":
                    out["record"][field] = read["value"]
                    settled.append(field)
                else:
                    out["problems"].append([field, read["wrong"]])
    for field in names_of(fields):
        if field not in settled:
            out["record"][field] = value_at(fields, field)
    return out
