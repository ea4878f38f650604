"""A server that cannot just now, two windows of one phone, and a first sync of many entries."""

import asyncio
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Request, expect
from starlette.responses import JSONResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from identify.keeping import devices, ops
from tests.browser.own_server import pair, phone, same_everywhere, settled, sync
from tests.browser.phone import PHONE, expect_read
from tests.browser.phone_storage import add_piece, kept, more, place
from tests.browser.test_sync_devices import wait_until_sent
from tests.keeping.store_contents import records
from tests.server.own_server import OwnServer, Pen

STEP = 5000  # milliseconds from one look at the phone to the next
HOUR = 3600 // 5  # steps


class Hindrance:
    """ASGI middleware: counts what is asked of sync, and delays or refuses it as it is told."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app
        self.status = 0  # of the answer to everything; 0: the server answers
        self.wait = ""  # Retry-After
        self.delay = 0.0  # seconds that an answer takes
        self.asked = 0
        self.pushing = self.most_at_once = 0

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        path = scope.get("path", "")
        if path not in ("/api/pull", "/api/push"):
            await self.app(scope, receive, send)
            return
        self.asked += 1
        self.pushing += path == "/api/push"
        self.most_at_once = max(self.most_at_once, self.pushing)
        await asyncio.sleep(self.delay)
        headers = {"Retry-After": self.wait} if self.wait else {}
        refusal = JSONResponse({"error": "Not just now."}, self.status or 503, headers)
        await (refusal if self.status else self.app)(scope, receive, send)
        self.pushing -= path == "/api/push"


class Hindered(OwnServer):
    """The collector's own server behind that."""

    def __init__(self, data: Path, files: dict[str, bytes]) -> None:
        super().__init__(data, files)
        self.hindrance = Hindrance(self.app)
        self.app = self.hindrance

    def link(self) -> str:
        secret = devices.new_pairing(self.store, self.times.now())["secret"]
        return f"{self.url}#pair={secret}"

    def records(self) -> dict[str, dict[str, Any]]:
        return {one["id"]: one for one in records(self.store)}


@pytest.fixture
def hindered(site, tmp_path) -> Iterator[Hindered]:
    server = Hindered(tmp_path / "data", site)
    server.start()
    yield server
    server.stop()


@pytest.fixture
def still(browser, hindered) -> Iterator[Page]:
    """A paired phone with a piece, whose clock stands still until it is moved on."""
    context = browser.new_context(**PHONE)
    page = phone(context)
    page.clock.install()
    pair(page, hindered, "Phone")
    add_piece(page, "P 24")
    sync(page)
    page.clock.pause_at(page.evaluate("Date.now() / 1000 + 60"))  # in seconds
    sync(page)  # whatever was under way when the clock stopped is over then
    at_rest(page)
    yield page
    context.close()
    assert page.reported == []


BUSY = """async () => {
  const { held, pending } = await navigator.locks.query();
  return [...held, ...pending].some(({ name }) => name === "identify sync");
}"""


def at_rest(page: Page) -> None:
    """Waits until nothing is asked of the server; a short look is not seen on the screen."""
    expect_read(page, lambda: page.evaluate(BUSY), False)
    settled(page)


