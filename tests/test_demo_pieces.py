"""The prepared pieces of the demo: what the engine says of each."""

from pathlib import Path
from typing import Any

import pytest

from identify import phone
from identify.core.assess import assess
from identify.core.claim import judge
from identify.core.claim_words import read_claim
from identify.core.session import problem
from identify.reference.loading import load_engine
from tests.demo import PIECES, asked_out, ident, looked_at


@pytest.fixture(scope="module")
def engine() -> dict[str, Any]:
    folder = next(path for path in phone.demo_packs() if Path(path).name == "pellmarsh")
    return load_engine(folder)


def test_there_are_ten_with_a_reason_each():
    assert len({ident(piece) for piece in PIECES}) == 10
    assert all(piece["why"] and piece["says"] for piece in PIECES)


@pytest.mark.parametrize("piece", PIECES, ids=ident)
def test_what_is_said_of_it(engine, piece):
    session = looked_at(engine, piece)
    assert [problem(engine, answer) for answer in session["answers"]] == [""] * len(piece["seen"])
    view = assess(engine, asked_out(engine, session))
    ids = [variant["id"] for variant in engine["pack"]["variants"]]
    assert view["stop"] == piece["stop"]
    if piece["variant"]:
        assert ids[view["variants"][0]["variant"]] == piece["variant"]
        assert [view["years"]["first"], view["years"]["last"]] == piece["years"]
    if "alike" in piece:
        assert sorted(ids[place] for place in view["alike"]) == sorted(piece["alike"])
    said = {}
    for part in view["parts"]:
        if part["how"] != "" and piece["variant"]:
            said[engine["pack"]["parts"][part["part"]]["id"]] = f"{part['how']} replaced"
    assert said == piece["parts"]


@pytest.mark.parametrize("piece", [p for p in PIECES if "claim" in p], ids=ident)
def test_what_is_said_of_the_claim(engine, piece):
    claim = read_claim(engine, piece["claim"])
    assert claim["problem"] == ""
    judged = judge(engine, looked_at(engine, piece), claim)
    assert judged["word"] == piece["word"]
    if judged["word"] == "ruled out":
        assert judged["evidence"][0]["bits"] < -0.5, "never ruled out without a reason"
