"""How long a body may be, and how long it may take to come."""

import asyncio
import contextlib
from collections.abc import Callable

from starlette.datastructures import Headers
from starlette.exceptions import HTTPException
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from identify.server import limits
from identify.server.json_http import refused


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
        headers = Headers(scope=scope)
        if "content-length" in headers and "transfer-encoding" in headers:  # RFC 9112, 6.3
            sentence = "A request says its length, or comes in chunks; this one does both."
            await refused(sentence, 400, {"Connection": "close"})(scope, receive, send)
            return
        most = self.most(scope["path"])
        header = headers.get("content-length", "0")
        whole_number = header.isascii() and header.isdecimal() and len(header) < 18
        length = int(header) if whole_number else None
        if length is None or length > most:
            if length is not None and length - most <= limits.LET_BY:
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
                async with asyncio.timeout(limits.SILENT):
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
        async with asyncio.timeout(limits.SILENT):
            while (await receive()).get("more_body", False):
                pass


def _too_long(most: int) -> str:
    amount = f"{most // 1_000_000} MB" if most >= 1_000_000 else f"{most // 1024} KB"
    return f"More than {amount} are not taken at once here. Send less at a time."
