"""The routes over real HTTP."""

import io
import re
import urllib.error
import urllib.request
from typing import Any

import orjson
import pytest
from openpyxl import load_workbook

from tests.exchange.books import by_hand, written

LIST = b"No.;What;Colour;Paid\nP 21;Express electric;black, silver line;12/6\n;;;4\n"


def post(server: Any, path: str, body: bytes | dict[str, Any]) -> tuple[int, Any, bytes]:
    """The answer to one request: status, headers, body."""
    content = body if isinstance(body, bytes) else orjson.dumps(body)
    kind = "text/csv" if path.startswith("read") else "application/json"
    request = urllib.request.Request(
        f"{server.url}api/exchange/{path}", content, {"Content-Type": kind}
    )
    try:
        with urllib.request.urlopen(request) as answer:
            return answer.status, answer.headers, answer.read()
    except urllib.error.HTTPError as error:
        with error:
            return error.code, error.headers, error.read()


def told(server: Any, path: str, body: bytes | dict[str, Any]) -> Any:
    status, _, content = post(server, path, body)
    assert status == 200, content
    return orjson.loads(content)


def about(table: dict[str, Any], **more: Any) -> dict[str, Any]:
    """What is asked about the rows of a table that was read."""
    return {"upload": table["upload"], "columns": table["columns"], "currency": "GBP", **more}


@pytest.fixture(scope="module")
def matched(server) -> dict[str, Any]:
    """A list read and matched, as the app does it."""
    table = told(server, "read?name=list.csv", LIST)
    asked = about(table, **{"as": "piece"})
    asked["keys"] = told(server, "keys", asked)["keys"]
    return {"table": table, "asked": asked, "rows": told(server, "match", asked)["rows"]}


def test_a_list_is_read_and_matched(matched):
    assert [column["field"] for column in matched["table"]["columns"]] == [
        "number",
        "name",
        "variant",
        "price",
    ]
    record = matched["rows"][0]["record"]
    assert (record["item"], record["of"]) == ("P 21", [{"variant": "p21_c", "chance": 1}])
    assert matched["rows"][1]["failed"].startswith("Row 3: nothing says which piece this is")


def test_a_second_import_finds_the_first(server, matched):
    record = matched["rows"][0]["record"] | {"id": "r1", "made": "", "changed": ""}
    again = told(server, "match", matched["asked"] | {"existing": [record]})["rows"]
    assert again[0]["same"] == {"id": "r1", "sets": {}, "before": {}, "clashes": []}


def test_the_table_is_read_anew_without_sending_it(server):
    table = told(server, "read?name=list.csv", LIST)
    other = told(server, f"read?name=list.csv&header=0&upload={table['upload']}", b"")
    assert (other["upload"], other["header"]) == (table["upload"], 0)
    keys = told(server, "keys", about(other, **{"as": "piece"}))["keys"]
    assert len(keys) == len(other["rows"]) == len(table["rows"]) + 1
    rows = told(server, "match", about(other, first=1, keys=keys[1:2]))["rows"]
    assert [row["row"] for row in rows] == [2]


def test_rows_that_are_not_there_are_not_matched(server, matched):
    asked = matched["asked"] | {"first": 1}
    status, _, content = post(server, "match", asked)
    assert (status, orjson.loads(content)["error"]) == (400, "The table has no such rows.")


def test_only_the_packs_asked_for_are_searched(server, matched):
    asked = matched["asked"] | {"packs": ["tarrowby"]}
    assert "P 21" not in [c["item"] for c in told(server, "match", asked)["rows"][0]["candidates"]]


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
def test_failed_rows_are_given_back(server, matched, ending):
    names = [column["name"] for column in matched["table"]["columns"]]
    row = {**matched["table"]["rows"][1], "wrong": [matched["rows"][1]["failed"]]}
    asked = {"name": "list.csv", "header": names, "rows": [row], "format": ending}
    status, headers, content = post(server, "failed", asked)
    assert status == 200
    assert "left-out-rows-valuables-" in headers["Content-Disposition"]
    table = told(server, "read", content)
    assert table["columns"][0]["name"] == "what is wrong"
    assert table["rows"][0]["cells"][1:] in (["", "", "", "4"],)


def test_records_come_back_as_they_were_written(server):
    time = "2024-01-01T00:00:00.000Z"
    record = {"id": "r1", "type": "want", "made": time, "changed": time, "trashed": "", "x": [1]}
    record |= {"pack": "pellmarsh", "item": "P 21"}
    for ending in ("csv", "xlsx", "json"):
        _, headers, content = post(server, "write", {"records": [record], "format": ending})
        assert headers["Cache-Control"] == "no-store"
        assert "valuables" in headers["Content-Disposition"]
        table = told(server, "read", content)
        keys = told(server, "keys", about(table))["keys"]
        assert told(server, "match", about(table, keys=keys))["rows"][0]["record"] == record
        if ending == "xlsx":
            sheet = load_workbook(io.BytesIO(content))["records"]
            assert sheet["E2"].value == "Express electric, body like a box"


def test_a_page_of_wants(server):
    want = {"id": "r1", "type": "want", "pack": "pellmarsh", "item": "P 21", "urgency": 3}
    status, headers, content = post(server, "wants-page", {"records": [want]})
    assert (status, headers["Content-Type"]) == (200, "text/html; charset=utf-8")
    assert re.search(r'filename="wanted-\d{4}-\d\d-\d\d\.html"', headers["Content-Disposition"])
    assert b"Express electric, body like a box" in content


REFUSED = {
    "a table": ("read", by_hand(written("&b;"), '<!DOCTYPE w [<!ENTITY b "x">]>'), 400,
                "This workbook declares XML entities"),
    "too much": ("read", b"x" * 20_000_001, 413, "More than 20 MB are not taken at once here."),
    "no JSON": ("match", b"{", 400, "The request cannot be read: Input data was truncated."),
    "no rows": ("keys", b"{}", 400, "The request cannot be read: Object missing required field"),
    "a sort": ("match", {"as": "engine", "upload": "", "columns": []}, 400,
               'Rows are read as "piece", "want" or "note".'),
    "a format": ("write", {"records": [], "format": "doc"}, 400, "The request cannot be read: Inv"),
    "a record": ("write", {"records": [{"type": []}], "format": "csv"}, 400,
                 "Record 1 of these has no id or no type."),
    "a batch": ("match", {"upload": "", "columns": [], "keys": ["k"] * 501}, 400,
                "At most 500 rows are matched at a time."),
    "no upload": ("keys", {"upload": "x", "columns": []}, 410,
                  "The server no longer has this file. Choose it again."),
    "no upload to read": ("read?upload=x", b"", 410,
                          "The server no longer has this file. Choose it again."),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_done_is_told(server, name):
    path, body, code, sentence = REFUSED[name]
    status, _, content = post(server, path, body)
    assert status == code
    assert orjson.loads(content)["error"].startswith(sentence)


def test_there_is_nothing_to_fetch(server):
    with pytest.raises(urllib.error.HTTPError, match="404"):
        urllib.request.urlopen(f"{server.url}api/exchange/read")
