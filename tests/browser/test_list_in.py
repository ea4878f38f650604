"""A spreadsheet or a pasted table becomes rows of a range of one's own."""

import csv
import io
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from identify.core.importing.cell_values import read_price
from identify.exchange.table import FileError
from identify.exchange.table_files import read_table
from identify.phone import tables_module
from identify.shipped import WEB
from tests.browser.engines import PAGE
from tests.browser.handling import Hand
from tests.browser.phone import DESK, watched
from tests.browser.phone_storage import more, records
from tests.conftest import serving
from tests.exchange.books import book

MOST = 10 * 60  # seconds
FOLDER = Path(__file__).parents[2] / "fixtures" / "exchange"
HEADINGS = ["Cat. No.", "Description", "Version", "Colour", "Coupling", "Made", "Book", "Lamps"]
READ = """
async (bytes) => {
  const { tableOfFile } = await import("./exchange/file-table.js");
  const { NoList } = await import("./exchange/list-rules.js");
  const file = new File([new Uint8Array(bytes)], "x");
  try { return (await tableOfFile(file)).rows.map(({ cells }) => cells); }
  catch (error) { if (error instanceof NoList) return error.message; throw error; }
}"""


@pytest.fixture(scope="module")
def reader(browser) -> Iterator[Page]:
    """A page with the reader of lists alone."""
    files = {
        path.relative_to(WEB).as_posix(): path.read_bytes()
        for folder in ("exchange", "parts", "data")
        for path in (WEB / folder).glob("*.js")
    }
    files["tables.js"] = tables_module().encode()
    with serving({"index.html": PAGE, **files}) as server:
        page = browser.new_page()
        page.goto(server.url)
        yield page
        page.close()


def on_the_server(data: bytes) -> list[list[str]] | None:
    """The rows as the server reads them; None where it refuses the file."""
    try:
        return [row["cells"] for row in read_table(data)["rows"]]
    except FileError:
        return None


def workbook(rows: list[list[Any]]) -> bytes:
    def fill(sheet: Any) -> None:
        for row in rows:
            sheet.append(row)

    return book(fill)


def test_a_workbook_says_the_same_on_the_phone_and_on_the_server(reader):
    data = (FOLDER / "libreoffice.xlsx").read_bytes()
    assert reader.evaluate(READ, list(data)) == on_the_server(data)


