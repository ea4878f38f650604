"""A list means the same to the engine here and on the phone: its table, its columns, its rows; and
both write the same cells, workbooks and pages.
"""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st
from playwright.sync_api import Page

from identify.core.exporting.naming import naming_of
from identify.core.exporting.own_tables import cells_of, columns_for, table_of
from identify.core.exporting.records_out import records_csv, records_json, records_workbook
from identify.core.exporting.wants_page import wants_page
from identify.core.exporting.workbook_parts import workbook_parts
from identify.core.importing.rows_matched import new_importing
from identify.exchange.import_steps import match_rows, name_rows, read_file
from identify.exchange.table import FileError
from identify.exchange.writing import write_records, zipped
from identify.phone import engine_module, tables_module
from identify.shipped import DEMO, WEB
from tests.browser.engines import PAGE
from tests.conftest import serving
from tests.exchange.books import by_hand, written
from tests.exchange.fitting import demo_reference
from tests.exchange.labelled import labelled
from tests.exchange.strategies import QUICK, records

FOLDER = Path(__file__).parents[2] / "fixtures" / "exchange"
FILES = sorted(path for path in FOLDER.iterdir() if path.suffix in (".csv", ".xlsx"))
SORTS = ["piece", "want", "note"]
START = """async (packs) => {
  const { prepare } = await import("./engine.js");
  const rules = await import("./tables.js");
  const reference = rules.new_reference(packs.map(prepare));
  const { tableOfFile } = await import("./exchange/file-table.js");
  window.tableOf = async ([name, bytes]) => {
    const table = await tableOfFile(new File([new Uint8Array(bytes)], name));
    const found = rules.headed(table, -1);
    const shares = found.names.map((_, place) =>
      rules.column_shares(rules.cells_below(found.rows, place, found.names.length), reference));
    return rules.table_read(table, found, shares, name);
  };
  window.written = (records) => {
    const naming = rules.naming_of(packs);
    const fields = rules.columns_for(records);
    const table = rules.table_of(fields, records.map((one) => rules.cells_of(one, fields, naming)));
    return [
      rules.records_csv(table), rules.records_workbook(table), rules.records_json(records, "now"),
      rules.wants_page(records, naming, "", "1 May 2027", {}),
    ];
  };
  window.matched = ([sort, columns, rows, existing]) => {
    const fields = columns.map(({ field }) => field);
    const { keys, notes } =
      rules.keys_of(sort, rows.map((row) => rules.name_of_row(sort, fields, row)), rows);
    const about = rules.new_importing(reference, sort, "GBP", columns);
    const found = rows.map((row, n) =>
      rules.row_matched(about, { ...row, key: keys[n] }, existing[n] ?? null));
    return { keys, notes, rows: found };
  };
}"""


@pytest.fixture(scope="module")
def phone(browser) -> Iterator[Page]:
    files = {
        path.relative_to(WEB).as_posix(): path.read_bytes()
        for folder in ("exchange", "parts", "data")
        for path in (WEB / folder).glob("*.js")
    }
    files |= {"engine.js": engine_module().encode(), "tables.js": tables_module().encode()}
    with serving({"index.html": PAGE, **files}) as server:
        page = browser.new_page()
        page.goto(server.url)
        page.evaluate(START, [engine["pack"] for engine in demo_reference()["engines"]])
        yield page
        page.close()


def here(sort: str, columns: list[Any], rows: list[Any], existing: list[Any]) -> dict[str, Any]:
    """What Python makes of rows."""
    named = name_rows(sort, columns, rows)
    keyed = [row | {"key": key} for row, key in zip(rows, named["keys"], strict=True)]
    about = new_importing(demo_reference(), sort, "GBP", columns)
    known = [one for one in existing if one is not None]
    return {**named, "rows": match_rows(about, keyed, known)}


def close(one: Any, other: Any) -> bool:
    """Whether two values are equal, chances but for the last bits of their working out."""
    if isinstance(one, dict):
        return one.keys() == other.keys() and all(close(one[k], other[k]) for k in one)
    if isinstance(one, list):
        return len(one) == len(other) and all(map(close, one, other))
    if isinstance(one, float) or isinstance(other, float):
        return abs(one - other) <= 0.0011
    return one == other


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_every_file_is_read_alike(phone, path):
    data = path.read_bytes()
    table = read_file(data, demo_reference(), path.name)
    assert phone.evaluate("(given) => tableOf(given)", [path.name, list(data)]) == table
    for sort in SORTS:
        given = [sort, table["columns"], table["rows"], []]
        found = phone.evaluate("(given) => matched(given)", given)
        assert close(found, here(*given)), sort


