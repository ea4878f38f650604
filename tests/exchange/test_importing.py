"""A collector's list taken in, and taken in again."""

from copy import deepcopy
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.importing.rows_matched import new_importing
from identify.exchange.backups import taken_up
from identify.exchange.import_steps import match_rows, name_rows, read_file
from tests.exchange.fitting import demo_reference
from tests.exchange.strategies import QUICK, lists

NUMBERS = ["P 21", "p21", "G 10", "GIO", "43/6", "10L", "P 20"]
NAMES = ["Express electric, box-shaped body", "oil tank wagon", "Dining car", "small tank engine"]
LISTS = lists(NUMBERS, NAMES)


def importing(
    data: bytes, existing: list[dict[str, Any]], sort: str = "piece"
) -> list[dict[str, Any]]:
    """What becomes of each row of a file, its columns as they are guessed."""
    table = read_file(data, demo_reference())
    return matched(table["columns"], table["rows"], existing, sort)


def matched(
    columns: list[dict[str, Any]],
    table: list[dict[str, Any]],
    existing: list[dict[str, Any]],
    sort: str = "piece",
) -> list[dict[str, Any]]:
    """What becomes of rows, their columns as the person confirmed them."""
    keys = name_rows(sort, columns, table)["keys"]
    rows = [row | {"key": key} for row, key in zip(table, keys, strict=True)]
    return match_rows(new_importing(demo_reference(), sort, "GBP", columns), rows, existing)


FOLDER = Path(__file__).parent.parent.parent / "fixtures" / "exchange"
FIELDS = ["number", "name", "variant", "condition", "boxed", "price", "when", "notes"]


def confirmed(
    rows: list[list[str]], existing: list[dict[str, Any]], sort: str = "piece"
) -> list[dict[str, Any]]:
    """What becomes of the rows of a list of the strategy."""
    columns = [
        {"name": name, "field": field, "order": ""}
        for name, field in zip(rows[0], FIELDS, strict=True)
    ]
    table = [{"row": n, "cells": row} for n, row in enumerate(rows[1:], 2)]
    return matched(columns, table, existing, sort)


