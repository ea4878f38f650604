"""What another edition of a range says otherwise than the one before, for people to be told.

Things are matched by what pieces hold of them: the number of an item, the id of a variant, or what
either was called before, as `moves` says. Date marks come with the app and are no news of a range.
"""

from collections.abc import Sequence
from typing import Any

from ..lists import filled, place_of
from ..moved import moved_name
from ..types.editions import Beside, EditionNews
from ..types.pack import Cells, Feature, Item, Moving, Pack, Said, Variant
from .splitting import at_place, places_by

HAIR = 0.000001  # shares are kept to six decimals


def news_of_edition(before: Pack, after: Pack) -> EditionNews:
    """What `after` has, lacks and says otherwise than `before`."""
    out: EditionNews = {
        "new": [], "gone": [], "moved": [], "items": [], "variants_new": [], "variants_gone": [],
        "variants": [], "questions_new": [], "questions_gone": [], "questions": [],
    }  # fmt: skip
    beside = side_by_side(before, after)
    news_of_items(out, beside, before, after)
    news_of_variants(out, beside, before, after)
    news_of_questions(out, beside, before, after)
    return out


def side_by_side(before: Pack, after: Pack) -> Beside:
    """Where everything of the earlier edition stands in the later one."""
    out: Beside = {"features": [], "states": [], "items": [], "variants": []}
    for feature in before["features"]:
        place = place_of(after["features"], feature["id"])
        out["features"].append(place)
        known = after["features"][place]["states"] if place >= 0 else []
        out["states"].append([place_of(known, state["id"]) for state in feature["states"]])
    numbers = [item["number"] for item in after["items"]]
    out["items"] = places_now(after, "item", [item["number"] for item in before["items"]], numbers)
    ids = [variant["id"] for variant in after["variants"]]
    out["variants"] = places_now(
        after, "variant", [variant["id"] for variant in before["variants"]], ids
    )
    return out


def places_now(after: Pack, what: Moving, names: list[str], names_now: list[str]) -> list[int]:
    """Where what had these names stands among those of the later edition, or where it moved to;
    -1 where it is gone.
    """
    places = places_by(names_now)
    out: list[int] = []
    for name in names:
        at = at_place(places, name)
        if at < 0 and "moves" in after:
            at = at_place(places, moved_name(after["moves"], what, name, names_now))
        out.append(at)
    return out


def met_by(count: int, places: list[int]) -> list[int]:
    """Of so many things of the later edition: 1 for each that is one of the earlier."""
    out = filled(count, 0)
    for place in places:
        if place >= 0:
            out[place] = 1
    return out


def news_of_items(out: EditionNews, beside: Beside, before: Pack, after: Pack) -> None:
    """Numbers."""
    for i in range(len(before["items"])):
        item = before["items"][i]
        at = beside["items"][i]
        if at < 0:
            out["gone"].append(item["number"])
        elif after["items"][at]["number"] != item["number"]:
            out["moved"].append([item["number"], after["items"][at]["number"]])
        elif not same_item(beside, before, after, item, after["items"][at]):
            out["items"].append(item["number"])
    met = met_by(len(after["items"]), beside["items"])
    for i in range(len(met)):
        if met[i] == 0:
            out["new"].append(after["items"][i]["number"])


def same_item(beside: Beside, before: Pack, after: Pack, first: Item, second: Item) -> bool:
    """Whether two editions say the same of what has a number."""
    kinds = before["kinds"][first["kind"]]["id"] == after["kinds"][second["kind"]]["id"]
    named = first["name"] == second["name"] and kinds
    said = same_years(before, after, first, second)
    formation = first.get("formation", "") == second.get("formation", "")
    inside = [beside["items"][place] for place in first.get("contains", [])]
    carried = same_list(first.get("carried", []), second.get("carried", []))
    return (
        named and said and formation and carried and same_list(inside, second.get("contains", []))
    )


def same_years(before: Pack, after: Pack, first: Any, second: Any) -> bool:
    """Whether the years, who says so and the note are the same of an item or a variant."""
    years = first.get("years", "") == second.get("years", "")
    note = first.get("note", "") == second.get("note", "")
    mine = said_words(before, first.get("said", []))
    return years and note and same_list(mine, said_words(after, second.get("said", [])))


def said_words(pack: Pack, said: Sequence[Said]) -> list[str]:
    """Who says which years, each as one text."""
    return [pack["sources"][pair[0]]["what"] + " " + pair[1] for pair in said]


def same_list(first: Sequence[Any], second: Sequence[Any]) -> bool:
    """Whether two lists of texts or numbers hold the same, in the same order."""
    if len(first) != len(second):
        return False
    for n in range(len(first)):
        if first[n] != second[n]:
            return False
    return True


