"""The fields that the app's editor shows, made of the records that read them."""

from functools import cache
from typing import Any, Literal, get_args, get_origin

import msgspec

from identify.reference.editing import CSVS
from identify.reference.fields import plain_type, shown_as
from identify.reference.records import (
    Caution,
    Chance,
    Entry,
    Feature,
    Id,
    Ids,
    Kind,
    Measure,
    Pairs,
    Part,
    Range,
    Said,
    State,
    Truth,
    When,
)

TABLES: dict[str, type[Entry]] = {
    "range": Range, "kinds": Kind, "parts": Part, "cautions": Caution, "feature": Feature, **CSVS,
}  # fmt: skip
SORTS: list[tuple[Any, str]] = [
    (Id, "id"), (Truth, "truth"), (Ids | None, "kinds"), (list[State], "states"),
    (Pairs, "pairs"), (When, "when"),
]  # fmt: skip
LAST = ["states", "pairs", "when"]  # in this order: each chooses among what the one before has
SAID_HINT = "source years; source years"


@cache
def editor_fields() -> dict[str, list[list[str]]]:
    """The fields of each table in the order in which they are shown: [[name, label, sort, hint]].

    sort: text, long, number, truth, id, years, kinds, states, pairs, when, state, one:<table>,
    cell:kinds, or words:<word>|<word>.
    """
    return {name: _fields(record, name in CSVS) for name, record in TABLES.items()}


def _fields(record: type[Entry], cells: bool) -> list[list[str]]:
    out = []
    for field in msgspec.structs.fields(record):
        shown = shown_as(field.type)
        if shown is not None:
            kind = plain_type(field.type)
            hint = SAID_HINT if kind == Said else shown.hint
            sort = shown.sort or _sort(kind, cells)
            out.append([field.encode_name, shown.label, sort, hint])
    return sorted(out, key=lambda field: LAST.index(field[2]) if field[2] in LAST else -1)


def _sort(kind: Any, cells: bool) -> str:
    """How a field of this type is typed or chosen; in the cells of a CSV file all is text."""
    for known, sort in SORTS:
        if kind == known:
            return sort
    if not cells and kind in (Chance, Measure):
        return "number"
    for each in get_args(kind):
        if get_origin(each) is Literal:
            return "words:" + "|".join(get_args(each))
    return "text"
