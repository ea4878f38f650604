"""What a range learns from owned pieces: by the closed forms, by properties, over years."""

import copy
import math
import random
from dataclasses import dataclass
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from identify.core.belief import believe, prepare
from identify.core.ranges.learning import (
    LEAST,
    PART,
    WORTH_OF,
    learned_from,
    priors_of,
    take_in_learned,
)
from identify.core.reasons import variant_chances
from identify.core.session import new_session, with_answers
from identify.core.types.learning import Specimen
from identify.lab.calibration import EDGES, Stated, calibration, error_of
from identify.lab.calibration import LEAST as LEAST_STATED
from identify.lab.pieces import piece, read_by
from tests.kept_site import compiled_demo_packs
from tests.sampling import sample
from tests.table_packs import sharp, table_pack

AB = ["a", "b"]
patient = settings(suppress_health_check=[HealthCheck.too_slow])  # of a machine with much to do


@pytest.fixture(scope="module")
def pellmarsh_pack() -> dict[str, Any]:
    """The range of the demo, compiled."""
    found: dict[str, Any] = compiled_demo_packs()["pellmarsh"]
    return found


def two_variants(priors: tuple[float, float] = (0.5, 0.5), swap: float = 0.1) -> dict[str, Any]:
    """An item with two variants told by `x`, and `y` on a part."""
    rows = [{"x": sharp(AB, one), "y": sharp(AB, "a")} for one in AB]
    pack = table_pack({"x": AB, "y": AB}, rows, list(priors), {"y": ("wheels", swap)})
    kind = {**pack["features"][0], "id": "kind", "states": [{"id": "thing", "name": "Thing"}]}
    pack["features"] = [kind, *pack["features"]]  # the first is what it is, in every range
    pack["cells"] = [{"shares": [[], [1.0]], "codes": [1, 1]}, *pack["cells"]]
    pack["backgrounds"] = [[[1.0]], *pack["backgrounds"]]
    pack["items"] = [{**pack["items"][0], "number": "1"}]
    pack["variants"] = [{**one, "item": 0} for one in pack["variants"]]
    return pack


def owned(pack: dict[str, Any], variant: int, y: str = "", replaced: bool = False) -> Specimen:
    answers: Any = [{"feature": "y", "how": "sure", "states": [y]}] if y else []
    name = pack["variants"][variant]["id"]
    return {"item": "1", "variant": name, "answers": answers,
            "replaced": ["wheels"] if replaced else []}  # fmt: skip


def worth_of(counts: list[int], prior: float, strength: float) -> float:
    """P(these pieces in this order) by the Dirichlet-multinomial, with gamma functions."""
    some, others = counts
    first, second = strength * prior, strength * (1 - prior)
    log = math.lgamma(strength) - math.lgamma(strength + some + others)
    log += math.lgamma(first + some) - math.lgamma(first)
    log += math.lgamma(second + others) - math.lgamma(second)
    return math.exp(log)


@patient
@given(st.integers(0, 20), st.integers(0, 20), st.floats(0.05, 0.95))
def test_shares_of_variants_are_the_mean_of_a_mixture_of_dirichlets(some, others, prior):
    pack = two_variants((prior, 1 - prior))
    found = learned_from(pack, [owned(pack, 0)] * some + [owned(pack, 1)] * others)
    told = {one["variant"]: one["share"] for one in found["variants"]}
    count = some + others
    if count == 0:
        assert told == {}
        return
    weights = [worth_of([some, others], prior, a) for a in WORTH_OF]
    means = [(a * prior + some) / (a + count) for a in WORTH_OF]
    expected = sum(w * m for w, m in zip(weights, means, strict=True)) / sum(weights)
    assert told[0] == pytest.approx(expected)
    assert told[0] + told[1] == pytest.approx(1)
    take_in_learned(pack, found)
    assert pack["rows"]["prior"] == pytest.approx([told[0], told[1]])


@patient
@given(st.integers(0, 30), st.integers(0, 30), st.floats(0.01, 0.5))
def test_how_often_a_part_is_replaced_is_the_mean_of_a_beta(whole, replaced, swap):
    pack = two_variants(swap=swap)
    pieces = [owned(pack, 0, "a")] * whole + [owned(pack, 0, replaced=True)] * replaced
    found = learned_from(pack, pieces)
    if whole + replaced == 0:
        assert found["parts"] == []
    else:
        [told] = found["parts"]
        assert (told["replaced"], told["of"]) == (replaced, whole + replaced)
        expected = (PART * swap + replaced) / (PART + whole + replaced)
        assert told["swap"] == pytest.approx(expected)


