"""Who may ask what: under the server's own name, from its own pages, with a paired device."""

import logging
import time
import traceback
from collections.abc import Callable, Collection
from datetime import datetime
from functools import partial
from urllib.parse import urlsplit

from anyio import to_thread
from starlette.datastructures import Headers
from starlette.requests import ClientDisconnect
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from identify.keeping import devices
from identify.keeping.store import Store
from identify.keeping.troubles import DamagedError, DiskError
from identify.server import limits
from identify.server.buckets import Buckets, caller_of
from identify.server.json_http import Json, refused

API = "/api/"
RANGES = "/ranges/"  # those that others may follow
PAIR = "/api/pair"
PROPOSALS = "/api/proposals"  # for followers of a range, with words of their own
OPEN = ("/api/offers", "/api/health", PAIR, PROPOSALS)  # what needs no device's token
COSTLY = ("/api/backup", "/api/pairing")
READING = ("GET", "HEAD")

log = logging.getLogger("identify.server")


class _CutError(Exception):
    """The line broke while something was being answered."""


class Notes:
    """Lines in the log about a caller: a few at a time, so that nobody fills the disk by asking."""

    def __init__(self, clock: Callable[[], float]) -> None:
        self._buckets = Buckets(limits.LOG_LINES, clock)

    def add(self, text: str, who: str) -> None:
        """Adds a line; `who` is put into `text`."""
        if self._buckets.wait(who) == 0:
            log.warning(text, who)


class LastResort:
    """ASGI middleware: whatever goes wrong is answered in a sentence, and logged.

    Logged is where it went wrong, never what was being worked on.
    """

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        started = False

        async def watched(message: Message) -> None:
            nonlocal started
            started = True
            try:
                await send(message)
            except Exception as error:
                raise _CutError from error

        try:
            await self.app(scope, receive, watched)
        except (ClientDisconnect, _CutError):
            return
        except Exception as error:
            log.error("unexpected: %s at %s", type(error).__name__, _places(error))
            if started:
                return  # an answer that is not finished ends the connection
            sentence = "The server could not do this, and has noted it in its log. Try again later."
            await refused(sentence, 503)(scope, receive, send)


def _places(error: Exception) -> str:
    frames = traceback.extract_tb(error.__traceback__)[-4:]
    return " < ".join(f"{frame.filename}:{frame.lineno}" for frame in reversed(frames))


def trouble(error: Exception) -> Json:
    """The answer where the disk or the database is at fault; logged too."""
    log.error("disk: %s", error)
    return refused(str(error), 503, {"Retry-After": "60"})


class Door:
    """ASGI middleware: only under a name of this server, and only from its own pages.

    hosts: the names, without ports. A page elsewhere whose name was made to point here has another
    name in Host (DNS rebinding); a page elsewhere that sends something here says so in
    Sec-Fetch-Site or Origin (W3C Fetch Metadata; RFC 6454).
    public: the origin under which people know the server, "" where there is no other.
    """

    def __init__(
        self,
        app: ASGIApp,
        hosts: Collection[str],
        public: str,
        clock: Callable[[], float] = time.monotonic,
    ) -> None:
        self.app = app
        self.notes = Notes(clock)
        self.hosts = {host.lower() for host in hosts}
        self.public = public.rstrip("/").lower()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        names = headers.getlist("host")
        host = names[0].lower() if len(names) == 1 else ""
        if name_of(host) not in self.hosts:
            sentence = "This server goes by another name. Open it by the address that it was given."
            await refused(sentence, 421)(scope, receive, send)
            return
        elsewhere = scope["path"].startswith(API) and not self._own(headers, host)
        if elsewhere and scope["path"] != PROPOSALS:
            self.notes.add("refused: sent from a page elsewhere, %s", caller_of(scope))
            sentence = "Only the app's own pages may ask this. Open the app from this server."
            await refused(sentence, 403)(scope, receive, send)
            return
        await self.app(scope, receive, send)

    def _own(self, headers: Headers, host: str) -> bool:
        site = headers.getlist("sec-fetch-site")
        if any(value not in ("same-origin", "none") for value in site):
            return False
        return all(
            origin.lower() == self.public or _netloc(origin) == host
            for origin in headers.getlist("origin")
        )


def name_of(host: str) -> str:
    """The name in a Host header or an origin's host, without its port; "" where it is none."""
    try:
        parts = urlsplit(f"//{host}")
        _ = parts.port  # raises where it is no number
        plain = parts.username is None and parts.path == parts.query == parts.fragment == ""
        return (parts.hostname or "").removesuffix(".") if plain else ""
    except ValueError:
        return ""


def _netloc(origin: str) -> str:
    try:
        return urlsplit(origin).netloc.lower()
    except ValueError:
        return ""


class Paired:
    """ASGI middleware: everything under /api/ but OPEN needs the token of a paired device.

    The device is then in the scope as "device". Requests are counted for each device, those without
    a good token for each address.
    """

    def __init__(
        self,
        app: ASGIApp,
        store: Store,
        now: Callable[[], datetime],
        clock: Callable[[], float],
    ) -> None:
        self.app = app
        self.store = store
        self.now = now
        self.strangers = Buckets(limits.STRANGERS, clock)
        self.pairing = Buckets(limits.PAIRING, clock)
        self.known = Buckets(limits.DEVICE, clock)
        self.costly = Buckets(limits.COSTLY, clock)
        self.notes = Notes(clock)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http" or not scope["path"].startswith((API, RANGES)):
            await self.app(scope, receive, send)
            return
        shared = scope["path"].startswith(RANGES)
        is_open = shared or scope["path"] in OPEN
        answer = self._open(scope) if is_open else await self._known(scope)
        if shared and answer is not None:
            answer.headers["Access-Control-Allow-Origin"] = "*"  # or a follower is told otherwise
        if answer is None:
            await self.app(scope, receive, send)
        else:
            await answer(scope, receive, send)

    def _open(self, scope: Scope) -> Json | None:
        caller = caller_of(scope)
        buckets = self.pairing if scope["path"] == PAIR else self.strangers
        return self._too_many(buckets.wait(caller), caller)

    async def _known(self, scope: Scope) -> Json | None:
        caller = caller_of(scope)
        headers = Headers(scope=scope).getlist("authorization")
        scheme, _, token = headers[0].partition(" ") if len(headers) == 1 else ("", "", "")
        device = None
        if scheme.lower() == "bearer" and 0 < len(token) <= limits.TOKEN:
            look = partial(devices.by_token, self.store, token, self.now())
            try:
                device = await to_thread.run_sync(look)
            except (DiskError, DamagedError) as error:
                return trouble(error)
        if device is None:
            many = self._too_many(self.strangers.wait(caller), caller)
            if many is None:
                self.notes.add("refused: no paired device, %s", caller)
                sentence = "This device is not paired with the server, or no longer. Pair it."
                return refused(sentence, 401, {"WWW-Authenticate": "Bearer"})
            return many
        if device["revoked"] != "":
            self.notes.add("refused: unpaired, %s", device["id"])
            sentence = "This device was unpaired by another one."
            return refused(sentence, 403, revoked=True)
        scope["device"] = device
        costly = scope["path"] in COSTLY and scope["method"] not in READING
        buckets = self.costly if costly else self.known
        return self._too_many(buckets.wait(device["id"]), device["id"])

    def _too_many(self, wait: float, who: str) -> Json | None:
        if wait == 0:
            return None
        self.notes.add("refused: too many requests, %s", who)
        sentence = "Too many requests. Wait a little, then try again."
        return refused(sentence, 429, {"Retry-After": str(int(wait) + 1)})
