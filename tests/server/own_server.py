"""The collector's own server for tests: real HTTP to a real store, stopped and started at will."""

import http.client
import secrets
import ssl
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any, NamedTuple

import orjson
from starlette.applications import Starlette

from identify import keeping
from identify.keeping import devices
from identify.server.own_server import own_app
from identify.server.tls import Tls
from tests.threaded_server import Running, free_port

FILES = {"index.html": b"<!doctype html><title>Here</title>", "app.js": b"// nothing"}


class Answer(NamedTuple):
    status: int
    headers: http.client.HTTPMessage
    body: bytes

    @property
    def json(self) -> Any:
        return orjson.loads(self.body)


class Times:
    """The time that a server is told: it stands still until it is moved on."""

    def __init__(self) -> None:
        self.moment = datetime(2026, 5, 1, 12, 0, tzinfo=UTC)

    def pass_(self, **much: float) -> None:
        self.moment += timedelta(**much)

    def now(self) -> datetime:
        return self.moment

    def seconds(self) -> float:
        return self.moment.timestamp()


class Pen:
    """A device that writes operations, each knowing those it wrote on the same record before."""

    def __init__(self, device: str = "") -> None:
        self.device = device or "d" + secrets.token_hex(8)
        self.count = 0
        self.heads: dict[str, list[str]] = {}

    def writes(self, record: str, **fields: Any) -> dict[str, Any]:
        self.count += 1
        ident = f"{self.device}.{self.count}"
        parents, self.heads[record] = self.heads.get(record, []), [ident]
        return {
            "id": ident,
            "record": record,
            "type": "piece",
            "parents": parents,
            "wall": 1_700_000_000_000 + self.count,
            "count": 0,
            "time": "2026-05-01T10:00:00.000Z",
            "group": f"g{self.count}",
            "what": "Changed",
            "undoes": "",
            "fields": fields,
        }


class OwnServer:
    """`serve` over a folder, in a thread of this process. `app` may be changed before start()."""

    def __init__(self, data: Path, files: Mapping[str, bytes] = FILES, **more: Any) -> None:
        self.data = data
        self.times = Times()
        certificate: tuple[Path, Path] | None = more.pop("certificate", None)
        self.tls = Tls(*certificate, own=more.pop("own", None)) if certificate else None
        self.port = free_port()
        scheme = "https" if self.tls else "http"
        self.url = f"{scheme}://127.0.0.1:{self.port}/"
        self.store = keeping.open(data)
        told = {
            "backup_folder": data.with_name("backups"),
            "public": self.url,
            "hosts": ["127.0.0.1", "localhost", "::1"],
            "now": self.times.now,
            "clock": self.times.seconds,
            "tls": self.tls,
        }
        self.app: Starlette = own_app(files, self.store, **told | more)

    def start(self) -> None:
        context = self.tls.context if self.tls else None
        self.running = Running(
            self.app,
            self.port,
            ssl_context_factory=(lambda *_: context) if context else None,
            lifespan="on",
            server_header=False,
            timeout_graceful_shutdown=1,  # a browser keeps its connections open
        )

    def stop(self) -> None:
        self.running.stop()
        self.store.close()

    def ask(
        self,
        method: str,
        path: str,
        body: bytes | None = None,
        token: str = "",
        **headers: str,
    ) -> Answer:
        """One request as it is: underscores in names of headers stand for hyphens."""
        if self.tls:
            trusting = ssl._create_unverified_context()
            connection: http.client.HTTPConnection = http.client.HTTPSConnection(
                "127.0.0.1", self.port, context=trusting, timeout=30
            )
        else:
            connection = http.client.HTTPConnection("127.0.0.1", self.port, timeout=30)
        sent = {name.replace("_", "-"): value for name, value in headers.items()}
        if token:
            sent["Authorization"] = f"Bearer {token}"
        try:
            connection.request(method, path, body, sent)
            answer = connection.getresponse()
            return Answer(answer.status, answer.headers, answer.read())
        finally:
            connection.close()

    def post(self, path: str, value: Any, token: str = "", **headers: str) -> Answer:
        headers = {"Content_Type": "application/json"} | headers
        return self.ask("POST", path, orjson.dumps(value), token, **headers)

    def paired(self, name: str = "Phone") -> str:
        """The token of a newly paired device."""
        secret = devices.new_pairing(self.store, self.times.now())["secret"]
        found = devices.pair(self.store, self.times.now(), secret=secret, name=name)
        return found["token"]


@contextmanager
def own_server(data: Path, **more: Any) -> Iterator[OwnServer]:
    server = OwnServer(data, **more)
    server.start()
    try:
        yield server
    finally:
        server.stop()