def news_of_variants(out: EditionNews, beside: Beside, before: Pack, after: Pack) -> None:
    """Variants of the numbers that are in both."""
    mine = rows_by_variant(before)
    theirs = rows_by_variant(after)
    for v in range(len(before["variants"])):
        variant = before["variants"][v]
        at = beside["variants"][v]
        if at >= 0:
            if not same_variant(beside, before, after, variant, after["variants"][at]) or (
                not same_rows(beside, before, after, mine[v], theirs[at])
            ):
                out["variants"].append(variant["id"])
        elif beside["items"][variant["item"]] >= 0:
            out["variants_gone"].append(variant["id"])
    met = met_by(len(after["variants"]), beside["variants"])
    items = met_by(len(after["items"]), beside["items"])
    for v in range(len(met)):
        if met[v] == 0 and items[after["variants"][v]["item"]] == 1:
            out["variants_new"].append(after["variants"][v]["id"])


def rows_by_variant(pack: Pack) -> list[list[int]]:
    """The rows of each variant."""
    out: list[list[int]] = [[] for _ in pack["variants"]]
    for row in range(len(pack["rows"]["variant"])):
        out[pack["rows"]["variant"][row]].append(row)
    return out


def same_variant(
    beside: Beside, before: Pack, after: Pack, first: Variant, second: Variant
) -> bool:
    """Whether a variant is called, placed and dated the same."""
    placed = beside["items"][first["item"]] == second["item"]
    return placed and first["name"] == second["name"] and same_years(before, after, first, second)


def same_rows(
    beside: Beside, before: Pack, after: Pack, mine: list[int], theirs: list[int]
) -> bool:
    """Whether a variant has the same issues: the same years, and the same to be seen."""
    if len(mine) != len(theirs):
        return False
    for n in range(len(mine)):
        former = before["spans"][before["rows"]["span"][mine[n]]]
        latter = after["spans"][after["rows"]["span"][theirs[n]]]
        if former["first"] != latter["first"] or not near(former["weights"], latter["weights"]):
            return False
        for f in range(len(before["features"])):
            at = beside["features"][f]
            if at >= 0 and not is_mark(before["features"][f]):
                seen = shares_of(before["cells"][f], mine[n])
                now = shares_of(after["cells"][at], theirs[n])
                if not same_shares(beside["states"][f], seen, now):
                    return False
    return True


def near(first: list[float], second: list[float]) -> bool:
    """Whether two lists of weights are the same but for a hair."""
    if len(first) != len(second):
        return False
    for n in range(len(first)):
        if abs(first[n] - second[n]) > HAIR:
            return False
    return True


def is_mark(feature: Feature) -> bool:
    """Whether a feature is a date mark, which the app adds."""
    return feature.get("seen", 0.0) > 0.0


def shares_of(cells: Cells, row: int) -> list[float]:
    """The share of each state on a row; empty: not recorded."""
    return cells["shares"][cells["codes"][row]]


def same_shares(states: list[int], mine: list[float], theirs: list[float]) -> bool:
    """Whether the same share of each state is recorded; states are matched by `states`."""
    if len(mine) == 0 or len(theirs) == 0:
        return len(mine) == len(theirs)
    left = 1.0
    for s in range(len(mine)):
        there = theirs[states[s]] if states[s] >= 0 else 0.0
        if abs(mine[s] - there) > HAIR:
            return False
        left = left - there
    return left < HAIR * len(theirs) + HAIR


def news_of_questions(out: EditionNews, beside: Beside, before: Pack, after: Pack) -> None:
    """What is asked."""
    for f in range(len(before["features"])):
        feature = before["features"][f]
        at = beside["features"][f]
        if not is_mark(feature):
            if at < 0:
                out["questions_gone"].append(feature["name"])
            elif not same_question(before, after, feature, after["features"][at]):
                out["questions"].append(feature["name"])
    met = met_by(len(after["features"]), beside["features"])
    for f in range(len(met)):
        if met[f] == 0 and not is_mark(after["features"][f]):
            out["questions_new"].append(after["features"][f]["name"])


def same_question(before: Pack, after: Pack, first: Feature, second: Feature) -> bool:
    """Whether a question is put the same, with the same answers and drawings."""
    words = first["name"] == second["name"] and first["question"] == second["question"]
    if not words or first.get("where", "") != second.get("where", ""):
        return False
    if len(first["states"]) != len(second["states"]):
        return False
    for s in range(len(first["states"])):
        mine = first["states"][s]
        at = place_of(second["states"], mine["id"])
        if at < 0 or second["states"][at]["name"] != mine["name"]:
            return False
        if drawing_text(before, mine) != drawing_text(after, second["states"][at]):
            return False
    return True


def drawing_text(pack: Pack, state: Any) -> str:
    """The drawing of a state, "" none."""
    drawings = pack.get("drawings", {})
    return drawings.get(state.get("drawing", ""), "")