def test_a_damaged_workbook_is_refused_or_read_as_if_it_were_whole(reader):
    data = workbook([["No.", "Name"], ["1", "Van"], [12, 3.5], [True, None, "x"]])
    assert reader.evaluate(READ, list(data)) == on_the_server(data)
    for cut in range(0, len(data), len(data) // 24):
        broken = data[:cut]
        assert isinstance(reader.evaluate(READ, list(broken)), str), cut
    for at in range(4, len(data), len(data) // 40):
        broken = data[:at] + bytes([data[at] ^ 0xFF]) + data[at + 1 :]
        found = reader.evaluate(READ, list(broken))
        assert isinstance(found, str) or found == on_the_server(data), at


def test_a_row_of_a_workbook_keeps_its_number_where_others_are_empty(reader):
    data = workbook([["No.", "Name"], [], ["1", "Van"], ["", None], [], ["2", "Coach"]])
    lines = READ.replace("({ cells }) => cells", "({ row }) => row")
    assert reader.evaluate(lines, list(data)) == [1, 3, 6]


PRICES = [
    ("[$zł-415]#,##0.00", "zł120.50", "PLN"),
    ("[$A$-C09]#,##0.00", "A$120.50", "AUD"),
    ("[$US$-409]#,##0.00", "US$120.50", "USD"),
    ("[$Kč-405]#,##0.00", "Kč120.50", "CZK"),
    ('#,##0.00 "Ft"', "Ft120.50", "HUF"),
    ("[$SFr-807] #,##0.00", "SFr120.50", "CHF"),
    ("[$kr-41D]#,##0.00", "kr120.50", "is written as several currencies are"),
    ("[$€-407]#,##0.00", "€120.50", "EUR"),
    ('0.00 "PCS"', "120.5", "GBP"),
]


def test_prices_of_a_workbook_keep_their_currency_or_are_asked_about(reader):
    def fill(sheet: Any) -> None:
        sheet.append(["No.", "Price"])
        for n, (number_format, _, _) in enumerate(PRICES):
            sheet.append([str(n), 120.5])
            sheet.cell(n + 2, 2).number_format = number_format

    data = book(fill)
    found = reader.evaluate(READ, list(data))
    assert found == on_the_server(data)
    assert [cells[1] for cells in found[1:]] == [text for _, text, _ in PRICES]
    for _, text, meant in PRICES:
        price = read_price(text, "GBP")
        currency = price["value"] and price["value"]["currency"]
        assert currency == meant or meant in price["wrong"], text


def test_many_blanks_in_front_are_no_empty_file(reader):
    data = b"\r\n" * 250 + b"No;What\r\nP 1;a\r\n"
    assert (
        reader.evaluate(READ, list(data)) == on_the_server(data) == [["No", "What"], ["P 1", "a"]]
    )


def test_a_phone_without_the_reader_says_so(reader, browser):
    page = browser.new_page()
    page.route("**/tables.js", lambda route: route.abort())
    page.goto(reader.url)
    assert page.evaluate(READ, list(b"No;What")) == (
        "The part that reads and writes lists is not on this device yet. Try it with a signal."
    )
    page.close()


def sixty_rows() -> list[list[str]]:
    """Forty items, twenty of them in two versions; a few slips, as such lists have them."""
    colours = ["Green", "black", "maroon", "Blue", "grey", "gren"]
    couplings = ["Wire loop", "wire lops", "Flat metal bar", "hook and eye"]
    names = ["Goods van", "Brake coach", "Oil tank wagon", "Dining coach"]
    rows = []
    for n in range(40):
        number = f"Q {n + 1}"
        made = ["1955 to 1960", "about 1957", "before 1961", "1958"][n % 4]
        book = ["Summer catalogue 1958", "Club list"][n % 2]
        lamps = ["Two", "None"][n % 2]
        seen = [colours[n % 6], couplings[n % 4]]
        rows.append([number, names[n % 4], "", *seen, made, book, lamps])
        if n % 2 == 0:
            rows.append([number, "", "late", colours[(n + 1) % 6], seen[1], "1961", book, lamps])
    return rows


def begins(hand: Hand) -> None:
    page = hand.page
    more(page, "Ranges")
    hand.effort.taps += 2
    hand.presses("A range of your own")
    hand.reads()
    hand.types("What is it called?", "Ostwick")
    hand.presses("Begin")
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    hand.reads()
    hand.presses("From a list")
    hand.reads()


@pytest.mark.heavy
def test_sixty_rows_come_in_within_ten_minutes(browser, server, capsys):
    context = browser.new_context(**DESK)
    page = watched(context.new_page())
    page.goto(server.url)
    hand = Hand(page)
    begins(hand)
    file = {"name": "list.xlsx", "mimeType": "", "buffer": workbook([HEADINGS, *sixty_rows()])}
    page.get_by_label("Choose a file").set_input_files(file)  # type: ignore[arg-type]
    hand.effort.taps += 3
    expect(page.get_by_role("heading", name="60 rows: what are the columns?")).to_be_visible()
    hand.reads()
    hand.read.discard("listin")
    chosen = {
        name: page.get_by_label(name, exact=True).evaluate("(one) => one.selectedOptions[0].text")
        for name in HEADINGS
    }
    assert chosen["Cat. No."] == "Number"
    assert chosen["Description"] == "Name"
    assert chosen["Made"] == "Made"
    assert chosen["Coupling"] == "Coupling"
    hand.chooses("Lamps", "Something to look at, called “Lamps”")
    hand.presses("See what changes")
    expect(page.get_by_text("40 new items, 20 further variants.")).to_be_visible()
    hand.reads()
    unread = page.get_by_label("Coupling: “hook and eye”")
    expect(unread).to_be_visible()
    hand.chooses("Coupling: “hook and eye”", "Something new: hook and eye")
    expect(unread).to_have_count(0)
    hand.presses("Write them down")
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    seconds = hand.effort.seconds()
    with capsys.disabled():
        print(f"\nsixty rows brought in: {seconds / 60:.1f} min, {hand.effort}")
    items = sorted(records(page, "range_item"), key=lambda one: one["at"])
    assert len(items) == 40
    assert len(records(page, "range_variant")) == 60
    assert (items[1]["number"], items[1]["years"]) == ("Q 2", "1957~")
    kinds = {one["id"]: one["key"] for one in records(page, "range_kind")}
    assert [kinds[one["kind"]] for one in items[:4]] == ["wagon", "coach", "wagon", "coach"]
    features = {one["name"]: one["id"] for one in records(page, "range_feature")}
    states = {one["id"]: one["name"] for one in records(page, "range_state")}
    assert [states[items[n][f"seen_{features['Lamps']}"][0]] for n in (0, 1)] == ["Two", "None"]
    hooked = items[3][f"seen_{features['Coupling']}"]
    assert [states[one] for one in hooked] == ["hook and eye"]
    assert {one["what"] for one in records(page, "range_source")} == {
        "Summer catalogue 1958", "Club list",
    }  # fmt: skip
    assert seconds <= MOST
    page.get_by_role("group").get_by_role("button", name="Undo").click()
    expect(page.get_by_text("Undone: from a list")).to_be_visible()
    assert records(page, "range_item") == []
    assert page.reported == []
    context.close()


def test_a_pasted_table_again_adds_only_what_is_new(page, server):
    page.goto(server.url)
    hand = Hand(page)
    begins(hand)
    text = "\nNumber\tName\tMade\n\n7\tGoods van\t1957\n8\tBrake coach\tlong ago\n"
    page.get_by_label("Or paste it here").fill(text)
    page.get_by_role("button", name="Read what I pasted").click()
    page.get_by_role("button", name="See what changes").click()
    expect(page.get_by_text("Row 5: “long ago”.")).to_be_visible()
    page.get_by_role("button", name="Write them down").click()
    expect(page.get_by_text("2 items of the list are in the range.")).to_be_visible()
    page.get_by_role("button", name="From a list").click()
    page.get_by_label("Or paste it here").fill(text + "9\tOil tank\t1960\n")
    page.get_by_role("button", name="Read what I pasted").click()
    page.get_by_role("button", name="See what changes").click()
    expect(page.get_by_text("1 new item, 2 are there already.")).to_be_visible()
    page.get_by_role("button", name="Write them down").click()
    expect(page.get_by_role("heading", name="Ostwick", level=1)).to_be_visible()
    assert sorted(one["number"] for one in records(page, "range_item")) == ["7", "8", "9"]


def pasted(page: Page, text: str) -> None:
    page.get_by_role("button", name="From a list").click()
    page.get_by_label("Or paste it here").fill(text)
    page.get_by_role("button", name="Read what I pasted").click()


def test_variants_of_a_list_keep_their_years_and_come_in_once(page, server):
    page.goto(server.url)
    begins(Hand(page))
    page.get_by_role("button", name="Back").click()
    pasted(page, "Number\tName\n7\tGoods van\n8\tOil tank\n")
    page.get_by_role("button", name="See what changes").click()
    page.get_by_role("button", name="Write them down").click()
    page.get_by_role("button", name="Items as a table").click()
    page.get_by_label("What it is: 8 Oil tank").select_option(label="–")
    page.get_by_role("button", name="Back").click()
    text = (
        "Number\tName\tVersion\tColour\tMade\n7\tGoods van\tlate\t\t1961\n"
        "8\tOil tank\tlate\tpurplish\t\n9\tCoach\t\tGreen\t\n9\tCoach\t\tBlack\t\n"
    )
    pasted(page, text)
    page.get_by_role("button", name="See what changes").click()
    unread = page.get_by_label("Colour: “purplish”")
    unread.select_option(label="Something new: purplish")
    expect(unread).to_have_count(0)
    page.get_by_role("button", name="Back to the columns").click()
    column = page.get_by_label("Colour", exact=True)
    before = column.input_value()
    column.select_option(label="Notes")
    column.select_option(before)
    page.get_by_role("button", name="See what changes").click()
    expect(unread).to_be_visible()
    unread.select_option(label="Something new: purplish")
    expect(page.get_by_text("1 new item, 3 further variants.")).to_be_visible()
    page.get_by_role("button", name="Write them down").click()
    expect(page.get_by_text("3 items of the list are in the range.")).to_be_visible()
    said = sorted((one["name"], one["years"]) for one in records(page, "range_variant"))
    named = [("Black", ""), ("Green", ""), ("late", ""), ("late", "1961")]
    assert said == [("", ""), ("", ""), *named]
    pasted(page, text)
    page.get_by_role("button", name="See what changes").click()
    expect(page.get_by_text("4 are there already.")).to_be_visible()
    expect(page.get_by_role("button", name="Write them down")).to_have_count(0)


def lines(count: int) -> bytes:
    out = io.StringIO()
    csv.writer(out).writerows([["Number", "Name"], *([n, "Van"] for n in range(count))])
    return out.getvalue().encode()


@pytest.mark.parametrize(
    ("name", "data", "said"),
    [
        ("long.csv", lines(3_000), "3,001 rows, and at most 2,000"),
        ("longer.csv", lines(100_000), "more than 20,000 rows"),
        ("short.xlsx", workbook([["a", "b"]])[:900], "damaged, or was cut short"),
        ("picture.png", b"\x89PNG\r\n\x00\x00", "This is a picture"),
        ("empty.csv", b"\n", "This file is empty."),
    ],
)
def test_what_is_no_list_is_refused_in_a_sentence(page, server, name, data, said):
    page.goto(server.url)
    begins(Hand(page))
    file = {"name": name, "mimeType": "", "buffer": data}
    page.get_by_label("Choose a file").set_input_files(file)  # type: ignore[arg-type]
    expect(page.locator(".wrong")).to_contain_text(said)
    assert records(page, "range_item") == []
