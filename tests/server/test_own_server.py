"""The routes of the collector's own server, over real HTTP to a real store."""

import io
import re
import time
from datetime import UTC, datetime
from urllib.parse import quote

import pytest
from PIL import Image
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from tests.browser.phone_storage import exif
from tests.keeping.samples import picture, sha
from tests.server.own_server import Answer, OwnServer, Pen, own_server

CHUNK = 256 * 1024


def push(own: OwnServer, token: str, ops: list) -> dict:
    answer = own.post("/api/push", {"ops": ops}, token)
    assert answer.status == 200, answer.body
    return answer.json


def pull_all(own: OwnServer, token: str, limit: int) -> list:
    """Everything, page by page, as a phone asks for it."""
    found, at = [], {"epoch": "", "after": 0, "last": ""}
    while True:
        told = "&".join(f"{name}={quote(str(value))}" for name, value in at.items())
        page = own.ask("GET", f"/api/pull?{told}&limit={limit}", token=token).json
        assert len(page["ops"]) <= limit
        found += page["ops"]
        at = {name: page[name] for name in at}
        if not page["more"]:
            return found


def test_what_one_device_sends_the_other_gets(own):
    one, other = own.paired(), own.paired()
    pen = Pen()
    ops = [pen.writes(f"r{n % 3}", notes=f"No. {n} – ½") for n in range(25)]
    got = push(own, one, ops[:20])
    assert (got["held"], got["forked"], got["refused"]) == ([op["id"] for op in ops[:20]], [], [])
    assert push(own, one, ops) == got | {"held": [op["id"] for op in ops]}
    assert pull_all(own, other, 7) == ops


def test_what_is_no_operation_is_told_apart_and_the_rest_is_kept(own):
    token = own.paired()
    good = Pen().writes("rgood", notes="here")
    for wrong in (
        None,
        1,
        [],
        {},
        good | {"id": "x"},
        good | {"parents": "d"},
        good | {"wall": -1},
    ):
        got = push(own, token, [wrong, good])
        assert got["held"] == [good["id"]]
        assert len(got["refused"]) == 1
        assert got["refused"][0]["why"].endswith(".")
    assert push(own, token, [good | {"what": "Another"}])["forked"] == [good["id"]]


@pytest.mark.parametrize(
    ("query", "says"),
    [("after=-1", "whole number"), ("after=1.5", "whole number"), ("after=²", "whole number"),
     ("after=" + "9" * 30, "at most 15"), ("limit=x", "whole number"), ("after=1&after=2", "once"),
     ("epoch=" + "x" * 101, "at most 100")],
)  # fmt: skip
def test_a_place_that_cannot_be_is_refused_in_a_sentence(own, query, says):
    answer = own.ask("GET", f"/api/pull?{quote(query, safe='=&')}", token=own.paired())
    assert answer.status == 400
    assert says in answer.json["error"]


def put(own: OwnServer, token: str, data: bytes, start: int = 0, end: int = CHUNK) -> Answer:
    return put_as(own, token, sha(data), data, start, end)


def put_as(own: OwnServer, token: str, name: str, data: bytes, *span: int) -> Answer:
    start, end = span
    path = f"/api/photos/{name}?from={start}&size={len(data)}"
    return own.ask("PUT", path, data[start:end], token, Content_Type="image/jpeg")


def large_picture() -> bytes:
    out = io.BytesIO()
    Image.effect_noise((900, 900), 120).convert("RGB").save(out, "JPEG", quality=95)
    return out.getvalue()


