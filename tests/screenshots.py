"""Makes the pictures of the README from the running app: python -m tests.screenshots"""

import re
from pathlib import Path

from playwright.sync_api import Page, sync_playwright

from identify import phone
from tests.browser.phone import PHONE, asking, begin, choices, more_of_question, see
from tests.browser.phone_storage import demo, place
from tests.conftest import ARGS, browser_path, serving

FOLDER = Path(__file__).resolve().parent.parent / "fixtures" / "screenshots"


def take(page: Page, name: str) -> None:
    page.wait_for_timeout(300)  # let transitions end
    page.screenshot(path=FOLDER / f"{name}.png")


def main() -> None:
    """Identifying a piece, the seller's date, and the demo collection."""
    FOLDER.mkdir(exist_ok=True)
    with serving(phone.site(phone.demo_packs())) as server, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
        page = browser.new_context(**PHONE).new_page()
        page.goto(server.url)
        begin(page, "Locomotive or power car")
        see(page, choices(page)[0])
        see(page, choices(page)[3])
        take(page, "question")
        page.get_by_role("button", name=re.compile("^So far")).click()
        page.get_by_role("dialog").get_by_role("button", name=re.compile("^Why not")).first.click()
        take(page, "why-not")
        page.get_by_role("dialog").get_by_role("button", name="Close", exact=True).click()
        more_of_question(page, "Check the seller’s date")
        page.get_by_role("button", name="1950s", exact=True).click()
        page.get_by_role("button", name="1953", exact=True).click()
        take(page, "seller")
        page.get_by_role("dialog").get_by_role("button", name="Forget this date").click()
        while asking(page):
            see(page, choices(page)[0])
        take(page, "answer")
        page.evaluate("indexedDB.deleteDatabase('identify')")
        page.goto(server.url)
        demo(page)
        take(page, "collection")
        place(page, "Notebook")
        take(page, "notebook")
        desk = browser.new_context(viewport={"width": 1280, "height": 800}).new_page()
        desk.goto(server.url)
        demo(desk)
        cells = desk.locator(".grid tbody tr td:nth-child(4)")
        cells.nth(1).click()
        cells.nth(3).click(modifiers=["Shift"])
        desk.evaluate("scrollTo(0, 0)")
        take(desk, "table")
        browser.close()


if __name__ == "__main__":
    main()
