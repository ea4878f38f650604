"""Dates as people write them in their lists, as EDTF (ISO 8601-2).

Words of English, German, French and Dutch: common practice, no source. "early", "mid" and "late" of
a decade are what they are in a seller's claim (part_of_decade), of a year a third: common practice,
no source. A year of two figures is of the 1900s from 30 on and of the 2000s below, as spreadsheets
take it (from memory). A date with points has its day first. Seasons are EDTF's own 21 to 24.
"""

import re
from collections.abc import Iterable

from edtf import EDTFParseException, parse_edtf

from identify.core.claim_words import part_of_decade
from identify.core.types.claims import YearSpan
from identify.exchange.table import CellError, quoted
from identify.reference.years import DAYS, WRITTEN, YearsError, read_years

MONTHS = {
    word: number
    for number, words in enumerate(
        (
            "january jan januar jänner janvier janv januari",
            "february feb februar febr février fevrier févr fevr februari",
            "march mar märz maerz mrz mars maart mrt",
            "april apr avril avr",
            "may mai mei",
            "june jun juni juin",
            "july jul juli juillet juil",
            "august aug août aout augustus",
            "september sep sept septembre",
            "october oct oktober okt octobre",
            "november nov novembre",
            "december dec dezember dez décembre decembre déc",
        ),
        1,
    )
    for word in words.split()
}
FEASTS = {
    "christmas": 12,
    "xmas": 12,
    "x-mas": 12,
    "weihnachten": 12,
    "noël": 12,
    "noel": 12,
    "kerst": 12,
}
SEASONS = {
    "spring": 21, "frühling": 21, "frühjahr": 21, "printemps": 21, "voorjaar": 21, "lente": 21,
    "summer": 22, "sommer": 22, "été": 22, "ete": 22, "zomer": 22,
    "autumn": 23, "fall": 23, "herbst": 23, "automne": 23, "herfst": 23, "najaar": 23,
    "winter": 24, "hiver": 24,
}  # fmt: skip
PARTS = {
    word: part
    for part, words in (
        ("EARLY", "early anfang début begin"),
        ("MID", "mid middle mitte milieu midden"),
        ("LATE", "late end ende fin eind"),
    )
    for word in words.split()
}
MONTHS_OF = {"EARLY": (1, 4), "MID": (5, 8), "LATE": (9, 12)}
NOTHING = {
    "",
    "?",
    "??",
    "-",
    "–",
    "n/a",
    "n/k",
    "nk",
    "unknown",
    "not known",
    "unbekannt",
    "inconnu",
    "onbekend",
    "no date",
    "n.d.",
}

ABOUT = re.compile(
    r"^(?:circa|ca\.?|c\.?(?=[\s\d'’])|about|around|approx\.?|approximately|roughly|um|etwa|vers|environ|ongeveer|~)"
    r"\s*(?=[\dA-Za-zéäö'’])",
    re.I,
)
DOUBT = re.compile(
    r"\s*(?:\(\?\)|\?+|,?\s*\(?(?:perhaps|possibly|probably|maybe|uncertain)\)?)$|^(?:perhaps|possibly|probably|maybe)\s+",
    re.I,
)
FIGURES = re.compile(r"(\d{1,4})([./\-\s])\s*(\d{1,2})\2\s*(\d{1,4})\.?")
MONTH_YEAR = re.compile(r"(\d{1,2})\s*[./\-]\s*(\d{4}|\d\d)")
DECADE = re.compile(
    r"(?:the\s+)?(?:(\w+)[\s\-]+)?(?:the\s+|der\s+|des\s+années\s+|jaren\s+)?(\d{3}0|\d0)['’]?"
    r"(?:s|er|er jahre)"
)
SPAN = re.compile(
    r"(?:between\s+|from\s+|von\s+|zwischen\s+|de\s+|van\s+)?(.+?)\s*(?:\s-\s|–|—|-|/|\bto\b|\band\b|\bor\b|\bbis\b|\bund\b|\boder\b|\bà\b|\btot\b|\bof\b|&)\s*(.+)"
)
BEFORE = re.compile(
    r"(?:before|until|till|up to|by|to|pre|vor|bis|avant|jusqu'en|voor|tot)[\s\-]+(.+)"
)
AFTER = re.compile(
    r"(?:after|since|from|post|nach|seit|ab|après|depuis|na|sinds|vanaf)[\s\-]+(.+)|(\d{4})\s*(?:\+|onwards?|on)"
)
NUMERIC = re.compile(r"\s*(\d{1,2})\s*[/\-]\s*(\d{1,2})\s*[/\-]\s*(\d{4}|\d\d)\s*")


