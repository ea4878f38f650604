"""Operations and photos over HTTP; README.md beside this says what each route takes and gives."""

from typing import Annotated, Any

import msgspec
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import Route

from identify.keeping import ops, photos
from identify.server.answers import Json, asked, asked_number, refused, sent
from identify.server.work import Work

JPEG = "image/jpeg"
PUSHED = 500
PULLED = 500

# What a body may weigh, by path; SMALL where none is named.
MOST = {"/api/push": 2_000_000, "/api/photos/missing": 64 * 1024}


class PushIn(msgspec.Struct):
    """At most PUSHED operations; each is looked at by itself."""

    ops: Annotated[list[Any], msgspec.Meta(max_length=PUSHED)]


class MissingIn(msgspec.Struct):
    """SHA-256 of photos, in hexadecimal figures."""

    shas: Annotated[list[str], msgspec.Meta(max_length=500)]


def routes(work: Work) -> list[Route]:
    """pull, push and photos."""

    async def pull(request: Request) -> Response:
        epoch, last = asked(request, "epoch"), asked(request, "last")
        after = asked_number(request, "after", 0)
        limit = asked_number(request, "limit", PULLED)
        return Json(await work.do(ops.pull, work.store, epoch, after, last, limit))

    async def push(request: Request) -> Response:
        told = await sent(request, PushIn)
        return Json(await work.do(ops.push, work.store, told.ops))

    async def missing(request: Request) -> Response:
        told = await sent(request, MissingIn)
        return Json({"missing": await work.do(photos.missing, work.store, list(told.shas))})

    async def put(request: Request) -> Response:
        told = request.headers.get("content-type", "").partition(";")[0].strip().lower()
        if told != JPEG:
            raise HTTPException(415, f"A photo is sent as a JPEG: Content-Type: {JPEG}.")
        sha = request.path_params["sha"]
        start, size = asked_number(request, "from", 0), asked_number(request, "size", 0)
        data = await request.body()
        now = work.now()
        found = await work.do(
            photos.receive, work.store, sha, data, start=start, size=size, now=now
        )
        if not found["whole"] and found["have"] != start + len(data):
            sentence = f"Go on from byte {found['have']}: that is how much of it came."
            return refused(sentence, 409, **found)
        return Json(found)

    async def get(request: Request) -> Response:
        sha = request.path_params["sha"]
        data = await work.do(photos.read, work.store, sha)
        if data is None:
            return refused("This photo has not come to the server yet.", 404)
        # as a file to keep: it is never shown as a page of this server
        headers = {"Content-Disposition": f'attachment; filename="{sha}.jpg"'}
        return Response(data, media_type=JPEG, headers=headers)

    return [
        Route("/api/pull", pull),
        Route("/api/push", push, methods=["POST"]),
        Route("/api/photos/missing", missing, methods=["POST"]),
        Route("/api/photos/{sha}", put, methods=["PUT"]),
        Route("/api/photos/{sha}", get),
    ]
