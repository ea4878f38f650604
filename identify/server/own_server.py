"""The collector's own server: the app, sync, devices and backups, put together."""

import time
from collections.abc import Callable, Collection, Mapping, Sequence
from datetime import UTC, datetime
from pathlib import Path
from urllib.parse import urlsplit

from starlette.applications import Starlette
from starlette.middleware import Middleware
from starlette.requests import Request
from starlette.responses import Response
from starlette.routing import BaseRoute, Match, Route
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from identify.keeping.away import Away
from identify.keeping.proposals import Box
from identify.keeping.store import Store
from identify.server import devices, health, photo_upload, proposals, shared_ranges, sync
from identify.server.access import API, Door, LastResort, Paired
from identify.server.app import ANOTHER_WAY, NOTHING, create_app
from identify.server.bodies import Bodies
from identify.server.chores import chores, lifespan
from identify.server.context import Context
from identify.server.json_http import refused
from identify.server.limits import most_bytes
from identify.server.tls import Tls

METHODS = ["GET", "HEAD", "POST", "PUT", "PATCH", "DELETE", "OPTIONS", "TRACE"]
AUTHORITY = "/certificate.crt"
NOWHERE = Away()


def utc_now() -> datetime:
    """What time it is."""
    return datetime.now(UTC)


def own_app(
    files: Mapping[str, bytes],
    store: Store,
    *,
    backup_folder: Path,
    public: str,
    hosts: Collection[str],
    routes: Sequence[BaseRoute] = (),
    authority: bytes = b"",
    tls: Tls | None = None,
    away: Away = NOWHERE,
    box: Box | None = None,
    now: Callable[[], datetime] = utc_now,
    clock: Callable[[], float] = time.monotonic,
) -> Starlette:
    """The app that serves these files and keeps the collection in `store`.

    public: the origin under which people know the server, with a slash. hosts: the names that it
    goes by. routes: what else is answered under /api/, for paired devices only. authority: the
    certificate (DER) of the private authority, b"" for none. tls: what shows the server's
    certificate, None without https. away: what happens to each nightly backup besides. box: for
    proposals, None for none. now, clock: the time, and seconds that never go back. What chores.py
    lists is done while it runs.
    """
    context = Context(store, backup_folder, public, now)
    name = urlsplit(public).netloc
    ours: list[BaseRoute] = [
        devices.offers(sync=True, name=name, proposals="" if box is None else public),
        *devices.routes(context),
        *sync.routes(context),
        *photo_upload.routes(context),
        *health.routes(context, tls),
        *shared_ranges.routes(store),
        *routes,
    ]
    if box is not None:
        ours += proposals.routes(box, now, clock)
    if authority:
        ours.append(_authority(authority))
    app = create_app(
        files,
        [*ours, _nothing_else(ours)],
        middleware=[
            Middleware(Fresh, public=public),
            Middleware(LastResort),
            Middleware(Door, hosts=hosts, public=public, clock=clock),
            Middleware(Paired, store=store, now=now, clock=clock),
            Middleware(Bodies, most=most_bytes),
        ],
        lifespan=lifespan(chores(context, tls, away)),
    )
    app.router.redirect_slashes = False  # an address is right or is none
    return app


class Fresh:
    """ASGI middleware: nothing of the collection is kept in a cache of the browser or on the way.

    Where all of a host is this server's (https, no port of its own), browsers are asked to come
    by https only (RFC 6797). Elsewhere that would shut people out of what else the host serves.
    """

    def __init__(self, app: ASGIApp, public: str) -> None:
        self.app = app
        parts = urlsplit(public)
        self.strict = parts.scheme == "https" and parts.port in (None, 443)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        more = []
        if scope["path"].startswith(API):
            more.append((b"cache-control", b"no-store"))
        if self.strict:
            more.append((b"strict-transport-security", b"max-age=31536000"))

        async def marked(message: Message) -> None:
            if message["type"] == "http.response.start":
                names = {name for name, _ in more}
                kept = [pair for pair in message["headers"] if pair[0].lower() not in names]
                message["headers"] = [*kept, *more]
            await send(message)

        await self.app(scope, receive, marked)


def _nothing_else(routes: Sequence[BaseRoute]) -> Route:
    """Answers what no route does: another way of asking, or nothing of that name."""

    async def nothing(request: Request) -> Response:
        if any(route.matches(request.scope)[0] == Match.PARTIAL for route in routes):
            return refused(ANOTHER_WAY, 405)
        return refused(NOTHING, 404)

    return Route("/api/{path:path}", nothing, methods=METHODS)


def _authority(certificate: bytes) -> Route:
    async def answer(_: Request) -> Response:
        return Response(certificate, media_type="application/x-x509-ca-cert")

    return Route(AUTHORITY, answer)
