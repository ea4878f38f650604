"""When it was made: the years of every issue, weighed by the issue's chance."""

from .lists import filled, total
from .types.engine import Belief, Engine
from .types.view import Years

LIKELY = 0.9  # the likely years hold this much of the chance
BARELY = 0.01  # years with less than this are not named


def year_chances(engine: Engine, spans: list[int], chances: list[float]) -> list[list[float]]:
    """[[year, chance]], in order, over rows with these spans (places in the pack's) and chances;
    the chances add up to 1. [] if none has any.
    """
    by_span = filled(len(engine["pack"]["spans"]), 0.0)  # many rows have the same
    for j in range(len(spans)):
        by_span[spans[j]] = by_span[spans[j]] + chances[j]
    return years_of_spans(engine, by_span)


def years_of_spans(engine: Engine, by_span: list[float]) -> list[list[float]]:
    """The same from the chance of each of the pack's spans, to scale."""
    whole = total(by_span)
    if whole == 0.0:
        return []
    pack = engine["pack"]
    first = pack["range"]["first"]
    by_year = filled(pack["range"]["last"] + 1 - first, 0.0)
    for s in range(len(by_span)):
        if by_span[s] > 0.0:
            span = pack["spans"][s]
            for n in range(len(span["weights"])):
                y = span["first"] - first + n
                by_year[y] = by_year[y] + by_span[s] * span["weights"][n] / whole
    out: list[list[float]] = []
    for y in range(len(by_year)):
        if by_year[y] > 0.0:
            out.append([first + y, by_year[y]])
    return out


def likely_years(chances: list[list[float]]) -> list[int]:
    """[first, last] of the shortest run of years that holds LIKELY of the chance; the fullest of
    equally short ones, then the earliest. [] for no years.
    """
    best: list[int] = []
    held = 0.0
    for i in range(len(chances)):
        inside = 0.0
        for k in range(i, len(chances)):
            inside = inside + chances[k][1]
            if inside >= LIKELY - 1e-9:
                length = chances[k][0] - chances[i][0]
                shorter = len(best) == 0 or length < best[1] - best[0]
                if shorter or (length == best[1] - best[0] and inside > held + 1e-9):
                    best = [int(chances[i][0]), int(chances[k][0])]
                    held = inside
                break
    return best


def years(engine: Engine, state: Belief) -> Years:
    """The years of the piece, given that it is in the reference."""
    chances = year_chances(engine, state["spans"], state["chances"])
    likely = likely_years(chances)
    named = [int(pair[0]) for pair in chances if pair[1] >= BARELY]
    if len(likely) == 0:
        return {"chances": [], "first": 0, "last": 0, "earliest": 0, "latest": 0}
    return {
        "chances": chances,
        "first": likely[0],
        "last": likely[1],
        "earliest": min(likely[0], named[0]) if len(named) > 0 else likely[0],
        "latest": max(likely[1], named[len(named) - 1]) if len(named) > 0 else likely[1],
    }
