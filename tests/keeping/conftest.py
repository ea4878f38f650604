"""A store in a folder of its own, and a device that writes operations for it."""

from random import Random

import pytest

from identify import keeping
from tests.keeping.material import Writer


@pytest.fixture
def store(tmp_path):
    with keeping.open(tmp_path / "data") as opened:
        yield opened


@pytest.fixture
def writer():
    return Writer(Random(1))
