"""What puts damage past the app into a phone's storage, or into the answers of its server."""

import json
from typing import Any

from playwright.sync_api import Page, expect
from starlette.types import ASGIApp, Receive, Scope, Send

from tests.browser.phone_storage import place
from tests.whole_answers import send_whole, whole_answer

PUT = """
async (text) => {
  const rows = JSON.parse(text);
  const database = await new Promise((resolve) => {
    const request = indexedDB.open("identify");
    request.onsuccess = () => resolve(request.result);
  });
  const change = database.transaction(["records", "journal", "kept"], "readwrite");
  let stored = 0;
  for (const [store, row, key] of rows) {
    try {
      change.objectStore(store).put(row, key);
      stored += 1;
    } catch (error) {
      if (error.name !== "DataError") throw error; // it has no key: the browser keeps no such row
    }
  }
  await new Promise((resolve) => { change.oncomplete = resolve; });
  database.close();
  return stored;
}"""


def starts(page: Page) -> None:
    """The start screen after a reload."""
    place(page, "Identify")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?", timeout=60_000)


class HandsOut:
    """ASGI middleware: a server that hands out, once, whatever was put into `waiting`."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app
        self.waiting: list[Any] = []

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        if scope.get("path", "") != "/api/pull" or not self.waiting:
            await self.app(scope, receive, send)
            return
        start, body = await whole_answer(self.app, scope, receive)
        answer = json.loads(body)
        if start["status"] == 200:
            answer["ops"] += self.waiting
            self.waiting = []
        await send_whole(send, start, json.dumps(answer).encode())
