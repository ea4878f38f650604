"""Spreadsheets in and files out, in every browser."""

from pathlib import Path
from typing import Any

import jsonschema
import orjson

from identify.exchange.schemas import records_schema
from tests.browser.exchanging import as_csv, listed
from tests.conftest import Server
from tests.every_browser.driven import Phone
from tests.every_browser.steps import catch_files, labelled, open_more, put_file, records


def test_a_spreadsheet_is_brought_in_as_one_change(
    lent: Phone, app: Server, pellmarsh: dict[str, Any], tmp_path: Path
):
    lent.goto(app.url)
    table = tmp_path / "list.csv"
    rows = listed(pellmarsh, 60)
    table.write_bytes(as_csv(rows))
    open_more(lent, "Import a list")
    put_file(lent, "Choose a file", table)
    lent.sees("it was read as Windows-1252")
    lent.tap("See what changes")
    lent.sees("60 new.")
    assert records(lent, "piece") == []
    lent.tap("Import 60")
    lent.sees("60 imported")
    assert sorted(one["item"] for one in records(lent, "piece")) == sorted(
        row[1] for row in rows[1:]
    )
    lent.tap("Undo")
    lent.sees("Undone")
    assert records(lent, "piece") == []


def test_what_is_taken_out_is_what_is_kept(lent: Phone, app: Server):
    lent.goto(app.url)
    lent.tap("Try the demo")
    lent.sees("100 pieces")
    before = {one["id"]: one for sort in ("piece", "want", "note") for one in records(lent, sort)}
    open_more(lent, "Print or save")
    box = labelled(lent, "As")
    lent.run("arguments[0].value = 'json'; arguments[0].dispatchEvent(new Event('change'))", box)
    lent.sees("It will hold 100 pieces, 14 wants, 8 notes")
    catch_files(lent)
    lent.tap("Make the file")
    lent.sees("went to this device’s downloads")
    file = orjson.loads(lent.until("window.files[0]"))
    jsonschema.validate(file, records_schema())
    assert {one["id"]: one for one in file["records"]} == before
