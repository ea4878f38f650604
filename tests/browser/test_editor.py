"""A keeper edits a pack in the app: real folders, a real server, a real Chromium."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from identify.reference.check import check_pack
from tests.browser.editor_steps import (
    back,
    diff,
    open_editor,
    ready_for_no_signal,
    save,
    step,
    texts,
    use_new_version,
    write_in,
)
from tests.browser.phone import (
    CHANGED,
    PHONE,
    asking,
    begin,
    question,
    see,
    violations,
    watched,
)
from tests.browser.phone_storage import more, photo, place


@pytest.fixture
def page(editing: Page) -> Page:
    return editing


def draw_line(page: Page, tool: str, *points: tuple[float, float]) -> None:
    """Drag over the pad; places from 0 to 1."""
    page.get_by_role("radio", name=tool, exact=True).check()
    pad = page.locator(".editor-pad")
    pad.scroll_into_view_if_needed()
    box = pad.bounding_box()
    at = [(box["x"] + x * box["width"], box["y"] + y * box["height"]) for x, y in points]
    page.mouse.move(*at[0])
    page.mouse.down()
    for x, y in at[1:]:
        page.mouse.move(x, y, steps=4)
    page.mouse.up()


def new_question(page: Page) -> None:
    """From the pack: a feature with two states, one drawn, one photographed."""
    step(page, "Features")
    step(page, "Add a feature")
    write_in(page, "Name", "Roof")
    write_in(page, "Question", "What is the roof like?")
    write_in(page, "Where to look", "From above.")
    page.get_by_label("Locomotive", exact=True).check()
    for name in ("Round", "Flat"):
        count = page.get_by_label("Name of state").count()
        page.get_by_role("button", name="Add a state").click()
        write_in(page, f"Name of state {count + 1}", name)
        expect(page.get_by_label(f"Id of state {count + 1}")).to_have_value(name.lower())
    step(page, "Drawing of Round")
    draw_line(page, "Rectangle", (0.2, 0.5), (0.8, 0.9))
    draw_line(page, "Free hand", (0.2, 0.5), (0.5, 0.2), (0.8, 0.5))
    expect(page.get_by_role("list", name="Shapes").get_by_role("listitem")).to_have_count(2)
    back(page)
    step(page, "Drawing of Flat")
    page.get_by_label("Photograph it").set_input_files(
        {"name": "IMG.jpg", "mimeType": "image/jpeg", "buffer": photo(page, 800, 600, noisy=True)}
    )
    expect(page.locator(".editor-shown image")).to_have_count(1)
    back(page)
    page.get_by_role("button", name="Show the question").click()
    shown = page.get_by_role("dialog")
    expect(shown.locator(".states .name")).to_have_text(["Round", "Flat"])
    expect(shown.locator(".states image")).to_have_count(1)
    page.get_by_role("button", name="Close").click()


def the_question_is_asked(page: Page) -> None:
    """Answering nothing but the new question leads to the new variant."""
    place(page, "Identify")
    begin(page, "Locomotive")
    asked = []
    while asking(page):
        asked.append(question(page))
        if asked[-1] == "What is the roof like?":
            expect(page.locator(".states image")).to_have_count(1)
            see(page, "Round")
        else:
            page.get_by_role("button", name="Can’t see it", exact=True).click()
            page.wait_for_function(CHANGED, arg=asked[-1])
    assert "What is the roof like?" in asked
    expect(page.get_by_role("main")).to_contain_text("plastic horns")


def just_that_was_changed(before: dict[str, str], folder: Path) -> None:
    """The lines of the files that differ are those of the edits, and the pack is sound."""
    changed = diff(before, texts(folder))
    drawn = {name: changed.pop(name) for name in list(changed) if name.startswith("drawings/")}
    assert changed == {
        "items.csv": [
            "- P1,Tank engine,locomotive,1950/1957,cat,,Night train,,101;102,,green",
            "+ P1,Saddle tank engine,locomotive,1950/1958~,cat,,Night train,,101;102,,green",
        ],
        "changes.csv": ["+ coupling,bar,1958-03,,,P1,cat,,"],
        "features.toml": [
            "+ ",
            "+ [[feature]]",
            '+ id = "roof"',
            '+ name = "Roof"',
            '+ question = "What is the roof like?"',
            '+ where = "From above."',
            "+ seconds = 3",
            '+ needs = "nothing"',
            '+ kinds = ["locomotive"]',
            "+ states = [",
            '+   { id = "round", name = "Round" },',
            '+   { id = "flat", name = "Flat" },',
            "+ ]",
        ],
        "variants.csv": changed["variants.csv"],
    }
    rows = (folder / "variants.csv").read_text().splitlines()
    assert rows[0].endswith(",horns,livery,roof")
    assert rows[2:4] == [
        "p1b,P1,With horns,1954/1957,cat,,2,,metal,?,flat",
        "p1c,P1,With plastic horns,1958,cat,,1,,plastic,,round",
    ]
    assert sorted(drawn) == ["drawings/roof-flat.jpg", "drawings/roof-round.svg"]
    assert (folder / "drawings" / "roof-flat.jpg").stat().st_size <= 40 * 1024
    assert b"Exif" not in (folder / "drawings" / "roof-flat.jpg").read_bytes()
    assert check_pack(folder) == []


def test_an_item_a_variant_a_change_and_a_question_with_drawings(page, editor, folder):
    ready_for_no_signal(page)
    before = texts(folder)
    open_editor(page, "Items", "P1 Tank engine")
    write_in(page, "Name", "Saddle tank engine")
    page.get_by_label("Years", exact=True).fill("1950/195")  # and not left yet
    expect(page.get_by_text("1957/1961").last).to_be_visible()
    wrong = page.locator(".field", has=page.get_by_label("Years", exact=True)).locator(".wrong")
    expect(wrong).to_contain_text("is not a year")
    expect(page.get_by_label("Years", exact=True)).to_have_attribute("aria-invalid", "true")
    write_in(page, "Years", "1950/1958~")
    expect(page.get_by_text("1950 to about 1958")).to_be_visible()
    expect(wrong).to_have_count(0)

    step(page, "Its variants (2)")
    step(page, "Add a variant")
    write_in(page, "Name", "With plastic horns")
    expect(page.get_by_label("Id", exact=True)).to_have_value("p1_with_plastic_horns")
    page.get_by_label("Id", exact=True).fill("p1c")
    page.get_by_label("Years", exact=True).fill("1958")
    page.get_by_label("Source of the years").select_option("cat")
    page.get_by_text("Further features").click()
    page.get_by_label("Horns", exact=True).select_option("plastic")

    back(page, 4)
    step(page, "Running changes")
    step(page, "Add a running change")
    page.get_by_label("Feature", exact=True).select_option("coupling")
    page.get_by_label("State that was fitted").select_option("bar")
    write_in(page, "From", "1958-03")
    page.get_by_label("Source", exact=True).select_option("cat")
    write_in(page, "Only these items", "P1")

    back(page, 2)
    new_question(page)
    back(page, 2)
    step(page, "Variants")
    for name, state in (("P1: With plastic", "round"), ("P1: With horns", "flat")):
        step(page, name)
        page.get_by_text("Further features").click()
        page.get_by_label("Roof", exact=True).select_option(state)
        back(page)
    back(page)
    page.wait_for_function(
        "() => !document.querySelector('.editor-bar').innerText.match(/mistake/)"
    )
    save(page)

    just_that_was_changed(before, folder)
    use_new_version(page)
    the_question_is_asked(page)


def test_what_is_not_saved_is_kept_and_put_on_top_of_what_changed_meanwhile(page, folder):
    open_editor(page, "Items", "P2 Brake coach")
    write_in(page, "Name", "Brake third coach")
    write_in(page, "Note", "A note.")
    expect(page.get_by_text("2 changes not saved")).to_be_visible()
    page.reload()
    expect(page.get_by_label("Name", exact=True)).to_have_value("Brake third coach")

    path = folder / "items.csv"
    path.write_text(
        "\n" + path.read_text().replace("P2,Brake coach,coach,1952", "P2,Brake coach,coach,1953")
    )
    write_in(page, "Formation", "Day train")
    expect(page.get_by_role("status").filter(has_text="changed by something else")).to_be_visible()
    page.get_by_role("button", name="Read them again").click()
    expect(page.get_by_text("3 changes not saved")).to_be_visible()
    back(page, 2)
    save(page)
    row = "P2,Brake third coach,coach,1953/1959,cat,book 1951/1959,Day train,,,A note.,"
    assert row in path.read_text()

    step(page, "Items")
    step(page, "P2 Brake third coach")
    write_in(page, "Name", "Mine")
    expect(page.get_by_text("1 change not saved")).to_be_visible()
    path.write_text(path.read_text().replace("Brake third coach", "Theirs"))
    page.reload()
    expect(page.get_by_text("Could not be put on top")).to_be_visible()
    expect(page.get_by_text("Mine")).to_be_visible()
    expect(page.get_by_label("Name", exact=True)).to_have_value("Theirs")


def test_a_change_is_taken_back_and_a_save_too(page, folder):
    before = texts(folder)
    open_editor(page, "Items", "P1 Tank engine")
    write_in(page, "Name", "Other")
    page.get_by_role("button", name="Undo", exact=True).click()
    expect(page.get_by_label("Name", exact=True)).to_have_value("Tank engine")
    expect(page.get_by_text("All is saved.")).to_be_visible()
    write_in(page, "Name", "Other")
    save(page)
    assert texts(folder) != before
    page.get_by_role("button", name="Take the last save back").click()
    expect(page.get_by_role("alert")).to_contain_text("before the last save")
    assert texts(folder) == before


def test_shapes_are_chosen_moved_and_taken_away_with_the_keyboard(page):
    open_editor(page, "Features", "Livery", "Drawing of Green")
    shapes = page.get_by_role("list", name="Shapes")
    expect(shapes.get_by_role("listitem")).to_have_count(1)
    page.get_by_role("button", name="Put one in the middle").click()
    line = shapes.get_by_role("button", name="Line").last
    expect(line).to_have_attribute("aria-pressed", "true")
    line.focus()
    start = page.locator(".editor-pad line").get_attribute("x1")
    page.keyboard.press("ArrowRight")
    assert float(page.locator(".editor-pad line").get_attribute("x1")) == float(start) + 1
    page.keyboard.press("Delete")
    expect(shapes.get_by_role("listitem")).to_have_count(1)
    page.get_by_role("button", name="Take back", exact=True).click()
    expect(shapes.get_by_role("listitem")).to_have_count(2)


def test_a_table_with_the_keyboard_in_a_wide_window(browser, editor, folder):
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    page = watched(context.new_page())
    page.goto(editor.url)
    open_editor(page, "Items")
    page.get_by_label("Name: P1 Tank engine").focus()
    page.keyboard.press("ArrowDown")
    expect(page.get_by_label("Name: P2 Brake coach")).to_be_focused()
    page.keyboard.press("Control+a")
    page.keyboard.type("Brake third")
    page.keyboard.press("Enter")
    expect(page.get_by_text("1 change not saved")).to_be_visible()
    write_in(page, "Years: P2 Brake coach", "1952/19")
    cell = page.locator("td", has=page.get_by_label("Years: P2 Brake coach"))
    expect(cell.locator(".wrong")).to_contain_text("is not a year")
    assert violations(page) == []
    write_in(page, "Years: P2 Brake coach", "1952/1959")
    expect(cell.locator(".wrong")).to_have_count(0)
    save(page)
    assert "P2,Brake third,coach" in (folder / "items.csv").read_text()
    assert page.reported == []
    context.close()


def screens(page: Page) -> Iterator[str]:
    """Goes through the screens of ranges and of the editor."""
    more(page, "Ranges")
    yield "ranges"
    step(page, "Changed numbers")
    yield "moved"
    open_editor(page)
    yield "pack"
    step(page, "Items")
    yield "items"
    step(page, "P1 Tank engine")
    write_in(page, "Years", "1950/190")
    expect(page.locator(".wrong").first).to_be_visible()
    page.get_by_text("What is wrong").click()
    yield "item with a mistake"
    back(page, 2)
    step(page, "Features")
    step(page, "Colour of the horns")
    yield "feature"
    step(page, "Drawing of Black")
    page.get_by_role("button", name="Put one in the middle").click()
    yield "drawing"
    back(page, 3)
    step(page, "The range")
    yield "range"
    back(page)
    step(page, "Kinds")
    step(page, "Coach")
    expect(page.get_by_role("button", name="Drawing of Coach")).to_be_visible()
    yield "kind"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_finds_nothing_in_the_editor(browser, editor, scheme):
    context = browser.new_context(**PHONE, color_scheme=scheme, reduced_motion="reduce")
    page = watched(context.new_page())
    page.goto(editor.url)
    for name in screens(page):
        assert violations(page) == [], name
        small = page.evaluate(
            """() => [...document.querySelectorAll("button, input, label, summary, select")]
              .filter(e => e.checkVisibility() && !e.matches("label input, label[for], .unseen"))
              .map(e => [e.innerText || e.ariaLabel || e.type, e.getBoundingClientRect()])
              .filter(([, box]) => box.width > 0 && (box.height < 47.5 || box.width < 47.5))
              .map(([name, box]) => `${name}: ${box.width} x ${box.height}`)"""
        )
        assert small == [], name
    context.close()


def test_large_text_in_the_editor_reads_without_scrolling_sideways(browser, editor):
    context = browser.new_context(**{**PHONE, "viewport": {"width": 320, "height": 640}})
    page = context.new_page()
    page.goto(editor.url)
    page.evaluate("document.documentElement.style.fontSize = '200%'")
    for name in screens(page):
        wide = page.evaluate(
            """() => [document.scrollingElement, ...document.querySelectorAll("main *")]
              .filter(e => !(e instanceof SVGElement) && !e.matches("input, textarea, select"))
              .filter(e => e.scrollWidth > e.clientWidth + 1 && e.clientWidth > 0)
              .filter(e => getComputedStyle(e).display !== "inline"
                && !["hidden", "clip"].includes(getComputedStyle(e).overflowX))
              .map(e => `${e.tagName} ${e.className}: ${e.scrollWidth} in ${e.clientWidth}`)"""
        )
        assert wide == [], name
    context.close()
