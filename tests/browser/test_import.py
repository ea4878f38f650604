"""Bringing in a collector's list: read, confirmed, looked at, and only then written."""

import re
from collections.abc import Iterator

import orjson
import pytest
from playwright.sync_api import Page, expect

from tests.browser.exchanging import as_csv, choose_file, listed, look, open_import
from tests.browser.phone import PHONE, broken_words, in_each_light, watched
from tests.browser.phone_storage import kept, place, records

HEADS = ["Number", "Name", "Condition", "Bought"]
SUMMARY = """async () => {
  const database = await new Promise(done => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => done(request.result);
  });
  const all = store => new Promise(done => {
    database.transaction(store).objectStore(store).getAll().onsuccess = e => done(e.target.result);
  });
  const [records, journal] = [await all("records"), await all("journal")];
  database.close();
  const items = records.filter(one => one.trashed === "").map(one => one.item).sort();
  return [items, journal.length, new Set(journal.map(one => one.group)).size];
}"""  # items in the collection, changes in the history, and in how many groups
DROP = """([name, bytes]) => {
  const carried = new DataTransfer();
  carried.items.add(new File([new Uint8Array(bytes)], name, { type: "text/csv" }));
  const options = { dataTransfer: carried, bubbles: true, cancelable: true };
  for (const type of ["dragover", "drop"])
    document.querySelector(".drop").dispatchEvent(new DragEvent(type, options));
}"""


@pytest.fixture
def at_import(page, server) -> Page:
    page.goto(server.url)
    open_import(page)
    return page


def expect_status(page: Page, text: str | re.Pattern[str]) -> None:
    """Waits until this is said of the rows."""
    status = page.locator(".import [role=status]").first
    expect(status).to_have_text(text, use_inner_text=True)


def bring_in(page: Page, count: int) -> None:
    page.get_by_role("button", name=f"Import {count}", exact=True).click()
    expect(page.get_by_role("heading", name=f"{count} imported")).to_be_visible(timeout=60_000)


def again(page: Page, rows: list[list[str]]) -> None:
    """Bring the list in once more, up to what it would do."""
    page.get_by_role("button", name="Another file").click()
    choose_file(page, "list.csv", as_csv(rows))
    look(page)


def test_two_thousand_rows_are_one_change(at_import, pellmarsh):
    """A bar while it looks, nothing written before the word, one group, one Undo."""
    page = at_import
    rows = listed(pellmarsh["pack"], 2000)
    choose_file(page, "list.csv", as_csv(rows))
    expect(page.get_by_text("it was read as Windows-1252")).to_be_visible()
    page.get_by_role("button", name="See what changes").click()
    bar = page.get_by_role("progressbar", name="Rows looked at")
    expect(bar).to_have_attribute("max", "2000")
    expect(page.get_by_role("heading", name="What changes")).to_be_visible(timeout=60_000)
    expect_status(page, "2000 new.")
    assert page.evaluate(SUMMARY) == [[], 0, 0]
    bring_in(page, 2000)
    assert page.evaluate(SUMMARY) == [sorted(row[1] for row in rows[1:]), 2000, 1]
    page.get_by_role("alert").get_by_role("button", name="Undo", exact=True).click()
    expect(page.get_by_role("alert")).to_contain_text("Undone", timeout=60_000)
    assert page.evaluate(SUMMARY) == [[], 4000, 2]


def test_it_can_be_stopped_and_a_second_time_changes_nothing(at_import, pellmarsh):
    page = at_import
    rows = listed(pellmarsh["pack"], 400)
    choose_file(page, "long.csv", as_csv(listed(pellmarsh["pack"], 12_000)))
    page.get_by_role("button", name="See what changes").click()
    page.wait_for_function(
        "() => document.querySelector('.import progress')?.value > 0", polling=10
    )
    page.get_by_role("button", name="Stop").click()
    expect(page.get_by_role("heading", name="The columns")).to_be_visible()
    assert kept(page)["records"] == []
    page.get_by_role("button", name="Another file").click()
    choose_file(page, "list.csv", as_csv(rows))
    look(page)
    bring_in(page, 400)
    before = kept(page)
    again(page, rows)
    expect_status(page, "400 here already, unchanged.")
    expect(page.get_by_role("button", name="There is nothing to import")).to_be_disabled()
    assert kept(page) == before
    # what was deleted here stays deleted
    page.get_by_role("button", name="Undo", exact=True).first.click()
    expect(page.get_by_role("alert")).to_contain_text("Undone")
    page.get_by_role("button", name="Back to the columns").click()
    look(page)
    expect_status(page, "400 in the bin here, and left there.")
    # but one tick brings it back, brought up to date, as one change that is undone as one
    rows[1][3] = "poor"
    page.get_by_role("button", name="Back to the columns").click()
    again(page, rows)
    page.get_by_label("Take these 400 out of the bin and import them").check()
    expect_status(page, "400 taken out of the bin.")
    bring_in(page, 400)
    back = kept(page)["records"]
    assert sorted(one["id"] for one in back) == sorted(one["id"] for one in before["records"])
    assert {one["trashed"] for one in back} == {""}
    assert [one["condition"] for one in back if one["came"]["key"] == "piece:row 1"] == ["poor"]
    again(page, rows)
    expect_status(page, "400 here already, unchanged.")
    page.get_by_role("button", name="Undo", exact=True).first.click()
    expect(page.get_by_role("alert")).to_contain_text("Undone")
    assert all(one["trashed"] for one in kept(page)["records"])


