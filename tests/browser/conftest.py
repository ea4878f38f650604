"""Fixtures of the browser tests."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import orjson
import pytest
from playwright.sync_api import Browser, Page

from identify.core.belief import prepare
from tests.browser.own_server import OwnProcess, OwnServer
from tests.browser.phone import DESK, PHONE, watched
from tests.browser.phone_storage import demo
from tests.conftest import Server, serving
from tests.kept_site import kept_site
from tests.reference.small_pack import small_files, write


@pytest.fixture
def own_server(site) -> Iterator[Server]:
    """A server that this test may stop, and change what it serves."""
    with serving(site) as running:
        yield running


@pytest.fixture
def own(tmp_path, site) -> Iterator[OwnServer]:
    """The collector's own server, with nothing kept yet."""
    running = OwnServer(tmp_path / "data", site)
    running.start()
    yield running
    running.end()


@pytest.fixture
def own_process(tmp_path) -> Iterator[OwnProcess]:
    """The same as a process of its own, which can be killed."""
    running = OwnProcess(tmp_path / "data")
    running.start()
    yield running
    running.kill()


@pytest.fixture
def page(browser, server) -> Iterator[Page]:
    """A fresh phone; whatever the app reports on its console fails the test."""
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    yield page
    context.close()
    assert page.reported == []


@pytest.fixture
def desk(browser, server) -> Iterator[Page]:
    """A wide window with the demo collection open; nothing may be reported on the console."""
    context = browser.new_context(**DESK)
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    yield page
    context.close()
    assert page.reported == []


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A small pack of one's own."""
    return write(tmp_path, small_files())


@pytest.fixture
def small_server(folder: Path) -> Iterator[Server]:
    """The app with that pack alone; the test may change what is served."""
    with serving(kept_site([folder])) as running:
        yield running


@pytest.fixture
def small_phone(browser: Browser, small_server: Server) -> Iterator[Page]:
    """A phone that shows it."""
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    page.goto(small_server.url)
    yield page
    context.close()
    assert page.reported == []


@pytest.fixture(scope="session")
def pellmarsh(site) -> dict[str, Any]:
    """The engine over the demo pack, from the very bytes that the phone gets."""
    return prepare(orjson.loads(site["packs/pellmarsh.json"]))
