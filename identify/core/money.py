"""Money added, compared, and cut up to be shown. An amount in old money is never rounded, but when
it is shown, half up; types/money.py says why.
"""

from .currencies import digits_of
from .types.money import Money, MoneyParts, OldMoney, Order, Sum

WHOLE = 48  # what one minor unit is counted in
FARTHING = 5
OLD_PENNY = 20
SHILLING = 240
OLD_POUND = 4800
GUINEA = 5040  # 21 shillings


def money_of(value: int, currency: str, typed: str) -> Money:
    """The money that is this many 48ths of a minor unit."""
    minor = value // WHOLE
    return {"minor": minor, "over": value - WHOLE * minor, "currency": currency, "typed": typed}


def value_of(money: Money) -> int:
    """Money in 48ths of its minor unit. Records kept without `over` have none."""
    return WHOLE * money["minor"] + money.get("over", 0)


def add_money(first: Money, second: Money) -> Sum:
    """The sum, in one currency."""
    if first["currency"] != second["currency"]:
        return {"money": None, "problem": "currency"}
    value = value_of(first) + value_of(second)
    return {"money": money_of(value, first["currency"], ""), "problem": ""}


def compare_money(first: Money, second: Money) -> Order:
    """Which is more, in one currency."""
    if first["currency"] != second["currency"]:
        return {"order": 0, "problem": "currency"}
    apart = value_of(first) - value_of(second)
    if apart == 0:
        return {"order": 0, "problem": ""}
    return {"order": 1 if apart > 0 else -1, "problem": ""}


def totals(amounts: list[Money]) -> list[Money]:
    """The sum in each currency, in the order in which the currencies first come up."""
    codes: list[str] = []
    sums: list[int] = []
    for money in amounts:
        place = -1
        for i in range(len(codes)):
            if codes[i] == money["currency"]:
                place = i
        if place < 0:
            codes.append(money["currency"])
            sums.append(value_of(money))
        else:
            sums[place] = sums[place] + value_of(money)
    out: list[Money] = []
    for i in range(len(codes)):
        out.append(money_of(sums[i], codes[i], ""))
    return out


def scale_of(digits: int) -> int:
    """How many minor units make a whole one."""
    scale = 1
    for _ in range(digits):
        scale = scale * 10
    return scale


def money_parts(money: Money) -> MoneyParts:
    """What a screen shows money with."""
    value = value_of(money)
    digits = max(0, digits_of(money["currency"]))
    scale = scale_of(digits)
    rounded = (2 * value + WHOLE) // (2 * WHOLE)
    whole = rounded // scale
    return {
        "currency": money["currency"],
        "digits": digits,
        "whole": whole,
        "part": rounded - whole * scale,
        "exact": WHOLE * rounded == value,
        "old": old_parts(value) if money["currency"] == "GBP" else None,
    }


def old_parts(value: int) -> OldMoney | None:
    """48ths of a new penny in old money, or None where that leaves a part of a farthing."""
    farthings = value // FARTHING
    if farthings * FARTHING != value:
        return None
    pence = farthings // 4
    shillings = pence // 12
    pounds = shillings // 20
    return {
        "pounds": pounds,
        "shillings": shillings - 20 * pounds,
        "pence": pence - 12 * shillings,
        "farthings": farthings - 4 * pence,
    }
