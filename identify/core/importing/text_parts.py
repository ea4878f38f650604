"""Texts taken apart and put together: blanks, quotations, lists in words."""

from collections.abc import Sequence

from ..edtf import padded

BLANKS = " \t\n\r\u000b\u000c\u0085\u00a0\u2002\u2003\u2009\u202f\u3000"
ALPHABET = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
MOST_QUOTED = 60
MOST_LISTED = 5


def without_blanks(text: str) -> str:
    """A text without the blanks around it."""
    return without_signs(text, BLANKS)


def without_signs(text: str, signs: str) -> str:
    """A text without these signs around it."""
    first = 0
    last = len(text)
    while first < last and text[first : first + 1] in signs:
        first = first + 1
    while last > first and text[last - 1 : last] in signs:
        last = last - 1
    return text[first:last]


def split_at(text: str, signs: str) -> list[str]:
    """The parts of a text between signs of these, empty ones too."""
    out: list[str] = []
    start = 0
    for at in range(len(text)):
        if text[at : at + 1] in signs:
            out.append(text[start:at])
            start = at + 1
    out.append(text[start:])
    return out


def blank_parted(text: str) -> list[str]:
    """The words of a text as they stand between blanks."""
    return [part for part in split_at(text, BLANKS) if part != ""]


def joined_by(parts: Sequence[str], between: str) -> str:
    """Texts put together with something between them."""
    out = ""
    for n in range(len(parts)):
        if n > 0:
            out = out + between
        out = out + parts[n]
    return out


def one_line(text: str) -> str:
    """A text on one line, with one space for any blanks."""
    return joined_by(blank_parted(text), " ")


def begins(text: str, with_this: str) -> bool:
    """Whether a text begins so."""
    return text[0 : len(with_this)] == with_this


def ends(text: str, with_this: str) -> bool:
    """Whether a text ends so."""
    start = len(text) - len(with_this)
    return start >= 0 and text[start:] == with_this


def quoted(text: str) -> str:
    """A cell's text for a sentence, on one line and cut where it is long."""
    line = one_line(text)
    if len(line) > MOST_QUOTED:
        line = line[0 : MOST_QUOTED - 1] + "…"
    return '"' + line + '"'


def column_letters(place: int) -> str:
    """What a spreadsheet calls its column: 0 is A, 26 is AA."""
    name = ""
    left = place + 1
    while left > 0:
        whole = (left - 1) // 26
        at = left - 1 - 26 * whole
        name = ALPHABET[at : at + 1] + name
        left = whole
    return name


def in_thousands(number: int) -> str:
    """A whole number in figures, with commas: 20,000."""
    text = padded(number, 1)
    out = ""
    for n in range(len(text)):
        left = len(text) - n
        if n > 0 and left - 3 * (left // 3) == 0:
            out = out + ","
        out = out + text[n : n + 1]
    return out


def rows_listed(numbers: Sequence[int]) -> str:
    """Row numbers in words: "row 3", "rows 3, 4 and 9", "rows 3, 4, 5 and 12 more"."""
    some = [padded(number, 1) for number in numbers[0:MOST_LISTED]]
    if len(numbers) == 1:
        return "row " + some[0]
    if len(numbers) > MOST_LISTED:
        more = padded(len(numbers) - MOST_LISTED, 1)
        return "rows " + joined_by(some, ", ") + " and " + more + " more"
    last = len(some) - 1
    return "rows " + joined_by(some[0:last], ", ") + " and " + some[last]


def is_figure_in(text: str) -> bool:
    """Whether there is a figure in a text."""
    for c in text:
        if "0" <= c <= "9":
            return True
    return False
