"""Photos sent again while their last mention is deleted for good: three devices over real HTTP.

One device deletes, one looks what was deleted and a third sends the photo again. What was
acknowledged after the deletion was to be seen is never gone, and what another operation names
neither, however the two cross.
"""

import threading
import time
from concurrent.futures import ThreadPoolExecutor
from random import Random
from typing import Any

import pytest

from identify.keeping.verify import verify
from tests.keeping.samples import picture, sha
from tests.sampling import sample
from tests.server.own_server import OwnServer, Pen, own_server

pytestmark = pytest.mark.heavy

AT_ONCE = 20  # photos that one push deletes
JPEG = {"Content_Type": "image/jpeg"}


class Device:
    """A paired device that writes operations and sends photos."""

    def __init__(self, server: OwnServer, name: str) -> None:
        self.server = server
        self.pen = Pen()
        self.token = server.paired(name)
        self.place: dict[str, Any] = {"epoch": "", "after": 0, "last": ""}

    def push(self, ops: list[dict[str, Any]]) -> None:
        answer = self.server.post("/api/push", {"ops": ops}, self.token)
        assert answer.status == 200
        assert answer.json["held"] == [one["id"] for one in ops]

    def tells_of(self, record: str, data: bytes) -> dict[str, Any]:
        return self.writes(record, full=sha(data), small=sha(data))

    def writes(self, record: str, **fields: Any) -> dict[str, Any]:
        return {**self.pen.writes(record, **fields), "type": "photo"}

    def sends(self, data: bytes) -> bool:
        """Whether the server said that it has all of it."""
        path = f"/api/photos/{sha(data)}?from=0&size={len(data)}"
        answer = self.server.ask("PUT", path, data, self.token, **JPEG)
        assert answer.status == 200
        return bool(answer.json["whole"])

    def lacking(self, photos: list[bytes]) -> set[str]:
        shas = [sha(data) for data in photos]
        answer = self.server.post("/api/photos/missing", {"shas": shas}, self.token)
        return {one["sha"] for one in answer.json["missing"]}

    def gets(self, data: bytes) -> bool:
        answer = self.server.ask("GET", f"/api/photos/{sha(data)}", None, self.token)
        assert answer.status in (200, 404)
        assert answer.status == 404 or answer.body == data
        return answer.status == 200

    def news(self) -> list[dict[str, Any]]:
        place = "&".join(f"{name}={value}" for name, value in self.place.items())
        answer = self.server.ask("GET", f"/api/pull?{place}&limit=500", None, self.token).json
        self.place = {name: answer[name] for name in self.place}
        ops: list[dict[str, Any]] = answer["ops"]
        return ops


class Crossing:
    """A lot of photos that two devices know, about to be deleted by one of them."""

    def __init__(self, server: OwnServer, chance: Random, lot: int) -> None:
        self.chance = chance
        self.deletes, self.looks, self.sends = (Device(server, one) for one in "ABC")
        self.photos = [picture(lot * AT_ONCE + n) for n in range(AT_ONCE)]
        self.records = [f"p{lot}n{n}" for n in range(AT_ONCE)]
        told = [self.deletes.tells_of(*one) for one in zip(self.records, self.photos, strict=True)]
        self.deletes.push(told)
        for data in self.photos:
            assert self.deletes.sends(data)
        self.looks.news()

    def delete(self) -> None:
        gone = {"gone": True, "trashed": "2026-05-01T10:00:00.000Z"}
        self.deletes.push([self.deletes.writes(record, **gone) for record in self.records])

    def seen(self) -> None:
        """Waits until the deletion is to be seen by another device."""
        end = time.monotonic() + 30
        while not any(one["fields"].get("gone") for one in self.looks.news()):
            assert time.monotonic() < end, "the deletion was never to be seen"

    def again(self) -> list[bytes]:
        """Sends the photos again, in any order; those that the server said it has."""
        photos = self.chance.sample(self.photos, AT_ONCE)
        return [data for data in photos if self.sends.sends(data)]

    def of_its_own(self, start: threading.Barrier, first: str) -> None:
        """The third device has the same pictures, under records of its own."""
        device = self.sends
        pairs = zip(self.records, self.photos, strict=True)
        told = [device.tells_of(f"{record}x", data) for record, data in pairs]
        start.wait()
        if first == "sent":
            self.again()
        device.push(told)
        lacking = device.lacking(self.photos)
        for data in self.photos:
            assert sha(data) not in lacking or device.sends(data)

    def look(self, start: threading.Barrier) -> None:
        start.wait()
        for data in self.photos:
            self.looks.gets(data)


@pytest.fixture
def server(tmp_path):
    with own_server(tmp_path / "data", clock=time.monotonic) as running:
        yield running
        found = verify(running.store)
        assert (found["wrong"], found["photos_wrong"]) == ([], []), "a photo that only seems there"


def lots() -> range:
    return range(sample(30, 10))


def test_what_is_acknowledged_once_the_deletion_is_to_be_seen_stays(server):
    """Between what is to be seen and the end of the deletion its files are still taken away."""
    tries = 0
    for lot in lots():
        crossing = Crossing(server, Random(lot), lot)
        with ThreadPoolExecutor(1) as beside:
            deleting = beside.submit(crossing.delete)
            crossing.seen()
            acknowledged = crossing.again()
            deleting.result()
        assert len(acknowledged) == AT_ONCE
        assert crossing.looks.lacking(crossing.photos) == set()
        assert all(crossing.looks.gets(data) for data in acknowledged)
        tries += len(acknowledged)
    assert tries >= 200


@pytest.mark.parametrize("first", ["told of", "sent"])
def test_what_another_device_tells_of_stays_however_the_two_cross(server, first):
    """A phone tells of a photo, asks what is missing, and sends that; or it has sent it before."""
    tries = 0
    for lot in lots():
        crossing = Crossing(server, Random(lot), lot)
        start = threading.Barrier(3)
        with ThreadPoolExecutor(2) as beside:
            doing = [
                beside.submit(crossing.of_its_own, start, first),
                beside.submit(crossing.look, start),
            ]
            start.wait()
            crossing.delete()
            for one in doing:
                one.result()
        assert all(crossing.looks.gets(data) for data in crossing.photos)
        tries += AT_ONCE
    assert tries >= 200
