"""Ten devices at once against the collector's own server as a process, while a backup is made;
beside it, as the floor, SQLite alone writing the same bytes.
"""

import os
import secrets
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager
from dataclasses import dataclass, field
from datetime import UTC, datetime
from http.client import HTTPConnection
from pathlib import Path
from typing import Any

import orjson

from identify import keeping
from identify.errors import UserError
from identify.keeping import devices
from identify.server.limits import PULLED
from identify.shipped import ROOT
from tests.bench.processor import spent
from tests.bench.syncing import Line, operations_of, photos_of, sent_photo
from tests.bench.table import number
from tests.bench.thread_time import most_held
from tests.threaded_server import free_port

DEVICES = 10
BATCH = 200  # operations that a phone sends at once
STARTING = 60  # seconds that the server may take to answer first


@dataclass
class Server:
    """The command `serve`, running."""

    data: Path
    port: int
    pid: int


@dataclass
class Work:
    """What ten devices did, all together."""

    seconds: float = 0.0
    processor: float = 0.0  # milliseconds of the server's
    asked: list[float] = field(default_factory=list)  # milliseconds of each request


def ten_devices(operations: int, photos: int) -> dict[str, Any]:
    """Pushes, pulls and photos of ten devices at once, with a backup under way, and the floor."""
    batches = [list(_batched(operations_of(operations // DEVICES))) for _ in range(DEVICES)]
    pictures = list(photos_of(photos))
    with tempfile.TemporaryDirectory() as text:
        folder = Path(text)
        with serving(folder / "data") as server:
            tokens = [_paired(server.data, f"Device {n}") for n in range(DEVICES)]
            push = _all_at_once(
                server, tokens, lambda line, n: (_push(line, b) for b in batches[n])
            )
            sent = _all_at_once(
                server, tokens, lambda line, n: (_send(line, p) for p in pictures[n::DEVICES])
            )
            backup = threading.Thread(target=_backup, args=(server.data, folder / "backups"))
            backup.start()
            pull = _all_at_once(server, tokens, lambda line, _: _pull(line))
            backup.join()
            memory = most_held(server.pid)
        floor = _floor(folder / "floor.db", [b for each in batches for b in each])
    count = operations // DEVICES * DEVICES
    return {
        "devices": DEVICES,
        "operations": count,
        "photos": photos,
        "memory_mb": memory,
        "push": _told(push, count),
        "photos_up": _told(sent, max(1, photos)),
        "pull": _told(pull, count * DEVICES),
        "floor": {"a_second": count / floor[0], "processor_each": floor[1] / count},
    }


def _batched(written: list[Any]) -> Iterator[bytes]:
    for start in range(0, len(written), BATCH):
        yield orjson.dumps({"ops": written[start : start + BATCH]})


@contextmanager
def serving(data: Path) -> Iterator[Server]:
    """The server as a person starts it."""
    keeping.open(data).close()
    port = free_port()
    process = subprocess.Popen(
        [sys.executable, "-m", "identify", "serve", "--data", str(data), "--port", str(port)],
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
        cwd=ROOT,
    )
    try:
        for _ in range(10 * STARTING):
            with closing(HTTPConnection("127.0.0.1", port, timeout=5)) as line:
                try:
                    line.request("GET", "/api/offers")
                    line.getresponse().read()
                    break
                except OSError:
                    time.sleep(0.1)
        else:
            raise UserError("The server to measure did not start.")
        yield Server(data, port, process.pid)
    finally:
        process.terminate()
        process.wait()


def _paired(data: Path, name: str) -> str:
    with keeping.open(data) as store:
        now = datetime.now(UTC)
        secret = devices.new_pairing(store, now)["secret"]
        return devices.pair(store, now, secret=secret, name=name)["token"]


def _all_at_once(server: Server, tokens: list[str], steps: Any) -> Work:
    """`steps(line, n)`: what device n does, a request each time it is asked for the next."""
    found = Work()
    troubles: list[BaseException] = []

    def device(n: int) -> None:
        try:
            with closing(HTTPConnection("127.0.0.1", server.port, timeout=600)) as connection:
                todo = steps(Line(connection, tokens[n]), n)
                while True:
                    began = time.perf_counter()
                    if next(todo, None) is None:
                        return
                    found.asked.append(1000 * (time.perf_counter() - began))
        except BaseException as trouble:  # told by the thread that waits
            troubles.append(trouble)

    before, began = spent(server.pid), time.perf_counter()
    threads = [threading.Thread(target=device, args=(n,)) for n in range(DEVICES)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    if troubles:
        raise troubles[0]
    found.seconds = time.perf_counter() - began
    found.processor = spent(server.pid) - before
    return found


def _push(line: Line, body: bytes) -> bool:
    answer = line.sent("POST", "/api/push", body)
    if answer["refused"] or answer["forked"]:
        raise UserError("The server did not take every operation of the bench.")
    return True


def _send(line: Line, data: bytes) -> bool:
    return sent_photo(line, data) > 0


def _pull(line: Line) -> Iterator[bool]:
    epoch, after, last, more = "", 0, "", True
    while more:
        asked = f"/api/pull?epoch={epoch}&after={after}&last={last}&limit={PULLED}"
        found = line.sent("GET", asked)
        epoch, after, last, more = (found[name] for name in ("epoch", "after", "last", "more"))
        yield True


def _backup(data: Path, folder: Path) -> None:
    command = [sys.executable, "-m", "identify", "backup", "--data", str(data), "--to", str(folder)]
    subprocess.run(command, cwd=ROOT, check=True, stdout=subprocess.DEVNULL)


def _floor(file: Path, batches: list[bytes]) -> tuple[float, float]:
    """Seconds, and milliseconds of processor, for SQLite to write the same operations as text, a
    batch a transaction, each safe on the disk.
    """
    rows = [
        [(secrets.token_hex(8), orjson.dumps(one)) for one in orjson.loads(batch)["ops"]]
        for batch in batches
    ]
    with closing(sqlite3.connect(file, isolation_level=None)) as db:
        db.execute("pragma journal_mode = wal")
        db.execute("pragma synchronous = full")
        db.execute("create table ops (seq integer primary key, id text unique, content text)")
        before, began = time.process_time(), time.perf_counter()
        for batch in rows:
            db.execute("begin immediate")
            db.executemany("insert into ops (id, content) values (?, ?)", batch)
            db.execute("commit")
        return time.perf_counter() - began, 1000 * (time.process_time() - before)


def _told(work: Work, count: int) -> dict[str, float]:
    times = sorted(work.asked)
    return {
        "a_second": count / work.seconds,
        "processor_each": work.processor / count,
        "requests": len(times),
        "median": statistics.median(times),
        "slowest_of_100": times[int(0.99 * (len(times) - 1))],
        "slowest": times[-1],
    }


def devices_table(found: dict[str, Any]) -> str:
    """A line for each sort of work."""
    lines = [
        f"{found['devices']} devices at once, {found['operations']} operations, "
        f"{found['photos']} photos, {os.cpu_count()} processors; the server held "
        f"{number(found['memory_mb'])} MB at most"
    ]
    for name, what in (
        ("push", "operations up"),
        ("photos_up", "photos up"),
        ("pull", "operations down, a backup under way"),
    ):
        each = found[name]
        lines.append(
            f"{what}: {number(each['a_second'])} a second, "
            f"{number(1000 * each['processor_each'])} µs of processor each; of "
            f"{each['requests']} requests the median took {number(each['median'])} ms, 99 of 100 "
            f"at most {number(each['slowest_of_100'])}, the slowest {number(each['slowest'])}"
        )
    floor, push = found["floor"], found["push"]
    lines.append(
        f"SQLite alone: {number(floor['a_second'])} a second, "
        f"{number(1000 * floor['processor_each'])} µs of processor each; the server uses "
        f"{number(push['processor_each'] / floor['processor_each'])} times that"
    )
    return "\n".join(lines)
