"""How much is taken from one caller: requests in a time, bytes in a body, seconds for it."""

import asyncio
import contextlib
import ipaddress
import time
from collections.abc import Callable

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from identify.server.answers import refused

PATIENCE = 30  # seconds without a byte of the body
LET_BY = 8_000_000  # bytes too many that are let go by, so that who sends them hears why
MOST_CALLERS = 10_000


class Buckets:
    """A token bucket for each caller: `size` requests at once, then `each_second` more.

    In memory only, so that a restart forgets. clock: seconds that never go back.
    """

    def __init__(
        self, size: int, each_second: float, clock: Callable[[], float] = time.monotonic
    ) -> None:
        self.size = size
        self.each_second = each_second
        self.clock = clock
        self._left: dict[str, tuple[float, float]] = {}

    def wait(self, caller: str) -> float:
        """Takes one request of this caller's; seconds until it may come again, 0 if it may now."""
        now = self.clock()
        left = self._now(*self._left.pop(caller, (float(self.size), now)), now)
        if left < 1:
            self._left[caller] = (left, now)
            return (1 - left) / self.each_second
        if len(self._left) >= MOST_CALLERS:
            self._forget(now)
        self._left[caller] = (left - 1, now)
        return 0

    def _now(self, left: float, then: float, now: float) -> float:
        return min(self.size, left + (now - then) * self.each_second)

    def _forget(self, now: float) -> None:
        """Lets go of those who are as good as new, and of the one longest unheard of."""
        full = [one for one, held in self._left.items() if self._now(*held, now) >= self.size]
        for caller in full or [next(iter(self._left))]:
            del self._left[caller]


def caller_of(scope: Scope) -> str:
    """Who asks: an IPv4 address, or the first half of an IPv6 one (the rest is anyone's choice)."""
    client = scope.get("client")
    try:
        address = ipaddress.ip_address(client[0].partition("%")[0]) if client else None
    except ValueError:
        return "unknown"
    if isinstance(address, ipaddress.IPv6Address):
        if address.ipv4_mapped is not None:
            return str(address.ipv4_mapped)
        return str(ipaddress.ip_network((address, 64), strict=False))
    return str(address or "unknown")


class Bodies:
    """ASGI middleware: a body is at most as long as `most` says for its path, and keeps coming.

    What says beforehand that it is longer is not kept, nor read where it is much longer; the rest
    is counted as it comes.
    """

    def __init__(self, app: ASGIApp, most: Callable[[str], int]) -> None:
        self.app = app
        self.most = most

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        most = self.most(scope["path"])
        told = Headers(scope=scope).get("content-length", "0")
        length = int(told) if told.isascii() and told.isdecimal() and len(told) < 18 else None
        if length is None or length > most:
            if length is not None and length - most <= LET_BY:
                await _let_by(receive)
                await refused(_too_long(most), 413)(scope, receive, send)
            else:
                close = {"Connection": "close"}
                await refused(_too_long(most), 413, close)(scope, receive, send)
            return
        seen = 0
        whole = False

        async def counted() -> Message:
            nonlocal seen, whole
            if whole:
                return await receive()
            try:
                async with asyncio.timeout(PATIENCE):
                    message = await receive()
            except TimeoutError:
                sentence = "The rest of the request did not come. Send it again."
                raise HTTPException(408, sentence, {"Connection": "close"}) from None
            seen += len(message.get("body", b""))
            whole = not message.get("more_body", False)
            if seen > most:
                raise HTTPException(413, _too_long(most), {"Connection": "close"})
            return message

        await self.app(scope, counted, send)


async def _let_by(receive: Receive) -> None:
    with contextlib.suppress(TimeoutError):
        async with asyncio.timeout(PATIENCE):
            while (await receive()).get("more_body", False):
                pass


def _too_long(most: int) -> str:
    amount = f"{most // 1_000_000} MB" if most >= 1_000_000 else f"{most // 1024} KB"
    return f"More than {amount} are not taken at once here. Send less at a time."
