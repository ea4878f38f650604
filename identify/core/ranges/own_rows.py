"""The records of a range of one's own as rows (`types/own_ranges.py` says what they hold).

What is in the bin, or points to what is not there, is left out and stays as it is in its record:
so a feature that is put back finds everything that was said of it. What cannot be left blank in a
compiled range gets what is usual: an item without a variant has one, a piece without a kind is a
piece.
"""

from typing import Any

from ..edtf import padded
from ..native.values import is_true, sort_of_value, value_at
from ..shapes import SEEN
from ..types.gate import Group
from ..types.pack import Needs
from ..types.rows import (
    CellText,
    ChangeRow,
    DrawingRow,
    FeatureRow,
    ItemRow,
    OwnRecords,
    PartRow,
    RangeRows,
    StateRow,
    StatesOf,
    TextPair,
    VariantRow,
)
from .splitting import at_place
from .words import KIND

SMALL_LETTERS = "abcdefghijklmnopqrstuvwxyz"
KEY_LETTERS = SMALL_LETTERS + "0123456789_"
SWAP = 0.05
TRUST = 0.5
SECONDS = 4.0
PIECE_KIND = "piece"


def text_at(record: Group, name: str) -> str:
    """A text field, "" where there is none."""
    value = value_at(record, name)
    text: str = value if sort_of_value(value) == "text" else ""
    return text


def number_at(record: Group, name: str, usual: float) -> float:
    """A number field, what is usual where there is none."""
    value = value_at(record, name)
    number: float = value if sort_of_value(value) == "number" else usual
    return number


def needs_of(text: str) -> Needs:
    """What a look needs, as it is said; nothing where that is not known."""
    if text == "loupe":
        return "loupe"
    return "body off" if text == "body off" else "nothing"


def share_at(record: Group, name: str, usual: float) -> float:
    """A number field from 0 to 1."""
    return min(1.0, max(0.0, number_at(record, name, usual)))


def above_nothing(record: Group, name: str, usual: float) -> float:
    """A number field above 0, up to 1000."""
    number = number_at(record, name, usual)
    return min(1000.0, number) if number > 0 else usual


def list_at(record: Group, name: str) -> list[Any]:
    """A list field, empty where there is none."""
    value = value_at(record, name)
    entries: list[Any] = value if sort_of_value(value) == "list" else []
    return entries


def is_key(text: str) -> bool:
    """Whether a text can be the name of a row in files."""
    if text == "" or text[0:1] not in SMALL_LETTERS:
        return False
    for n in range(len(text)):
        if text[n : n + 1] not in KEY_LETTERS:
            return False
    return True


def live_rows(records: list[Group], sort: str) -> list[Group]:
    """The records of a sort that are not in the bin, in their order."""
    live = [
        record
        for record in records
        if text_at(record, "type") == sort and text_at(record, "trashed") == ""
    ]
    by_id = sorted(live, key=lambda record: text_at(record, "id"))
    return sorted(by_id, key=lambda record: number_at(record, "at", 0.0))


def keys_of(rows: list[Group]) -> list[str]:
    """What each row is called: its key, where no row before it has the same; else its id."""
    out: list[str] = []
    used: dict[str, int] = {}
    for row in rows:
        key = text_at(row, "key")
        good = is_key(key)
        out.append(key if good and at_place(used, key) < 0 else text_at(row, "id"))
        used["i" + key] = 1
    return out


def names_by_id(rows: list[Group], names: list[str]) -> dict[str, str]:
    """What each row is called, by its id."""
    out: dict[str, str] = {}
    for n in range(len(rows)):
        out["i" + text_at(rows[n], "id")] = names[n]
    return out


def named(names: dict[str, str], ident: Any) -> str:
    """What the row with an id is called; "" where it is not there."""
    return names.get("i" + ident, "") if sort_of_value(ident) == "text" else ""


def all_named(names: dict[str, str], idents: list[Any]) -> list[str]:
    """What the rows with these ids are called, each once, as far as they are there."""
    out: list[str] = []
    for ident in idents:
        name = named(names, ident)
        if name != "" and name not in out:
            out.append(name)
    return out


def numbers_of(items: list[Group]) -> list[str]:
    """The number of each item; its name where it has none, and no number twice."""
    out: list[str] = []
    used: dict[str, int] = {}
    for item in items:
        number = text_at(item, "number")
        if number == "":
            number = text_at(item, "name")
        if number == "":
            number = "Without a number"
        unique = number
        count = 1
        while at_place(used, unique) > 0:
            count = count + 1
            unique = number + " (" + padded(count, 1) + ")"
        used["i" + unique] = 1
        out.append(unique)
    return out


