"""10,000 damaged records, changes, operations and backups (with --full; else a sample).

After each lot a reload shows the start screen, the good pieces are found, one of them is changed,
and a sync takes that change to the server: nothing damaged holds it up.
"""

import json
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.browser.damaged_storage import PUT, HandsOut, starts
from tests.browser.own_server import OwnServer, pair, phone, sync
from tests.browser.phone import PHONE
from tests.browser.phone_storage import add_piece, fill, more, place
from tests.damaging import apart, cases
from tests.sampling import sample

pytestmark = pytest.mark.heavy

EACH = 2_500  # of each of the four kinds
LOT = 125  # between two reloads
BACKUPS = 40  # that are tried without --full: each is a file, restored by hand
GOOD = {"P 24": "unharmed-one", "P 21": "unharmed-other"}  # by a word in the notes
WAIT = 60_000


class Hostile(OwnServer):
    """The collector's own server; its answers can be made to hold anything."""

    def app(self) -> HandsOut:
        self.hands_out = HandsOut(super().app())
        return self.hands_out


class Phone:
    """A paired phone with two good pieces, that is looked after between lots of damage."""

    def __init__(self, page: Page, server: Hostile) -> None:
        self.page = page
        self.server = server
        self.changes = 0
        pair(page, server, "Phone")
        for number, word in GOOD.items():
            add_piece(page, number)
            fill(page, "Notes", word)

    def goes_on(self) -> None:
        """It starts, shows what is good, takes a change and brings it to the server."""
        starts(self.page)
        for number in GOOD:
            self.finds(number)
        self.changes += 1
        self.page.get_by_role("list", name="Pieces").get_by_role("button").first.click()
        said = f"{GOOD['P 21']}, changed {self.changes} times"
        fill(self.page, "Notes", said)
        assert "Nothing is waiting to be sent." in sync(self.page)
        notes = [one["fields"].get("notes") for one in self.server.records().values()]
        assert said in notes, "what is good came to the server"

    def finds(self, number: str) -> None:
        place(self.page, "More")  # so that the collection which is searched is the one drawn last
        place(self.page, "Collection")
        self.page.get_by_role("searchbox").fill(GOOD[number])
        pieces = self.page.get_by_role("list", name="Pieces").get_by_role("button")
        expect(pieces).to_have_count(1, timeout=WAIT)
        expect(pieces).to_contain_text(number, timeout=WAIT)


@pytest.fixture
def hostile(tmp_path, site) -> Iterator[Hostile]:
    running = Hostile(tmp_path / "data", site)
    running.start()
    yield running
    running.end()


@pytest.fixture
def paired(browser, hostile) -> Iterator[Phone]:
    context = browser.new_context(**PHONE)
    page = phone(context)
    yield Phone(page, hostile)
    context.close()
    assert page.reported == []


def lots(kind: str, usual: int = LOT) -> list[list[Any]]:
    """The damaged values of a kind, a lot at a time."""
    every = [apart(one, n) for n, one in enumerate(cases(kind, sample(EACH, usual)))]
    return [every[at : at + LOT] for at in range(0, len(every), LOT)]


@pytest.mark.parametrize(("kind", "store"), [("record", "records"), ("entry", "journal")])
def test_damaged_storage_is_set_aside_and_the_rest_goes_on(paired, kind, store, capsys):
    stored = 0
    for lot in lots(kind):
        stored += paired.page.evaluate(PUT, json.dumps([[store, one] for one in lot]))
        paired.goes_on()
    assert stored > sample(EACH, LOT) / 2
    told(capsys, f"{stored} damaged rows of {store}, {paired.changes} reloads and syncs")


def test_a_phone_with_damaged_storage_can_be_paired(browser, hostile, capsys):
    """The first sync makes operations of all that is there, and reads every record for it."""
    context = browser.new_context(**PHONE)
    page = phone(context)
    page.goto(hostile.url)
    add_piece(page, "P 24")
    rows = [["records", one] for lot in lots("record")[:1] for one in lot]
    rows += [["journal", one] for lot in lots("entry")[:1] for one in lot]
    assert page.evaluate(PUT, json.dumps(rows)) > LOT
    one = Phone(page, hostile)
    one.goes_on()
    assert page.reported == []
    context.close()


def test_a_photo_called_by_what_is_no_checksum_stops_no_sync(paired):
    """Handed out by a server of before, and as it may lie in the journal since then."""
    page = paired.page
    operation = {
        "id": "d0000000000000007.1", "record": "p1", "type": "photo", "parents": [], "wall": 1,
        "count": 0, "fields": {"full": "../pull", "small": "zzzz"},
    }  # fmt: skip
    entry = {
        "op": "d0000000000000008.1", "time": "2026-11-01T00:00:00Z", "group": "g", "held": "x 1",
        **{name: operation[name] for name in ("type", "parents", "wall", "count", "fields")},
        "record": "p2", "after": operation["fields"], "before": None,
    }  # fmt: skip
    paired.server.hands_out.waiting = [operation]
    page.evaluate(PUT, json.dumps([["journal", entry], ["journal", {**entry, "op": None}]]))
    assert "Nothing is waiting to be sent." in sync(page)
    paired.goes_on()


def test_damaged_operations_are_set_aside_and_syncing_ends(paired, capsys):
    """Every one is handed out by the server, whatever it is."""
    for lot in lots("operation"):
        paired.server.hands_out.waiting = lot
        assert "Nothing is waiting to be sent." in sync(paired.page)
        assert paired.server.hands_out.waiting == []
        paired.goes_on()
    told(capsys, f"{sample(EACH, LOT)} damaged operations, {paired.changes} reloads and syncs")


def test_damaged_backups_are_told_and_the_rest_goes_on(paired, capsys):
    """Every one is a file of its own, restored by hand."""
    page = paired.page
    for lot in lots("backup", BACKUPS):
        for one in lot:
            more(page, "Backup")
            content = json.dumps(one).encode()
            file = {"name": "b.json", "mimeType": "application/json", "buffer": content}
            page.get_by_label("Restore a backup file").set_input_files(file)
            said = page.get_by_role("alert").last
            keep = page.get_by_role("button", name="Restore, and keep them here")
            expect(said.or_(keep).last).to_be_visible(timeout=WAIT)
            if keep.is_visible():
                keep.click()
            expect(said).to_be_visible(timeout=WAIT)
            while page.get_by_role("alert").count():
                page.get_by_role("alert").last.get_by_role("button", name="Hide this").click()
        paired.goes_on()
    told(capsys, f"{sample(EACH, BACKUPS)} damaged backups, {paired.changes} reloads and syncs")


def told(capsys: Any, sentence: str) -> None:
    with capsys.disabled():
        print(f"\n{sentence}")
