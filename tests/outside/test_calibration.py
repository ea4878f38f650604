"""Stated chances come true: on pieces drawn from a pack, with the truth known."""

import random

import pytest

from identify import phone
from identify.lab.calibration import Stated, stated
from identify.reference.loading import load_engine
from tests.calibrated import assert_come_true
from tests.sampling import sample

pytestmark = pytest.mark.heavy

PIECES = sample(1500, 500)


@pytest.fixture(scope="module")
def told() -> dict[str, Stated]:
    """What was stated of pieces from every demo pack, and whether it was so."""
    rng = random.Random(1957)
    noted: dict[str, Stated] = {"swapped": [], "variant": []}
    for folder in phone.demo_packs():
        engine = load_engine(folder)
        for _ in range(PIECES):
            for what, said in stated(rng, engine, engine).items():
                noted[what] += said
    return noted


@pytest.mark.parametrize("what", ["swapped", "variant"])
def test_what_is_called_likely_is_so_as_often_as_it_says(told, what, capsys):
    assert_come_true(what, told[what], capsys)
