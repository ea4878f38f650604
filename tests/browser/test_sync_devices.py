"""Pairing and unpairing: what is asked of the server, what is told, what a revoked device does."""

import re
import shutil
from collections.abc import Callable

from playwright.sync_api import Page, Route, expect

from identify.keeping.data_folder import backup_folder
from tests.browser.own_server import (
    OwnServer,
    open_piece,
    operations,
    pair,
    phone,
    same_everywhere,
    settled,
    sync,
)
from tests.browser.phone import PHONE, watched
from tests.browser.phone_storage import add_photo, add_piece, fill, kept, more, place

BY_ITSELF = 30_000  # milliseconds that a change may take on this machine from one phone to another

STORED = """
async () => {
  const database = await new Promise(resolve => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const count = store => new Promise(resolve => {
    const request = database.transaction(store).objectStore(store).count();
    request.onsuccess = () => resolve([store, request.result]);
  });
  const all = await Promise.all([...database.objectStoreNames].map(count));
  database.close();
  return Object.fromEntries(all);
}"""


def test_who_never_pairs_asks_the_server_nothing(browser, server):
    """On a host that only has files: one question, when the person opens the screen of devices."""
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    asked: list[str] = []
    page.on("request", lambda request: asked.append(request.url))
    page.goto(server.url)
    add_piece(page, "P 24")
    fill(page, "Notes", "kept here")
    for name in ("Collection", "Wants", "Notebook", "More"):
        place(page, name)
    page.get_by_role("button", name="Settings", exact=True).click()
    expect(page.get_by_text("Nothing is sent anywhere")).to_be_visible()
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("Settings")
    page.wait_for_timeout(500)
    assert not any("/api/" in url for url in asked)
    assert page.reported == []
    for _ in range(2):
        more(page, "Devices and sync")
        expect(page.get_by_text("Sync is not set up")).to_be_visible()
    assert [url for url in asked if "/api/" in url] == [f"{server.url}api/offers"]
    context.close()


def test_a_code_is_typed_a_device_is_renamed_and_one_that_is_taken_off_forgets_all(browser, own):
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    home, lent = [phone(context) for context in contexts]
    pair(home, own, "Home")
    add_piece(home, "P 24")
    add_photo(home, 300, 200)
    sync(home)
    pair_by_code(home, lent, own)
    home.keyboard.press("Escape")
    sync(home)
    same_everywhere(own, home, lent)
    lent.reload()
    lent.get_by_role("button", name="Settings", exact=True).click()
    expect(lent.get_by_text(re.compile("is also sent to your own server"))).to_be_visible()
    rename_and_take_off(home)
    open_piece(lent, "P 24")
    fill(lent, "Notes", "written by the friend")  # some seconds later it is in touch
    told = lent.get_by_role("alert").filter(has_text="This device was unpaired")
    expect(told).to_be_visible()
    left = lent.evaluate(STORED)
    assert {name for name, count in left.items() if count} == {"kept"}
    assert left["kept"] == 1, "only the settings"
    place(lent, "Collection")
    expect(lent.get_by_role("list", name="Pieces")).not_to_contain_text("P 24")
    more(lent, "Devices and sync")
    expect(lent.get_by_role("heading", name="Pair this device")).to_be_visible()
    assert len(kept(home)["photos"]) == 1
    for context in contexts:
        context.close()
    assert [home.reported, lent.reported] == [[], []]


def pair_by_code(home: Page, lent: Page, own: OwnServer) -> None:
    """With what one device shows, after two codes that are wrong."""
    home.get_by_role("button", name="Add a device").click()
    sheet = home.get_by_role("dialog")
    drawn = sheet.get_by_role("img").evaluate("i => i.decode().then(() => i.naturalWidth)")
    assert drawn > 0, "the square code is a picture"
    code = sheet.locator(".pair-code").inner_text()

    lent.goto(own.url)
    more(lent, "Devices and sync")
    lent.get_by_label("Code").fill("K7QM")
    lent.get_by_role("button", name="Pair", exact=True).click()
    expect(lent.get_by_text("A code has 8 letters and figures")).to_be_visible()
    lent.get_by_label("Code").fill("ZZZZ ZZZZ")
    lent.get_by_role("button", name="Pair", exact=True).click()
    expect(lent.get_by_text("That code is not right")).to_be_visible()
    lent.get_by_label("Code").fill(code.lower().replace("0", "o").replace("1", "l"))
    lent.get_by_label("What to call this device").fill("Lent")
    lent.get_by_role("button", name="Pair", exact=True).click()
    expect(lent.get_by_role("alert").filter(has_text="This device is paired")).to_be_visible()
    settled(lent)
    place(lent, "Collection")
    expect(lent.get_by_role("alert")).to_have_count(0)
    more(lent, "Devices and sync")
    settled(lent)


