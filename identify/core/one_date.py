"""One day, month, season, year or decade as people write it.

What the words mean is common practice, no source: early is the first four years of a decade, mid
the middle five, late the last four; of a year, four months each. A year of two figures is in the
life of the range where one is given, else of the 1900s from 30 on and of the 2000s below, as
spreadsheets take it (from memory). A date with points has its day first.
"""

from .date_in_words import month_name
from .edtf import date_as, days_in, no_date, padded, season_of, span_of
from .types.dates import DateProblem, DateToken, DayOrder, Life, OneDate

DATE_LETTERS = [
    ["n", "n"], ["month", "m"], ["season", "s"], ["part", "p"], ["tens", "t"], ["decade", "D"],
    ["years", "Y"], ["x", "x"], ["war", "w"], ["-", "-"], ["/", "/"], [".", "."],
]  # fmt: skip
DECADES = ["nD", "nDY", "Yn", "YnD", "t", "nx"]
CENTURIES = [1800, 1900, 2000]
PIVOT = 30  # two figures below are of the 2000s


def refused_date(problem: DateProblem, why: str) -> OneDate:
    """No date, and why."""
    out = date_as("", "", "")
    out["problem"] = problem
    out["why"] = why
    return out


def year_of(figures: str, life: Life) -> int:
    """A year of four figures, or of two; 0 for anything else."""
    value = int(figures)
    if len(figures) == 4:
        return value
    if len(figures) != 2:
        return 0
    for century in CENTURIES:
        if life["first"] <= century + value <= life["last"]:
            return century + value
    if life["last"] > 0:
        return 1900 + value
    return value + (1900 if value >= PIVOT else 2000)


def one_year(figures: str, life: Life) -> OneDate:
    """A year by itself."""
    year = year_of(figures, life)
    text = padded(year, 4)
    return date_as(text, text, text) if year > 0 else no_date()


def month_of(year: int, month: int) -> OneDate:
    """A month of a year."""
    if not 1 <= month <= 12:
        return refused_date("month", "There is no month " + padded(month, 1) + ".")
    text = padded(year, 4) + "-" + padded(month, 2)
    return date_as(text, text, text) if year > 0 else no_date()


def day_of(year: int, month: int, day: int) -> OneDate:
    """A day of a month."""
    out = month_of(year, month)
    if out["problem"] != "":
        return out
    most = days_in(year, month)
    if not 1 <= day <= most:
        named = month_name(month) + " " + padded(year, 4)
        return refused_date("day", named + " has " + padded(most, 2) + " days.")
    text = out["first"] + "-" + padded(day, 2)
    return date_as(text, text, text)


def decade_of(start: int, part: int) -> OneDate:
    """A decade, or its early (1), middle (2) or late (3) years."""
    text = padded(start, 4)
    if part == 0:
        return date_as(text[0:3] + "X", text, text[0:3] + "9")
    first = start + [0, 0, 3, 6][part]
    return span_of(padded(first, 4), padded(start + [0, 3, 7, 9][part], 4))


def decade_named(tokens: list[DateToken], shape: str, life: Life) -> int:
    """The first year of the decade that these tokens name, 0 for none."""
    if shape == "t":
        return tokens[0]["value"]
    figures = ""
    for token in tokens:
        if token["role"] == "n":
            figures = token["text"]
    if shape == "nx":
        return int(figures) * 10 if len(figures) == 3 else 0
    year = year_of(figures, life)
    return year if year // 10 * 10 == year else 0


def part_of_year(year: str, part: int) -> OneDate:
    """The early (1), middle (2) or late (3) months of a year."""
    first = [1, 1, 5, 9][part]
    return span_of(year + "-" + padded(first, 2), year + "-" + padded(first + 3, 2))


def two_figures(left: str, sign: str, right: str, life: Life) -> OneDate:
    """3/57, 03.1957, 1957-05, 1957-58, 1957/8."""
    if len(left) == 4 and len(right) <= 2:
        year = int(left)
        longer = int(right) > int(left[4 - len(right) :])
        month = 1 <= int(right) <= 12
        if longer and not (month and len(right) == 2 and sign == "-"):
            return span_of(left, left[0 : 4 - len(right)] + right)
        return month_of(year, int(right))
    if len(left) > 2 or len(right) not in [2, 4]:
        return no_date()
    out = month_of(year_of(right, life), int(left))
    if out["problem"] == "month" and sign != "." and len(left) == 2 and len(right) == 2:
        first = year_of(left, life)
        last = year_of(right, life)
        return span_of(padded(first, 4), padded(last, 4)) if first < last else out
    return out


