"""Barcodes in words: what core/dated_numbers.py finds in the figures under the bars."""

import re

import msgspec

from identify.core.dated_numbers import check_digit, read_number
from identify.reference.mistakes import quoted
from identify.reference.numbers import number_tables

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
    return check_digit(body)


def read_barcode(text: str) -> Barcode:
    """The kind and earliest year of a barcode, by the figures under it. Raises BarcodeError."""
    found = read_number(number_tables(), "barcode", text)
    figures, problem = found["figures"], found["problem"]
    if problem in ("empty", "letters"):
        meant = f" Read as figures, it is {found['meant']}." if found["meant"] else ""
        raise BarcodeError(
            f"{quoted(figures)} is not the number of a barcode. Write the figures under the bars, "
            f"such as 5012345678900.{meant}"
        )
    if problem == "count":
        raise BarcodeError(
            f"A barcode has 8, 12 or 13 figures, but {quoted(figures)} has {len(figures)}. "
            "Write also the small figures at its ends."
        )
    if problem == "check":
        raise BarcodeError(
            f"{quoted(figures)} is not right: by the other figures the last one should be "
            f"{found['near'][0]}. Read it again, figure by figure."
        )
    first = found["first"]
    padded = found["kind"] == "UPC-A" and len(figures) == 13
    kind = "UPC-A, written with a 0 in front" if padded else found["kind"]
    note = " The year is from memory." if found["memory"] else ""
    since = f"{kind}: such bars have been printed since {first}."
    text = f"{since} They say nothing of a later year.{note}"
    return Barcode(kind, first, text)
