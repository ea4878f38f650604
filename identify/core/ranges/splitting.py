"""Splits variants at the running changes: one issue is a variant in years of one production.

Within one year running changes are taken as independent of one another. So a year needs no row for
each combination of states: one row with the share of each state says the same, exactly. Only a
feature that others depend on (`when`) is split into a row for each of its states. Years with the
same shares make one issue.

The kind comes first among the features, as in the compiled range; its code is 1 and its place.
"""

from collections.abc import Sequence

from ..edtf import padded
from ..lists import add_to, empty_lists, filled, place_of
from ..native.values import is_true
from ..types.rows import (
    CellText,
    ChangeRow,
    FeatureRow,
    Issue,
    Issues,
    ItemRow,
    KindRow,
    Made,
    MarkYears,
    RangeRows,
    Split,
    TextPair,
    VariantRow,
    WeighedYears,
)
from .cells import cell_code, no_cells, read_states
from .weights import begun, in_millionths, year_weights
from .windows import mark_cell
from .words import NONE
from .year_bounds import years_of_edtf

MOST = 4096  # rows of one variant in one year
TEXTS = [padded(n, 1) + "," for n in [0, 1, 2, 3, 4, 5, 6, 7, 8, 9]]


def has_kind(feature: FeatureRow, kind: str) -> bool:
    """Whether pieces of a kind have the feature."""
    return is_true(feature["every"]) or kind in feature["kinds"]


def may_be_none(feature: FeatureRow, kinds: Sequence[KindRow]) -> bool:
    """Whether there are pieces to which the feature does not apply."""
    if len(feature["when"]) > 0:
        return True
    for kind in kinds:
        if not has_kind(feature, kind["id"]):
            return True
    return False


def has_none(feature: FeatureRow) -> bool:
    """Whether a feature has a state for "there is none" of its own."""
    return place_of(feature["states"], NONE) >= 0


def adds_none(feature: FeatureRow, kinds: Sequence[KindRow]) -> bool:
    """Whether the compiler has to add such a state."""
    return may_be_none(feature, kinds) and not has_none(feature)


def state_ids(feature: FeatureRow, kinds: Sequence[KindRow]) -> list[str]:
    """The states of a feature, with the one that is added."""
    out = [state["id"] for state in feature["states"]]
    if adds_none(feature, kinds):
        out.append(NONE)
    return out


def place_of_text(texts: Sequence[str], text: str) -> int:
    """Where a text stands, or -1."""
    for n in range(len(texts)):
        if texts[n] == text:
            return n
    return -1


def at_place(places: dict[str, int], name: str) -> int:
    """What is kept under a name, or -1."""
    return places.get("i" + name, -1)


def places_by(names: Sequence[str]) -> dict[str, int]:
    """The place of each name."""
    out: dict[str, int] = {}
    for n in range(len(names)):
        out["i" + names[n]] = n
    return out


def said_by_entry(entry: ItemRow | VariantRow) -> list[TextPair]:
    """Who says which years; nothing where the entry has none."""
    if entry["years"] == "":
        return []
    return first_and_others(entry["source"], entry["years"], entry["other_years"])


def first_and_others(source: str, years: str, others: list[TextPair]) -> list[TextPair]:
    """What one source says, and what others do."""
    out: list[TextPair] = [[source, years]]
    for pair in others:
        out.append(pair)
    return out


def parents_first(parents: list[list[int]]) -> list[int]:
    """The features in order, each after those that it depends on. There must be no circle."""
    placed = filled(len(parents), 0)
    out: list[int] = []
    going = True
    while going:
        going = False
        for f in range(len(parents)):
            ready = not going and placed[f] == 0
            for parent in parents[f]:
                ready = ready and placed[parent] == 1
            if ready:
                placed[f] = 1
                out.append(f)
                going = True
    return out


