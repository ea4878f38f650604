"""The seller's date: against Allen's interval relations, and whether its words come true.

Allen, J. F. (1983), Maintaining knowledge about temporal intervals, Communications of the ACM 26
(11), names thirteen ways in which two spans of time can lie; those of a claim and of the years in
which an issue was made are all of them.
"""

import random
from typing import Any

import pytest

from identify import phone
from identify.core.belief import believe, prepare_with
from identify.core.claim import judge, row_shares, verdict_on, weigh_claim
from identify.core.claim_words import read_claim
from identify.core.misreading import usual_errors
from identify.core.session import answered, new_session
from identify.core.year_chances import year_chances
from identify.lab.pieces import drawn, piece, read_by
from identify.reference.loading import load_engine
from tests.calibrated import assert_come_true
from tests.sampling import sample
from tests.table_packs import sharp, table_pack

pytestmark = pytest.mark.heavy

PIECES = sample(1000, 400)
AB = ["a", "b"]
FIRST, LAST = 1954, 1957  # the years of the issue, a quarter of it in each

# Relation of the claim to the issue (whole years, so that "meets" is the year next to it), the
# claimed years, the share of the issue that falls into them.
ALLEN = [
    ("before", (1950, 1952), 0.0),
    ("meets", (1951, 1953), 0.0),
    ("overlaps", (1952, 1955), 0.5),
    ("starts", (1954, 1955), 0.5),
    ("during", (1955, 1956), 0.5),
    ("finishes", (1956, 1957), 0.5),
    ("equals", (1954, 1957), 1.0),
    ("finished by", (1953, 1957), 1.0),
    ("contains", (1953, 1958), 1.0),
    ("started by", (1954, 1959), 1.0),
    ("overlapped by", (1957, 1959), 0.25),
    ("met by", (1958, 1959), 0.0),
    ("after", (1959, 1960), 0.0),
]


def relation(one: tuple[int, int], other: tuple[int, int]) -> str:
    """Allen's relation of two spans of whole years, by the order of their four ends."""
    start, end, first, last = one[0], one[1] + 1, other[0], other[1] + 1
    if end < first or last < start:
        return "before" if end < first else "after"
    if end == first or last == start:
        return "meets" if end == first else "met by"
    if start == first:
        return "equals" if end == last else "starts" if end < last else "started by"
    if end == last:
        return "finishes" if start > first else "finished by"
    if start > first and end < last:
        return "during"
    if start < first and end > last:
        return "contains"
    return "overlaps" if start < first else "overlapped by"


@pytest.fixture(scope="module")
def one_issue() -> dict[str, Any]:
    """A pack of one issue that shows state "a"."""
    pack = table_pack({"x": AB}, [{"x": sharp(AB, "a")}], [1.0])
    pack["range"].update(first=1950, last=1960)
    pack["spans"] = [{"first": FIRST, "weights": [0.25] * 4}]
    return prepare_with(pack, {**usual_errors(), "unrecorded": 0.0})


def test_the_thirteen_relations_are_all_there():
    assert len({name for name, _, _ in ALLEN}) == 13
    for name, claimed, _ in ALLEN:
        assert relation(claimed, (FIRST, LAST)) == name


@pytest.mark.parametrize(("name", "claimed", "share"), ALLEN, ids=str)
def test_the_share_and_the_word_of_each_relation(one_issue, name, claimed, share):
    claim = read_claim(one_issue, f"{claimed[0]} to {claimed[1]}")
    found = judge(one_issue, new_session(one_issue), claim)
    assert row_shares(one_issue, claim, [0]) == [pytest.approx(share)]
    assert found["chance"] == pytest.approx(share)
    assert found["could"] == (1.0 if share else 0.0)
    assert found["word"] == ("fits" if share else "ruled out")


def one_piece(rng: random.Random, engine: dict[str, Any], noted: dict[str, list]) -> None:
    """Look at some features of a piece whose year is known, and note what is said of years, and of
    what a seller might say.
    """
    pack = engine["pack"]
    found = piece(rng, pack)
    span = pack["spans"][pack["rows"]["span"][found.row]]
    made = span["first"] + drawn(rng, range(len(span["weights"])), span["weights"])
    places = [p for p, f in enumerate(pack["features"]) if f["needs"] == "nothing"]
    session = new_session(engine)
    for place in rng.sample(places, rng.randint(min(4, len(places)), len(places))):
        there = found.states[pack["features"][place]["id"]]
        session = answered(session, read_by(rng, engine, place, there))
    state = believe(engine, session)
    for year, chance in year_chances(engine, state["spans"], state["chances"]):
        if chance >= 0.02:
            noted["year"].append((chance, year == made))
    for _ in range(4):
        first = rng.randint(pack["range"]["first"], pack["range"]["last"])
        last = min(pack["range"]["last"], first + rng.randint(0, 5))
        claim = {"about": "years", "first": first, "last": last, "problem": ""}
        weighed = weigh_claim(state, row_shares(engine, claim, state["rows"]))
        word = verdict_on(engine, state, claim, weighed)
        true = first <= made <= last
        noted["claim"].append((weighed["chance"], true))
        noted.setdefault(word, []).append((weighed["chance"], true))


@pytest.fixture(scope="module")
def told() -> dict[str, list]:
    rng = random.Random(1983)
    noted: dict[str, list] = {"year": [], "claim": []}
    for folder in phone.demo_packs():
        engine = load_engine(folder)
        for _ in range(PIECES):
            one_piece(rng, engine, noted)
    return noted


@pytest.mark.parametrize("what", ["year", "claim"])
def test_stated_chances_of_dates_come_true(told, what, capsys):
    assert_come_true(what, told[what], capsys)


def test_a_claim_that_is_ruled_out_is_hardly_ever_true(told, capsys):
    """Under 1 %; and the words stand in the order of how often such claims are true."""
    words = ["fits", "possible", "unlikely", "ruled out"]
    shares = [sum(true for _, true in told[word]) / len(told[word]) for word in words]
    with capsys.disabled():
        for word, share in zip(words, shares, strict=True):
            print(f"\n    {word:10} {len(told[word]):6d} claims, true {share:.4f}", end="")
        print()
    assert len(told["ruled out"]) > 1000
    assert shares[3] < 0.01
    assert shares == sorted(shares, reverse=True)
