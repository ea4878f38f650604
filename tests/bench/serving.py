"""The app on a free port of this machine, in a thread, and a Chromium to open it with."""

import shutil
import threading
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from typing import Any

import uvicorn
from starlette.routing import BaseRoute

from identify.server.app import create_app
from tests.threaded_server import free_port

BROWSERS = ("chromium", "chromium-browser", "google-chrome-stable", "google-chrome")
ARGS = ["--no-sandbox", "--disable-background-networking", "--disable-component-update",
        "--disable-sync", "--disable-quic", "--no-first-run"]  # fmt: skip
PHONE: dict[str, Any] = {
    "viewport": {"width": 360, "height": 740},
    "device_scale_factor": 2,
    "is_mobile": True,
    "has_touch": True,
}


def browser_path() -> str | None:
    """A Chromium on the PATH, if there is one."""
    return next((path for name in BROWSERS if (path := shutil.which(name))), None)


class Site:
    """These files served on a port of this machine."""

    def __init__(self, files: Mapping[str, bytes], routes: Sequence[BaseRoute] = ()) -> None:
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}/"
        config = uvicorn.Config(
            create_app(files, routes),
            port=self.port,
            log_level="warning",
            access_log=False,
            lifespan="off",
        )
        self.server = uvicorn.Server(config)
        self.thread = threading.Thread(target=self.server.run, daemon=True)
        self.thread.start()
        while not self.server.started:
            self.thread.join(0.01)
            if not self.thread.is_alive():
                raise OSError(f"The server to measure did not start on port {self.port}.")

    def stop(self) -> None:
        """End it; open connections are not waited for."""
        self.server.should_exit = True
        self.server.force_exit = True
        self.thread.join()


@contextmanager
def served(files: Mapping[str, bytes]) -> Iterator[Site]:
    """The files served for as long as this lasts."""
    site = Site(files)
    try:
        yield site
    finally:
        site.stop()


@contextmanager
def kept_browser(playwright: Any, folder: Path) -> Iterator[Any]:
    """A browser whose storage is a folder, with a small touch screen."""
    context = playwright.chromium.launch_persistent_context(
        folder, executable_path=browser_path(), args=ARGS, **PHONE
    )
    try:
        yield context
    finally:
        context.close()


def slowed(page: Any, times: float) -> None:
    """Slow the page's CPU down, by the browser's own means (Chrome DevTools Protocol)."""
    session = page.context.new_cdp_session(page)
    session.send("Emulation.setCPUThrottlingRate", {"rate": times})
