"""Contact sheets: python -m tests.contact_sheets FOLDER

Every screen and state that the access tests walk to, on a phone and in a wide window, by day, in
the dark and in the sun, eight (wide: four) to a sheet. Made before and after a change of the look,
and looked at.
"""

import sys
from collections.abc import Callable, Iterator
from functools import partial
from io import BytesIO
from pathlib import Path
from typing import Any

from PIL import Image, ImageDraw, ImageFont
from playwright.sync_api import Browser, Error, Page, sync_playwright

from identify import phone
from tests.browser import registry
from tests.browser.phone import DESK, LIGHTS, PHONE
from tests.browser.phone_storage import demo
from tests.browser.test_access import SCREENS
from tests.conftest import ARGS, light_browser_path, serving
from tests.kept_site import kept_site

Shots = dict[str, bytes]  # a picture of each light
Registry = dict[str, dict[str, Any]]
Way = Callable[[Page, Registry], None]
COLUMNS, ROWS = 4, 2
GAP = 16
NAME = 20  # pixels for the name under a picture
NARROW = {"width": 360, "height": 740}
SIZES: dict[str, dict[str, Any]] = {"phone": {**PHONE, "device_scale_factor": 1}, "wide": DESK}
QUIET = {"reduced_motion": "reduce"}


def in_lights(page: Page) -> Shots:
    """The screen in each light."""
    shots = {}
    for light in LIGHTS:
        page.evaluate("light => { document.documentElement.dataset.light = light; }", light)
        page.wait_for_timeout(200)  # what is loaded later, such as a portrait
        shots[light] = page.screenshot()
    return shots


def to_state(walk: Callable[[Page], None], page: Page, _: Registry) -> None:
    """The way to a state of a screen."""
    walk(page)


def to_screen(name: str, page: Page, screens: Registry) -> None:
    """The way to a screen of the registry, with the demo collection there."""
    demo(page)
    registry.go(page, screens, name)


def ways() -> Iterator[tuple[str, Way, bool]]:
    """Of each state or screen its name, the way there, and whether a reload keeps it."""
    for walk in SCREENS:
        yield walk.__name__, partial(to_state, walk), False
    for name in registry.NAMES:
        yield f"registry: {name}", partial(to_screen, name), True


def taken(browser: Browser, url: str, size: str) -> Iterator[tuple[str, Shots]]:
    """Every screen at one size. The ways are a phone’s: the window widens at their end."""
    screens = registry.read(browser)
    for name, way, kept in ways():
        context = browser.new_context(**{**SIZES[size], **QUIET, "viewport": NARROW})
        page = context.new_page()
        page.goto(url)
        try:
            way(page, screens)
        except (Error, AssertionError) as error:
            print(f"{size}, {name}: {str(error).splitlines()[0]}", file=sys.stderr)
        page.set_viewport_size(SIZES[size]["viewport"])
        if size == "wide" and kept:
            page.reload()
            page.get_by_role("heading", level=1).wait_for()
        page.evaluate("scrollTo(0, 0)")
        yield name, in_lights(page)
        context.close()


def sheet(shots: list[tuple[str, bytes]], columns: int) -> Image.Image:
    """Pictures in rows, each with its name beneath."""
    pictures = [(name, Image.open(BytesIO(shot)).convert("RGB")) for name, shot in shots]
    width, height = pictures[0][1].size
    rows = -(-len(pictures) // columns)
    across, down = width + GAP, height + NAME + GAP
    made = Image.new("RGB", (columns * across + GAP, rows * down + GAP), "#888888")
    pen = ImageDraw.Draw(made)
    font = ImageFont.load_default(14)
    for n, (name, picture) in enumerate(pictures):
        x, y = GAP + n % columns * across, GAP + n // columns * down
        made.paste(picture, (x, y))
        pen.text((x, y + height + 2), name, "#ffffff", font)
    return made


def main(folder: Path) -> None:
    """Writes <size>-<light>-<number>.png for all sizes and lights."""
    folder.mkdir(parents=True, exist_ok=True)
    site = kept_site(phone.demo_packs())
    with serving(site) as server, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=light_browser_path(), args=ARGS)
        for size in SIZES:
            columns = COLUMNS if size == "phone" else COLUMNS // 2
            shown = list(taken(browser, server.url, size))
            for light in LIGHTS:
                for at in range(0, len(shown), columns * ROWS):
                    some = [(name, by[light]) for name, by in shown[at : at + columns * ROWS]]
                    number = at // (columns * ROWS) + 1
                    sheet(some, columns).save(folder / f"{size}-{light}-{number:02}.png")
        browser.close()


if __name__ == "__main__":
    if len(sys.argv) != 2:
        raise SystemExit("Name a folder for the sheets: python -m tests.contact_sheets FOLDER")
    main(Path(sys.argv[1]))
