"""Lists for the import, made of the demo range, and its screen."""

import csv
import io
import random
from typing import Any

from playwright.sync_api import Page, expect

from tests.browser.phone_storage import place


def listed(pack: dict[str, Any], count: int, seed: int = 1) -> list[list[str]]:
    """An invented collector's list: its heads, and `count` rows of pieces of the range."""
    rng = random.Random(seed)
    rows = [["My no", "Number", "Name", "Condition", "Box", "Price", "Bought"]]
    for n in range(count):
        item = rng.choice(pack["items"])
        rows.append(
            [
                str(n + 1),
                item["number"],
                item["name"],
                rng.choice(["good", "very good", "mint", ""]),
                rng.choice(["y", "n", ""]),
                rng.choice(["£12.50", "12/6", "", "3 gns"]),
                rng.choice(["3/1998", "c. 1987", "", "12 May 2004"]),
            ]
        )
    return rows


def as_csv(rows: list[list[str]]) -> bytes:
    out = io.StringIO()
    csv.writer(out, delimiter=";").writerows(rows)
    return out.getvalue().encode("cp1252")


def choose_file(page: Page, name: str, content: bytes) -> None:
    """On the screen for it: choose a file, and wait until it was read."""
    page.get_by_label("Choose a file").set_input_files(
        {"name": name, "mimeType": "text/csv", "buffer": content}
    )
    expect(page.get_by_role("heading", name=name)).to_be_visible(timeout=60_000)


def open_import(page: Page) -> None:
    place(page, "More")
    page.get_by_role("main").get_by_role("button", name="Import a list").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Import a list")


def look(page: Page) -> None:
    """See what changes."""
    page.get_by_role("button", name="See what changes").click()
    expect(page.get_by_role("heading", name="What changes")).to_be_visible(timeout=60_000)
