"""A whole sync with the collector's own server over HTTP: operations up and down, photos up."""

import hashlib
import io
import secrets
import tempfile
import time
from collections.abc import Callable, Iterator
from contextlib import closing
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

import orjson
from PIL import Image

from identify.core.types.operations import Operation
from identify.errors import UserError
from identify.keeping.photos import CHUNK
from identify.server.limits import PULLED, PUSHED
from tests.bench.own_server import own_server

SIDE = 900  # pixels: noise of that size makes a JPEG of about a photo's weight


def synced(operations: int, photos: int, tick: Callable[[], None]) -> dict[str, float]:
    """Seconds to push so many operations, pull them again, and send so many photos; all of it
    durable on the server's disk before it says so.
    """
    with (
        tempfile.TemporaryDirectory() as folder,
        own_server(Path(folder)) as server,
        # A connection that is kept, as a browser keeps it.
        closing(HTTPConnection("127.0.0.1", server.port, timeout=60)) as line,
    ):
        ask = Line(line, server.token("Bench"))
        written = operations_of(operations)
        began = time.perf_counter()
        for start in range(0, operations, PUSHED):
            batch = written[start : start + PUSHED]
            held = ask.sent("POST", "/api/push", orjson.dumps({"ops": batch}))["held"]
            if len(held) != len(batch):
                raise UserError("The server did not take every operation of the bench.")
            tick()
        pushed = time.perf_counter()
        epoch, after, last, got = "", 0, "", 0
        while True:
            asked = f"/api/pull?epoch={epoch}&after={after}&last={last}&limit={PULLED}"
            found = ask.sent("GET", asked)
            got += len(found["ops"])
            if not found["more"]:
                break
            if found["after"] <= after:
                raise UserError("The server did not go on with its answer.")
            epoch, after, last = found["epoch"], found["after"], found["last"]
        pulled = time.perf_counter()
        sent, sending = 0, 0.0
        for data in photos_of(photos):
            from_then = time.perf_counter()
            sent += sent_photo(ask, data)
            sending += time.perf_counter() - from_then
            tick()
    return {
        "operations": operations,
        "pulled": got,
        "photos": photos,
        "photo_bytes": sent,
        "push_s": pushed - began,
        "pull_s": pulled - pushed,
        "photos_s": sending,
    }


class Line:
    """Requests of one paired device."""

    def __init__(self, connection: HTTPConnection, token: str) -> None:
        self.connection = connection
        self.token = token

    def sent(
        self, method: str, path: str, body: bytes = b"", kind: str = "application/json"
    ) -> Any:
        """The answer's JSON; waits where it is told to. Raises UserError for any other trouble."""
        headers = {"Authorization": f"Bearer {self.token}", "Content-Type": kind}
        while True:
            self.connection.request(method, path, body or None, headers)
            answer = self.connection.getresponse()
            data = answer.read()
            if answer.status == 200:
                return orjson.loads(data)
            if answer.status != 429:
                raise UserError(
                    f"{method} {path} was answered {answer.status}: {data.decode()[:200]}"
                )
            time.sleep(float(answer.headers["Retry-After"]))


def operations_of(count: int) -> list[Operation]:
    """Notes and pieces as a phone would write them: three operations a record."""
    device = "d" + secrets.token_hex(8)
    out: list[Operation] = []
    for n in range(1, count + 1):
        first = (n - 1) % 3 == 0
        out.append(
            {
                "id": f"{device}.{n}",
                "record": f"r{device[1:]}{(n - 1) // 3}",
                "type": "piece",
                "parents": [] if first else [f"{device}.{n - 1}"],
                "wall": 1_700_000_000_000 + n,
                "count": 0,
                "time": "2026-05-01T10:00:00.000Z",
                "group": f"g{n}",
                "what": "Changed",
                "undoes": "",
                "fields": {"notes": f"Number {n}, with a few words about it", "boxed": "yes"},
            }
        )
    return out


def photos_of(count: int) -> Iterator[bytes]:
    """JPEG files, each another one."""
    for n in range(count):
        picture = Image.effect_noise((SIDE, SIDE), 40 + n % 50)
        out = io.BytesIO()
        picture.convert("RGB").save(out, "JPEG", quality=80)
        yield out.getvalue()


def sent_photo(ask: Line, data: bytes) -> int:
    sha = hashlib.sha256(data).hexdigest()
    for start in range(0, len(data), CHUNK):
        path = f"/api/photos/{sha}?from={start}&size={len(data)}"
        found = ask.sent("PUT", path, data[start : start + CHUNK], "image/jpeg")
    if not found["whole"]:
        raise UserError("The server did not take a photo of the bench.")
    return len(data)