def test_a_photo_comes_in_chunks_goes_on_after_a_cut_and_is_given_back_byte_for_byte(own):
    one, other = own.paired(), own.paired()
    data = large_picture()
    assert len(data) > 2 * CHUNK
    name = sha(data)

    def missing() -> list:
        return own.post("/api/photos/missing", {"shas": [name]}, one).json["missing"]

    assert missing() == [{"sha": name, "have": 0}]
    assert put(own, one, data).json == {"have": CHUNK, "whole": False}
    assert missing() == [{"sha": name, "have": CHUNK}]
    assert own.ask("GET", f"/api/photos/{name}", token=other).status == 404
    elsewhere = put(own, one, data, 5, 1000)
    assert elsewhere.status == 409
    assert (elsewhere.json["have"], elsewhere.json["whole"]) == (CHUNK, False)
    for start in range(CHUNK, len(data), CHUNK):
        last = put(own, one, data, start, start + CHUNK)
    assert last.json == {"have": len(data), "whole": True}
    assert put(own, other, data).json == {"have": len(data), "whole": True}
    assert missing() == []
    got = own.ask("GET", f"/api/photos/{name}", token=other)
    assert (got.body, got.headers["Content-Type"]) == (data, "image/jpeg")
    assert got.headers["Content-Disposition"] == f'attachment; filename="{name}.jpg"'


def test_a_photo_that_says_where_it_was_taken_is_not_kept_anywhere(own):
    token = own.paired()
    plain = picture(3)
    data = plain[:2] + exif() + plain[2:]
    answer = put(own, token, data)
    assert answer.status == 400
    assert "EXIF" in answer.json["error"]
    kept = [path for path in own.data.parent.rglob("*") if path.is_file()]
    assert all(b"Exif" not in path.read_bytes() for path in kept)


@pytest.mark.parametrize(
    "name", ["x", "A" * 64, "a" * 63, "..%2f..%2fx", "a" * 64 + "%00", "%2e%2e"]
)
def test_a_photo_has_no_other_name_than_its_sum(own, name):
    answer = put_as(own, own.paired(), name, picture(4), 0, 10)
    assert answer.status in (400, 404)
    assert own.ask("GET", f"/api/photos/{name}", token=own.paired()).status in (400, 404)


def test_a_device_is_let_in_by_a_link_once(own):
    own.times.pass_(hours=1)
    token = own.paired("Computer")
    told = own.post("/api/pairing", {}, token).json
    assert re.fullmatch(re.escape(own.url) + r"#pair=[\w-]{22}", told["url"])
    assert re.fullmatch("[0-9A-HJKMNP-TV-Z]{8}", told["code"])
    assert told["svg"].startswith("<svg")
    until = datetime.fromisoformat(told["until"])
    assert (until - own.times.now()).total_seconds() == 300
    secret = told["url"].partition("#pair=")[2]
    mine = own.post("/api/pair", {"secret": secret, "name": "  My\nphone "}).json
    assert re.fullmatch(r"[\w-]{43}", mine["token"])
    listed = own.ask("GET", "/api/devices", token=mine["token"]).json["devices"]
    assert [one["name"] for one in listed if one["here"]] == ["My phone"]
    again = own.post("/api/pair", {"secret": secret, "name": "Thief"})
    assert again.status == 400
    assert secret not in again.json["error"]


def test_a_code_is_good_for_five_minutes_however_it_is_typed(own):
    token = own.paired()
    first = own.post("/api/pairing", {}, token).json["code"]
    typed = first.lower().replace("0", "o").replace("1", "l")
    assert own.post("/api/pair", {"code": f"{typed[:4]} {typed[4:]}"}).status == 200
    second = own.post("/api/pairing", {}, token).json["code"]
    own.times.pass_(seconds=301)
    assert own.post("/api/pair", {"code": second}).status == 400


def test_devices_are_named_and_taken_off_in_words(own):
    token = own.paired()
    here = [
        d["id"] for d in own.ask("GET", "/api/devices", token=token).json["devices"] if d["here"]
    ]
    assert own.post(f"/api/devices/{here[0]}", {"name": "The attic"}, token).status == 200
    listed = own.ask("GET", "/api/devices", token=token).json["devices"]
    assert "The attic" in [one["name"] for one in listed]
    assert all(set(one) == {"id", "name", "made", "seen", "revoked", "here"} for one in listed)
    for name in ("", " ", "x" * 201, None, 5):
        assert own.post(f"/api/devices/{here[0]}", {"name": name}, token).status == 400
    unknown = own.post("/api/devices/k0000000000000000/revoke", {}, token)
    assert unknown.status == 404
    assert "no such device" in unknown.json["error"]