def test_those_that_came_in_are_shown_apart_and_what_is_owned_is_said(at_import):
    page = at_import
    choose_file(page, "first.csv", as_csv([HEADS, ["P 20", "", "good", ""], ["P 24", "", "", ""]]))
    look(page)
    bring_in(page, 2)
    page.get_by_role("button", name="Another file").click()
    choose_file(page, "more.csv", as_csv([HEADS, ["P 24", "black", "", ""], ["P 21", "", "", ""]]))
    look(page)
    rows = page.locator(".import-row")
    page.get_by_label("Show").select_option("")
    expect(rows.nth(0)).to_contain_text("you have one already")
    expect(rows.nth(1)).not_to_contain_text("you have")
    bring_in(page, 2)
    page.get_by_role("button", name="Look at them").click()
    expect(page.get_by_role("heading", level=1)).to_have_text("Imported from more.csv")
    shown = page.get_by_role("list", name="Pieces").get_by_role("button")
    expect(shown).to_contain_text(["P 24", "P 21"])
    page.reload()
    expect(page.get_by_role("list", name="Pieces").get_by_role("button")).to_have_count(2)
    page.get_by_role("button", name="All of the collection").click()
    expect(page.get_by_role("list", name="Pieces").get_by_role("button")).to_have_count(4)
    open_import(page)
    choose_file(page, "third.csv", as_csv([["My no", "Number", "Name"], ["7", "P 24", "black"]]))
    look(page)
    page.get_by_label("Show").select_option("")
    expect(page.locator(".import-row")).to_contain_text("new: you have this variant already")
    page.get_by_label("Row 2 is").select_option("-1")  # under the person's own words: not known
    expect(page.locator(".import-row")).not_to_contain_text("you have")


def test_what_is_not_sure_is_chosen_and_what_cannot_be_read_comes_back(at_import):
    page = at_import
    rows = [
        HEADS,
        ["P 20", "", "good", "3/1998"],
        ["P 22O", "", "mint", "31.2.1957"],
        ["", "", "good", ""],
        ["P 24", "", "", ""],
    ]
    choose_file(page, "list.csv", as_csv(rows))
    look(page)
    expect_status(page, "3 new · 1 cannot be imported.")
    expect(page.get_by_label("Show")).to_have_value("choose")
    which = page.get_by_label("Row 3 is")
    expect(which.locator("option")).to_have_count(5)
    expect(page.get_by_text("February 1957 has 28 days")).to_be_visible()
    which.focus()
    page.keyboard.press("Home")  # with the keyboard alone
    expect(which).to_have_value("0")
    page.get_by_label("Show").select_option("")
    page.get_by_label("Row 5 is").select_option("out")
    expect_status(page, "2 new · 1 cannot be imported · 1 left out.")
    with page.expect_download() as coming:
        page.get_by_role("button", name="Save the 2 rows left out as a file").click()
    text = coming.value.path().read_text("utf-8-sig")
    assert text.splitlines()[0] == '"what is wrong","Number","Name","Condition","Bought"'
    assert "nothing says which piece this is" in text.splitlines()[1]
    assert text.splitlines()[2].startswith('"You left it out.","P 24"')
    bring_in(page, 2)
    made = {r["item"]: r for r in records(page, "piece")}
    assert sorted(made) == ["P 20"]
    assert sorted(r["condition"] for r in records(page, "piece")) == ["as new", "good"]
    assert "Bought: 31.2.1957" in {r["notes"] for r in records(page, "piece")}
    # chosen once is chosen for good
    again(page, rows)
    page.get_by_label("Show").select_option("")
    page.get_by_label("Row 5 is").select_option("out")
    expect_status(page, re.compile("^2 here already, unchanged"))


def test_a_want_without_a_sure_item_waits_for_the_choice(at_import):
    page = at_import
    choose_file(page, "list.csv", as_csv([["Number", "Price"], ["P 22O", "£20"], ["P 21", "£30"]]))
    page.get_by_label("What the rows are").select_option("want")
    look(page)
    expect_status(page, "1 new · 1 without a number, to be chosen.")
    page.get_by_label("Row 2 is").select_option("0")
    expect_status(page, "2 new.")
    bring_in(page, 2)
    wants = records(page, "want")
    assert sorted((w["item"], w["most"]["minor"]) for w in wants) == [
        ("P 20", 2000),
        ("P 21", 3000),
    ]


