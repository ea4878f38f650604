"""Marks of one piece that cannot all be of one year: which is the later, which the earlier."""

from .types.marks import MarkSpan


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
