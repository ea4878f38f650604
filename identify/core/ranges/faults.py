"""What does not go together in a range of one's own, each at the record that it is about."""

from ..native.values import value_at
from ..types.gate import Group
from ..types.rows import OwnRecords, RangeRows, RowFault, RowMistake
from .own_rows import by_id, change_records, live_rows, named, rows_of_records, text_at
from .splitting import at_place
from .usable import growing_mistakes, set_life


def record_ids(records: list[Group]) -> list[str]:
    """The ids of records."""
    return [text_at(record, "id") for record in records]


def variant_ids(own: OwnRecords) -> list[str]:
    """The ids of the rows of variants; of an item that has none, its own."""
    out: list[str] = []
    having: dict[str, int] = {}
    for record in live_rows(own["records"], "range_variant"):
        if named(own["item_names"], value_at(record, "item")) != "":
            having["i" + text_at(record, "item")] = 1
            out.append(text_at(record, "id"))
    for item in own["items"]:
        if at_place(having, text_at(item, "id")) < 0:
            out.append(text_at(item, "id"))
    return out


def ids_of_table(own: OwnRecords, table: str) -> list[str]:
    """The ids of the records that the rows of a table were made of, in their order."""
    if table == "kinds":
        return record_ids(own["kinds"])
    if table == "parts":
        return record_ids(own["parts"])
    if table == "features":
        return record_ids(own["features"])
    if table == "sources":
        return record_ids(own["sources"])
    if table == "items":
        return record_ids(own["items"])
    if table == "variants":
        return variant_ids(own)
    if table == "changes":
        return record_ids(change_records(own))
    if table == "cautions":
        return record_ids(live_rows(own["records"], "range_caution"))
    if table == "moves":
        return record_ids(live_rows(own["records"], "range_move"))
    return []


def id_at(ids: list[str], place: int, otherwise: str) -> str:
    """The id at a place; another one where there is none."""
    return ids[place] if 0 <= place < len(ids) else otherwise


def fault_of(own: OwnRecords, mistake: RowMistake) -> RowFault:
    """A mistake of a row, at its record; at the range where it is of none."""
    ids = ids_of_table(own, mistake["table"])
    whole = text_at(own["whole"], "id")
    others = ids_of_table(own, "items") if mistake["why"] == "outside item" else ids
    return {
        "id": id_at(ids, mistake["row"], whole), "why": mistake["why"], "said": mistake["said"],
        "other": id_at(others, mistake["other"], ""), "field": mistake["field"],
    }  # fmt: skip


def number_faults(own: OwnRecords) -> list[RowFault]:
    """Two items of one number: two devices may have written them down."""
    out: list[RowFault] = []
    first: dict[str, str] = {}
    for item in own["items"]:
        number = text_at(item, "number")
        ident = text_at(item, "id")
        if number != "" and "i" + number in first:
            before = first["i" + number]
            for pair in [[ident, before], [before, ident]]:
                out.append(
                    {
                        "id": pair[0], "why": "number twice", "said": [number], "other": pair[1],
                        "field": "number",
                    }
                )  # fmt: skip
        elif number != "":
            first["i" + number] = ident
    return out


def orphan_faults(own: OwnRecords) -> list[RowFault]:
    """Variants of an item that is in the bin, or nowhere."""
    out: list[RowFault] = []
    for record in live_rows(own["records"], "range_variant"):
        if named(own["item_names"], value_at(record, "item")) == "":
            out.append(
                {
                    "id": text_at(record, "id"), "why": "no item", "said": [],
                    "other": text_at(record, "item"), "field": "item",
                }
            )  # fmt: skip
    return out


def faults_of_records(whole: Group, records: list[Group]) -> list[RowFault]:
    """All that does not go together in a range of one's own."""
    own = by_id(records, whole)
    rows: RangeRows = rows_of_records(whole, records)
    set_life(rows)
    out = number_faults(own)
    for orphan in orphan_faults(own):
        out.append(orphan)
    for mistake in growing_mistakes(rows):
        out.append(fault_of(own, mistake))
    return out
