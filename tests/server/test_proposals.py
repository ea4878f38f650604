"""The box for proposals: words of its own, no way into the collection, limits, and its keepers."""

import base64
import io
from random import Random
from typing import Any

import orjson
import pytest
from PIL import Image

from identify.cli import main
from identify.errors import UserError
from identify.keeping import proposals
from identify.keeping.proposals import TAKEN, WAITING, Box
from identify.server.limits import PROPOSING
from tests.damaging import damaged
from tests.keeping.samples import picture
from tests.server.own_server import OwnServer, own_server

SIGHTING: dict[str, Any] = {
    "pack": "pellmarsh", "answers": [], "called": "yellow with a band", "unrecorded": True,
}  # fmt: skip


def file_of(*sightings: dict[str, Any]) -> dict[str, Any]:
    return {"format": 1, "kind": "identify sightings", "sightings": list(sightings or [SIGHTING])}


def photo(data: bytes) -> dict[str, Any]:
    text = "data:image/jpeg;base64," + base64.b64encode(data).decode()
    return {"full": text, "width": 12, "height": 12}


def with_camera() -> bytes:
    exif = Image.Exif()
    exif[0x010F] = "A Camera"
    out = io.BytesIO()
    Image.new("RGB", (8, 8)).save(out, "JPEG", exif=exif)
    return out.getvalue()


@pytest.fixture
def boxed(tmp_path):
    box = Box(tmp_path / "box")
    with own_server(tmp_path / "data", box=box) as server:
        yield server, box


def put(server: OwnServer, word: str, value: Any, **headers: str):
    return server.post("/api/proposals", value, word, **headers)


@pytest.mark.parametrize("act", [["list"], ["followers"], ["end", "f1"], ["take", "s1"]])
def test_a_folder_that_is_no_box_is_told(act, tmp_path, capsys):
    assert main(["proposals", str(tmp_path), *act]) == 1
    assert "There is no box for proposals in" in capsys.readouterr().err


def test_without_a_box_there_is_none(tmp_path):
    with own_server(tmp_path / "data") as server:
        assert put(server, "x", file_of()).status == 404
        assert "proposals" not in server.ask("GET", "/api/offers").json


def test_a_follower_proposes_and_hears_what_became_of_it(boxed, tmp_path, capsys, monkeypatch):
    server, box = boxed
    monkeypatch.chdir(tmp_path)
    assert main(["proposals", str(box.folder), "follower", "Ann"]) == 0
    word = capsys.readouterr().out.split("\n")[2].strip()
    assert word not in (box.folder / "followers.json").read_text()
    assert server.ask("GET", "/api/offers").json["proposals"] == server.url
    data = picture(1)
    made = put(server, word, file_of({**SIGHTING, "photos": [photo(data)]}))
    assert made.status == 200
    ident = made.json["id"]
    (mine,) = server.ask("GET", "/api/proposals", token=word).json["proposals"]
    assert (mine["id"], mine["state"]) == (ident, "waiting")
    assert main(["proposals", str(box.folder), "list"]) == 0
    assert f"{ident}  2026-05-01  Ann: pellmarsh, yellow with a band (1 photo)" in (
        capsys.readouterr().out
    )
    assert main(["proposals", str(box.folder), "take", ident, "--say", "Thank you."]) == 0
    taken = orjson.loads((tmp_path / f"{ident}.json").read_bytes())
    assert taken["sightings"][0]["called"] == "yellow with a band"
    (mine,) = server.ask("GET", "/api/proposals", token=word).json["proposals"]
    assert (mine["state"], mine["said"]) == ("taken", "Thank you.")
    other = put(server, word, file_of()).json["id"]
    assert main(["proposals", str(box.folder), "decline", other]) == 0
    assert main(["proposals", str(box.folder), "decline", other]) == 1
    assert "No proposal" in capsys.readouterr().err
    assert main(["proposals", str(box.folder), "list"]) == 0
    assert "Nothing is waiting." in capsys.readouterr().out


def test_a_word_opens_the_box_only_and_a_device_only_the_collection(boxed):
    server, box = boxed
    word, device = box.let_in("Ann", server.times.now()), server.paired()
    for path in ("/api/pull", "/api/devices", "/api/standing", "/api/backups"):
        assert server.ask("GET", path, token=word).status == 401
    assert server.post("/api/push", {"ops": []}, word).status == 401
    assert put(server, device, file_of()).status == 401
    other = box.let_in("Ben", server.times.now())
    put(server, word, file_of())
    assert server.ask("GET", "/api/proposals", token=other).json == {"proposals": []}
    box.end(box.followers()[0]["id"], server.times.now())
    assert put(server, word, file_of()).status == 401
    assert len(box.all(WAITING)) == 1, "what came stays"


