"""A minute at the stall as one moving picture: what is on the screen, and where the thumb goes."""

import re
from io import BytesIO
from pathlib import Path

from PIL import Image, ImageDraw
from playwright.sync_api import Locator, Page

from identify.core.types.pack import Pack
from tests.browser.phone import asking, question, whole_piece

WIDTH = 360  # as many pixels as the phone has in CSS: small enough for a page
SEEN = 1100  # milliseconds that a screen is looked at
TAPPED = 350  # milliseconds that the thumb is down
LAST = 3500
THUMB = 26  # pixels of radius
QUESTIONS = 14  # more than a piece is ever asked for
SEED = 5  # of an engine that the demo collection has


class Film:
    """The frames so far; `page` is what they are taken of."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.frames: list[Image.Image] = []
        self.times: list[int] = []

    def look(self, time: int = SEEN) -> None:
        """The screen as it stands."""
        self.page.wait_for_timeout(300)  # let what moves end
        shot = Image.open(BytesIO(self.page.screenshot(scale="css"))).convert("RGB")
        self.frames.append(shot)
        self.times.append(time)

    def tap(self, place: Locator) -> None:
        """The screen, the thumb on it, and then the tap itself."""
        place.scroll_into_view_if_needed()
        self.look()
        box = place.bounding_box()
        assert box is not None
        x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
        shot = self.frames[-1].copy()
        round_it = (x - THUMB, y - THUMB, x + THUMB, y + THUMB)
        ImageDraw.Draw(shot, "RGBA").ellipse(round_it, (11, 74, 51, 110), (11, 74, 51, 255), 3)
        self.frames.append(shot)
        self.times.append(TAPPED)
        before = self.page.locator("body").inner_text()
        place.click()
        self.page.wait_for_function("t => document.body.innerText !== t", arg=before)

    def save(self, path: Path) -> None:
        first, *others = self.frames
        first.save(
            path,
            save_all=True,
            append_images=others,
            duration=self.times,
            loop=0,
            quality=70,
            method=6,
        )


def stall_minute(page: Page, pack: Pack, path: Path) -> None:
    """From the start to what it is, whether the seller's date holds, and what it means."""
    film = Film(page)
    features = {feature["question"]: feature for feature in pack["features"]}
    shown = whole_piece(pack, "locomotive", SEED).states
    kind = page.get_by_role("button", name="Locomotive or power car", exact=True)
    film.tap(kind)
    for _ in range(QUESTIONS):
        alike = page.get_by_role("button", name="All fits", exact=True)
        if alike.count():
            film.tap(alike)
        elif page.locator("#screen > .which").count():
            film.tap(page.get_by_role("button", name="Ask in words", exact=True))
        elif asking(page):
            feature = features[question(page)]
            name = next(s["name"] for s in feature["states"] if s["id"] == shown[feature["id"]])
            film.tap(page.locator(".states").get_by_role("button", name=name, exact=True))
        else:
            break
    film.tap(page.get_by_role("button", name=re.compile("^Seller’s date")))
    sheet = page.get_by_role("dialog")
    film.tap(sheet.get_by_role("button", name="1960s", exact=True))
    film.look()
    sheet.get_by_role("button", name="Close", exact=True).click()
    film.look(LAST)
    film.save(path)
