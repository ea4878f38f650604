"""A keeper at the editor: what is tapped and typed there, and what changed in the files."""

import difflib
from pathlib import Path

from playwright.sync_api import Page, expect

from tests.browser.phone_storage import place

NEW_VERSION = "Use it now"


def texts(folder: Path) -> dict[str, str]:
    found = [path for path in folder.rglob("*") if path.is_file()]
    return {
        path.relative_to(folder).as_posix(): path.read_bytes().decode(errors="replace")
        for path in found
    }


def diff(before: dict[str, str], after: dict[str, str]) -> dict[str, list[str]]:
    """Of each file that differs, the lines taken away and put in."""
    out = {}
    for name in sorted({*before, *after}):
        lines = [each.get(name, "").splitlines() for each in (before, after)]
        told = [line for line in difflib.ndiff(*lines) if line[0] in "+-"]
        if told:
            out[name] = told
    return out


def open_editor(page: Page, *way: str) -> None:
    """To the pack, and on by the names of buttons."""
    place(page, "More")
    page.get_by_role("button", name="Ranges").click()
    page.get_by_role("button", name="Edit a range").click()
    page.get_by_role("button", name="small", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Edit Small")
    for name in way:
        step(page, name)


def step(page: Page, name: str) -> None:
    """Tap a button whose name begins so, and wait for the next screen."""
    before = page.get_by_role("heading", level=1).inner_text()
    page.get_by_role("main").get_by_role("button", name=name).first.click()
    page.wait_for_function("t => document.querySelector('h1').innerText !== t", arg=before)


def back(page: Page, times: int = 1) -> None:
    for _ in range(times):
        before = page.get_by_role("heading", level=1).inner_text()
        page.get_by_role("button", name="Back", exact=True).click()
        page.wait_for_function("t => document.querySelector('h1').innerText !== t", arg=before)


def write_in(page: Page, label: str, text: str) -> None:
    field = page.get_by_label(label, exact=True)
    field.fill(text)
    field.blur()


def standing(page: Page) -> str:
    return page.get_by_role("group", name="What is not saved").get_by_role("status").inner_text()


def save(page: Page) -> None:
    page.get_by_role("button", name="Save", exact=True).click()
    expect(page.get_by_role("alert")).to_contain_text("Saved.")
    expect(page.get_by_text("All is saved.")).to_be_visible()


def use_new_version(page: Page) -> None:
    with page.expect_navigation():
        page.get_by_role("button", name=NEW_VERSION).click()
    expect(page.get_by_role("navigation")).to_be_visible()


def ready_for_no_signal(page: Page) -> None:
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
