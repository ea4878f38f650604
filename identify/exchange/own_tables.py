"""Records as rows of a table and back, with nothing lost.

Each field has a column with a text that a person can read and change. Where that would not give
back the very same value (a chance of 0.3333, a photo's id, a field that this version does not
know), the value goes into the column "further" as JSON as well. When the row is read, a value
there counts as long as its column still says what was written for it; a changed cell counts before
it.
"""

import json
from collections.abc import Callable
from typing import Any

from identify.core.amounts import read_money
from identify.core.edtf import written_edtf
from identify.core.money import money_parts
from identify.core.types.money import Money
from identify.core.types.records import Chance
from identify.exchange.dates import read_date
from identify.exchange.safe_cells import LONGEST, fit_for_cell, guarded, unguarded
from identify.exchange.shapes import SHAPES
from identify.exchange.table import CellError, Row, Table
from identify.exchange.types import Fields
from identify.exchange.values import (
    read_condition,
    read_price,
    read_urgency,
    read_yes,
)

FURTHER = "further"
# The columns in their order; the two in words are for reading only.
WHAT, WHICH = "what it is", "which variant"
COLUMNS = (
    "record", "type", "pack", "item", WHAT, WHICH, "variant", "of", "called", "condition", "boxed",
    "box_condition", "missing", "replaced", "paid", "asking", "where", "when", "least", "box",
    "most", "urgency", "hall", "table", "asked", "offer", "come_back", "decision", "text", "notes",
    "purpose", "kept", "piece", "version", "kind", "unrecorded", "years", "day", "amount",
    "trashed", "made", "changed",
)  # fmt: skip
ALWAYS = ("trashed", "made", "changed")
HIDDEN = ("answers", "photos")  # in "further" only
MONEYS = ("paid", "asking", "most", "asked", "offer", "amount")

Names = Callable[[Fields], tuple[str, str]]


class RecordError(Exception):
    """A row that is no record, in a sentence."""


def heading(field: str) -> str:
    """What the column of a field is called."""
    return field.replace("_", " ")


def field_named(name: str) -> str:
    """The field of a column of ours, "" for any other column."""
    plain = " ".join(name.split()).lower()
    if plain == FURTHER or (plain.startswith(f"{FURTHER} ") and plain.split()[1].isdigit()):
        return FURTHER
    field = plain if plain in (WHAT, WHICH) else plain.replace(" ", "_")
    return field if field in COLUMNS else ""


def is_own(names: list[str]) -> bool:
    """Whether these are the columns of a table that this app wrote."""
    fields = {field_named(name) for name in names}
    return {"record", "type", FURTHER} <= fields


# ---- one value as text ---------------------------------------------------------------------------


def money_text(money: Money) -> str:
    """Money that can be read again: as it was typed where that says it all."""
    typed = money.get("typed", "")
    read = read_money(typed, "")["money"]
    if read is not None and _same_money(read, money):
        return str(typed)
    parts = money_parts(money)
    old = parts["old"]
    if not parts["exact"] and old is not None:
        quarters = ["", "¼", "½", "¾"][old["farthings"]]
        return f"£{old['pounds']} {old['shillings']}s {old['pence']}{quarters}d"
    digits = parts["digits"]
    cents = f".{parts['part']:0{digits}d}" if digits else ""
    return f"{parts['whole']}{cents} {parts['currency']}"


def _same_money(one: Money, other: Money) -> bool:
    return all(one.get(key, 0) == other.get(key, 0) for key in ("minor", "over", "currency"))


def shown(field: str, value: Any) -> str:
    """The text for a field's column; "" for a value of another sort than the field has."""
    try:
        return fit_for_cell(_shown(field, value)).strip()
    except (TypeError, KeyError, ValueError, AttributeError, OverflowError):
        return ""


def _shown(field: str, value: Any) -> str:
    if field in HIDDEN or value is None:
        return ""
    if field in MONEYS:
        return money_text(value)
    if field in ("kept", "unrecorded"):
        return "yes" if value is True else ""
    if field == "urgency":
        return str(value)
    if field in ("missing", "replaced"):
        return "; ".join(value)
    if field == "of":
        return "; ".join(_chance_text(one, len(value)) for one in value)
    return value if isinstance(value, str) else ""


def _chance_text(one: Chance, count: int) -> str:
    item = f"{one['item']}: " if "item" in one else ""
    alone = count == 1 and one["chance"] == 1
    return f"{item}{one['variant']}" + ("" if alone else f" {100 * one['chance']:.3g} %")


def value_of(field: str, text: str, usual: str = "") -> Any:
    """What the text in a field's column says. Raises CellError with a sentence.

    usual: the currency meant where none is written.
    """
    plain = text.strip()
    if field in HIDDEN:
        return []
    if field in MONEYS:
        return read_price(plain, usual)
    if field in ("kept", "unrecorded"):
        return read_yes(plain) == "yes"
    if field == "urgency":
        return read_urgency(plain)
    if field in ("missing", "replaced"):
        return [part.strip() for part in plain.split(";") if part.strip()]
    if field == "of":
        return [_chance_of(part.strip()) for part in plain.split(";") if part.strip()]
    if field in ("condition", "least", "box_condition"):
        return read_condition(plain)[0]
    if field in ("boxed", "box"):
        return read_yes(plain)
    if field in ("when", "years"):
        return plain if written_edtf(plain)["problem"] == "" else read_date(plain)
    return plain


def _chance_of(text: str) -> Chance:
    item, colon, rest = text.rpartition(": ")
    variant, _, share = rest.partition(" ")
    chance: float = 1
    if share:
        try:
            chance = float(share.removesuffix("%")) / 100
        except ValueError:
            raise CellError(
                f'"{text}" is not a variant with its chance, such as p1_a 55 %.'
            ) from None
    if colon:
        return {"item": item, "variant": variant, "chance": chance}
    return {"variant": variant, "chance": chance}


