"""What the preview of an import says of each row: how its cells are read, and what is no piece."""

from playwright.sync_api import expect

from tests.browser.exchanging import as_csv, choose_file, look, open_import
from tests.browser.phone_storage import records

ROWS = [
    ["Number", "Name", "Condition", "Box", "Price", "Bought"],
    ["P 20", "", "v. good", "y - torn", "12/6", "3/4/1998"],
    ["P 24", "", "good", "mint box", "£4", "1957"],
    ["P 21", "", "good", "", "5", ""],
    ["", "xyz", "", "", "", ""],
    ["-----", "-----", "-----", "", "", ""],
    ["TOTAL", "", "", "", "£123", ""],
    ["", "Snow plough", "", "", "", ""],
]


def test_what_is_read_otherwise_than_it_stands_is_shown_before_it_is_written(page, server):
    page.goto(server.url)
    open_import(page)
    choose_file(page, "list.csv", as_csv(ROWS))
    expect(page.get_by_role("main")).to_contain_text("A column that you leave out is not imported.")
    page.get_by_label("Days of Bought").select_option("day")
    look(page)
    expect(page.locator(".import [role=status]").first).to_have_text(
        "4 new · 3 cannot be imported."
    )
    page.get_by_label("Show", exact=True).select_option("")
    row = page.locator(".import-row")
    expect(row.nth(0).locator(".import-read")).to_have_text(
        "Read as: condition very good · boxed yes · price paid £0.63 (12/6) · "
        "when it was bought 3 April 1998"
    )
    expect(row.nth(1).locator(".import-read")).to_have_text(
        "Read as: box condition as new · boxed yes"
    )
    expect(row.nth(2).locator(".import-read")).to_have_text("Read as: price paid £5")
    for n, why in [(3, '"xyz" names no piece'), (4, "nothing says which"), (5, "this is a total")]:
        expect(row.nth(n)).to_contain_text("cannot be imported")
        expect(row.nth(n)).to_contain_text(why)
        expect(row.nth(n).locator(".import-read")).to_have_count(0)
    expect(row.nth(6)).to_contain_text("new")
    page.get_by_role("button", name="Import 4", exact=True).click()
    expect(page.get_by_role("heading", name="4 imported")).to_be_visible()
    undo = page.get_by_role("group", name="This piece").get_by_role("button", name="Undo")
    expect(undo).to_be_visible()
    made = {r["item"] or r["called"]: r for r in records(page, "piece")}
    assert sorted(made) == ["P 20", "P 21", "P 24", "Snow plough"]
    assert made["P 20"]["notes"] == "Box: y - torn"
    assert (made["P 24"]["boxed"], made["P 24"]["box_condition"]) == ("yes", "as new")
