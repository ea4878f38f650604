"""A collection's first sync, from the phone that has it and onto one that has nothing yet, while
somebody goes on tapping.
"""

import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import Any

from tests.bench.own_server import OwnServer
from tests.bench.serving import kept_browser, slowed
from tests.bench.taps import ALL, SLOWED, WATCH, share
from tests.bench.walking import LONG, OPENED, Told, Walk

PAUSE = 400  # milliseconds between two taps
AT_ONCE = 100  # milliseconds: what a tap may take
# when the last whole round was over, as the app itself notes it; "" before the first
DONE = """() => new Promise((tell, fail) => {
  const opening = indexedDB.open("identify");
  opening.onerror = () => fail(opening.error);
  opening.onsuccess = () => {
    const database = opening.result;
    const asked = database.transaction("kept").objectStore("kept").get("sync");
    asked.onsuccess = () => { tell(Boolean(asked.result?.touched)); database.close(); };
    asked.onerror = () => { fail(asked.error); database.close(); };
  };
})"""


def sent(walk: Walk, server: OwnServer) -> None:
    """All of it to the server, and what needs a server."""
    page = walk.page
    page.goto("about:blank")
    with walk.step("first sync") as found:
        _paired(walk, server)
        found.update(_tapped_until_done(walk))
    walk.more("Devices and sync")
    box = page.get_by_role("group", name="Sync")
    with walk.step("another round of sync"):
        page.get_by_role("button", name="Sync now").click()
        box.and_(page.locator("[aria-busy=false]")).wait_for(timeout=LONG)
    walk.more("Print or save")
    with walk.step("a spreadsheet"), page.expect_download(timeout=LONG):
        walk.button("Make the file").click()


def taken(
    playwright: Any, server: OwnServer, pieces: int, told: Told, then: Callable[[Walk], None]
) -> dict[str, Any]:
    """Steps of another phone that takes all of it in, its CPU slowed, and of what is done then."""
    with tempfile.TemporaryDirectory() as folder, _fresh(playwright, Path(folder), server) as page:
        walk = Walk(page, pieces, told)
        slowed(page, SLOWED)
        with walk.step("first sync of another phone") as found:
            _paired(walk, server)
            found.update(_tapped_until_done(walk))
        then(walk)
        steps: dict[str, Any] = walk.out["steps"]
        return steps


@contextmanager
def _fresh(playwright: Any, folder: Path, server: OwnServer) -> Iterator[Any]:
    with kept_browser(playwright, folder) as context:
        context.add_init_script(WATCH)
        page = context.new_page()
        page.goto(server.url)
        page.wait_for_function(OPENED)
        yield page


def _paired(walk: Walk, server: OwnServer) -> None:
    page = walk.page
    page.goto(server.link())
    page.get_by_label("What to call this device").fill("Phone", timeout=LONG)
    page.get_by_role("button", name="Pair", exact=True).click()
    page.get_by_text("This device is paired").wait_for(timeout=LONG)


def _tapped_until_done(walk: Walk) -> dict[str, float]:
    """Begins a piece and answers its first question, again and again: each of these taps waits for
    the disk. Gives how many there were and how long they took to the painted screen.
    """
    page = walk.page
    walk.place("Identify")
    walk.at("What have you got?")
    times: list[float] = []
    while not page.evaluate(DONE):
        for choice in (walk.button(ALL), page.locator(".states button").first):
            choice.wait_for(timeout=LONG)
            page.wait_for_timeout(PAUSE)
            page.evaluate("() => { window.taps.length = 0; }")
            choice.click(timeout=LONG)
            page.wait_for_function("() => window.taps.length > 0", timeout=LONG)
            times += page.evaluate("() => window.taps")
        page.wait_for_timeout(PAUSE)
        page.go_back()
        page.get_by_role("group", name="Tap what you see").wait_for(timeout=LONG)
        page.go_back()
        walk.at("What have you got?")
    if not times:
        return {"taps": 0}
    late = sum(1 for one in times if one > AT_ONCE)
    return {"taps": len(times), "p98": share(times, 0.98), "slowest": max(times), "late": late}
