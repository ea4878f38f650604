"""An evening at home: a wide window, a keyboard, and no hand on the screen."""

import re

import orjson
import pytest
from playwright.sync_api import Page, expect

from identify.phone import DEMO
from tests.browser.phone import (
    DESK,
    begin,
    choices,
    expect_question,
    expect_read,
    more_of_question,
    press,
    question,
    see,
    violations,
    watched,
)
from tests.browser.phone_storage import add_piece, kept, more, photo, place, records

FOCUSED = "() => document.activeElement.closest('tr')?.querySelector('.link')?.textContent ?? ''"
TWELVE_AND_SIX = {"minor": 62, "over": 24, "currency": "GBP", "typed": "12/6"}
DROP = """async ([selector, files]) => {
  const carried = new DataTransfer();
  for (const [name, type, bytes] of files)
    carried.items.add(new File([new Uint8Array(bytes)], name, { type }));
  const node = document.querySelector(selector);
  for (const type of ["dragover", "drop"])
    node.dispatchEvent(
      new DragEvent(type, { dataTransfer: carried, bubbles: true, cancelable: true }));
}"""


def rows(page: Page) -> list[list[str]]:
    """The rows of the table on the screen, cell by cell."""
    found: list[list[str]] = page.evaluate(
        "() => [...document.querySelectorAll('.grid tbody tr')]"
        ".map(r => [...r.cells].slice(1).map(c => c.textContent))"
    )
    return found


def into_table(page: Page) -> None:
    """With Tab alone, to the first row."""
    for _ in range(40):
        press(page, "Tab")
        if page.evaluate(FOCUSED):
            return
    raise AssertionError("Tab does not reach the table")


def test_everything_is_done_with_the_keyboard(desk):
    """From the head of the table to a field of several pieces changed, one opened, some deleted."""
    into_table(desk)
    first = rows(desk)[0][1]
    assert desk.evaluate(FOCUSED) == first
    press(desk, "ArrowUp", "ArrowRight", "ArrowRight", "ArrowRight", "Enter")
    condition = desk.get_by_role("columnheader", name="Condition")
    expect(condition).to_have_attribute("aria-sort", "ascending")
    expect_read(desk, lambda: rows(desk)[0][3], "poor")
    press(desk, "Enter")
    expect(condition).to_have_attribute("aria-sort", "descending")
    expect_read(desk, lambda: rows(desk)[0][3], "as new")
    press(desk, "ArrowDown")  # to the first row of the new order, not to the one left before
    assert rows(desk)[0][1] != first
    expect_read(desk, lambda: desk.evaluate(FOCUSED), rows(desk)[0][1])
    press(desk, "ArrowUp", "ArrowRight", "ArrowRight", "ArrowRight", "Enter")
    expect_read(desk, lambda: rows(desk)[0][1], first)
    press(desk, "ArrowDown", "Space", "Shift+ArrowDown", "Shift+ArrowDown")
    expect(desk.get_by_text("3 pieces selected.")).to_be_visible()
    named = [row[0] for row in rows(desk)[:3]]

    before = {r["id"]: r for r in records(desk, "piece")}
    press(desk, "e")
    sheet = desk.get_by_role("dialog")
    sheet.get_by_label("Which field").select_option("where")
    desk.get_by_label("Where it was bought").type("Corrick")
    expect(sheet.get_by_role("status")).to_contain_text("3 of 3 change to: Corrick. Now there:")
    press(desk, "Tab", "Tab", "Enter")
    expect(desk.get_by_role("alert")).to_contain_text("Where it was bought of 3 pieces changed.")
    changed = [r for r in records(desk, "piece") if r != before[r["id"]]]
    assert [r["item"] for r in changed] == named
    assert all(r | {"changed": before[r["id"]]["changed"], "where": before[r["id"]]["where"]}
               == before[r["id"]] for r in changed)  # fmt: skip
    assert len({e["group"] for e in kept(desk)["journal"] if e["type"] == "piece"
                and e["what"].startswith("Where")}) == 1  # fmt: skip
    press(desk, "Control+z")
    expect(desk.get_by_role("alert")).to_contain_text("Undone:")
    assert {r["id"]: r["where"] for r in records(desk, "piece")} == {
        id_: r["where"] for id_, r in before.items()
    }

    into_table(desk)
    press(desk, "Escape", "Enter")
    expect(desk.get_by_role("heading", level=1)).to_contain_text(named[2])
    desk.go_back()
    desk.wait_for_function(
        """name => document.activeElement.matches('.grid tr')
          && document.activeElement.textContent.includes(name)""",
        arg=named[2],
    )

    press(desk, "Delete")
    expect(desk.get_by_role("alert")).to_contain_text("1 piece in the bin.")
    expect(desk.get_by_role("main").get_by_text("99 pieces.")).to_be_visible()
    desk.wait_for_function("() => document.activeElement.matches('.grid tr')")
    press(desk, "Control+z")
    expect(desk.get_by_role("main").get_by_text("100 pieces.")).to_be_visible()
    desk.wait_for_function("() => document.activeElement.matches('.grid tr')")
    press(desk, "/")
    desk.keyboard.type("coal train")
    expect(desk.get_by_role("main").get_by_text("2 of 100 pieces.")).to_be_visible()
    expect(desk.locator(".grid tbody tr")).to_have_count(2)