LONG = [[f"P {n}", "a"] for n in range(2_500)]  # the phone parses a thousand at a time
LONG_BOOKS = {
    "shared texts": zipped(workbook_parts({"names": ["No", "What"], "rows": LONG}, [])),
    "rows without numbers": by_hand(
        f"<row/>{''.join(written(*row) for row in LONG)}<row/>{written('end')}<row/>"
    ),
}


@pytest.mark.parametrize("name", LONG_BOOKS)
def test_a_workbook_that_is_parsed_in_pieces_is_read_alike(phone, name):
    data = LONG_BOOKS[name]
    table = read_file(data, demo_reference(), name)
    assert phone.evaluate("(given) => tableOf(given)", [name, list(data)]) == table
    assert len(table["rows"]) >= len(LONG)


@pytest.mark.parametrize("ending", ["xlsx", "csv"])
def test_a_list_that_is_too_long_is_refused_alike(phone, ending):
    rows = [[f"P {n}", "a"] for n in range(20_001)]
    data = "No,What\n" + "".join(f"{number},{what}\n" for number, what in rows)
    content = by_hand("".join(written(*row) for row in rows)) if ending == "xlsx" else data.encode()
    with pytest.raises(FileError, match=r"more than 20,000 rows") as told:
        read_file(content, demo_reference(), "long")
    asked = "(given) => tableOf(given).catch(({ message }) => message)"
    assert phone.evaluate(asked, ["long", list(content)]) == str(told.value)


def test_rows_spoilt_in_every_way_are_matched_alike_and_again(phone):
    """A first import of 200 rows, and a second one of the same with other conditions."""
    fields = ["number", "name", "description", "range", "condition", "boxed", "price", "when"]
    columns = [{"name": one, "field": one, "order": ""} for one in fields]
    ends = [["VG", "y - torn", "12/6", "12 May 1957"], ["C7", "no box", "£4", "c. 1957"],
            ["brilliant", "mint box", "lots", "31/2/57"], ["", "", "", ""]]  # fmt: skip
    rows = []
    for n, one in enumerate(labelled(demo_reference(), 200, seed=7)):
        said = [one.query[name] for name in ("number", "name", "description", "range")]
        rows.append({"row": n + 2, "cells": [*said, *ends[n % len(ends)]]})
    for sort in SORTS:
        first = here(sort, columns, rows, [])
        assert close(phone.evaluate("(given) => matched(given)", [sort, columns, rows, []]), first)
        existing = [
            row["record"] and {**row["record"], "id": f"r{n}", "condition": "fair", "made": ""}
            for n, row in enumerate(first["rows"])
        ]
        changed = [{**row, "cells": [*row["cells"][:4], "poor", *row["cells"][5:]]} for row in rows]
        again = here(sort, columns, changed, existing)
        asked = [sort, columns, changed, existing]
        assert close(phone.evaluate("(given) => matched(given)", asked), again)
        assert any(row["same"] and row["same"]["clashes"] for row in again["rows"]) == (
            sort != "want"
        )


def test_a_table_of_this_apps_own_comes_back_alike_and_changes_nothing(phone, demo_records):
    for ending in ("csv", "xlsx", "json"):
        data = write_records(demo_records, ending, [])
        table = read_file(data, demo_reference(), "own")
        found = phone.evaluate("(given) => tableOf(given)", ["own", list(data)])
        assert found == table
        given = ["", table["columns"], table["rows"], demo_records]
        again = phone.evaluate("(given) => matched(given)", given)
        assert close(again, here(*given))
        assert all(row["same"]["sets"] == {} for row in again["rows"]), ending
        assert not any(row["same"]["clashes"] for row in again["rows"]), ending


def written_here(found: list[dict[str, Any]]) -> list[Any]:
    """What Python writes of records."""
    naming = naming_of([engine["pack"] for engine in demo_reference()["engines"]])
    fields = columns_for(found)
    table = table_of(fields, [cells_of(record, fields, naming) for record in found])
    page = wants_page(found, naming, "", "1 May 2027", {})
    return [records_csv(table), records_workbook(table), records_json(found, "now"), page]


def test_what_is_written_is_the_same_to_the_letter(phone, demo_records):
    assert phone.evaluate("(given) => written(given)", demo_records) == written_here(demo_records)


@given(found=st.lists(records(), min_size=1, max_size=4))
@QUICK
def test_whatever_is_in_a_record_it_is_written_alike(phone, found):
    """Long texts too, whose signs beyond the first 65,536 count twice to a spreadsheet."""
    found.append({"id": "r1", "type": "note", "text": "😀" * 20_000})
    assert phone.evaluate("(given) => written(given)", found) == written_here(found)


@pytest.fixture(scope="module")
def demo_records() -> list[dict[str, Any]]:
    records = orjson.loads(DEMO.read_bytes())["records"]
    return [one for one in records if one["type"] in SORTS]
