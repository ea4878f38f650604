"""How far chances that come true are off by chance, against the closed form."""

import random
from math import pi, sqrt

import pytest

from tests.open_world.chance import by_chance

EDGES = [0.0, 0.5, 1.0]


@pytest.mark.parametrize(("items", "of_each"), [(400, 1), (100, 1), (100, 4)])
def test_it_is_the_mean_distance_of_a_share_by_chance(items, of_each):
    """Of n tosses the share of heads is off by sqrt(2 / pi) * 0.5 / sqrt(n) in the mean, by the
    normal distribution; pieces that share their fate are one toss.
    """
    said = [((0, str(item)), 0.5) for item in range(items) for _ in range(of_each)]
    mean, rarely = by_chance(random.Random(5), said, EDGES)
    assert mean == pytest.approx(sqrt(2 / pi) * 0.5 / sqrt(items), rel=0.2)
    assert rarely == pytest.approx(1.96 * 0.5 / sqrt(items), rel=0.25)


def test_the_same_item_has_a_fate_in_each_range():
    together = [((0, "one"), 0.5)] * 50
    apart = [((n, "one"), 0.5) for n in range(50)]
    assert by_chance(random.Random(1), together, EDGES)[0] == pytest.approx(0.5)
    assert by_chance(random.Random(1), apart, EDGES)[0] < 0.1
