"""Checks items, variants, running changes and moves against the rest of the range."""

from ..types.rows import CellText, Checked, ItemRow, MoveRow, Spot
from .cells import read_states
from .check_names import (
    at_field,
    checked_saying,
    checked_years,
    feature_named,
    first_circle,
    ids_of,
    known_word,
    states_known,
    unique_names,
    wrong_field,
)
from .splitting import at_place, has_kind, place_of_text
from .words import NONE
from .year_bounds import lies_outside, years_of_edtf


def check_items(check: Checked) -> None:
    """Items: numbers, kinds, years, contents and fixed features."""
    rows = check["rows"]
    items = rows["items"]
    numbers = ids_of(check, "items")
    unique_names(check, "items", "number", numbers)
    for n in range(len(items)):
        item = items[n]
        if item["kind"] != "":
            kinds = ids_of(check, "kinds")
            known_word(check, at_field("items", n, "kind"), item["kind"], "kinds", kinds)
        checked_saying(
            check, at_field("items", n, "years"), item["source"], item["years"], item["other_years"]
        )
        for number in item["contains"]:
            if at_place(check["items"], number) < 0:
                known_word(check, at_field("items", n, "contains"), number, "items", numbers)
        check_cells(check, at_field("items", n, ""), [item], item["cells"])
    circle = first_circle(numbers, [each["contains"] for each in items])
    if len(circle) > 0:
        place = at_place(check["items"], circle[0])
        wrong_field(check, at_field("items", place, "contains"), "circle")["said"] = circle
    if len(check["unread"]) > 0:
        return
    having: dict[str, int] = {}
    for variant in rows["variants"]:
        having["i" + variant["item"]] = 1
    for n in range(len(items)):
        if items[n]["number"] != "" and having.get("i" + items[n]["number"], 0) == 0:
            wrong_field(check, at_field("items", n, "number"), "no variant")["said"] = [
                items[n]["number"]
            ]


def check_variants(check: Checked) -> None:
    """Variants: ids, items, years within the item's, and particular features."""
    rows = check["rows"]
    unique_names(check, "variants", "id", ids_of(check, "variants"))
    for n in range(len(rows["variants"])):
        variant = rows["variants"][n]
        readable = checked_saying(
            check, at_field("variants", n, "years"), variant["source"], variant["years"],
            variant["other_years"],
        )  # fmt: skip
        place = at_place(check["items"], variant["item"])
        of: list[ItemRow] = []
        if variant["item"] != "":
            if place >= 0:
                of = [rows["items"][place]]
                if readable:
                    check_within_item(check, n, place)
            else:
                numbers = ids_of(check, "items")
                known_word(
                    check, at_field("variants", n, "item"), variant["item"], "items", numbers
                )
        check_cells(check, at_field("variants", n, ""), of, variant["cells"])


def check_within_item(check: Checked, n: int, place: int) -> None:
    """A variant cannot be older or younger than every source says its item is.

    Other sources may say so: they are there because they disagree.
    """
    item = check["rows"]["items"][place]
    texts = [item["years"]]
    for pair in item["other_years"]:
        texts.append(pair[1])
    earliest = 0.0
    latest = 0.0
    for at in range(len(texts)):
        life = years_of_edtf(texts[at])
        if life["problem"] != "":
            return
        earliest = life["earliest"] if at == 0 else min(earliest, life["earliest"])
        latest = life["latest"] if at == 0 else max(latest, life["latest"])
    years = check["rows"]["variants"][n]["years"]
    if lies_outside(years, earliest, latest):
        mistake = wrong_field(check, at_field("variants", n, "years"), "outside item")
        mistake["said"] = [years, item["number"], item["years"]]
        mistake["other"] = place


def check_cells(check: Checked, spot: Spot, of: list[ItemRow], cells: list[CellText]) -> None:
    """States that exist, of features that such a piece has. `of`: the item, where it is known."""
    own: dict[str, str] = {}
    for item in of:
        for cell in item["cells"]:
            own["i" + cell[0]] = cell[1]
    for cell in cells:
        own["i" + cell[0]] = cell[1]
    for cell in cells:
        place = feature_named(check, cell[0])
        if place >= 0:
            check_cell(check, at_field(spot["table"], spot["row"], cell[0]), of, cell[1], own)


def check_cell(
    check: Checked, spot: Spot, of: list[ItemRow], text: str, own: dict[str, str]
) -> None:
    """One cell: what is written of the feature that the spot names."""
    name = spot["field"]
    feature = check["rows"]["features"][feature_named(check, name)]
    states = read_states(text)
    different: list[str] = []
    for state in states:
        if state == "?":
            wrong_field(check, spot, "question mark")
        else:
            known_word(check, spot, state, "states", states_known(check, feature))
        if state not in different:
            different.append(state)
    if len(different) < len(states):
        wrong_field(check, spot, "cell twice")["said"] = [text]
    if len(of) == 0 or (len(states) == 1 and states[0] == NONE):
        return
    kind = of[0]["kind"]
    if kind in ids_of(check, "kinds") and not has_kind(feature, kind):
        wrong_field(check, spot, "not of kind")["said"] = [kind]
    for pair in feature["when"]:
        has = read_states(own.get("i" + pair[0], "?"))
        met = [held for held in has if held in pair[1]]
        if len(has) > 0 and len(met) == 0:
            mistake = wrong_field(check, spot, "no such there")
            mistake["said"] = [pair[0], own.get("i" + pair[0], "?"), name]


