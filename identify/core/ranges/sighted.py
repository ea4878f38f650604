"""What somebody else's sighting would change in a range, for whoever keeps it to judge.

A piece that is in no range becomes a variant. Where its years lie outside those of what was seen on
it, they are put beside the known ones, of a running change, a variant or an item: the keeper's own
years are never written over.
"""

from collections.abc import Sequence

from ..edtf import is_season, padded, span_of, written_edtf
from ..lists import place_of
from ..native.values import is_true
from ..types.claims import SeenYears
from ..types.pack import Feature, Pack
from ..types.rows import ChangeRow, ItemRow, RangeRows, SourceRow, TextPair, VariantRow
from ..types.session import Answer
from ..types.sighted import OtherYears, Proposal, Sighted
from .splitting import at_place, places_by
from .together import add_saying, same_change
from .year_bounds import lies_outside, years_of_edtf

SOURCE = "sighting"  # the source that stands for all of them
SOURCE_WHAT = "Sightings noted with the app"
SOURCE_TRUST = 0.5  # how far they are believed: a guess, no source
NAMED = 0.95  # so sure the sighting must be of its variant for its years: as in duplicates.py
COMMON = 0.1  # how often such a variant is met: seldom, or it would have been written down
WORDLESS = "seen, and not recorded before"
CAPITAL = "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789"
PLAIN = "abcdefghijklmnopqrstuvwxyz0123456789"


def sighting_years(text: str) -> str:
    """The years of a sighting as ranges write them, which have months for a season."""
    if not is_season(text):
        return text
    date = written_edtf(text)
    return span_of(date["first"], date["last"])["edtf"]


def looks_told(answers: Sequence[Answer]) -> list[Answer]:
    """The answers that say what was seen."""
    return [answer for answer in answers if answer["how"] not in ["cannot", "other"]]


def plain_looks(answers: Sequence[Answer]) -> list[Answer]:
    """The answers that name one state: of these it is asked when it was made."""
    return [answer for answer in looks_told(answers) if len(answer["states"]) == 1]


def proposal_of(
    rows: RangeRows,
    pack: Pack,
    sighting: Sighted,
    seen: Sequence[SeenYears],
    fields: Sequence[str],
) -> Proposal:
    """What a sighting would change in `rows`. `pack`: compiled of them; `seen`: the years of its
    plain looks there; `fields`: the features that a variant has cells for.
    """
    out: Proposal = {"why": "", "variants": [], "beside": [], "other": []}
    years = sighting_years(sighting["years"])
    unsure = False
    if years != "" and years_of_edtf(years)["problem"] != "":
        out["why"] = "unread"
        return out
    if is_true(sighting["unrecorded"]):
        propose_variant(out, rows, pack, sighting, fields)
    elif years != "":
        unsure = propose_variant_years(out, rows, sighting, years)
    if out["why"] == "" and years != "":
        propose_state_years(out, rows, sighting, years, seen)
    if out["why"] == "" and len(out["variants"]) + len(out["other"]) == 0:
        out["why"] = "unsure" if unsure else "nothing new"
    return out


def propose_variant(
    out: Proposal, rows: RangeRows, pack: Pack, sighting: Sighted, fields: Sequence[str]
) -> None:
    """A variant that nobody wrote down."""
    years = sighting_years(sighting["years"])
    place = -1
    for n in range(len(rows["items"])):
        if rows["items"][n]["number"] == sighting["item"] and place < 0:
            place = n
    if place < 0:
        out["why"] = "no item"
        return
    item = rows["items"][place]
    variant: VariantRow = {
        "id": free_variant(rows, item["number"]), "item": item["number"],
        "name": sighting["called"] if sighting["called"] != "" else WORDLESS,
        "years": years, "source": SOURCE if years != "" else "", "other_years": [],
        "common": COMMON, "note": sighting["text"], "cells": [],
    }  # fmt: skip
    for answer in looks_told(sighting["answers"]):
        if answer["feature"] in fields:
            states = states_text(answer)
            if states != cell_of(item, answer["feature"]):
                variant["cells"].append([answer["feature"], states])
        else:
            at = place_of(pack["features"], answer["feature"])
            if at >= 0:
                out["beside"].append(look_words(pack["features"][at], answer))
    if years != "" and item["years"] != "" and is_beyond(years, item):
        add_other(out, "items", place, item["other_years"], years)
    out["variants"].append(variant)


def free_variant(rows: RangeRows, number: str) -> str:
    """An id for a variant of an item that no variant has."""
    stem = ""
    for c in number.upper():
        letter = plain_letter(c)
        if letter != "":
            stem = stem + letter
        elif stem != "" and stem[len(stem) - 1 : len(stem)] != "_":
            stem = stem + "_"
    if stem != "" and stem[len(stem) - 1 : len(stem)] == "_":
        stem = stem[0 : len(stem) - 1]
    if stem == "" or stem[0:1] in "0123456789":
        stem = "v" + stem
    known = places_by([variant["id"] for variant in rows["variants"]])
    count = 1
    while at_place(known, stem + "_seen" + padded(count, 1)) >= 0:
        count = count + 1
    return stem + "_seen" + padded(count, 1)


