"""Rows of a list that name no piece: ruled lines, totals, scraps of typing.

A name that is in no range is still a name: only what can hardly be one is told here.
"""

from collections.abc import Sequence

from ..edtf import is_figures
from .cell_values import is_in_word, word_cut

# Words of English, German, French and Dutch: common practice, no source.
TOTAL = [
    "TOTAL", "TOTALS", "SUBTOTAL", "SUM", "SUMS", "GRANDTOTAL", "SUMME", "SUMMEN", "GESAMT",
    "GESAMTSUMME", "ZWISCHENSUMME", "INSGESAMT", "SOMME", "TOTAAL", "SUBTOTAAL", "SOM",
]  # fmt: skip
BESIDE_TOTAL = [
    "SUB", "GRAND", "RUNNING", "OVERALL", "PAGE", "OF", "ALL", "THE", "IN", "FOR", "SO", "FAR",
    "COLLECTION", "PIECES", "PIECE", "ITEMS", "ITEM", "MODELS", "VALUE", "PAID", "COST", "SPENT",
    "PRICE", "PRICES", "AMOUNT", "COUNT", "NUMBER", "GENERAL", "PARTIAL", "GBP", "EUR",
]  # fmt: skip
VOWELS = "AEIOUÄÖÜÀÂÆÉÈÊËÎÏÔŒÙÛŸ"
LONGEST_SCRAP = 3  # letters of a word too short to be a name by itself


def plain_words_of(cells: Sequence[str]) -> list[str]:
    """The words of some cells, in capitals."""
    out: list[str] = []
    for cell in cells:
        for part in word_cut(cell.upper()):
            if is_in_word(part[0:1]):
                out.append(part)
    return out


def is_total(cells: Sequence[str]) -> bool:
    """Whether the cells that should say what a piece is say that this is a sum."""
    total_named = False
    for word in plain_words_of(cells):
        if word in TOTAL:
            total_named = True
        elif word not in BESIDE_TOTAL and not is_figures(word):
            return False
    return total_named


def is_latin(word: str) -> bool:
    """Whether all letters of a word in capitals are Latin ones."""
    for c in word:
        if not ("A" <= c <= "Z" or "À" <= c <= "ÿ" or c in "ŒŸ"):
            return False
    return True


def has_vowel(word: str) -> bool:
    """Whether a word in capitals has a vowel."""
    for c in word:
        if c in VOWELS:
            return True
    return False


def is_scrap(cells: Sequence[str]) -> bool:
    """Whether these cells hold no more than a few letters that are no word: "xyz", "qwrt".

    Other scripts are never told to be scraps.
    """
    plain_words = plain_words_of(cells)
    if len(plain_words) != 1 or not is_latin(plain_words[0]):
        return False
    return len(plain_words[0]) <= LONGEST_SCRAP or not has_vowel(plain_words[0])
