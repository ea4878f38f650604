"""Files of records over HTTP: records in, a spreadsheet or a page out.

identify/exchange/README.md says what each route takes and gives.
"""

from asyncio import Semaphore
from collections.abc import Awaitable, Callable, Sequence
from datetime import UTC, datetime
from pathlib import Path
from typing import Annotated, Literal, TypeVar

import msgspec
from starlette.concurrency import run_in_threadpool
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.core.importing.text_table import MOST_COLUMNS, MOST_ROWS
from identify.core.types.importing import Fields, Reference
from identify.core.types.pack import Pack
from identify.exchange.import_steps import reference_of
from identify.exchange.table import FileError
from identify.exchange.wants_page import wants_page
from identify.exchange.writing import TYPES, WANTS, name_of, write_records
from identify.server import limits
from identify.server.bodies import Bodies
from identify.server.json_http import sent

T = TypeVar("T")
Answer = Callable[[Request], Awaitable[Response]]
Cells = Annotated[list[str], msgspec.Meta(max_length=MOST_COLUMNS + 1)]  # and what was wrong
Records = Annotated[list[Fields], msgspec.Meta(max_length=MOST_ROWS)]


class WriteIn(msgspec.Struct):
    records: Records
    format: Literal["csv", "xlsx", "json"]
    packs: list[str] | None = None


class WantsIn(msgspec.Struct):
    records: Records
    packs: list[str] | None = None
    title: str = ""
    pictures: dict[str, str] = {}


def _answering(kind: type[T], act: Callable[[T], Response], turns: Semaphore) -> Answer:
    """A route that works on the JSON of a request in a thread.

    turns: as many at once as there is memory for.
    """

    async def answer(request: Request) -> Response:
        async with turns:
            return await run_in_threadpool(act, await sent(request, kind))

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
        found = [engine["pack"] for engine in reference()["engines"]]
        return {pack["id"]: pack for pack in found if ids is None or pack["id"] in ids}

    turns = Semaphore(limits.SPREADSHEETS_AT_ONCE)

    def write(asked: WriteIn) -> Response:
        for place, record in enumerate(asked.records, 1):
            if not isinstance(record.get("id"), str) or not isinstance(record.get("type"), str):
                raise FileError(f"Record {place} of these has no id or no type.")
        content = write_records(asked.records, asked.format, compiled(asked.packs))
        return _file(content, "collection", asked.format)

    def page(asked: WantsIn) -> Response:
        content = wants_page(asked.records, compiled(asked.packs), asked.title, asked.pictures)
        return _file(content.encode(), WANTS, "html")

    answers: dict[str, Answer] = {
        "write": _answering(WriteIn, write, turns),
        "wants-page": _answering(WantsIn, page, turns),
    }
    short = [Middleware(Bodies, most=lambda _: limits.SPREADSHEET_BYTES)]
    return [
        Route(f"/api/exchange/{name}", answer, methods=["POST"], middleware=short)
        for name, answer in answers.items()
    ]
