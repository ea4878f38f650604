"""What tests share: a real browser, a real server."""

import functools
import os
import shutil
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path

import pytest
from _pytest.terminal import TerminalReporter
from hypothesis import settings
from playwright.sync_api import Browser, Playwright, expect, sync_playwright
from starlette.routing import BaseRoute
from starlette.types import ASGIApp

from identify import compressed, phone, publishing
from identify.server import app as serving_app
from identify.server.app import create_app
from identify.server.devices import offers
from tests import sampling
from tests.browser import slow_phone
from tests.kept_site import kept_site
from tests.threaded_server import Running, free_port

# Compiled code is kept even where the machine is told otherwise: else each of the many processes
# that a run starts compiles all of it again, which takes a second of processor time.
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)
sys.dont_write_bytecode = False

# Many tests serve or publish the same files: each is packed once in a process of tests.
serving_app.packed = publishing.packed = functools.cache(compressed.packed)

# No clock decides whether a test passes; --hypothesis-profile is applied after this.
settings.register_profile("no clock", deadline=None)
settings.load_profile("no clock")
expect.set_options(timeout=30_000)  # what a person would see on a busy machine, too

# the folders of tests that have a browser, a server or a process beside them
BESIDE = ("tests/browser/", "tests/every_browser/", "tests/server/", "tests/sync/", "tests/bench/")


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption("--full", action="store_true", help="heavy tests try everything, no sample")
    late = "what the browser tests must wait for comes late: finds tests that do not wait"
    parser.addoption("--slow-phone", action="store_true", help=late)


def pytest_configure(config: pytest.Config) -> None:
    sampling.full = config.getoption("--full")
    if config.getoption("--slow-phone"):
        slow_phone.slow_down()


def pytest_ignore_collect(collection_path: Path, config: pytest.Config) -> bool | None:
    """Where only quick tests are asked for, the others are not even read."""
    beside = f"{collection_path.relative_to(config.rootpath).as_posix()}/".startswith(BESIDE)
    return True if beside and config.option.markexpr == "quick" else None


def pytest_collection_modifyitems(config: pytest.Config, items: list[pytest.Item]) -> None:
    """Marks as quick what is not heavy and has nothing beside it; what has something beside it is
    tried once more when it fails, unless what does not wait is looked for.
    """
    once = config.getoption("--slow-phone")
    for item in items:
        if item.nodeid.startswith(BESIDE) or "playwright" in getattr(item, "fixturenames", ()):
            if not once:
                item.add_marker(pytest.mark.flaky(reruns=1))
        elif not item.get_closest_marker("heavy"):
            item.add_marker("quick")


def pytest_terminal_summary(terminalreporter: TerminalReporter) -> None:
    """Tells what passed only the second time: a fault of the test or of the app, to be mended."""
    ended = {report.nodeid for report in terminalreporter.getreports("failed")}
    for failed in terminalreporter.getreports("rerun"):
        if failed.nodeid in ended:
            continue
        terminalreporter.section(f"failed at first: {failed.nodeid}")
        terminalreporter.line(failed.longreprtext)


BROWSERS = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
ARGS = [
    "--no-sandbox",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--disable-quic",
    "--no-first-run",
]


def browser_path() -> str:
    """The browser to test with; where there is none, the test fails with a sentence."""
    for name in BROWSERS:
        path = shutil.which(name)
        if path:
            return path
    # not pytest.exit: where several processes share the tests, nothing is seen of its sentence
    pytest.fail(
        "The tests need a real Chromium on PATH and found none. Debian: apt-get install chromium",
        pytrace=False,
    )


def light_browser_path() -> str:
    """The same browser without its windows, which takes half the processor time; where it is not
    installed, the whole one.
    """
    return shutil.which("chromium-headless-shell") or browser_path()


class Server:
    """The app on a free port of this machine, in a thread; can be stopped and started again."""

    def __init__(self, files: Mapping[str, bytes], routes: Sequence[BaseRoute] = ()) -> None:
        self.files = dict(files)
        self.routes = routes
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}/"
        self.start()

    def app(self) -> ASGIApp:
        """What is served."""
        return create_app(self.files, self.routes)

    def start(self) -> None:
        self.running = Running(self.app(), self.port, lifespan="off")

    def stop(self) -> None:
        self.running.stop(at_once=True)


@contextmanager
def serving(files: Mapping[str, bytes], routes: Sequence[BaseRoute] = ()) -> Iterator[Server]:
    server = Server(files, routes)
    try:
        yield server
    finally:
        server.stop()


@pytest.fixture(scope="session")
def site() -> dict[str, bytes]:
    """Every file of the demo app."""
    return kept_site(phone.demo_packs())


@pytest.fixture(scope="session")
def server(site: dict[str, bytes]) -> Iterator[Server]:
    with serving(site, [offers()]) as running:
        yield running


@pytest.fixture(scope="session")
def playwright() -> Iterator[Playwright]:
    with sync_playwright() as started:
        yield started


@pytest.fixture(scope="session")
def browser(playwright: Playwright) -> Iterator[Browser]:
    running = playwright.chromium.launch(executable_path=light_browser_path(), args=ARGS)
    yield running
    running.close()
