"""The years of a number on a piece: a patent, a registered design, a barcode.

The tables (core/types/marks.py) are made from fixtures/marks by reference/number_tables.py. The
check digit is by the GS1 General Specifications, modulo 10: from the right, the figures before it
weigh 3, 1, 3, 1 and so on; it is what is missing to the next ten.
"""

from .look_up import LOOK_ALIKES
from .runs import FIGURES, SPACES
from .types.marks import BarTables, DatedNumber, NumberProblem

YEARLY_FIRST = 1852  # British patent applications began again at 1 in each of these years
YEARLY_LAST = 1978
GERMAN = ["223", "323", "2433", "246"]  # figures in each group: the year, then the number


def number_told(problem: NumberProblem, figures: str) -> DatedNumber:
    """What is told of a number, with nothing known yet: {problem, figures, meant, kind, number,
    first, last, memory, row, near}.
    """
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


def figure_groups(text: str) -> list[str]:
    """The groups of figures of a number, parted by a space, a comma, a dot or a stroke each; [] for
    any other text.
    """
    out: list[str] = []
    group = ""
    for c in text:
        if c in FIGURES:
            group = group + c
        elif (c in [",", ".", "'"] or c in SPACES) and group != "":
            out.append(group)
            group = ""
        else:
            return []
    if group == "":
        return []
    out.append(group)
    return out


def without_check(text: str, groups: list[str]) -> list[str]:
    """The groups of a German number without its check digit, as in 195 12 345.7."""
    last = len(groups) - 1
    if last > 1 and len(groups[last]) == 1 and text[len(text) - 2 : len(text) - 1] == ".":
        return groups[0:last]
    return groups


def whole_figures(text: str) -> str:
    """The figures of a number, which may be parted by threes, or as the German office parts them;
    "" for any other text.
    """
    groups = without_check(text, figure_groups(text))
    if len(groups) == 0:
        return ""
    out = ""
    form = ""
    threes = len(groups) == 1 or len(groups[0]) <= 3
    for i in range(len(groups)):
        out = out + groups[i]
        count = len(groups[i])
        form = form + FIGURES[count : count + 1]
        if i > 0 and len(groups[i]) != 3:
            threes = False
    return out if threes or form in GERMAN else ""


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


def years_meant(year: str) -> list[int]:
    """The years that may stand after an application's number. Two figures are of either century:
    both where both had such numbers, none where neither had.
    """
    written = int(year)
    years = [written] if len(year) == 4 else [1800 + written, 1900 + written]
    return [each for each in years if YEARLY_FIRST <= each <= YEARLY_LAST]


def read_applications(parts: list[str]) -> list[DatedNumber]:
    """A number with its year: one entry for each year that may be meant, or one with the problem
    "year".
    """
    out: list[DatedNumber] = []
    for year in years_meant(parts[1]):
        number = number_told("", parts[0])
        number["kind"] = "application"
        number["number"] = int(parts[0])
        number["first"] = year
        number["last"] = year
        out.append(number)
    if len(out) == 0:
        wrong = number_told("year", parts[0])
        wrong["kind"] = "application"
        wrong["number"] = int(parts[0])
        wrong["first"] = int(parts[1])
        wrong["near"] = [YEARLY_FIRST, YEARLY_LAST]
        out.append(wrong)
    return out


def count_of_figures(number: int) -> int:
    """How many figures a number has."""
    count = 1
    rest = number // 10
    while rest > 0:
        count = count + 1
        rest = rest // 10
    return count


def read_series(rows: list[list[int]], figures: str) -> DatedNumber:
    """A number of a series that ran on over the years. problem: "" · long · low · unused · beyond.

    near: what is right (low: the lowest number and its year; unused: the first number not given and
    the next that was, or 0; beyond: the number not reached, and by which year; long: how many
    figures there are at most).
    """
    most = count_of_figures(rows[len(rows) - 1][0])
    if len(figures) > most:
        longer = number_told("long", figures)
        longer["near"] = [most]
        return longer
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
    out["memory"] = rows[at][3] == 1
    if rows[at][1] < 0:
        out["problem"] = "beyond"
        out["near"] = [rows[at][0], rows[at][2]]
        return out
    if rows[at][1] == 0:
        out["problem"] = "unused"
        out["near"] = [rows[at][0], rows[at + 1][0] if going_on and rows[at + 1][1] > 0 else 0]
        return out
    out["row"] = at
    out["first"] = rows[at][1]
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
    """The number under a barcode. problem: "" · empty · letters · count · check. The kind is UPC-A
    too where a 0 was written in front of it; near, of check: what the last figure should be.
    """
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
