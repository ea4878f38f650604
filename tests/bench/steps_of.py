"""One tap and one start, step by step: when each thing had happened, looked at from the page."""

import statistics
import tempfile
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

from tests.bench.serving import ARGS, PHONE, Site, browser_path, kept_browser, served, slowed
from tests.bench.table import aligned, number
from tests.bench.taps import ALL, PAUSE, SLOWED

Told = Callable[[str], None]
ANSWERED = 3  # taps on answers after the first of a piece

# Milliseconds since the page was begun, by name; the first of each name counts.
LOOK = """
window.steps = {};
const noted = (name, at = performance.now()) => { window.steps[name] ??= at; };
const painted = (name) => requestAnimationFrame(() => {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => noted(name);
  port2.postMessage(0);
});
const open = IDBFactory.prototype.open;
IDBFactory.prototype.open = function (...given) {
  const request = open.apply(this, given);
  request.addEventListener("success", () => noted("storage open"));
  return request;
};
const begun = IDBDatabase.prototype.transaction;
IDBDatabase.prototype.transaction = function (stores, mode, ...rest) {
  const transaction = begun.call(this, stores, mode, ...rest);
  if (mode !== "readwrite" || !("finger lifted" in window.steps)) return transaction;
  noted("step handed to the disk");
  transaction.addEventListener("complete", () => noted("step safe on the disk"));
  return transaction;
};
addEventListener("pointerup", () => { window.steps = {}; noted("finger lifted"); }, true);
addEventListener("click", () => noted("the browser calls it a tap"), true);
addEventListener("DOMContentLoaded", () => {
  noted("page and script read");
  new MutationObserver(() => {
    if (!document.querySelector("#screen h1")) return;
    noted("screen changed");
    if (!("painted" in window.steps)) painted("painted");
  }).observe(document.getElementById("screen"), { childList: true });
});
"""
FETCHED = """() => performance.getEntriesByType("resource").map(({ name, responseEnd }) =>
  [name.split("/").pop() + " here", responseEnd])"""
DONE = "() => 'painted' in window.steps"
STEPS = "() => window.steps"
SHOWN = ("app.js here", "engine.js here", "index.json here", "pellmarsh.json here")

Steps = dict[str, float]


def steps_of(
    playwright: Any, files: Mapping[str, bytes], turns: int, told: Told
) -> dict[str, list[Steps]]:
    """Starts without a network, and taps after a start, so many times each."""
    first, later = _taps(playwright, files, turns, told)
    starts = list(_starts(playwright, files, turns, told))
    return {"a start": starts, "the first tap": first, "a later tap": later}


def _starts(playwright: Any, files: Mapping[str, bytes], turns: int, told: Told) -> Iterator[Steps]:
    with tempfile.TemporaryDirectory() as folder:
        site = Site(files)
        try:
            with kept_browser(playwright, Path(folder)) as context:
                page = context.new_page()
                page.goto(site.url)
                page.wait_for_function("() => navigator.serviceWorker.controller !== null")
        finally:
            site.stop()
        for _ in range(turns):
            with kept_browser(playwright, Path(folder)) as context:
                context.set_offline(True)
                page = _looked_at(context)
                page.goto(site.url)
                page.wait_for_function(DONE)
                fetched = [(name, at) for name, at in page.evaluate(FETCHED) if name in SHOWN]
                yield page.evaluate(STEPS) | dict(fetched)
            told(".")


def _taps(
    playwright: Any, files: Mapping[str, bytes], turns: int, told: Told
) -> tuple[list[Steps], list[Steps]]:
    first, later = [], []
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    try:
        with served(files) as site:
            for _ in range(turns):
                context = browser.new_context(service_workers="block", **PHONE)
                page = _looked_at(context)
                page.goto(site.url)
                page.wait_for_function(DONE)
                page.wait_for_timeout(PAUSE)
                first.append(_tapped(page, page.get_by_role("button", name=ALL, exact=True)))
                for _ in range(ANSWERED):
                    states = page.locator(".states button")
                    if states.count() > 0:
                        later.append(_tapped(page, states.first))
                context.close()
                told(".")
    finally:
        browser.close()
    return first, later


def _looked_at(context: Any) -> Any:
    page = context.new_page()
    page.add_init_script(LOOK)
    slowed(page, SLOWED)
    return page


def _tapped(page: Any, button: Any) -> Steps:
    """The steps of one tap, from the finger's lifting on."""
    button.tap()
    page.wait_for_function(DONE)
    steps: Steps = page.evaluate(STEPS)
    page.wait_for_timeout(PAUSE)
    from_then = steps["finger lifted"]
    return {name: at - from_then for name, at in steps.items()}


def steps_table(found: dict[str, list[Steps]]) -> str:
    """When each thing had happened: the median, and the latest of all turns."""
    rows: list[tuple[str, ...]] = [("ms", "median", "latest")]
    for what, turns in found.items():
        rows.append((f"{what} ({len(turns)} times)", "", ""))
        names = {name for steps in turns for name in steps}
        times = {name: [steps[name] for steps in turns if name in steps] for name in names}
        for name in sorted(names, key=lambda one: statistics.median(times[one])):
            all_of = times[name]
            rows.append((f"  {name}", number(statistics.median(all_of)), number(max(all_of))))
    return "\n".join(aligned(rows))
