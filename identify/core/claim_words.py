"""What a seller says about the date, read into years: "late fifties", "c. 1955", "57/58".

The date is read as everywhere (dates.py), day before month. What sellers say besides is passed
over; "from 1957" is a piece of 1957. About a year is two years either way: common practice, no
source.
"""

from .date_tokens import date_tokens
from .dates import is_edtf, read_date, read_tokens
from .edtf import mark_of, sides_of, written_edtf
from .types.claims import Claim, ClaimProblem, IssueSaid
from .types.dates import DateToken, Life
from .types.engine import Engine

TALK = [
    "FROM", "MADE", "YEAR", "A", "AN", "IT", "IS", "S", "PIECE", "ISSUE", "VERSION", "TYPE",
    "MODEL", "SAYS", "SAID", "DURING",
]  # fmt: skip
FIRSTS = ["FIRST", "ORIGINAL", "EARLIEST"]
LASTS = ["LAST", "FINAL", "LATEST"]
OPEN_START = 1800
OPEN_END = 2100
SLACK = 2


def unread(problem: ClaimProblem) -> Claim:
    """A claim that cannot be used, and why."""
    return {"about": "years", "first": 0, "last": 0, "edtf": "", "problem": problem}


def said_of_date(tokens: list[DateToken]) -> list[DateToken]:
    """The tokens without what only says that a piece is spoken of."""
    out: list[DateToken] = []
    for token in tokens:
        decade = token["text"] == "S" and len(out) > 0 and out[len(out) - 1]["role"] == "n"
        if token["text"] not in TALK or decade:
            out.append(token)
    return out


def year_said(date: str, mark: str, way: int, otherwise: int) -> int:
    """The year of an end of a claim, `way` (-1 or 1) some years on where it is about."""
    if date == "":
        return otherwise
    return int(date[0:4]) + (way * SLACK if mark in ["~", "%"] else 0)


def claim_of(edtf: str, first: int, last: int) -> Claim:
    """The years that a date claims, in the life of a range from `first` to `last`."""
    sides = sides_of(edtf)
    date = written_edtf(edtf)
    start = year_said(date["first"], mark_of(sides[0]), -1, OPEN_START)
    end = year_said(date["last"], mark_of(sides[len(sides) - 1]), 1, OPEN_END)
    if end < first or start > last:
        return unread("outside")
    return {"about": "years", "first": start, "last": end, "edtf": edtf, "problem": ""}


def issue_said(tokens: list[DateToken]) -> IssueSaid:
    """Which issue is spoken of where tokens say nothing else, "" where they do."""
    out: IssueSaid = ""
    for token in tokens:
        if token["text"] in FIRSTS:
            out = "first issue"
        elif token["text"] not in LASTS:
            return ""
    return "last issue" if out == "" and len(tokens) > 0 else out


def read_claim(engine: Engine, text: str) -> Claim:
    """A claim read: what it is about, its years and the same as EDTF."""
    about = engine["pack"]["range"]
    life: Life = {"first": about["first"], "last": about["last"]}
    tokens = said_of_date(date_tokens(text))
    issue = issue_said(tokens)
    if issue != "":
        return {"about": issue, "first": 0, "last": 0, "edtf": "", "problem": ""}
    kept = [token for token in tokens if token["text"] not in FIRSTS and token["text"] not in LASTS]
    written = is_edtf(text.upper())
    read = read_date(text, "day", life) if written else read_tokens(kept, "day", life)
    if read["problem"] == "reversed":
        return unread("reversed")
    if read["problem"] != "":
        return unread("unread")
    return claim_of(read["edtf"], life["first"], life["last"])
