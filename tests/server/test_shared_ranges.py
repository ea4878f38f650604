"""Ranges that others may follow from the own server: what is shared, and that nothing else is."""

import secrets
from typing import Any

import pytest

from tests.server.own_server import OwnServer, Pen


class Keeper:
    """A phone that writes a range down, and what the server answers at its address."""

    def __init__(self, own: OwnServer) -> None:
        self.own = own
        self.token = own.paired()
        self.pen = Pen()
        self.range, self.other, self.item, self.piece = (
            "r" + secrets.token_hex(8) for _ in range(4)
        )

    def writes(self, record: str, sort: str, pen: Pen | None = None, **fields: Any) -> None:
        time = fields.pop("time", "2026-05-01T10:00:00.000Z")
        operation = (pen or self.pen).writes(record, **fields) | {"type": sort, "time": time}
        said = self.own.post("/api/push", {"ops": [operation]}, self.token).json
        assert said["held"] == [operation["id"]], said

    def asked(self, record: str = "", **headers: str) -> Any:
        return self.own.ask("GET", f"/ranges/{record or self.range}.json", **headers)

    def rows(self) -> Any:
        return self.asked().json["rows"]


@pytest.fixture
def keeper(own) -> Keeper:
    """With two ranges of one item each, of which none is shared."""
    made = Keeper(own)
    made.writes(made.range, "range", key="ostwick", name="Ostwick")
    made.writes(made.item, "range_item", range=made.range, number="104", name="Engine", at=1)
    made.writes(made.other, "range", key="sheds", name="Tarrowby sheds")
    made.writes(made.piece, "piece", pack="ostwick", item="104", notes="Under the stairs")
    return made


def test_a_range_is_private_until_it_is_shared_and_afterwards_again(keeper):
    assert keeper.asked().status == 404
    keeper.writes(keeper.range, "range", shared="yes")
    there = keeper.asked()
    assert there.status == 200
    assert there.headers["Access-Control-Allow-Origin"] == "*"
    assert (there.json["format"], there.json["kind"]) == (1, "identify range")
    assert there.json["made"] == "2026-05-01T10:00:00.000Z"
    assert [one["number"] for one in there.json["rows"]["items"]] == ["104"]
    assert keeper.asked(keeper.other).status == 404
    keeper.writes(keeper.range, "range", shared="")
    gone = keeper.asked()
    assert (gone.status, gone.headers["Access-Control-Allow-Origin"]) == (404, "*")


def test_what_is_shared_holds_nothing_of_the_collection_nor_of_other_ranges(keeper):
    keeper.writes(keeper.range, "range", shared="yes")
    body = keeper.asked().body
    assert b"Ostwick" in body
    assert b"stairs" not in body
    assert b"Tarrowby" not in body


def test_each_change_is_there_at_once_and_what_did_not_change_is_not_sent_again(keeper):
    keeper.writes(keeper.range, "range", shared="yes")
    mark = keeper.asked().headers["ETag"]
    assert keeper.asked(If_None_Match=mark).status == 304
    keeper.writes(keeper.item, "range_item", number="104A")
    assert keeper.asked(If_None_Match=mark).status == 200
    assert [one["number"] for one in keeper.rows()["items"]] == ["104A"]
    keeper.writes(keeper.item, "range_item", trashed="2026-05-01T10:00:00.000Z")
    assert keeper.rows()["items"] == []
    keeper.writes(keeper.range, "range", trashed="2026-05-01T10:00:00.000Z")
    assert keeper.asked().status == 404


def test_a_field_that_holds_what_it_should_not_counts_as_blank(keeper):
    keeper.writes(keeper.range, "range", shared="yes", years=1957, name=None)
    assert keeper.rows()["range"]["years"] == ""
    assert keeper.rows()["range"]["name"] == ""


def test_of_other_addresses_nothing_is_there(keeper):
    keeper.writes(keeper.range, "range", shared="yes")
    for path in (
        "ranges/",
        "ranges/ostwick.json",
        f"ranges/{keeper.range}",
        f"ranges/{keeper.range}.json/a",
    ):
        assert keeper.own.ask("GET", f"/{path}").status == 404
    assert keeper.own.ask("POST", f"/ranges/{keeper.range}.json").status == 405


def test_an_edition_is_never_older_than_the_one_before(keeper):
    """A row that is deleted for good is the latest change of its range."""
    keeper.writes(keeper.range, "range", shared="yes")
    late = "2026-05-02T10:00:00.000Z"
    keeper.writes(keeper.item, "range_item", name="Tank engine", time=late)
    assert keeper.asked().json["made"] == late
    keeper.writes(keeper.item, "range_item", gone=True, time="2026-05-03T10:00:00.000Z")
    assert keeper.asked().json["made"] == "2026-05-03T10:00:00.000Z"
    assert keeper.rows()["items"] == []


def test_where_two_devices_disagree_it_is_private(keeper):
    keeper.writes(keeper.range, "range", shared="")
    elsewhere = Pen()
    elsewhere.heads = dict(keeper.pen.heads)
    elsewhere.count = 1000  # a clock that is ahead, so the latest says yes
    keeper.writes(keeper.range, "range", shared="no")
    keeper.writes(keeper.range, "range", elsewhere, shared="yes")
    assert keeper.asked().status == 404


def test_who_guesses_addresses_is_told_to_wait(keeper):
    """As a stranger elsewhere; a follower can read the answer from another site's page."""
    statuses = [keeper.asked(f"r{n}").status for n in range(70)]
    assert set(statuses) == {404, 429}
    assert keeper.asked("r1").headers["Access-Control-Allow-Origin"] == "*"
