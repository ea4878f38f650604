"""What each variant would mean for the collector, whatever the piece in hand turns out to be.

Given that it is variant v of item i:  same  = 1 - lacking[v]            owns this very variant
                                       other = lacking[v] - without[i]   owns another of the item
                                       new   = without[i]                owns none of the item
"""

from .checking import ENOUGH
from .condition import is_better
from .formation import begun
from .holdings import held_of, in_use, none_of, spread_all
from .lists import best_first, filled
from .types.engine import Engine
from .types.holdings import Held, Holdings, Incomplete, Meanings, Studied
from .types.records import Hand, Records, Want
from .wants import TOO_DEAR, UNWANTED, demand, looked_for


def study(engine: Engine, records: Records, hand: Hand) -> Studied:
    """The collector's records worked out for the piece in hand, once for many answers."""
    return study_held(engine, spread_all(engine, in_use(records["pieces"])), records["wants"], hand)


def study_held(engine: Engine, entries: list[Held], asked: list[Want], hand: Hand) -> Studied:
    """The same where it is known what each piece can be, by spread_all()."""
    held = held_of(engine, entries)
    wants = looked_for(engine, asked, hand)
    started = begun(engine, held["without"])
    return {
        "hand": hand,
        "held": held,
        "wants": wants,
        "started": started,
        "meanings": meanings(engine, held, demand(engine, wants), started, hand),
    }


def meanings(
    engine: Engine,
    held: Holdings,
    asked_for: list[int],
    started: list[Incomplete],
    hand: Hand,
) -> Meanings:
    """What each variant would mean; `kind` is equal where all of that is equal, chances to a tenth.

    wanted: a want is met; dear: by none that allows the price asked. double: owned and not wanted.
    upgrade: one of it is owned, and all of those are worse than the piece in hand. completes: its
    item is not owned, but others of its formation or set are.
    """
    variants = engine["pack"]["variants"]
    worse = [entry for entry in held["owned"] if is_better(hand, entry["record"])]
    others = [entry for entry in held["owned"] if not is_better(hand, entry["record"])]
    none_worse = none_of(worse, "at", "chances", len(variants))
    none_as_good = none_of(others, "at", "chances", len(variants))
    adds = filled(len(engine["pack"]["items"]), 0.0)
    for whole in started:
        for i in whole["missing"]:
            adds[i] = 1.0
    out: Meanings = {
        "same": [], "other": [], "new": [], "wanted": [], "dear": [], "double": [], "upgrade": [],
        "completes": [], "kind": [],
    }  # fmt: skip
    for v in range(len(variants)):
        item = variants[v]["item"]
        lacking = held["lacking"][v]
        none = min(held["without"][item], lacking)
        wanted = 0.0 if asked_for[v] == UNWANTED else 1.0
        upgrade = none_as_good[v] * (1.0 - none_worse[v])
        out["same"].append(1.0 - lacking)
        out["other"].append(lacking - none)
        out["new"].append(none)
        out["wanted"].append(wanted)
        out["dear"].append(1.0 if asked_for[v] == TOO_DEAR else 0.0)
        out["double"].append((1.0 - lacking) * (1.0 - wanted))
        out["upgrade"].append(upgrade)
        out["completes"].append(adds[item] * none)
        out["kind"].append(kind_of(lacking, none, upgrade, adds[item], asked_for[v]))
    return out


def kind_of(lacking: float, none: float, upgrade: float, adds: float, asked_for: int) -> int:
    """One number for what a variant means, the same for the same meaning."""
    kind = (tenth(lacking) * 11 + tenth(none)) * 11 + tenth(upgrade)
    return (kind * 2 + int(adds)) * 3 + asked_for


def says_nothing(kind: int) -> bool:
    """Whether the records have nothing to say: not owned, not wanted, part of nothing begun."""
    return kind == kind_of(1.0, 1.0, 0.0, 0.0, UNWANTED)


def tenth(chance: float) -> int:
    """A chance in tenths, to the nearest."""
    return int(chance * 10.0 + 0.5)


def weighty(chances: list[float]) -> list[int]:
    """The likeliest variants that hold ENOUGH together, and those equally likely as the last of
    them; [] where all of them together do not.
    """
    out: list[int] = []
    held = 0.0
    last = 0.0
    for v in best_first(chances):
        if held < ENOUGH or chances[v] >= last * (1.0 - 1e-9):
            out.append(v)
            held = held + chances[v]
            last = chances[v]
    return out if held >= ENOUGH else []


def is_settled(kinds: list[int], left: list[int]) -> bool:
    """Whether there are variants that hold ENOUGH, and all of them mean the same."""
    return len(left) > 0 and len([v for v in left if kinds[v] != kinds[left[0]]]) == 0
