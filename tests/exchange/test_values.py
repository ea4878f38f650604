"""Conditions, boxes, prices and numbers as lists write them."""

import pytest

from identify.core.importing.cell_boxes import read_box
from identify.core.importing.cell_values import (
    read_condition,
    read_count,
    read_price,
    read_urgency,
    read_yes,
)
from identify.shipped import GRADES

CONDITIONS = {
    "VG": "very good", "v.good": "very good", "v. good": "very good", "v good": "very good",
    "V.G.": "very good", "VGC": "very good", "very-good": "very good",
    "Mint": "as new", "near mint": "as new",
    "C7": "excellent", "C-7": "excellent", "c 10": "as new", "sehr gut": "very good",
    "très bon": "very good", "zeer goed": "very good", "gut": "good", "played with": "fair",
    "Excellent condition": "excellent", "": "", "?": "", "unknown": "", "as new": "as new",
}  # fmt: skip
QUALIFIED = {
    "VG+": "very good", "good to very good": "good", "Exc/VG": "very good",
    "excellent, repainted": "excellent", "fair (one buffer missing)": "fair",
}  # fmt: skip


def told(read):
    """What a cell says and what that leaves out, where it can be read."""
    assert read["wrong"] == ""
    return read["value"], read["more"]


@pytest.mark.parametrize("text", CONDITIONS)
def test_words_for_conditions(text):
    assert told(read_condition(text)) == (CONDITIONS[text], "")


@pytest.mark.parametrize("text", QUALIFIED)
def test_what_a_word_leaves_out_is_given_back(text):
    assert told(read_condition(text)) == (QUALIFIED[text], text)


def test_every_grade_of_the_table_is_known():
    rows = GRADES.read_text(encoding="utf-8").splitlines()[1:]
    assert len(rows) >= 10
    for row in rows:
        _, grade, name, condition = row.split(",")[:4]
        assert read_condition(grade)["value"] == condition
        assert read_condition(name)["value"] == condition


@pytest.mark.parametrize(
    ("text", "word"),
    [("yes", "yes"), ("Y", "yes"), ("ja", "yes"), ("✓", "yes"), ("OVP", "yes"), ("TRUE", "yes"),
     ("no", "no"), ("non", "no"), ("unboxed", "no"), ("-", "no"), ("", ""), ("n/k", "")],
)  # fmt: skip
def test_yes_and_no(text, word):
    assert told(read_yes(text)) == (word, "")


@pytest.mark.parametrize(
    ("text", "box"),
    [
        ("y", ("yes", "", "")), ("no", ("no", "", "")), ("", ("", "", "")),
        ("C7", ("yes", "excellent", "")), ("mint box", ("yes", "as new", "")),
        ("box: v. good", ("yes", "very good", "")),
        ("boxed, good", ("yes", "good", "")), ("orig. box", ("yes", "", "")),
        ("y - torn", ("yes", "", "y - torn")), ("yes, torn", ("yes", "", "yes, torn")),
        ("tatty box", ("yes", "", "tatty box")),
        ("box, lid missing", ("yes", "", "box, lid missing")),
        ("excellent, no inner", ("yes", "excellent", "excellent, no inner")),
        ("n - lost", ("no", "", "n - lost")), ("box missing", ("no", "", "box missing")),
        ("good, no box", ("no", "", "good, no box")),
        ("not boxed, sorry", ("no", "", "not boxed, sorry")),
    ],
)  # fmt: skip
def test_boxes_and_what_they_are_like(text, box):
    read = read_box(text)
    assert (read["has"], read["condition"], read["more"], read["wrong"]) == (*box, "")


def test_prices():
    assert read_price("", "GBP")["value"] is None
    assert read_price("n/k", "GBP")["value"] is None
    assert read_price("£1 7s 6d", "EUR")["value"]["minor"] == 137
    assert read_price("1.234,50", "EUR")["value"]["minor"] == 123450
    assert [read_count(text)["value"] for text in ("", "3", "2x")] == [1, 3, 2]
    assert [read_urgency(text)["value"] for text in ("", "high")] == [2, 3]


WRONG = {
    (read_condition, "splendid"): '"splendid" is not a condition the app knows. Write as new, '
    "excellent, very good, good, fair or poor, or a grade from C10 (the best) to C1.",
    (read_yes, "maybe"): '"maybe" is neither yes nor no.',
    (read_box, "torn"): '"torn" does not say whether there is a box. Write yes, no or a condition.',
    (read_count, "some"): '"some" is not a number of pieces. Write a whole number from 1.',
    (read_urgency, "9"): '"9" is not an urgency. Write 1, 2 or 3.',
}
PRICES = {
    "2026-06-12": '"2026-06-12" is a date: a spreadsheet takes 12/6 for one. Write it like 12s 6d.',
    "lots": '"lots" has a word in it that is not a currency. Write it like 4.50, £4 or 12/6.',
    "£": '"£" has no amount in it. Write it like 4.50, £4 or 12/6.',
    "kr 5": '"kr 5" is written as several currencies are. Write its code too, like 4.50 USD.',
    "£1 25s": '"£1 25s" has more than 19 shillings, 11 old pence or 99 pence beside a larger unit.',
    "4.505": '"4.505" can be read in more than one way. Write it like 4.50, £4 or 12/6.',
    "£4 €5": '"£4 €5" has two currencies in it. Write one.',
    "4.5051": '"4.5051" has more decimals than its currency. Write it like 4.50.',
    "99999999999": '"99999999999" is too large.',
}


@pytest.mark.parametrize(("read", "text"), WRONG)
def test_what_cannot_be_read_is_told(read, text):
    assert read(text)["wrong"] == WRONG[read, text]


@pytest.mark.parametrize("text", PRICES)
def test_prices_that_cannot_be_read_are_told(text):
    assert read_price(text, "GBP")["wrong"] == PRICES[text]


def test_a_currency_that_is_not_known_is_told():
    assert "is in a currency the app does not know" in read_price("5", "XAU")["wrong"]