def three_figures(texts: list[str], sign: str, order: DayOrder, life: Life) -> OneDate:
    """1957-05-12, 12.5.1957, 12/5/57: which of the two is the day goes by `order`."""
    left = int(texts[0])
    right = int(texts[1])
    if len(texts[1]) > 2:
        return no_date()
    if len(texts[0]) == 4:
        return day_of(left, right, int(texts[2])) if len(texts[2]) <= 2 else no_date()
    year = year_of(texts[2], life)
    if len(texts[0]) > 2 or year == 0 or (sign == "" and len(texts[2]) == 2):
        return no_date()
    if right > 12 and left <= 12 and sign != ".":
        return day_of(year, left, right)
    if sign == "." or left == right or left > 12 or order == "day":
        return day_of(year, right, left)
    if order == "month":
        return day_of(year, left, right)
    out = refused_date("order", "")
    out["readings"] = [day_of(year, right, left)["edtf"], day_of(year, left, right)["edtf"]]
    return out


def with_month(tokens: list[DateToken], shape: str, life: Life) -> OneDate:
    """A date with a word for its month: 12 May 1957, May 12 1957, May 57, 1957 May 12."""
    month = 0
    texts: list[str] = []
    for token in tokens:
        if token["role"] == "month":
            month = token["value"]
        else:
            texts.append(token["text"])
    if len(texts) == 1:
        return month_of(year_of(texts[0], life), month)
    year = texts[1]
    day = texts[0]
    if len(texts[0]) == 4 and shape == "nmn":
        year = texts[0]
        day = texts[1]
    if len(day) > 2 or int(day) > 31 or year_of(year, life) == 0:
        return no_date()
    return day_of(year_of(year, life), month, int(day))


def with_season(tokens: list[DateToken], shape: str, life: Life) -> OneDate:
    """A season of a year, or a winter in two: winter 1957/58."""
    season = 0
    texts: list[str] = []
    for token in tokens:
        if token["role"] == "season":
            season = token["value"]
        else:
            texts.append(token["text"])
    year = year_of(texts[0], life)
    if shape == "snn":
        last = int(texts[1])
        figures = padded(year + 1, 4)
        follows = texts[1] in [figures, figures[2:], figures[3:]] and last >= 0
        if season != 24 or not follows:
            return no_date()
    return season_of(padded(year, 4), season) if year > 0 else no_date()


def shape_of_date(tokens: list[DateToken]) -> str:
    """The tokens in one letter each; "*" for one that is no part of a single date."""
    out = ""
    for token in tokens:
        letter = "*"
        for known in DATE_LETTERS:
            if token["role"] == known[0]:
                letter = known[1]
        out = out + letter
    return out


def without_roles(tokens: list[DateToken], roles: list[str]) -> list[DateToken]:
    """The tokens but for those of these roles."""
    return [token for token in tokens if token["role"] not in roles]


def one_date(tokens: list[DateToken], order: DayOrder, life: Life) -> OneDate:
    """One day, month, season, year, decade or part of one."""
    kept = without_roles(tokens, ["of"])
    shape = shape_of_date(kept)
    if shape == "n":
        return one_year(kept[0]["text"], life)
    if shape == "w":
        return span_of("1939", "1945")
    if shape in DECADES:
        start = decade_named(kept, shape, life)
        return decade_of(start, 0) if start > 0 else no_date()
    if shape == "pn":
        whole = one_year(kept[1]["text"], life)
        return whole if whole["problem"] != "" else part_of_year(whole["edtf"], kept[0]["value"])
    if shape[0:1] == "p" and shape[1:] in DECADES:
        start = decade_named(kept[1:], shape[1:], life)
        return decade_of(start, kept[0]["value"]) if start > 0 else no_date()
    if shape in ["n-n", "n/n", "n.n"]:
        return two_figures(kept[0]["text"], kept[1]["text"], kept[2]["text"], life)
    if shape in ["n-n-n", "n/n/n", "n.n.n", "nnn"]:
        texts = [token["text"] for token in kept if token["role"] == "n"]
        return three_figures(texts, "" if shape == "nnn" else kept[1]["text"], order, life)
    spoken = without_roles(kept, ["-", "/", ".", "decade"] if "m" in shape else ["-", "/", "."])
    words = shape_of_date(spoken)
    if words in ["mn", "nm", "nmn", "mnn"]:
        return with_month(spoken, words, life)
    return with_season(spoken, words, life) if words in ["sn", "ns", "snn"] else no_date()
