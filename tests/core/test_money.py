"""Money: read as it is typed, added exactly, shown without inventing anything."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from identify.core.amounts import read_money
from identify.core.money import add_money, compare_money, money_of, money_parts, totals, value_of
from tests.strategies import CODES, FARTHINGS, decimal_texts, moneys, old_texts, scribbles

CALM = settings(deadline=None)
PROBLEMS = [
    "empty", "amount", "word", "which", "currency", "mixed", "decimals", "parts", "large",
    "ambiguous",
]  # fmt: skip


def new_pence(text: str, usual: str = "GBP") -> Fraction:
    """The value of a text in minor units, exactly."""
    read = read_money(text, usual)
    assert read["problem"] == "", text
    return Fraction(value_of(read["money"]), 48)


@CALM
@given(old_texts())
def test_old_money_is_read_exactly_however_it_is_written(told):
    text, farthings = told
    money = read_money(text, "EUR")["money"]
    assert (money["currency"], money["typed"]) == ("GBP", text)
    assert Fraction(value_of(money), 48) == farthings * Fraction(100, 960)
    old = money_parts(money)["old"]
    shillings = 20 * old["pounds"] + old["shillings"]
    assert (12 * shillings + old["pence"]) * 4 + old["farthings"] == farthings


@CALM
@given(decimal_texts(), st.sampled_from(CODES))
def test_decimal_money_is_read_exactly_however_it_is_written(told, usual):
    text, minor, code = told
    money = read_money(text, usual)["money"]
    assert money == {"minor": minor, "over": 0, "currency": code, "typed": text}


@CALM
@given(moneys())
def test_what_is_shown_reads_back_as_the_same(money):
    """In decimals where nothing was rounded, else in old money."""
    parts = money_parts(money)
    old = parts["old"]
    text = f"{money['currency']} {parts['whole']}"
    if parts["exact"]:
        text += f".{parts['part']:0{parts['digits']}d}" if parts["digits"] else ""
    elif old is not None:
        text = f"£{old['pounds']} {old['shillings']}s {old['pence']}{FARTHINGS[old['farthings']]}d"
    else:
        assert abs(100 * parts["whole"] + parts["part"] - Fraction(value_of(money), 48)) <= 0.5
        return
    assert value_of(read_money(text, "JPY")["money"]) == value_of(money)


@CALM
@given(st.lists(moneys(["GBP", "EUR"]), max_size=6))
def test_adding_is_exact_and_in_no_order(amounts):
    sums = totals(amounts)
    assert sorted(m["currency"] for m in sums) == sorted({m["currency"] for m in amounts})
    assert [m["currency"] for m in sums][:1] == [m["currency"] for m in amounts][:1]
    for total in sums:
        same = [m for m in amounts if m["currency"] == total["currency"]]
        assert value_of(total) == sum(value_of(m) for m in same)
        one_by_one = money_of(0, total["currency"], "")
        for money in reversed(same):
            one_by_one = add_money(one_by_one, money)["money"]
        assert one_by_one == total


@CALM
@given(moneys(["GBP", "EUR"]), moneys(["GBP", "EUR"]))
def test_only_one_currency_is_added_or_compared(one, other):
    found = compare_money(one, other)
    if one["currency"] != other["currency"]:
        assert found == {"order": 0, "problem": "currency"}
        assert add_money(one, other) == {"money": None, "problem": "currency"}
    else:
        a = Fraction(one["minor"]) + Fraction(one["over"], 48)
        b = Fraction(other["minor"]) + Fraction(other["over"], 48)
        assert found == {"order": (a > b) - (a < b), "problem": ""}
        assert value_of(add_money(one, other)["money"]) == (a + b) * 48
        assert compare_money(other, one)["order"] == -found["order"]


def test_pounds_shillings_and_pence():
    """£1 = 20s = 240d = 960 farthings; a shilling is 5 new pence; a guinea 21 shillings."""
    assert new_pence("£1") == new_pence("20/-") == new_pence("240d") == 100
    assert new_pence("£1/-/-") == new_pence("£0 19s 11d") + new_pence("1d")
    assert new_pence("1s") == new_pence("12d") == 5
    assert new_pence("¼d") * 4 == new_pence("½d") * 2 == new_pence("1d") == Fraction(5, 12)
    assert new_pence("1 gn") == new_pence("21/-") == 105
    assert new_pence("half a crown") == new_pence("Half-crown") == new_pence("2/6")


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("£4", 400),
        ("4.50", 450),
        ("4.5", 450),
        (".5", 50),
        ("£.50", 50),
        ("12/6", Fraction(125, 2)),
        ("27/6d", Fraction(275, 2)),
        ("£1 7s 6d", Fraction(275, 2)),
        ("£1-7-6", Fraction(275, 2)),
        ("£7 10/6", Fraction(1505, 2)),
        ("5 gns", 525),
        ("2½ guineas", Fraction(525, 2)),
        ("7½d", Fraction(25, 8)),
        ("7 1/2d", Fraction(25, 8)),
        ("10/-", 50),
        ("10/=", 50),
        ("1/11¾", Fraction(475, 48)),
        ("1/11 3/4", Fraction(475, 48)),
        ("1/2", Fraction(35, 6)),
        ("12s.6d.", Fraction(125, 2)),
        ("£1 0½d", 100 + Fraction(5, 24)),
        ("50p", 50),
        ("50 pence", 50),
        ("7 shillings 6 pence", Fraction(75, 2)),
        ("2½p", Fraction(5, 2)),
        ("£1 50p", 150),
        ("5,-", 500),
        ("1,234", 123400),
        ("1 234", 123400),
        ("1,234,567.89", 123456789),
        ("1.234,50", 123450),
        ("0", 0),
    ],
)
def test_what_people_type(text, value):
    assert new_pence(text) == value


@pytest.mark.parametrize(
    ("text", "usual", "currency", "minor"),
    [
        ("4,50 €", "GBP", "EUR", 450),
        ("4,50", "EUR", "EUR", 450),
        ("$5", "CAD", "CAD", 500),
        ("$5", "USD", "USD", 500),
        ("50c", "EUR", "EUR", 50),
        ("kr 50", "NOK", "NOK", 5000),
        ("1500", "JPY", "JPY", 1500),
        ("1,500円", "GBP", "JPY", 1500),
        ("Fr.50", "GBP", "CHF", 5000),
        ("1'200.\u2013", "CHF", "CHF", 120000),
    ],
)
def test_other_currencies(text, usual, currency, minor):
    money = read_money(text, usual)["money"]
    assert (money["currency"], money["minor"], money["over"]) == (currency, minor, 0)


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", "empty"),
        ("  ", "empty"),
        ("£", "amount"),
        ("4 each", "word"),
        ("about 4", "word"),
        ("4.50!", "word"),
        ("$5", "which"),
        ("kr 50", "which"),
        ("50c", "which"),
        ("£4 €5", "mixed"),
        ("EUR 1/7/6", "mixed"),
        ("4.5555", "decimals"),
        ("JPY 4.50", "decimals"),
        ("1.5s", "decimals"),
        ("£1 27s", "parts"),
        ("1/15", "parts"),
        ("£1 2500p", "parts"),
        ("12345678901", "large"),
        ("1.234", "ambiguous"),
        ("0,125", "ambiguous"),
        ("1,23,456", "ambiguous"),
        ("4-5", "ambiguous"),
        ("4 5", "ambiguous"),
        ("£12/6", "ambiguous"),
        ("£7 1/2", "ambiguous"),
        ("1/2d", "ambiguous"),
        ("£4½", "ambiguous"),
        ("-4", "ambiguous"),
    ],
)
def test_what_cannot_be_read_is_refused_with_its_reason(text, problem):
    assert read_money(text, "GBP") == {"money": None, "problem": problem}


def test_an_unknown_usual_currency_is_refused_only_where_it_is_needed():
    assert read_money("5", "XTS")["problem"] == "currency"
    assert read_money("£5", "XTS")["money"]["currency"] == "GBP"


def test_only_old_money_and_new_halfpence_have_fractions():
    assert read_money("½c", "EUR")["problem"] == "ambiguous"
    assert read_money("½p", "EUR")["money"]["over"] == 24


@CALM
@given(scribbles(), st.sampled_from([*CODES, "XTS", ""]))
def test_any_text_is_read_or_refused(text, usual):
    read = read_money(text, usual)
    assert (read["money"] is None) == (read["problem"] in PROBLEMS)
    if read["money"] is not None:
        assert read["money"]["typed"] == text
        assert 0 <= read["money"]["over"] < 48
        assert read["money"]["minor"] >= 0
        assert read["money"]["currency"] == "GBP" or read["money"]["over"] == 0


@pytest.mark.parametrize(
    ("value", "whole", "part", "exact"),
    [
        (48 * 450, 4, 50, True),
        (48 * 62 + 23, 0, 62, False),
        (48 * 62 + 24, 0, 63, False),
        (48 * 99 + 24, 1, 0, False),
    ],
)
def test_shown_in_decimals_it_is_rounded_half_up(value, whole, part, exact):
    parts = money_parts(money_of(value, "GBP", ""))
    assert (parts["whole"], parts["part"], parts["exact"]) == (whole, part, exact)


def test_records_kept_without_the_rest_are_taken_as_they_are():
    bare = {"minor": 450, "currency": "EUR"}
    assert add_money(bare, bare)["money"] == money_of(900 * 48, "EUR", "")
    assert money_parts({"minor": 5, "currency": "XTS"})["digits"] == 0
