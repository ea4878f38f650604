"""Who may ask what of the collector's own server."""

import re

import pytest
from starlette.routing import Route

from identify.server.access import OPEN, name_of
from identify.server.own_server import METHODS
from tests.server.own_server import OwnServer, own_server

SHA = "a" * 64


def addresses(own: OwnServer) -> list[tuple[str, str]]:
    """Every method and address under /api/, with something put in for what is in braces."""
    found = []
    for route in own.app.routes:
        assert isinstance(route, Route)  # else this walk would miss what is mounted
        path = re.sub(r"\{\w+(:path)?\}", SHA, route.path)
        if path.startswith("/api"):
            found += [(method, path) for method in sorted(route.methods or METHODS)]
    return found


def test_nothing_is_answered_without_a_paired_device(own):
    walked = addresses(own)
    assert len({path for _, path in walked}) == 15  # all that there are
    for method, path in walked:
        for token in ("", "x" * 43, "ü"):
            if path in OPEN:
                continue
            own.times.pass_(minutes=1)
            answer = own.ask(method, path, b"{}" if method != "GET" else None, token)
            assert answer.status == 401, (method, path)
            if method != "HEAD":
                assert "not paired" in answer.json["error"]


@pytest.mark.parametrize(
    "header",
    ["Basic {}", "{}", "Bearer  {}", "Bearer {} ", "Bearer {}x", "Bearer", "bearer {},Bearer {}"],
)
def test_the_token_stands_in_its_header_and_nowhere_else(own, header):
    token = own.paired()
    wrong = own.ask("GET", "/api/pull", Authorization=header.format(token, token))
    # HTTP takes spaces at the end of a header away
    assert wrong.status == (200 if header == "Bearer {} " else 401)
    assert own.ask("GET", f"/api/pull?token={token}").status == 401
    assert own.ask("GET", "/api/pull", Cookie=f"token={token}").status == 401
    assert own.ask("GET", "/api/pull", token=token).status == 200


def test_a_device_that_was_taken_off_is_told_so_at_once_and_gets_nothing(own):
    token, other = own.paired(), own.paired("Computer")
    here = next(
        one for one in own.ask("GET", "/api/devices", token=token).json["devices"] if one["here"]
    )
    assert own.post(f"/api/devices/{here['id']}/revoke", {}, other).status == 200
    for method, path in addresses(own):
        if path in OPEN or method == "HEAD":
            continue
        answer = own.ask(method, path, b"{}" if method != "GET" else None, token)
        assert (answer.status, answer.json["revoked"]) == (403, True), (method, path)
    assert own.ask("GET", "/api/pull", token=other).status == 200


@pytest.mark.parametrize(
    "host",
    ["evil.example", "127.0.0.1.evil.example", "", "[::1", "localhost@evil.example", "localhost/x",
     "127.0.0.1:x", "trains.home.arpa", "localhost:80:80"],
)  # fmt: skip
def test_under_another_name_nothing_is_shown(own, host):
    """DNS rebinding: a page elsewhere makes its own name point here."""
    for path in ("/", "/api/offers", "/api/pull"):
        answer = own.ask("GET", path, token=own.paired(), Host=host)
        assert answer.status in (400, 421), host
        assert b"Here" not in answer.body


@pytest.mark.parametrize(
    "host", ["localhost", "LOCALHOST:9", "127.0.0.1", "[::1]:8100", "localhost."]
)
def test_the_server_knows_its_own_names(own, host):
    assert own.ask("GET", "/", Host=host).status == 200


@pytest.mark.parametrize("host", ["a:b", "u@a", "a/b", "a?b", "a#b", "[a", "", ":80"])
def test_what_is_no_name_is_no_name_of_ours(host):
    assert name_of(host) == ""


