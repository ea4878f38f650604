"""How much the server takes from one caller."""

import socket

from hypothesis import given
from hypothesis import strategies as st

from identify.server import limits
from identify.server.buckets import Buckets, caller_of
from identify.server.limits import MOST_CALLERS, Rate, most_bytes
from tests.server.own_server import OwnServer


class Clock:
    def __init__(self) -> None:
        self.seconds = 1000.0

    def __call__(self) -> float:
        return self.seconds


@given(
    st.integers(1, 20),
    st.floats(0.01, 10),
    st.lists(st.floats(0, 30), min_size=1, max_size=60),
)
def test_no_more_than_the_bucket_holds_and_what_ran_in_since(size, rate, pauses):
    clock = Clock()
    buckets = Buckets(Rate(size, rate), clock)
    taken = 0
    for pause in pauses:
        clock.seconds += pause
        wait = buckets.wait("someone")
        taken += wait == 0
        assert taken <= size + (clock.seconds - 1000) * rate + 1e-6
        if wait > 0:
            clock.seconds += wait + 1e-6
            assert buckets.wait("someone") == 0  # the wait that was said is enough
            taken += 1


def test_nobody_waits_for_another(own):
    buckets = Buckets(Rate(1, 1), Clock())
    assert [buckets.wait(who) for who in ("a", "b", "a", "b")] == [0, 0, 1, 1]


def test_no_more_callers_are_remembered_than_there_is_room_for():
    clock = Clock()
    buckets = Buckets(Rate(2, 1), clock)
    for n in range(MOST_CALLERS + 50):
        assert buckets.wait(str(n)) == 0
        assert len(buckets._left) <= MOST_CALLERS
    clock.seconds += 60
    assert buckets.wait("one more") == 0
    assert len(buckets._left) == 1  # all the others are as good as new


def test_a_caller_is_an_address_or_the_network_that_one_machine_may_choose_from():
    def called(client: object) -> str:
        return caller_of({"type": "http", "client": client})

    assert called(("192.168.1.7", 1)) == "192.168.1.7"
    assert called(("::ffff:192.168.1.7", 1)) == "192.168.1.7"
    assert called(("2001:db8:1:2:3:4:5:6", 1)) == "2001:db8:1:2::/64"
    assert called(("fe80::1%eth0", 1)) == "fe80::/64"
    assert called(None) == called(("a\nb", 1)) == "unknown"


def test_strangers_are_made_to_wait_and_devices_are_not(own):
    statuses = [own.ask("GET", "/api/pull").status for _ in range(70)]
    assert statuses == [401] * 60 + [429] * 10
    waiting = own.ask("GET", "/api/pull", token="guess")
    assert waiting.status == 429
    assert int(waiting.headers["Retry-After"]) >= 1
    token = own.paired()
    assert own.ask("GET", "/api/pull", token=token).status == 200
    own.times.pass_(seconds=int(waiting.headers["Retry-After"]))
    assert own.ask("GET", "/api/pull").status == 401


def test_a_device_gone_wild_is_made_to_wait_and_no_other(own):
    token, other = own.paired(), own.paired()
    for _ in range(5):
        assert own.post("/api/pairing", {}, token).status == 200
    refused = own.post("/api/pairing", {}, token)
    assert refused.status == 429
    assert "Wait" in refused.json["error"]
    assert own.post("/api/pairing", {}, other).status == 200
    assert own.ask("GET", "/api/pull", token=token).status == 200


def sent_slowly(own: OwnServer, head: str, chunks: list[bytes]) -> bytes:
    """A request part by part; what came back, whether or not all could be sent."""
    with socket.create_connection(("127.0.0.1", own.port), timeout=20) as line:
        line.sendall(f"{head}\r\nHost: 127.0.0.1\r\n".encode() + b"\r\n")
        try:
            for chunk in chunks:
                line.sendall(chunk)
        except (BrokenPipeError, ConnectionResetError):
            pass
        got = b""
        try:
            while more := line.recv(65536):
                got += more
        except ConnectionResetError:
            pass
        return got


def head(path: str, token: str, *more: str) -> str:
    lines = [f"POST {path} HTTP/1.1", f"Authorization: Bearer {token}"]
    return "\r\n".join([*lines, "Content-Type: application/json", "Connection: close", *more])


def test_what_is_too_long_is_not_even_read(own):
    got = sent_slowly(own, head("/api/push", own.paired(), "Content-Length: 20000001"), [])
    assert got.startswith(b"HTTP/1.1 413")
    assert b"More than 2 MB" in got


def test_who_sends_somewhat_too_much_hears_why(own):
    answer = own.ask("POST", "/api/push", b" " * 7_000_000, own.paired())
    assert answer.status == 413
    assert "Send less at a time" in answer.json["error"]


def test_what_grows_too_long_while_it_comes_is_cut_off(own):
    chunk = b"10000\r\n" + b" " * 0x10000 + b"\r\n"
    told = head("/api/push", own.paired(), "Transfer-Encoding: chunked")
    got = sent_slowly(own, told, [chunk] * 40)
    assert got.startswith(b"HTTP/1.1 413")


def test_who_falls_silent_is_not_waited_for(own, monkeypatch):
    monkeypatch.setattr(limits, "SILENT", 0.2)
    got = sent_slowly(own, head("/api/push", own.paired(), "Content-Length: 10"), [b'{"o'])
    assert got.startswith(b"HTTP/1.1 408")
    assert b"Send it again" in got


def test_lengths_that_contradict_each_other_are_refused(own):
    """Request smuggling: two lengths, or a length beside chunks (RFC 9112, 6.3)."""
    token = own.paired()
    body = b'{"ops":[]}'
    both = head("/api/push", token, "Content-Length: 10", "Content-Length: 11")
    assert sent_slowly(own, both, [body]).startswith(b"HTTP/1.1 400")
    for length in ("-1", "1e3", "0x10", "9" * 30, "+1"):
        told = head("/api/push", token, f"Content-Length: {length}")
        assert sent_slowly(own, told, []).split(b" ")[1] in (b"400", b"413"), length
    smuggled = b"0\r\n\r\nGET /api/devices HTTP/1.1\r\nHost: 127.0.0.1\r\n\r\n"
    mixed = head("/api/push", token, "Content-Length: 5", "Transfer-Encoding: chunked")
    answer = sent_slowly(own, mixed, [smuggled])
    assert answer.count(b"HTTP/1.1") == 1
    assert answer.startswith(b"HTTP/1.1 400")
    assert b"\r\nconnection: close\r\n" in answer.lower()


def test_every_address_has_its_limit():
    assert most_bytes("/api/push") == 2_000_000
    assert most_bytes("/api/photos/" + "a" * 64) == 256 * 1024
    assert most_bytes("/api/photos/missing") == 64 * 1024
    assert most_bytes("/api/pair") == most_bytes("/anything") == 64 * 1024


def test_five_wrong_codes_end_the_code_whatever_comes_then_and_not_the_link(own):
    told = own.post("/api/pairing", {}, own.paired()).json
    wrong = "0" * 8 if told["code"] != "0" * 8 else "1" * 8
    for _ in range(5):
        answer = own.post("/api/pair", {"code": wrong})
        assert answer.status == 400
        assert wrong not in answer.json["error"]
    assert own.post("/api/pair", {"code": told["code"]}).status == 400
    assert own.post("/api/pair", {"secret": told["url"].partition("=")[2]}).status == 200


def test_pairing_is_tried_a_few_times_only(own):
    statuses = [own.post("/api/pair", {"code": "0" * 8}).status for _ in range(12)]
    assert statuses == [400] * 10 + [429] * 2
