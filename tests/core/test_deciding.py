"""What the verdict says in plain cases, and the questions that are aimed at it."""

from typing import Any

import orjson
import pytest

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.deciding import assess_for
from identify.core.joining import join
from identify.core.money import money_of
from identify.core.session import answered, new_session
from tests.table_packs import sharp, table_pack

AB = ["a", "b"]
NO_HAND = {"condition": "", "boxed": "", "asked": None}


def pack_of_four() -> dict[str, Any]:
    """Two items of two variants: `item` tells the items apart, `issue` the variants of each."""
    rows = [{"issue": sharp(AB, i), "item": sharp(AB, k)} for k in AB for i in AB]
    pack = table_pack({"issue": AB, "item": AB}, rows, [0.25] * 4)
    for place, variant in enumerate(pack["variants"]):
        variant["item"] = place // 2
    return pack


def piece(item: int, *variants: int, **more: Any) -> dict[str, Any]:
    of = [{"variant": f"v{v}", "chance": 1 / len(variants)} for v in variants]
    ident = more.pop("id", "r" + "".join(map(str, variants)))
    return {"id": ident, "pack": "table", "item": f"n{item}", "of": of, **more}


def want(item: int, **more: Any) -> dict[str, Any]:
    return {"id": "rw", "pack": "table", "item": f"n{item}", "variant": "", **more}


def records(*pieces: dict[str, Any], wants: tuple[dict[str, Any], ...] = ()) -> dict[str, Any]:
    return {"pieces": list(pieces), "wants": list(wants)}


def seen(engine: dict[str, Any], **states: str) -> dict[str, Any]:
    session = new_session(engine)
    for feature, state in states.items():
        session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
    return session


def verdict(
    *told: dict[str, Any], hand: dict[str, Any] = NO_HAND, wants: Any = (), **states: str
) -> dict[str, Any]:
    """The verdict on a piece with these states, for a collector with these pieces and wants."""
    engine = prepare(pack_of_four())
    session = seen(engine, **states) if states else seen(engine, issue="a", item="a")
    return assess_for(engine, session, records(*told, wants=wants), hand)["verdict"]


def test_it_asks_what_decides_the_verdict_and_stops_with_it():
    """Both variants of one item are owned: which item it is settles it, which variant does not."""
    pack = pack_of_four()
    pack["features"][1]["seconds"] = 3.0
    engine = prepare(pack)
    owned = records(piece(0, 0), piece(0, 1))
    start = new_session(engine)
    assert assess(engine, start)["question"]["feature"] == 0
    view = assess_for(engine, start, owned, NO_HAND)
    assert (view["question"]["feature"], view["question"]["about"]) == (1, "verdict")
    assert view["question"]["means"][0]["same"] > 0.9
    assert view["question"]["means"][1]["new"] > 0.9
    view = assess_for(engine, seen(engine, item="a"), owned, NO_HAND)
    assert view["stop"] == "verdict"
    assert view["verdict"]["reason"] == {"word": "same", "candidates": 2, "records": ["r0", "r1"]}


def test_after_the_verdict_it_can_go_on_to_the_variant():
    engine = prepare(pack_of_four())
    engine["unrecorded"] = 0.001
    owned = records(piece(0, 0), piece(0, 1), piece(1, 2), piece(1, 3))
    view = assess_for(engine, new_session(engine), owned, NO_HAND)
    assert (view["stop"], view["question"]["about"]) == ("verdict", "variant")
    view = assess_for(engine, new_session(engine), records(), NO_HAND)
    assert (view["stop"], view["question"]["about"]) == ("", "variant")
    assert view["verdict"]["settled"]


def test_an_item_held_without_its_variant_is_named_as_that():
    found = verdict(piece(0, id="r9"))
    assert found["reason"]["word"] == "item"
    assert found["reason"]["records"] == ["r9"]
    assert found["same"] == pytest.approx(found["other"], abs=0.02)


