"""What the hand feels, in a real Chromium with its CPU slowed: taps, cold starts, bytes, memory."""

import gzip
import statistics
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from identify.core.types.pack import Pack
from identify.errors import UserError
from tests.bench.serving import ARGS, PHONE, Site, browser_path, kept_browser, served, slowed
from tests.bench.sessions import STEPS, likeliest, rows_of

Step = Callable[[], None]
Walk = tuple[int, int]  # so many pieces, and milliseconds between the taps
SLOWED = 4.0
PAUSE = 1500  # milliseconds: nobody answers a question sooner than that after it is shown
PATIENCE = 10  # taps of five seconds each
ALL = "Not sure: ask me"
CRITICAL = ("index.html", "style.css", "app.js", "engine.js", "light.js", "manifest.webmanifest")

# From the finger's lifting to the frame with the new screen on it. Event Timing rounds to 8 ms.
WATCH = """
window.taps = [];
let lifted = 0;
const painted = (then) => requestAnimationFrame(() => {
  const channel = new MessageChannel();
  channel.port1.onmessage = () => then(performance.now());
  channel.port2.postMessage(0);
});
addEventListener("pointerup", () => { lifted = performance.now(); }, true);
addEventListener("DOMContentLoaded", () => {
  new MutationObserver(() => {
    if (window.usable === undefined && document.querySelector("#screen h1")) {
      window.usable = null;
      painted((now) => { window.usable = now; });
    }
    if (lifted === 0) return;
    const from = lifted;
    lifted = 0;
    painted((now) => window.taps.push(now - from));
  }).observe(document.getElementById("screen"), { childList: true });
});
"""


def share(times: list[float], part: float) -> float:
    """The time that this part of them does not exceed."""
    return sorted(times)[max(0, min(len(times) - 1, int(part * len(times) + 0.999999) - 1))]


def tap_times(
    playwright: Any, files: Mapping[str, bytes], pack: Pack, walk: Walk, tick: Step
) -> dict[str, Any]:
    """Identify pieces by taps: milliseconds from lifting the finger to the painted answer.

    The first tap of each piece is the first after opening the app.
    """
    pieces, pause = walk
    first: list[float] = []
    later: list[float] = []
    heap = 0
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    try:
        with served(files) as site:
            for row in rows_of(pack, pieces):
                context = browser.new_context(service_workers="block", **PHONE)
                context.add_init_script(WATCH)
                page = context.new_page()
                slowed(page, SLOWED)
                taken = one_piece(page, site.url, pack, row, pause)
                first += taken[:1]
                later += taken[1:]
                heap = max(heap, heap_of(page))
                context.close()
                tick()
    finally:
        browser.close()
    every = first + later
    return {
        "rows": len(pack["rows"]["kind"]),
        "taps": len(every),
        "first": max(first),
        "p50": statistics.median(every),
        "p98": share(every, 0.98),
        "slowest": max(every),
        "heap_mb": heap / 1e6,
    }


def one_piece(page: Any, url: str, pack: Pack, row: int, pause: int) -> list[float]:
    """Open the app, begin, and answer what is asked as this issue is; the time of every tap."""
    page.goto(url)
    page.get_by_role("heading", level=1).wait_for(timeout=120_000)
    page.wait_for_timeout(pause)
    page.evaluate("() => { window.taps.length = 0; }")
    choice = page.get_by_role("button", name=ALL, exact=True)
    asked = {feature["question"]: n for n, feature in enumerate(pack["features"])}
    for step in range(STEPS + 1):
        tapped(page, choice, step)
        top = page.get_by_role("heading", level=1)
        place = asked.get(top.get_attribute("aria-label") or top.inner_text())
        if place is None:
            break
        page.wait_for_timeout(pause)
        seen = pack["features"][place]["states"][likeliest(pack, place, row)]["name"]
        choice = page.locator(".states button").filter(has=page.get_by_text(seen, exact=True)).first
        if choice.count() == 0:
            choice = page.get_by_role("button", name="Can’t see it", exact=True)
    times: list[float] = page.evaluate("() => window.taps")
    return times


def tapped(page: Any, choice: Any, done: int) -> None:
    """Tap, and wait for the new screen, the one after `done` others. The app takes a tap that comes
    while the last one is being stored for a slip: then as a person does, once more.
    """
    for _ in range(PATIENCE):
        choice.tap()
        for _ in range(50):
            if page.evaluate("() => window.taps.length") > done:
                return
            page.wait_for_timeout(100)
    raise UserError("The app did not go on after a tap: this pack cannot be tapped through.")


def heap_of(page: Any) -> int:
    """Bytes of JavaScript objects on the page, after what is free was collected."""
    session = page.context.new_cdp_session(page)
    session.send("HeapProfiler.collectGarbage")
    return int(session.send("Runtime.getHeapUsage")["usedSize"])


def cold_starts(
    playwright: Any, files: Mapping[str, bytes], runs: int, tick: Step
) -> dict[str, Any]:
    """Milliseconds from opening the app to its first usable screen: a new process each time, a
    stopped server, no network; and the bytes of a first visit.
    """
    times = []
    with tempfile.TemporaryDirectory() as folder:
        site = Site(files)
        try:
            with kept_browser(playwright, Path(folder)) as context:
                page = context.new_page()
                page.goto(site.url)
                page.get_by_role("heading", level=1).wait_for()
                page.evaluate("() => navigator.serviceWorker.ready")
                page.wait_for_function("() => navigator.serviceWorker.controller !== null")
                kept = page.evaluate("async () => (await navigator.storage.estimate()).usage")
        finally:
            site.stop()
        for _ in range(runs):
            with kept_browser(playwright, Path(folder)) as context:
                context.set_offline(True)
                page = context.new_page()
                page.add_init_script(WATCH)
                slowed(page, SLOWED)
                page.goto(site.url)
                page.wait_for_function("() => typeof window.usable === 'number'")
                times.append(float(page.evaluate("() => window.usable")))
            tick()
    return {
        "runs": runs,
        "median": statistics.median(times),
        "slowest": max(times),
        "sent": sent(files),
        "kept": kept,
    }


def sent(files: Mapping[str, bytes]) -> dict[str, int]:
    """Bytes over the wire, compressed, of what the first question needs, and of everything."""
    sizes = {name: len(gzip.compress(content, 9)) for name, content in files.items()}
    script = sum(sizes.get(name, 0) for name in ("app.js", "engine.js"))
    shell = sum(sizes.get(name, 0) for name in CRITICAL)
    packs = {n: s for n, s in sizes.items() if n.startswith("packs/") and n.count("/") == 1}
    first = packs.get("packs/pellmarsh.json", 0) + packs.get("packs/index.json", 0)
    return {"script": script, "shell": shell, "first": shell + first, "all": sum(sizes.values())}