def plain_letter(c: str) -> str:
    """A capital or a figure as it stands in an id, "" for anything else."""
    for k in range(len(PLAIN)):
        if CAPITAL[k : k + 1] == c:
            return PLAIN[k : k + 1]
    return ""


def states_text(answer: Answer) -> str:
    """The states of an answer as a cell."""
    out = ""
    for state in answer["states"]:
        out = out + "|" + state if out != "" else state
    return out


def cell_of(row: ItemRow, feature: str) -> str:
    """What a row says of a feature, "" nothing."""
    for cell in row["cells"]:
        if cell[0] == feature:
            text: str = cell[1]
            return text
    return ""


def look_words(feature: Feature, answer: Answer) -> str:
    """What was seen of a feature, in the words of the range."""
    words = ""
    for state in answer["states"]:
        place = place_of(feature["states"], state)
        name = feature["states"][place]["name"] if place >= 0 else state
        words = words + " or " + name if words != "" else name
    return feature["name"] + ": " + words


def is_beyond(years: str, entry: ItemRow | VariantRow) -> bool:
    """Whether these years lie outside all that is said of an item or a variant."""
    said = years_of_edtf(entry["years"])
    earliest = said["earliest"]
    latest = said["latest"]
    for pair in entry["other_years"]:
        other = years_of_edtf(pair[1])
        earliest = min(earliest, other["earliest"])
        latest = max(latest, other["latest"])
    return lies_outside(years, earliest, latest)


def add_other(out: Proposal, table: str, row: int, said: Sequence[TextPair], years: str) -> None:
    """Years beside those of a row, where no sighting said them before."""
    for pair in said:
        if pair[0] == SOURCE and pair[1] == years:
            return
    entry: OtherYears = {"table": "items", "row": row, "years": years}
    if table == "variants":
        entry["table"] = "variants"
    if table == "changes":
        entry["table"] = "changes"
    out["other"].append(entry)


def propose_variant_years(out: Proposal, rows: RangeRows, sighting: Sighted, years: str) -> bool:
    """The likeliest variant, seen outside the years that are said of it. Whether that was left
    out because it may as well be another one.
    """
    if len(sighting["of"]) == 0:
        return False
    place = place_of(rows["variants"], sighting["of"][0]["variant"])
    if place < 0 or rows["variants"][place]["years"] == "":
        return False
    variant = rows["variants"][place]
    if is_beyond(years, variant):
        if sighting["of"][0]["chance"] >= NAMED:
            add_other(out, "variants", place, variant["other_years"], years)
            return False
        return True
    return False


def propose_state_years(
    out: Proposal, rows: RangeRows, sighting: Sighted, years: str, seen: Sequence[SeenYears]
) -> None:
    """Running changes that came earlier, or whose end came later, than is said."""
    when = years_of_edtf(years)
    looks = plain_looks(sighting["answers"])
    for entry in seen:
        state = looks[entry["answer"]]["states"][0]
        places = [place for place in entry["changes"] if place < len(rows["changes"])]
        at = -1
        for n in range(len(places)):
            if rows["changes"][places[n]]["state"] == state and at < 0:
                at = n
        if at >= 0 and entry["earliest"] > 0:
            change = rows["changes"][places[at]]
            if when["last"] <= entry["earliest"] and change["since"] != "":
                add_other(out, "changes", places[at], change["other_from"], years)
            if at + 1 < len(places) and when["first"] >= entry["latest"] + 1:
                after = rows["changes"][places[at + 1]]
                came = padded(int(when["first"] // 1), 4)
                add_other(out, "changes", places[at + 1], after["other_from"], came)


def take_in_proposal(rows: RangeRows, proposal: Proposal, mine: RangeRows) -> None:
    """Change `mine` as proposed: `rows` are those of it that the range is made of, which the
    proposal speaks of.
    """
    if place_of(mine["sources"], SOURCE) < 0:
        source: SourceRow = {
            "id": SOURCE, "what": SOURCE_WHAT, "year": "", "trust": SOURCE_TRUST,
        }  # fmt: skip
        mine["sources"].append(source)
    for variant in proposal["variants"]:
        mine["variants"].append(variant)
    for entry in proposal["other"]:
        said = said_where(rows, entry, mine)
        for pairs in said:
            add_saying(pairs, SOURCE, entry["years"])


def said_where(rows: RangeRows, entry: OtherYears, mine: RangeRows) -> list[list[TextPair]]:
    """What other sources say of the row of `mine` that an entry speaks of: a list of one, or of
    none where it is not there.
    """
    if entry["table"] == "items":
        number = rows["items"][entry["row"]]["number"]
        return [row["other_years"] for row in mine["items"] if row["number"] == number][0:1]
    if entry["table"] == "variants":
        name = rows["variants"][entry["row"]]["id"]
        return [row["other_years"] for row in mine["variants"] if row["id"] == name][0:1]
    change: ChangeRow = rows["changes"][entry["row"]]
    return [
        row["other_from"]
        for row in mine["changes"]
        if same_change(row, change) and row["since"] == change["since"]
    ][0:1]