def test_another_variant_of_the_item():
    found = verdict(piece(0, 1), piece(1, 3), issue="a")
    assert found["reason"] == {"word": "other", "candidates": 2, "records": ["r1", "r3"]}
    assert found["settled"]


@pytest.mark.parametrize("purpose", ["spare", "donor"])
def test_spares_are_not_owned_and_are_named(purpose):
    found = verdict(piece(0, 0, purpose=purpose))
    assert found["same"] == 0
    assert [entry["piece"] for entry in found["spares"]] == ["r0"]
    assert found["owned"] == []


@pytest.mark.parametrize(
    ("hand", "owned", "better", "upgrade"),
    [
        ({"condition": "excellent"}, {"condition": "good"}, "yes", True),
        ({"condition": "good"}, {"condition": "good"}, "no", False),
        ({"condition": "good", "boxed": "yes"}, {"condition": "good", "boxed": "no"}, "yes", True),
        ({"condition": "good", "boxed": "yes"}, {"condition": "good"}, "no", False),
        ({"condition": "fair", "boxed": "yes"}, {"condition": "good", "boxed": "no"}, "no", False),
        ({"condition": ""}, {"condition": "good"}, "", False),
        ({"condition": "good"}, {"condition": ""}, "", False),
    ],
)
def test_an_upgrade_beats_the_best_owned(hand, owned, better, upgrade):
    found = verdict(piece(0, 0, **owned), hand={**NO_HAND, **hand})
    assert found["beat"]["better"] == better
    assert found["beat"]["condition"] == owned["condition"]
    assert (found["upgrade"] > 0.5) == upgrade


def test_an_upgrade_has_to_beat_every_copy():
    hand = {**NO_HAND, "condition": "excellent"}
    worse = piece(0, 0, condition="fair")
    best = piece(0, 0, condition="as new", id="best")
    found = verdict(worse, best, hand=hand)
    assert (found["upgrade"], found["beat"]["piece"]) == (0, "best")
    assert verdict(hand=hand)["beat"] is None


@pytest.mark.parametrize(
    ("asks", "hand", "met", "told"),
    [
        ({}, {}, True, ("", "", "")),
        ({"least": "good"}, {"condition": "fair"}, False, ("short", "", "")),
        ({"least": "good"}, {"condition": "good"}, True, ("met", "", "")),
        ({"box": "yes"}, {"boxed": "no"}, False, ("", "short", "")),
        ({"box": "yes"}, {"boxed": "yes"}, True, ("", "met", "")),
        ({"most": 500}, {"asked": 500}, True, ("", "", "within")),
        ({"most": 500}, {"asked": 501}, True, ("", "", "above")),
    ],
)
def test_a_want_is_held_against_the_piece(asks, hand, met, told):
    for side in (asks, hand):
        for name in ("most", "asked"):
            if name in side:
                side[name] = money_of(48 * side[name], "GBP", "")
    found = verdict(piece(0, 0), wants=(want(0, **asks),), hand={**NO_HAND, **hand})
    entry = found["wants"][0]
    assert (entry["condition"], entry["box"], entry["price"]) == told
    assert entry["met"] == met
    assert (found["wanted"] > 0.9) == met
    assert (found["double"] > 0.5) == (not met)
    assert (found["dear"] > 0.9) == (told[2] == "above")


def test_a_price_in_another_currency_is_not_compared():
    limit = want(0, most=money_of(48, "EUR", ""))
    found = verdict(wants=(limit,), hand={**NO_HAND, "asked": money_of(480, "GBP", "")})
    assert found["wants"][0]["price"] == "currency"
    assert found["dear"] == 0


def test_a_want_for_one_variant_parts_the_candidates():
    engine = prepare(pack_of_four())
    mine = records(wants=(want(0, variant="v0"),))
    view = assess_for(engine, seen(engine, item="a"), mine, NO_HAND)
    assert (view["stop"], view["question"]["about"], view["question"]["feature"]) == (
        "", "verdict", 0,
    )  # fmt: skip


