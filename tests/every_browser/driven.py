"""A phone in any of three browsers, by the one protocol that all of them speak (W3C WebDriver)."""

import math
import os
import time
from contextlib import suppress
from pathlib import Path
from typing import Any

from selenium.common.exceptions import TimeoutException, WebDriverException
from selenium.webdriver.support.ui import WebDriverWait

from tests.every_browser.openers import HEIGHT, OPENERS, WIDTH, Limits

SLIP = 0.6  # seconds within which a second tap at one place is taken for a slip of the thumb
NEAR = 120  # pixels within which two taps are at one place for a browser
STILL = 0.03  # seconds after which what lies where it lay lies still
SHORT = 3  # seconds after which a tap is tried again
LONG = 30  # seconds that anything may take on a busy machine
COLLECT = """
  window.reported ??= [];
  addEventListener("error", (event) => window.reported.push(event.message));
  addEventListener("unhandledrejection", (event) => window.reported.push(String(event.reason)));
  const old = console.error;
  console.error = (...all) => { window.reported.push(all.join(" ")); old(...all); };
"""
# where a tap on an element lands, or what keeps a finger from meeting it, though it was scrolled to
REACHED = """
  const node = %s;
  if (!node?.isConnected) return { way: "it is not there" };
  if (!node.checkVisibility({ visibilityProperty: true })) return { way: "it is not shown" };
  if (node.matches(":disabled")) return { node, way: "it cannot be used" };
  const moving = document.getAnimations().filter((one) => one.playState === "running")
    .find((one) => one.effect?.target?.contains(node));
  if (moving) return { node, way: "it still moves" };
  const here = spot();
  if (here.way === "") return here;
  node.scrollIntoView({ block: "center" });
  return spot();
  function spot() {
    const [box] = node.getClientRects();
    if (!box) return { node, way: "it has no room" };
    const { left, top, right, bottom } = box;
    const x = (Math.max(0, left) + Math.min(innerWidth, right)) / 2;
    const y = (Math.max(0, top) + Math.min(innerHeight, bottom)) / 2;
    const met = document.elementFromPoint(x, y);
    const where = `${left} ${top} to ${right} ${bottom} of ${innerWidth} ${innerHeight}`;
    if (!met) return { node, way: `it is outside the screen: ${where}` };
    if (!node.contains(met) && met.closest("label")?.control !== node)
      return { node, way: `${met.outerHTML.slice(0, 160)} lies over it: ${where}` };
    return { node, way: "", x, y };
  }
"""
# ends every service worker, asked of Firefox itself and not of a page; how many there were
END_WORKERS = """
  const [end] = arguments;
  const manager = Cc["@mozilla.org/serviceworkers/manager;1"]
    .getService(Ci.nsIServiceWorkerManager);
  const all = manager.getAllRegistrations();
  const running = [...Array(all.length).keys()]
    .map((place) => all.queryElementAt(place, Ci.nsIServiceWorkerRegistrationInfo).activeWorker)
    .filter(Boolean);
  Promise.all(running.map((one) => one.terminateWorker())).then(() => end(running.length));
"""
# much work, by which the page's process is known
BUSY = "let sum = 0; for (let i = 0; i < 2e8; i++) sum += Math.sqrt(i); return sum"
FIND = """
  [...document.querySelectorAll(arguments[1])].find((node) => node.checkVisibility()
    && (node.getAttribute("aria-label") ?? node.innerText).trim() === arguments[0])
"""


