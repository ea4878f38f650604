"""The Starlette application: serves the files that identify.phone gathers."""

import hashlib
from collections.abc import Mapping, Sequence
from typing import Any

import orjson
from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.middleware import Middleware
from starlette.middleware.gzip import GZipMiddleware
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import BaseRoute, Route

from identify.compressed import QUICK, coding_for, packed, packs_well
from identify.errors import UserError
from identify.keeping.devices import UnknownDeviceError
from identify.keeping.troubles import DamagedError, DiskError
from identify.phone import INDEX, WRITTEN_DOWN
from identify.server.access import trouble
from identify.server.json_http import refused
from identify.server.security_headers import SafeHeaders

TYPES = {
    "html": "text/html; charset=utf-8",
    "js": "text/javascript; charset=utf-8",
    "css": "text/css; charset=utf-8",
    "json": "application/json",
    "webmanifest": "application/manifest+json",
    "svg": "image/svg+xml",
    "png": "image/png",
    "woff2": "font/woff2",
}

NOTHING = "There is nothing of that name here."
ANOTHER_WAY = "This address exists, but is asked for in another way (GET, POST, PUT)."


def create_app(
    files: Mapping[str, bytes],
    routes: Sequence[BaseRoute] = (),
    middleware: Sequence[Middleware] = (),
    **more: Any,
) -> Starlette:
    """The app that serves these files (path -> bytes); "index.html" is also the start page.

    routes: what else is answered, under /api/. middleware: what every request goes through first,
    the outermost first. more: further options of Starlette.

    A browser asks again each time and gets "304 Not Modified" for what it has: an update shows at
    once, and offline the service worker answers.
    """
    followed = ranges_in(files)
    marks = {
        name: f'"{hashlib.sha256(content).hexdigest()[:32]}"' for name, content in files.items()
    }

    small: dict[tuple[str, str], bytes] = {}  # made when first asked for, and kept

    async def serve(request: Request) -> Response:
        name = request.path_params["path"] or "index.html"
        if name not in files:
            # who follows a range from elsewhere is to be told that it is not there
            headers = {"Access-Control-Allow-Origin": "*"} if name.startswith("packs/") else {}
            return PlainTextResponse(f"There is no page /{name} here. Start at /.", 404, headers)
        headers = {"ETag": marks[name], "Cache-Control": "no-cache"}
        if name in followed:
            headers["Access-Control-Allow-Origin"] = "*"
        asked = request.headers.get("if-none-match", "")
        if marks[name] in [mark.strip().removeprefix("W/") for mark in asked.split(",")]:
            return Response(status_code=304, headers=headers)
        kind = TYPES[name.rsplit(".", 1)[-1]]
        content = files[name]
        coding = coding_for(request.headers.get("accept-encoding", ""))
        if coding != "" and packs_well(name, content):
            if (name, coding) not in small:
                small[name, coding] = packed(content, coding, QUICK)
            content = small[name, coding]
            headers |= {"Content-Encoding": coding, "Vary": "Accept-Encoding"}
        return Response(content, media_type=kind, headers=headers)

    return Starlette(
        routes=[*routes, Route("/{path:path}", serve)],
        middleware=[
            Middleware(SafeHeaders),
            Middleware(GZipMiddleware, minimum_size=500),
            *middleware,
        ],
        exception_handlers={HTTPException: _http_error, UserError: _user_error},
        **more,
    )


def ranges_in(files: Mapping[str, bytes]) -> set[str]:
    """Of these files the ranges and the list of them: what apps from elsewhere may read."""
    listed = orjson.loads(files.get(INDEX, b"[]"))
    rows = {name for name in files if name.endswith(WRITTEN_DOWN)}
    return {INDEX, *(entry["url"] for entry in listed), *rows}


async def _http_error(_: Request, error: Exception) -> Response:
    assert isinstance(error, HTTPException)
    # Starlette's own words are no sentences
    sentence = {405: ANOTHER_WAY, 404: NOTHING}.get(error.status_code, error.detail)
    return refused(sentence, error.status_code, error.headers)


async def _user_error(_: Request, error: Exception) -> Response:
    if isinstance(error, DiskError | DamagedError):
        return trouble(error)
    if isinstance(error, UnknownDeviceError):
        return refused(str(error), 404)
    return refused(str(error), 400)
