"""A small pack in a folder, to be changed."""

from pathlib import Path

import pytest

from tests.reference.small_pack import small_files, write


@pytest.fixture
def small(tmp_path: Path) -> Path:
    return write(tmp_path, small_files())