def prepare_split(rows: RangeRows, marks: list[MarkYears], first: int, last: int) -> Split:
    """All that is kept to hand while the variants of a range without mistakes are split."""
    features = rows["features"]
    count = len(features) + 1
    kinds = [kind["id"] for kind in rows["kinds"]]
    names = places_by([row["id"] for row in features])
    states = [kinds]
    having = [filled(len(kinds), 1)]
    parents = empty_lists(count)
    wanted: list[list[list[int]]] = empty_lists(count)
    splits = filled(count, 0)
    mark = filled(count, -1)
    for feature in features:
        states.append(state_ids(feature, rows["kinds"]))
        having.append([1 if has_kind(feature, kind) else 0 for kind in kinds])
    for n in range(len(features)):
        for pair in features[n]["when"]:
            parent = at_place(names, pair[0]) + 1
            parents[n + 1].append(parent)
            splits[parent] = 1
            wanted[n + 1].append([place_of_text(states[parent], state) for state in pair[1]])
    for n in range(len(marks)):
        mark[at_place(names, marks[n]["feature"]) + 1] = n
    changes = empty_lists(count)
    for n in range(len(rows["changes"])):
        changes[at_place(names, rows["changes"][n]["feature"]) + 1].append(n)
    cells = [no_cells() for _ in states]
    for k in range(len(kinds)):
        cell_code(cells[0], [k], [1.0])
    split: Split = {
        "rows": rows, "marks": marks, "first": first, "last": last, "states": states,
        "order": parents_first(parents), "parents": parents, "wanted": wanted, "splits": splits,
        "having": having, "mark": mark, "changes": changes, "cells": cells, "groups": [],
        "group_at": {}, "usual": empty_lists(len(marks)), "middles": [],
        "trust": places_by([source["id"] for source in rows["sources"]]),
        "items": places_by([item["number"] for item in rows["items"]]),
        "kinds": places_by(kinds), "features": names,
    }  # fmt: skip
    for change in rows["changes"]:
        split["middles"].append(middle_of(change, first, last))
    for n in range(len(marks)):
        f = at_place(names, marks[n]["feature"]) + 1
        for year in range(first, last + 1):
            shares = mark_cell(marks[n], year)
            places = [place_of_text(states[f], each["state"]) for each in shares]
            code = cell_code(cells[f], places, [each["share"] for each in shares])
            split["usual"][n].append(code)
    return split


def weighed(split: Split, said: list[TextPair]) -> list[WeighedYears]:
    """What sources say, with their trust."""
    out: list[WeighedYears] = []
    for pair in said:
        place = at_place(split["trust"], pair[0])
        trust = split["rows"]["sources"][place]["trust"] if place >= 0 else 1.0
        out.append({"trust": trust, "years": years_of_edtf(pair[1])})
    return out


def came_in(split: Split, change: ChangeRow) -> list[WeighedYears]:
    """When the state came in; nothing for "since the range began"."""
    if change["since"] == "":
        return []
    return weighed(split, first_and_others(change["source"], change["since"], change["other_from"]))


def middle_of(change: ChangeRow, first: int, last: int) -> float:
    """The middle of the time in which the state came in, by which rows follow one another."""
    if change["since"] == "":
        return first
    came = years_of_edtf(change["since"])
    return (max(came["earliest"], first) + min(came["latest"], last + 1)) / 2


def group_of(split: Split, f: int, item: ItemRow) -> int:
    """The running changes of a feature that count for an item, as a group."""
    changes = split["rows"]["changes"]
    rows: list[int] = []
    own: list[int] = []
    for n in split["changes"][f]:
        kinds = changes[n]["kinds"]
        items = changes[n]["items"]
        if len(kinds) == 0 or item["kind"] in kinds:
            if len(items) == 0:
                rows.append(n)
            elif item["number"] in items:
                own.append(n)
    used = own if len(own) > 0 else rows
    key = "f" + padded(f, 1)
    for n in used:
        key = key + "," + padded(n, 1)
    place = split["group_at"].get(key, -1)
    if place < 0:
        place = len(split["groups"])
        split["group_at"][key] = place
        codes = filled(split["last"] - split["first"] + 1, -1)
        split["groups"].append({"feature": f, "places": used, "codes": codes})
    return place


