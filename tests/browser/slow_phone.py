"""`pytest --slow-phone`: what a test must wait for comes late, to find what does not wait.

Late by 50 to 400 ms, drawn anew each time and in the order that it would have come in: the end of
each writing and the opening of the phone's storage, what a worker is told, what is fetched, and
what the server and the app's service worker answer. The processor is slow as well.
"""

import random
from typing import Any

import anyio
from playwright.sync_api import Browser, BrowserContext, BrowserType, Page, expect
from starlette.types import ASGIApp, Receive, Scope, Send

from tests.whole_answers import send_whole, whole_answer

LATE = (0.05, 0.4)  # seconds
TIMES_SLOWER = 2  # the processor
PATIENCE = 90_000  # milliseconds that something may take, where all is so slow

DRAWN = """
  const wait = setTimeout; // a test may put a clock of its own in its place
  const late = () => new Promise((go) => wait(go, 50 + 350 * Math.random()));"""
IN_THE_PAGE = (
    "{"
    + DRAWN
    + """
  const inTurn = () => { // what comes after the other stays after it
    let last = Promise.resolve();
    return (act) => { const own = late(); last = last.then(() => own).then(act); };
  };
  const hears = (kind, name, when) => {
    const plain = Object.getOwnPropertyDescriptor(kind.prototype, name);
    Object.defineProperty(kind.prototype, name, { ...plain, set(act) {
      plain.set.call(this, act && when(this) ? (event) => late().then(() => act.call(this, event))
        : act);
    } });
  };
  hears(IDBTransaction, "oncomplete", () => true);
  hears(IDBRequest, "onsuccess", (asked) => asked instanceof IDBOpenDBRequest);
  const told = Worker.prototype.postMessage;
  const turns = new WeakMap();
  Worker.prototype.postMessage = function (message, given) {
    const transfer = Array.isArray(given) ? given : given?.transfer ?? [];
    const own = structuredClone({ message, transfer }, { transfer });
    if (!turns.has(this)) turns.set(this, inTurn());
    turns.get(this)(() => told.call(this, own.message, own.transfer));
  };
  const fetched = window.fetch;
  window.fetch = async (...asked) => { const answer = await fetched(...asked); await late();
    return answer; };
}"""
)
IN_THE_SERVICE_WORKER = (
    "{"
    + DRAWN
    + """
  const answered = FetchEvent.prototype.respondWith;
  FetchEvent.prototype.respondWith = function (answer) {
    answered.call(this, late().then(() => answer));
  };
}
"""
)

_asked = False


def slow_down() -> None:
    """From here on every context of a Chromium is a slow phone, every server a slow one."""
    global _asked  # noqa: PLW0603
    _asked = True
    expect.set_options(timeout=PATIENCE)
    Browser.new_context = _told(Browser.new_context)  # type: ignore[method-assign]
    BrowserType.launch_persistent_context = _told(  # type: ignore[method-assign]
        BrowserType.launch_persistent_context
    )
    BrowserContext.new_page = _slowed(BrowserContext.new_page)  # type: ignore[method-assign]
    Browser.new_page = _slowed(_told(Browser.new_page))  # type: ignore[method-assign]


def served_late(app: ASGIApp) -> ASGIApp:
    """The app as a slow server has it, where a slow phone is asked for; else as it is."""
    return _Late(app) if _asked else app


def _told(opens: Any) -> Any:
    """Every page of what is opened is late, from its next address on."""

    def opened(*given: Any, **more: Any) -> Any:
        there = opens(*given, **more)
        context = there.context if isinstance(there, Page) else there
        context.add_init_script(IN_THE_PAGE)
        context.set_default_timeout(PATIENCE)
        return there

    return opened


def _slowed(opens: Any) -> Any:
    """A page that is opened has a slow processor."""

    def opened(*given: Any, **more: Any) -> Page:
        page: Page = opens(*given, **more)
        session = page.context.new_cdp_session(page)
        session.send("Emulation.setCPUThrottlingRate", {"rate": TIMES_SLOWER})
        return page

    return opened


class _Late:
    """ASGI middleware: answers come late, and the service worker is told to be late as well."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        await anyio.sleep(random.uniform(*LATE))
        if not scope["path"].endswith("/sw.js") or scope["method"] != "GET":
            await self.app(scope, receive, send)
            return
        start, body = await whole_answer(self.app, scope, receive)
        if start["status"] == 200:
            body = IN_THE_SERVICE_WORKER.encode() + body
        await send_whole(send, start, body)
