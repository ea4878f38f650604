"""The attack on connections, from other addresses of this machine and bounded."""

import contextlib
import os
import resource
import signal
import socket
import ssl
import subprocess
import sys
import time
from contextlib import closing
from http.client import HTTPResponse
from random import Random

import pytest

from identify.errors import UserError
from identify.keeping import ops
from identify.keeping.store import FILE, Store
from identify.server import limits
from identify.server.access import Notes
from identify.server.connections import listen, one_listener
from tests.keeping.samples import Writer
from tests.server.serving import KEPT, Serving, run, serving
from tests.server.test_tls import made
from tests.threaded_server import free_port

SILENT = 300
SLOW = b"GET / HTTP/1.1\r\nHost: 127.0.0.1\r\nX: "


SLACK = 60  # seconds that a busy machine may be late


def opened(port: int, source: str) -> socket.socket:
    return socket.create_connection(("127.0.0.1", port), 60, (source, 0))


def answer(port: int, source: str, path: str = "/api/offers") -> bytes:
    with closing(opened(port, source)) as line:
        line.sendall(
            f"GET {path} HTTP/1.1\r\nHost: 127.0.0.1\r\nConnection: close\r\n\r\n".encode()
        )
        out = b""
        while piece := line.recv(65536):
            out += piece
        return out


def ended(line: socket.socket, seconds: float) -> bool:
    """Whether the other end closed this within so many seconds."""
    line.settimeout(seconds)
    try:
        return line.recv(1) == b""
    except TimeoutError:
        return False
    except OSError:
        return True


@pytest.fixture
def running(tmp_path):
    with serving(tmp_path / "data") as served:
        yield served


def test_many_silent_connections_of_one_address_shut_nobody_else_out(running):
    lines = [opened(running.port, "127.0.0.1") for _ in range(SILENT)]
    try:
        for number, line in enumerate(lines):
            if number % 3 == 1:
                line.sendall(SLOW)  # a head that never ends
        assert answer(running.port, "127.0.0.2").startswith(b"HTTP/1.1 200")
        until = time.monotonic() + limits.IDLE + SLACK
        turned_away = sum(ended(line, 0.01) for line in lines)
        assert turned_away >= SILENT - limits.SHARE
        for line in lines:
            assert ended(line, max(0.1, until - time.monotonic())), "one is still open"
        assert answer(running.port, "127.0.0.1").startswith(b"HTTP/1.1 200")
    finally:
        for line in lines:
            line.close()
    log = running.log.read_text()
    assert "too many connections, 127.0.0.1" in log
    assert "Traceback" not in log
    assert len(log) < 5_000


def test_a_byte_now_and_then_does_not_keep_a_connection(running):
    with closing(opened(running.port, "127.0.0.1")) as line:
        line.sendall(SLOW)
        end = time.monotonic() + limits.IDLE + SLACK
        while time.monotonic() < end:
            try:
                line.sendall(b"x")
            except OSError:
                break
            if ended(line, 1):
                break
        else:
            pytest.fail("it was kept as long as bytes came")


def test_who_never_agrees_on_encryption_is_let_go_and_others_are_answered(tmp_path):
    pair = made(tmp_path / "certificate", 300)
    with serving(tmp_path / "data", "--cert", pair[0], "--key", pair[1]) as served:
        lines = [opened(served.port, "127.0.0.1") for _ in range(limits.SHARE)]
        hello = b"\x16\x03\x01\x02\x00\x01"  # the beginning of a ClientHello (RFC 8446, 5.1)
        for line in lines[::2]:
            line.sendall(hello)
        unchecked = ssl._create_unverified_context()
        with (
            closing(opened(served.port, "127.0.0.2")) as line,
            unchecked.wrap_socket(line) as safe,
        ):
            safe.sendall(b"GET /api/offers HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")
            assert safe.recv(65536).startswith(b"HTTP/1.1 200")
        until = time.monotonic() + limits.IDLE + SLACK
        for line in lines:
            with closing(line):
                assert ended(line, max(0.1, until - time.monotonic())), "one is still open"
        assert "Traceback" not in served.log.read_text()


def test_after_an_answer_the_next_request_has_its_time_too(running):
    with closing(opened(running.port, "127.0.0.1")) as line:
        for _ in range(2):
            line.sendall(b"GET /api/offers HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n")
            got = HTTPResponse(line)
            got.begin()
            assert got.status == 200
            got.read()
        assert ended(line, limits.IDLE + SLACK)


