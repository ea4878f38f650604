"""Taking out: files that other programs read, lists on paper, the wants for a friend."""

import csv
import io
import re

import jsonschema
import openpyxl
import orjson
import pytest
from playwright.sync_api import Page, expect

from identify.exchange.schemas import records_schema
from identify.phone import DEMO
from tests.browser.exchanging import look, open_import
from tests.browser.many_pieces import bring_many
from tests.browser.phone import PHONE, broken_words, violations, watched
from tests.browser.phone_storage import add_photo, add_piece, demo, more, place, records

SHARED = """
Object.defineProperty(navigator, "canShare", { value: () => true });
Object.defineProperty(navigator, "share", { value: async given => {
  window.given = [given.title, given.files.map(file => [file.name, file.type, file.size > 500])];
} });"""


@pytest.fixture
def at_export(page, server) -> Page:
    """The screen, with the demo collection."""
    page.goto(server.url)
    demo(page)
    more(page, "Print or save")
    return page


def made(page: Page, button: str) -> tuple[str, bytes]:
    """The file that a button makes: its name and what is in it."""
    with page.expect_download(timeout=60_000) as coming:
        page.get_by_role("button", name=button, exact=True).click()
    return coming.value.suggested_filename, coming.value.path().read_bytes()


def rows_of(content: bytes, ending: str) -> list[list[str]]:
    """The table of a file as other programs read it."""
    if ending == "csv":
        return list(csv.reader(io.StringIO(content.decode("utf-8-sig"))))
    sheet = openpyxl.load_workbook(io.BytesIO(content)).worksheets[0]
    return [[str(cell or "") for cell in row] for row in sheet.iter_rows(values_only=True)]


@pytest.mark.parametrize("ending", ["xlsx", "csv", "json"])
def test_a_file_holds_what_was_said_before_and_comes_back_unchanged(at_export, ending):
    page = at_export
    expect(page.get_by_role("main")).to_contain_text("shows which valuables are in your house")
    page.get_by_label("As", exact=True).select_option(ending)
    said = page.locator("section [role=status]")
    expect(said).to_contain_text("It will hold 100 pieces, 14 wants, 8 notes")
    expect(said).to_contain_text("No photos.")
    before = {r["id"]: r for sort in ("piece", "want", "note") for r in records(page, sort)}
    name, content = made(page, "Make the file")
    assert re.fullmatch(rf"stallside-[\w-]*valuables-\d{{4}}-\d\d-\d\d\.{ending}", name)
    if ending == "json":
        file = orjson.loads(content)
        jsonschema.validate(file, records_schema())
        assert {r["id"]: r for r in file["records"]} == before
        return
    rows = rows_of(content, ending)
    assert {row[rows[0].index("record")] for row in rows[1:]} == set(before)
    open_import(page)
    page.get_by_label("Choose a file").set_input_files(
        {"name": name, "mimeType": "application/octet-stream", "buffer": content}
    )
    expect(page.get_by_text("This app wrote it")).to_be_visible(timeout=60_000)
    look(page)
    expect(page.locator(".import [role=status]")).to_have_text("122 here already, unchanged.")


def test_only_what_was_chosen_is_in_it(at_export):
    page = at_export
    page.get_by_label("As", exact=True).select_option("json")
    page.get_by_label("What", exact=True).select_option("want")
    expect(page.locator("section [role=status]")).to_contain_text("It will hold 14 wants:")
    _, content = made(page, "Make the file")
    assert {r["type"] for r in orjson.loads(content)["records"]} == {"want"}


def test_the_wants_go_to_a_friend_without_what_one_would_pay(at_export, browser):
    page = at_export
    expect(page.get_by_role("main")).to_contain_text("Nothing about what you own")
    name, content = made(page, "Send the page")
    text = content.decode()
    assert re.fullmatch(r"wanted-\d{4}-\d\d-\d\d\.html", name)
    assert "43/6" in text
    assert "price" not in text
    assert "£" not in text
    assert "The last one of the Maddenport Limited" not in text, "notes are for oneself"
    page.get_by_label("Say that too").check()
    _, content = made(page, "Send the page")
    assert "£25" in content.decode()
    assert "A price is a wish, not an offer." in content.decode()
    # in a browser of its own it fetches nothing, and can be read by all
    context = browser.new_context(**PHONE, java_script_enabled=True)
    friend = watched(context.new_page())
    asked: list[str] = []
    friend.on("request", lambda request: asked.append(request.url))
    friend.set_content(text)
    assert asked == []
    for scheme in ("light", "dark"):
        friend.emulate_media(color_scheme=scheme)
        assert violations(friend) == []
    context.close()


def test_where_the_device_can_share_the_page_goes_there(browser, server):
    context = browser.new_context(**PHONE)
    context.add_init_script(SHARED)
    page = watched(context.new_page())
    page.goto(server.url)
    demo(page)
    more(page, "Print or save")
    page.get_by_role("button", name="Send the page").click()
    page.wait_for_function("() => window.given")
    title, files = page.evaluate("window.given")
    assert title == "Wanted"
    assert [(type_, large) for _, type_, large in files] == [("text/html", True)]
    assert page.reported == []
    context.close()