class Phone:
    """A browser with its storage in a folder: it can be ended, killed and opened again."""

    def __init__(self, name: str, folder: Path, limits: Limits | None = None) -> None:
        self.name, self.folder, self.limits = name, folder, limits or Limits()
        folder.mkdir(parents=True, exist_ok=True)
        self.open()

    def open(self) -> None:
        """Start the browser's process; what was stored is there."""
        self.driver = OPENERS[self.name](self.folder, self.limits)
        self.driver.set_script_timeout(LONG)
        self.tapped = (0.0, 0.0, 0.0)  # when and where the last tap was
        if self.name == "webkit":  # its window gets its size when the display comes to it
            self.until("innerWidth === arguments[0] && innerHeight === arguments[1]", WIDTH, HEIGHT)

    def resize(self, width: int, height: int) -> None:
        """Another screen, or the same one on its side."""
        self._set_size(width, height)
        self.until("innerWidth === arguments[0] && innerHeight === arguments[1]", width, height)

    def _set_size(self, width: int, height: int) -> None:
        if self.name == "chromium":
            metrics = {"width": width, "height": height, "deviceScaleFactor": 2, "mobile": True}
            self.driver.execute_cdp_cmd("Emulation.setDeviceMetricsOverride", metrics)
        elif self.name == "firefox":
            self.driver.browsing_context.set_viewport(
                context=self.driver.current_window_handle,
                viewport={"width": width, "height": height},
            )
        else:
            self.driver.set_window_size(width, height)

    def goto(self, url: str) -> None:
        """Open an address, and note from then on what the page reports."""
        if self.name == "chromium" and self.limits.room > 0:
            told = {"origin": url.rstrip("/"), "quotaSize": self.limits.room}
            self.driver.execute_cdp_cmd("Storage.overrideQuotaForOrigin", told)
        self.driver.get(url)
        self.driver.execute_script(COLLECT)

    def run(self, script: str, *given: Any) -> Any:
        """The body of a function in the page."""
        return self.driver.execute_script(script, *given)

    def run_later(self, script: str, *given: Any) -> Any:
        """An expression whose promise is waited for."""
        call = (
            "const end = arguments[arguments.length - 1];"
            f"Promise.resolve({script}).then((value) => end([value ?? null, '']),"
            " (error) => end([null, String(error)]))"
        )
        value, error = self.driver.execute_async_script(call, *given)
        assert error == "", error
        return value

    def until(self, script: str, *given: Any) -> Any:
        """Wait until an expression is true, however long that takes here; its value."""
        wait = WebDriverWait(self.driver, LONG, 0.05, ignored_exceptions=[WebDriverException])
        try:
            return wait.until(lambda driver: driver.execute_script(f"return {script}", *given))
        except TimeoutException:
            page = self.driver.execute_script("return document.body.innerText")
            raise AssertionError(f"not so: {script} of {given} on the page\n{page}") from None

    def soon(self, script: str, *given: Any) -> bool:
        """Whether an expression comes true within some seconds."""
        try:
            WebDriverWait(self.driver, SHORT, ignored_exceptions=[WebDriverException]).until(
                lambda driver: driver.execute_script(f"return {script}", *given)
            )
        except TimeoutException:
            return False
        return True

    def sees(self, text: str) -> None:
        """Wait until a text is on the page."""
        self.until("document.body.innerText.includes(arguments[0])", text)

    def tap(self, name: str, what: str = "button, a") -> None:
        """Tap the button of that name."""
        self.press(FIND, name, what)

    def place(self, name: str) -> None:
        """Go to one of the main screens by the bar at the bottom, once a screen is there."""
        self.until("document.querySelector('h1')")
        self.tap(name, "#places button")
        heading = {"Identify": "What have you got?"}.get(name, name)
        self.until("document.querySelector('h1')?.innerText === arguments[0]", heading)

    def press(self, script: str, *given: Any, within: float = LONG) -> None:
        """Tap the element that an expression finds, as a finger would.

        Waits until it is there, shown, lies still for three looks and is what the finger meets; by
        then it may have been drawn anew. Two quick taps at one place are a double tap, of which the
        app leaves the second out: so this waits until it would be none.
        """
        until = time.monotonic() + within
        before, way, still = None, "", 0
        while time.monotonic() < until:
            try:
                found = self.run(REACHED % script, *given)
                way, at = found["way"], (found.get("x"), found.get("y"))
                wait = 0.0 if way else self._until_no_double(*at)
                still = still + 1 if not way and at == before else 0
                if still >= 2 and wait == 0:
                    found["node"].click()
                    self.tapped = (time.monotonic(), *at)
                    return
                before = at if wait == 0 else None
            except WebDriverException as error:  # drawn anew, or moved meanwhile
                way, before, wait = f"{type(error).__name__}: {error.msg}", None, 0.0
            time.sleep(max(STILL, wait))
        page = self.run("return document.body.innerText")
        raise AssertionError(f"not tapped: {script} of {given}: {way}. On the page\n{page}")

    def _until_no_double(self, x: float, y: float) -> float:
        """How long to wait until a tap here is no double tap with the last one."""
        time_before, x_before, y_before = self.tapped
        if math.hypot(x - x_before, y - y_before) >= NEAR:
            return 0.0
        return max(0.0, time_before + SLIP - time.monotonic())

    def heading(self) -> str:
        return str(self.run("return document.querySelector('h1').innerText"))

    def reported(self) -> list[str]:
        """What went wrong in the page since it was opened."""
        return list(self.run("return window.reported ?? []"))

    def tidy(self) -> None:
        """Put it back as a test wants to find it: one empty window, of its own size."""
        first, *others = self.driver.window_handles
        for handle in others:
            self.driver.switch_to.window(handle)
            self.driver.close()
        self.driver.switch_to.window(first)
        self.driver.get("about:blank")
        self._set_size(WIDTH, HEIGHT)  # an empty page is laid out wider than the screen
        self.tapped = (0.0, 0.0, 0.0)

    def end(self) -> None:
        self.driver.quit()

    def kill_worker(self) -> None:
        """End the service worker, and nothing else."""
        if self.name == "chromium":
            self.driver.execute_cdp_cmd("ServiceWorker.enable", {})
            self.driver.execute_cdp_cmd("ServiceWorker.stopAllWorkers", {})
        elif self.name == "firefox":
            with self.driver.context(self.driver.CONTEXT_CHROME):
                assert self.driver.execute_async_script(END_WORKERS) == 1
        else:
            others = self._processes_beside_the_page()
            assert others
            for one in others:
                os.kill(one, 9)

    def kill_helper(self) -> None:
        """End WebKit's process for storage, as iOS does in the background."""
        for one in self._processes("WebKitNetwork"):
            os.kill(one, 9)

    def _processes_beside_the_page(self) -> list[int]:
        """WebKit's processes of the service worker, and any kept ready; the page's own is busy."""
        before = self._processes("WebKitWeb")
        self.run(BUSY)
        after = self._processes("WebKitWeb")
        worked = {pid: ticks - before.get(pid, ticks) for pid, ticks in after.items()}
        return sorted(worked, key=lambda pid: worked[pid])[:-1]

    def _processes(self, name: str) -> dict[int, int]:
        """The browser's processes whose name begins so; for how long each has worked."""
        found = {}
        for path in Path("/proc").glob("[0-9]*/stat"):
            with suppress(OSError):
                called, rest = path.read_text().rsplit(")", 1)
                values = rest.split()  # proc(5): [1] is the parent, [11] the time it worked
                if f"({name}" in called and self._is_mine(int(values[1])):
                    found[int(path.parent.name)] = int(values[11])
        return found

    def _is_mine(self, pid: int) -> bool:
        """Is this the process of the window, or one that it started?"""
        while pid > 1:
            with suppress(OSError):
                if str(self.folder) in Path(f"/proc/{pid}/cmdline").read_text(errors="replace"):
                    return True
            pid = int(Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()[1])
        return False

    def kill(self) -> None:
        """End it as a phone does that needs the room: without a word, at once."""
        pid = self.driver.capabilities.get("moz:processID")
        mine = str(self.folder)
        found = [int(pid)] if pid else []
        for path in Path("/proc").glob("[0-9]*/cmdline"):
            with suppress(OSError):
                if mine in path.read_text(errors="replace"):
                    found.append(int(path.parent.name))
        for one in found:
            with suppress(ProcessLookupError):
                os.kill(one, 9)
        with suppress(WebDriverException, OSError):
            self.driver.quit()
