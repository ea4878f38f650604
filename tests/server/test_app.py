"""The server over real HTTP: what it serves, and how it keeps the app to itself."""

import gzip
import urllib.error
import urllib.request
from email.message import Message
from typing import NamedTuple

import orjson
import pytest

from identify import phone

PAGES = ["", "index.html", "engine.js", "sw.js", "packs/index.json", "manifest.webmanifest"]


class Answer(NamedTuple):
    status: int
    headers: Message
    body: bytes


def get(url: str, method: str = "GET", **headers: str) -> Answer:
    """One request, and the answer whatever its status."""
    request = urllib.request.Request(url, headers=headers, method=method)
    try:
        with urllib.request.urlopen(request) as answer:
            return Answer(answer.status, answer.headers, answer.read())
    except urllib.error.HTTPError as error:
        with error:
            return Answer(error.code, error.headers, error.read())


@pytest.mark.parametrize("page", PAGES)
def test_pages_are_served_with_their_headers(server, page):
    answer = get(server.url + page)
    policy = answer.headers["Content-Security-Policy"]
    assert answer.status == 200
    assert "default-src 'self'" in policy
    assert "unsafe" not in policy
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert answer.body


def test_every_file_named_to_the_service_worker_is_there(server, site):
    line = site["sw.js"].decode().splitlines()[0]
    names = orjson.loads(line[line.index("[") : line.rindex("]") + 1])
    assert "./" in names
    for name in names:
        assert get(server.url + name.removeprefix("./")).status == 200


def test_what_has_not_changed_is_not_sent_again(server):
    mark = get(server.url + "engine.js").headers["ETag"]
    answer = get(server.url + "engine.js", **{"If-None-Match": f'"other", W/{mark}'})
    assert (answer.status, answer.body) == (304, b"")


def test_it_is_sent_compressed(server, site):
    answer = get(server.url + "engine.js", **{"Accept-Encoding": "gzip"})
    assert gzip.decompress(answer.body) == site["engine.js"]


@pytest.mark.parametrize(
    "path",
    ["nothing", "../pyproject.toml", "%2e%2e/pyproject.toml", "web/app.js", "packs/", "a%00b"],
)
def test_anything_else_is_not_found_in_a_sentence(server, path):
    answer = get(server.url + path)
    assert answer.status == 404
    assert "There is no page" in answer.body.decode()


def test_a_follower_elsewhere_may_read_that_a_range_is_not_there(server):
    missing = get(server.url + "packs/nowhere.rows.json")
    assert (missing.status, missing.headers["Access-Control-Allow-Origin"]) == (404, "*")
    assert "Access-Control-Allow-Origin" not in get(server.url + "nothing").headers


def test_only_ranges_may_be_read_by_pages_elsewhere(server, site):
    ranges = {"packs/index.json", "packs/pellmarsh.json", "packs/tarrowby.json"}
    allowed = {
        name for name in site if "Access-Control-Allow-Origin" in get(server.url + name).headers
    }
    assert allowed == ranges
    mark = get(f"{server.url}packs/index.json").headers["ETag"]
    again = get(f"{server.url}packs/index.json", **{"If-None-Match": mark})
    assert (again.status, again.headers["Access-Control-Allow-Origin"]) == (304, "*")


def test_one_script_alone_may_speak_to_other_hosts(server, site):
    apart = {
        name
        for name in site
        if "https:" in get(server.url + name).headers["Content-Security-Policy"]
    }
    assert apart == {"fetch-range.js"}


def test_only_reading_is_allowed(server):
    assert get(server.url, method="POST").status == 405


@pytest.mark.heavy
def test_any_change_makes_a_new_version(site, monkeypatch):
    other = phone.engine_module() + "const more = 1;\n"
    monkeypatch.setattr(phone, "engine_module", lambda: other)
    changed = phone.site(phone.demo_packs())
    assert changed["sw.js"].split(b";")[0] != site["sw.js"].split(b";")[0]