def order_of(texts: Iterable[str]) -> str:
    """Which figure of 12/5/57 is the day, by a whole column: "day" (the first), "month" (the
    second is), "ask" (nothing tells), "mixed" (both come up), "" (no date where it matters).
    """
    first = second = seen = False
    for text in texts:
        found = NUMERIC.fullmatch(text)
        if found and found[1] != found[2]:
            seen = True
            first = first or int(found[1]) > 12 >= int(found[2])
            second = second or int(found[2]) > 12 >= int(found[1])
    if first and second:
        return "mixed"
    if first or second:
        return "day" if first else "month"
    return "ask" if seen else ""


def read_date(text: str, order: str = "") -> str:
    """A date as EDTF; "" for none. order: "day" or "month", what stands first in 12/5/57.

    Raises CellError with a sentence.
    """
    plain = " ".join(text.split()).strip(" ,;").lower()
    if plain in NOTHING:
        return ""
    if WRITTEN.fullmatch(plain.upper()) and not re.fullmatch(r"\d{4}-\d\d", plain):
        return _valid(plain.upper(), text)
    about = doubt = False
    if found := ABOUT.match(plain):
        about, plain = True, plain[found.end() :]
    if found := DOUBT.search(plain):
        doubt, plain = True, (plain[: found.start()] + plain[found.end() :]).strip()
        if found := ABOUT.match(plain):
            about, plain = True, plain[found.end() :]
    if plain.endswith("~"):
        about, plain = True, plain[:-1].strip()
    mark = "%" if about and doubt else "~" if about else "?" if doubt else ""
    date = _date(plain, order, text)
    if mark and date[-1] not in "~?%":
        start, slash, end = date.partition("/")
        marked = [part + mark if part not in ("", "..") else part for part in (start, end)]
        date = f"{marked[0]}/{marked[1]}" if slash else marked[0]
    return _valid(date, text)


def _valid(date: str, text: str) -> str:
    """The date if the edtf library and the packs' own reading take it. Raises CellError."""
    if re.fullmatch(r"\d{4}-2[1-4][~?%]?", date):  # a season, which packs do not use
        try:
            parse_edtf(date)
        except EDTFParseException as error:
            raise _unread(text) from error
        return date
    try:
        read_years(date)
    except YearsError as error:
        raise CellError(f"{quoted(text)}: {_why(str(error))}") from error
    return date


def _why(sentence: str) -> str:
    """The part of a sentence about a date that is not the date itself."""
    if "ends before" in sentence:
        return "it ends before it begins. Put the earlier one first."
    if "does not exist" in sentence:
        return "there is no such day or month."
    return "it is not a date."


def _unread(text: str) -> CellError:
    if re.fullmatch(r"[234]\d{4}", text.strip()):
        return CellError(
            f"{quoted(text)} is how a spreadsheet counts days. Set the column's format to a date."
        )
    return CellError(
        f"{quoted(text)} is not a date that can be read. Write it like 1957, May 1957, "
        "12 May 1957 or about 1957."
    )


def _date(plain: str, order: str, text: str) -> str:
    """EDTF for a text without "about" and "perhaps". Raises CellError."""
    one = _single(plain, order, text)
    if one:
        return one
    if found := BEFORE.fullmatch(plain):
        return f"../{_single(found[1], order, text) or _fail(text)}"
    if found := AFTER.fullmatch(plain):
        return f"{_single(found[1] or found[2], order, text) or _fail(text)}/.."
    if found := SPAN.fullmatch(plain):
        start, end = found[1], found[2]
        if re.fullmatch(r"\d{1,2}", end) and re.fullmatch(r"\d{4}", start):
            end = start[: 4 - len(end)] + end  # 1957-58, 1957/8
        elif not re.search(r"\d", start) and (year := re.search(r"(\d{4}|\d\d)$", end)):
            start = f"{start} {year[0]}"  # May to June 1957
        first, last = _single(start, order, text), _single(end, order, text)
        if first and last:
            begun = first.split("/")[0].replace("X", "0")
            return f"{begun}/{last.split('/')[-1].replace('X', '9')}"
    raise _unread(text)


def _fail(text: str) -> str:
    raise _unread(text)


