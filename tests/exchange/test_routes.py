"""The routes over real HTTP."""

import io
import re
import urllib.error
import urllib.request
from typing import Any

import orjson
import pytest
from openpyxl import load_workbook

from tests.exchange.test_round_trips import imported


def post(server: Any, path: str, body: bytes | dict[str, Any]) -> tuple[int, Any, bytes]:
    """The answer to one request: status, headers, body."""
    content = body if isinstance(body, bytes) else orjson.dumps(body)
    request = urllib.request.Request(
        f"{server.url}api/exchange/{path}", content, {"Content-Type": "application/json"}
    )
    try:
        with urllib.request.urlopen(request) as answer:
            return answer.status, answer.headers, answer.read()
    except urllib.error.HTTPError as error:
        with error:
            return error.code, error.headers, error.read()


def test_records_come_back_as_they_were_written(server):
    time = "2024-01-01T00:00:00.000Z"
    record = {"id": "r1", "type": "want", "made": time, "changed": time, "trashed": "", "x": [1]}
    record |= {"pack": "pellmarsh", "item": "P 21"}
    for ending in ("csv", "xlsx", "json"):
        _, headers, content = post(server, "write", {"records": [record], "format": ending})
        assert headers["Cache-Control"] == "no-store"
        assert "valuables" in headers["Content-Disposition"]
        assert imported(content, [])[0]["record"] == record
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
    "too much": ("write", b"x" * 20_000_001, 413, "More than 20 MB are not taken at once here."),
    "no JSON": ("write", b"{", 400, "The request cannot be read: Input data was truncated."),
    "no records": ("write", b"{}", 400, "The request cannot be read: Object missing required f"),
    "a format": ("write", {"records": [], "format": "doc"}, 400, "The request cannot be read: Inv"),
    "a record": ("write", {"records": [{"type": []}], "format": "csv"}, 400,
                 "Record 1 of these has no id or no type."),
}  # fmt: skip


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_done_is_told(server, name):
    path, body, code, sentence = REFUSED[name]
    status, _, content = post(server, path, body)
    assert status == code
    assert orjson.loads(content)["error"].startswith(sentence)


def test_there_is_nothing_to_fetch(server):
    with pytest.raises(urllib.error.HTTPError, match="404"):
        urllib.request.urlopen(f"{server.url}api/exchange/write")