def by_id(records: list[Group], whole: Group) -> OwnRecords:
    """The rows of a range by sort, with what each is called."""
    kinds = live_rows(records, "range_kind")
    parts = live_rows(records, "range_part")
    features = live_rows(records, "range_feature")
    names = names_by_id(features, keys_of(features))
    states = [
        state
        for state in live_rows(records, "range_state")
        if named(names, value_at(state, "feature")) != ""
    ]
    items = live_rows(records, "range_item")
    sources = live_rows(records, "range_source")
    out: OwnRecords = {
        "whole": whole, "records": records, "kinds": kinds, "parts": parts, "features": features,
        "states": states, "items": items, "sources": sources,
        "kind_names": names_by_id(kinds, keys_of(kinds)),
        "part_names": names_by_id(parts, keys_of(parts)), "feature_names": names,
        "state_names": {}, "state_features": {},
        "item_names": names_by_id(items, numbers_of(items)),
        "source_names": names_by_id(sources, keys_of(sources)),
    }  # fmt: skip
    for feature in features:
        own = states_of(out, feature)
        keys = keys_of(own)
        for n in range(len(own)):
            out["state_names"]["i" + text_at(own[n], "id")] = keys[n]
            out["state_features"]["i" + text_at(own[n], "id")] = text_at(feature, "id")
    return out


def states_of(own: OwnRecords, feature: Group) -> list[Group]:
    """The states of a feature."""
    ident = text_at(feature, "id")
    return [state for state in own["states"] if text_at(state, "feature") == ident]


def said_pairs(own: OwnRecords, pairs: list[Any]) -> list[TextPair]:
    """What other sources say, of those that are there."""
    out: list[TextPair] = []
    for pair in pairs:
        if sort_of_value(pair) == "list" and len(pair) == 2:
            source = named(own["source_names"], pair[0])
            if source != "" and sort_of_value(pair[1]) == "text":
                out.append([source, pair[1]])
    return out


def seen_cells(own: OwnRecords, record: Group) -> list[CellText]:
    """What is seen on an item or a variant, in the order of the features."""
    out: list[CellText] = []
    for feature in own["features"]:
        ident = text_at(feature, "id")
        states = list_at(record, SEEN + ident)
        text = ""
        for state in states:
            if state == "?" and len(states) == 1:
                text = "?"
            elif named(own["state_features"], state) == ident:
                name = named(own["state_names"], state)
                text = text + "|" + name if text != "" else name
        if text != "":
            out.append([named(own["feature_names"], ident), text])
    return out