def test_a_link_for_another_device_leads_to_where_it_can_go(tmp_path):
    """A computer that opened the server on itself shows the address that a phone can reach."""
    public = "https://trains.home.arpa:8100/"
    hosts = ["localhost", "127.0.0.1", "trains.home.arpa", "192.168.1.20"]
    with own_server(tmp_path / "data", public=public, hosts=hosts) as own:
        for host, starts in {
            "127.0.0.1:8100": public,
            "trains.home.arpa:8100": public,
            "192.168.1.20:8100": "https://192.168.1.20:8100/",
        }.items():
            told = own.post("/api/pairing", {}, own.paired(), Host=host).json
            assert told["url"].startswith(f"{starts}#pair=")


def newest_backup(own: OwnServer, token: str, after: str = "") -> dict:
    """The newest backup, once there is one that was made after that time."""
    for _ in range(600):
        own.times.pass_(seconds=1)
        listed = own.ask("GET", "/api/backups", token=token).json["backups"]
        if listed and listed[0]["made"] > after:
            return listed[0]
        time.sleep(0.05)
    raise AssertionError("no backup was made")


def test_a_backup_is_made_by_a_button_and_each_night(tmp_path):
    with own_server(tmp_path / "data") as own:
        token = own.paired()
        # one is due when the server begins; it may have nothing to keep yet
        first = newest_backup(own, token)
        push(own, token, [Pen().writes("rone", notes="kept")])
        own.times.pass_(minutes=1)
        made = own.post("/api/backup", {}, token).json
        assert (made["records"], made["photos"]) == (1, 0)
        listed = own.ask("GET", "/api/backups", token=token).json["backups"]
        assert [one["name"] for one in listed] == [made["name"], first["name"]]
        assert (tmp_path / "backups" / made["name"] / "identify.sqlite").is_file()
    own = OwnServer(tmp_path / "data")
    own.times.pass_(days=1)
    own.start()
    try:
        assert newest_backup(own, own.paired(), made["made"])["records"] == 1
    finally:
        own.stop()


def test_a_full_disk_is_told_and_nothing_acknowledged_is_lost(own):
    """SQLite's own limit on pages makes it answer as for a full disk (SQLITE_FULL)."""
    token = own.paired()
    before, after = (
        Pen().writes("rbefore", notes="kept"),
        Pen().writes("rafter", notes="x" * 200_000),
    )
    assert push(own, token, [before])["held"] == [before["id"]]
    pages = own.store._db.pragma("page_count")
    most = own.store._db.pragma("max_page_count")
    own.store._db.pragma("max_page_count", pages)
    try:
        answer = own.post("/api/push", {"ops": [after]}, token)
    finally:
        own.store._db.pragma("max_page_count", most)
    assert answer.status == 503
    assert "disk of the server is full" in answer.json["error"]
    assert before in pull_all(own, token, 500)
    assert after not in pull_all(own, token, 500)
    assert push(own, token, [after])["held"] == [after["id"]]


def test_what_nobody_thought_of_is_told_in_a_sentence_and_noted_without_what_it_was_about(
    tmp_path, caplog
):
    async def broken(request: Request) -> Response:
        raise ValueError(f"a mistake of ours, over {request.query_params['about']}")

    with own_server(tmp_path / "data", routes=[Route("/api/broken", broken)]) as own:
        token = own.paired()
        answer = own.ask("GET", "/api/broken?about=secret-thing", token=token)
        assert own.ask("GET", "/api/pull", token=token).status == 200
    assert answer.status == 503
    assert answer.json["error"].endswith("Try again later.")
    assert "unexpected: ValueError at" in caplog.text
    assert "test_own_server.py:" in caplog.text
    assert "secret-thing" not in caplog.text + answer.body.decode()
    assert token not in caplog.text


def test_it_says_what_it_can_do(own):
    assert own.ask("GET", "/api/offers").json == {
        "sync": True,
        "name": f"127.0.0.1:{own.port}",
    }


def test_the_time_of_the_last_contact_is_seen(own):
    token = own.paired()
    own.times.pass_(hours=2)
    listed = own.ask("GET", "/api/devices", token=token).json["devices"]
    here = next(one for one in listed if one["here"])
    assert datetime.fromisoformat(here["seen"]).astimezone(UTC) == own.times.now()
