"""Two halves of a range, written by two collectors, as one.

Items are matched by their numbers, variants by their keys or names, all else by what it is called.
What only one of them has comes in. Where they say different things both are kept, with who says so:
other years beside the first ones, other states as one of several, with a line in the note.
"""

from collections.abc import Sequence
from typing import Any

from ..lists import place_of
from ..types.rows import (
    BothRanges,
    CellText,
    ChangeRow,
    ItemRow,
    MoveRow,
    RangeRows,
    SourceRow,
    TextPair,
    VariantRow,
)
from .cells import read_states
from .splitting import at_place, places_by

WHO_TRUST = 0.5  # how far another collector is believed: a guess, no source


def add_missing(mine: list[Any], theirs: Sequence[Any]) -> None:
    """Add the rows whose id is not there."""
    for row in theirs:
        if place_of(mine, row["id"]) < 0:
            mine.append(row)


def free_name(known: dict[str, int], name: str) -> str:
    """A name that is not there yet."""
    out = name
    while at_place(known, out) >= 0:
        out = out + "_"
    return out


def source_names_of(mine: RangeRows, theirs: RangeRows) -> dict[str, str]:
    """What their sources are called in mine, where those that are missing are added."""
    out: dict[str, str] = {}
    for source in theirs["sources"]:
        name = ""
        for own in mine["sources"]:
            if own["id"] == source["id"] and own["what"] == source["what"]:
                name = own["id"]
        for own in mine["sources"]:
            if own["what"].upper() == source["what"].upper() and name == "":
                name = own["id"]
        if name == "":
            name = free_name(places_by([row["id"] for row in mine["sources"]]), source["id"])
            fresh: SourceRow = {
                "id": name, "what": source["what"], "year": source["year"],
                "trust": source["trust"],
            }  # fmt: skip
            mine["sources"].append(fresh)
        out["i" + source["id"]] = name
    return out


def in_my_names(names: dict[str, str], source: str) -> str:
    """What a source of theirs is called in mine."""
    return names.get("i" + source, "")


def add_saying(said: list[TextPair], source: str, years: str) -> None:
    """Add what a source says, once."""
    for pair in said:
        if pair[0] == source and pair[1] == years:
            return
    said.append([source, years])


def join_years(out: BothRanges, mine: ItemRow | VariantRow, theirs: ItemRow | VariantRow) -> None:
    """Years: theirs where mine has none, else beside them, said by their source or by who it is."""
    source = in_my_names(out["sources"], theirs["source"])
    if mine["years"] == "":
        mine["years"] = theirs["years"]
        mine["source"] = source
    elif theirs["years"] not in ["", mine["years"]]:
        add_saying(mine["other_years"], source if source != "" else out["who"], theirs["years"])
        out["differ"] = out["differ"] + 1
    for pair in theirs["other_years"]:
        add_saying(mine["other_years"], in_my_names(out["sources"], pair[0]), pair[1])


def join_cells(out: BothRanges, mine: ItemRow | VariantRow, theirs: ItemRow | VariantRow) -> None:
    """What is seen: theirs where mine has nothing, else one of both, with a line in the note."""
    for cell in theirs["cells"]:
        place = -1
        for n in range(len(mine["cells"])):
            if mine["cells"][n][0] == cell[0]:
                place = n
        if place < 0:
            mine["cells"].append(cell)
        elif mine["cells"][place][1] == "?":
            mine["cells"][place] = cell
        elif cell[1] != "?":
            join_cell(out, mine, place, cell)


def join_cell(out: BothRanges, mine: ItemRow | VariantRow, place: int, cell: CellText) -> None:
    """One cell that both have."""
    text: str = mine["cells"][place][1]
    known = read_states(text)
    more = [state for state in read_states(cell[1]) if state not in known]
    if len(more) == 0:
        return
    for state_name in more:
        text = text + "|" + state_name
    mine["cells"][place] = [cell[0], text]
    mine["note"] = with_line(mine["note"], said_line(out, cell))
    out["differ"] = out["differ"] + 1


def said_line(out: BothRanges, cell: CellText) -> str:
    """Who says what of a feature, in the words of the range."""
    feature = out["rows"]["features"][place_of(out["rows"]["features"], cell[0])]
    words = ""
    for state in read_states(cell[1]):
        place = place_of(feature["states"], state)
        name = feature["states"][place]["name"] if place >= 0 else "None"
        words = words + " or " + name if words != "" else name
    return out["name"] + ": " + feature["name"] + ", " + words


def with_line(note: str, line: str) -> str:
    """A note with a line more."""
    return line if note == "" else note + "\n" + line


def join_note(out: BothRanges, mine: ItemRow | VariantRow, theirs: ItemRow | VariantRow) -> None:
    """Notes: theirs where mine has none, else below it, with who says so."""
    if mine["note"] == "":
        mine["note"] = theirs["note"]
    elif theirs["note"] not in ["", mine["note"]]:
        mine["note"] = with_line(mine["note"], out["name"] + ": " + theirs["note"])


def add_texts(mine: list[str], theirs: list[str]) -> None:
    """Add the texts that are not there."""
    for text in theirs:
        if text not in mine:
            mine.append(text)


def join_features(mine: RangeRows, theirs: RangeRows) -> None:
    """Features, and the states that only one of them has."""
    for feature in theirs["features"]:
        place = place_of(mine["features"], feature["id"])
        if place < 0:
            mine["features"].append(feature)
        else:
            add_missing(mine["features"][place]["states"], feature["states"])


def variant_like(mine: RangeRows, theirs: VariantRow) -> int:
    """The place of the variant of mine that one of theirs is; -1 for none."""
    like = -1
    for n in range(len(mine["variants"])):
        own = mine["variants"][n]
        if own["item"] == theirs["item"]:
            if own["id"] == theirs["id"]:
                return n
            if own["name"].upper() == theirs["name"].upper() and like < 0:
                like = n
    return like


