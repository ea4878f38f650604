"""Fixtures of the tests that run in every browser."""

import os
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from typing import Any

import orjson
import pytest
from selenium.common.exceptions import WebDriverException

from tests.browser.own_server import OwnServer
from tests.conftest import Server, serving
from tests.every_browser.driven import Phone
from tests.every_browser.openers import OPENERS, display

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
    with _borrowed(request.param, _lent, tmp_path_factory) as running:
        yield running


@contextmanager
def _borrowed(
    name: str, lent: dict[str, Phone], folders: pytest.TempPathFactory
) -> Iterator[Phone]:
    """A running phone, put back before and after, whatever was done with it; else a new one."""
    _tidied(name, lent)
    if name not in lent:
        lent[name] = Phone(name, folders.mktemp(name))
    yield lent[name]
    _tidied(name, lent)


def _tidied(name: str, lent: dict[str, Phone]) -> None:
    if name in lent:
        try:
            lent[name].tidy()
        except (WebDriverException, AssertionError):
            lent.pop(name).kill()


@pytest.fixture
def three(
    _lent: dict[str, Phone], tmp_path_factory: pytest.TempPathFactory
) -> Iterator[dict[str, Phone]]:
    """One of each browser, all at once."""
    with ExitStack() as stack:
        borrowed = [_borrowed(name, _lent, tmp_path_factory) for name in OPENERS]
        yield {name: stack.enter_context(one) for name, one in zip(OPENERS, borrowed, strict=True)}


@pytest.fixture
def another(_lent: dict[str, Phone], tmp_path_factory: pytest.TempPathFactory) -> Iterator[Phone]:
    """A second phone, whichever the first one is."""
    with _borrowed("chromium", _lent, tmp_path_factory) as running:
        yield running


@pytest.fixture(scope="session")
def pellmarsh(site: dict[str, bytes]) -> dict[str, Any]:
    """The demo pack, as the phone gets it."""
    pack: dict[str, Any] = orjson.loads(site["packs/pellmarsh.json"])
    return pack


@pytest.fixture
def own(tmp_path: Path, site: dict[str, bytes]) -> Iterator[OwnServer]:
    """The collector's own server, with nothing kept yet."""
    running = OwnServer(tmp_path / "data", site)
    running.start()
    yield running
    running.end()


@pytest.fixture
def app(site: dict[str, bytes]) -> Iterator[Server]:
    """A server of the demo that this test may stop."""
    with serving(site) as running:
        yield running
