"""The rows of the compiled range: issues with their priors, spans, cells and backgrounds."""

from ..edtf import padded
from ..lists import empty_lists, filled
from ..types.pack import Cells, Rows, Span
from ..types.rows import IssueTable, Split
from .splitting import at_place, issues_of
from .weights import MILLION, in_millionths, scaled

SMOOTHING = 0.5  # rows' worth, shared out evenly over the states


def span_of_years(first: int, years: list[float]) -> Span:
    """The years with any weight; none where the range has no years at all."""
    weights = in_millionths(years)
    begin = -1
    end = -1
    for n in range(len(weights)):
        if weights[n] > 0:
            begin = n if begin < 0 else begin
            end = n
    if first == 0 and len(weights) == 1:
        return {"first": 0, "weights": []}
    return {"first": first + begin, "weights": weights[begin : end + 1]}


def key_of_span(span: Span) -> str:
    """A text that only this span has."""
    out = padded(span["first"], 1)
    for weight in span["weights"]:
        out = out + "," + padded(int((weight * MILLION + 0.5) // 1), 1)
    return out


def no_issues(features: int) -> IssueTable:
    """A table without rows."""
    rows: Rows = {"variant": [], "kind": [], "prior": [], "span": []}
    codes = empty_lists(features)
    return {"rows": rows, "spans": [], "codes": codes}


def issue_table(split: Split) -> IssueTable:
    """Every issue of every variant, in the order of the rows, each with its codes of `split`."""
    table = no_issues(len(split["states"]))
    rows = table["rows"]
    spans: dict[str, int] = {}
    variants = split["rows"]["variants"]
    prior: list[float] = []
    for n in range(len(variants)):
        item = split["rows"]["items"][at_place(split["items"], variants[n]["item"])]
        kind = at_place(split["kinds"], item["kind"])
        for issue in issues_of(split, variants[n])["issues"]:
            whole = 0.0
            for share in issue["years"]:
                whole = whole + share
            rows["variant"].append(n)
            rows["kind"].append(kind)
            prior.append(variants[n]["common"] * whole)
            span = span_of_years(split["first"], issue["years"])
            key = key_of_span(span)
            place = spans.get(key, -1)
            if place < 0:
                place = len(table["spans"])
                spans[key] = place
                table["spans"].append(span)
            rows["span"].append(place)
            for f in range(len(issue["codes"])):
                table["codes"][f].append(issue["codes"][f])
    rows["prior"] = scaled(prior)
    return table


def shares_by_state(split: Split, f: int, code: int) -> list[float]:
    """The share of each state of a feature; [] for not recorded."""
    if code == 0:
        return []
    out = filled(len(split["states"][f]), 0.0)
    states = split["cells"][f]["states"][code]
    for n in range(len(states)):
        out[states[n]] = split["cells"][f]["shares"][code][n]
    return out


def key_of_shares(split: Split, f: int, code: int) -> str:
    """A text that only cells with these shares have, whatever order their states stand in."""
    states = split["cells"][f]["states"][code]
    order = sorted(states, key=lambda state: state)
    out = ""
    for state in order:
        for n in range(len(states)):
            if states[n] == state and split["cells"][f]["shares"][code][n] > 0:
                share = split["cells"][f]["shares"][code][n]
                parts = int((share * MILLION + 0.5) // 1)
                exact = parts / MILLION == share
                text = padded(parts, 1) if exact else "of" + padded(len(states), 1)
                out = out + padded(state, 1) + ":" + text + ","
    return out


def cells_of_feature(split: Split, f: int, codes: list[int]) -> Cells:
    """What is recorded of a feature, each different cell once, in the order of the rows."""
    out: Cells = {"shares": [[]], "codes": []}
    places = filled(len(split["cells"][f]["states"]), -1)
    places[0] = 0
    known: dict[str, int] = {}
    for code in codes:
        if places[code] < 0:
            key = key_of_shares(split, f, code)
            place = known.get(key, -1)
            if place < 0:
                place = len(out["shares"])
                known[key] = place
                out["shares"].append(shares_by_state(split, f, code))
            places[code] = place
        out["codes"].append(places[code])
    return out


def usual_shares(rows: Rows, cells: Cells, kinds: int, states: int) -> list[list[float]]:
    """By kind the share of each state among its recorded rows by their prior, smoothed."""
    seen: list[list[float]] = []
    for _ in range(kinds):
        seen.append(filled(states, 0.0))
    counts = filled(kinds, 0)
    for row in range(len(cells["codes"])):
        code = cells["codes"][row]
        if code > 0:
            kind = rows["kind"][row]
            counts[kind] = counts[kind] + 1
            shares = cells["shares"][code]
            for s in range(states):
                seen[kind][s] = seen[kind][s] + rows["prior"][row] * shares[s]
    out: list[list[float]] = []
    for kind in range(kinds):
        count = counts[kind]
        known = scaled(seen[kind]) if count > 0 else filled(states, 1 / states)
        out.append([(share * count + SMOOTHING / states) / (count + SMOOTHING) for share in known])
    return out
