"""Rows of a list that name no piece: ruled lines, totals, scraps of typing.

A name that is in no reference is still a name: only what can hardly be one is told here.
"""

import re

# Words of English, German, French and Dutch: common practice, no source.
TOTAL = frozenset(
    "TOTAL TOTALS SUBTOTAL SUM SUMS GRANDTOTAL SUMME SUMMEN GESAMT GESAMTSUMME ZWISCHENSUMME "
    "INSGESAMT SOMME TOTAAL SUBTOTAAL SOM".split()
)
BESIDE_TOTAL = frozenset(
    "SUB GRAND RUNNING OVERALL PAGE OF ALL THE IN FOR SO FAR COLLECTION PIECES PIECE ITEMS ITEM "
    "MODELS VALUE PAID COST SPENT PRICE PRICES AMOUNT COUNT NUMBER GENERAL PARTIAL GBP EUR".split()
)
VOWELS = re.compile(r"[aeiouäöüàâæéèêëîïôœùûÿ]", re.IGNORECASE)
LATIN = re.compile(r"[a-zß-ÿœ]+", re.IGNORECASE)
SHORT = 3  # letters of a word too short to be a name by itself


def is_total(said: list[str]) -> bool:
    """Whether the cells that should say what a piece is say that this is a sum."""
    words = [word.upper() for word in _words(said) if not word.isdecimal()]
    return any(word in TOTAL for word in words) and all(
        word in TOTAL or word in BESIDE_TOTAL for word in words
    )


def is_scrap(said: list[str]) -> bool:
    """Whether these cells hold no more than a few letters that are no word: "xyz", "qwrt".

    Other scripts are never told to be scraps.
    """
    words = _words(said)
    if len(words) != 1 or not LATIN.fullmatch(words[0]):
        return False
    return len(words[0]) <= SHORT or not VOWELS.search(words[0])


def _words(said: list[str]) -> list[str]:
    return [word for cell in said for word in re.split(r"[\W_]+", cell) if word]
