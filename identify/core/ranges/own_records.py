"""Rows as the records of a range of one's own: a folder, or a friend's range, that is taken in.

`there` are the records that the range has already: a row is put into the one of the same name, and
keeps its id. New ones get the ids that are given. Fields are those of `types/own_ranges.py`; times
and what a record has besides are left to who keeps them.
"""

from typing import Any

from ..native.values import names_of, value_at
from ..shapes import SEEN, new_fields
from ..types.gate import Group
from ..types.rows import CellText, RangeRows, RecordsMade, TextPair
from .cells import read_states
from .own_rows import by_id, keys_of, named, names_by_id, text_at, variant_records
from .splitting import at_place
from .words import KIND, OF_THE_RANGE

AGAIN = "+"  # behind the name of a row that has the same name as one before it


def names_there(whole: Group, records: list[Group]) -> dict[str, Group]:
    """The rows that a range has, each by its sort and what it is called in files."""
    own = by_id(records, whole)
    variants = variant_records(own)
    names: dict[str, dict[str, str]] = {
        "range_kind": own["kind_names"], "range_part": own["part_names"],
        "range_source": own["source_names"], "range_feature": own["feature_names"],
        "range_item": own["item_names"],
        "range_variant": names_by_id(variants, keys_of(variants)),
    }  # fmt: skip
    out: dict[str, Group] = {}
    for record in records:
        ident = text_at(record, "id")
        sort = text_at(record, "type")
        name = named(names[sort], ident) if sort in names else ""
        if sort == "range_state":
            name = named(own["feature_names"], text_at(record, "feature")) + " "
            name = name + named(own["state_names"], ident)
        if sort == "range_caution":
            name = text_at(record, "text")
        if sort == "range_move":
            name = text_at(record, "what") + " " + text_at(record, "was")
        if sort == "range_change":
            name = named(own["feature_names"], text_at(record, "feature")) + " "
            name = name + named(own["state_names"], text_at(record, "state")) + " "
            name = name + text_at(record, "since")
        if text_at(record, "trashed") == "":
            place = "i" + sort + " " + name
            while place in out:
                place = place + AGAIN
            out[place] = record
    return out


def made_record(made: RecordsMade, sort: str, name: str) -> Group:
    """The record of a row: the one that is there, or a new one."""
    place = "i" + sort + " " + name
    while at_place(made["used"], place) >= 0:
        place = place + AGAIN
    out: Group = {}
    for field in new_fields(sort):
        out[field[0]] = field[1]
    if place in made["there"]:
        before = made["there"][place]
        for field_name in names_of(before):
            is_seen = at_place(made["live"], field_name[len(SEEN) :]) == 1
            is_seen = is_seen and field_name[0 : len(SEEN)] == SEEN
            out[field_name] = [] if is_seen else value_at(before, field_name)
    else:
        out["id"] = made["fresh"][made["next"]]
        made["next"] = made["next"] + 1
    made["used"]["i" + place] = 1
    made["ids"][place] = text_at(out, "id")
    out["type"] = sort
    out["trashed"] = ""
    out["range"] = made["range"]
    made["at"] = made["at"] + 1
    out["at"] = made["at"]
    made["records"].append(out)
    return out


def id_of(made: RecordsMade, sort: str, name: str) -> str:
    """The id of the record of a row; "" where there is none."""
    return made["ids"].get("i" + sort + " " + name, "")


def ids_of_names(made: RecordsMade, sort: str, names: list[str]) -> list[str]:
    """The ids of the records of several rows."""
    return [id_of(made, sort, name) for name in names]


def pairs_of_sources(made: RecordsMade, said: list[TextPair]) -> list[TextPair]:
    """What other sources say, by their ids."""
    return [[id_of(made, "range_source", pair[0]), pair[1]] for pair in said]


def state_id(made: RecordsMade, feature: str, state: str) -> str:
    """The id of a state of a feature."""
    return id_of(made, "range_state", feature + " " + state)


def set_seen(made: RecordsMade, record: Group, cells: list[CellText]) -> None:
    """Put what is seen into the record of an item or a variant."""
    for cell in cells:
        field = SEEN + id_of(made, "range_feature", cell[0])
        if cell[1] == "?":
            record[field] = ["?"]
        else:
            record[field] = [state_id(made, cell[0], state) for state in read_states(cell[1])]


def drawn(rows: RangeRows) -> dict[str, str]:
    """The drawings by their names."""
    out: dict[str, str] = {}
    for drawing in rows["drawings"]:
        out["i" + drawing["id"]] = drawing["text"]
    return out


def copy_fields(record: Group, row: Any, names: list[str]) -> None:
    """Put fields of a row into a record under the same names."""
    for name in names:
        record[name] = row[name]


def add_features(made: RecordsMade, rows: RangeRows) -> None:
    """Features and their states; what points to other features comes last."""
    drawings = drawn(rows)
    records: list[Group] = []
    for row in rows["features"]:
        record = made_record(made, "range_feature", row["id"])
        copy_fields(
            record, row,
            ["name", "title", "question", "where", "seconds", "needs", "layer", "unseen"],
        )  # fmt: skip
        record["key"] = row["id"]
        record["part"] = id_of(made, "range_part", row["part"])
        record["kinds"] = ids_of_names(made, "range_kind", row["kinds"])
        for state in row["states"]:
            made_state = made_record(made, "range_state", row["id"] + " " + state["id"])
            copy_fields(made_state, state, ["name", "caption", "look"])
            made_state["key"] = state["id"]
            made_state["feature"] = text_at(record, "id")
            made_state["drawing"] = drawings.get("i" + row["id"] + "-" + state["id"], "")
        mistaken: list[TextPair] = []
        for pair in row["mistaken"]:
            mistaken.append(
                [state_id(made, row["id"], pair[0]), state_id(made, row["id"], pair[1])]
            )
        record["mistaken"] = mistaken
        records.append(record)
    for n in range(len(records)):
        only_if: list[TextPair] = []
        for condition in rows["features"][n]["when"]:
            for state_name in condition[1]:
                only_if.append(
                    [
                        id_of(made, "range_feature", condition[0]),
                        state_id(made, condition[0], state_name),
                    ]
                )
        records[n]["only_if"] = only_if