def following(split: Split, rows: list[int], n: int) -> int:
    """The running change that comes next after one, of these; -1 for none."""
    next_one = -1
    middles = split["middles"]
    for other in rows:
        if middles[other] > middles[n] and (next_one < 0 or middles[other] < middles[next_one]):
            next_one = other
    return next_one


def code_in_year(split: Split, place: int, at: int) -> int:
    """The code of what a group of running changes says of a year."""
    group = split["groups"][place]
    if group["codes"][at] < 0:
        group["codes"][at] = new_code(split, group["feature"], group["places"], split["first"] + at)
    return group["codes"][at]


def new_code(split: Split, f: int, rows: list[int], year: int) -> int:
    """The cell of the share of each state in the year's production."""
    first = split["first"]
    last = split["last"]
    changes = split["rows"]["changes"]
    states: list[int] = []
    seen: list[float] = []
    for n in rows:
        change = changes[n]
        came = came_in(split, change)
        here = begun(year, came, first, last) if len(came) > 0 else 1.0
        later = following(split, rows, n)
        if change["until"] != "":
            ended = weighed(split, [[change["source"], change["until"]]])
            here = here * (1.0 - begun(year, ended, first, last))
        elif later >= 0:
            here = here * (1.0 - begun(year, came_in(split, changes[later]), first, last))
        if here > 0.0:
            add_to(states, seen, place_of_text(split["states"][f], change["state"]), here)
    shares = in_millionths(seen)
    some = [s for s in range(len(states)) if shares[s] > 0]
    return cell_code(split["cells"][f], [states[s] for s in some], [shares[s] for s in some])


def fixed_code(split: Split, f: int, text: str) -> int:
    """The code of a cell as it is written: its states in equal shares."""
    states = [place_of_text(split["states"][f], state) for state in read_states(text)]
    if len(states) == 0:
        return 0
    return cell_code(split["cells"][f], states, filled(len(states), 1 / len(states)))


def written_codes(split: Split, item: ItemRow, variant: VariantRow) -> list[int]:
    """By feature the code of what is written of a variant, or else of its item; -1 for nothing."""
    out = filled(len(split["states"]), -1)
    for cells in [item["cells"], variant["cells"]]:
        take_cells(split, out, cells)
    return out


def take_cells(split: Split, out: list[int], cells: list[CellText]) -> None:
    """Put what cells say into a list of codes by feature."""
    for pair in cells:
        f = at_place(split["features"], pair[0]) + 1
        if f > 0 and pair[1] != "":
            out[f] = fixed_code(split, f, pair[1])


def applies(split: Split, f: int, codes: list[int]) -> int:
    """Whether the feature is on such a piece: 1 yes, 0 no, -1 not known."""
    answer = 1
    for n in range(len(split["parents"][f])):
        parent = split["parents"][f][n]
        states = split["cells"][parent]["states"][codes[parent]]
        met = 0
        for state in states:
            if state in split["wanted"][f][n]:
                met = met + 1
        if len(states) > 0 and met == 0:
            return 0
        if met < len(states) or len(states) == 0:
            answer = -1
    return answer


def split_by(split: Split, f: int, made: Made, code: int) -> list[Made]:
    """A part of the production, with a part for each state of a cell that others depend on."""
    out: list[Made] = []
    table = split["cells"][f]
    for n in range(len(table["states"][code])):
        codes = made["codes"][:]
        codes[f] = cell_code(table, [table["states"][code][n]], [1.0])
        out.append({"codes": codes, "weight": made["weight"] * table["shares"][code][n]})
    return out


