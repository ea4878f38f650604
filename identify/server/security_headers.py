"""The headers of every answer: the content security policy, and what else a browser is told.

The same policy stands in web/index.html for an app that another server hands out, and for a page
of wants in core/exporting/wants_page.py. Strict-Transport-Security is added by own_server.py, where
the whole host is ours.
"""

from starlette.datastructures import MutableHeaders
from starlette.types import ASGIApp, Message, Receive, Scope, Send

# Only our own files, nothing inline; a pack's drawings cannot bring a script in.
HEADERS = {
    "Content-Security-Policy": (
        "default-src 'self'; img-src 'self' data: blob:; object-src 'none'; base-uri 'none'; "
        "form-action 'none'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


# The one script that fetches ranges from other hosts, a thread of its own, may speak to them and do
# nothing else; the pages may not (README.md, "Security").
FETCHING = "/fetch-range.js"
POLICY_OF_FETCHING = "default-src 'none'; connect-src 'self' https:"


class SafeHeaders:
    """ASGI middleware that puts HEADERS on every answer."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        async def send_with_headers(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update(HEADERS)
                if scope.get("path") == FETCHING:
                    headers["Content-Security-Policy"] = POLICY_OF_FETCHING
            await send(message)

        await self.app(scope, receive, send_with_headers)
