"""The stop rule on a table of two classes, against the sequential test of Wald.

Source: A. Wald, "Sequential Tests of Statistical Hypotheses", Annals of Mathematical Statistics
16 (1945): no test with the same errors asks less on average (Wald and Wolfowitz 1948), and with the
bounds A and B the errors are about (1 - B) / (A - B) and B (A - 1) / (A - B), never more than 1 / A
and B. The exact figures for a walk of even steps: W. Feller, An Introduction to Probability Theory
and Its Applications, volume I, chapter XIV (the ruin of a gambler).
"""

from collections import defaultdict
from math import log, log2
from typing import Any

import pytest

from identify.core.belief import believe, prepare_with
from identify.core.checking import ENOUGH
from identify.core.session import answered, new_session
from identify.core.stopping import TOGETHER, aimed
from tests.table_packs import table_pack

LOOKS = 40  # that all say the same, so that nothing but the stop rule ends the questions
MORE = 10  # besides, so that what is left to ask is always worth it
CLOSED = {"sure": 0.0, "twice": 0.0, "unsure": 0.0, "unrecorded": 0.0, "drawn_all": 1.0}


def two_classes(likely: float, looks: int) -> Any:
    """An engine that knows two classes: so many looks say yes of one with this chance, and no of
    the other.
    """
    names = {f"f{n}": ["yes", "no"] for n in range(looks)}
    rows = [dict.fromkeys(names, share) for share in ([likely, 1 - likely], [1 - likely, likely])]
    return prepare_with(table_pack(names, rows, [0.5, 0.5]), CLOSED)


def walk(likely: float) -> tuple[float, float, float]:
    """The mean number of questions, the share that ends wrong, and the share that runs out of
    them, exactly: for a class that says yes with this chance where the other says no with it. What
    is asked once more, beyond the rule itself, is left out.
    """
    engine = two_classes(likely, LOOKS + MORE)
    begun: Any = {**new_session(engine), "unchecked": True}
    at = {(0, 0): (1.0, begun)}
    mean = wrong = 0.0
    for asked in range(LOOKS):
        after: dict[tuple[int, int], tuple[float, Any]] = {}
        chances: dict[tuple[int, int], float] = defaultdict(float)
        for (yes, no), (chance, session) in at.items():
            state = believe(engine, session)
            aim = aimed(engine, session, state, state["chances"], [])
            if aim["stop"] == "sure":
                mean += chance * asked
                wrong += chance if no > yes else 0.0
                continue
            feature = f"f{aim['asked']['open'][0]['feature']}"
            for said, share, place in (
                ("yes", likely, (yes + 1, no)),
                ("no", 1 - likely, (yes, no + 1)),
            ):
                told: Any = {"feature": feature, "how": "sure", "states": [said]}
                chances[place] += chance * share
                after[place] = (chances[place], {**answered(session, told), "unchecked": True})
        at = after
    return mean, wrong, sum(chance for chance, _ in at.values())


@pytest.mark.parametrize("likely", [0.7, 0.75, 0.8, 0.9])
def test_it_asks_as_much_as_the_sequential_test_and_errs_as_little(likely: float):
    mean, wrong, open_still = walk(likely)
    odds = likely / (1 - likely)
    bound = ENOUGH / (1 - ENOUGH)
    steps = next(n for n in range(1, LOOKS) if odds**n >= bound * (1 - 1e-9))
    ruin = 1 / (odds**steps + 1)
    assert open_still < 0.02
    assert wrong == pytest.approx(ruin, abs=open_still)
    assert wrong <= 1 / bound
    assert mean == pytest.approx(
        steps * (1 - 2 * ruin) / (2 * likely - 1), abs=2 * LOOKS * open_still
    )


def test_walds_own_approximation_is_near_and_below():
    """The mean by Wald leaves out how far the last step goes beyond the bound."""
    likely = 0.7
    mean, _, _ = walk(likely)
    error = 1 - ENOUGH
    step = (2 * likely - 1) * log(likely / (1 - likely))
    wald = ((1 - error) * log((1 - error) / error) + error * log(error / (1 - error))) / step
    assert wald <= mean <= 1.25 * wald


def entropy(chance: float) -> float:
    """Bits of one of two."""
    return -chance * log2(chance) - (1 - chance) * log2(1 - chance)


@pytest.mark.parametrize("likely", [0.65, 0.7, 0.75])
def test_weak_looks_are_asked_where_all_of_them_together_can_tell(likely: float):
    """Given the class, looks say nothing of one another: so together they tell at most the sum."""
    yes = likely**2 + (1 - likely) ** 2  # of one more look, after one that said yes
    bits = entropy(yes) - entropy(likely)
    enough = next(n for n in range(1, LOOKS) if n * bits >= TOGETHER)
    assert enough > 1
    for looks in (enough - 1, enough, LOOKS):
        engine = two_classes(likely, looks + 1)
        session = answered(new_session(engine), {"feature": "f0", "how": "sure", "states": ["yes"]})
        state = believe(engine, session)
        asked = aimed(engine, session, state, state["chances"], [])["asked"]["open"]
        assert len(asked) == (looks if looks >= enough else 0)
