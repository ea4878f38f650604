"""A server of a test's own: on a free port of this machine, in a thread of this process."""

import random
import socket
import threading
from typing import Any

import uvicorn
from starlette.types import ASGIApp

from tests.browser.slow_phone import served_late

_given: set[int] = set()


PORTS = range(11_000, 32_000)  # below those that a system gives to whoever connects to somebody
_chance = random.SystemRandom()  # processes that share the tests, and Hypothesis, seed the other


def free_port() -> int:
    """A port that nobody uses and none had here before: a browser keeps what is stored for one.

    Nobody is given it by chance before it is used, and nobody who looks whether somebody is there
    already is connected to himself.
    """
    while True:
        port = _chance.choice(PORTS)
        if port in _given:
            continue
        with socket.socket() as free:
            try:
                free.bind(("127.0.0.1", port))
            except OSError:
                continue
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