# ---- a record as a row ---------------------------------------------------------------------------


def columns_for(records: list[Fields]) -> list[str]:
    """The fields that have a column, in order."""
    used: set[str] = {"record", "type", WHAT, WHICH, *ALWAYS}
    for record in records:
        used |= set(SHAPES.get(record.get("type", ""), {}))
    return [field for field in COLUMNS if field in used]


def cells_of(record: Fields, fields: list[str], names: Names) -> dict[str, str]:
    """The texts of a record's columns, by field, not guarded."""
    what, which = names(record)
    cells = {"record": _text(record.get("id")), "type": _text(record.get("type"))}
    cells |= {WHAT: fit_for_cell(what), WHICH: fit_for_cell(which)}
    shape = _fields_of(record)
    further: Fields = {}
    for field, value in record.items():
        if field in ("id", "type"):
            if cells["record" if field == "id" else "type"] != value:
                further[field] = value
            continue
        cell = shown(field, value) if field in shape and field in fields else ""
        if field in shape and field in fields:
            cells[field] = cell
        usual_value = field in HIDDEN and field in shape and value == []
        if not usual_value and (field not in cells or not _gives(field, cell, value)):
            further[field] = value
    absent = [field for field in shape if field not in record]
    if further or absent:
        kept = ({"fields": further} if further else {}) | ({"absent": absent} if absent else {})
        cells[FURTHER] = json.dumps(kept).replace("x005F_", "\\u0078005F_")
    return cells


def _fields_of(record: Fields) -> tuple[str, ...]:
    """The fields of a record of its type that have a column, or are in "further"."""
    return (*SHAPES.get(str(record.get("type")), {}), *ALWAYS)


def _text(value: Any) -> str:
    return fit_for_cell(value).strip() if isinstance(value, str) else ""


def _gives(field: str, cell: str, value: Any) -> bool:
    """Whether the text in its column gives this very value back."""
    try:
        return _equal(value_of(field, cell), value)
    except CellError:
        return False


def _equal(one: Any, other: Any) -> bool:
    """Equal as JSON: true is not 1."""
    return json.dumps(one, sort_keys=True) == json.dumps(other, sort_keys=True)


def table_of(records: list[Fields], names: Names) -> tuple[list[str], list[list[str]]]:
    """The headings and the rows for these records, every cell guarded.

    names: what a record is about and its variant, in words.
    """
    fields = columns_for(records)
    found = [cells_of(record, fields, names) for record in records]
    longest = max((len(cells.get(FURTHER, "")) for cells in found), default=0)
    chunks = max(1, -(-longest // LONGEST))
    rows = []
    for cells in found:
        rest = cells.get(FURTHER, "")
        parts = [rest[at * LONGEST : (at + 1) * LONGEST] for at in range(chunks)]
        rows.append([guarded(cell) for cell in [*(cells.get(f, "") for f in fields), *parts]])
    more = [f"{FURTHER} {n}" for n in range(2, chunks + 1)]
    return [*(heading(field) for field in fields), FURTHER, *more], rows


def rows_of(records: list[Fields]) -> Table:
    """The same as a table that was read from a file."""
    names, rows = table_of(records, lambda record: ("", ""))
    return Table([Row(n, cells) for n, cells in enumerate([names, *rows], 1)], [])


# ---- and back ------------------------------------------------------------------------------------


def texts_of(names: list[str], cells: list[str]) -> dict[str, str]:
    """The cells of a row of ours by field, no longer guarded; the chunks of "further" together."""
    texts: dict[str, str] = {}
    for name, cell in zip(names, cells, strict=False):
        field = field_named(name)
        if field == FURTHER:
            texts[field] = texts.get(field, "") + unguarded(cell)
        elif field:
            texts[field] = unguarded(cell)
    return texts


def record_of(texts: dict[str, str], usual: str) -> tuple[Fields, list[tuple[str, str]]]:
    """The record of a row, by texts_of(), and what was wrong: [(field, sentence)].

    A field whose column is not there, and which is not in "further" either, is left out. A cell
    that cannot be read gives what "further" says, and else nothing. Raises RecordError.
    """
    further, absent, problems = _further(texts)
    whole = FURTHER in texts and not problems
    record: Fields = {
        "id": further.pop("id", texts.get("record", "").strip()),
        "type": further.pop("type", texts.get("type", "").strip().lower()),
    }
    if record["type"] not in SHAPES:
        known = ", ".join(SHAPES)
        raise RecordError(f'The type "{record["type"]}" is not known. Types are: {known}.')
    for field in _fields_of(record):
        if field in HIDDEN and whole and field not in (*further, *absent):
            record[field] = []
        if field in texts:
            cell = texts[field].strip()
            if field in further and shown(field, further[field]) == cell:
                continue
            if cell == "" and field in absent:
                continue
            try:
                record[field] = value_of(field, cell, usual)
                further.pop(field, None)
            except CellError as error:
                problems.append((field, str(error)))
    return record | further, problems


def _further(
    texts: dict[str, str],
) -> tuple[Fields, list[str], list[tuple[str, str]]]:
    """What "further" says: the fields, which ones are absent, and what is wrong with it."""
    text = texts.get(FURTHER, "").strip()
    if text == "":
        return {}, [], []
    try:
        kept = json.loads(text)
        fields, absent = kept.get("fields", {}), kept.get("absent", [])
        if isinstance(fields, dict) and isinstance(absent, list):
            return fields, absent, []
    except (json.JSONDecodeError, AttributeError, RecursionError):
        pass
    what = "this cell was cut or changed, so that what it kept besides the other columns is lost."
    return {}, [], [(FURTHER, what)]
