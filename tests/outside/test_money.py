"""Money against the law and the standard.

Decimal Currency Act 1967, section 1(1): the new penny is the hundredth part of the pound sterling.
Decimal Currency Act 1969, section 1(1): "ten new pence or two shillings", "twenty new pence or four
shillings". "Decimal Currency - The System", public information film, National Archives: fifty new
pence equal ten shillings, ten two, five one. ISO 4217, list one, published 2024-06-25.
"""

import pytest

from identify.core.amounts import read_money
from identify.core.currencies import currencies
from identify.core.money import compare_money, money_parts
from tests.outside.data import read


def equal(one: str, other: str) -> bool:
    amounts = [read_money(text, "GBP")["money"] for text in (one, other)]
    return bool(compare_money(*amounts)["order"] == 0)


@pytest.mark.parametrize(
    ("new", "old"),
    [("100p", "£1"), ("10p", "2s"), ("20p", "4s"), ("50p", "10s"), ("5p", "1s")],
)
def test_new_money_and_old_in_the_acts(new, old):
    assert equal(new, old)


@pytest.mark.parametrize(
    ("new", "old"), [("2½p", "6d"), ("12½p", "2/6"), ("£1.05", "1 guinea"), ("£7.50", "£7 10s")]
)
def test_coins_that_went_on_at_their_value(new, old):
    """The sixpence as two and a half new pence; the others are of memory."""
    assert equal(new, old)


def test_an_old_penny_is_less_than_half_a_new_one():
    """The new penny is worth 2.4 old ones, so a penny falls short of the new halfpenny."""
    one, half, more = (read_money(text, "GBP")["money"] for text in ("1d", "½p", "1¼d"))
    assert compare_money(one, half)["order"] == -1
    assert compare_money(more, half)["order"] == 1


def test_decimals_are_those_of_iso_4217():
    published = {row["code"]: int(row["digits"]) for row in read("currencies.csv")}
    assert {c["code"]: c["digits"] for c in currencies()} == published
    for code, digits in published.items():
        money = read_money(f"{code} 7", "GBP")["money"]
        assert money["minor"] == 7 * 10**digits
        assert money_parts(money)["whole"] == 7
