"""2,500 hostile requests and files against `serve` in a process of its own.

Other requests: TEST_SEED=7 python -m pytest tests/server/test_hostile.py
"""

import http.client
import os
import socket
from collections import Counter
from collections.abc import Iterator
from pathlib import Path
from random import Random

import orjson
import pytest

from identify import keeping
from identify.keeping import devices
from identify.server.own_server import utc_now
from tests.keeping.samples import picture, sha
from tests.keeping.store_contents import records
from tests.server.hostile import Request, heavy, requests, torn
from tests.server.own_server import Pen
from tests.server.serving import Serving

pytestmark = pytest.mark.heavy

SEED = int(os.environ.get("TEST_SEED", "1"))
ASKED = 2100
TORN = 400
MOST_MEMORY = 300 * 1024  # KB


class Sender:
    """A paired device that means no good, or well: it depends on what it sends."""

    def __init__(self, running: Serving, token: str) -> None:
        self.running = running
        self.token = token
        self.line = self._line()

    def _line(self) -> http.client.HTTPConnection:
        return http.client.HTTPConnection("127.0.0.1", self.running.port, timeout=60)

    def send(self, one: Request) -> tuple[int, str, bytes]:
        """Status, type and body of the answer; 0 where the line was cut."""
        try:
            # exactly these characters, where http.client would refuse some
            self.line.putrequest("X", "/", skip_host=True, skip_accept_encoding=True)
            self.line._buffer[0] = f"{one.method} {one.path} HTTP/1.1".encode("latin-1")
            self.line._method = one.method
            self.line.putheader("Host", "127.0.0.1")
            self.line.putheader("Authorization", f"Bearer {self.token}")
            self.line.putheader("Content-Type", one.kind)
            self.line.putheader("Content-Length", str(len(one.body)))
            self.line.endheaders(one.body)
            answer = self.line.getresponse()
            got = answer.status, answer.headers.get("Content-Type", ""), answer.read()
            if answer.will_close:
                self.line.close()
            return got
        except (http.client.HTTPException, OSError):
            self.line.close()
            self.line = self._line()
            return 0, "", b""

    def close(self) -> None:
        self.line.close()


def snapshot(folder: Path, but: list[Path]) -> dict[str, bytes | None]:
    """Every file and folder with what is in it, but for those beneath some folders."""
    return {
        str(path): path.read_bytes() if path.is_file() else None
        for path in sorted(folder.rglob("*"))
        if not any(path.is_relative_to(one) for one in but)
    }


@pytest.fixture(scope="module")
def world(tmp_path_factory) -> Path:
    """A folder in which a server lives with its home, its temporary files and other people's."""
    folder = tmp_path_factory.mktemp("world")
    for name in ("home", "tmp", "work/deep"):
        (folder / name).mkdir(parents=True)
    (folder / "home" / "letter.txt").write_text("Dear all")
    return folder


@pytest.fixture(scope="module")
def running(world) -> Iterator[Serving]:
    lives = {
        "HOME": str(world / "home"),
        "TMPDIR": str(world / "tmp"),
        "PYTHONDONTWRITEBYTECODE": "1",
    }
    running = Serving(world / "work" / "deep" / "data", env=lives, cwd=world / "tmp")
    yield running
    running.stop()


def new_sender(running: Serving) -> Sender:
    with keeping.open(running.data) as store:
        secret = devices.new_pairing(store, utc_now())["secret"]
        token = devices.pair(store, utc_now(), secret=secret)["token"]
    return Sender(running, token)


def in_a_sentence(kind: str, body: bytes) -> bool:
    """Whether a refusal says why."""
    if kind != "application/json":
        return kind.startswith("text/plain") and body.startswith(b"There is no page")
    told = orjson.loads(body)
    why = told.get("error")
    return isinstance(why, str) and why[-1] in ".:)" and "Traceback" not in why


def test_whatever_is_sent_is_answered_and_nothing_is_harmed(world, running):
    backups = running.data.with_name("data-backups")
    good = new_sender(running)
    kept = Pen().writes("rkept", notes="must stay")
    photo = picture(77)
    push = Request("POST", "/api/push", "application/json", orjson.dumps({"ops": [kept]}))
    put = Request("PUT", f"/api/photos/{sha(photo)}?from=0&size={len(photo)}", "image/jpeg", photo)
    assert orjson.loads(good.send(push)[2])["held"] == [kept["id"]]
    assert orjson.loads(good.send(put)[2])["whole"]
    good.close()
    bad = new_sender(running)
    ours = [running.data, backups, running.said, running.log]
    before = snapshot(world, ours)
    chance = Random(SEED)
    statuses: Counter[int] = Counter()
    for n, one in enumerate([*requests(chance, ASKED), *heavy(chance)]):
        status, kind, body = bad.send(one)
        asked = f"{one.method} {one.path[:200]} {one.body[:200]!r}"
        said = f"seed {SEED}, request {n}: {asked} -> {status} {body[:300]!r}"
        statuses[status] += 1
        assert status < 500, said
        if status == 429:  # a pairing is tried a few times only
            assert one.path == "/api/pair", said
        if status >= 400 and body and kind != "text/plain; charset=utf-8":
            assert in_a_sentence(kind, body), said
    for n in range(TORN):
        sent = torn(chance, bad.token)
        status = tear(running, sent)
        assert status < 500, f"seed {SEED}, torn request {n}: {sent[:300]!r} -> {status}"
        statuses[status] += 1
    print(
        f"\nseed {SEED}: {dict(sorted(statuses.items()))}, most memory {running.most_memory()} KB"
    )
    assert {200, 400, 404, 405, 415} <= set(statuses)
    assert statuses[0] < TORN  # lines are cut for what is hardly HTTP only
    # the good device finds everything as it was
    good = new_sender(running)
    assert orjson.loads(good.send(push)[2])["held"] == [kept["id"]]
    assert good.send(Request("GET", f"/api/photos/{sha(photo)}", "", b""))[2] == photo
    good.close()
    bad.close()
    log = running.log.read_text()
    assert "unexpected" not in log
    assert "Traceback" not in log
    assert bad.token not in log
    assert snapshot(world, ours) == before
    assert running.most_memory() < MOST_MEMORY
    only_pictures(running.data)
    with keeping.open(running.data) as store:  # and what was taken in comes to records
        assert "rkept" in {one["id"] for one in records(store)}


def tear(running: Serving, sent: bytes) -> int:
    """The status of the answer to bytes on a line that is then shut; 0 for none."""
    with socket.create_connection(("127.0.0.1", running.port), timeout=60) as line:
        try:
            line.sendall(sent)
            line.shutdown(socket.SHUT_WR)
            got = line.recv(4096)
        except OSError:
            return 0
    parts = got.split(b" ", 2)
    return int(parts[1]) if len(parts) > 2 and parts[1].isdigit() else 0


def only_pictures(data: Path) -> None:
    """Of all files that came, those that stayed are photos without a word on where or when."""
    files = [path for path in (data / "photos").rglob("*") if path.is_file()]
    assert files
    for path in files:
        content = path.read_bytes()
        assert sha(content) == path.stem
        assert content.startswith(b"\xff\xd8")
        assert content.endswith(b"\xff\xd9")
        for hidden in (b"Exif", b"ns.adobe.com", b"8BIM", b"51.5 N", b"<script", b"PK\3\4"):
            assert hidden not in content