def test_rows_are_selected_with_the_mouse(desk):
    cell = desk.locator(".grid tbody tr td:nth-child(4)")
    cell.nth(2).click()
    cell.nth(6).click(modifiers=["Shift"])
    expect(desk.get_by_text("5 pieces selected.")).to_be_visible()
    cell.nth(4).click(modifiers=["ControlOrMeta"])
    expect(desk.get_by_text("4 pieces selected.")).to_be_visible()
    desk.locator(".grid .tick-cell").nth(10).click()
    expect(desk.get_by_text("5 pieces selected.")).to_be_visible()
    cell.nth(0).click()
    expect(desk.get_by_text("1 piece selected.")).to_be_visible()
    # it is still so after a look at one row, and not after another screen
    desk.locator(".grid .link").nth(0).click()
    expect(desk.get_by_role("heading", level=1)).not_to_have_text("Collection")
    desk.go_back()
    expect(desk.get_by_text("1 piece selected.")).to_be_visible()
    place(desk, "Wants")
    place(desk, "Collection")
    expect(desk.get_by_text("Click a row to select it")).to_be_visible()
    expect(desk.locator(".grid tbody [aria-selected=true]")).to_have_count(0)
    cell.nth(1).dblclick()
    expect(desk.get_by_role("heading", level=1)).not_to_have_text("Collection")


@pytest.mark.parametrize(
    ("field", "label", "typed", "value"),
    [
        ("condition", "Condition", "=good", "good"),
        ("boxed", "Box", "=", ""),
        ("paid", "Price paid", "12/6", TWELVE_AND_SIX),
        ("when", "When it was bought", "May 1998", "1998-05"),
        ("kept", "Keep both", "=yes", True),
    ],
)  # fmt: skip
def test_a_field_of_several_is_changed_at_once(desk, field, label, typed, value):
    before = {r["id"]: r for r in records(desk, "piece")}
    desk.locator(".grid tbody tr td:nth-child(4)").first.click()
    press(desk, "Control+a")
    desk.get_by_role("button", name="Change a field").click()
    desk.get_by_role("button", name=re.compile("^Change")).last.click()
    sheet = desk.get_by_role("dialog")
    expect(sheet.get_by_role("status")).to_contain_text("Choose a field")
    sheet.get_by_label("Which field").select_option(field)
    control = sheet.get_by_label(label, exact=True)
    if typed.startswith("="):
        control.select_option(typed)
    else:
        control.fill(typed)
        control.blur()
    to_change = [id_ for id_, r in before.items() if r[field] != value]
    sheet.get_by_role("button", name=f"Change {len(to_change)}", exact=True).click()
    expect(desk.get_by_role("alert")).to_contain_text(f"of {len(to_change)} pieces changed.")
    assert all(r[field] == value for r in records(desk, "piece"))
    desk.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(desk.get_by_role("alert")).to_contain_text("Undone")
    assert {r["id"]: r[field] for r in records(desk, "piece")} == {
        id_: r[field] for id_, r in before.items()
    }


def test_a_value_that_cannot_be_read_changes_nothing(desk):
    before = records(desk, "piece")
    desk.locator(".grid tbody tr td:nth-child(4)").first.click()
    press(desk, "e")
    sheet = desk.get_by_role("dialog")
    sheet.get_by_label("Which field").select_option("when")
    sheet.get_by_label("When it was bought").fill("31.2.1957")
    sheet.get_by_label("When it was bought").blur()
    expect(sheet).to_contain_text("That date cannot be read. February 1957 has 28 days.")
    sheet.get_by_role("button", name="Change", exact=True).click()
    expect(sheet.get_by_role("status")).to_contain_text("Choose a field and what to set it to")
    sheet.get_by_label("Which field").select_option("paid")
    sheet.get_by_label("Price paid").fill("cheap")
    sheet.get_by_label("Price paid").blur()
    expect(sheet).to_contain_text("One of its words is not a currency.")
    assert records(desk, "piece") == before


