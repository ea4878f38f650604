"""What the columns of a list are, by heading, language and contents."""

import random

import pytest

from identify.core.importing.column_headings import LIST_HEADINGS
from identify.core.importing.guessing import by_heading
from identify.exchange.import_steps import read_file
from tests.exchange.fitting import demo_reference
from tests.exchange.labelled import mistyped

ROW = "P 21;Express electric;VG;yes;£4.50;13/5/98;from a friend"
ENGLISH = "Catalogue No.;Description;Condition;Boxed?;Price paid;Date bought;Comments"
GERMAN = "Artikelnummer;Bezeichnung;Zustand;OVP;Kaufpreis;Kaufdatum;Bemerkungen"
FRENCH = "Référence;Désignation;État;Boîte;Prix;Date d'achat;Remarques"
DUTCH = "Artikelnr;Omschrijving;Conditie;Doos;Prijs;Aankoopdatum;Opmerkingen"
MISSPELT = "Cataloge number;Descripton;Conditon;Boxed;Prise paid;Date baught;Coments"
KNOWN = ["number", "description", "condition", "boxed", "price", "when", "notes"]


def fields(text: str, **more: object) -> list[str]:
    found = read_file(text.encode(), demo_reference(), **more)
    return [column["field"] for column in found["columns"]]


@pytest.mark.heavy
@pytest.mark.parametrize("heads", [ENGLISH, GERMAN, FRENCH, DUTCH, MISSPELT])
def test_headings_in_four_languages_and_misspelt(heads):
    found = fields(f"{heads}\n{ROW}\n{ROW}\n")
    found[1] = found[1].replace("name", "description")
    assert found == KNOWN


def test_a_typing_error_in_a_heading_seldom_misleads():
    """Known headings of five letters or more, with one slip: LIKE_HEADING rests on it."""
    chance = random.Random(1)
    right = wrong = missed = 0
    for field, *headings in LIST_HEADINGS:
        for heading in headings:
            if len(heading) > 4:
                found = by_heading(mistyped(chance, heading))["field"]
                right += found == field
                missed += found == ""
                wrong += found not in (field, "")
    print(f"\n  headings with a slip: {right} right, {missed} not known, {wrong} wrong")
    assert right / (right + wrong) >= 0.97
    assert right / (right + wrong + missed) >= 0.9


@pytest.mark.parametrize(
    "heading",
    "Shelf Length Photo Weight Insured Scale Gauge Owner Wheels Gewicht Regal Photographie".split(),
)
def test_headings_of_other_things_are_not_taken_for_known_ones(heading):
    assert by_heading(heading)["field"] == ""


def test_cells_speak_where_headings_do_not():
    text = (
        "a;b;c;d;e;f\n"
        + "P 21;Express electric;VG;yes;£4.50;13/5/98\nG 10;Oil tank;C7;no;12/6;1998\n"
    )
    table = read_file(text.encode(), demo_reference())
    assert [c["field"] for c in table["columns"]] == [
        "number",
        "name",
        "condition",
        "boxed",
        "price",
        "when",
    ]
    assert table["columns"][0]["why"] == "100% of its cells could be this: catalogue number."
    assert all(column["sure"] < 0.8 for column in table["columns"])


def test_a_table_without_headings_has_letters():
    table = read_file(b"P 21;Express electric;4,50\nG 10;Oil tank;3,20\n", demo_reference())
    assert table["header"] == 0
    assert [column["name"] for column in table["columns"]] == ["Column A", "Column B", "Column C"]
    assert [column["field"] for column in table["columns"]] == ["number", "name", "price"]
    assert len(table["rows"]) == 2
    assert table["notes"] == ["No row of headings was found: the columns have letters."]


def test_the_row_of_headings_can_be_told():
    data = b"x;y\nNo.;What\nP 21;Diesel\n"
    assert read_file(data, demo_reference())["header"] == 2
    assert read_file(data, demo_reference(), header=0)["rows"][0]["row"] == 1
    told = read_file(data, demo_reference())
    assert told["notes"] == ['The headings are in row 2. What is above it was left out: "x y".']


def test_what_nobody_knows_goes_into_the_notes_and_empty_columns_are_left_out():
    table = read_file(b"No.;Shelf;Spare\nP 21;3;\nG 10;4;\n", demo_reference())
    assert [(c["field"], c["sure"]) for c in table["columns"]] == [
        ("number", 0.9 + 0.1 * 1),
        ("notes", 0.3),
        ("", 1.0),
    ]


def test_names_that_come_twice_are_told_apart():
    table = read_file(b"No.;Note;Note\nP 21;a;b\n", demo_reference())
    assert [column["name"] for column in table["columns"]] == ["No.", "Note", "Note (C)"]


@pytest.mark.parametrize(
    ("days", "order"),
    [("13/5/98 4/5/98", "day"), ("5/13/98 4/5/98", "month"), ("1/5/98 4/6/98", "ask"),
     ("13/5/98 5/13/98", "mixed"), ("1998 1999", "")],
)  # fmt: skip
def test_the_order_of_day_and_month_is_told_by_the_whole_column(days, order):
    rows = "\n".join(f"P 21;{day}" for day in days.split())
    table = read_file(f"No.;Bought\n{rows}\n".encode(), demo_reference())
    assert table["columns"][1]["order"] == order


@pytest.mark.parametrize(
    ("name", "sort"), [("my wants.csv", "want"), ("trains.csv", "piece"), ("asked.csv", "note")]
)
def test_the_name_of_the_file_says_what_its_rows_are(name, sort):
    assert read_file(b"No.;What\nP 21;Diesel\n", demo_reference(), name=name)["type"] == sort
