"""Formations and boxed sets: what belongs together, and what is missing of it."""

from .holdings import hold, home_of, shelfmark
from .types.engine import Engine
from .types.holdings import Completing, Incomplete, Together
from .types.records import Piece

HAVE = 0.5  # an item that is owned with this chance counts as owned here


def together(engine: Engine) -> list[Together]:
    """What belongs together: formations of two or more, and sets with anything in them."""
    items = engine["pack"]["items"]
    named: dict[str, int] = {}
    formations: list[Together] = []
    sets: list[Together] = []
    for i in range(len(items)):
        name = items[i]["formation"]
        if name != "":
            called = shelfmark(home_of(engine, items[i]), name)
            place = named.get(called, -1)
            if place < 0:
                place = len(formations)
                named[called] = place
                formations.append({"sort": "formation", "name": name, "item": -1, "members": []})
            formations[place]["members"].append(i)
        inside: list[int] = []
        for k in items[i]["contains"]:
            if k not in inside:
                inside.append(k)
        if len(inside) > 0:
            sets.append({"sort": "set", "name": items[i]["name"], "item": i, "members": inside})
    out = [f for f in formations if len(f["members"]) > 1]
    for boxed in sets:
        out.append(boxed)
    return out


def begun(engine: Engine, without: list[float]) -> list[Incomplete]:
    """What is owned in part. A boxed set that is owned as such is not in parts."""
    out: list[Incomplete] = []
    for whole in together(engine):
        have = [i for i in whole["members"] if 1.0 - without[i] >= HAVE]
        lack = [i for i in whole["members"] if 1.0 - without[i] < HAVE]
        boxed = whole["item"] >= 0 and 1.0 - without[max(0, whole["item"])] >= HAVE
        if len(have) > 0 and len(lack) > 0 and not boxed:
            out.append(
                {
                    "sort": whole["sort"],
                    "name": whole["name"],
                    "item": whole["item"],
                    "owned": have,
                    "missing": lack,
                }
            )
    return out


def incomplete(engine: Engine, pieces: list[Piece]) -> list[Incomplete]:
    """Formations and boxed sets of which part is owned, those with the least missing first."""
    started = begun(engine, hold(engine, pieces)["without"])
    return sorted(started, key=lambda entry: len(entry["missing"]))


def completing(
    started: list[Incomplete], items: list[float], without: list[float], least: float
) -> list[Completing]:
    """What the piece in hand would add to with at least this chance, likeliest first. items: the
    chance of each item.
    """
    out: list[Completing] = []
    for whole in started:
        chance = 0.0
        adds = whole["missing"][0]
        for i in whole["missing"]:
            chance = chance + items[i] * without[i]
            if items[i] > items[adds]:
                adds = i
        if chance >= least:
            out.append(
                {
                    "sort": whole["sort"],
                    "name": whole["name"],
                    "item": whole["item"],
                    "chance": chance,
                    "adds": adds,
                    "owned": whole["owned"],
                    "missing": [k for k in whole["missing"] if k != adds],
                }
            )
    return sorted(out, key=lambda entry: -entry["chance"])
