"""Marks of one piece that cannot all be of one year: which is the later, which the earlier."""

from .types.claims import SeenYears
from .types.marks import MarkClash, MarkSpan
from .types.pack import Pack


def years_apart(spans: list[MarkSpan]) -> list[list[int]]:
    """[[late, early]]: places of two spans ({first, last}, 0: open) with no year in common, the one
    that begins latest against each that has ended by then.
    """
    late = -1
    for i in range(len(spans)):
        if spans[i]["first"] > 0 and (late < 0 or spans[i]["first"] > spans[late]["first"]):
            late = i
    out: list[list[int]] = []
    if late < 0:
        return out
    for i in range(len(spans)):
        if i != late and 0 < spans[i]["last"] < spans[late]["first"]:
            out.append([late, i])
    return out


def mark_years(pack: Pack, seen: SeenYears) -> MarkSpan:
    """The years of a date mark that was seen, open where they reach an end of the range's life."""
    life = pack["range"]
    return {
        "first": seen["earliest"] if seen["earliest"] > life["first"] else 0,
        "last": seen["latest"] if seen["latest"] < life["last"] else 0,
        "first_hard": seen["first"] == seen["earliest"],
        "last_hard": seen["last"] == seen["latest"],
    }


def marks_apart(pack: Pack, seen: list[SeenYears]) -> list[MarkClash]:
    """The date marks among what was seen (from seen_years) that cannot be of one year, or hardly:
    {late, early: places in `seen`; hard: also with what lies beyond soft ends}.
    """
    marks: list[int] = []
    for n in range(len(seen)):
        if "seen" in pack["features"][seen[n]["feature"]] and seen[n]["earliest"] > 0:
            marks.append(n)
    out: list[MarkClash] = []
    for pair in years_apart([mark_years(pack, seen[k]) for k in marks]):
        late = marks[pair[0]]
        early = marks[pair[1]]
        hard = seen[late]["first"] > seen[early]["last"]
        out.append({"late": late, "early": early, "hard": hard})
    return out
