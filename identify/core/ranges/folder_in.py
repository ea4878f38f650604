"""A folder of files as the rows of a range: its TOML and its tables, taken apart already.

What is not as it should be counts as not said; `usable.py` tells what is wrong with the rows. What
`check` says of a folder, with file and line, is told by `identify/reference/`; both cut cells in
the same way.
"""

from ..native.values import is_true, names_of, number_in, value_at
from ..types.folders import FolderFiles, FolderRead
from ..types.gate import Group
from ..types.rows import (
    CellText,
    ChangeRow,
    DrawingRow,
    FeatureRow,
    ItemRow,
    RangeRows,
    StatesOf,
    TextPair,
    VariantRow,
)
from .cells import stripped
from .kit_entries import (
    groups_only,
    has,
    in_the_kit,
    new_picking,
    picked_entries,
    said_group,
    said_list,
    said_text,
)
from .own_rows import decimal_text, needs_of, number_at
from .splitting import at_place
from .words import KIND, NONE, OF_THE_RANGE

ITEM_COLUMNS = [
    "number", "name", "kind", "years", "source", "other_years", "formation", "contains", "carried",
    "note",
]  # fmt: skip
VARIANT_COLUMNS = ["id", "item", "name", "years", "source", "other_years", "common", "note"]
CHANGE_COLUMNS = [
    "feature", "state", "from", "to", "kinds", "items", "source", "other_from", "note",
]  # fmt: skip
SOURCE_COLUMNS = ["id", "what", "year", "trust"]
MOVE_COLUMNS = ["what", "from", "to", "note"]


def cut_at(text: str, mark: str) -> list[str]:
    """The parts of a cell between these marks, without blanks around them; no empty ones."""
    out: list[str] = []
    part = ""
    for n in range(len(text)):
        c = text[n : n + 1]
        if c == mark:
            out.append(stripped(part))
            part = ""
        else:
            part = part + c
    out.append(stripped(part))
    return [piece for piece in out if piece != ""]


def said_pairs_of(text: str) -> list[TextPair]:
    """Pairs of a source and its years: "book71 1958/1961; ad57 1957". What has no blank in it is
    none.
    """
    out: list[TextPair] = []
    for pair in cut_at(text, ";"):
        place = blank_in(pair)
        if place > 0:
            out.append([pair[0:place], stripped(pair[place:])])
    return out


def blank_in(text: str) -> int:
    """The place of the first blank in a text, -1 for none."""
    for n in range(len(text)):
        if text[n : n + 1] == " ":
            return n
    return -1


def columns_of(table: list[list[str]]) -> dict[str, int]:
    """The place of each column; its names are in small letters."""
    out: dict[str, int] = {}
    if len(table) > 0:
        for n in range(len(table[0])):
            name = stripped(table[0][n])
            if name != "" and at_place(out, name) < 0:
                out["i" + name] = n
    return out


def cell_at(row: list[str], columns: dict[str, int], name: str) -> str:
    """What stands in a column of a row."""
    place = at_place(columns, name)
    return stripped(row[place]) if place >= 0 and place < len(row) else ""


def cells_seen(
    row: list[str], columns: dict[str, int], features: list[FeatureRow]
) -> list[CellText]:
    """What a row says of features, in the order of the columns."""
    out: list[CellText] = []
    for place in range(len(row)):
        for feature in features:
            text = stripped(row[place])
            if text != "" and at_place(columns, feature["id"]) == place:
                out.append([feature["id"], text])
    return out


def number_cell(text: str, usual: float) -> float:
    """A number in a cell."""
    number = number_in(text)
    return number if number is not None else usual


def full_rows(table: list[list[str]]) -> list[list[str]]:
    """The rows below the names of the columns that say anything."""
    out: list[list[str]] = []
    for n in range(1, len(table)):
        said = [cell for cell in table[n] if stripped(cell) != ""]
        if len(said) > 0:
            out.append(table[n])
    return out


