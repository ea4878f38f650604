"""How much of a range is not written down: by the closed form, and over years of collecting."""

import random
from collections import Counter
from itertools import accumulate
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.kin import OPEN
from identify.core.ranges.completeness import (
    MOST_OPEN,
    SAID,
    from_pieces_alone,
    gaps_told,
    take_in_gaps,
)
from identify.core.ranges.words import OPEN_SHARES, OWN_PIECE
from identify.core.types.learning import Specimen
from identify.shipped import WEB
from tests.table_packs import sharp, table_pack

AB = ["a", "b"]
BEGINNING = OPEN_SHARES[2]


def pack_of(count: int, said: float = BEGINNING) -> Any:
    """A range of one kind with so many variants."""
    pack = table_pack({"x": AB}, [{"x": sharp(AB, "a")}] * count, [1 / count] * count)
    pack["kinds"][0]["open"] = said
    return pack


def owned(variant: int) -> Specimen:
    return {"item": f"n{variant}", "variant": f"v{variant}", "answers": [], "replaced": []}


@given(st.lists(st.integers(0, 7), max_size=40), st.sets(st.integers(0, 7)))
def test_it_is_what_leaving_each_piece_out_in_turn_tells(pieces, alone):
    """Counted by leaving out, and not by the number of variants that are owned once."""
    ids = [f"v{n}" for n in alone]
    found = gaps_told(pack_of(8), [owned(n) for n in pieces], ids)
    if not pieces:
        assert found == []
        return
    new = 0
    for place, one in enumerate(pieces):
        rest = pieces[:place] + pieces[place + 1 :]
        new += one in alone and one not in rest
    share = min(MOST_OPEN, (SAID * BEGINNING + new) / (SAID + len(pieces)))
    assert found == [{"kind": 0, "new": new, "of": len(pieces), "share": pytest.approx(share)}]


def test_it_is_the_published_chance_of_what_is_unseen():
    """Gale and Sampson, "Good-Turing Frequency Estimation Without Tears", Journal of Quantitative
    Linguistics 2 (1995): of 30,902 observations 120 are the only ones of their sort, so the chance
    of what is unseen is 0.0039 (from memory). With as many pieces what was said counts for nothing.
    """
    once, often = 120, 30902 - 120
    pieces = [owned(n) for n in range(once)] + [owned(once)] * often
    [found] = gaps_told(pack_of(once + 1), pieces, [f"v{n}" for n in range(once + 1)])
    assert found["new"] == once
    assert found["share"] == pytest.approx(0.0039, abs=0.0002)


def test_what_is_told_counts_where_the_range_says_nothing():
    pack = pack_of(3)
    del pack["kinds"][0]["open"]
    [found] = gaps_told(pack, [owned(0), owned(0)], ["v0"])
    assert found["share"] == pytest.approx(SAID * OPEN / (SAID + 2))
    take_in_gaps(pack, [found])
    assert pack["kinds"][0]["open"] == found["share"]


def test_what_another_source_tells_is_not_from_pieces_alone():
    rows: Any = {
        "sources": [{"id": "own", "what": OWN_PIECE}, {"id": "book", "what": "A book"}],
        "items": [
            {"number": "1", "source": "book", "other_years": []},
            {"number": "2", "source": "own", "other_years": []},
            {"number": "3", "source": "", "other_years": [["book", "1950"]]},
        ],
        "variants": [
            {"id": "told", "item": "1", "source": "", "other_years": []},
            {"id": "piece", "item": "2", "source": "own", "other_years": []},
            {"id": "nobody", "item": "2", "source": "", "other_years": []},
            {"id": "book", "item": "2", "source": "book", "other_years": []},
            {"id": "also", "item": "2", "source": "own", "other_years": [["book", "1950"]]},
            {"id": "third", "item": "3", "source": "", "other_years": []},
        ],
    }
    assert from_pieces_alone(rows) == ["piece", "nobody"]


def test_the_app_offers_ones_own_piece_by_that_name():
    assert f'what: "{OWN_PIECE}"' in (WEB / "range" / "own-words.js").read_text("utf-8")


def test_over_years_of_collecting_it_is_as_often_new_as_it_says(capsys):
    """Variants met as often as 1, 1/2, 1/3 and so on, each written down from the first piece of it.
    At 10, 30, 100 and 300 pieces: the mean of what is told beside that of what is so, over 200
    collectors; and beside what was said at the beginning and never changed.
    """
    rng = random.Random(5)
    count = 150
    weights = list(accumulate(1 / (n + 1) for n in range(count)))
    shares = [(high - low) / weights[-1] for low, high in zip([0, *weights], weights, strict=False)]
    pack = pack_of(count)
    sums: dict[int, list[float]] = {pieces: [0.0, 0.0, 0.0] for pieces in (10, 30, 100, 300)}
    collectors = 200
    for _ in range(collectors):
        met = rng.choices(range(count), cum_weights=weights, k=300)
        for pieces, told in sums.items():
            some = Counter(met[:pieces])
            specimens = [owned(n) for n, often in some.items() for _ in range(often)]
            [found] = gaps_told(pack, specimens, [f"v{n}" for n in range(count)])
            unseen = 1 - sum(shares[n] for n in some)
            told[0] += found["share"] / collectors
            told[1] += unseen / collectors
            told[2] += abs(found["share"] - unseen) / collectors
    with capsys.disabled():
        print("\npieces: said, so, mean distance; never changed it would be", BEGINNING)
        for pieces, (said, so, distance) in sums.items():
            print(f"{pieces:6}: {said:.3f} {so:.3f} {distance:.3f}")
    for pieces, (said, so, distance) in sums.items():
        assert said == pytest.approx(so, abs=0.08)
        assert distance <= (0.15 if pieces < 30 else 0.1)  # ten pieces tell little
    assert sums[300][2] < abs(BEGINNING - sums[300][1])
