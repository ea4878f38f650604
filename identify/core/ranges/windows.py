"""In which years a wording may stand on new pieces, and with what weight.

A mark is not a running change of one maker: many pieces never carried any. So each year of
production has the wordings that were possible in it, in shares by their weight, beside pieces
without the mark. Only a mark that is seen says much.

Beyond a soft end the weight falls evenly, in `rise` or `fall` years, to `low_before` or
`low_after`, and stays there: a soft end never rules a year out. Beyond a hard one it is 0.
"""

from ..lists import total
from ..types.rows import MarkYears, StateShare, Window
from .weights import in_millionths
from .words import NONE


def beyond_end(years: float, tail: int, low: float) -> float:
    """The weight so many years beyond an end."""
    return low + (1.0 - low) * max(0.0, 1.0 - years / (tail + 1))


def window_weight(span: Window, year: int) -> float:
    """1 in years that have some time within the ends, less beyond them."""
    if year + 1 <= span["start"]:
        return beyond_end(span["start"] // 1 - year, span["rise"], span["low_before"])
    if year >= span["end"]:
        past = year + 1 + (0 - span["end"]) // 1  # less the end, rounded up
        return beyond_end(past, span["fall"], span["low_after"])
    return 1.0


def window_met(span: Window, first: int, last: int) -> bool:
    """Whether the wording belongs to any of the years, or they are near a soft end of it."""
    for year in range(first, last + 1):
        low = span["low_before"] if year < span["start"] else span["low_after"]
        if window_weight(span, year) > low:
            return True
    return False


def mark_cell(mark: MarkYears, year: int) -> list[StateShare]:
    """The share of each state in the year's production."""
    states: list[str] = []
    weights: list[float] = []
    for span in mark["windows"]:
        weight = window_weight(span, year)
        if weight > 0.0:
            place = -1
            for n in range(len(states)):
                if states[n] == span["state"]:
                    place = n
            if place < 0:
                states.append(span["state"])
                weights.append(weight)
            else:
                weights[place] = max(weights[place], weight)
    if len(states) == 0:
        return [{"state": NONE, "share": 1.0}]
    largest = 0.0
    for weight in weights:
        largest = max(largest, weight)
    carried = mark["seen"] * largest
    whole = total(weights)
    parts = [carried * share / whole for share in weights]
    parts.append(1.0 - carried)
    shares = in_millionths(parts)
    states.append(NONE)
    out: list[StateShare] = []
    for n in range(len(states)):
        out.append({"state": states[n], "share": shares[n]})
    return out
