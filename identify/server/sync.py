"""Operations over HTTP: pull and push; README.md beside this says what they take and give."""

from typing import Annotated, Any

import msgspec
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping import ops
from identify.server.context import Context
from identify.server.json_http import Json, asked, asked_number, sent
from identify.server.limits import PULLED, PUSHED


class PushIn(msgspec.Struct):
    """At most PUSHED operations; each is looked at by itself."""

    ops: Annotated[list[Any], msgspec.Meta(max_length=PUSHED)]


def routes(context: Context) -> list[Route]:
    """pull and push."""

    async def pull(request: Request) -> Response:
        epoch, last = asked(request, "epoch"), asked(request, "last")
        after = asked_number(request, "after", 0)
        limit = asked_number(request, "limit", PULLED)
        return Json(await context.in_thread(ops.pull, context.store, epoch, after, last, limit))

    async def push(request: Request) -> Response:
        body = await sent(request, PushIn)
        return Json(await context.in_thread(ops.push, context.store, body.ops))

    return [
        Route("/api/pull", pull),
        Route("/api/push", push, methods=["POST"]),
    ]
