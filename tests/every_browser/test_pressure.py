"""Storage under pressure: no room, everything deleted, private windows, clocks, new versions."""

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.browser.exchanging import as_csv, listed
from tests.browser.own_server import OwnServer
from tests.conftest import Server, serving
from tests.every_browser.driven import LONG, SHORT, Phone
from tests.every_browser.openers import OPENERS, Limits
from tests.every_browser.steps import (
    GOES_ON,
    add_piece,
    answer,
    begin,
    look_round,
    open_more,
    put_file,
    records,
    stored,
    write,
)
from tests.every_browser.syncing import open_pairing, pair, sync
from tests.every_browser.things import jpeg

ROOM = 12_000_000
# takes all the room there is, up to the last hundred bytes; Firefox closes the connection
# whenever it finds none
FILL = """(async () => {
  const opened = () => new Promise((resolve, reject) => {
    const request = indexedDB.open("filler", 1);
    const counted = { autoIncrement: true };
    request.onupgradeneeded = () => request.result.createObjectStore("all", counted);
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
  });
  const put = async (bytes) => {
    const database = await opened();
    try {
      await new Promise((resolve, reject) => {
        const writing = database.transaction("all", "readwrite");
        writing.objectStore("all").put(bytes);
        writing.oncomplete = resolve;
        writing.onabort = () => reject(writing.error);
      });
      return true;
    } catch {
      return false;
    } finally {
      database.close();
    }
  };
  for (let size = 2 ** 21; size > 100;) {
    const bytes = new Uint8Array(size);
    for (let at = 0; at < size; at += 65536)
      crypto.getRandomValues(bytes.subarray(at, at + 65536));
    if (!(await put(bytes))) size /= 2;
  }
})()"""
FREE = """new Promise((resolve, reject) => {
  const request = indexedDB.deleteDatabase("filler");
  request.onsuccess = () => resolve(1);
  request.onerror = () => reject(request.error);
})"""
FULL = "There is no space left: the last step is not stored."
# the clock of the device, set back or on by so many milliseconds
CLOCK = b"""
const off = Number(localStorage.getItem("clock off") ?? 0);
const Real = Date;
class Shifted extends Real {
  constructor(...given) { if (given.length > 0) super(...given); else super(Shifted.now()); }
  static now() { return Real.now() + off; }
}
if (off !== 0) globalThis.Date = Shifted;
"""


@pytest.fixture(params=OPENERS)
def short(request: pytest.FixtureRequest, _display: None, tmp_path: Path) -> Iterator[Phone]:
    """A phone with little room left for the app."""
    running = Phone(request.param, tmp_path / "short", Limits(room=ROOM))
    yield running
    running.end()


def test_a_full_phone_says_so_and_loses_nothing(
    short: Phone, app: Server, pellmarsh: dict[str, object], tmp_path: Path
):
    """Full in the middle of a photo and of an import."""
    short.goto(app.url)
    add_piece(short, "P 24")
    write(short, "Notes", "kept")
    photo = jpeg(tmp_path, short, 900, 900)
    before = stored(short)
    short.run_later(FILL)
    put_file(short, "Choose a picture", photo)
    short.sees(FULL)
    assert stored(short) == before
    short.tap("Hide this")
    open_more(short, "Import a list")
    table = tmp_path / "list.csv"
    table.write_bytes(as_csv(listed(pellmarsh, 300)))
    put_file(short, "Choose a file", table)
    short.tap("See what changes")
    short.sees("300 new.")
    short.tap("Import 300")
    short.sees(FULL)
    assert stored(short) == before
    short.run_later(FREE)
    short.tap("Import 300")
    short.sees("300 imported")
    assert len(records(short, "piece")) == 301


def test_a_first_sync_that_finds_no_room_goes_on_when_there_is(
    short: Phone, another: Phone, own: OwnServer
):
    another.goto(own.url)
    another.tap("Try the demo")
    another.sees("100 pieces")
    pair(another, own, "the first")
    sync(another)
    short.goto(own.url)
    short.sees("What have you got?")
    short.run_later(FILL)
    link = own.link()
    open_pairing(short, own, "the second", link)
    short.sees(FULL)
    short.run_later(FREE)
    pair(short, own, "the second", link)  # it is good for one time, which was not used up
    sync(short)
    here, there = stored(short), stored(another)
    assert {one["id"]: one for one in here["records"]} == {
        one["id"]: one for one in there["records"]
    }


def test_what_the_browser_deleted_is_missed_at_the_next_start(phone: Phone, app: Server):
    """All its databases are gone, as when room ran short; the line beside them is left."""
    look_round(phone, app)
    phone.end()
    for folder in databases(phone):
        shutil.rmtree(folder)
    phone.open()
    phone.goto(app.url)
    phone.sees("This browser has deleted what the app had stored on this device: 122 records")
    assert not phone.run("return document.body.innerText.includes('Try the demo')")
    phone.tap("Restore a backup file", "button")
    phone.until("document.querySelector('h1').innerText === 'Backup'")
    phone.goto(app.url)
    phone.sees("This browser has deleted what the app had stored")
    phone.place("Collection")
    phone.sees("Nothing is here: this browser has deleted it.")
    phone.tap("Start empty")
    phone.sees("Nothing is in your collection yet.")
    phone.goto(app.url)
    phone.place("Collection")
    phone.sees("Nothing is in your collection yet.")
    assert not phone.run("return document.body.innerText.includes('has deleted')")
    assert not phone.run("return document.body.innerText.includes('Start empty')")


