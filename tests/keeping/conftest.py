"""A store in a folder of its own, and a device that writes operations for it."""

import tempfile
from pathlib import Path
from random import Random

import pytest

from identify import keeping
from tests.keeping.power import memory
from tests.keeping.samples import Writer


@pytest.fixture
def tmp_path():
    """In memory: fsync of a busy disk takes long, and what it is for is tested in test_power.py."""
    with tempfile.TemporaryDirectory(dir=memory()) as folder:
        yield Path(folder)


@pytest.fixture
def store(tmp_path):
    with keeping.open(tmp_path / "data") as opened:
        yield opened


@pytest.fixture
def writer():
    return Writer(Random(1))