def _single(plain: str, order: str, text: str) -> str:
    """EDTF for one day, month, season, year or decade; "" for anything else.

    Raises CellError for a day or a month that does not exist, or where the order must be known.
    """
    plain = plain.strip(" ,")
    if re.fullmatch(r"\d{4}", plain):
        return plain
    if re.fullmatch(r"['’]?\d\d", plain):
        return str(_year(plain[-2:]))
    if found := re.fullmatch(r"(\d{4})-(\d\d)(?:-(\d\d))?(?:[ t]\d\d:\d\d.*)?", plain):
        month = int(found[2])
        if found[3] is None and month > 12 and month > int(found[1][2:]):
            return f"{found[1]}/{found[1][:2]}{found[2]}"  # 1957-58
        return _day(int(found[1]), month, -1 if found[3] is None else int(found[3]), text)
    if found := re.fullmatch(r"\d{3}x", plain):
        return plain.upper()
    if found := DECADE.fullmatch(plain):
        return _decade(found[1] or "", found[2])
    if found := FIGURES.fullmatch(plain):
        return _figures(found, order, text)
    if found := MONTH_YEAR.fullmatch(plain):
        return _day(_year(found[2]), int(found[1]), -1, text)
    return _worded(plain, text)


def _year(figures: str) -> int:
    year = int(figures)
    if len(figures) == 2:
        year += 1900 if year >= 30 else 2000
    return year


def _decade(word: str, figures: str) -> str:
    century = figures[:2] if len(figures) == 4 else ("19" if int(figures) >= 30 else "20")
    start = century + figures[-2]
    if word in PARTS:
        decade: YearSpan = {"first": int(start) * 10, "last": int(start) * 10 + 9}
        span = part_of_decade([PARTS[word]], decade)
        return f"{span['first']:04d}/{span['last']:04d}"
    return "" if word else f"{start}X"


def _figures(found: re.Match[str], order: str, text: str) -> str:
    """A date in figures: 12.5.1957, 12/5/57, 1957-05-12."""
    one, sign, two, three = found.groups()
    if len(one) == 4:
        return _day(int(one), int(two), int(three), text)
    if len(three) not in (2, 4) or len(one) > 2:
        return ""
    first, second = int(one), int(two)
    if sign == "." or first == second or first > 12 >= second or (order == "day" and second <= 12):
        return _day(_year(three), second, first, text)
    if second > 12 >= first or order == "month":
        return _day(_year(three), first, second, text)
    if first > 12 and second > 12:
        return _day(_year(three), second, first, text)
    raise CellError(
        f"{quoted(text)} can be two days: say whether the day or the month stands first in this "
        "column."
    )


def _worded(plain: str, text: str) -> str:
    """A date with a word for its month, feast or season."""
    words = re.findall(
        r"[^\W\d_]+(?:-mas)?|\d+", re.sub(r"(?<=\d)(?:st|nd|rd|th|er|e)\b", "", plain)
    )
    words = [
        word
        for word in words
        if word not in ("of", "the", "de", "den", "der", "im", "en", "am", "le")
    ]
    named = [word for word in words if not word.isdigit()]
    figures = [word for word in words if word.isdigit()]
    if len(named) != 1 or not 1 <= len(figures) <= 2 or len(figures[-1]) not in (2, 4):
        return ""
    word, year = named[0], _year(figures[-1])
    if len(figures) == 2 and len(figures[0]) > 2:
        return ""
    if word in SEASONS and len(figures) == 1:
        return f"{year}-{SEASONS[word]}"
    if word in FEASTS and len(figures) == 1:
        return f"{year}-{FEASTS[word]:02d}"
    if word in PARTS and len(figures) == 1:
        first, last = MONTHS_OF[PARTS[word]]
        return f"{year}-{first:02d}/{year}-{last:02d}"
    if word not in MONTHS:
        return ""
    return _day(year, MONTHS[word], int(figures[0]) if len(figures) == 2 else -1, text)


def _day(year: int, month: int, day: int, text: str) -> str:
    """EDTF for a day, or a month (day -1). Raises CellError for one that does not exist."""
    if not 1 <= month <= 12:
        raise CellError(f"{quoted(text)}: there is no month {month}.")
    leap = year % 4 == 0 and (year % 100 != 0 or year % 400 == 0)
    most = DAYS[month - 1] + (leap and month == 2)
    if day == 0 or day > most:
        name = next(word for word, number in MONTHS.items() if number == month).title()
        raise CellError(f"{quoted(text)}: {name} {year} has {most} days.")
    return f"{year:04d}-{month:02d}-{day:02d}" if day > 0 else f"{year:04d}-{month:02d}"
