"""A server of a test's own: on a free port of this machine, in a thread of this process."""

import socket
import threading
from typing import Any

import uvicorn
from starlette.types import ASGIApp

from tests.browser.slow_phone import served_late

_given: set[int] = set()


def free_port() -> int:
    """A port that nobody uses and none had here before: a browser keeps what is stored for one."""
    while True:
        with socket.socket() as free:
            free.bind(("127.0.0.1", 0))
            port = int(free.getsockname()[1])
        if port not in _given:
            _given.add(port)
            return port


class Running:
    """An application that is served from here on; more: what else uvicorn is told."""

    def __init__(self, app: ASGIApp, port: int, **more: Any) -> None:
        config = uvicorn.Config(
            served_late(app), port=port, log_level="warning", access_log=False, **more
        )
        self.server = uvicorn.Server(config)
        self.thread = threading.Thread(target=self.server.run)
        self.thread.start()
        while not self.server.started:
            self.thread.join(0.01)
            assert self.thread.is_alive(), "the server did not start"

    def stop(self, at_once: bool = False) -> None:
        """End it; at_once: without waiting for a browser's open connections."""
        self.server.should_exit = True
        self.server.force_exit = at_once
        self.thread.join()
