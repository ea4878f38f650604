"""The currencies that swap meets in Europe, America and Japan take, and how they are written.

Decimals of each: ISO 4217, list one. Marks and short words: common practice, no source. A mark that
several currencies share means the one the person counts in.
"""

from typing import Literal

from .types.money import Currency, Marked

CENTS = ["C", "CT", "CTS", "CENT", "CENTS", "¢"]
CURRENCIES: list[Marked] = [
    {"code": "GBP", "digits": 2, "marks": ["£", "POUND", "POUNDS"],
     "small": ["P", "NP", "PENCE", "PENNY"]},
    {"code": "EUR", "digits": 2, "marks": ["€", "EURO", "EUROS"], "small": CENTS},
    {"code": "USD", "digits": 2, "marks": ["$", "US$", "DOLLAR", "DOLLARS"], "small": CENTS},
    {"code": "CAD", "digits": 2, "marks": ["$", "C$", "CA$", "DOLLAR", "DOLLARS"], "small": CENTS},
    {"code": "AUD", "digits": 2, "marks": ["$", "A$", "AU$", "DOLLAR", "DOLLARS"], "small": CENTS},
    {"code": "NZD", "digits": 2, "marks": ["$", "NZ$", "DOLLAR", "DOLLARS"], "small": CENTS},
    {"code": "JPY", "digits": 0, "marks": ["¥", "￥", "円", "YEN"], "small": []},
    {"code": "CHF", "digits": 2, "marks": ["FR", "SFR"], "small": []},
    {"code": "SEK", "digits": 2, "marks": ["KR"], "small": []},
    {"code": "NOK", "digits": 2, "marks": ["KR"], "small": []},
    {"code": "DKK", "digits": 2, "marks": ["KR"], "small": []},
    {"code": "ISK", "digits": 0, "marks": ["KR"], "small": []},
    {"code": "PLN", "digits": 2, "marks": ["ZŁ"], "small": []},
    {"code": "CZK", "digits": 2, "marks": ["KČ"], "small": []},
    {"code": "HUF", "digits": 2, "marks": ["FT"], "small": []},
    {"code": "RON", "digits": 2, "marks": ["LEI", "LEU"], "small": []},
]  # fmt: skip


def currencies() -> list[Currency]:
    """The currencies that can be read, the usual ones first."""
    out: list[Currency] = []
    for currency in CURRENCIES:
        out.append({"code": currency["code"], "digits": currency["digits"]})
    return out


def digits_of(code: str) -> int:
    """How many decimals this currency has; -1 for one that is not known here."""
    digits = -1
    for currency in currencies():
        if currency["code"] == code:
            digits = currency["digits"]
    return digits


def written_as(word: str, sort: Literal["marks", "small"]) -> list[str]:
    """The codes of the currencies that a word in capitals can mean.

    sort: "marks" for the whole unit (the code itself counts), "small" for the hundredth part.
    """
    codes: list[str] = []
    for currency in CURRENCIES:
        if word in currency[sort] or (sort == "marks" and word == currency["code"]):
            codes.append(currency["code"])
    return codes


def is_small(word: str) -> bool:
    """Whether a word in capitals is the small unit of some currency."""
    return len(written_as(word, "small")) > 0


def meant(codes: list[str], usual: str) -> str:
    """Which of several currencies is meant: the usual one, or the only one; "" where neither."""
    if usual in codes:
        return usual
    return codes[0] if len(codes) == 1 else ""
