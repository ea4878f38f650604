"""How the wide tables look to a mouse and a keyboard, and when there is something to undo."""

import pytest
from playwright.sync_api import expect

from tests.browser.phone import (
    DESK,
    PHONE,
    broken_words,
    expect_read,
    press,
    watched,
)
from tests.browser.phone_storage import add_piece, demo, more, place

WHOLE = """() => {
  const top = document.querySelector(".grid thead").getBoundingClientRect().bottom;
  return [...document.querySelectorAll(".grid tbody tr")]
    .map(row => row.getBoundingClientRect())
    .filter(box => box.top >= top - 1 && box.bottom <= innerHeight).length;
}"""
SMALL = """least => [...document.querySelectorAll("button, input, summary, .grid td:first-child")]
  .filter(one => one.checkVisibility())
  .map(one => [one.textContent.slice(0, 20), one.getBoundingClientRect()])
  .filter(([, box]) => box.width > 0 && (box.height < least || box.width < least))
  .map(([name, box]) => `${name}: ${box.width} x ${box.height}`)"""
RING = """() => {
  const { outlineStyle, outlineWidth, outlineOffset } = getComputedStyle(document.activeElement);
  return [outlineStyle, parseFloat(outlineWidth) + parseFloat(outlineOffset)];
}"""  # how far the ring of what has the focus stands out from it
ARROWS = """() => Object.fromEntries([...document.querySelectorAll(".grid .head")]
  .map(head => [head.textContent, getComputedStyle(head, "::after")])
  .filter(([, style]) => style.opacity === "1")
  .map(([name, { content }]) => [name, content[1]]))"""


def test_a_mouse_gets_many_rows_and_targets_that_it_can_hit(desk):
    desk.wait_for_function(f"() => ({WHOLE})() >= 11")
    expect_read(desk, lambda: desk.evaluate(SMALL, 24), [])
    place(desk, "Wants")
    desk.wait_for_function(f"() => ({WHOLE})() >= 13")
    more(desk, "Duplicates")
    desk.wait_for_function(f"() => ({WHOLE})() >= 11")


def test_a_finger_on_a_wide_screen_gets_larger_rows(browser, server):
    context = browser.new_context(**DESK, has_touch=True, is_mobile=True)
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    rows = page.locator(".grid tbody tr").all()[:5]
    assert len(rows) == 5
    assert all((row.bounding_box() or {"height": 0})["height"] >= 44 for row in rows)
    context.close()


def test_the_ring_of_the_focus_is_never_under_the_bar_or_the_heads(desk):
    desk.get_by_role("button", name="Keys").focus()
    press(desk, "Tab", "ArrowUp", "ArrowRight")
    expect_read(desk, lambda: desk.evaluate("document.activeElement.textContent"), "Name")
    style, out = desk.evaluate(RING)
    assert (style, out <= 0) == ("solid", True)
    press(desk, "ArrowDown", *["ArrowDown"] * 40, *["ArrowUp"] * 25)
    style, out = desk.evaluate(RING)
    assert (style, out <= 0) == ("solid", True)
    assert desk.evaluate(
        "() => document.activeElement.getBoundingClientRect().top"
        " >= document.querySelector('.grid thead').getBoundingClientRect().bottom"
    )


def test_a_head_shows_which_way_it_sorts(desk):
    head = desk.get_by_role("columnheader", name="Condition", exact=True).get_by_role("button")
    expect_read(desk, lambda: desk.evaluate(ARROWS), {})
    head.click()
    expect_read(desk, lambda: desk.evaluate(ARROWS), {"Condition": "▲"})
    head.click()
    expect_read(desk, lambda: desk.evaluate(ARROWS), {"Condition": "▼"})
    head.click()
    desk.mouse.move(0, 0)
    desk.get_by_role("button", name="Keys").focus()
    expect_read(desk, lambda: desk.evaluate(ARROWS), {})


def test_undo_is_offered_once_there_is_something_to_undo(page, server):
    page.goto(server.url)
    undo = page.get_by_role("button", name="Undo", exact=True)
    for name in ("Collection", "More"):
        place(page, name)
        expect(page.get_by_role("button", name="Back", exact=True)).to_be_visible()
        expect(undo).to_have_count(0)
    add_piece(page, "P 24")
    expect(undo).to_be_visible()
    undo.click()
    expect(page.get_by_role("alert")).to_contain_text("Undone")


@pytest.mark.parametrize("width", [360, 320])
def test_no_word_is_broken_by_large_text(browser, server, width):
    context = browser.new_context(**PHONE | {"viewport": {"width": width, "height": 740}})
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    found = {}
    for name in ("Collection", "Wants", "Notebook", "More"):
        place(page, name)
        found[name] = broken_words(page)
    more(page, "Duplicates")
    found["Duplicates"] = broken_words(page)
    more(page, "Import a list")
    found["spreadsheet"] = broken_words(page)
    assert {name: words for name, words in found.items() if words} == {}
    context.close()
