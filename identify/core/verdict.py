"""The verdict: what the piece in hand means for the collector, and the records that say so.

What each variant would mean, weighed by its chance. "same", "other", "new" and "unrecorded" add up
to 1; the rest stands beside them.
"""

from .assess import candidates
from .checking import ENOUGH
from .condition import condition_rank, is_better, standard
from .formation import HAVE, completing
from .holdings import meeting
from .lists import largest
from .meaning import is_settled, weighty
from .misreading import averaged
from .price import paid_before
from .types.engine import Engine
from .types.holdings import Held, Near, Studied, Wanted
from .types.records import Hand
from .types.verdict import Better, NearPiece, SetNear, ToBeat, Verdict, WantNear, Weighty, Word
from .wants import chance_of, is_met

NAMED = 0.005  # records that bear on the piece with less than this chance are not named
LIKE = 0.05  # an owned piece may be the same as the one in hand from here on
FIRST_OF: list[Weighty] = ["unrecorded", "wanted", "upgrade", "same", "completes", "other"]


def verdict(
    engine: Engine,
    studied: Studied,
    chances: list[float],
    items: list[float],
    unrecorded: float,
) -> Verdict:
    """The verdict on the piece in hand. chances: of each variant; items: of each item."""
    meant = studied["meanings"]
    left = weighty(chances)
    near = nearest(studied["held"]["owned"], chances, items)
    spares = nearest(studied["held"]["spares"], chances, items)
    bought = near[:]
    for entry in spares:
        bought.append(entry)
    out: Verdict = {
        "unrecorded": unrecorded,
        "settled": is_settled(meant["kind"], left),
        "owned": named(near),
        "spares": named(spares),
        "sets": inside_of(engine, studied["held"]["owned"], items),
        "wants": wants_near(studied["wants"], chances, items),
        "completing": completing(studied["started"], items, studied["held"]["without"], NAMED),
        "beat": to_beat(near, studied["hand"]),
        "paid": paid_before(bought),
        "same": averaged(chances, meant["same"]),
        "other": averaged(chances, meant["other"]),
        "new": averaged(chances, meant["new"]),
        "wanted": averaged(chances, meant["wanted"]),
        "dear": averaged(chances, meant["dear"]),
        "double": averaged(chances, meant["double"]),
        "upgrade": averaged(chances, meant["upgrade"]),
        "completes": averaged(chances, meant["completes"]),
        "reason": {"word": "", "candidates": 0, "records": []},
    }
    word = word_for(out)
    out["reason"] = {
        "word": word,
        "candidates": len(left) if len(left) > 0 else len(candidates(chances)),
        "records": behind(word, out, near, studied["held"]["owned"]),
    }
    return out


def nearest(entries: list[Held], chances: list[float], items: list[float]) -> list[Near]:
    """The held pieces that bear on the one in hand, likeliest first."""
    out: list[Near] = []
    for entry in entries:
        item = meeting(entry, "items", "shares", items)
        if item >= NAMED:
            same = meeting(entry, "at", "chances", chances)
            out.append(
                {"record": entry["record"], "items": entry["items"], "same": same, "item": item}
            )
    by_same = sorted(out, key=lambda entry: -entry["same"])
    return sorted(by_same, key=lambda entry: -entry["item"])


def named(near: list[Near]) -> list[NearPiece]:
    """The same with the record's id in place of the record."""
    out: list[NearPiece] = []
    for entry in near:
        out.append({"piece": entry["record"]["id"], "same": entry["same"], "item": entry["item"]})
    return out


def inside_of(engine: Engine, owned: list[Held], items: list[float]) -> list[SetNear]:
    """Owned boxed sets that hold a piece like this."""
    out: list[SetNear] = []
    for entry in owned:
        for n in range(len(entry["items"])):
            chance = 0.0
            for i in engine["pack"]["items"][entry["items"][n]]["contains"]:
                chance = chance + items[i] * entry["shares"][n]
            if chance >= NAMED:
                out.append(
                    {"piece": entry["record"]["id"], "item": entry["items"][n], "chance": chance}
                )
    return sorted(out, key=lambda entry: -entry["chance"])


def wants_near(wants: list[Wanted], chances: list[float], items: list[float]) -> list[WantNear]:
    """The wants that the piece in hand may meet, likeliest first."""
    out: list[WantNear] = []
    for want in wants:
        chance = chance_of(want, chances, items)
        if chance >= NAMED:
            out.append(
                {
                    "want": want["record"]["id"],
                    "chance": chance,
                    "met": is_met(want),
                    "condition": want["condition"],
                    "box": want["box"],
                    "price": want["price"],
                }
            )
    return sorted(out, key=lambda entry: -entry["chance"])


def to_beat(near: list[Near], hand: Hand) -> ToBeat | None:
    """The best owned piece that may be the same variant: the one in hand would have to beat it."""
    same = [entry["record"] for entry in near if entry["same"] >= LIKE]
    if len(same) == 0:
        return None
    record = same[largest([standard(piece) for piece in same])]
    condition = record.get("condition", "")
    better: Better = "yes" if is_better(hand, record) else "no"
    if condition_rank(condition) == 0 or condition_rank(hand.get("condition", "")) == 0:
        better = ""
    return {
        "piece": record["id"],
        "condition": condition,
        "boxed": record.get("boxed", ""),
        "better": better,
    }


def word_for(weighed: Verdict) -> Word:
    """The verdict in one word, "" while none has ENOUGH.

    unrecorded · wanted · upgrade · same · completes · other · item (owns one of the item, but it is
    not known whether it is the same variant) · new.
    """
    for word in FIRST_OF:
        if weighed[word] >= ENOUGH:
            return word
    if weighed["same"] + weighed["other"] >= ENOUGH:
        return "item"
    return "new" if weighed["new"] >= ENOUGH else ""


def mates(owned: list[Held], items: list[int]) -> list[str]:
    """The ids of the owned pieces that are likely one of these items."""
    out: list[str] = []
    for entry in owned:
        share = 0.0
        for n in range(len(entry["items"])):
            if entry["items"][n] in items:
                share = share + entry["shares"][n]
        if share >= HAVE:
            out.append(entry["record"]["id"])
    return out


def behind(
    word: Word,
    weighed: Verdict,
    near: list[Near],
    owned: list[Held],
) -> list[str]:
    """The ids of the records that the word rests on: wants, or owned pieces."""
    if word == "completes":
        there: list[int] = []
        for whole in weighed["completing"]:
            for i in whole["owned"]:
                there.append(i)
        return mates(owned, there)
    if word == "wanted":
        return [w["want"] for w in weighed["wants"] if w["met"] in [True] and w["chance"] >= LIKE]
    if word in ["same", "upgrade"]:
        return [entry["record"]["id"] for entry in near if entry["same"] >= LIKE]
    if word in ["other", "item"]:
        return [entry["record"]["id"] for entry in near if entry["item"] >= LIKE]
    return []
