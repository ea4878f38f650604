"""What a seller says about the date, read into years: "late fifties", "c. 1955", "57/58".

What the words mean is common practice, no source: early is the first four years of a decade, mid
the middle five, late the last four; about a year is two years either way. The war is 1939 to 1945.
"""

from typing import Any

from .types.claims import Claim, ClaimProblem, YearSpan
from .types.engine import Engine

TENS: list[list[Any]] = [
    ["TWENTIES", 1920], ["THIRTIES", 1930], ["FORTIES", 1940], ["FIFTIES", 1950],
    ["SIXTIES", 1960], ["SEVENTIES", 1970], ["EIGHTIES", 1980], ["NINETIES", 1990],
]  # fmt: skip
ABOUT = ["C", "CA", "CIRCA", "ABOUT", "AROUND", "APPROX", "APPROXIMATELY", "ROUGHLY", "ISH", "~"]
FILLERS = [
    "THE", "FROM", "IN", "MADE", "YEAR", "A", "AN", "IT", "IS", "S", "OR", "SO", "OF", "?", "PIECE",
    "BETWEEN", "ISSUE", "VERSION", "TYPE", "MODEL", "SAYS", "AND", "TO", "/", "-", "SAID",
]  # fmt: skip
BEFORE = ["BEFORE", "PRE", "PREWAR"]
AFTER = ["AFTER", "POST", "POSTWAR"]
WAR = ["WAR", "PREWAR", "POSTWAR", "WARTIME"]
FIRSTS = ["FIRST", "ORIGINAL", "EARLIEST"]
LASTS = ["LAST", "FINAL", "LATEST"]
OPEN_START = 1800
OPEN_END = 2100
SLACK = 2


def class_of(c: str) -> str:
    """What sort of character this is: d digit, a letter, blank, or itself."""
    if "0" <= c <= "9":
        return "d"
    if "A" <= c <= "Z":
        return "a"
    if c in " .,;:'\"()":
        return " "
    return c


def tokens(text: str) -> list[str]:
    """Words, numbers and signs of a claim, in capitals; "1950's" is 1950 and S."""
    out: list[str] = []
    word = ""
    before = " "
    for c in text.upper() + " ":
        sort = class_of("-" if c in "\u2013\u2014" else c)
        if sort != before and len(word) > 0:
            out.append(word)
            word = ""
        if sort in ["d", "a"]:
            word = word + c
        elif sort != " ":
            out.append(sort)
        before = sort
    return out


def number(digits: str) -> int:
    """The value of a run of digits."""
    out = 0
    for c in digits:
        for n in range(10):
            if c == "0123456789"[n : n + 1]:
                out = out * 10 + n
    return out


def full_year(digits: str, first: int, last: int) -> int:
    """A year of four digits, or of two: in the century that falls in the life of the range, or is
    nearest to it. 0 for anything else.
    """
    value = number(digits)
    if len(digits) == 4:
        return value
    if len(digits) != 2:
        return 0
    best = 1900 + value
    for century in [1800, 1900, 2000]:
        year = century + value
        if first <= year <= last:
            best = year
    return best


def unread(problem: ClaimProblem) -> Claim:
    """A claim that cannot be used, and why: "unread", "reversed" or "outside"."""
    return {"about": "years", "first": 0, "last": 0, "problem": problem}


def years_named(words: list[str], first: int, last: int) -> list[YearSpan]:
    """The years and decades that are named, in order: [{first, last}]; an unreadable number
    gives first 0.
    """
    out: list[YearSpan] = []
    for i in range(len(words)):
        word = words[i]
        after = words[i + 1] if i + 1 < len(words) else ""
        if class_of(word[0:1]) == "d":
            year = full_year(word, first, last)
            whole = year // 10 * 10 == year and after == "S"
            if len(word) == 3 and after == "X":
                year = number(word) * 10
                whole = True
            out.append({"first": year, "last": year + 9 if whole else year})
        for pair in TENS:
            if word == pair[0]:
                out.append({"first": pair[1], "last": pair[1] + 9})
    return out


def has_any(words: list[str], wanted: list[str]) -> bool:
    """Whether one of these words is there."""
    for word in words:
        if word in wanted:
            return True
    return False


def understood(words: list[str]) -> bool:
    """Whether every word means something here, so that nothing said is passed over."""
    known = ["EARLY", "MID", "MIDDLE", "LATE", "BY", "SINCE", "X", "DURING"]
    for word in words:
        spoken = word in known or word in FILLERS or word in ABOUT or word in BEFORE
        spoken = spoken or word in AFTER or word in WAR or word in FIRSTS or word in LASTS
        for pair in TENS:
            spoken = spoken or word == pair[0]
        if not spoken and class_of(word[0:1]) != "d":
            return False
    return True


def part_of_decade(words: list[str], span: YearSpan) -> YearSpan:
    """Early, mid or late, where a decade is named."""
    start = span["first"]
    decade = span["last"] - start == 9
    if decade and "EARLY" in words:
        return {"first": start, "last": start + 3}
    if decade and has_any(words, ["MID", "MIDDLE"]):
        return {"first": start + 3, "last": start + 7}
    if decade and "LATE" in words:
        return {"first": start + 6, "last": start + 9}
    return {"first": start, "last": span["last"]}


def span_said(words: list[str], first: int, last: int) -> YearSpan:
    """The span {first, last} that the words mean, first 0 where they mean none."""
    named = years_named(words, first, last)
    if len(named) > 2 or (len(named) == 0 and not has_any(words, WAR)):
        return {"first": 0, "last": 0}
    span: YearSpan = {"first": 1939, "last": 1945}
    if len(named) > 0:
        span = part_of_decade(words, named[0])
    if len(named) == 2 and named[0]["first"] > 0 and named[1]["first"] > 0:
        span = {"first": span["first"], "last": part_of_decade(words, named[1])["last"]}
    elif len(named) == 2:
        span = {"first": 0, "last": 0}
    start = span["first"]
    end = span["last"]
    war = len(named) == 0
    if start == 0:
        return span
    if has_any(words, BEFORE):
        return {"first": OPEN_START, "last": start if war else start - 1}
    if has_any(words, AFTER):
        return {"first": end if war else end + 1, "last": OPEN_END}
    if "BY" in words or words[0] == "/":
        return {"first": OPEN_START, "last": end}
    if "SINCE" in words or words[len(words) - 1] == "/":
        return {"first": start, "last": OPEN_END}
    if has_any(words, ABOUT):
        return {"first": start - SLACK, "last": end + SLACK}
    return span


def read_claim(engine: Engine, text: str) -> Claim:
    """A claim read: {about: "years", "first issue" or "last issue", first, last (years, inclusive),
    problem}.

    `problem` is "", "unread" (not understood), "reversed" (it ends before it begins) or "outside"
    (not a year in the life of the range); then nothing else counts.
    """
    life = engine["pack"]["range"]
    words = tokens(text)
    if len(words) == 0 or not understood(words):
        return unread("unread")
    whole = len(years_named(words, life["first"], life["last"])) == 0
    if whole and has_any(words, FIRSTS):
        return {"about": "first issue", "first": 0, "last": 0, "problem": ""}
    if whole and has_any(words, LASTS):
        return {"about": "last issue", "first": 0, "last": 0, "problem": ""}
    span = span_said(words, life["first"], life["last"])
    if span["first"] == 0:
        return unread("unread")
    if span["last"] < span["first"]:
        return unread("reversed")
    if span["last"] < life["first"] or span["first"] > life["last"]:
        return unread("outside")
    return {"about": "years", "first": span["first"], "last": span["last"], "problem": ""}
