"""The server over real HTTP: what it serves, and how it keeps the app to itself."""

import gzip
import urllib.error
import urllib.request

import orjson
import pytest

from identify import phone

PAGES = ["", "index.html", "engine.js", "sw.js", "packs/index.json", "manifest.webmanifest"]


def get(url: str, **headers: str):
    return urllib.request.urlopen(urllib.request.Request(url, headers=headers))


@pytest.mark.parametrize("page", PAGES)
def test_pages_are_served_with_their_headers(server, page):
    with get(server.url + page) as answer:
        policy = answer.headers["Content-Security-Policy"]
        assert "default-src 'self'" in policy
        assert "unsafe" not in policy
        assert answer.headers["X-Content-Type-Options"] == "nosniff"
        assert answer.read()


def test_every_file_named_to_the_service_worker_is_there(server, site):
    line = site["sw.js"].decode().splitlines()[0]
    names = orjson.loads(line[line.index("[") : line.rindex("]") + 1])
    assert "./" in names
    for name in names:
        with get(server.url + name.removeprefix("./")) as answer:
            assert answer.status == 200


def test_what_has_not_changed_is_not_sent_again(server):
    with get(server.url + "engine.js") as answer:
        mark = answer.headers["ETag"]
    with pytest.raises(urllib.error.HTTPError) as caught:
        get(server.url + "engine.js", **{"If-None-Match": f'"other", W/{mark}'})
    assert caught.value.code == 304


def test_it_is_sent_compressed(server, site):
    with get(server.url + "engine.js", **{"Accept-Encoding": "gzip"}) as answer:
        assert gzip.decompress(answer.read()) == site["engine.js"]


@pytest.mark.parametrize(
    "path",
    ["nothing", "../pyproject.toml", "%2e%2e/pyproject.toml", "web/app.js", "packs/", "a%00b"],
)
def test_anything_else_is_not_found_in_a_sentence(server, path):
    with pytest.raises(urllib.error.HTTPError) as caught:
        get(server.url + path)
    assert caught.value.code == 404
    assert "There is no page" in caught.value.read().decode()


def test_only_reading_is_allowed(server):
    with pytest.raises(urllib.error.HTTPError) as caught:
        urllib.request.urlopen(urllib.request.Request(server.url, data=b"x", method="POST"))
    assert caught.value.code == 405


def test_any_change_makes_a_new_version(site, monkeypatch):
    other = phone.engine_module() + "\n"
    monkeypatch.setattr(phone, "engine_module", lambda: other)
    changed = phone.site(phone.demo_packs())
    assert changed["sw.js"].split(b";")[0] != site["sw.js"].split(b";")[0]