def rename_and_take_off(home: Page) -> None:
    home.reload()
    home.get_by_role("button", name="Rename Lent").click()
    home.get_by_label("Name", exact=True).fill("Lent to a friend")
    home.get_by_role("button", name="Save the name").click()
    devices = home.get_by_role("list", name="Devices")
    expect(devices).to_contain_text("Lent to a friend")
    expect(devices).to_contain_text("Home (this device)")
    home.get_by_role("button", name="Unpair Lent to a friend").click()
    home.get_by_role("dialog").get_by_role("button", name="Unpair it").click()
    expect(home.get_by_text("Unpaired: Lent to a friend")).to_be_visible()


def test_a_device_that_the_server_forgot_keeps_everything_and_is_paired_anew(browser, own):
    context = browser.new_context(**PHONE)
    page = phone(context)
    pair(page, own, "Home")
    add_piece(page, "P 24")
    own.end()
    for file in own.folder.glob("identify.sqlite*"):
        file.unlink()
    shutil.rmtree(backup_folder(own.folder), ignore_errors=True)
    own.start()
    said = sync(page)
    assert "does not know this device any more. Everything here is kept" in said
    assert len(kept(page)["records"]) == 1
    link = own.link()
    page.goto("about:blank")
    page.goto(link)
    page.get_by_role("button", name="Pair", exact=True).click()
    expect(page.get_by_role("alert").filter(has_text="This device is paired")).to_be_visible()
    settled(page)
    same_everywhere(own, page)
    context.close()


HALF = """field => {
  field.value = "a broken picture \\ud83d in it";
  field.dispatchEvent(new Event("change"));
}"""


def test_half_a_character_in_a_text_does_not_hold_up_the_rest(browser, own):
    context = browser.new_context(**PHONE)
    page = phone(context)
    pair(page, own, "Home")
    add_piece(page, "P 24")
    page.get_by_label("Notes").evaluate(HALF)
    fill(page, "Where it was bought", "Quarle Town Hall")
    assert "Nothing is waiting to be sent" in sync(page)
    (piece,) = [one["fields"] for one in own.records().values() if one["type"] == "piece"]
    assert piece["notes"] == "a broken picture \ufffd in it"
    assert piece["where"] == "Quarle Town Hall"
    context.close()


def test_a_change_of_another_device_is_shown_at_once_but_not_under_the_fingers(browser, own):
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    one, other = [phone(context) for context in contexts]
    pair(one, own, "One")
    pair(other, own, "Other")
    add_piece(one, "P 24")
    sync(one)
    sync(other)
    open_piece(other, "P 24")
    open_piece(one, "P 24")
    fill(one, "Notes", "from the one")
    expect(other.get_by_label("Notes")).to_have_value("")
    wait_until_sent(one)
    wake(other)
    expect(other.get_by_label("Notes")).to_have_value("from the one")
    other.get_by_label("Notes").fill("typing")
    fill(one, "Notes", "from the one again")
    wait_until_sent(one)
    wake(other)
    other.wait_for_timeout(2000)
    expect(other.get_by_label("Notes")).to_have_value("typing")
    other.get_by_label("Notes").blur()
    sheet = other.get_by_role("dialog")
    expect(sheet).to_contain_text("on another device. Which is right?")
    sheet.get_by_role("button", name="Keep mine").click()
    expect(other.get_by_label("Notes")).to_have_value("typing")
    for context in contexts:
        context.close()