def check_changes(check: Checked) -> None:
    """Running changes: features, states, times and what they are limited to."""
    kinds = ids_of(check, "kinds")
    names = ids_of(check, "features")
    for n in range(len(check["rows"]["changes"])):
        change = check["rows"]["changes"][n]
        check_times(check, n)
        for kind in change["kinds"]:
            known_word(check, at_field("changes", n, "kinds"), kind, "kinds", kinds)
        for number in change["items"]:
            if at_place(check["items"], number) < 0:
                known_word(
                    check, at_field("changes", n, "items"), number, "items", ids_of(check, "items")
                )
        name = change["feature"]
        if name != "" and known_word(
            check, at_field("changes", n, "feature"), name, "features", names
        ):
            feature = check["rows"]["features"][feature_named(check, name)]
            if change["state"] != "":
                known = states_known(check, feature)
                known_word(check, at_field("changes", n, "state"), change["state"], "states", known)
            check_limits(check, n)


def check_limits(check: Checked, n: int) -> None:
    """The kinds and items that a running change is limited to have its feature."""
    change = check["rows"]["changes"][n]
    feature = check["rows"]["features"][feature_named(check, change["feature"])]
    kinds = ids_of(check, "kinds")
    for kind in change["kinds"]:
        if kind in kinds and not has_kind(feature, kind):
            wrong_field(check, at_field("changes", n, "kinds"), "change kind")["said"] = [
                feature["id"], kind,
            ]  # fmt: skip
    for number in change["items"]:
        place = at_place(check["items"], number)
        kind = check["rows"]["items"][place]["kind"] if place >= 0 else ""
        named = len(change["kinds"]) == 0 or kind in change["kinds"]
        if kind in kinds and not (named and has_kind(feature, kind)):
            wrong_field(check, at_field("changes", n, "items"), "change item")["said"] = [
                number,
                kind,
            ]


def check_times(check: Checked, n: int) -> None:
    """From when to when a running change counts."""
    change = check["rows"]["changes"][n]
    checked_saying(
        check,
        at_field("changes", n, "from"),
        change["source"],
        change["since"],
        change["other_from"],
    )
    if change["until"] == "":
        return
    ended = checked_years(check, at_field("changes", n, "to"), change["until"])
    came = years_of_edtf(change["since"])
    if ended["problem"] == "" and came["problem"] == "" and came["first"] >= ended["last"]:
        mistake = wrong_field(check, at_field("changes", n, "to"), "late")
        mistake["said"] = [change["since"], change["until"]]


def check_moves(check: Checked) -> None:
    """Moves: from what is no more to what is there, at once or by further rows."""
    if len(check["unread"]) > 0:
        return
    check_moves_of(check, "item", ids_of(check, "items"))
    check_moves_of(check, "variant", ids_of(check, "variants"))


def moves_named(moves: list[MoveRow], what: str) -> list[int]:
    """The places of the moves of items, or of variants."""
    return [n for n in range(len(moves)) if moves[n]["what"] == what and moves[n]["was"] != ""]


def check_moves_of(check: Checked, what: str, known: list[str]) -> None:
    """The moves of items, or of variants."""
    moves = check["rows"]["moves"]
    places = moves_named(moves, what)
    olds: list[str] = []
    news: list[str] = []
    seen: list[str] = []
    for n in places:
        was = moves[n]["was"]
        if was in seen:
            mistake = wrong_field(check, at_field("moves", n, "from"), "twice")
            mistake["said"] = [was]
            mistake["other"] = places[place_of_text(seen, was)]
        seen.append(was)
        at = place_of_text(olds, was)
        if at >= 0:
            news[at] = moves[n]["now"]
        else:
            olds.append(was)
            news.append(moves[n]["now"])
    for n in places:
        now = moves[n]["now"]
        if moves[n]["was"] in known:
            wrong_field(check, at_field("moves", n, "from"), "there still")["said"] = [what]
        elif now != "" and now not in known and now not in olds:
            mistake = wrong_field(check, at_field("moves", n, "to"), "unknown")
            mistake["said"] = [what, now]
            mistake["known"] = sorted(known, key=lambda name: name)
    leads = [[newer] if newer in olds else [] for newer in news]
    circle = first_circle(olds, leads)
    if len(circle) > 0:
        place = places[place_of_text(seen, circle[0])]
        wrong_field(check, at_field("moves", place, "to"), "circle")["said"] = circle
