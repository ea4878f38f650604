"""The rows of the compiled pack: issues with their priors, spans, cells and backgrounds."""

from collections.abc import Sequence

import msgspec

from identify.reference.compiled import Cells, Feature, Rows, Span
from identify.reference.records import Pack
from identify.reference.splitting import Cell, Splitter
from identify.reference.weights import in_millionths, scaled

SMOOTHING = 0.5  # rows' worth, shared out evenly over the states


class Table(msgspec.Struct):
    """Rows, and what they point to."""

    rows: Rows
    spans: list[Span]
    cells: list[Cells]
    backgrounds: list[list[list[float]]]


def _span(first: int, years: Sequence[float]) -> Span:
    """The years with any weight."""
    weights = in_millionths(years)
    some = [n for n, weight in enumerate(weights) if weight > 0]
    return Span(first=first + some[0], weights=weights[some[0] : some[-1] + 1])


def _shares(cell: Cell, states: list[str]) -> list[float]:
    """The share of each state; [] for not recorded."""
    shares = dict(cell)
    return [shares.get(state, 0.0) for state in states] if cell else []


def rows_of(pack: Pack, splitter: Splitter, features: Sequence[Feature]) -> Table:
    """Every issue of every variant, in the order of the file. `features` begins with the kind."""
    rows = Rows(variant=[], kind=[], prior=[], span=[])
    spans: dict[tuple[int, tuple[float, ...]], int] = {}
    kept: list[Span] = []
    cells = [Cells(shares=[[]], codes=[]) for _ in features]
    places: list[dict[tuple[float, ...], int]] = [{(): 0} for _ in features]
    states = [[state.id for state in feature.states] for feature in features]
    kinds = {kind.id: n for n, kind in enumerate(pack.kinds)}
    for n, variant in enumerate(pack.variants):
        kind = splitter.items[variant.item].kind
        for issue in splitter.issues(variant):
            rows.variant.append(n)
            rows.kind.append(kinds[kind])
            rows.prior.append(variant.common * issue.weight)
            span = _span(splitter.first, issue.years)
            key = span.first, tuple(span.weights)
            if key not in spans:
                spans[key] = len(kept)
                kept.append(span)
            rows.span.append(spans[key])
            for f, feature in enumerate(features):
                cell = issue.cells[feature.id] if f > 0 else ((kind, 1.0),)
                shares = tuple(_shares(cell, states[f]))
                if shares not in places[f]:
                    places[f][shares] = len(cells[f].shares)
                    cells[f].shares.append(list(shares))
                cells[f].codes.append(places[f][shares])
    rows.prior = scaled(rows.prior)
    backgrounds = [
        [background(rows, cells[f], kind, len(states[f])) for kind in range(len(pack.kinds))]
        for f in range(len(features))
    ]
    return Table(rows, kept, cells, backgrounds)


def background(rows: Rows, cells: Cells, kind: int, states: int) -> list[float]:
    """The share of each state among recorded rows of the kind by their prior, smoothed."""
    seen = [0.0] * states
    count = 0
    for row, code in enumerate(cells.codes):
        if rows.kind[row] == kind and code > 0:
            count += 1
            for state, share in enumerate(cells.shares[code]):
                seen[state] += rows.prior[row] * share
    return [
        (share * count + SMOOTHING / states) / (count + SMOOTHING)
        for share in (scaled(seen) if count else [1 / states] * states)
    ]
