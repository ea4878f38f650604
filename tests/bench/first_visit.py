"""A first visit on a slow line: when the start screen is there, when it can be used, what moved."""

import statistics
from collections.abc import Mapping
from typing import Any

from tests.bench.serving import ARGS, PHONE, Site, browser_path, slowed
from tests.bench.taps import ALL, SLOWED, WATCH, Step

# slow 4G, as Lighthouse has it: bytes a second, and milliseconds before each answer
SLOW_LINE = {"offline": False, "latency": 150, "downloadThroughput": 2e5, "uploadThroughput": 9e4}
LONG = 120_000
# how far things on the screen moved by themselves (Layout Instability, web.dev/cls)
MOVED = """
window.moved = 0;
new PerformanceObserver((list) => {
  for (const { value, hadRecentInput } of list.getEntries()) if (!hadRecentInput) moved += value;
}).observe({ type: "layout-shift", buffered: true });
"""
# taps the button as soon as it is there, and notes when the screen after it is painted
USED = """(name) => new Promise((done) => {
  const painted = (then) => requestAnimationFrame(() => {
    const channel = new MessageChannel();
    channel.port1.onmessage = () => then(performance.now());
    channel.port2.postMessage(0);
  });
  const screen = document.getElementById("screen");
  const tap = () => {
    const button = [...document.querySelectorAll("#screen button")].find(
      (one) => one.textContent.endsWith(name));
    if (!button) return false;
    new MutationObserver((_, watching) => {
      watching.disconnect();
      painted(done);
    }).observe(screen, { childList: true });
    button.click();
    return true;
  };
  if (tap()) return;
  new MutationObserver((_, watching) => { if (tap()) watching.disconnect(); })
    .observe(screen, { childList: true, subtree: true });
})"""


def first_visits(
    playwright: Any, files: Mapping[str, bytes], runs: int, tick: Step
) -> dict[str, Any]:
    """Medians of visits with nothing kept, the line and the CPU slowed: milliseconds to the painted
    start screen (`shown`) and to the first question, tapped for at once (`used`); most that moved.
    """
    shown, used, moved = [], [], []
    browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
    site = Site(files)
    try:
        for _ in range(runs):
            context = browser.new_context(**PHONE)
            context.add_init_script(WATCH + MOVED)
            page = context.new_page()
            slowed(page, SLOWED)
            line = page.context.new_cdp_session(page)
            line.send("Network.enable")
            line.send("Network.emulateNetworkConditions", SLOW_LINE)
            page.goto(site.url, wait_until="commit", timeout=LONG)
            page.wait_for_function("() => document.getElementById('screen') !== null")
            used.append(float(page.evaluate(USED, ALL)))
            shown.append(float(page.evaluate("() => window.usable")))
            moved.append(float(page.evaluate("() => window.moved")))
            context.close()
            tick()
    finally:
        browser.close()
        site.stop()
    return {
        "runs": runs,
        "shown": statistics.median(shown),
        "used": statistics.median(used),
        "moved": max(moved),
    }
