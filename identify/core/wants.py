"""What the collector looks for, held against the piece in hand."""

from typing import TypeGuard

from .condition import condition_rank
from .holdings import in_use, shelf, shelfmark
from .lists import empty_lists
from .money import compare_money
from .types.engine import Engine
from .types.holdings import Met, PriceMet, Wanted
from .types.money import Money
from .types.records import Hand, Want, Wish

UNWANTED = 0
WANTED = 1
TOO_DEAR = 2  # wanted, but more is asked than any of the wants allows


def is_money(value: Money | str | None) -> TypeGuard[Money]:
    """Whether an amount is given at all: None and "" are none."""
    return value is not None and value != ""


def want_words(want: Wish, most: str) -> list[str]:
    """What a want asks for besides the piece, in words; most: its limit as text, "" for none."""
    out: list[str] = []
    if want.get("urgency", 2) == 3:
        out.append("urgent")
    if want.get("urgency", 2) == 1:
        out.append("no hurry")
    if want.get("least", "") != "":
        out.append("at least " + want["least"])
    if want.get("box", "") == "yes":
        out.append("with its box")
    if most != "":
        out.append("up to " + most)
    return out


def condition_met(want: Want, hand: Hand) -> Met:
    """ "met", "short", or "" where the want or the hand says nothing."""
    least = condition_rank(want.get("least", ""))
    rank = condition_rank(hand.get("condition", ""))
    if least == 0 or rank == 0:
        return ""
    return "met" if rank >= least else "short"


def box_met(want: Want, hand: Hand) -> Met:
    """ "met", "short", or "" where the want asks for no box or the hand says nothing."""
    if want.get("box", "") != "yes" or hand.get("boxed", "") == "":
        return ""
    return "met" if hand["boxed"] == "yes" else "short"


def price_met(want: Want, hand: Hand) -> PriceMet:
    """ "within" the want's limit, "above" it, "currency" where they cannot be compared, or ""."""
    asked = hand.get("asked")
    most = want.get("most")
    if not is_money(asked) or not is_money(most):
        return ""
    compared = compare_money(asked, most)
    if compared["problem"] != "":
        return "currency"
    return "above" if compared["order"] > 0 else "within"


def looked_for(engine: Engine, wants: list[Want], hand: Hand) -> list[Wanted]:
    """The wants of what this pack lists, held against the piece in hand.

    A want for a variant that the pack no longer has is a want for the item.
    """
    store = shelf(engine)
    out: list[Wanted] = []
    for want in in_use(wants):
        item = store["items"].get(shelfmark(want["pack"], want["item"]), -1)
        if item >= 0:
            out.append(
                {
                    "record": want,
                    "item": item,
                    "variant": store["variants"].get(
                        shelfmark(want["pack"], want.get("variant", "")), -1
                    ),
                    "condition": condition_met(want, hand),
                    "box": box_met(want, hand),
                    "price": price_met(want, hand),
                }
            )
    return out


def is_met(want: Wanted) -> bool:
    """Whether the piece in hand, if it is the right one, is not short of what the want asks."""
    return "short" not in [want["condition"], want["box"]]


def demand(engine: Engine, wants: list[Wanted]) -> list[int]:
    """For each variant UNWANTED, WANTED or TOO_DEAR, by the wants that the hand meets."""
    variants = engine["pack"]["variants"]
    by_item = empty_lists(len(engine["pack"]["items"]))
    for want in wants:
        if is_met(want):
            by_item[want["item"]].append(want)
    out: list[int] = []
    for v in range(len(variants)):
        kind = UNWANTED
        for want in by_item[variants[v]["item"]]:
            if want["variant"] in [-1, v]:
                dear = want["price"] == "above" and kind != WANTED
                kind = TOO_DEAR if dear else WANTED
        out.append(kind)
    return out


def chance_of(want: Wanted, chances: list[float], items: list[float]) -> float:
    """The chance that the piece in hand is what a want names."""
    if want["variant"] >= 0:
        return chances[want["variant"]]
    return items[want["item"]]
