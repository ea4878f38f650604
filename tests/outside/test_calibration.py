"""Stated chances come true: on pieces drawn from a pack, with the truth known."""

import random

import orjson
import pytest

from identify import phone
from identify.core.belief import prepare
from identify.lab.calibration import EDGES, Stated, as_text, calibration, error_of, stated
from identify.reference.compile import compile_pack
from identify.reference.compiled import pack_bytes

PIECES = 1500


@pytest.fixture(scope="module")
def told() -> dict[str, Stated]:
    """What was stated of pieces from every demo pack, and whether it was so."""
    rng = random.Random(1957)
    noted: dict[str, Stated] = {"swapped": [], "variant": []}
    for folder in phone.demo_packs():
        engine = prepare(orjson.loads(pack_bytes(compile_pack(folder))))
        for _ in range(PIECES):
            for what, said in stated(rng, engine, engine).items():
                noted[what] += said
    return noted


@pytest.mark.parametrize("what", ["swapped", "variant"])
def test_what_is_called_likely_is_so_as_often_as_it_says(told, what, capsys):
    table = calibration(told[what], EDGES)
    with capsys.disabled():
        print(f"\n{what}: calibration error {error_of(table):.3f}\n{as_text(table)}")
    assert error_of(table) <= 0.03
    for _, _, count, mean, true in table:
        if count >= 50:
            spread = 3 * (mean * (1 - mean) / count) ** 0.5
            assert abs(mean - true) <= 0.06 + spread