def test_one_piece_that_differs_says_nothing_and_three_of_four_a_lot():
    pack = two_variants()
    assert learned_from(pack, [owned(pack, 0, "b")] * (LEAST - 1))["states"] == []
    pieces = [owned(pack, 0, "b")] * 3 + [owned(pack, 0, "a")]
    [told] = learned_from(pack, pieces)["states"]
    assert (told["seen"], told["of"]) == ([1, 3], 4)
    assert 0.2 < told["shares"][1] < 0.75, "less than three of four: some may be misread or swapped"


def test_a_part_that_was_replaced_says_nothing_of_the_variant():
    pack = two_variants()
    assert learned_from(pack, [owned(pack, 0, "b", replaced=True)] * 9)["states"] == []


@patient
@given(st.lists(st.tuples(st.integers(0, 1), st.sampled_from(["", "a", "b"]), st.booleans())))
def test_all_stay_chances_and_the_order_of_pieces_does_not_matter(pieces):
    pack = two_variants()
    specimens = [owned(pack, *one) for one in pieces]
    found = learned_from(pack, specimens)
    back = learned_from(pack, specimens[::-1])
    assert found == back
    again = copy.deepcopy(pack)
    take_in_learned(again, found)
    assert sum(again["rows"]["prior"]) == pytest.approx(1)
    for cells in again["cells"]:
        for shares in cells["shares"][1:]:
            assert sum(shares) == pytest.approx(1)
            assert min(shares) >= 0
    assert all(0 < part["swap"] < 1 for part in again["parts"])


def test_nothing_owned_changes_nothing_and_strangers_are_passed_over(pellmarsh_pack):
    before = copy.deepcopy(pellmarsh_pack)
    stray: Specimen = {"item": "none", "variant": "none", "answers": [], "replaced": []}
    found = learned_from(before, [stray])
    assert found == {"pieces": 0, "variants": [], "states": [], "parts": []}
    take_in_learned(before, found)
    assert before["rows"]["prior"] == pytest.approx(pellmarsh_pack["rows"]["prior"])
    assert before["cells"] == pellmarsh_pack["cells"]


@dataclass
class Year:
    """How well new pieces are named: bits that naming the truth cost, and what was stated."""

    bits: list[float]
    stated: Stated


def another_world(rng: random.Random, pack: dict[str, Any]) -> dict[str, Any]:
    """The same range as it truly was: variants rarer and commoner, parts replaced oftener or less,
    here and there a state that varies within a variant.
    """
    true = copy.deepcopy(pack)
    rows = true["rows"]
    times = [rng.gammavariate(1.5, 1) + 0.05 for _ in true["variants"]]
    rows["prior"] = [p * times[v] for p, v in zip(rows["prior"], rows["variant"], strict=True)]
    whole = sum(rows["prior"])
    rows["prior"] = [p / whole for p in rows["prior"]]
    for part in true["parts"]:
        part["swap"] = min(0.6, part["swap"] * rng.choice([0.4, 1, 2.5]))
    for place, feature in enumerate(true["features"][1:], 1):
        for v in range(len(true["variants"])):
            mine = [i for i, one in enumerate(rows["variant"]) if one == v]
            cells = true["cells"][place]
            if cells["codes"][mine[0]] > 0 and rng.random() < 0.1 and len(feature["states"]) > 1:
                shares = [0.4 * share for share in cells["shares"][cells["codes"][mine[0]]]]
                other = rng.randrange(len(shares))
                shares[other] += 0.6
                for i in mine:
                    cells["codes"][i] = len(cells["shares"])
                cells["shares"].append(shares)
    return true


def found_piece(rng: random.Random, engine: Any, true: dict[str, Any]) -> Specimen:
    """A piece of the true world as its owner knows it."""
    made = piece(rng, true)
    places = rng.sample(range(len(true["features"])), min(8, len(true["features"])))
    answers = [read_by(rng, engine, n, made.states[true["features"][n]["id"]]) for n in places]
    variant = true["variants"][true["rows"]["variant"][made.row]]
    replaced = [true["parts"][p]["id"] for p in sorted(made.replaced) if rng.random() < 0.7]
    number = true["items"][variant["item"]]["number"]
    return {"item": number, "variant": variant["id"], "answers": answers, "replaced": replaced}


