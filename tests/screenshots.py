"""Makes the pictures of the README from the running app: python -m tests.screenshots"""

import re
from pathlib import Path
from typing import Any

import orjson
from playwright.sync_api import Browser, Page, sync_playwright

from identify import phone
from identify.core.types.pack import Pack
from tests.browser.phone import (
    DESK,
    PHONE,
    begin,
    more_of_question,
    question,
    see,
    see_all,
    whole_piece,
)
from tests.browser.phone_storage import demo, place
from tests.conftest import ARGS, browser_path, serving
from tests.moving_picture import SEED as ENGINE
from tests.moving_picture import stall_minute

SEED = 22  # of a piece that the demo collection has
FOLDER = Path(__file__).resolve().parent.parent / "fixtures" / "screenshots"


def take(page: Page, name: str) -> None:
    page.wait_for_timeout(300)  # let transitions end
    page.screenshot(path=FOLDER / f"{name}.png")


def opened(browser: Browser, url: str, size: dict[str, Any]) -> Page:
    """The app in a browser of its own, at its second start: by then its letters are there."""
    page = browser.new_context(**size).new_page()
    page.goto(url)
    page.get_by_role("heading", level=1).wait_for()
    page.reload()
    return page


def asked(page: Page, pack: Pack) -> None:
    """A question, why not another, the seller's date, and the answer."""
    begin(page, "Locomotive or power car")
    features = {feature["question"]: feature for feature in pack["features"]}
    shown = whole_piece(pack, "locomotive", ENGINE).states
    for _ in range(2):
        feature = features[question(page)]
        see(page, next(s["name"] for s in feature["states"] if s["id"] == shown[feature["id"]]))
    take(page, "question")
    page.get_by_role("button", name=re.compile("^So far")).click()
    page.get_by_role("dialog").get_by_role("button", name=re.compile("^Why not")).nth(5).click()
    page.locator(".candidates .reasons:not([hidden])").scroll_into_view_if_needed()
    take(page, "why-not")
    page.get_by_role("dialog").get_by_role("button", name="Close", exact=True).click()
    more_of_question(page, "Check the seller’s date")
    page.get_by_role("button", name="1940s", exact=True).click()
    page.get_by_role("button", name="1949", exact=True).click()
    take(page, "seller")


def answered(page: Page, pack: Pack) -> None:
    """With the demo collection: what it is, and what that means."""
    demo(page)
    place(page, "Identify")
    take(page, "start")
    begin(page, "Coach")
    see_all(page, pack, whole_piece(pack, "coach", SEED))
    take(page, "answer")
    place(page, "Collection")
    take(page, "collection")


def at_home(page: Page) -> None:
    """In a wide window: the collection as a table, and a piece beside it."""
    demo(page)
    cells = page.locator(".grid tbody tr td:nth-child(4)")
    cells.nth(1).click()
    cells.nth(3).click(modifiers=["Shift"])
    page.evaluate("scrollTo(0, 0)")
    take(page, "table")
    page.locator(".grid tbody .link").nth(5).click()
    page.locator(".neighbours").wait_for()
    take(page, "record")


def main() -> None:
    """Identifying a piece, the seller's date, and the demo collection."""
    FOLDER.mkdir(exist_ok=True)
    site = phone.site(phone.demo_packs())
    with serving(site) as server, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
        pack = orjson.loads(site["packs/pellmarsh.json"])
        asked(opened(browser, server.url, PHONE), pack)
        answered(opened(browser, server.url, PHONE), pack)
        page = opened(browser, server.url, PHONE)
        demo(page)
        place(page, "Identify")
        stall_minute(page, pack, FOLDER / "minute.webp")
        at_home(opened(browser, server.url, DESK))
        browser.close()


if __name__ == "__main__":
    main()