def add_items(made: RecordsMade, rows: RangeRows) -> None:
    """Items and variants."""
    records: list[Group] = []
    for row in rows["items"]:
        record = made_record(made, "range_item", row["number"])
        copy_fields(record, row, ["years", "formation", "carried", "note"])
        if text_at(record, "number") == "" and text_at(record, "name") == "":
            record["number"] = row["number"]
        if row["name"] != row["number"]:
            record["name"] = row["name"]
        record["kind"] = id_of(made, "range_kind", row["kind"])
        record["source"] = id_of(made, "range_source", row["source"])
        record["other_years"] = pairs_of_sources(made, row["other_years"])
        set_seen(made, record, row["cells"])
        records.append(record)
    for n in range(len(records)):
        contains = rows["items"][n]["contains"]
        records[n]["contains"] = ids_of_names(made, "range_item", contains)
    for variant in rows["variants"]:
        record = made_record(made, "range_variant", variant["id"])
        copy_fields(record, variant, ["name", "years", "common", "note"])
        record["key"] = variant["id"]
        record["item"] = id_of(made, "range_item", variant["item"])
        record["source"] = id_of(made, "range_source", variant["source"])
        record["other_years"] = pairs_of_sources(made, variant["other_years"])
        set_seen(made, record, variant["cells"])


def add_changes(made: RecordsMade, rows: RangeRows) -> None:
    """Running changes, and what was called otherwise."""
    for row in rows["changes"]:
        name = row["feature"] + " " + row["state"] + " " + row["since"]
        record = made_record(made, "range_change", name)
        copy_fields(record, row, ["since", "until", "note"])
        record["feature"] = id_of(made, "range_feature", row["feature"])
        record["state"] = state_id(made, row["feature"], row["state"])
        record["kinds"] = ids_of_names(made, "range_kind", row["kinds"])
        record["items"] = ids_of_names(made, "range_item", row["items"])
        record["source"] = id_of(made, "range_source", row["source"])
        record["other_from"] = pairs_of_sources(made, row["other_from"])
    for move in rows["moves"]:
        record = made_record(made, "range_move", move["what"] + " " + move["was"])
        copy_fields(record, move, ["what", "was", "now", "note"])


def range_record(rows: RangeRows, whole: Group) -> Group:
    """The record of the range itself, put into the one that is there."""
    out: Group = {}
    for field in new_fields("range"):
        out[field[0]] = field[1]
    for name in names_of(whole):
        out[name] = value_at(whole, name)
    about = rows["range"]
    copy_fields(
        out, about,
        ["name", "maker", "scale", "material", "country", "years", "about", "invented"],
    )  # fmt: skip
    out["by"] = about.get("by", "")
    out["gauge"] = about["gauge_mm"] if about["gauge_mm"] > 0 else None
    out["key"] = rows["id"]
    shared: list[TextPair] = []
    for drawing in rows["drawings"]:
        if drawing["id"] == "none" or drawing["id"] in OF_THE_RANGE:
            shared.append([drawing["id"], drawing["text"]])
    out["drawings"] = shared
    out["type"] = "range"
    return out


def records_of_rows(
    rows: RangeRows, whole: Group, there: list[Group], fresh: list[str]
) -> list[Group]:
    """The records of a range without mistakes: that of the range, which is put into `whole` (with
    its id), and those of its rows.
    """
    made: RecordsMade = {
        "range": text_at(whole, "id"), "there": names_there(whole, there), "used": {}, "ids": {},
        "fresh": fresh, "next": 0, "at": 0, "live": {}, "records": [],
    }  # fmt: skip
    for record in there:
        if text_at(record, "type") == "range_feature" and text_at(record, "trashed") == "":
            made["live"]["i" + text_at(record, "id")] = 1
    drawings = drawn(rows)
    for kind in rows["kinds"]:
        record = made_record(made, "range_kind", kind["id"])
        copy_fields(record, kind, ["name", "plural", "caption", "complete"])
        record["key"] = kind["id"]
        record["drawing"] = drawings.get("i" + KIND + "-" + kind["id"], "")
    for part in rows["parts"]:
        record = made_record(made, "range_part", part["id"])
        copy_fields(record, part, ["name", "swap", "replaced", "altered"])
        record["key"] = part["id"]
    for caution in rows["cautions"]:
        record = made_record(made, "range_caution", caution["text"])
        record["kinds"] = ids_of_names(made, "range_kind", caution["kinds"])
        record["text"] = caution["text"]
    for source in rows["sources"]:
        record = made_record(made, "range_source", source["id"])
        copy_fields(record, source, ["what", "year", "trust"])
        record["key"] = source["id"]
    add_features(made, rows)
    add_items(made, rows)
    add_changes(made, rows)
    out = [range_record(rows, whole)]
    for record in made["records"]:
        out.append(record)
    return out


def rows_needed(rows: RangeRows) -> int:
    """How many records the rows of a range come to at most: so many fresh ids are needed."""
    count = len(rows["kinds"]) + len(rows["parts"]) + len(rows["cautions"])
    count = count + len(rows["sources"]) + len(rows["features"]) + len(rows["items"])
    count = count + len(rows["variants"]) + len(rows["changes"]) + len(rows["moves"])
    for feature in rows["features"]:
        count = count + len(feature["states"])
    return count
