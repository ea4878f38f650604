"""Fixtures of the tests that run in every browser."""

import os
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.conftest import Server, serving
from tests.every_browser.driven import OPENERS, Phone, display

os.environ["SE_OFFLINE"] = "true"  # selenium never looks for a driver by itself


@pytest.fixture(scope="session")
def _display() -> Iterator[None]:
    with display():
        yield


@pytest.fixture(params=OPENERS)
def phone(request: pytest.FixtureRequest, _display: None, tmp_path: Path) -> Iterator[Phone]:
    """A fresh phone in each browser; what its page reports fails the test."""
    running = Phone(request.param, tmp_path / "phone")
    yield running
    running.end()


@pytest.fixture
def app(site: dict[str, bytes]) -> Iterator[Server]:
    """A server of the demo that this test may stop."""
    with serving(site) as running:
        yield running