def test_single_keys_can_be_switched_off(desk):
    desk.get_by_role("button", name="Keys").click()
    desk.get_by_label(re.compile("^Use single keys")).uncheck()
    desk.get_by_role("dialog").get_by_role("button", name="Close").click()
    desk.reload()
    expect(desk.get_by_role("heading", level=1)).to_be_visible()
    into_table(desk)
    press(desk, "Space", "Delete", "?", "/", "e")
    assert len(records(desk, "piece")) == 100
    assert desk.get_by_role("dialog").count() == 0
    assert desk.evaluate("() => document.activeElement.matches('.grid tr')")
    place(desk, "Identify")
    begin(desk, "Coach")
    asked = question(desk)
    press(desk, "1")
    more_of_question(desk, "Why this question?")
    desk.get_by_role("dialog").get_by_role("button", name="Close").click()
    expect(desk.get_by_role("dialog")).to_have_count(0)
    expect_question(desk, asked)
    assert not desk.locator(".state kbd").first.is_visible()


def test_photos_are_dropped_on_a_row_and_on_an_open_piece(desk):
    picture = ["a.jpg", "image/jpeg", list(photo(desk, 90, 60))]
    other = ["b.jpg", "image/jpeg", list(photo(desk, 40, 40))]
    wrong = ["list.txt", "text/plain", list(b"not a picture")]
    row = desk.locator(".grid tbody tr").nth(2)
    id_ = row.get_attribute("data-id")
    desk.evaluate(DROP, [f'tr[data-id="{id_}"]', [picture, wrong, other]])
    expect(desk.get_by_role("alert")).to_contain_text("2 photos added. list.txt: That file is not")
    held = next(r for r in records(desk, "piece") if r["id"] == id_)
    assert len(held["photos"]) == 2
    # the same checks as for the camera: drawn anew, so the place it was taken at is gone
    assert all(
        "GPS" not in p["full"] and b"Exif" not in orjson.dumps(p) for p in kept(desk)["photos"]
    )
    desk.get_by_role("alert").get_by_role("button", name="Undo").click()
    expect(desk.get_by_role("alert")).to_contain_text("Undone")
    assert next(r for r in records(desk, "piece") if r["id"] == id_)["photos"] == []
    desk.locator(".grid tbody .link").nth(2).click()
    expect(desk.get_by_role("heading", name="Photos")).to_be_visible()
    desk.evaluate(DROP, ["#screen", [picture]])
    expect(desk.get_by_role("button", name="Photo 1")).to_be_visible()
    place(desk, "More")
    desk.evaluate(DROP, ["#screen", [picture]])
    expect(desk.get_by_role("heading", level=1)).to_have_text("More")


def test_a_window_turned_narrow_loses_nothing(desk):
    desk.get_by_label("Search the collection").fill("P 2")
    desk.locator(".grid tbody tr td:nth-child(4)").nth(1).click()
    expect(desk.get_by_text("of 100 pieces.")).to_be_visible()
    count = len(rows(desk))
    assert count > 3
    desk.set_viewport_size({"width": 360, "height": 740})
    expect(desk.get_by_role("list", name="Pieces").get_by_role("listitem")).to_have_count(count)
    expect(desk.get_by_label("Search the collection")).to_have_value("P 2")
    expect(desk.locator(".grid")).to_have_count(0)
    desk.set_viewport_size(DESK["viewport"])
    expect(desk.get_by_text("1 piece selected.")).to_be_visible()
    expect(desk.locator(".grid tbody tr")).to_have_count(count)
    # on an open piece, what is being typed is kept
    desk.locator(".grid tbody .link").first.click()
    desk.get_by_label("Notes").fill("half a sent")
    desk.set_viewport_size({"width": 360, "height": 740})
    expect(desk.get_by_label("Notes")).to_have_value("half a sent")
    place(desk, "Identify")
    begin(desk, "Coach")
    desk.get_by_role("button", name="I’m guessing").click()
    desk.get_by_role("button", name="Two or more").click()
    desk.locator(".states button").first.click()
    desk.set_viewport_size(DESK["viewport"])
    expect(desk.locator(".beside")).to_be_visible()
    expect(desk.locator('.states [aria-pressed="true"]')).to_have_count(1)


