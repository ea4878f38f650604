"""What a running change of one's own range does: to which pieces it speaks, where something that is
put down keeps it silent, and what came before and after it, by each source.
"""

from ..lists import largest
from ..shapes import SEEN
from ..types.gate import Group
from ..types.running import ChangeEffect, Saying, Stretch
from .own_rows import list_at, live_rows, text_at
from .weights import within_life
from .year_bounds import years_of_edtf


def bears_on(change: Group, item: Group) -> bool:
    """Whether a change is on an item: of its kinds and its items, where it names any."""
    kinds = list_at(change, "kinds")
    items = list_at(change, "items")
    of_kind = len(kinds) == 0 or text_at(item, "kind") in kinds
    return of_kind and (len(items) == 0 or text_at(item, "id") in items)


def saying_of(source: str, since: str, first: int, last: int) -> Saying:
    """From when on, as a source says; a text that cannot be read says nothing."""
    years = years_of_edtf(since)
    known = since != "" and years["problem"] == ""
    return {
        "source": source, "since": since,
        "earliest": within_life(years["earliest"], first, last) if known else first,
        "latest": within_life(years["latest"], first, last) if known else first,
    }  # fmt: skip


def stretch_of(change: Group, first: int, last: int) -> Stretch:
    """One change on the line, until its own end or the end of the range."""
    sayings = [saying_of(text_at(change, "source"), text_at(change, "since"), first, last)]
    for pair in list_at(change, "other_from"):
        sayings.append(saying_of(pair[0], pair[1], first, last))
    until = years_of_edtf(text_at(change, "until"))
    ends = text_at(change, "until") != "" and until["problem"] == ""
    return {
        "change": text_at(change, "id"), "state": text_at(change, "state"), "sayings": sayings,
        "end": within_life(until["latest"], first, last) if ends else last + 1.0,
    }  # fmt: skip


def same_pieces(first: Group, second: Group) -> bool:
    """Whether two changes can be on the same pieces."""
    for name in ["kinds", "items"]:
        mine = list_at(first, name)
        theirs = list_at(second, name)
        common = [ident for ident in mine if ident in theirs]
        if len(mine) > 0 and len(theirs) > 0 and len(common) == 0:
            return False
    return True


def stretches_beside(records: list[Group], change: Group, first: int, last: int) -> list[Stretch]:
    """All changes of the same feature on the same pieces, the earliest first; each ends where the
    next begins, unless it says otherwise.
    """
    out: list[Stretch] = []
    for other in live_rows(records, "range_change"):
        alike = text_at(other, "feature") == text_at(change, "feature")
        if alike and same_pieces(change, other):
            out.append(stretch_of(other, first, last))
    out = sorted(out, key=lambda stretch: stretch["sayings"][0]["earliest"])
    for n in range(len(out) - 1):
        out[n]["end"] = min(out[n]["end"], out[n + 1]["sayings"][0]["latest"])
    return out


def effect_of_change(records: list[Group], change: Group, first: int, last: int) -> ChangeEffect:
    """What a change does, of the rows of its range; `first` and `last`: the range's life."""
    field = SEEN + text_at(change, "feature")
    out: ChangeEffect = {
        "speaks": [], "silent": [], "told_by": [], "before": "",
        "stretches": stretches_beside(records, change, first, last),
    }  # fmt: skip
    variants = live_rows(records, "range_variant")
    states: list[str] = []
    counts: list[int] = []
    for item in live_rows(records, "range_item"):
        ident = text_at(item, "id")
        seen = list_at(item, field)
        own = [
            variant
            for variant in variants
            if text_at(variant, "item") == ident and len(list_at(variant, field)) > 0
        ]
        if bears_on(change, item):
            if len(own) > 0:
                out["told_by"].append(ident)
            elif len(seen) == 0:
                out["speaks"].append(ident)
            else:
                out["silent"].append(ident)
                if len(seen) == 1 and seen[0] not in ["?", text_at(change, "state")]:
                    if seen[0] not in states:
                        states.append(seen[0])
                        counts.append(0)
                    for n in range(len(states)):
                        if states[n] == seen[0]:
                            counts[n] = counts[n] + 1
    if len(states) > 0:
        out["before"] = states[largest(counts)]
    return out
