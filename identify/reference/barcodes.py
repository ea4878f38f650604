"""Barcodes: the check digit by the GS1 General Specifications, and the earliest year of each kind.

Modulo 10: from the right, the figures before the check digit weigh 3, 1, 3, 1 and so on; the check
digit is what is missing to the next ten.
"""

import re

import msgspec

from identify.reference.marks import read_marks, years_of
from identify.reference.mistakes import quoted

# Figures of each kind: its name, and the state of the mark "barcode" that says its years.
KINDS = {8: ("EAN-8", "thirteen"), 12: ("UPC-A", "twelve"), 13: ("EAN-13", "thirteen")}
BODIES = (7, 11, 12, 13, 16, 17)  # figures before the check digit in the keys of GS1


class BarcodeError(ValueError):
    """A number that is not a barcode's, with what is wrong and what would be right."""


class Barcode(msgspec.Struct, frozen=True):
    """What a barcode is, and the first year it can have been printed, in words too."""

    kind: str
    earliest: int
    text: str


def gtin_check_digit(body: str) -> int:
    """The check digit that belongs after these figures. Raises BarcodeError."""
    if not re.fullmatch(r"\d+", body, re.ASCII) or len(body) not in BODIES:
        raise BarcodeError(
            f"{quoted(body)} cannot be given a check digit: it must be 7, 11, 12, 13, 16 or 17 "
            "figures and nothing else."
        )
    total = sum(
        int(figure) * (1 if place % 2 else 3) for place, figure in enumerate(reversed(body))
    )
    return (10 - total % 10) % 10


def _earliest(state: str) -> int:
    """The first year of a kind of barcode in any country."""
    rows = read_marks()[0].rows
    years = [years_of(row)[0] for row in rows if (row.feature, row.state) == ("barcode", state)]
    return int(min(years))


def read_barcode(text: str) -> Barcode:
    """The kind and earliest year of a barcode, by the figures under it. Raises BarcodeError."""
    figures = re.sub(r"[\s-]", "", text)
    if not re.fullmatch(r"\d+", figures, re.ASCII):
        raise BarcodeError(
            f"{quoted(text)} is not the number of a barcode. Write the figures under the bars, "
            "such as 5012345678900."
        )
    if len(figures) not in KINDS:
        raise BarcodeError(
            f"A barcode has 8, 12 or 13 figures, but {quoted(figures)} has {len(figures)}. "
            "Write also the small figures at its ends."
        )
    right = gtin_check_digit(figures[:-1])
    if int(figures[-1]) != right:
        raise BarcodeError(
            f"{quoted(figures)} is not right: by the other figures the last one should be {right}. "
            "Read it again, figure by figure."
        )
    kind, state = KINDS[len(figures)]
    if kind == "EAN-13" and figures[0] == "0":
        kind, state = "UPC-A, written with a 0 in front", "twelve"
    earliest = _earliest(state)
    text = (
        f"{kind}: such bars have been printed since {earliest}. They say nothing of a later year."
    )
    return Barcode(kind, earliest, text)
