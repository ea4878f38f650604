"""Two windows at once, a full phone, refused storage, and tabs killed in the middle of a write."""

import random

import pytest
from playwright.sync_api import Page, expect

from identify.phone import WEB
from tests.browser.phone import (
    NO_STORAGE,
    PHONE,
    begin,
    choices,
    expect_question,
    kill,
    question,
    see,
    watched,
)
from tests.browser.phone_storage import (
    add_photo,
    add_piece,
    choose,
    fill,
    kept,
    photo,
    place,
    records,
)
from tests.conftest import serving
from tests.sampling import sample


@pytest.fixture
def windows(browser, server):
    """Two windows of the same phone."""
    context = browser.new_context(**PHONE)
    pages = [watched(context.new_page()) for _ in range(2)]
    for page in pages:
        page.goto(server.url)
        expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
    yield pages
    context.close()
    assert [page.reported for page in pages] == [[], []]


def first_piece(page: Page) -> None:
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").first.click()
    expect(page.get_by_label("Notes")).to_be_visible()


def test_what_one_window_writes_the_other_shows(windows):
    one, other = windows
    place(other, "Collection")
    add_piece(one, "P 24")
    expect(other.get_by_role("list", name="Pieces")).to_contain_text("P 24")
    first_piece(other)
    choose(one, "Condition", "good")
    expect(other.get_by_label("Condition", exact=True)).to_have_value("good")


def test_two_windows_change_the_same_piece_and_both_changes_stay(windows):
    one, other = windows
    add_piece(one, "P 24")
    first_piece(other)
    other.get_by_label("Notes").fill("from the other")  # still typing, so nothing is drawn anew
    fill(one, "Price paid", "£5")
    other.get_by_label("Notes").blur()
    expect(one.get_by_label("Notes")).to_have_value("from the other")
    (piece,) = records(one, "piece")
    assert (piece["paid"]["minor"], piece["notes"]) == (500, "from the other")


@pytest.mark.parametrize(
    ("way", "stays"), [("Keep mine", "from the other"), ("Keep the other one", "from the one")]
)
def test_the_same_field_changed_in_both_is_asked_about(windows, way, stays):
    one, other = windows
    add_piece(one, "P 24")
    first_piece(other)
    other.get_by_label("Notes").fill("from the other")
    fill(one, "Notes", "from the one")
    other.get_by_label("Notes").blur()
    sheet = other.get_by_role("dialog")
    expect(sheet).to_contain_text("Changed in another window")
    assert records(one, "piece")[0]["notes"] == "from the one", "nothing is written over it"
    sheet.get_by_role("button", name=way).click()
    expect(other.get_by_label("Notes")).to_have_value(stays)
    assert records(one, "piece")[0]["notes"] == stays


def test_each_window_keeps_the_piece_that_it_identifies(windows, server):
    one, other = windows
    begin(one, "Coach")
    see(one, choices(one)[0])
    begin(other, "Wagon")
    see(other, choices(other)[0])
    asked = question(one)
    asked_other = question(other)
    assert asked != asked_other
    context = one.context
    one.close()
    other.close()
    again = watched(context.new_page())
    again.goto(server.url)
    expect_question(again, asked_other)
    again.get_by_role("alert").get_by_role("button", name="Take it up").click()
    expect_question(again, asked)
    again.reload()
    expect_question(again, asked)
    expect(again.get_by_role("alert")).to_contain_text("Another window had a piece too")
    assert again.reported == []


def room(page: Page, size: int) -> None:
    """Give the app's storage this many bytes in all."""
    origin = page.evaluate("location.origin")
    told = {"origin": origin, "quotaSize": size}
    page.context.new_cdp_session(page).send("Storage.overrideQuotaForOrigin", told)


def test_a_full_phone_says_so_and_keeps_what_was_there(browser, server):
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.goto(server.url + "icons/icon.svg")  # the room must be set before anything is stored
    room(page, 400_000)
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "kept")
    before = kept(page)
    large = photo(page, 1600, 1600, noisy=True)
    assert len(large) > 800_000
    page.get_by_label("Choose a picture").set_input_files(
        {"name": "a.jpg", "mimeType": "image/jpeg", "buffer": large}
    )
    expect(page.get_by_role("alert")).to_contain_text("no space left")
    assert kept(page) == before
    page.get_by_role("button", name="Hide this").click()
    page.get_by_label("Notes").fill("much more " * 50_000)
    page.get_by_label("Notes").blur()
    expect(page.get_by_role("alert")).to_contain_text("no space left")
    expect(page.get_by_label("Notes")).to_have_value("much more " * 50_000)
    assert kept(page) == before
    room(page, 100_000_000)
    fill(page, "Notes", "there is room again")
    assert records(page, "piece")[0]["notes"] == "there is room again"
    context.close()


def test_where_storage_is_refused_the_collection_works_and_the_person_is_told(browser, server):
    context = browser.new_context(**PHONE)
    page = context.new_page()
    page.add_init_script(NO_STORAGE)
    page.goto(server.url)
    expect(page.get_by_role("alert")).to_contain_text("does not let the app store anything")
    add_piece(page, "P 24")
    choose(page, "Condition", "good")
    add_photo(page, 100, 100)
    expect(page.get_by_role("button", name="Photo 1")).to_be_visible()
    page.get_by_role("button", name="Undo").click()
    expect(page.get_by_role("button", name="Photo 1")).to_have_count(0)
    place(page, "Collection")
    expect(page.get_by_role("list", name="Pieces")).to_contain_text("good")
    place(page, "More")
    page.get_by_role("button", name="Backup").click()
    expect(page.get_by_text("forgets when you leave")).to_be_visible()
    context.close()