def taken(rows: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The records after a first import."""
    found: list[dict[str, Any]] = []
    taken_up(found, rows, "2024-01-01T00:00:00.000Z")
    return found


@pytest.mark.heavy
@pytest.mark.parametrize("sort", ["piece", "want", "note"])
@given(rows=LISTS)
@QUICK
def test_importing_the_same_file_again_changes_nothing(sort, rows):
    found = taken(confirmed(rows, [], sort))
    again = confirmed(rows, found, sort)
    assert [row["same"]["sets"] for row in again if not row["failed"]] == [{}] * len(found)
    before = deepcopy(found)
    taken_up(found, again, "2025-01-01T00:00:00.000Z")
    assert found == before


@pytest.mark.heavy
@given(rows=LISTS, data=st.data())
@QUICK
def test_rows_in_another_order_are_known_again(rows, data):
    found = taken(confirmed(rows, []))
    unlike = list({tuple(row[:3]): row for row in rows[1:]}.values())
    mixed = [rows[0], *data.draw(st.permutations(unlike))]
    if len(unlike) == len(rows) - 1:
        again = confirmed(mixed, found)
        assert [row["same"]["sets"] for row in again if not row["failed"]] == [{}] * len(found)


@pytest.mark.heavy
@given(rows=LISTS, change=st.sampled_from(["good", "C5", "excellent"]), data=st.data())
@QUICK
def test_a_changed_cell_changes_just_its_field(rows, change, data):
    found = taken(confirmed(rows, []))
    at = data.draw(st.integers(1, len(rows) - 1))
    changed = deepcopy(rows)
    changed[at][3] = change
    again = confirmed(changed, found)
    for row in again:
        if not row["failed"]:
            assert set(row["same"]["sets"]) <= {"condition", "notes", "came"}
            assert row["same"]["clashes"] == []
    mine = next(row for row in again if row["row"] == at + 1)
    if not mine["failed"]:
        word = {"good": "good", "C5": "good", "excellent": "excellent"}[change]
        now = next(record for record in found if record["id"] == mine["same"]["id"])
        assert (now | mine["same"]["sets"])["condition"] == word


@pytest.mark.heavy
@given(rows=LISTS)
@QUICK
def test_what_the_person_changed_is_kept_and_the_clash_told(rows):
    found = taken(confirmed(rows, []))
    for record in found:
        record |= {"condition": "fair", "notes": "my own words"}
    mine = deepcopy(found)
    changed = [[*row[:3], "poor", *row[4:7], "another remark"] for row in rows[1:]]
    again = confirmed([rows[0], *changed], found)
    for row in again:
        if not row["failed"]:
            assert {clash["field"] for clash in row["same"]["clashes"]} == {"condition", "notes"}
            assert row["same"]["sets"] == {}
    taken_up(found, again, "2025-01-01T00:00:00.000Z")
    assert found == mine


LIST = (FOLDER / "list.csv").read_bytes()
BAD = [
    'Row 5, "Condition": "exc/vg" was taken as "very good".',
    'Row 5, "Paid": "abc" has a word in it that is not a currency. Write it like 4.50, £4 or '
    "12/6. It is kept in the notes.",
    'Row 5, "Bought": "31/2/98" is not a date that can be read. February 1998 has 28 days. It is '
    "kept in the notes.",
    'Row 8, "Condition": "brilliant" is not a condition the app knows. Write as new, '
    "excellent, very good, good, fair or poor, or a grade from C10 (the best) to C1. It is kept in "
    "the notes.",
]


def test_a_list_is_understood():
    rows = importing(LIST, [])
    first = rows[0]["record"]
    assert (first["item"], first["of"]) == ("P 21", [{"variant": "p21_c", "chance": 1}])
    assert (first["condition"], first["boxed"], first["when"]) == (
        "very good",
        "yes",
        "1998-05-12",
    )
    assert first["paid"] == {"minor": 137, "over": 24, "currency": "GBP", "typed": "£1 7s 6d"}
    second = rows[1]["record"]
    assert (second["item"], second["of"]) == ("P 20", [{"variant": "p20_e", "chance": 1}])
    assert (second["boxed"], second["box_condition"]) == ("yes", "good")
    assert second["paid"]["minor"] == 450
    third = rows[2]
    assert (third["record"]["item"], third["candidates"][0]["how"]) == ("G 10", "misread")
    assert third["record"]["notes"] == "Condition: exc/vg\nPaid: abc\nBought: 31/2/98"
    assert (rows[3]["record"]["called"], rows[3]["record"]["item"]) == ("snow plough", "")
    for row in rows:  # to choose what was chosen, or nothing where nothing was, changes nothing
        if row["record"]:
            sets = row["candidates"][row["chosen"]]["sets"] if row["chosen"] >= 0 else row["none"]
            assert set(sets) == {"pack", "item", "of", "called"}
            assert {name: row["record"][name] for name in sets} == sets
    assert third["none"]["called"] == "G 1O Oil tank"
    assert rows[5]["record"]["when"] == "1957~"
    assert [p["sentence"] for row in rows for p in row["problems"]] == BAD
    assert [row["failed"] for row in rows if row["failed"]] == [
        "Row 7: nothing says which piece this is: no number, no name, no words."
    ]


HEADS = "No.;What;Condition;Box;Box condition;Paid\n"


@pytest.mark.parametrize(
    ("row", "why"),
    [
        ("-----;=====;-----;;;", "nothing says which piece this is"),
        (";?;good;;;", "nothing says which piece this is"),
        ("TOTAL;;;;;£123", "this is a total, not a piece"),
        ("24;Total of all pieces:;;;;£123", "this is a total, not a piece"),
        (";Gesamt;;;;90 €", "this is a total, not a piece"),
        (";xyz;;;;", '"xyz" names no piece'),
        ("xyz;-----;TOTAL;;;", '"xyz -----" names no piece'),
    ],
)
@pytest.mark.parametrize("sort", ["piece", "want", "note"])
def test_a_row_that_names_no_piece_is_none(row, why, sort):
    found = importing((HEADS + "P 21;Diesel;good;y;good;£4\n" + row + "\n").encode(), [], sort)[-1]
    assert why in found["failed"]
    assert (found["record"], found["if_chosen"], found["candidates"]) == (None, None, [])
    assert found["problems"] == [], "nothing of it is kept in notes"


@pytest.mark.parametrize(
    ("row", "called"),
    [
        (";snow plough;;;;", "snow plough"),
        (";Sleeper;;;;", "Sleeper"),
        (";Снег;;;;", "Снег"),
        (";xyz;good;;;", "xyz"),
        (";xyz;;;;£4", "xyz"),
        (";X 4001;;;;", "X 4001"),
        ("4001;Total;good;;;", "4001 Total"),
        (";Total Oil tank;;;;", "Total Oil tank"),
        (";van;;;;", "van"),
    ],
)
def test_a_name_that_is_in_no_reference_is_still_a_name(row, called):
    found = importing((HEADS + "P 21;Diesel;good;y;good;£4\n" + row + "\n").encode(), [])[-1]
    assert found["failed"] == ""
    assert (found["record"] | found["none"])["called"] == called


@pytest.mark.parametrize(
    ("box", "state", "read", "notes"),
    [
        ("mint box", "", ("yes", "as new"), ""),
        ("y - torn", "", ("yes", ""), "Box: y - torn"),
        ("mint box", "poor", ("yes", "poor"), ""),
        ("no box", "", ("no", ""), ""),
    ],
)
@pytest.mark.parametrize("turned", [False, True])
def test_what_a_box_cell_says_of_its_condition_is_kept(box, state, read, notes, turned):
    """Whichever of the two columns comes first."""
    columns = [("Box", "boxed", box), ("Box condition", "box_condition", state)]
    heads = [("No.", "number", "P 21"), *(reversed(columns) if turned else columns)]
    told = [{"name": name, "field": field, "order": ""} for name, field, _ in heads]
    row = matched(told, [{"row": 2, "cells": [cell for *_, cell in heads]}], [])[0]
    assert (row["record"]["boxed"], row["record"]["box_condition"]) == read
    assert row["record"]["notes"] == notes
    assert row["problems"] == []


def test_an_emptied_cell_of_the_boxs_condition_empties_it():
    data = b"No.;Box;Box condition\nP 21;y;good\nP 24;y;fair\n"
    found = taken(importing(data, []))
    assert found[0]["box_condition"] == "good"
    again = importing(data.replace(b"y;good", b"y;"), found)[0]
    assert again["same"]["sets"]["box_condition"] == ""


def test_colours_in_other_languages_name_variants():
    data = (
        "Nr;Bezeichnung;Farbe\nP 24;Diesel;gelb\nP 1;Lok;rot, ohne Schrift\nP 20;;grün\n".encode()
    )
    rows = importing(data, [])
    assert rows[0]["record"]["of"] == [{"variant": "p24_d", "chance": 1}]
    assert rows[1]["record"]["of"] == [{"variant": "p1_c", "chance": 1}]
    assert "p20_e" not in [one["variant"] for one in rows[2]["record"]["of"]]


def test_wants_take_the_same_columns_and_need_an_item():
    rows = importing(LIST, [], "want")
    want = rows[0]["record"]
    assert (want["item"], want["variant"], want["least"], want["box"]) == (
        "P 21",
        "p21_c",
        "very good",
        "yes",
    )
    assert want["most"]["typed"] == "£1 7s 6d"
    assert want["notes"] == "Bought: 12/5/98"
    assert rows[3]["failed"].startswith("Row 6: it is not certain which number is meant")


def test_notes_keep_the_words_of_what_is_in_no_pack():
    rows = importing(LIST, [], "note")
    assert rows[0]["record"]["of"] == [{"item": "P 21", "variant": "p21_c", "chance": 1}]
    assert rows[3]["record"]["text"].startswith("What: snow plough")
    assert sum(one["chance"] for one in rows[2]["record"]["of"]) == pytest.approx(1, abs=0.01)


def test_numbers_that_come_twice_are_told_and_kept_apart():
    data = b"No.;What;Paid\nG 10;Oil tank;1\nP 21;Electric;2\nG 10;Oil tank;3\n"
    table = read_file(data, demo_reference())
    named = name_rows("piece", table["columns"], table["rows"])
    assert len(set(named["keys"])) == 3
    assert named["notes"] == [
        'The number "G 10" is in rows 2 and 4: each makes a record of its own.'
    ]


def test_the_lists_own_number_of_a_row_lasts_whatever_else_changes():
    data = b"ID;No.;What\n1;G 10;Oil tank\n2;P 21;Diesel\n"
    found = taken(importing(data, []))
    again = importing(data.replace(b"P 21;Diesel", b"43/6;Dining car"), found)
    assert again[0]["same"]["sets"] == {}
    assert again[1]["same"]["sets"]["item"] == "43/6"


def test_a_quantity_makes_one_record_and_is_told():
    row = importing(b"No.;What;Qty\nG 10;Oil tank;3\n", [])[0]
    assert row["record"]["notes"] == "Qty: 3"
    assert row["problems"][0]["sentence"] == (
        'Row 2, "Qty": there are 3 of these. One record is made, and a note of it.'
    )


@pytest.mark.parametrize("wrong", ["5000", "0"])
def test_a_wrong_quantity_is_told_once_and_kept_in_the_notes(wrong):
    row = importing(f"No.;What;Qty\nG 10;Oil tank;{wrong}\n".encode(), [])[0]
    assert row["record"]["notes"] == f"Qty: {wrong}"
    assert [one["sentence"] for one in row["problems"]] == [
        f'Row 2, "Qty": "{wrong}" is not a number of pieces. Write a whole number from 1. '
        "One record is made."
    ]


def test_a_cell_that_became_unreadable_leaves_the_value_alone():
    data = b"No.;What;Paid\nG 10;Oil tank;12/6\n"
    found = taken(importing(data, []))
    again = importing(data.replace(b"12/6", b"lots"), found)[0]
    assert "paid" not in again["same"]["sets"]
    assert again["problems"]
