"""Photos over HTTP: up in chunks, as JPEG, and down whole; README.md beside this says the rest.

What a photo must be (a bare JPEG, without EXIF) is checked once it is whole: keeping/photos.py.
"""

from typing import Annotated

import msgspec
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping import photos
from identify.keeping.standing import PHOTOS_STOP, room
from identify.server.context import Context
from identify.server.json_http import Json, asked_number, content_type, refused, sent
from identify.server.limits import SHAS

JPEG = "image/jpeg"
NO_ROOM = (
    "The server's disk is nearly full, so photos wait on this device until there is space there. "
    "Everything else is still saved."
)


class MissingIn(msgspec.Struct):
    """SHA-256 of photos, in hexadecimal figures."""

    shas: Annotated[list[str], msgspec.Meta(max_length=SHAS)]


def routes(context: Context) -> list[Route]:
    """Which photos are missing, a chunk of one, and a whole one."""

    async def missing(request: Request) -> Response:
        body = await sent(request, MissingIn)
        lacking = await context.in_thread(photos.missing, context.store, list(body.shas))
        return Json({"missing": lacking})

    async def put(request: Request) -> Response:
        if content_type(request) != JPEG:
            raise HTTPException(415, f"A photo is sent as a JPEG: Content-Type: {JPEG}.")
        sha = request.path_params["sha"]
        start, size = asked_number(request, "from", 0), asked_number(request, "size", 0)
        data = await request.body()
        if await context.in_thread(room, context.store) < PHOTOS_STOP:
            return refused(NO_ROOM, 507)
        now = context.now()
        state = await context.in_thread(
            photos.receive, context.store, sha, data, start=start, size=size, now=now
        )
        if not state["whole"] and state["have"] != start + len(data):
            sentence = f"Go on from byte {state['have']}: that is how much of it came."
            return refused(sentence, 409, **state)
        return Json(state)

    async def get(request: Request) -> Response:
        sha = request.path_params["sha"]
        data = await context.in_thread(photos.read, context.store, sha)
        if data is None:
            return refused("This photo has not come to the server yet.", 404)
        # as a file to keep: it is never shown as a page of this server
        headers = {"Content-Disposition": f'attachment; filename="{sha}.jpg"'}
        return Response(data, media_type=JPEG, headers=headers)

    return [
        Route("/api/photos/missing", missing, methods=["POST"]),
        Route("/api/photos/{sha}", put, methods=["PUT"]),
        Route("/api/photos/{sha}", get),
    ]