def formation() -> dict[str, Any]:
    """Four items; the first three are a formation, the fourth is a set of the first two."""
    rows = [{"x": sharp(["a", "b", "c", "d"], s)} for s in "abcd"]
    pack = table_pack({"x": ["a", "b", "c", "d"]}, rows, [0.25] * 4)
    for item in pack["items"][:3]:
        item["formation"] = "Corrick Star"
    pack["items"][3]["contains"] = [0, 1]
    return pack


def test_it_says_what_would_still_be_missing():
    engine = prepare(formation())
    mine = records(piece(0, 0))
    found = assess_for(engine, seen(engine, x="b"), mine, NO_HAND)["verdict"]
    assert [(c["sort"], c["name"], c["adds"], c["missing"]) for c in found["completing"]] == [
        ("formation", "Corrick Star", 1, [2]),
        ("set", "n3", 1, []),
    ]
    assert found["completing"][0]["owned"] == [0]
    assert found["completes"] > 0.9
    assert found["reason"] == {"word": "completes", "candidates": 1, "records": ["r0"]}


def test_a_piece_inside_an_owned_set_is_named():
    engine = prepare(formation())
    mine = records(piece(3, 3, id="box"))
    found = assess_for(engine, seen(engine, x="b"), mine, NO_HAND)["verdict"]
    assert [(s["piece"], s["item"]) for s in found["sets"]] == [("box", 3)]
    assert found["same"] < 0.1
    assert found["completing"] == []


def test_what_was_paid_comes_newest_first():
    paid = {"minor": 450, "currency": "GBP"}
    found = verdict(
        piece(0, 0, id="old", when="1984", paid=paid),
        piece(0, 1, id="undated", paid=paid),
        piece(0, 0, id="new", when="2001-12-05", paid=paid),
        piece(0, 0, id="donor", when="1999~", paid=paid, purpose="donor"),
        piece(0, 0, id="free", when="2005", paid=None),
    )
    assert [entry["piece"] for entry in found["paid"]] == ["new", "donor", "old", "undated"]
    assert found["paid"][0]["same"] > 0.9 > found["paid"][3]["same"]


@pytest.mark.heavy
def test_in_joined_packs_each_record_counts_for_its_own(site):
    packs = [orjson.loads(site[f"packs/{name}.json"]) for name in ("pellmarsh", "tarrowby")]
    alone, joined = prepare(packs[1]), prepare(join(packs))
    variant = packs[1]["variants"][5]
    item = packs[1]["items"][variant["item"]]["number"]
    of = [{"variant": variant["id"], "chance": 1}]
    mine = records({"id": "r1", "pack": "tarrowby", "item": item, "of": of})
    whole = len(packs[0]["variants"]) + len(packs[1]["variants"])
    share = len(packs[1]["variants"]) / whole
    apart = assess_for(alone, new_session(alone), mine, NO_HAND)["verdict"]
    found = assess_for(joined, new_session(joined), mine, NO_HAND)["verdict"]
    assert found["same"] == pytest.approx(share * apart["same"])
    assert found["other"] == pytest.approx(share * apart["other"])
    elsewhere = records({**mine["pieces"][0], "pack": "pellmarsh", "item": "T 0"})
    assert assess_for(joined, new_session(joined), elsewhere, NO_HAND)["verdict"]["same"] == 0


@pytest.mark.parametrize(
    ("condition", "stop"), [("", "verdict"), ("poor", "verdict"), ("good", "")]
)
def test_an_upgrade_of_only_one_candidate_keeps_it_asking(condition, stop):
    """Both variants are owned, one in fair and one in fine condition."""
    engine = prepare(pack_of_four())
    owned = records(piece(0, 0, condition="fair"), piece(0, 1, condition="excellent"))
    hand = {**NO_HAND, "condition": condition}
    view = assess_for(engine, seen(engine, item="a"), owned, hand)
    assert view["stop"] == stop
    assert view["question"]["about"] == ("variant" if stop == "verdict" else "verdict")
