"""Money, exact in old money too, and what reading, adding and comparing it come to.

A pound is 20 shillings, a shilling 12 old pence, an old penny 4 farthings; a new penny is the
hundredth part of the same pound (Decimal Currency Act 1967, section 1). So a farthing is 5/48 of a
new penny, 1/11¾ is 9 pence and 43/48, and nothing is ever rounded but what is shown.
"""

from typing import Literal, NotRequired, TypedDict


class Money(TypedDict):
    """An amount in whole minor units (new pence, cents, yen) and 48ths of one on top."""

    minor: int
    over: NotRequired[int]  # 48ths of a minor unit, 0 to 47; only old money and halfpence have any
    currency: str  # the ISO 4217 code
    typed: str  # the text that it was read from, "" for a sum


# "" · empty · amount (no figures) · word (a word that is no currency) · which (a mark that several
# currencies share) · currency (the usual one is not known) · mixed (two currencies) · decimals
# (more than the currency has, or in old money) · parts (more than 19 shillings, 11 old pence or 99
# new pence beside a larger unit) · large · ambiguous (more than one reading, or none)
MoneyProblem = Literal[
    "", "empty", "amount", "word", "which", "currency", "mixed", "decimals", "parts", "large",
    "ambiguous",
]  # fmt: skip


class ReadMoney(TypedDict):
    """Money read from a text, or why not."""

    money: Money | None
    problem: MoneyProblem


class Sum(TypedDict):
    """Two amounts added; those in two currencies are not."""

    money: Money | None
    problem: Literal["", "currency"]


class Order(TypedDict):
    """Which of two amounts is more; those in two currencies are not compared."""

    order: int  # 1: the first, -1: the other, 0: neither
    problem: Literal["", "currency"]


class OldMoney(TypedDict):
    """Sterling before 1971."""

    pounds: int
    shillings: int
    pence: int
    farthings: int


class MoneyParts(TypedDict):
    """What a screen shows money with.

    `digits` is given since a browser's own table differs from ISO 4217 (the forint has none there).
    """

    currency: str
    digits: int  # decimals of the currency
    whole: int  # whole units
    part: int  # and minor units, rounded half up
    exact: bool  # nothing was rounded
    old: OldMoney | None  # for sterling that is a whole number of farthings


class Token(TypedDict):
    """A number, a word or a sign of a typed amount."""

    sort: Literal["n", "w", "/", "-"]
    groups: NotRequired[list[str]]  # of a number: its figures; a bare fraction has the group ""
    points: NotRequired[list[str]]  # of a number: what parts the groups
    quarters: NotRequired[int]  # of a number: 1 to 3 for a fraction after it
    word: NotRequired[str]  # of a word: in capitals


class Figures(TypedDict):
    """A number found in a text, and where it ends."""

    token: Token
    end: int


class Shape(TypedDict):
    """What a typed amount looks like."""

    shape: str  # its tokens in one letter each
    numbers: list[Token]
    marked: int  # how often a currency is written
    currency: str  # "" for none
    problem: MoneyProblem


class Decimal(TypedDict):
    """A number's figures before and after its decimal point."""

    whole: str
    decimals: str
    problem: MoneyProblem


class Marked(TypedDict):
    """A currency, and how it is written in capitals."""

    code: str  # ISO 4217
    digits: int  # its decimals
    marks: list[str]
    small: list[str]  # the hundredth part


class Currency(TypedDict):
    """A currency that can be read."""

    code: str  # ISO 4217
    digits: int  # its decimals