def tried(pack: dict[str, Any], pieces: list[Specimen]) -> Year:
    """What the range says of pieces that it has not learned from."""
    engine = prepare(pack)
    places = {one["id"]: n for n, one in enumerate(pack["variants"])}
    stated: Stated = []
    bits = []
    for one in pieces:
        state = believe(engine, with_answers(new_session(engine), one["answers"][:4]))
        chances = variant_chances(engine, state)
        whole = sum(chances)
        truth = places[one["variant"]]
        bits.append(-math.log2(max(chances[truth] / whole, 1e-9)))
        stated += [(c / whole, n == truth) for n, c in enumerate(chances) if c >= LEAST_STATED]
    return Year(bits, stated)


def away(pack: dict[str, Any], true: dict[str, Any]) -> float:
    """How far what is said of rare and common variants is from how it truly is: half the sum of
    the differences (the total variation distance).
    """
    said = priors_of(pack)  # type: ignore[arg-type]
    so = priors_of(true)  # type: ignore[arg-type]
    return sum(abs(a - b) for a, b in zip(said, so, strict=True)) / 2


def interval(one: list[float], other: list[float]) -> tuple[float, float]:
    """The mean of the differences, and half of its 95 % interval."""
    away = [a - b for a, b in zip(one, other, strict=True)]
    mean = sum(away) / len(away)
    spread = math.sqrt(sum((x - mean) ** 2 for x in away) / (len(away) - 1))
    return mean, 1.96 * spread / math.sqrt(len(away))


@pytest.mark.heavy
@pytest.mark.parametrize("differs", [True, False], ids=["other world", "as the range says"])
def test_years_of_collecting_make_chances_better_and_not_worse(pellmarsh_pack, differs, capsys):
    worlds = sample(8, 2)
    a_year, years, tests = 15, (2, 10), sample(200, 120)
    wrong: dict[int, float] = dict.fromkeys([0, *years], 0.0)
    gains: dict[int, list[list[float]]] = {year: [[], []] for year in years}
    said: dict[int, Stated] = {0: [], **{year: [] for year in years}}
    for seed in range(worlds):
        rng = random.Random(seed)
        true = another_world(rng, pellmarsh_pack) if differs else pellmarsh_pack
        engine = prepare(pellmarsh_pack)
        fresh = [found_piece(rng, engine, true) for _ in range(tests)]
        before = tried(pellmarsh_pack, fresh)
        said[0] += before.stated
        wrong[0] += away(pellmarsh_pack, true) / worlds
        pieces = [found_piece(rng, engine, true) for _ in range(a_year * max(years))]
        for year in years:
            pack = copy.deepcopy(pellmarsh_pack)
            take_in_learned(pack, learned_from(pack, pieces[: a_year * year]))
            after = tried(pack, fresh)
            said[year] += after.stated
            wrong[year] += away(pack, true) / worlds
            gains[year][0] += before.bits
            gains[year][1] += after.bits
    told = {year: interval(*pair) for year, pair in gains.items()}
    errors = {year: error_of(calibration(one, EDGES)) for year, one in said.items()}
    with capsys.disabled():
        print("\nafter so many years of collecting, bits saved in naming a new piece:")
        for year, (mean, half) in told.items():
            was, now = errors[0], errors[year]
            print(f"  {year}: {mean:+.3f} +- {half:.3f}; calibration error {was:.3f} -> {now:.3f}, "
                  f"shares away by {wrong[0]:.3f} -> {wrong[year]:.3f}")  # fmt: skip
    mean, half = told[max(years)]
    if differs:
        assert mean - half > 0, "it is better after years"
        assert told[min(years)][0] + told[min(years)][1] > 0, "and no worse after two"
        assert wrong[max(years)] < wrong[min(years)] < wrong[0], "what is common is better known"
        assert errors[max(years)] < errors[0] + 0.005, "within what so few pieces can tell"
    else:
        assert mean > -0.04, "where the range is right already, little is lost"