def test_with_no_signal_on_a_plain_host_files_are_made_all_the_same(browser, own_server):
    """The range's names come out of what is stored, and the spreadsheet opens elsewhere."""
    context = browser.new_context(**PHONE)
    page = watched(context.new_page())
    page.goto(own_server.url)
    demo(page)
    page.evaluate("() => navigator.serviceWorker.ready.then(() => {})")
    own_server.stop()
    more(page, "Print or save")
    for ending in ("xlsx", "csv"):
        page.get_by_label("As", exact=True).select_option(ending)
        _, content = made(page, "Make the file")
        rows = rows_of(content, ending)
        names = {row[rows[0].index("item")]: row[rows[0].index("what it is")] for row in rows[1:]}
        assert names["P 21"] == "Express electric, box-shaped body"
    name, content = made(page, "Send the page")
    assert name.startswith("wanted-")
    assert b"No wants at the moment" not in content
    page.get_by_role("button", name="Backup", exact=True).click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Backup")
    context.close()


def test_the_insurers_list_has_photos_totals_and_a_head_on_every_page(page, server):
    page.goto(server.url)
    demo(page)
    place(page, "More")
    add_piece(page, "P 24")
    for width in (300, 200):
        add_photo(page, width, 150)
        shown = page.get_by_role("button", name=re.compile(r"^Photo \d"))
        expect(shown).to_have_count(1 if width == 300 else 2)
    place(page, "Collection")
    page.get_by_role("button", name="Print for insurance").click()
    table = page.get_by_role("table")
    expect(table.get_by_role("img", name="Photo 1 of P 24")).to_be_visible()
    paid = [r["paid"] for r in orjson.loads(DEMO.read_bytes())["records"] if r.get("paid")]
    pounds = sum(48 * money["minor"] + money.get("over", 0) for money in paid) / 4800
    expect(table.locator("tfoot")).to_contain_text(f"Together£{pounds:,.2f}")
    by_range = table.locator("tbody .sum").all_inner_texts()
    assert [text.split("\n")[0].strip() for text in by_range] == [
        "Together, Pellmarsh",
        "Together, Tarrowby",
    ]
    page.evaluate("() => Promise.all([...document.images].map(image => image.decode()))")
    page.emulate_media(media="print")
    expect(page.get_by_role("checkbox")).to_have_count(0)
    with_photos = page.pdf(format="A4")
    assert with_photos.count(b"/Subtype /Image") >= 2
    page.emulate_media(media="screen")
    page.get_by_label("Print the photos too").uncheck()
    expect(page.get_by_role("img", name="Photo 1 of P 24")).to_be_hidden()
    page.emulate_media(media="print")
    without = page.pdf(format="A4")
    assert b"/Subtype /Image" not in without
    page.emulate_media(media="print")
    breaks = page.evaluate(
        "() => ['thead', 'tbody tr'].map(s => getComputedStyle(document.querySelector('.paper '"
        " + s))).map(s => [s.display, s.breakInside])"
    )
    assert breaks[0][0] == "table-header-group"
    assert breaks[1][1] == "avoid"


def test_a_long_list_comes_as_it_is_scrolled_to_and_is_whole_on_paper(page, server, tmp_path):
    page.goto(server.url)
    bring_many(page, tmp_path, 450)
    more(page, "Print or save")
    page.get_by_role("button", name="List for the insurer").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("List for the insurer")
    expect(page.get_by_role("main")).to_contain_text("450 pieces")
    rows = page.locator("tbody td[data-name=Item]")
    assert 100 <= rows.count() < 300
    before = rows.count()
    page.evaluate("scrollTo(0, document.body.scrollHeight)")
    page.wait_for_function("n => document.querySelectorAll('tbody tr').length > n + 50", arg=before)
    assert page.locator("tbody.later").count() == 0
    page.emulate_media(media="print")
    page.pdf(format="A4")  # as the browser's own menu prints: the app hears of it, no more
    expect(rows).to_have_count(450)
    assert rows.evaluate_all("all => all.every(one => one.offsetHeight > 0)")
    page.emulate_media(media="screen")
    expect(page.get_by_role("button", name="Show more")).to_be_visible()


def test_it_can_be_read_by_all(at_export):
    page = at_export
    for where in ("", "List for the insurer"):
        if where:
            page.get_by_role("button", name=where).click()
            expect(page.get_by_role("table")).to_be_visible()
        for scheme in ("light", "dark"):
            page.emulate_media(color_scheme=scheme, reduced_motion="reduce")
            assert violations(page) == []
        page.set_viewport_size({"width": 320, "height": 640})
        page.evaluate("document.documentElement.style.fontSize = '200%'")
        assert page.evaluate("() => document.scrollingElement.scrollWidth - innerWidth") <= 0
        assert broken_words(page) == []
        page.evaluate("document.documentElement.style.fontSize = ''")
        page.set_viewport_size(PHONE["viewport"])