def item_rows_of(table: list[list[str]], features: list[FeatureRow]) -> list[ItemRow]:
    """items.csv"""
    at = columns_of(table)
    return [
        {
            "number": cell_at(row, at, "number"), "name": cell_at(row, at, "name"),
            "kind": cell_at(row, at, "kind"), "years": cell_at(row, at, "years"),
            "source": cell_at(row, at, "source"),
            "other_years": said_pairs_of(cell_at(row, at, "other_years")),
            "formation": cell_at(row, at, "formation"),
            "contains": cut_at(cell_at(row, at, "contains"), ";"),
            "carried": cut_at(cell_at(row, at, "carried"), ";"), "note": cell_at(row, at, "note"),
            "cells": cells_seen(row, at, features),
        }
        for row in full_rows(table)
    ]  # fmt: skip


def variant_rows_of(table: list[list[str]], features: list[FeatureRow]) -> list[VariantRow]:
    """variants.csv"""
    at = columns_of(table)
    return [
        {
            "id": cell_at(row, at, "id"), "item": cell_at(row, at, "item"),
            "name": cell_at(row, at, "name"), "years": cell_at(row, at, "years"),
            "source": cell_at(row, at, "source"),
            "other_years": said_pairs_of(cell_at(row, at, "other_years")),
            "common": number_cell(cell_at(row, at, "common"), 1.0),
            "note": cell_at(row, at, "note"), "cells": cells_seen(row, at, features),
        }
        for row in full_rows(table)
    ]  # fmt: skip


def change_rows_of(table: list[list[str]]) -> list[ChangeRow]:
    """changes.csv"""
    at = columns_of(table)
    return [
        {
            "feature": cell_at(row, at, "feature"), "state": cell_at(row, at, "state"),
            "since": cell_at(row, at, "from"), "until": cell_at(row, at, "to"),
            "kinds": cut_at(cell_at(row, at, "kinds"), ";"),
            "items": cut_at(cell_at(row, at, "items"), ";"),
            "source": cell_at(row, at, "source"),
            "other_from": said_pairs_of(cell_at(row, at, "other_from")),
            "note": cell_at(row, at, "note"), "to_source": "", "hard": [],
        }
        for row in full_rows(table)
    ]  # fmt: skip


def conditions_said(given: Group) -> list[StatesOf]:
    """What other features must be like."""
    out: list[StatesOf] = []
    for name in names_of(given):
        out.append([name, said_list(given, name)])
    return out


def feature_row_said(entry: Group) -> FeatureRow:
    """A feature as features.toml says it."""
    out: FeatureRow = {
        "id": said_text(entry, "id"), "name": said_text(entry, "name"),
        "title": said_text(entry, "title"), "question": said_text(entry, "question"),
        "where": said_text(entry, "where"), "part": said_text(entry, "part"),
        "seconds": number_at(entry, "seconds", 1.0),
        "needs": needs_of(said_text(entry, "needs")),
        "every": not has(entry, "kinds"), "kinds": said_list(entry, "kinds"),
        "when": conditions_said(said_group(entry, "when")),
        "mistaken": said_list(entry, "mistaken"), "states": [],
        "layer": said_text(entry, "layer"), "unseen": said_text(entry, "unseen"), "seen": 0.0,
    }  # fmt: skip
    states = said_list(entry, "states")
    if groups_only(states):
        for state in states:
            out["states"].append(
                {
                    "id": said_text(state, "id"), "name": said_text(state, "name"),
                    "caption": said_text(state, "caption"), "look": said_text(state, "look"),
                }
            )  # fmt: skip
    return out


def entries_said(of: Group, table: str) -> list[Group]:
    """The entries of a table of a TOML file."""
    entries = said_list(of, table)
    return entries if groups_only(entries) else []


def drawings_picked(kinds: list[Group], features: list[Group]) -> list[TextPair]:
    """The names that drawings of the kit have here, and those that they have there."""
    out: list[TextPair] = []
    for kind in kinds:
        if said_text(kind, "kit") != "":
            out.append([KIND + "-" + said_text(kind, "id"), KIND + "-" + said_text(kind, "kit")])
    for feature in features:
        of_kit = said_text(feature, "kit")
        for state in said_list(feature, "states") if of_kit != "" else []:
            here = said_text(feature, "id") + "-" + said_text(state, "id")
            out.append([here, of_kit + "-" + in_the_kit(state)])
    if len(out) > 0:
        for shared in [NONE, OF_THE_RANGE[0], OF_THE_RANGE[1]]:
            out.append([shared, shared])
    return out