def test_a_full_table_of_files_costs_no_traceback(tmp_path):
    """With fewer files than connections that come, they are let go, and few lines say so."""
    few = "import resource, runpy, sys; resource.setrlimit(resource.RLIMIT_NOFILE, (48, 48)); "
    few += "sys.argv = sys.argv[1:]; runpy.run_module('identify', run_name='__main__')"
    port = free_port()
    log = tmp_path / "log.txt"
    with log.open("wb") as out:
        process = subprocess.Popen(
            [sys.executable, "-c", few, "identify", "serve", "--data", str(tmp_path / "data"),
             "--port", str(port)], stdout=out, stderr=out,
        )  # fmt: skip
    try:
        for _ in range(3000):
            try:  # an answer: a free port can connect to itself, and then nobody is there yet
                if answer(port, "127.0.0.1").startswith(b"HTTP/1.1 200"):
                    break
            except OSError:
                assert process.poll() is None, log.read_text()
                time.sleep(0.1)
        lines = [opened(port, f"127.0.0.{2 + number % 8}") for number in range(120)]
        time.sleep(3)
        for line in lines:
            line.close()
        for _ in range(300):
            try:
                if answer(port, "127.0.0.2").startswith(b"HTTP/1.1 200"):
                    break
            except OSError:
                pass
            time.sleep(0.2)
        else:
            pytest.fail("it did not come to itself")
    finally:
        process.send_signal(signal.SIGTERM)
        assert process.wait(60) == 0
    said = log.read_text()
    assert "Traceback" not in said
    assert len(said) < 5_000


def test_where_even_the_spare_place_is_taken_nothing_is_raised_but_that_nobody_comes():
    """As asyncio asks: what it hears must be no error that it logs."""
    soft, hard = resource.getrlimit(resource.RLIMIT_NOFILE)
    (one,) = listen("127.0.0.1", 0, Notes(time.monotonic), limits.SHARE)
    one.setblocking(False)
    one.listen()
    lines = [socket.socket() for _ in range(3)]
    for line in lines:
        line.connect(one.getsockname())
    taken: list[int] = []
    try:
        highest = max(map(int, os.listdir("/dev/fd")))
        resource.setrlimit(resource.RLIMIT_NOFILE, (highest + 8, hard))
        with contextlib.suppress(OSError):
            while True:
                taken.append(os.open(os.devnull, os.O_RDONLY))
        os.close(one._spare)
        taken.append(os.open(os.devnull, os.O_RDONLY))
        one._spare = None
        with pytest.raises(BlockingIOError):
            one.accept()
        os.close(taken.pop())
        os.close(taken.pop())
        came, _ = one.accept()
        came.close()
    finally:
        resource.setrlimit(resource.RLIMIT_NOFILE, (soft, hard))
        for file in taken:
            os.close(file)
        for line in (*lines, one):
            line.close()


def test_a_port_that_is_taken_is_told(running, tmp_path):
    said = run("serve", "--data", tmp_path / "other", "--port", running.port, program=KEPT)
    assert said.returncode == 1
    assert "Another program may use it" in said.stderr
    assert "Traceback" not in said.stderr


@pytest.mark.parametrize("begin", [one_listener, lambda *at: listen(*at, Notes(time.monotonic), 1)])
def test_an_address_of_another_machine_is_told(begin):
    with pytest.raises(UserError, match="is not an address of this machine"):
        begin("192.0.2.1", free_port())  # for documentation only (RFC 5737)


def test_the_demo_is_told_of_a_port_that_is_taken():
    with closing(one_listener("127.0.0.1", 0)) as taken:
        port = taken.getsockname()[1]
        with pytest.raises(UserError, match=f"port {port}.*Another program may use it"):
            one_listener("127.0.0.1", port)


def test_when_it_is_ended_everything_is_in_the_one_file(tmp_path):
    """Finding 9: after SIGTERM all of it lay in the log beside the file."""
    running = Serving(tmp_path / "data")
    new = Writer(Random(1)).operation("r1", {"notes": "kept"})
    with Store(tmp_path / "data") as store:
        ops.push(store, [new])
    running.process.send_signal(signal.SIGTERM)
    assert running.process.wait(60) == 0
    (tmp_path / "copy").mkdir()
    (tmp_path / "copy" / FILE).write_bytes((tmp_path / "data" / FILE).read_bytes())
    assert not (tmp_path / "data" / f"{FILE}-wal").exists()
    with Store(tmp_path / "copy") as store:
        assert ops.pull(store, "", 0, "", 9)["ops"] == [new]


def test_on_a_full_disk_it_starts_and_can_be_read(tmp_path):
    """No file may grow at all: as on a disk without a byte left (setrlimit(2), RLIMIT_FSIZE)."""
    new = Writer(Random(1)).operation("r1", {"notes": "kept"})
    with Store(tmp_path / "data") as store:
        ops.push(store, [new])
    full = "import resource, runpy, sys; resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0)); "
    full += "sys.argv = sys.argv[1:]; runpy.run_module('identify', run_name='__main__')"
    port = free_port()
    process = subprocess.Popen(
        [sys.executable, "-c", full, "identify", "serve", "--data", str(tmp_path / "data"),
         "--port", str(port)], stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True,
    )  # fmt: skip
    try:
        for _ in range(3000):
            try:
                opened(port, "127.0.0.1").close()
                break
            except OSError:
                assert process.poll() is None, process.stdout.read()
                time.sleep(0.1)
        assert answer(port, "127.0.0.1", "/").startswith(b"HTTP/1.1 200")
        assert answer(port, "127.0.0.1").startswith(b"HTTP/1.1 200")
    finally:
        process.send_signal(signal.SIGTERM)
        said = process.communicate(timeout=60)[0]
    assert "The disk of the server" in said
    assert "Traceback" not in said
