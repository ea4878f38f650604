"""Fixtures of the tests that run in every browser."""

import os
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest
from selenium.common.exceptions import WebDriverException

from tests.conftest import Server, serving
from tests.every_browser.driven import OPENERS, Phone, display

os.environ["SE_OFFLINE"] = "true"  # selenium never looks for a driver by itself


@pytest.fixture(scope="session")
def _display() -> Iterator[None]:
    with display():
        yield


@pytest.fixture(params=OPENERS)
def phone(request: pytest.FixtureRequest, _display: None, tmp_path: Path) -> Iterator[Phone]:
    """A fresh phone in each browser, which a test may end, kill and open again."""
    running = Phone(request.param, tmp_path / "phone")
    yield running
    running.end()


@pytest.fixture(scope="session")
def _lent(_display: None, tmp_path_factory: pytest.TempPathFactory) -> Iterator[dict[str, Phone]]:
    lent: dict[str, Phone] = {}
    yield lent
    for running in lent.values():
        with suppress(WebDriverException, OSError):
            running.end()


@pytest.fixture(params=OPENERS)
def lent(
    request: pytest.FixtureRequest,
    _lent: dict[str, Phone],
    tmp_path_factory: pytest.TempPathFactory,
) -> Iterator[Phone]:
    """A running phone in each browser that tests use one after another.

    Each test's server has a port of its own, so nothing is stored there yet.
    """
    name = request.param
    if name not in _lent:
        _lent[name] = Phone(name, tmp_path_factory.mktemp(name))
    running = _lent[name]
    yield running
    try:
        running.tidy()
    except WebDriverException:
        _lent.pop(name).kill()


@pytest.fixture
def app(site: dict[str, bytes]) -> Iterator[Server]:
    """A server of the demo that this test may stop."""
    with serving(site) as running:
        yield running
