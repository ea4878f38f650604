"""Spreadsheets in and out over HTTP: files in, JSON out and the other way. A file goes up once; it
is kept (uploads.py) only until its rows are matched.

identify/exchange/README.md says what each route takes and gives.
"""

from asyncio import Semaphore, get_running_loop
from collections.abc import Awaitable, Callable, Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import Annotated, Literal, TypeVar

import msgspec
from starlette.concurrency import run_in_threadpool
from starlette.datastructures import QueryParams
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.core.types.pack import Pack
from identify.exchange.import_steps import chosen_packs, name_rows, read_file, reference_of
from identify.exchange.importing import Importing
from identify.exchange.reference import Reference
from identify.exchange.table import MOST_COLUMNS, MOST_ROWS, FileError
from identify.exchange.types import Fields, KeyedRow, LeftOutRow
from identify.exchange.wants_page import wants_page
from identify.exchange.writing import TYPES, WANTS, name_of, write_failed, write_records
from identify.server import limits
from identify.server.bodies import Bodies
from identify.server.json_http import CROWDED, Json, crowded, sent
from identify.server.uploads import Uploads

T = TypeVar("T")
Answer = Callable[[Request], Awaitable[Response]]
Cells = Annotated[list[str], msgspec.Meta(max_length=MOST_COLUMNS + 1)]  # and what was wrong
Records = Annotated[list[Fields], msgspec.Meta(max_length=MOST_ROWS)]


class Column(msgspec.Struct):
    field: str
    name: str = ""
    order: str = ""


class KeysIn(msgspec.Struct):
    upload: str
    columns: list[Column]
    sort: str = msgspec.field(name="as", default="")


class MatchIn(KeysIn):
    """So many rows of an upload from `first` on, a key for each."""

    keys: list[str] = []
    first: Annotated[int, msgspec.Meta(ge=0)] = 0
    currency: str = ""
    packs: list[str] | None = None
    existing: Records = []


class FailedRow(msgspec.Struct):
    row: int
    cells: Cells
    wrong: Cells


class FailedIn(msgspec.Struct):
    header: Cells
    rows: list[FailedRow]
    format: Literal["csv", "xlsx"] = "csv"
    name: str = ""


class WriteIn(msgspec.Struct):
    records: Records
    format: Literal["csv", "xlsx", "json"]
    packs: list[str] | None = None


class WantsIn(msgspec.Struct):
    records: Records
    packs: list[str] | None = None
    title: str = ""
    pictures: dict[str, str] = {}


def _answering(kind: type[T], act: Callable[[T, str], Response], turns: Semaphore) -> Answer:
    """A route that works on the JSON of a request, and on whose it is, in a thread.

    turns: as many at once as there is memory for.
    """

    async def answer(request: Request) -> Response:
        async with turns:
            return await run_in_threadpool(act, await sent(request, kind), _owner(request))

    return answer


def _file(content: bytes, what: str, ending: str) -> Response:
    name = name_of(what, ending, datetime.now(UTC).date().isoformat())
    headers = {"Content-Disposition": f'attachment; filename="{name}"', "Cache-Control": "no-store"}
    return Response(content, media_type=TYPES[ending], headers=headers)