def production(
    split: Split, kind: int, written: list[int], usual: list[int], too_many: list[int]
) -> list[Made]:
    """What a year's production is made up of, with shares that add up to 1.

    written, usual: codes by feature. The features that make too many rows of it go into `too_many`.
    """
    codes = filled(len(split["states"]), 0)
    codes[0] = kind + 1
    made: list[Made] = [{"codes": codes, "weight": 1.0}]
    for f in split["order"]:
        if f > 0:
            none = place_of_text(split["states"][f], NONE)
            longer: list[Made] = []
            for whole in made:
                there = applies(split, f, whole["codes"]) if split["having"][f][kind] == 1 else 0
                splits = split["splits"][f] == 1
                if there == 1 and written[f] < 0 and splits and usual[f] > 0:
                    for part in split_by(split, f, whole, usual[f]):
                        longer.append(part)
                else:
                    code = written[f] if written[f] >= 0 else usual[f] if there == 1 else 0
                    if there == 0:
                        code = cell_code(split["cells"][f], [none], [1.0])
                    whole["codes"][f] = code
                    longer.append(whole)
            if len(longer) > len(made) and f not in too_many:
                too_many.append(f)
            if len(longer) > MOST:
                return []
            made = longer
    return made


def key_of_codes(codes: list[int]) -> str:
    """A text that only these codes have."""
    out = ""
    for code in codes:
        out = out + (TEXTS[code] if code < 10 else padded(code, 1) + ",")
    return out


def years_said(split: Split, item: ItemRow, variant: VariantRow) -> list[TextPair]:
    """Who says which years of a variant; of its item where it has none."""
    own = said_by_entry(variant)
    return own if len(own) > 0 else said_by_entry(item)


def issue_places(
    made: list[Made], merged: dict[str, int], issues: list[Issue], count: int
) -> list[int]:
    """Which of the issues each part of a year's production belongs to; new ones are added."""
    out: list[int] = []
    for part in made:
        key = key_of_codes(part["codes"])
        place = merged.get(key, -1)
        if place < 0:
            place = len(issues)
            merged[key] = place
            issues.append({"codes": part["codes"], "years": filled(count, 0.0)})
        out.append(place)
    return out


def issues_of(split: Split, variant: VariantRow) -> Issues:
    """The variant's issues, by the year they begin; their weights add up to 1."""
    item = split["rows"]["items"][at_place(split["items"], variant["item"])]
    kind = at_place(split["kinds"], item["kind"])
    count = split["last"] - split["first"] + 1
    said = weighed(split, years_said(split, item, variant))
    weights = in_millionths(year_weights(said, split["first"], split["last"]))
    written = written_codes(split, item, variant)
    groups = filled(len(written), -1)
    for f in range(1, len(written)):
        if written[f] < 0 and split["mark"][f] < 0:
            groups[f] = group_of(split, f, item)
    issues: list[Issue] = []
    merged: dict[str, int] = {}
    too_many: list[int] = []
    usual = filled(len(written), 0)
    made: list[Made] = []
    places: list[int] = []
    for at in range(count):
        if weights[at] > 0:
            changed = len(made) == 0
            for f in range(1, len(written)):
                if written[f] < 0:
                    mark = split["mark"][f]
                    code = (
                        split["usual"][mark][at]
                        if mark >= 0
                        else code_in_year(split, groups[f], at)
                    )
                    changed = changed or code != usual[f]
                    usual[f] = code
            if changed:
                splitting: list[int] = []
                made = production(split, kind, written, usual, splitting)
                if len(made) == 0:
                    too_many = splitting
                    return {"issues": issues, "too_many": too_many}
                places = issue_places(made, merged, issues, count)
            for n in range(len(made)):
                years = issues[places[n]]["years"]
                years[at] = years[at] + weights[at] * made[n]["weight"]
    return {"issues": issues, "too_many": too_many}
