"""The lock file pins what pyproject.toml asks for: every dependency, by version and by hash."""

import re
import tomllib
from pathlib import Path

import pytest
from packaging.requirements import Requirement

ROOT = Path(__file__).parents[1]
LOCK = (ROOT / ".ci" / "requirements.lock").read_text()
PINNED = dict(re.findall(r"^([a-z0-9-]+)==(\S+)", LOCK, re.MULTILINE))
ASKED = tomllib.loads((ROOT / "pyproject.toml").read_text())["project"]["dependencies"]


@pytest.mark.parametrize("asked", [Requirement(text) for text in ASKED], ids=str)
def test_the_lock_meets_what_is_asked_for(asked: Requirement) -> None:
    assert asked.name in PINNED, f"{asked.name} is not locked: run .ci/lock"
    assert asked.specifier.contains(PINNED[asked.name]), f"{asked.name}: run .ci/lock"


def test_every_pinned_version_has_hashes() -> None:
    blocks = re.split(r"(?m)^(?=[a-z0-9-]+==)", LOCK)[1:]
    assert len(blocks) == len(PINNED) > 10
    assert all("--hash=sha256:" in block for block in blocks)
