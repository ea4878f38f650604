"""python -m tests.following: what a shared range costs its host, for 10,000 followers.

A real browser follows a published range: the first visit, another day without news, and an update
in which a row of the range has changed. Counted are requests, and the bytes of bodies and headers.
"""

import re
import tempfile
import time
from pathlib import Path
from typing import NamedTuple

from playwright.sync_api import Page, sync_playwright
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from identify import phone
from identify.server.app import create_app
from tests.browser.phone import kept_phone
from tests.threaded_server import Running, free_port

FOLLOWERS = 10_000
QUIET = 6.0  # seconds without a request: all has come


class Asked(NamedTuple):
    """What was asked for in a visit: {requests, unchanged (304), bytes}."""

    requests: int
    unchanged: int
    bytes: int


class Counted:
    """ASGI middleware that counts."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app
        self.begin()

    def begin(self) -> None:
        self.requests = self.unchanged = self.bytes = 0
        self.last = time.monotonic()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        async def counted(message: Message) -> None:
            if message["type"] == "http.response.start":
                self.requests += 1
                self.unchanged += message["status"] == 304
                self.bytes += sum(len(n) + len(v) + 4 for n, v in message["headers"]) + 19
            self.bytes += len(message.get("body", b""))
            self.last = time.monotonic()
            await send(message)

        await self.app(scope, receive, counted)

    def settled(self, page: Page) -> Asked:
        """What was asked for, once nothing more is."""
        self.last = time.monotonic()
        while time.monotonic() - self.last < QUIET:
            page.wait_for_timeout(200)
        return Asked(self.requests, self.unchanged, self.bytes)


def measure() -> dict[str, Asked]:
    """The figures of three visits."""
    files = phone.site(phone.demo_packs())
    changed = phone.site(phone.demo_packs())
    pack = "packs/pellmarsh.json"
    changed[pack] = changed[pack].replace(b"Pellmarsh", b"Pellmarsch", 1)
    changed["sw.js"] = re.sub(rb'"[0-9a-f]{16}"', b'"0123456789abcdef"', changed["sw.js"], count=1)
    found = {}
    port = free_port()
    url = f"http://127.0.0.1:{port}/"
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        host = Counted(create_app(files))
        running = Running(host, port, lifespan="off")
        for name in ("the first visit", "another day, nothing new"):
            host.begin()
            with kept_phone(playwright, Path(folder)) as context:
                page = context.new_page()
                page.goto(url)
                found[name] = host.settled(page)
        running.stop(at_once=True)
        host = Counted(create_app(changed))
        running = Running(host, port, lifespan="off")
        host.begin()
        with kept_phone(playwright, Path(folder)) as context:
            page = context.new_page()
            page.goto(url)
            found["an update: one range changed"] = host.settled(page)
        running.stop(at_once=True)
    return found


if __name__ == "__main__":
    print(f"| | requests | unchanged | KB | GB for {FOLLOWERS:,} followers |")
    print("| --- | --- | --- | --- | --- |")
    for name, one in measure().items():
        kilobytes, total = one.bytes / 1000, one.bytes * FOLLOWERS / 1e9
        print(f"| {name} | {one.requests} | {one.unchanged} | {kilobytes:.1f} | {total:.3f} |")