def databases(phone: Phone) -> list[Path]:
    """The folders in which a browser keeps what pages store in databases."""
    names = {"chromium": "IndexedDB", "webkit": "indexeddb", "firefox": "idb"}
    found = [one for one in phone.folder.rglob(names[phone.name]) if one.is_dir()]
    assert found
    return found


@pytest.mark.usefixtures("_display")
@pytest.mark.parametrize("name", OPENERS)
def test_a_private_window_works_and_says_that_it_forgets(name: str, tmp_path: Path, app: Server):
    phone = Phone(name, tmp_path / "private", Limits(private=True))
    try:
        phone.goto(app.url)
        add_piece(phone, "P 24")
        write(phone, "Notes", "in private")
        phone.goto(app.url)
        phone.place("Collection")
        phone.sees("P 24")
        open_more(phone, "Backup")
        phone.sees("In a private window everything is gone when you close it.")
        phone.end()
        phone.open()
        phone.goto(app.url)
        phone.sees("Your collection is empty.")
    finally:
        phone.end()


def test_a_clock_set_back_mixes_nothing_up(lent: Phone, site: dict[str, bytes]):
    index = site["index.html"].replace(b"<script ", b"<script src=clock.js></script><script ", 1)
    with serving(site | {"index.html": index, "clock.js": CLOCK}) as app:
        lent.goto(app.url)
        add_piece(lent, "P 24")
        write(lent, "Notes", "first")
        lent.run("localStorage.setItem('clock off', String(-3 * 24 * 3600_000))")
        lent.goto(app.url)
        lent.place("Collection")
        lent.press("document.querySelector('ul[aria-label=Pieces] button')")
        write(lent, "Notes", "second")
        found = stored(lent)
        times = [one["time"] for one in found["journal"]]
        assert times == sorted(times)
        assert found["records"][0]["changed"] == times[-1]
        lent.tap("Undo")
        lent.until("document.querySelector('textarea').value === 'first'")
        lent.tap("Undo")
        lent.until("document.querySelector('textarea').value === ''")


def test_a_new_version_in_the_middle_of_an_identification_moves_nothing(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.until("navigator.serviceWorker.controller !== null")
    begin(lent)
    answer(lent)
    asked = lent.heading()
    changed = dict(app.files)
    changed["sw.js"] = changed["sw.js"].replace(b'BUILD = "', b'BUILD = "next', 1)
    changed["style.css"] += b"/* next */"
    app.stop()
    app.files = changed
    app.start()
    lent.run_later("navigator.serviceWorker.ready.then((one) => one.update()).then(() => 1)")
    lent.sees("A new version is ready")
    assert lent.heading() == asked
    answer(lent)
    asked = lent.heading()
    lent.tap("Other screens")
    lent.tap("Settings", "dialog button")
    lent.tap("Use it now")
    lent.sees("Version next")
    lent.tap("Back to the piece")
    lent.until("document.querySelector('h1').innerText === arguments[0]", asked)


@pytest.mark.parametrize("phone", ["webkit"], indirect=True)
def test_webkits_helper_is_killed_and_nothing_is_lost(phone: Phone, app: Server):
    """The process for storage; WebKitGTK ends the page along with it."""
    look_round(phone, app)
    add_piece(phone, "P 24")
    write(phone, "Notes", "before")
    app.stop()
    phone.kill_helper()
    phone.kill()
    phone.open()
    phone.goto(app.url)
    phone.place("Collection")
    phone.sees("101 pieces")
    (piece,) = [one for one in records(phone, "piece") if one["item"] == "P 24" and one["notes"]]
    assert piece["notes"] == "before"
    assert phone.reported() == []


def given_so_far(phone: Phone) -> str:
    """At a question: what its sheet says of the answers given."""
    phone.tap("More", ".reach button")
    said: str = phone.until(
        "[...document.querySelectorAll('dialog button')].map((one) => one.innerText)"
        ".find((text) => /^[1-9][0-9]* answers? so far$/.test(text.trim()))"
    )
    phone.tap("Close", "dialog button")
    phone.until("!document.querySelector('dialog[open]')")
    return said


def test_a_service_worker_killed_during_an_identification_is_not_missed(phone: Phone, app: Server):
    phone.goto(app.url)
    phone.until("navigator.serviceWorker.controller !== null")
    begin(phone)
    answer(phone)
    app.stop()
    phone.kill_worker()
    phone.until(GOES_ON)
    answer(phone)
    given = given_so_far(phone)
    asked = phone.heading()
    phone.kill_worker()
    for _ in range(LONG // SHORT):  # WebKit notices a moment later that the process has ended
        phone.goto(app.url)
        if phone.soon("document.querySelector('h1')?.innerText === arguments[0]", asked):
            break
    assert phone.heading() == asked
    assert given_so_far(phone) == given
    assert phone.reported() == []