def asked_at(page: Page, server: Hindered, steps: int) -> list[int]:
    """The seconds at which the phone asks something of the server in the time to come."""
    found = []
    for step in range(1, steps + 1):
        before = server.hindrance.asked
        page.clock.run_for(STEP)
        at_rest(page)
        if server.hindrance.asked > before:
            found.append(step * STEP // 1000)
    return found


def test_after_each_failure_a_phone_waits_twice_as_long_up_to_a_quarter_of_an_hour(still, hindered):
    hindered.hindrance.status = 503
    assert "Not just now." in sync(still)
    assert asked_at(still, hindered, HOUR) == [5, 15, 35, 75, 155, 315, 635, 1275, 2175, 3075]
    hindered.hindrance.status = 0
    assert asked_at(still, hindered, 75) == [375]
    expect(still.get_by_role("group", name="Sync")).not_to_contain_text("Not just now.")


EVENTS = """() => {
  window.dispatchEvent(new Event("online"));
  document.dispatchEvent(new Event("visibilitychange"));
}"""


@pytest.mark.parametrize("status", [429, 503])
def test_a_phone_leaves_the_server_alone_as_long_as_it_asks(still, hindered, status):
    """Whatever is changed meanwhile, and whether or not the phone was put away."""
    hindered.hindrance.status, hindered.hindrance.wait = status, "120"
    assert "Not just now." in sync(still)
    add_piece(still, "P 21")
    still.evaluate(EVENTS)
    more(still, "Devices and sync")
    assert asked_at(still, hindered, 23) == []
    hindered.hindrance.status = 0
    assert asked_at(still, hindered, 1) == [5]
    said = still.get_by_role("group", name="Sync")
    expect(said).to_contain_text("Nothing is waiting to be sent")
    same_everywhere(hindered, still)


def test_what_happens_while_the_server_is_about_to_refuse_waits_too(still, hindered):
    hindered.hindrance.status, hindered.hindrance.wait = 503, "120"
    hindered.hindrance.delay = 1
    before = hindered.hindrance.asked
    still.get_by_role("button", name="Sync now").click()
    still.evaluate(EVENTS)
    still.clock.run_for(STEP)
    at_rest(still)
    assert hindered.hindrance.asked == before + 1
    assert asked_at(still, hindered, 22) == []


def test_who_asks_for_years_is_asked_again_the_next_day(still, hindered):
    """A timer that long would be over at once."""
    hindered.hindrance.status, hindered.hindrance.wait = 503, "99999999"
    sync(still)
    assert asked_at(still, hindered, 24) == []
    before = hindered.hindrance.asked
    still.clock.fast_forward(24 * 3_600_000)
    at_rest(still)
    assert hindered.hindrance.asked == before + 1


NO_LOCKS = "Object.defineProperty(navigator, 'locks', { value: undefined });"


@pytest.mark.parametrize("locks", [True, False])
def test_two_windows_that_sync_at_once_send_nothing_twice_and_agree(browser, hindered, locks):
    """Where the browser has no locks, at least nothing is lost, and both come to the same."""
    context = browser.new_context(**PHONE)
    if not locks:
        context.add_init_script(NO_LOCKS)
    pages = [phone(context) for _ in range(2)]
    pair(pages[0], hindered, "Phone")
    pages[1].goto(hindered.url)
    sent: list[str] = []
    context.on("request", lambda request: sent.extend(pushed_by(request)))
    hindered.hindrance.delay = 0.3
    for page in pages:
        add_piece(page, "P 24")
        more(page, "Devices and sync")
    for page in pages:
        page.get_by_role("button", name="Sync now").click()
    for page in pages:
        place(page, "Collection")
        expect(page.get_by_role("list", name="Pieces").get_by_role("button")).to_have_count(2)
        wait_until_sent(page)
    known = kept(pages[0])["journal"]
    assert len({entry["op"] for entry in known}) == len(known)
    assert len({entry["op"].partition(".")[0] for entry in known}) == 1, "one device, no fork"
    same_everywhere(hindered, *pages)
    if locks:
        assert hindered.hindrance.most_at_once == 1
        assert len(sent) == len(set(sent)) > 0
    context.close()
    assert [page.reported for page in pages] == [[], []]


def pushed_by(request: Request) -> list[str]:
    """The ids of operations that a request sends."""
    if not request.url.endswith("/api/push"):
        return []
    return [one["id"] for one in request.post_data_json["ops"]]


# How much is asked of the storage in each transaction: [writes into the journal, reads], by mode.
COUNTING = """(() => {
  const begin = IDBDatabase.prototype.transaction;
  window.counted = [];
  IDBDatabase.prototype.transaction = function (...args) {
    const made = begin.apply(this, args);
    made.counts = { mode: made.mode, put: 0, get: 0 };
    window.counted.push(made.counts);
    return made;
  };
  for (const name of ["put", "get"]) {
    const act = IDBObjectStore.prototype[name];
    IDBObjectStore.prototype[name] = function (...args) {
      const journal = this.name === "journal";
      if (name === "get" || journal) this.transaction.counts[name] += 1;
      return act.apply(this, args);
    };
  }
})();"""
ENTRIES = 400
AT_ONCE = 25  # entries at first; a tap waits until they are written, and no longer
CLOCK = "(() => { const now = performance.now; performance.now = function () { return %s }; })();"
AT_LEAST = 5
SLOW = CLOCK % "now.call(this) * 1000"
QUICK = CLOCK % "now.call(this) / 1000"


@pytest.mark.parametrize("clock", [SLOW, QUICK])
def test_a_tap_during_the_first_sync_waits_for_a_few_entries_only(browser, hindered, clock):
    """However many come, each transaction takes in a few, more only while it goes quickly, and
    screens read them a few at a time.
    """
    pen = Pen()
    written = [pen.writes(f"r{n:016d}", **FIELDS) for n in range(ENTRIES)]
    assert len(ops.push(hindered.store, written)["held"]) == ENTRIES
    context = browser.new_context(**PHONE)
    context.add_init_script(COUNTING + clock)
    page = phone(context)
    pair(page, hindered, "Phone")
    place(page, "Collection")
    expect(page.get_by_role("main")).to_contain_text(f"{ENTRIES} pieces")
    counted = page.evaluate("counted")
    writing = [one["put"] for one in counted if one["mode"] == "readwrite" and one["put"] > 0]
    reading = [one["get"] for one in counted if one["mode"] == "readonly"]
    assert sum(writing) >= ENTRIES
    if clock == SLOW:
        assert max(writing) == AT_ONCE
        assert writing.count(AT_LEAST) > len(writing) // 2
    else:
        most = AT_ONCE
        for puts in writing:
            assert puts <= 2 * most
            most = max(most, puts)
        assert AT_ONCE < most < ENTRIES
    assert max(reading) <= AT_ONCE
    same_everywhere(hindered, page)
    context.close()
    assert page.reported == []


FIELDS = {"pack": "pellmarsh", "item": "P 24", "trashed": "", "made": "2026-05-01T10:00:00.000Z"}
