"""Matching rows of lists to items: the measures it rests on, and how often each level is right.

Edit distances: V. I. Levenshtein, "Binary codes capable of correcting deletions, insertions, and
reversals", Soviet Physics Doklady 10, 1966, defines the measure; kitten to sitting, 3, is the usual
example. A swap of two neighbours counts one slip: F. J. Damerau, "A technique for computer
detection and correction of spelling errors", Communications of the ACM 7, 1964 (one letter wrong,
missing, too many, or two transposed). The other pairs are common textbook examples, from memory.

Rows and labels are invented (tests/exchange/labelled.py): they show that stated chances hold for
slips of those kinds and shares, not how real lists are. Fitted on one seed, checked on others.
"""

import random
from difflib import SequenceMatcher
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from rapidfuzz import fuzz
from rapidfuzz.distance import OSA, Indel, Levenshtein

from identify.core.importing.item_words import NEAR
from identify.core.importing.matching import SURE, WEIGHTS, items_meant
from identify.core.importing.wording import variants_meant
from identify.core.look_up import slips
from tests.exchange.fitting import demo_reference, fitted
from tests.exchange.labelled import labelled
from tests.exchange.strategies import QUICK

pytestmark = pytest.mark.heavy

WORDS = st.text("ABCDE12", max_size=9)
DISTANCES = [
    ("kitten", "sitting", 3),
    ("saturday", "sunday", 3),
    ("rosettacode", "raisethysword", 8),
    ("gumbo", "gambol", 2),
    ("", "abc", 3),
]
TRANSPOSED = [("ab", "ba"), ("wagon", "wgaon"), ("diesel", "deisel"), ("P21", "P12")]
OFTEN = 0.85
BOUNDS = (0.0, 0.2, 0.4, 0.6, 0.8, 0.95, 0.99, 1.000001)


@pytest.mark.parametrize(("one", "other", "distance"), DISTANCES)
def test_published_edit_distances(one, other, distance):
    assert Levenshtein.distance(one, other) == distance


@pytest.mark.parametrize(("one", "other"), TRANSPOSED)
def test_a_swap_of_neighbours_is_one_slip_and_two_changes(one, other):
    assert OSA.distance(one, other) == slips(one, other, 2) == 1
    assert Levenshtein.distance(one, other) == 2


@given(WORDS, WORDS)
@QUICK
def test_the_core_and_the_library_count_the_same_slips(one, other):
    assert min(slips(one, other, 2), 3) == min(OSA.distance(one, other), 3)


@given(WORDS, WORDS)
@QUICK
def test_likeness_is_never_below_that_of_difflib(one, other):
    """Both are 2 M / T; difflib's M is found greedily (its documentation says so), ours is the most
    there is: the longest common subsequence.
    """
    ours = fuzz.ratio(one, other) / 100
    theirs = SequenceMatcher(None, one, other, autojunk=False).ratio()
    assert ours >= theirs - 1e-9
    total = len(one) + len(other)
    assert ours == pytest.approx(1 - Indel.distance(one, other) / total if total else 1.0)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("Kühlwagen", "Kuhlwagen"),
        ("goods van", "goods vna"),
        ("abcd", "bcde"),
        ("engine", "enigne"),
    ],
)
def test_where_nothing_is_repeated_likeness_is_that_of_difflib(one, other):
    theirs = SequenceMatcher(None, one, other, autojunk=False).ratio()
    assert fuzz.ratio(one, other) / 100 == pytest.approx(theirs)


def test_the_threshold_for_a_misspelt_word_takes_one_slip_in_four_letters():
    assert OSA.normalized_similarity("VANS", "VAMS") >= NEAR
    assert OSA.normalized_similarity("DIESEL", "DEISEL") >= NEAR
    assert OSA.normalized_similarity("VAN", "CAN") < NEAR
    assert OSA.normalized_similarity("COACH", "COUCHE") < NEAR


@pytest.fixture(scope="module")
def judged():
    """For each of 2,000 rows: the chance of the best item, whether it is right, whether the right
    one is among the three, and whether there is a right one.
    """
    reference = demo_reference()
    out = []
    for row in labelled(reference, 2000, seed=20):
        found = items_meant(reference, row.query)
        right = [one["entry"] == row.place for one in found]
        sure = found[0]["sure"] if found else 0.0
        out.append((sure, bool(right) and right[0], any(right), row.place >= 0))
    return out


def test_stated_chances_come_true(judged):
    """The calibration error is the mean gap between what is stated and what comes true, weighed by
    how many rows each level has.
    """
    error = 0.0
    print("\n  sure from   rows  stated   right")
    for low, high in pairwise(BOUNDS):
        some = [(sure, right) for sure, right, *_ in judged if low <= sure < high]
        if some:
            stated = sum(sure for sure, _ in some) / len(some)
            right = sum(right for _, right in some) / len(some)
            error += abs(stated - right) * len(some) / len(judged)
            print(f"  {low:9.2f} {len(some):6d} {stated:7.3f} {right:7.3f}")
    print(f"  calibration error {error:.3f}")
    assert error <= 0.03


def test_what_is_taken_without_asking_is_right(judged):
    taken = [right for sure, right, *_ in judged if sure >= SURE]
    known = [row for row in judged if row[3]]
    precision = sum(taken) / len(taken)
    recall = sum(taken) / len(known)
    three = sum(row[2] for row in known) / len(known)
    print(
        f"\n  taken at {SURE}: precision {precision:.3f}, recall {recall:.3f}; in three {three:.3f}"
    )
    assert precision >= 0.97
    assert recall >= 0.85
    assert three >= 0.97


def test_a_lower_threshold_would_be_wrong_too_often(judged):
    """Why 0.8: what lies just above it is right oftener than OFTEN, what lies below is not."""
    above = [right for sure, right, *_ in judged if SURE <= sure < 0.95]
    below = [right for sure, right, *_ in judged if 0.4 <= sure < SURE]
    print(
        f"\n  0.8 to 0.95: {sum(above) / len(above):.3f}; 0.4 to 0.8: {sum(below) / len(below):.3f}"
    )
    assert sum(above) / len(above) > OFTEN
    assert sum(below) / len(below) < OFTEN


def test_the_weights_are_those_that_the_rows_give():
    again = fitted(demo_reference(), 1500)
    for name, weight in WEIGHTS.items():
        assert again[name] == pytest.approx(weight, abs=1.5), name


def test_variants_that_are_taken_as_named_are_right():
    """Each variant by the words of its own name, in any order, often with a part left out."""
    chance = random.Random(4)
    known = right = several = held = 0
    reference = demo_reference()
    for engine in reference["engines"]:
        for variant in engine["pack"]["variants"]:
            parts = variant["name"].split(", ")
            if len(parts) > 1 and chance.random() < 0.5:
                parts.pop(chance.randrange(len(parts)))
            chance.shuffle(parts)
            text = f"nice, {', '.join(parts)}, boxed"
            found = variants_meant(reference, engine["pack"]["id"], variant["item"], text)
            if len(found) == 1:
                known += 1
                right += found[0]["variant"] == variant["id"]
            elif found:
                several += 1
                held += variant["id"] in [one["variant"] for one in found]
    print(f"\n  taken as known {known}: right {right}; several left {several}: among them {held}")
    assert known > 150
    assert right / known >= 0.97
    assert held / several >= 0.97
