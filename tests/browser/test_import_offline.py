"""A list is brought in on the phone itself: no server, no signal, and bad files in a sentence."""

from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from identify.core.importing.rows_matched import new_importing
from identify.exchange.import_steps import match_rows, name_rows, read_file
from tests.browser.exchanging import as_csv, choose_file, look, open_import
from tests.browser.phone_storage import records
from tests.exchange.books import by_hand, written
from tests.exchange.fitting import demo_reference

FOLDER = Path(__file__).parents[2] / "fixtures" / "exchange"
FILES = ["libreoffice.xlsx", "list.csv"]  # no row of one is a row of the other
BAD = {
    "old.xls": (b"\xd0\xcf\x11\xe0" + bytes(100), "This is an old XLS workbook"),
    "cut.xlsx": (by_hand(written("No"))[:300], "This file is damaged, or was cut short."),
    "page.csv": (b"<html><table></table></html>", "This is a web page or XML"),
    "empty.csv": (b" \n", "This file is empty."),
    "long.csv": (b"No,What\n" + b"P 1,a\n" * 100_000, "This table has more than 20,000 rows."),
    "backup.json": (b'{"kind": "identify backup"}', "This is a backup."),
}


@pytest.fixture
def alone(page, own_server) -> Page:
    """The screen for it on a phone whose server is stopped and which has no signal."""
    page.goto(own_server.url)
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    own_server.stop()
    page.context.set_offline(True)
    page.reload()
    open_import(page)
    return page


def made_here(path: Path) -> list[tuple[str, str, str]]:
    """What Python makes of a file: item, name and condition of each record."""
    table = read_file(path.read_bytes(), demo_reference(), path.name)
    columns = [
        column | {"order": "day"} if column["order"] == "ask" else column
        for column in table["columns"]
    ]
    keys = name_rows("piece", columns, table["rows"])["keys"]
    rows = [row | {"key": key} for row, key in zip(table["rows"], keys, strict=True)]
    about = new_importing(demo_reference(), "piece", "GBP", columns)
    found = [row["record"] for row in match_rows(about, rows, []) if row["record"]]
    return sorted((one["item"], one["called"], one["condition"]) for one in found)


def test_lists_are_brought_in_with_no_server_and_no_signal(alone):
    page = alone
    wanted = []
    for name in FILES:
        path = FOLDER / name
        choose_file(page, name, path.read_bytes())
        days = page.get_by_label("Days of")
        for place in range(days.count()):
            days.nth(place).select_option("day")
        look(page)
        made = made_here(path)
        page.get_by_role("button", name=f"Import {len(made)}", exact=True).click()
        expect(page.get_by_role("heading", name=f"{len(made)} imported")).to_be_visible()
        page.get_by_role("button", name="Another file").click()
        wanted += made
        kept = records(page, "piece")
        assert sorted((r["item"], r["called"], r["condition"]) for r in kept) == sorted(wanted)


def test_bad_files_are_each_told_in_a_sentence_and_the_next_is_read(alone):
    page = alone
    for name, (data, sentence) in BAD.items():
        page.get_by_label("Choose a file").set_input_files(
            {"name": name, "mimeType": "text/csv", "buffer": data}
        )
        expect(page.get_by_role("alert").first).to_contain_text(sentence)
    choose_file(page, "good.csv", as_csv([["Number", "Name"], ["P 20", ""]]))
    look(page)
    expect(page.locator(".import [role=status]").first).to_have_text("1 new.")


def test_a_file_that_is_gone_is_told_and_another_can_be_chosen(page, server, tmp_path):
    page.goto(server.url)
    open_import(page)
    path = tmp_path / "list.csv"
    path.write_bytes(as_csv([["Number", "Name"], ["P 20", ""]]))
    page.get_by_label("Choose a file").set_input_files(path)
    expect(page.get_by_role("heading", name="list.csv")).to_be_visible()
    path.unlink()
    page.get_by_label("Which row has the headings").select_option("None")
    expect(page.get_by_role("alert").first).to_have_text(
        "This file cannot be read any more. Choose it again."
    )
    page.get_by_role("button", name="Another file").click()
    choose_file(page, "good.csv", as_csv([["Number", "Name"], ["P 24", ""]]))
    look(page)