def decimal_text(number: float) -> str:
    """A number to three decimals, without needless noughts."""
    count = int((number * 1000 + 0.5) // 1)
    whole = count // 1000
    rest = padded(count - whole * 1000, 3)
    while len(rest) > 0 and rest[len(rest) - 1 :] == "0":
        rest = rest[0 : len(rest) - 1]
    return padded(whole, 1) + ("." + rest if rest != "" else "")


def feature_row_of(own: OwnRecords, record: Group) -> FeatureRow:
    """A feature."""
    mine = states_of(own, record)
    keys = keys_of(mine)
    states: list[StateRow] = []
    for n in range(len(mine)):
        states.append(
            {
                "id": keys[n], "name": text_at(mine[n], "name"),
                "caption": text_at(mine[n], "caption"), "look": text_at(mine[n], "look"),
            }
        )  # fmt: skip
    kinds = all_named(own["kind_names"], list_at(record, "kinds"))
    name = text_at(record, "name")
    out: FeatureRow = {
        "id": named(own["feature_names"], text_at(record, "id")), "name": name,
        "title": text_at(record, "title"), "question": text_at(record, "question"),
        "where": text_at(record, "where"),
        "part": named(own["part_names"], text_at(record, "part")),
        "seconds": above_nothing(record, "seconds", SECONDS),
        "needs": needs_of(text_at(record, "needs")),
        "every": len(kinds) == 0, "kinds": kinds, "when": conditions_of(own, record),
        "mistaken": state_pairs(own, list_at(record, "mistaken"), keys), "states": states,
        "layer": text_at(record, "layer"), "unseen": text_at(record, "unseen"), "seen": 0.0,
    }  # fmt: skip
    return out


def state_pairs(own: OwnRecords, pairs: list[Any], known: list[str]) -> list[TextPair]:
    """Pairs of states of one feature."""
    out: list[TextPair] = []
    for pair in pairs:
        if sort_of_value(pair) == "list" and len(pair) == 2:
            state = named(own["state_names"], pair[0])
            mistaken = named(own["state_names"], pair[1])
            if state in known and mistaken in known and state != mistaken:
                out.append([state, mistaken])
    return out


def conditions_of(own: OwnRecords, record: Group) -> list[StatesOf]:
    """Which other features must have which states for this one to be asked."""
    out: list[StatesOf] = []
    for pair in list_at(record, "only_if"):
        if sort_of_value(pair) == "list" and len(pair) == 2:
            feature = named(own["feature_names"], pair[0])
            state = named(own["state_names"], pair[1])
            if feature != "" and state != "":
                place = -1
                for n in range(len(out)):
                    if out[n][0] == feature:
                        place = n
                if place < 0:
                    out.append([feature, [state]])
                else:
                    out[place][1].append(state)
    return out


def item_row_of(own: OwnRecords, record: Group) -> ItemRow:
    """An item."""
    number = named(own["item_names"], text_at(record, "id"))
    kind = named(own["kind_names"], text_at(record, "kind"))
    name = text_at(record, "name")
    return {
        "number": number, "name": name if name != "" else number,
        "kind": kind if kind != "" else PIECE_KIND, "years": text_at(record, "years"),
        "source": named(own["source_names"], text_at(record, "source")),
        "other_years": said_pairs(own, list_at(record, "other_years")),
        "formation": text_at(record, "formation"),
        "contains": all_named(own["item_names"], list_at(record, "contains")),
        "carried": list_at(record, "carried"), "note": text_at(record, "note"),
        "cells": seen_cells(own, record),
    }  # fmt: skip


def variant_row_of(own: OwnRecords, record: Group, key: str) -> VariantRow:
    """A variant."""
    return {
        "id": key, "item": named(own["item_names"], text_at(record, "item")),
        "name": text_at(record, "name"), "years": text_at(record, "years"),
        "source": named(own["source_names"], text_at(record, "source")),
        "other_years": said_pairs(own, list_at(record, "other_years")),
        "common": above_nothing(record, "common", 1.0), "note": text_at(record, "note"),
        "cells": seen_cells(own, record),
    }  # fmt: skip


def only_variant(item: ItemRow, key: str) -> VariantRow:
    """The variant of an item of which none was written down."""
    return {
        "id": key, "item": item["number"], "name": "", "years": "", "source": "",
        "other_years": [], "common": 1.0, "note": "", "cells": [],
    }  # fmt: skip


def variant_records(own: OwnRecords) -> list[Group]:
    """The variants of the items that are there."""
    return [
        record
        for record in live_rows(own["records"], "range_variant")
        if named(own["item_names"], value_at(record, "item")) != ""
    ]


def variant_rows(own: OwnRecords, items: list[ItemRow]) -> list[VariantRow]:
    """The variants of the items that are there; one of each item that has none."""
    records = variant_records(own)
    keys = keys_of(records)
    out: list[VariantRow] = []
    having: dict[str, int] = {}
    for n in range(len(records)):
        row = variant_row_of(own, records[n], keys[n])
        having["i" + row["item"]] = 1
        out.append(row)
    for n in range(len(items)):
        if at_place(having, items[n]["number"]) < 0:
            out.append(only_variant(items[n], text_at(own["items"][n], "id")))
    return out


def change_records(own: OwnRecords) -> list[Group]:
    """The running changes of features and states that are there. One that was limited to what is
    not there any more counts for nothing.
    """
    out: list[Group] = []
    for record in live_rows(own["records"], "range_change"):
        kinds = list_at(record, "kinds")
        items = list_at(record, "items")
        lost = (len(kinds) > 0 and len(all_named(own["kind_names"], kinds)) == 0) or (
            len(items) > 0 and len(all_named(own["item_names"], items)) == 0
        )
        feature = named(own["feature_names"], value_at(record, "feature"))
        state = named(own["state_names"], value_at(record, "state"))
        if feature != "" and state != "" and not lost:
            out.append(record)
    return out


def change_rows(own: OwnRecords) -> list[ChangeRow]:
    """The running changes that count."""
    return [
        {
            "feature": named(own["feature_names"], value_at(record, "feature")),
            "state": named(own["state_names"], value_at(record, "state")),
            "since": text_at(record, "since"), "until": text_at(record, "until"),
            "kinds": all_named(own["kind_names"], list_at(record, "kinds")),
            "items": all_named(own["item_names"], list_at(record, "items")),
            "source": named(own["source_names"], text_at(record, "source")),
            "other_from": said_pairs(own, list_at(record, "other_from")),
            "note": text_at(record, "note"), "to_source": "", "hard": [],
        }
        for record in change_records(own)
    ]  # fmt: skip


def drawing_rows_of(own: OwnRecords) -> list[DrawingRow]:
    """The drawings there are, by name."""
    out: list[DrawingRow] = []
    for kind in own["kinds"]:
        text = text_at(kind, "drawing")
        if text != "":
            name = KIND + "-" + named(own["kind_names"], text_at(kind, "id"))
            out.append({"id": name, "text": text})
    for feature in own["features"]:
        for state in states_of(own, feature):
            text = text_at(state, "drawing")
            if text != "":
                of = named(own["feature_names"], text_at(feature, "id"))
                name = of + "-" + named(own["state_names"], text_at(state, "id"))
                out.append({"id": name, "text": text})
    for pair in list_at(own["whole"], "drawings"):
        if sort_of_value(pair) == "list" and len(pair) == 2:
            out.append({"id": pair[0], "text": pair[1]})
    return out


def part_rows_of(own: OwnRecords) -> list[PartRow]:
    """The parts."""
    return [
        {
            "id": named(own["part_names"], text_at(part, "id")), "name": text_at(part, "name"),
            "swap": share_at(part, "swap", SWAP), "replaced": text_at(part, "replaced"),
            "altered": text_at(part, "altered"),
        }
        for part in own["parts"]
    ]  # fmt: skip


def rows_of_records(whole: Group, records: list[Group]) -> RangeRows:
    """The rows of a range of one's own: `whole` is the record of the range, `records` its rows."""
    own = by_id(records, whole)
    key = text_at(whole, "key")
    good = is_key(key)
    gauge = number_at(whole, "gauge", 0.0)
    items = [item_row_of(own, record) for record in own["items"]]
    invented = value_at(whole, "invented")
    out: RangeRows = {
        "id": key if good else text_at(whole, "id"),
        "range": {
            "name": text_at(whole, "name"), "maker": text_at(whole, "maker"), "gauge_mm": gauge,
            "gauge": decimal_text(gauge) + " mm" if gauge > 0 else "",
            "scale": text_at(whole, "scale"), "country": text_at(whole, "country"),
            "years": text_at(whole, "years"), "about": text_at(whole, "about"),
            "material": text_at(whole, "material"), "by": text_at(whole, "by"),
            "invented": is_true(invented),
        },
        "kinds": [
            {
                "id": named(own["kind_names"], text_at(kind, "id")),
                "name": text_at(kind, "name"), "plural": text_at(kind, "plural"),
                "caption": text_at(kind, "caption"), "complete": text_at(kind, "complete"),
            }
            for kind in own["kinds"]
        ],
        "parts": part_rows_of(own),
        "cautions": [
            {
                "kinds": all_named(own["kind_names"], list_at(caution, "kinds")),
                "text": text_at(caution, "text"),
            }
            for caution in live_rows(records, "range_caution")
        ],
        "features": [feature_row_of(own, record) for record in own["features"]],
        "sources": [
            {
                "id": named(own["source_names"], text_at(source, "id")),
                "what": text_at(source, "what"), "year": text_at(source, "year"),
                "trust": share_at(source, "trust", TRUST),
            }
            for source in own["sources"]
        ],
        "items": items, "variants": variant_rows(own, items), "changes": change_rows(own),
        "moves": [], "drawings": drawing_rows_of(own),
    }  # fmt: skip
    for move in live_rows(records, "range_move"):
        out["moves"].append(
            {
                "what": "variant" if text_at(move, "what") == "variant" else "item",
                "was": text_at(move, "was"), "now": text_at(move, "now"),
                "note": text_at(move, "note"),
            }
        )  # fmt: skip
    add_piece_kind(out)
    return out


def add_piece_kind(rows: RangeRows) -> None:
    """A kind for the items that have none, and for a range that has none."""
    lacking = [1 for item in rows["items"] if item["kind"] == PIECE_KIND]
    there = [1 for kind in rows["kinds"] if kind["id"] == PIECE_KIND]
    if len(there) == 0 and (len(lacking) > 0 or len(rows["kinds"]) == 0):
        rows["kinds"].append(
            {"id": PIECE_KIND, "name": "Piece", "plural": "Pieces", "caption": "", "complete": ""}
        )