def test_what_was_stored_by_the_first_version_is_still_there(browser, server):
    """The storage of the app before it had a collection: one store, version 1."""
    context = browser.new_context(**PHONE)
    page = context.new_page()
    page.goto(server.url + "icons/icon.svg")
    page.evaluate(
        """() => new Promise((resolve, reject) => {
          const request = indexedDB.open("identify", 1);
          request.onupgradeneeded = () => request.result.createObjectStore("kept");
          request.onerror = () => reject(request.error);
          request.onsuccess = () => {
            const store = request.result.transaction("kept", "readwrite").objectStore("kept");
            store.put({ range: "tarrowby", able: ["loupe"] }, "settings").onsuccess = () => {
              request.result.close();
              resolve();
            };
          };
        })"""
    )
    page.goto(server.url)
    expect(page.get_by_label("Range")).to_have_value("tarrowby")
    page.get_by_role("button", name="Settings").click()
    expect(page.get_by_label("I have a loupe with me")).to_be_checked()
    context.close()


# Types numbers into the notes as fast as they are saved, and counts what was said to be saved.
TYPING = """
() => {
  const box = document.querySelector("textarea");
  const saved = box.closest(".field").querySelector(".saved");
  let n = Number(box.value || 0);
  const next = () => {
    n += 1;
    box.value = String(n);
    box.dispatchEvent(new Event("change"));
  };
  new MutationObserver(() => {
    if (saved.textContent !== "Saved") return;
    console.log(`acknowledged ${n}`);
    next();
  }).observe(saved, { childList: true, characterData: true, subtree: true });
  next();
}"""
# The same past the screens: a note and a want in one change, as fast as they are kept.
WRITING = """
import { change, loadRecords, record } from "./data/records.js";
import { openStore } from "./data/store.js";
await openStore();
await loadRecords();
const both = ["rnote", "rwant"];
let n = Math.max(...both.map(id => record(id)?.n ?? 0));
document.title = both.map(id => record(id)?.n ?? 0).join(" ");
for (;;) {
  n += 1;
  const alter = id => now => ({ ...now, id, type: id.slice(1), trashed: "", n });
  const { kept } = await change("Written", both.map(id => ({ id, alter: alter(id) })));
  if (kept === "disk") console.log(`acknowledged ${n}`);
}"""


class Heard:
    """What pages said that they had saved."""

    def __init__(self) -> None:
        self.last = 0

    def listen(self, page: Page) -> Page:
        page.on("console", lambda message: self.take(message.text))
        return page

    def take(self, text: str) -> None:
        if text.startswith("acknowledged"):
            self.last = max(self.last, int(text.split()[1]))

    def wait(self, page: Page, before: int) -> None:
        """Until something more was saved than `before`, however slow the machine is."""
        while self.last <= before:
            page.wait_for_timeout(1)


@pytest.mark.heavy
def test_what_was_said_to_be_saved_is_there_after_the_tab_was_killed(browser, server):
    """The app itself, with the notes of a piece typed into; killed at random moments."""
    rng = random.Random(30)
    context = browser.new_context(**PHONE, service_workers="block")
    page = context.new_page()
    page.goto(server.url)
    add_piece(page, "P 24")
    at = {"screen": "piece", "id": records(page, "piece")[0]["id"]}
    context.add_init_script(f"history.replaceState({at}, '')")
    page.close()
    heard = Heard()
    kills = sample(30, 8)
    for _ in range(kills):
        page = heard.listen(context.new_page())
        page.goto(server.url)
        expect(page.get_by_label("Notes")).to_be_visible()
        assert int(page.get_by_label("Notes").input_value() or 0) >= heard.last
        before = heard.last
        page.evaluate(TYPING)
        heard.wait(page, before)
        page.wait_for_timeout(rng.uniform(0, 40))
        kill(page)
    assert heard.last >= kills
    context.close()


@pytest.mark.heavy
def test_nothing_acknowledged_is_lost_by_kills(browser, site):
    """The part of the app that keeps the records, killed at random moments; no half of a change."""
    files = {f"data/{path.name}": path.read_bytes() for path in (WEB / "data").glob("*.js")}
    files |= {name: site[name] for name in ("engine.js", "further.js")}  # the gate before storage
    files["index.html"] = b"<!doctype html><script type=module src=writing.js></script>"
    files["writing.js"] = WRITING.encode()
    rng = random.Random(200)
    context = browser.new_context()
    heard = Heard()
    with serving(files) as server:
        kills = sample(200, 10)
        for _ in range(kills):
            before = heard.last
            page = heard.listen(context.new_page())
            page.goto(server.url)
            page.wait_for_function("() => document.title !== ''")
            note, want = map(int, page.title().split())
            assert note == want, "both halves of a change, or neither"
            assert note >= before
            heard.wait(page, before)
            page.wait_for_timeout(rng.uniform(0, 25))
            kill(page)
        page = context.new_page()
        page.goto(server.url)
        page.wait_for_function("() => document.title !== ''")
        assert int(page.title().split()[0]) >= heard.last >= kills
    context.close()
