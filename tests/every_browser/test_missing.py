"""Where a browser or a part of one is missing, the tests that need it fail with a sentence."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from identify.shipped import ROOT
from tests.conftest import BROWSERS
from tests.every_browser.openers import OPENERS, Limits, display, webkit_driver

PROGRAMS = (*BROWSERS, "chromedriver", "firefox-esr", "WebKitWebDriver", "Xvfb")
CHROMIUM = "need a real Chromium on PATH and found none. Debian: apt-get install chromium"
NEEDED = "The tests in every browser need {} on PATH. Debian: apt-get install {}"


def without(missing: tuple[str, ...], folder: Path) -> str:
    """A PATH with what the tests in every browser need, but for some of it."""
    folder.mkdir()
    for name in PROGRAMS:
        path = shutil.which(name)
        if path and name not in missing:
            (folder / name).symlink_to(path)
    return str(folder)


@pytest.mark.parametrize(
    ("name", "missing", "sentence"),
    [
        ("chromium", BROWSERS, CHROMIUM),
        ("chromium", ("chromedriver",), NEEDED.format("chromedriver", "chromium-driver")),
        ("firefox", ("firefox-esr",), NEEDED.format("firefox-esr", "firefox-esr")),
        ("webkit", ("WebKitWebDriver",), NEEDED.format("WebKitWebDriver", "webkit2gtk-driver")),
    ],
)
def test_a_missing_program_is_named_with_its_package(
    name: str,
    missing: tuple[str, ...],
    sentence: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
):
    monkeypatch.setenv("PATH", without(missing, tmp_path / "path"))
    webkit_driver.cache_clear()
    with pytest.raises(pytest.fail.Exception) as told:
        OPENERS[name](tmp_path, Limits())
    assert sentence in str(told.value)


def test_a_missing_screen_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    monkeypatch.setenv("PATH", without(("Xvfb",), tmp_path / "path"))
    with pytest.raises(pytest.fail.Exception) as told, display():
        pass
    assert NEEDED.format("Xvfb", "xvfb") in str(told.value)


def test_a_missing_part_of_webkits_window_is_named(tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    (tmp_path / "gi.py").write_text("raise ImportError")
    monkeypatch.setenv("PYTHONPATH", str(tmp_path))
    webkit_driver.cache_clear()
    with pytest.raises(pytest.fail.Exception) as told:
        webkit_driver()
    assert "Debian: apt-get install python3-gi gir1.2-webkit2-4.1" in str(told.value)


def test_a_shared_run_says_so_too(tmp_path: Path):
    """Where several processes share the tests, as in the README's line."""
    environment = os.environ | {"PATH": without(PROGRAMS[:-1], tmp_path / "path")}
    run = [sys.executable, "-m", "pytest", "-n", "1", "-p", "no:cacheprovider", "-k", "home_screen"]
    told = subprocess.run(
        [*run, "tests/every_browser/test_installing.py"],
        cwd=ROOT, env=environment, capture_output=True, text=True, check=False,
    )  # fmt: skip
    assert told.returncode == 1
    assert "INTERNALERROR" not in told.stdout
    for sentence in (
        CHROMIUM,
        NEEDED.format("firefox-esr", "firefox-esr"),
        NEEDED.format("WebKitWebDriver", "webkit2gtk-driver"),
    ):
        assert sentence in told.stdout
