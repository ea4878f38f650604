"""Another host: over https, on a port of its own, answering what a test says it answers."""

import ssl
import threading
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import ClassVar

from identify.server import authority
from identify.server.hosts import checked

Sending = Callable[[BaseHTTPRequestHandler], None]
TO_ALL = {"Access-Control-Allow-Origin": "*"}


class Elsewhere:
    """A host whose answers are put here by their paths: bytes, a status, or what sends it."""

    def __init__(self) -> None:
        self.url = ""
        self.answers: dict[str, bytes | int | Sending] = {}
        self.headers = dict(TO_ALL)  # of every answer
        self.asked: list[tuple[str, dict[str, str]]] = []

    def publish(self, folder: Path) -> None:
        """Answer with the files of a folder, and with nothing else."""
        self.answers = {
            f"/{path.relative_to(folder).as_posix()}": path.read_bytes()
            for path in folder.rglob("*")
            if path.is_file()
        }


class _Answering(BaseHTTPRequestHandler):
    host: ClassVar[Elsewhere]

    def log_message(self, *_: object) -> None:
        """Nothing on the terminal."""

    def do_GET(self) -> None:
        path = self.path.split("?")[0]
        self.host.asked.append((self.path, {k.lower(): v for k, v in self.headers.items()}))
        answer = self.host.answers.get(path, 404)
        if callable(answer):
            answer(self)
            return
        body = b"" if isinstance(answer, int) else answer
        self.send_response(answer if isinstance(answer, int) else 200)
        for name, value in self.host.headers.items():
            self.send_header(name, value)
        self.send_header("Content-Type", "text/plain")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body if self.command == "GET" else b"")

    def do_HEAD(self) -> None:
        self.do_GET()


@contextmanager
def elsewhere(folder: Path) -> Iterator[Elsewhere]:
    """Such a host; `folder`: for its certificate, which browsers have to be told to trust."""
    authority.make(folder / "made", checked(["127.0.0.1"]), datetime.now(UTC))
    context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
    context.load_cert_chain(folder / "made" / "server.crt", folder / "made" / "server.key")
    host = Elsewhere()
    answering = type("Answering", (_Answering,), {"host": host})
    server = ThreadingHTTPServer(("127.0.0.1", 0), answering)
    server.socket = context.wrap_socket(server.socket, server_side=True)
    server.handle_error = lambda *_: None  # type: ignore[method-assign]
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    host.url = f"https://127.0.0.1:{server.server_port}/"
    try:
        yield host
    finally:
        server.shutdown()
        server.server_close()
        thread.join()
