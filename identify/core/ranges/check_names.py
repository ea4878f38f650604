"""Names that nothing declares, names that stand twice, years outside the range: for all checks.

`check` holds the rows, the mistakes found so far, and what could not be read at all: nothing is
said of what stands there.
"""

from collections.abc import Sequence

from ..lists import place_of
from ..types.rows import (
    Checked,
    FeatureRow,
    RangeRows,
    RowMistake,
    Spot,
    Table,
    TextPair,
    Wrong,
    YearBounds,
)
from .splitting import adds_none, at_place, place_of_text, places_by
from .words import NONE
from .year_bounds import lies_outside, years_of_edtf


def at_field(table: Table, row: int, field: str) -> Spot:
    """A field of a row; "" the row as a whole."""
    return {"table": table, "row": row, "field": field}


def row_mistake(spot: Spot, why: Wrong, said: list[str], known: list[str]) -> RowMistake:
    """A mistake in a field of a row."""
    return {
        "table": spot["table"], "row": spot["row"], "state": -1, "field": spot["field"],
        "why": why, "said": said, "known": known, "other": -1,
    }  # fmt: skip


def to_check(rows: RangeRows, unread: list[str]) -> Checked:
    """What is checked, before anything is found."""
    life = years_of_edtf(rows["range"]["years"])
    whole = life["first"] // 1 == life["first"] and life["last"] // 1 == life["last"]
    plain = life["problem"] == "" and whole and life["first"] > 0 and life["last"] < 10000
    return {
        "rows": rows, "unread": unread, "mistakes": [], "known_life": plain,
        "first": int(life["first"]) if plain else 0,
        "last": int(life["last"]) - 1 if plain else 9999,
        "features": places_by([row["id"] for row in rows["features"]]),
        "items": places_by([row["number"] for row in rows["items"]]),
    }  # fmt: skip


def wrong_field(check: Checked, spot: Spot, why: Wrong) -> RowMistake:
    """Adds a mistake and gives it, for what is to be said besides."""
    out = row_mistake(spot, why, [], [])
    check["mistakes"].append(out)
    return out


def known_word(check: Checked, spot: Spot, word: str, sort: str, words: list[str]) -> bool:
    """Whether a word is among the known; a mistake if it is not. `sort` is the table that declares
    such words, or "states" for those of a feature.

    Nothing is said where what declares them could not be read.
    """
    if word in words:
        return True
    unread = sort in check["unread"] or (sort == "states" and len(words) == 0)
    if not unread:
        mistake = wrong_field(check, spot, "unknown")
        mistake["said"] = [sort, word]
        mistake["known"] = words
    return False


def ids_of(check: Checked, table: Table) -> list[str]:
    """The names that a table declares."""
    rows = check["rows"]
    if table == "kinds":
        return [row["id"] for row in rows["kinds"]]
    if table == "parts":
        return [row["id"] for row in rows["parts"]]
    if table == "features":
        return [row["id"] for row in rows["features"]]
    if table == "sources":
        return [row["id"] for row in rows["sources"]]
    if table == "items":
        return [row["number"] for row in rows["items"]]
    return [row["id"] for row in rows["variants"]]


def states_known(check: Checked, feature: FeatureRow) -> list[str]:
    """The states that may be written for a feature."""
    out = [state["id"] for state in feature["states"]]
    if len(out) > 0 and adds_none(feature, check["rows"]["kinds"]):
        out.append(NONE)
    return out


def feature_named(check: Checked, name: str) -> int:
    """The place of a feature, or -1."""
    return at_place(check["features"], name)


def unique_names(check: Checked, table: Table, field: str, names: Sequence[str]) -> None:
    """A mistake for every name that stands twice."""
    seen: dict[str, int] = {}
    for n in range(len(names)):
        place = at_place(seen, names[n])
        if names[n] != "" and place >= 0:
            mistake = wrong_field(check, at_field(table, n, field), "twice")
            mistake["said"] = [names[n]]
            mistake["other"] = place
        if place < 0:
            seen["i" + names[n]] = n


def checked_years(check: Checked, spot: Spot, text: str) -> YearBounds:
    """The years, with a mistake where they cannot be read or lie outside the range's life."""
    years = years_of_edtf(text)
    if years["problem"] != "":
        mistake = wrong_field(check, spot, "unread")
        if years["problem"] != "unread":
            mistake["why"] = years["problem"]
        mistake["said"] = [text]
    elif lies_outside(text, check["first"], check["last"] + 1):
        mistake = wrong_field(check, spot, "outside")
        mistake["said"] = [text]
        years["problem"] = "unread"
    return years


def checked_saying(
    check: Checked, spot: Spot, source: str, years: str, others: list[TextPair]
) -> bool:
    """Check what the sources of an entry say; whether the first of them says something readable.
    `spot` is the field of its years.
    """
    good = False
    table = spot["table"]
    row = spot["row"]
    field = spot["field"]
    if years != "":
        good = checked_years(check, spot, years)["problem"] == ""
        if source == "":
            wrong_field(check, at_field(table, row, "source"), "unsourced")["said"] = [field]
    elif len(others) > 0:
        wrong_field(check, spot, "no years")["said"] = [field]
    sources = ids_of(check, "sources")
    if source != "":
        known_word(check, at_field(table, row, "source"), source, "sources", sources)
    for pair in others:
        other = at_field(table, row, "other_" + field)
        known_word(check, other, pair[0], "sources", sources)
        checked_years(check, other, pair[1])
    return good


def first_circle(names: list[str], leads: list[list[str]]) -> list[str]:
    """Names that lead to one another in a circle, from the first back to it; [] if none do."""
    places = places_by(names)
    done: dict[str, int] = {}
    for start in names:
        path = [start]
        turns = [0]
        while len(path) > 0:
            name = path[len(path) - 1]
            turn = turns[len(turns) - 1]
            place = at_place(places, name)
            if place < 0 or at_place(done, name) == 1 or turn >= len(leads[place]):
                done["i" + name] = 1
                path = path[0 : len(path) - 1]
                turns = turns[0 : len(turns) - 1]
            else:
                turns[len(turns) - 1] = turn + 1
                following_name = leads[place][turn]
                begin = place_of_text(path, following_name)
                if begin >= 0:
                    out = path[begin:]
                    out.append(following_name)
                    return out
                path.append(following_name)
                turns.append(0)
    return []


def drawn_name(check: Checked, name: str) -> bool:
    """Whether there is a drawing of that name."""
    return place_of(check["rows"]["drawings"], name) >= 0
