"""The years of a number on a piece: a British registered design or patent, or a barcode.

reference/numbers.py makes the tables from fixtures/marks.

The check digit is by the GS1 General Specifications, modulo 10: from the right, the figures before
it weigh 3, 1, 3, 1 and so on; it is what is missing to the next ten.
"""

from .look_up import LOOK_ALIKES
from .runs import FIGURES, SPACES
from .types.numbers import BarTables, DatedNumber, NumberProblem, NumberSort, NumberTables, Series

LEADS = [
    "REG", "REGD", "REGISTERED", "RD", "DES", "DESIGN", "NO", "NOS", "NUMBER", "PAT", "PATENT",
    "BRITISH", "GB", "UK", "PROV", "PROVISIONAL", "APP", "APPL", "APPLICATION", "APPLIED", "FOR",
]  # fmt: skip
MOST_FIGURES = 8
YEARLY_FIRST = 1852  # British patent applications began again at 1 in each of these years
YEARLY_LAST = 1978


def number_told(problem: NumberProblem, figures: str) -> DatedNumber:
    """What read_number gives, with nothing known yet."""
    return {
        "problem": problem, "figures": figures, "meant": "", "kind": "", "number": 0,
        "first": 0, "last": 0, "memory": False, "row": -1, "near": [],
    }  # fmt: skip


def past(text: str, start: int, allowed: list[str] | str) -> int:
    """Where the characters that are allowed end, from `start` on."""
    at = start
    while at < len(text) and text[at] in allowed:
        at = at + 1
    return at


def past_letters(text: str, start: int) -> int:
    """Where the letters A to Z that begin here end."""
    at = start
    while at < len(text) and ("A" <= text[at] <= "Z" or "a" <= text[at] <= "z"):
        at = at + 1
    return at


def after_lead(text: str) -> str:
    """What comes after words such as "Regd. No.", without spaces around it."""
    end = len(text)
    while end > 0 and text[end - 1] in SPACES:
        end = end - 1
    kept = text[0:end]
    at = past(kept, 0, SPACES)
    going = True
    while going and at < end:
        word = past_letters(kept, at)
        going = kept[at:word].upper() in LEADS
        if going:
            at = past(kept, past(kept, word, ".:"), SPACES)
    return kept[at:end]


def whole_figures(text: str) -> str:
    """The figures of a number, which may be separated by threes; "" for any other text."""
    out = ""
    group = 0
    parted = False
    for c in text:
        if c in FIGURES:
            out = out + c
            group = group + 1
        elif (c == "," or c in SPACES) and (group == 3 or (not parted and 0 < group < 3)):
            parted = True
            group = 0
        else:
            return ""
    if parted and group != 3:
        return ""
    return out


def without_gaps(text: str) -> str:
    """The text without its spaces and hyphens."""
    out = ""
    for c in text:
        if c != "-" and c not in SPACES:
            out = out + c
    return out


def read_for_figures(text: str) -> str:
    """The text with each letter that is taken for a figure written as that figure."""
    out = ""
    for c in text:
        d = c
        for pair in LOOK_ALIKES:
            if c.upper() == pair[0]:
                d = pair[1]
        out = out + d
    return out


def parts_of_year(text: str) -> list[str]:
    """The number and the year of "1234/09" or "1234 of 1909", [] for any other text."""
    end = past(text, 0, FIGURES)
    at = past(text, end, SPACES)
    slash = text[at : at + 1] == "/"
    apart = slash or text[at : at + 2].upper() == "OF"
    year = past(text, at + 1 if slash else at + 2, SPACES)
    stop = past(text, year, FIGURES)
    if apart and 0 < end <= 6 and stop == len(text) and stop - year in [2, 4]:
        return [text[0:end], text[year:stop]]
    return []


def read_application(parts: list[str]) -> DatedNumber:
    """A number with its year. Two figures of a year are read as 19.."""
    year = int(parts[1])
    if len(parts[1]) == 2:
        year = 1900 + year
    out = number_told("", parts[0])
    out["kind"] = "application"
    out["number"] = int(parts[0])
    out["first"] = year
    out["last"] = year
    if year < YEARLY_FIRST or year > YEARLY_LAST:
        out["problem"] = "year"
        out["near"] = [YEARLY_FIRST, YEARLY_LAST]
    return out


def read_series(rows: Series, figures: str) -> DatedNumber:
    """A number of a series that ran on over the years."""
    out = number_told("", figures)
    number = int(figures)
    out["number"] = number
    at = -1
    for i in range(len(rows)):
        if rows[i][0] <= number:
            at = i
    if at < 0:
        out["problem"] = "low"
        out["near"] = [rows[0][0], rows[0][1]]
        return out
    going_on = at + 1 < len(rows)
    if rows[at][1] == 0:
        out["problem"] = "unused"
        out["near"] = [rows[at][0], rows[at + 1][0] if going_on else 0]
        return out
    out["row"] = at
    out["first"] = rows[at][1]
    out["memory"] = rows[at][3] == 1
    if going_on:
        out["last"] = rows[at + 1][2]
        out["memory"] = rows[at][3] == 1 or rows[at + 1][3] == 1
    return out


def check_digit(body: str) -> int:
    """The check digit that belongs after these figures."""
    weighed = 0
    weight = 3
    for i in range(len(body)):
        weighed = weighed + weight * int(body[len(body) - 1 - i])
        weight = 4 - weight
    return 10 * ((weighed + 9) // 10) - weighed


def read_bars(table: BarTables, text: str) -> DatedNumber:
    """The number under a barcode. The kind is UPC-A too where a 0 was written in front of it."""
    figures = without_gaps(text)
    if past(figures, 0, FIGURES) < len(figures) or figures == "":
        out = number_told("empty" if figures == "" else "letters", text)
        meant = read_for_figures(figures)
        if past(meant, 0, FIGURES) == len(meant):
            out["meant"] = meant
        return out
    if len(figures) not in [8, 12, 13]:
        return number_told("count", figures)
    right = check_digit(figures[0 : len(figures) - 1])
    if right != int(figures[len(figures) - 1]):
        out = number_told("check", figures)
        out["near"] = [right]
        return out
    out = number_told("", figures)
    american = len(figures) == 12 or (len(figures) == 13 and figures[0] == "0")
    since = table["twelve"] if american else table["thirteen"]
    out["kind"] = "EAN-8" if len(figures) == 8 else "EAN-13"
    if american:
        out["kind"] = "UPC-A"
    out["first"] = since[0]
    out["memory"] = since[1] == 1
    return out


def read_number(tables: NumberTables, what: NumberSort, text: str) -> DatedNumber:
    """When a number was given; `text` is as it is read."""
    if what == "barcode":
        return read_bars(tables["barcode"], text)
    rest = after_lead(text)
    if rest == "":
        return number_told("empty", "")
    parts: list[str] = []
    if what == "patent":
        parts = parts_of_year(rest)
    if len(parts) > 0:
        return read_application(parts)
    figures = whole_figures(rest)
    if figures == "":
        out = number_told("letters", rest)
        meant = read_for_figures(rest)
        if whole_figures(meant) != "" or (what == "patent" and len(parts_of_year(meant)) > 0):
            out["meant"] = meant
        return out
    if len(figures) > MOST_FIGURES:
        return number_told("long", figures)
    return read_series(tables["patent"] if what == "patent" else tables["design"], figures)