def routes(packs: Sequence[Path]) -> list[Route]:
    """The routes under /api/exchange/ for these packs (folders, or files compiled before), which
    are read when they are first needed.
    """

    def reference() -> Reference:
        return reference_of(tuple(packs))

    def compiled(ids: list[str] | None) -> dict[str, Pack]:
        some = chosen_packs(reference(), ids)
        return {ident: engine["pack"] for ident, engine in some.engines.items()}

    turns = Semaphore(limits.SPREADSHEETS_AT_ONCE)
    uploads = Uploads()

    async def read(request: Request) -> Response:
        async with turns:
            body = await request.body()
            if crowded(body):
                raise HTTPException(413, CROWDED)
            answer = await run_in_threadpool(table, request.query_params, body, _owner(request))
        get_running_loop().call_later(limits.UPLOAD_SECONDS + 1, uploads.expire)
        return answer

    def table(query: QueryParams, body: bytes, owner: str) -> Response:
        row = query.get("header", "")
        header = int(row) if row.isdecimal() and len(row) < 10 else None
        upload = query.get("upload", "")
        if upload:
            body = uploads.body(owner, upload)
        elif not body.startswith(b"PK"):
            _checked_text(body)
        table = read_file(body, reference(), query.get("name", ""), query.get("sheet", ""), header)
        return Json(table | {"upload": uploads.keep(owner, body, table["rows"], upload)})

    def keys(asked: KeysIn, owner: str) -> Response:
        rows = uploads.rows(owner, asked.upload)
        return Json(name_rows(asked.sort, msgspec.to_builtins(asked.columns), rows))

    def match(asked: MatchIn, owner: str) -> Response:
        if asked.sort not in ("piece", "want", "note", ""):
            raise FileError('Rows are read as "piece", "want" or "note".')
        if len(asked.keys) > limits.BATCH_ROWS:
            raise FileError(f"At most {limits.BATCH_ROWS} rows are matched at a time.")
        uploaded = uploads.rows(owner, asked.upload, asked.first, len(asked.keys))
        if len(uploaded) < len(asked.keys):
            raise FileError("The table has no such rows.")
        rows: list[KeyedRow] = [
            {"row": row["row"], "cells": row["cells"], "key": key}
            for row, key in zip(uploaded, asked.keys, strict=True)
        ]
        columns = msgspec.to_builtins(asked.columns)
        some = chosen_packs(reference(), asked.packs)
        importing = Importing(some, asked.sort, asked.currency, columns)
        return Json({"rows": importing.match(rows, asked.existing)})

    def failed(asked: FailedIn, _: str) -> Response:
        rows: list[LeftOutRow] = msgspec.to_builtins(asked.rows)
        return _file(write_failed(asked.header, rows, asked.format), "left-out-rows", asked.format)

    def write(asked: WriteIn, _: str) -> Response:
        for place, record in enumerate(asked.records, 1):
            if not isinstance(record.get("id"), str) or not isinstance(record.get("type"), str):
                raise FileError(f"Record {place} of these has no id or no type.")
        content = write_records(asked.records, asked.format, compiled(asked.packs))
        return _file(content, "collection", asked.format)

    def page(asked: WantsIn, _: str) -> Response:
        content = wants_page(asked.records, compiled(asked.packs), asked.title, asked.pictures)
        return _file(content.encode(), WANTS, "html")

    answers: dict[str, Answer] = {
        "read": read,
        "keys": _answering(KeysIn, keys, turns),
        "match": _answering(MatchIn, match, turns),
        "failed": _answering(FailedIn, failed, turns),
        "write": _answering(WriteIn, write, turns),
        "wants-page": _answering(WantsIn, page, turns),
    }
    short = [Middleware(Bodies, most=lambda _: limits.SPREADSHEET_BYTES)]
    return [
        Route(f"/api/exchange/{name}", answer, methods=["POST"], middleware=short)
        for name, answer in answers.items()
    ]


def _checked_text(body: bytes) -> None:
    """Refuses a text that would take much memory only to be refused. Raises FileError."""
    if max(body.count(b"\n"), body.count(b"\r")) > limits.LINES_A_ROW * MOST_ROWS:
        raise FileError(
            f"This table has more than {MOST_ROWS:,} rows. Split it into several files."
        )
    if len(body) > limits.SPREADSHEET_TEXT:
        raise FileError(
            f"This text has more than {limits.SPREADSHEET_TEXT // 1_000_000} MB. "
            "Split it into several files."
        )


def _owner(request: Request) -> str:
    """The id of the device that asks; "" on a server without pairing, which is for one person."""
    device = request.scope.get("device")
    return str(device["id"]) if device else ""