def test_a_changed_cell_changes_its_field_and_a_change_on_both_sides_is_asked(at_import):
    page = at_import
    rows = [HEADS, ["P 20", "", "good", ""], ["P 24", "", "fair", ""]]
    choose_file(page, "list.csv", as_csv(rows))
    look(page)
    bring_in(page, 2)
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").first.click()
    page.get_by_label("Condition", exact=True).select_option("poor")
    expect(page.locator(".saved").filter(has_text="Saved")).to_have_count(1)
    open_import(page)
    rows[1][2], rows[2][2] = "very good", "excellent"
    again(page, rows)
    expect_status(page, "1 changed · 1 here already, unchanged.")
    side = page.get_by_label("Row 2, condition")
    expect(page.get_by_text(re.compile("Here: .?poor.?. In the file: .?very good"))).to_be_visible()
    side.select_option("theirs")
    expect_status(page, "2 changed.")
    page.get_by_label("Show").select_option("")
    expect(page.get_by_text("Condition: fair → excellent")).to_be_visible()
    bring_in(page, 2)
    assert {r["item"]: r["condition"] for r in records(page, "piece")} == {
        "P 20": "very good",
        "P 24": "excellent",
    }
    again(page, rows)
    expect_status(page, "2 here already, unchanged.")


def test_the_columns_are_what_the_person_says(at_import):
    page = at_import
    rows = [["Col", "Words", "When"], ["P 20", "mint", "3/4/1998"], ["P 24", "good", "5/6/1999"]]
    page.evaluate(DROP, ["list.csv", list(as_csv(rows))])
    expect(page.get_by_role("heading", name="list.csv: 2 rows")).to_be_visible()
    expect(page.get_by_label("Col", exact=True)).to_have_value("number")
    page.get_by_label("Words").select_option("notes")
    page.get_by_role("button", name="See what changes").click()
    expect(page.get_by_role("main").get_by_role("alert")).to_contain_text(
        "how the dates in “When” are written"
    )
    page.get_by_label("Days of When").select_option("month")
    page.get_by_label("Tarrowby").uncheck()
    look(page)
    bring_in(page, 2)
    made = {r["item"]: (r["when"], r["notes"], r["condition"]) for r in records(page, "piece")}
    assert made == {
        "P 20": ("1998-03-04", "Words: mint", ""),
        "P 24": ("1999-05-06", "Words: good", ""),
    }


@pytest.mark.parametrize(
    ("name", "content", "sentence"),
    [
        ("cut.xlsx", b"PK\x03\x04 cut short", "cut short"),
        ("empty.csv", b"", "empty"),
    ],
)
def test_what_is_no_spreadsheet_is_told_and_nothing_is_lost(at_import, name, content, sentence):
    page = at_import
    page.get_by_label("Choose a file").set_input_files(
        {"name": name, "mimeType": "text/csv", "buffer": content}
    )
    expect(page.get_by_role("main").get_by_role("alert")).to_contain_text(sentence)
    choose_file(page, "list.csv", as_csv([HEADS, ["P 20", "", "good", ""]]))
    look(page)
    expect_status(page, "1 new.")


def stages(page: Page) -> Iterator[str]:
    """Every state of the screen, one after the other."""
    yield "file"
    rows = [
        HEADS,
        ["P 20", "", "good", "3/4/1998"],
        ["P 22O", "", "mint", "31.2.1957"],
        ["", "", "x", ""],
    ]
    choose_file(page, "list.csv", as_csv(rows))
    yield "columns"
    page.get_by_label("Days of Bought").select_option("day")
    look(page)
    yield "rows"
    page.get_by_role("button", name=re.compile("^Import ")).click()
    expect(page.get_by_role("heading", name=re.compile("imported"))).to_be_visible()
    yield "done"


def test_every_stage_can_be_read_by_all(browser, server):
    context = browser.new_context(**PHONE, reduced_motion="reduce")
    page = watched(context.new_page())
    page.goto(server.url)
    open_import(page)
    found: dict[str, list[str]] = {}
    for stage in stages(page):
        found[stage] = in_each_light(page)
        page.set_viewport_size({"width": 320, "height": 640})
        page.evaluate("document.documentElement.style.fontSize = '200%'")
        wide = page.evaluate("() => document.scrollingElement.scrollWidth - innerWidth")
        found[f"{stage} narrow"] = [] if wide <= 0 else [f"{wide} px too wide"]
        found[f"{stage} words"] = broken_words(page)
        page.evaluate("document.documentElement.style.fontSize = ''")
        page.set_viewport_size(PHONE["viewport"])
    assert orjson.dumps({stage: some for stage, some in found.items() if some}) == b"{}"
    context.close()
