"""Every screen that web/shell/screens.js lists, and the way there that it tells."""

import re
from collections.abc import Iterator
from typing import Any

from playwright.sync_api import Browser, Page, expect

from identify.phone import WEB
from tests.browser.phone import asking, begin, choices, question, see
from tests.browser.phone_storage import kept, more, place
from tests.conftest import serving

SOURCE = (WEB / "shell" / "screens.js").read_text("utf-8")
NAMES = re.findall(
    r"^  (\w+): \{", SOURCE, re.MULTILINE
)  # test_access holds them against the module
START = "What have you got?"

READ = """
async () => {
  const { SCREENS } = await import("/shell/screens.js");
  const plain = (one) => ({ ...one, menu: Boolean(one.menu), load: Boolean(one.load) });
  return Object.fromEntries(Object.entries(SCREENS).map(([name, one]) => [name, plain(one)]));
}"""
CLASH = """
async (record) => {
  const database = await new Promise((resolve) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const change = database.transaction("clashes", "readwrite");
  change.objectStore("clashes").put({ record, clashes: [], brought_back: true });
  await new Promise((resolve) => { change.oncomplete = resolve; });
  database.close();
}"""
ASIDE = """
async () => {
  const database = await new Promise((resolve) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const change = database.transaction("aside", "readwrite");
  const row = { from: "server", value: { a: [1, "b"] }, why: "It cannot be read." };
  change.objectStore("aside").put({ ...row, key: "server a", time: "2026-05-01T10:00:00.000Z" });
  await new Promise((resolve) => { change.oncomplete = resolve; });
  database.close();
}"""
BROUGHT = """
(group) => {
  const at = { ...history.state, screen: "came", group, file: "list.csv" };
  history.pushState({ ...at, depth: at.depth + 1 }, "");
  location.reload();
}"""


def read(browser: Browser) -> dict[str, dict[str, Any]]:
    """The registry, as the module itself gives it: of each screen title, way, menu, load."""
    files = {p.relative_to(WEB).as_posix(): p.read_bytes() for p in WEB.rglob("*.js")}
    page = browser.new_page()
    with serving(files | {"index.html": b"<!doctype html><title>Registry</title>"}) as server:
        page.goto(server.url)
        found: dict[str, dict[str, Any]] = page.evaluate(READ)
    page.close()
    return found


def clashing(page: Page) -> None:
    """A piece that was deleted on one device and changed on another."""
    page.evaluate(CLASH, kept(page)["records"][0]["id"])


def set_aside(page: Page) -> None:
    """A change from the server that could not be read."""
    page.evaluate(ASIDE)


def sighted(page: Page) -> None:
    """A piece that is not in the range, kept as a sighting."""
    place(page, "Identify")
    begin(page, "Wagon")
    while asking(page):
        see(page, choices(page)[0])
    page.get_by_role("button", name="Keep as a sighting").click()
    expect(page.get_by_label("When was it made?")).to_be_visible()


def brought(page: Page) -> None:
    """As after a spreadsheet, which a server reads: the demo is looked at in its place."""
    page.evaluate(BROUGHT, kept(page)["journal"][0]["group"])


def to_range(page: Page) -> None:
    """To the one range of one's own."""
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button").click()
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()


def written_down(page: Page) -> None:
    """A range of one's own, with a coach of two variants in it."""
    more(page, "Ranges")
    page.get_by_role("button", name="A range of your own").click()
    page.get_by_label("What is it called?").fill("Ostwick")
    page.get_by_role("button", name="Begin").click()
    page.get_by_role("button", name="Write down a piece").click()
    page.locator(".states button").filter(has_text="Coach").click()
    page.get_by_label("Number").fill("104")
    page.get_by_role("button", name="Answer what you see").click()
    expect(page.get_by_role("button", name="That will do")).to_be_visible()
    first = question(page)
    page.locator(".states button").first.click()
    expect(page.get_by_role("heading", level=1)).not_to_have_text(first)
    page.get_by_role("button", name="That will do").click()
    page.get_by_role("button", name="Another variant of it").click()
    page.locator(".states button").first.click()
    page.get_by_text("A variant of 104").wait_for()
    expect(page.get_by_role("heading", level=1)).to_have_text(first)
    page.locator(".states button").first.click()
    expect(page.get_by_label("What it is called")).not_to_have_value("")


def running_change(page: Page) -> None:
    """The same, with a running change of it."""
    written_down(page)
    more(page, "Ranges")
    page.get_by_role("list", name="Your own").get_by_role("button").click()
    page.get_by_role("button", name="Add a running change").click()
    page.locator(".states button").filter(has_text="Coaches").click()
    expect(page.get_by_role("heading", name="What changed?")).to_be_visible()
    page.locator(".states button").first.click()
    expect(page.get_by_text("Tap what is seen from then on.")).to_be_visible()
    page.locator(".states button").first.click()
    expect(page.get_by_label("From")).to_be_visible()


# what must be there before the way is gone
FIRST = {"aside": set_aside, "settle": clashing, "sighting": sighted}
FIRST |= dict.fromkeys(
    [
        "own",
        "writing",
        "entry",
        "version",
        "looking",
        "differing",
        "newrunning",
        "trying",
        "learned",
        "proposed",
        "rows",
        "row",
        "listin",
        "table",
        "pad",
    ],
    written_down,
)
FIRST["running"] = running_change
INSTEAD = {"came": brought}  # what cannot be reached without a server


def steps(screens: dict[str, dict[str, Any]], name: str) -> Iterator[tuple[str, str]]:
    """The way from the bar to a screen: (name of the screen, what is tapped for it)."""
    way = screens[name]["way"]
    if way[0] != "bar":
        yield from steps(screens, way[0])
    yield name, way[1] if len(way) > 1 else screens[name]["title"]


def go(page: Page, screens: dict[str, dict[str, Any]], name: str) -> None:
    """With the demo collection there, goes to a screen by what the registry says of the way."""
    FIRST.get(name, lambda _: None)(page)
    if name in INSTEAD:
        INSTEAD[name](page)
    else:
        for at, tapped in steps(screens, name):
            tap(page, at, tapped, screens[at]["way"][0] == "bar")
    page.wait_for_function("(name) => history.state.screen === name", arg=name)
    expect(page.get_by_role("heading", level=1)).to_be_visible()


def tap(page: Page, at: str, tapped: str, bar: bool) -> None:
    if bar:
        place(page, tapped)
        return
    within = page.get_by_role("main")
    if tapped.startswith("list "):
        within.get_by_role("list", name=tapped[5:]).get_by_role("button").first.click()
    else:
        named = re.compile(f"^{re.escape(tapped)}")
        within.get_by_role("button", name=named).first.click()
    page.wait_for_function("(name) => history.state.screen === name", arg=at)
