"""A text cut into runs: what amounts, dates, claims and names are all read from.

A run is characters of one sort that stand together: figures, letters A to Z, letters of other
alphabets ("foreign"), a space, a dash. A point (or comma), a tick, a slash, a quarter (¼ ½ ¾) and
any other sign is a run of its own. All is in capitals.
"""

from .types.texts import Run

FIGURES = "0123456789"
SPACES = [" ", "\t", "\u00a0", "\u2009", "\u202f"]
DASHES = ["-", "\u2010", "\u2011", "\u2012", "\u2013", "\u2014", "\u2212", "="]  # 10/= is 10/-
TICKS = ["'", "\u2019"]  # part thousands in Switzerland, stand for a century
QUARTERS = ["¼", "½", "¾"]
LONG = ["figure", "letter", "foreign", "space", "dash"]  # the sorts of which a run may be longer
WORD = ["letter", "foreign"]


def sort_of(c: str) -> str:
    """What a character is: figure, letter, foreign, space, dash, point, tick, slash, quarter or
    sign.
    """
    if c in FIGURES:
        return "figure"
    if "A" <= c <= "Z":
        return "letter"
    if c in SPACES:
        return "space"
    if c in [".", ","]:
        return "point"
    if c in TICKS:
        return "tick"
    if c in DASHES:
        return "dash"
    if c in QUARTERS:
        return "quarter"
    if c == "/":
        return "slash"
    return "foreign" if c >= "À" else "sign"


def runs_of(text: str) -> list[Run]:
    """The runs of a text, in order and with nothing left out."""
    out: list[Run] = []
    run = ""
    before = ""
    for c in text.upper():
        sort = sort_of(c)
        if run != "" and (sort != before or sort not in LONG):
            out.append({"sort": before, "text": run})
            run = ""
        run = run + c
        before = sort
    if run != "":
        out.append({"sort": before, "text": run})
    return out


def sort_at(runs: list[Run], at: int) -> str:
    """The sort of the run here, "" past the end."""
    return runs[at]["sort"] if at < len(runs) else ""


def end_of(runs: list[Run], start: int, sorts: list[str]) -> int:
    """Where the runs of these sorts that begin at `start` end."""
    end = start
    while end < len(runs) and runs[end]["sort"] in sorts:
        end = end + 1
    return end


def text_of(runs: list[Run], start: int, end: int) -> str:
    """The text of the runs from `start` up to `end`."""
    out = ""
    for at in range(start, end):
        out = out + runs[at]["text"]
    return out
