"""The collector's own server, in a thread or as a process, and phones that are paired with it."""

import re
import signal
import subprocess
import sys
import time
import urllib.request
from collections.abc import Mapping
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.error import URLError

from playwright.sync_api import BrowserContext, Page, expect
from starlette.types import ASGIApp

from identify import keeping
from identify.keeping import devices
from identify.server.devices import LOOPBACK
from identify.server.own_server import own_app
from identify.server.pairing import link
from identify.shipped import ROOT
from tests.browser.phone import watched
from tests.browser.phone_storage import kept, more, place
from tests.keeping.store_contents import records
from tests.server.serving import SERVE
from tests.threaded_server import Running, free_port

RUN = [sys.executable, "-m", "identify"]
ROUND = 30_000  # milliseconds that a round of syncing may take here


class OwnServer:
    """What `serve` serves over HTTP on loopback, with real SQLite in a folder, in a thread."""

    def __init__(self, folder: Path, files: Mapping[str, bytes]) -> None:
        self.folder = folder
        self.files = files
        self.port = free_port()
        self.url = f"http://127.0.0.1:{self.port}/"

    def start(self) -> None:
        self.store = keeping.open(self.folder)
        # a browser keeps its connections open
        self.running = Running(self.app(), self.port, lifespan="on", timeout_graceful_shutdown=1)

    def app(self) -> ASGIApp:
        """What is served of the open store."""
        return own_app(
            self.files,
            self.store,
            backup_folder=self.folder.with_name("backups"),
            public=self.url,
            hosts=LOOPBACK,
        )

    def end(self) -> None:
        self.running.stop()
        self.store.close()

    def link(self) -> str:
        """A pairing link."""
        with keeping.open(self.folder) as store:
            return link(self.url, devices.new_pairing(store, datetime.now(UTC))["secret"])

    def records(self) -> dict[str, dict[str, Any]]:
        """What the server's operations come to, by record."""
        with keeping.open(self.folder) as store:
            return {one["id"]: one for one in records(store)}


class OwnProcess(OwnServer):
    """The same as the command is run by a person: a process, which can be killed."""

    def __init__(self, folder: Path, program: Path = ROOT) -> None:
        super().__init__(folder, {})
        self.program = program  # the folder that the command is run from
        self.process: subprocess.Popen[bytes] | None = None

    def start(self, *options: str) -> None:
        run = SERVE if self.program == ROOT else [*RUN, "serve"]
        command = [*run, "--data", str(self.folder), "--port", str(self.port), *options]
        self.process = subprocess.Popen(
            command, stdout=subprocess.DEVNULL, stderr=subprocess.STDOUT, cwd=self.program
        )
        for _ in range(1200):
            try:
                urllib.request.urlopen(self.url + "api/offers").close()
                return
            except URLError:
                assert self.process.poll() is None, "the server did not start"
                time.sleep(0.1)
        raise AssertionError("the server did not answer")

    def end(self) -> None:
        self.kill(signal.SIGTERM)

    def kill(self, how: signal.Signals = signal.SIGKILL) -> None:
        if self.process is not None:
            self.process.send_signal(how)
            self.process.wait()
        self.process = None

    def run(self, *command: str) -> str:
        """A command of the server's, on its data; what it prints."""
        return subprocess.run(
            [*RUN, *command, "--data", str(self.folder)],
            check=True,
            capture_output=True,
            text=True,
            cwd=self.program,
        ).stdout

    def link(self) -> str:
        """A pairing link, as `pair` prints it."""
        found = re.search(r"https?://\S+/(#pair=[\w-]+)", self.run("pair"))
        assert found
        return self.url + found[1]


def phone(context: BrowserContext) -> Page:
    """A page that tells what is on its console, but for answers and connections that failed."""
    page = watched(context.new_page())
    page.reported = _WithoutNetwork()
    return page


class _WithoutNetwork(list[str]):
    """The browser itself writes a line for each request that fails; the app tells otherwise."""

    def append(self, text: str) -> None:
        if not text.startswith("Failed to load resource"):
            super().append(text)


def pair(page: Page, server: OwnServer, name: str, link: str = "") -> None:
    """Open a pairing link, and pair."""
    page.goto("about:blank")
    page.goto(link or server.link())
    expect(page.get_by_role("heading", name="Pair this device")).to_be_visible()
    assert "pair=" not in page.url
    page.get_by_label("What to call this device").fill(name)
    page.get_by_role("button", name="Pair", exact=True).click()
    expect(page.get_by_role("alert").filter(has_text="This device is paired")).to_be_visible()
    settled(page)


def settled(page: Page) -> None:
    """Wait on the screen of devices until nothing is being done."""
    box = page.get_by_role("group", name="Sync")
    expect(box).to_have_attribute("aria-busy", "false", timeout=ROUND)


def sync(page: Page) -> str:
    """Sync by the button; what is said of it afterwards."""
    if page.get_by_role("heading", level=1).inner_text() != "Devices and sync":
        more(page, "Devices and sync")
    settled(page)
    page.get_by_role("button", name="Sync now").click()
    settled(page)
    return page.get_by_role("group", name="Sync").inner_text()


def operations(page: Page) -> dict[str, dict[str, Any]]:
    """The operations on a phone, by id."""
    return {e["op"]: e for e in kept(page)["journal"] if "op" in e}


BLANK = ("", None, [])


def said_of(records: list[dict[str, Any]]) -> dict[str, Any]:
    """What records say; a field that came later is missing from an older one and says nothing."""
    return by_id([{n: v for n, v in one.items() if v not in BLANK} for one in records])


def same_everywhere(server: OwnServer, *pages: Page) -> None:
    """Phones hold the same records, photos and operations; the records are those of the server."""
    first, *others = [kept(page) for page in pages]
    ids = [{e["op"] for e in there["journal"] if "op" in e} for there in (first, *others)]
    for there, known in zip(others, ids[1:], strict=True):
        assert said_of(there["records"]) == said_of(first["records"])
        assert by_id(there["photos"]) == by_id(first["photos"])
        assert known == ids[0]
    merged = server.records()
    records = by_id(first["records"])
    assert records.keys() == {r for r, one in merged.items() if one["type"] not in OWN}
    for ident, record in records.items():
        shown = {n: v for n, v in merged[ident]["fields"].items() if v not in BLANK}
        assert {n: record[n] for n in shown} == shown
        assert bool(record["trashed"]) == (merged[ident]["trashed"] or merged[ident]["gone"])
        assert record.get("gone", False) == merged[ident]["gone"]


def open_piece(page: Page, number: str) -> None:
    place(page, "Collection")
    page.get_by_role("list", name="Pieces").get_by_role("button").filter(has_text=number).click()
    expect(page.get_by_label("Notes")).to_be_visible()


OWN = ("photo", "device")


def by_id(values: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    return {one["id"]: one for one in values}