@pytest.mark.parametrize(
    ("headers", "status"),
    [
        ({}, 200),
        ({"Sec_Fetch_Site": "same-origin"}, 200),
        ({"Sec_Fetch_Site": "none"}, 200),
        ({"Sec_Fetch_Site": "cross-site"}, 403),
        ({"Sec_Fetch_Site": "same-site"}, 403),
        ({"Sec_Fetch_Site": "anything"}, 403),
        ({"Origin": "https://evil.example"}, 403),
        ({"Origin": "null"}, 403),
        ({"Origin": "http://127.0.0.1:1"}, 403),
        ({"Origin": "http://[bad"}, 403),
        ({"Origin": "OWN"}, 200),
        ({"Origin": "https://evil.example", "Sec_Fetch_Site": "same-origin"}, 403),
    ],
)
def test_only_the_apps_own_pages_may_ask(own, headers, status):
    token = own.paired()
    sent = {k: v.replace("OWN", own.url.rstrip("/")) for k, v in headers.items()}
    assert own.ask("GET", "/api/devices", token=token, **sent).status == status
    assert own.post("/api/push", {"ops": []}, token, **sent).status == status


def test_a_form_of_another_page_cannot_send_anything(own):
    """What a browser sends elsewhere without asking first is of three types (WHATWG Fetch)."""
    token = own.paired()
    for kind in ("text/plain", "application/x-www-form-urlencoded", "multipart/form-data", ""):
        for path in ("/api/push", "/api/pair", "/api/pairing", "/api/backup"):
            own.times.pass_(minutes=1)
            answer = own.ask("POST", path, b'{"ops": []}', token, Content_Type=kind)
            assert answer.status == 415
    put = own.ask("PUT", f"/api/photos/{SHA}?from=0&size=1", b"x", token, Content_Type="text/plain")
    assert put.status == 415


def test_every_answer_says_what_it_is_and_is_kept_by_nobody(own):
    token = own.paired()
    asked = {
        "GET /api/offers": 200,
        "GET /api/pull": 200,
        "GET /api/nothing": 404,
        "PUT /api/pull": 405,
        f"GET /api/photos/{SHA}": 404,
        "GET /": 200,
        "GET /nothing": 404,
        "DELETE /app.js": 405,
    }
    for one, status in asked.items():
        method, path = one.split()
        answer = own.ask(method, path, token=token, Origin=own.url.rstrip("/"))
        assert answer.status == status, one
        policy = answer.headers["Content-Security-Policy"]
        for part in (
            "default-src 'self'",
            "object-src 'none'",
            "base-uri 'none'",
            "frame-ancestors 'none'",
        ):
            assert part in policy
        assert answer.headers["X-Content-Type-Options"] == "nosniff"
        assert answer.headers["Referrer-Policy"] == "no-referrer"
        assert "Access-Control-Allow-Origin" not in answer.headers
        assert "Set-Cookie" not in answer.headers
        assert "Server" not in answer.headers
        if path.startswith("/api/"):
            assert answer.headers["Cache-Control"] == "no-store"
            assert answer.headers["Content-Type"] == "application/json"


def test_asking_whether_another_page_may_ask_is_refused(own):
    answer = own.ask(
        "OPTIONS", "/api/push", Origin="https://evil.example",
        Access_Control_Request_Method="POST", Access_Control_Request_Headers="authorization",
    )  # fmt: skip
    assert answer.status == 403
    assert "Access-Control-Allow-Origin" not in answer.headers


@pytest.mark.parametrize(
    ("public", "strict"),
    [
        ("https://trains.example.org/", True),
        ("https://trains.home.arpa:8100/", False),
        ("http://127.0.0.1:8100/", False),
    ],
)
def test_https_only_is_asked_for_where_the_whole_host_is_ours(tmp_path, public, strict):
    with own_server(tmp_path / "data", public=public) as own:
        assert ("Strict-Transport-Security" in own.ask("GET", "/").headers) is strict


def test_no_page_lists_a_folder_or_shows_how_things_are_made(own):
    for path in (
        "/api/",
        "/api",
        "/docs",
        "/openapi.json",
        "/.git/config",
        "/data/",
        "/identify.sqlite",
    ):
        assert own.ask("GET", path, token=own.paired()).status == 404
    assert own.ask("TRACE", "/").status == 405