def test_open_devices_hear_of_changes_by_themselves_and_call_pieces_by_name(browser, own):
    """Nobody taps "Sync now"; the second phone had no record of this range when it was opened."""
    contexts = [browser.new_context(**PHONE) for _ in range(2)]
    one, other = [phone(context) for context in contexts]
    pair(one, own, "One")
    pair(other, own, "Other")
    place(other, "Collection")
    add_piece(one, "P 24")
    pieces = other.get_by_role("list", name="Pieces")
    expect(pieces).to_contain_text("P 24", timeout=BY_ITSELF)
    expect(pieces).not_to_contain_text("not in the range")
    expect(pieces).not_to_contain_text("(pellmarsh)")
    clash_in_notes(one, other)
    place(other, "More")
    other.get_by_role("button", name=re.compile("^To settle")).click()
    choices = other.get_by_role("group", name=re.compile("^Notes of"))
    choices.get_by_role("button").filter(has_text="from the one").click()
    wait_until_sent(other)
    wait_until_same(one, other)
    expect(one.get_by_label("Notes")).to_have_value("from the one")
    place(one, "More")
    expect(one.get_by_role("button", name="Devices and sync")).to_be_visible()
    expect(one.get_by_role("button", name=re.compile("^To settle"))).to_have_count(0)
    same_everywhere(own, one, other)
    for context in contexts:
        context.close()
    assert [one.reported, other.reported] == [[], []]


def wait_until_same(*pages: Page) -> None:
    """Until phones know of the same operations, with nobody asking for it."""
    for _ in range(BY_ITSELF // 200):
        first, *others = [operations(page).keys() for page in pages]
        if all(known == first for known in others):
            return
        pages[0].wait_for_timeout(200)
    raise AssertionError("the phones did not hear of one another by themselves")


def clash_in_notes(one: Page, other: Page) -> None:
    """Both write notes, the other out of touch; then both know of both."""
    open_piece(other, "P 24")
    other.context.set_offline(True)
    fill(other, "Notes", "from the other")
    fill(one, "Notes", "from the one")
    wait_until_sent(one)
    other.context.set_offline(False)
    wait_until_sent(other)


def test_what_is_changed_while_something_is_being_sent_is_sent_next(browser, own):
    context = browser.new_context(**PHONE)
    page = phone(context)
    pair(page, own, "Home")
    add_piece(page, "P 24")
    wait_until_sent(page)
    with_hand_on(page, lambda: fill(page, "Where it was bought", "Quarle Town Hall"))
    wait_until_sent(page)
    (piece,) = [one["fields"] for one in own.records().values() if one["type"] == "piece"]
    assert (piece["notes"], piece["where"]) == ("held up", "Quarle Town Hall")
    context.close()
    assert page.reported == []


def with_hand_on(page: Page, act: Callable[[], None]) -> None:
    """Does something while a change is held up on its way to the server."""
    held: list[Route] = []

    def hold(route: Route) -> None:
        held.append(route)

    page.route("**/api/push", hold)
    fill(page, "Notes", "held up")
    for _ in range(300):
        if held:
            break
        page.wait_for_timeout(100)
    act()
    page.wait_for_timeout(1500)  # the moment at which it would be sent by itself passes
    held[0].continue_()
    page.unroute("**/api/push")


def test_nothing_is_asked_while_nobody_looks(browser, own):
    context = browser.new_context(**PHONE)
    page = phone(context)
    page.clock.install()
    asked: list[str] = []
    page.on("request", lambda request: "/api/" in request.url and asked.append(request.url))
    pair(page, own, "Home")
    page.evaluate(VIEW, "hidden")
    before = len(asked)
    page.clock.run_for(3_600_000)
    assert len(asked) == before
    with page.expect_request("**/api/pull?*"):
        page.evaluate(VIEW, "visible")
        page.clock.run_for(100)
    settled(page)
    with page.expect_request("**/api/pull?*"):
        page.clock.run_for(10_000)
    context.close()
    assert page.reported == []


VIEW = """state => {
  Object.defineProperty(document, "visibilityState", { configurable: true, get: () => state });
  document.dispatchEvent(new Event("visibilitychange"));
}"""


def wake(page: Page) -> None:
    """The phone is taken out of the pocket again."""
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")


UNSENT = """
async () => {
  const database = await new Promise(resolve => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const all = await new Promise(resolve => {
    const request = database.transaction("journal").objectStore("journal").getAll();
    request.onsuccess = () => resolve(request.result);
  });
  database.close();
  return all.every(entry => entry.held);
}"""


def wait_until_sent(page: Page) -> None:
    """Until the server holds every change that was made on a phone."""
    for _ in range(300):
        if page.evaluate(UNSENT):
            return
        page.wait_for_timeout(100)
    raise AssertionError("the phone did not send its changes by itself")
