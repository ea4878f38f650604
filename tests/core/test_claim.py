"""The seller's date: read from what is said, and held against the answers."""

from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.claim import judge
from identify.core.claim_words import read_claim
from identify.core.session import answered, new_session
from tests.strategies import packs, sessions
from tests.table_packs import sharp, table_pack
from tests.written_dates import WRITTEN

QUICK = settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
LIFE = {"pack": {"range": {"first": 1932, "last": 1972}}}


@pytest.mark.parametrize(
    ("text", "first", "last"),
    [
        ("1958", 1958, 1958),
        ("'58", 1958, 1958),
        ("57/58", 1957, 1958),
        ("1957-59", 1957, 1959),
        ("between 1957 and 1959", 1957, 1959),
        ("late fifties", 1956, 1959),
        ("early 1950's", 1950, 1953),
        ("mid-50s", 1953, 1957),
        ("the 1950s", 1950, 1959),
        ("c. 1955", 1953, 1957),
        ("1955ish", 1953, 1957),
        ("before the war", 1800, 1939),
        ("pre-war", 1800, 1939),
        ("post war", 1945, 2100),
        ("pre-1955", 1800, 1954),
        ("after 1960", 1961, 2100),
        ("by 1960", 1800, 1960),
        ("since 1962", 1962, 2100),
        ("195X", 1950, 1959),
        ("1957/1961", 1957, 1961),
        ("../1959", 1800, 1959),
        ("1959/..", 1959, 2100),
        ("1957~", 1955, 1959),
        ("from 1957", 1957, 1957),
        ("from 1957 on", 1957, 2100),
        ("it's a 1957 piece", 1957, 1957),
        ("made in the 1950s", 1950, 1959),
        ("12/5/57", 1957, 1957),
        ("spring 1957", 1957, 1957),
        ("winter 1957/58", 1957, 1957),
        ("not later than 1960", 1800, 1960),
        ("an early fifties version", 1950, 1953),
        ("the last issue of 1957", 1957, 1957),
    ],
)
def test_what_sellers_say_is_read(text, first, last):
    claim = read_claim(LIFE, text)
    assert (claim["first"], claim["last"], claim["problem"]) == (first, last, "")


@pytest.mark.parametrize("text", WRITTEN)
def test_a_claim_is_read_as_dates_are_everywhere(text):
    claim = read_claim({"pack": {"range": {"first": 1919, "last": 2018}}}, text)
    assert (claim["edtf"], claim["problem"]) == (WRITTEN[text], "")


@pytest.mark.parametrize(
    ("text", "problem"),
    [
        ("", "unread"),
        ("purple", "unread"),
        ("not 1958", "unread"),
        ("12345", "unread"),
        ("1955 1956 1957", "unread"),
        ("1961-1957", "reversed"),
        ("1890", "outside"),
        ("2001", "outside"),
    ],
)
def test_what_cannot_be_used_is_named(text, problem):
    assert read_claim(LIFE, text)["problem"] == problem


@pytest.mark.parametrize("text", ["first issue", "it is the first version", "original"])
def test_the_first_issue_is_a_claim_of_its_own(text):
    assert read_claim(LIFE, text)["about"] == "first issue"


@pytest.mark.heavy
@given(st.text(max_size=30))
def test_any_text_is_read_or_named(text):
    claim = read_claim(LIFE, text)
    assert claim["problem"] in ("", "unread", "reversed", "outside")
    assert claim["first"] <= claim["last"]


LOOPED = ["hook", "loop"]


def pack_of_issues() -> dict[str, Any]:
    """One item in two issues: hook 1950 to 1954, loop 1955 to 1959; colour says nothing."""
    pack = table_pack(
        {"coupling": LOOPED, "colour": ["red", "blue"]},
        [
            {"coupling": sharp(LOOPED, "hook"), "colour": [0.5, 0.5]},
            {"coupling": sharp(LOOPED, "loop"), "colour": [0.5, 0.5]},
        ],
        [0.5, 0.5],
    )
    pack["range"].update(first=1950, last=1959)
    pack["spans"] = [
        {"first": 1950, "weights": [0.2] * 5},
        {"first": 1955, "weights": [0.2] * 5},
    ]
    pack["rows"]["span"] = [0, 1]
    for variant in pack["variants"]:
        variant["item"] = 0
    pack["changes"] = [
        {"feature": 0, "state": state, "kinds": [0], "items": []} for state in (0, 1)
    ]
    return pack


@pytest.mark.parametrize(
    ("said", "state", "word"),
    [
        ("1957", "loop", "fits"),
        ("1957", "hook", "unlikely"),
        ("1953", "loop", "unlikely"),
        ("1950s", "loop", "fits"),
        ("first issue", "hook", "fits"),
        ("first issue", "loop", "unlikely"),
        ("last issue", "loop", "fits"),
    ],
)
def test_the_claim_in_a_word(said, state, word):
    engine = prepare(pack_of_issues())
    told = {"feature": "coupling", "how": "sure", "states": [state]}
    found = judge(engine, answered(new_session(engine), told), read_claim(engine, said))
    assert found["word"] == word
    assert found["could"] >= found["chance"]


def test_the_evidence_says_which_feature_when_and_by_whom():
    engine = prepare(pack_of_issues())
    session = new_session(engine)
    for feature, state in (("colour", "red"), ("coupling", "loop")):
        session = answered(session, {"feature": feature, "how": "sure", "states": [state]})
    found = judge(engine, session, read_claim(engine, "1953"))
    first, second = found["evidence"]
    assert first["feature"] == 0
    assert first["bits"] < -3
    assert (first["earliest"], first["latest"], first["changes"]) == (1955, 1959, [0, 1])
    assert second["bits"] == pytest.approx(0)


def test_the_next_question_is_the_one_that_settles_the_claim():
    engine = prepare(pack_of_issues())
    found = judge(engine, new_session(engine), read_claim(engine, "1953"))
    assert (found["word"], found["question"]["feature"]) == ("open", 0), "nothing was seen yet"
    assert found["question"]["about"] == "claim"


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_a_wider_claim_is_never_less_likely(data):
    pack = data.draw(packs())
    engine = prepare(pack)
    session = data.draw(sessions(pack))
    first = data.draw(st.integers(1950, 1959))
    last = data.draw(st.integers(first, 1959))
    narrow = {"about": "years", "first": first, "last": last, "problem": ""}
    wide = {**narrow, "first": first - 2, "last": last + 3}
    one, other = (judge(engine, session, claim) for claim in (narrow, wide))
    assert one["could"] <= other["could"] + 1e-12
    assert one["chance"] <= other["chance"] + 1e-12


@pytest.mark.heavy
@QUICK
@given(st.data())
def test_the_word_never_goes_against_the_years_that_are_shown(data):
    """A claim that touches the likely years is never called unlikely, and one that fits does."""
    pack = data.draw(packs())
    engine = prepare(pack)
    session = data.draw(sessions(pack))
    first = data.draw(st.integers(1948, 1961))
    claim = {"about": "years", "first": first, "last": first + data.draw(st.integers(0, 4))}
    word = judge(engine, session, claim | {"edtf": "", "problem": ""})["word"]
    shown = assess(engine, session)["years"]
    touches = claim["first"] <= shown["last"] and shown["first"] <= claim["last"]
    if word in ("fits", "open"):
        assert touches
    if word in ("possible", "unlikely", "ruled out"):
        assert not touches
