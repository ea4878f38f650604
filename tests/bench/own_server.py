"""The collector's own server for the bench: a real store in a folder, on a free port."""

import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

import uvicorn

from identify import keeping
from identify.keeping import devices
from identify.server.own_server import own_app
from identify.server.pairing import link
from tests.threaded_server import free_port

PAGE = {"index.html": b"<!doctype html>"}


@dataclass
class OwnServer:
    """A server that runs."""

    store: keeping.Store
    port: int

    @property
    def url(self) -> str:
        """Its address."""
        return f"http://127.0.0.1:{self.port}/"

    def secret(self) -> str:
        """What lets one device in."""
        return devices.new_pairing(self.store, datetime.now(UTC))["secret"]

    def link(self) -> str:
        """A pairing link."""
        return link(self.url, self.secret())

    def token(self, name: str) -> str:
        """The token of a device that is paired now."""
        found = devices.pair(self.store, datetime.now(UTC), secret=self.secret(), name=name)
        return found["token"]


@contextmanager
def own_server(folder: Path, files: Mapping[str, bytes] = PAGE) -> Iterator[OwnServer]:
    """An empty one, for as long as this lasts."""
    port = free_port()
    store = keeping.open(folder / "data")
    running = OwnServer(store, port)
    app = own_app(
        files,
        store,
        backup_folder=folder / "backups",
        public=running.url,
        hosts=["127.0.0.1"],
    )
    config = uvicorn.Config(app, port=port, log_level="warning", access_log=False)
    server = uvicorn.Server(config)
    server.config.timeout_graceful_shutdown = 1
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    while not server.started and thread.is_alive():
        thread.join(0.01)
    try:
        yield running
    finally:
        server.should_exit = True
        thread.join()
        store.close()