def test_pages_elsewhere_may_ask_the_box_and_nothing_else(boxed):
    server, box = boxed
    word = box.let_in("Ann", server.times.now())
    elsewhere = {"Origin": "https://club.example.org", "Sec_Fetch_Site": "cross-site"}
    asked = server.ask("OPTIONS", "/api/proposals", **elsewhere)
    assert (asked.status, asked.headers["Access-Control-Allow-Origin"]) == (204, "*")
    found = put(server, word, file_of(), **elsewhere)
    assert (found.status, found.headers["Access-Control-Allow-Origin"]) == (200, "*")
    wrong = put(server, word, {"sightings": []}, **elsewhere)
    assert (wrong.status, wrong.headers["Access-Control-Allow-Origin"]) == (400, "*")
    for path in ("/api/pull", "/api/offers"):
        answer = server.ask("GET", path, token=server.paired(), **elsewhere)
        assert answer.status == 403
        assert "Access-Control-Allow-Origin" not in answer.headers


def test_limits(boxed, monkeypatch):
    server, box = boxed
    word = box.let_in("Ann", server.times.now())
    for _ in range(PROPOSING.at_once):
        assert put(server, word, file_of()).status == 200
    answer = put(server, word, file_of())
    assert (answer.status, int(answer.headers["Retry-After"]) > 500) == (429, True)
    server.times.pass_(hours=10)
    for _ in range(10):
        put(server, word, file_of())
    server.times.pass_(hours=10)
    answer = put(server, word, file_of())
    assert (answer.status, answer.json["error"]) == (
        400,
        "You have as many proposals waiting as are allowed. Wait for the keepers to look at them.",
    )  # fmt: skip
    other = box.let_in("Ben", server.times.now())
    monkeypatch.setattr(proposals, "MOST_WAITING", 20)
    assert "The box is full." in put(server, other, file_of()).json["error"]
    long = file_of({**SIGHTING, "text": "x" * 4_100_000})
    assert put(server, other, long).status == 413
    for number in range(70):
        answer = put(server, f"wrong{number}", file_of())
    assert answer.status == 429, "who guesses is made to wait"


@pytest.mark.parametrize(
    ("value", "says"),
    [
        ([], "not a file of sightings"),
        ({"format": 1, "kind": "identify backup", "sightings": [SIGHTING]}, "not a file of "
                                                                            "sightings"),
        (file_of(*[SIGHTING] * 21), "at most 20 sightings"),
        (file_of({**SIGHTING, "__proto__": {}}), "“__proto__”"),
        (file_of({**SIGHTING, "text": "x" * 300_000}), "256 KB"),
        (file_of({**SIGHTING, "photos": [{"full": "http://x/y.jpg"}]}), "as the app makes them"),
        (file_of({**SIGHTING, "photos": ["p1"]}), "as the app makes them"),
        (file_of({**SIGHTING, "photos": [photo(b"GIF89a")]}), "not a JPEG picture"),
        (file_of({**SIGHTING, "photos": [photo(with_camera())]}), "more than the picture"),
    ],
)  # fmt: skip
def test_what_is_no_proposal_is_told(boxed, value, says):
    server, box = boxed
    answer = put(server, box.let_in("Ann", server.times.now()), value)
    assert (answer.status, says in answer.json["error"]) == (400, True), answer.json
    assert box.all(WAITING) == []


def test_damaged_ones_are_refused_or_can_be_listed_and_taken(boxed, capsys, tmp_path, monkeypatch):
    server, box = boxed
    monkeypatch.setattr(proposals, "MOST_OF_ONE", 1000)
    box.let_in("Ann", server.times.now())
    (follower,) = box.followers()

    chance = Random(19)
    refused = 0
    for _ in range(500):
        value = damaged(file_of({**SIGHTING, "photos": [photo(picture(2))]}), chance)
        try:
            box.put_in(follower, orjson.dumps(value), server.times.now())
        except (UserError, TypeError):
            refused += 1
    assert 250 < refused < 500
    assert main(["proposals", str(box.folder), "list"]) == 0
    for one in box.all(WAITING):
        words = ["proposals", str(box.folder), "take", one["id"], "--out"]
        assert main([*words, str(tmp_path / one["id"])]) == 0
    assert len(box.all(TAKEN)) == 500 - refused
    capsys.readouterr()