def join_items(out: BothRanges, theirs: RangeRows) -> None:
    """Items and variants."""
    mine = out["rows"]
    numbers = places_by([own_item["number"] for own_item in mine["items"]])
    for item in theirs["items"]:
        place = at_place(numbers, item["number"])
        if place < 0:
            item["source"] = in_my_names(out["sources"], item["source"])
            item["other_years"] = renamed_pairs(out, item["other_years"])
            mine["items"].append(item)
            out["added"] = out["added"] + 1
        else:
            own = mine["items"][place]
            join_note(out, own, item)
            add_texts(own["carried"], item["carried"])
            add_texts(own["contains"], item["contains"])
            if own["formation"] == "":
                own["formation"] = item["formation"]
            if own["name"] != item["name"] and item["name"] != item["number"]:
                own["note"] = with_line(own["note"], out["name"] + ": " + item["name"])
            join_years(out, own, item)
            join_cells(out, own, item)
    ids = places_by([row["id"] for row in mine["variants"]])
    for variant in theirs["variants"]:
        like = variant_like(mine, variant)
        name = variant["id"]
        if like < 0:
            variant["id"] = free_name(ids, name)
            out["variants"]["i" + name] = variant["id"]
            variant["source"] = in_my_names(out["sources"], variant["source"])
            variant["other_years"] = renamed_pairs(out, variant["other_years"])
            mine["variants"].append(variant)
            ids["i" + variant["id"]] = 1
        else:
            out["variants"]["i" + name] = mine["variants"][like]["id"]
            join_note(out, mine["variants"][like], variant)
            join_years(out, mine["variants"][like], variant)
            join_cells(out, mine["variants"][like], variant)


def renamed_pairs(out: BothRanges, said: list[TextPair]) -> list[TextPair]:
    """What other sources say, by what they are called in mine."""
    return [[in_my_names(out["sources"], pair[0]), pair[1]] for pair in said]


def same_texts(first: list[str], second: list[str]) -> bool:
    """Whether two lists hold the same texts."""
    missing = [text for text in second if text not in first]
    return len(missing) == 0 and len(first) == len(second)


def same_change(first: ChangeRow, second: ChangeRow) -> bool:
    """Whether two running changes are of the same state, for the same pieces."""
    alike = first["feature"] == second["feature"] and first["state"] == second["state"]
    kinds = same_texts(first["kinds"], second["kinds"])
    return alike and kinds and same_texts(first["items"], second["items"])


def join_changes(out: BothRanges, theirs: RangeRows) -> None:
    """Running changes: of the same state for the same pieces, their dates stand side by side."""
    mine = out["rows"]["changes"]
    for change in theirs["changes"]:
        place = -1
        for n in range(len(mine)):
            if same_change(mine[n], change) and (place < 0 or mine[n]["since"] == change["since"]):
                place = n
        source = in_my_names(out["sources"], change["source"])
        if place < 0:
            change["source"] = source
            change["other_from"] = renamed_pairs(out, change["other_from"])
            mine.append(change)
        elif change["since"] != "" and change["since"] != mine[place]["since"]:
            if mine[place]["since"] == "":
                mine[place]["since"] = change["since"]
                mine[place]["source"] = source
            else:
                says = source if source != "" else out["who"]
                add_saying(mine[place]["other_from"], says, change["since"])
                out["differ"] = out["differ"] + 1


def join_moves(out: BothRanges, theirs: list[MoveRow]) -> None:
    """What was called otherwise before: theirs where mine does not say of it."""
    mine = out["rows"]["moves"]
    for move in theirs:
        same = [1 for own in mine if own["what"] == move["what"] and own["was"] == move["was"]]
        if len(same) == 0:
            if move["what"] == "variant":
                move["now"] = out["variants"].get("i" + move["now"], move["now"])
            mine.append(move)


def add_writer(rows: RangeRows, who: str, name: str) -> None:
    """Add a collector to the sources, once."""
    own: SourceRow = {"id": who, "what": name, "year": "", "trust": WHO_TRUST}
    if place_of(rows["sources"], who) < 0:
        rows["sources"].append(own)


def said_by(rows: RangeRows, who: str, name: str) -> None:
    """Let a range that another collector wrote say so: who it is stands as the source wherever it
    names none.
    """
    add_writer(rows, who, name)
    for row in rows["items"]:
        if row["source"] == "":
            row["source"] = who
    for variant in rows["variants"]:
        if variant["source"] == "" and variant["years"] != "":
            variant["source"] = who
    for change in rows["changes"]:
        if change["source"] == "" and change["since"] != "":
            change["source"] = who


def put_together(mine: RangeRows, theirs: RangeRows, who: str, name: str) -> BothRanges:
    """Mine with what theirs has besides, both changed where they stand. `who` is the id of a source
    that stands for them where they name none, `name` what they are called.
    """
    add_writer(mine, who, name)
    add_missing(mine["kinds"], theirs["kinds"])
    add_missing(mine["parts"], theirs["parts"])
    join_features(mine, theirs)
    add_missing(mine["drawings"], theirs["drawings"])
    out: BothRanges = {
        "rows": mine, "who": who, "name": name, "sources": source_names_of(mine, theirs),
        "variants": {}, "added": 0, "differ": 0,
    }  # fmt: skip
    join_items(out, theirs)
    join_changes(out, theirs)
    join_moves(out, theirs["moves"])
    for caution in theirs["cautions"]:
        same = [1 for other in mine["cautions"] if other["text"] == caution["text"]]
        if len(same) == 0:
            mine["cautions"].append(caution)
    return out
