"""The published folder on a plain host, under a path of its own."""

import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

from playwright.sync_api import Page, expect

from identify import phone
from identify.publishing import publish
from identify.reference.compiled import pack_bytes
from identify.reference.plain_tables import table_pack
from tests.browser.phone import (
    PHONE,
    asking,
    begin,
    choices,
    kept_phone,
    question,
    see,
    start,
    watched,
)
from tests.browser.phone_storage import add_piece, more
from tests.outside.data import OUTSIDE, read


class Quiet(SimpleHTTPRequestHandler):
    def log_message(self, *_: object) -> None:
        """Nothing on the terminal."""


@contextmanager
def plain_host(folder: Path) -> Iterator[str]:
    """Python's own file server, as plain as a host can be."""
    server = ThreadingHTTPServer(("127.0.0.1", 0), partial(Quiet, directory=str(folder)))
    thread = threading.Thread(target=server.serve_forever)
    thread.start()
    try:
        yield f"http://127.0.0.1:{server.server_port}/"
    finally:
        server.shutdown()
        server.server_close()
        thread.join()


def ready_for_no_signal(page: Page) -> None:
    page.wait_for_function("() => navigator.serviceWorker.controller !== null")


def test_a_piece_is_identified_offline_from_a_folder_under_a_path(playwright, site, tmp_path):
    host, profile = tmp_path / "host", tmp_path / "profile"
    publish(site, host / "some" / "where")
    with plain_host(host) as url, kept_phone(playwright, profile) as context:
        page = watched(context.new_page())
        page.goto(f"{url}some/where/")
        ready_for_no_signal(page)
        assert page.reported == []
        address = page.url
    with kept_phone(playwright, profile) as context:
        context.set_offline(True)
        page = context.new_page()
        failed: list[str] = []
        page.on("requestfailed", lambda request: failed.append(request.url))
        start(page, address, "Coach")
        while asking(page):
            see(page, choices(page)[0])
        expect(page.get_by_role("heading", name="Take care")).to_be_visible()
        assert failed == []


def test_on_a_plain_host_what_needs_a_server_says_so_and_nothing_is_missed(browser, site, tmp_path):
    """The folder itself answers what the host offers: a browser notes every address that fails."""
    publish(site, tmp_path / "host" / "some" / "where")
    with plain_host(tmp_path / "host") as url:
        context = browser.new_context(**PHONE)
        page = watched(context.new_page())
        asked: list[str] = []
        page.on("request", lambda request: "/api/" in request.url and asked.append(request.url))
        page.goto(f"{url}some/where/")
        add_piece(page, "P 24")
        more(page, "Devices and sync")
        expect(page.get_by_text("nothing is sent anywhere")).to_be_visible()
        more(page, "Take out")
        expect(page.get_by_role("heading", name="As a file")).to_be_visible()
        assert page.reported == []
        assert asked == [f"{url}some/where/api/offers"]
        context.close()


def test_a_thing_of_a_plain_table_is_identified_on_the_phone(browser, tmp_path):
    """The Zoo table on the phone: answered as the table says, it names the animal."""
    pack, _ = table_pack(OUTSIDE / "zoo.csv", "animal", ["type"])
    file = tmp_path / "zoo.json"
    file.write_bytes(pack_bytes(pack))
    publish(phone.site([file]), tmp_path / "host")
    (penguin,) = [row for row in read("zoo.csv") if row["animal"] == "penguin"]
    with plain_host(tmp_path / "host") as url:
        context = browser.new_context(service_workers="block")
        page = watched(context.new_page())
        page.goto(url)
        begin(page)
        while asking(page):
            see(page, penguin[question(page).removesuffix("?").lower()])
        expect(page.get_by_role("main")).to_contain_text("penguin")
        expect(page.get_by_role("main")).to_contain_text("Years not recorded")
        assert page.reported == []
        context.close()