def drawings_said(given: FolderFiles, picked: list[TextPair]) -> list[DrawingRow]:
    """The kit's drawings of what was picked, and the folder's own, which go before them."""
    out: list[DrawingRow] = []
    used: dict[str, int] = {}
    own: dict[str, int] = {}
    for n in range(len(given["drawings"])):
        own["i" + given["drawings"][n]["id"]] = n
    for pair in picked:
        place = at_place(own, pair[0])
        used["i" + pair[0]] = 1
        if place >= 0:
            out.append(given["drawings"][place])
        elif has(given["drawn"], pair[1]):
            out.append({"id": pair[0], "text": said_text(given["drawn"], pair[1])})
    for drawing in given["drawings"]:
        if at_place(used, drawing["id"]) < 0:
            out.append(drawing)
    return out


def unknown_columns(given: FolderFiles, features: list[FeatureRow]) -> list[list[str]]:
    """The columns that mean nothing: [file, column]."""
    looks = [feature["id"] for feature in features]
    out: list[list[str]] = []
    tables = [given["items"], given["variants"], given["changes"], given["sources"], given["moves"]]
    known = [ITEM_COLUMNS, VARIANT_COLUMNS, CHANGE_COLUMNS, SOURCE_COLUMNS, MOVE_COLUMNS]
    files = ["items", "variants", "changes", "sources", "moves"]
    for n in range(len(files)):
        for column in tables[n][0] if len(tables[n]) > 0 else []:
            name = stripped(column)
            if name != "" and name not in known[n] and (n > 1 or name not in looks):
                out.append([files[n], name])
    return out


def rows_of_folder(given: FolderFiles) -> FolderRead:
    """The rows of a folder."""
    about = given["about"]
    picked = new_picking(given["written"])
    kinds = picked_entries(picked, "kinds", entries_said(about, "kinds"))
    parts = picked_entries(picked, "parts", entries_said(about, "parts"))
    looks = picked_entries(picked, "feature", entries_said(given["looks"], "feature"))
    features = [feature_row_said(entry) for entry in looks]
    sources = columns_of(given["sources"])
    moves = columns_of(given["moves"])
    gauge = number_at(about, "gauge_mm", 0.0)
    invented = value_at(about, "invented")
    rows: RangeRows = {
        "id": given["id"],
        "range": {
            "name": said_text(about, "name"), "maker": said_text(about, "maker"),
            "gauge_mm": gauge, "gauge": decimal_text(gauge) + " mm" if gauge > 0 else "",
            "scale": said_text(about, "scale"), "country": said_text(about, "country"),
            "years": said_text(about, "years"), "about": said_text(about, "about"),
            "material": said_text(about, "material"), "by": said_text(about, "by"),
            "invented": is_true(invented),
        },
        "kinds": [
            {
                "id": said_text(kind, "id"), "name": said_text(kind, "name"),
                "plural": said_text(kind, "plural"), "caption": said_text(kind, "caption"),
                "complete": said_text(kind, "complete"),
            }
            for kind in kinds
        ],
        "parts": [
            {
                "id": said_text(part, "id"), "name": said_text(part, "name"),
                "swap": number_at(part, "swap", 0.0), "replaced": said_text(part, "replaced"),
                "altered": said_text(part, "altered"),
            }
            for part in parts
        ],
        "cautions": [
            {"kinds": said_list(caution, "kinds"), "text": said_text(caution, "text")}
            for caution in entries_said(about, "cautions")
        ],
        "features": features,
        "sources": [
            {
                "id": cell_at(row, sources, "id"), "what": cell_at(row, sources, "what"),
                "year": cell_at(row, sources, "year"),
                "trust": number_cell(cell_at(row, sources, "trust"), 1.0),
            }
            for row in full_rows(given["sources"])
        ],
        "items": item_rows_of(given["items"], features),
        "variants": variant_rows_of(given["variants"], features),
        "changes": change_rows_of(given["changes"]),
        "moves": [
            {
                "what": "variant" if cell_at(row, moves, "what") == "variant" else "item",
                "was": cell_at(row, moves, "from"), "now": cell_at(row, moves, "to"),
                "note": cell_at(row, moves, "note"),
            }
            for row in full_rows(given["moves"])
        ],
        "drawings": drawings_said(given, drawings_picked(kinds, looks)),
    }  # fmt: skip
    return {"rows": rows, "unknown": unknown_columns(given, features)}