def test_the_candidates_stand_beside_the_question(desk):
    place(desk, "Identify")
    begin(desk, "Coach")
    see(desk, choices(desk)[0])
    aside = desk.get_by_role("complementary", name="What it could be")
    first = aside.get_by_role("listitem").first.inner_text()
    ask = desk.locator(".card").bounding_box()
    box = aside.bounding_box()
    assert ask
    assert box
    assert box["x"] >= ask["x"] + ask["width"]
    press(desk, "1")
    expect(aside.get_by_role("listitem").first).not_to_have_text(first)


def test_five_thousand_pieces_stay_quick(browser, server, tmp_path, capsys):
    """As many as anyone has: only the rows that are looked at are drawn. No clock decides."""
    made = orjson.loads(DEMO.read_bytes())
    pieces = [r for r in made["records"] if r["type"] == "piece"]
    many = [pieces[n % 100] | {"id": f"rmany{n}", "where": f"Hall {n}"} for n in range(5000)]
    file = tmp_path / "many.json"
    file.write_bytes(orjson.dumps(made | {"records": many}))
    context = browser.new_context(**DESK)
    page = watched(context.new_page())
    page.goto(server.url)
    more(page, "Backup")
    page.get_by_label("Restore a backup file").set_input_files(file)
    expect(page.get_by_role("alert")).to_contain_text("5000 added", timeout=60_000)
    place(page, "Collection")
    expect(page.get_by_role("grid")).to_have_attribute("aria-rowcount", "5001")
    assert len(rows(page)) < 200
    took = page.evaluate(
        """async () => {
          const frame = () => new Promise(done => requestAnimationFrame(() => setTimeout(done)));
          const took = {};
          for (const name of ["Where", "Paid", "Variant"]) {
            const begun = performance.now();
            [...document.querySelectorAll(".head")].find(h => h.textContent === name).click();
            await frame();
            took[name] = Math.round(performance.now() - begun);
          }
          return took;
        }"""
    )
    assert len(rows(page)) < 200
    press(page, "Escape")
    page.get_by_role("columnheader", name="Where").get_by_role("button").click()
    first = ["Hall 0", "Hall 1", "Hall 2"]
    expect_read(page, lambda: [row[7] for row in rows(page)[:3]], first)
    page.locator(".grid tbody tr td:nth-child(4)").first.click()
    press(page, "End")
    page.wait_for_function("() => document.activeElement.textContent.includes('Hall 4999')")
    with capsys.disabled():
        print(f"\n5,000 rows in order, ms by column: {took}")
    assert page.reported == []
    context.close()


def table(page: Page) -> None:
    page.get_by_text("Filter and sort").click()
    page.locator(".grid tbody tr td:nth-child(4)").nth(1).click()
    page.get_by_role("columnheader", name="Paid").get_by_role("button").click()


def bulk(page: Page) -> None:
    table(page)
    page.get_by_role("button", name="Change a field").click()
    page.get_by_label("Which field").select_option("paid")


def keys(page: Page) -> None:
    page.get_by_role("button", name="Keys").click()


def wants(page: Page) -> None:
    place(page, "Wants")


def duplicates(page: Page) -> None:
    more(page, "Duplicates")


def asking(page: Page) -> None:
    place(page, "Identify")
    begin(page, "Coach")
    see(page, choices(page)[0])


def piece(page: Page) -> None:
    add_piece(page, "P 24")


@pytest.mark.parametrize("screen", [table, bulk, keys, wants, duplicates, asking, piece],
                         ids=lambda s: s.__name__)  # fmt: skip
def test_axe_finds_nothing_on_a_wide_screen(desk, screen):
    desk.emulate_media(reduced_motion="reduce")
    screen(desk)
    for scheme in ("light", "dark"):
        desk.emulate_media(color_scheme=scheme, reduced_motion="reduce")
        assert violations(desk) == []
    for width in (1280, 900):
        desk.set_viewport_size({"width": width, "height": 800})
        desk.evaluate("() => new Promise(done => requestAnimationFrame(() => setTimeout(done)))")
        wide = desk.evaluate("() => document.scrollingElement.scrollWidth - innerWidth")
        assert wide <= 0, f"no scrolling sideways at {width}"
