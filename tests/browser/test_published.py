"""The published folder on a plain host, under a path of its own."""

import re
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from typing import ClassVar

from playwright.sync_api import Page, expect

from identify.phone import WEB
from identify.publishing import publish
from identify.reference.compiled import pack_bytes
from identify.reference.plain_tables import table_pack
from identify.server.security_headers import HEADERS
from tests.browser.engines import PAGE
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
from tests.conftest import serving
from tests.kept_site import kept_site
from tests.outside.data import OUTSIDE, read


class Quiet(SimpleHTTPRequestHandler):
    asked: ClassVar[list[str]] = []  # with Origin: what a page elsewhere asks for

    def log_message(self, *_: object) -> None:
        """Nothing on the terminal, but what is asked for from another page."""
        if self.headers.get("Sec-Fetch-Site", "same-origin") not in ("same-origin", "none"):
            self.asked.append(self.path)


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
        expect(page.get_by_text("Take care", exact=True)).to_be_visible()
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
        expect(page.get_by_text("Sync is not set up")).to_be_visible()
        more(page, "Print or save")
        expect(page.get_by_role("heading", name="As a file")).to_be_visible()
        assert page.reported == []
        assert asked == [f"{url}some/where/api/offers"]
        context.close()


def test_a_thing_of_a_plain_table_is_identified_on_the_phone(browser, tmp_path):
    """The Zoo table on the phone: answered as the table says, it names the animal."""
    pack, _ = table_pack(OUTSIDE / "zoo.csv", "animal", ["type"])
    file = tmp_path / "zoo.json"
    file.write_bytes(pack_bytes(pack))
    publish(kept_site([file]), tmp_path / "host")
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


def test_a_published_page_has_the_policy_of_the_server_in_itself(browser, site, tmp_path):
    """A plain host sends no header; frame-ancestors counts in a header only (W3C CSP3, 6.4.2)."""
    policy = HEADERS["Content-Security-Policy"].removesuffix("; frame-ancestors 'none'")
    found = re.search(
        rb'http-equiv="?Content-Security-Policy"? content="([^"]+)"', site["index.html"]
    )
    assert found
    assert found[1].decode() == policy
    publish(site, tmp_path / "site")
    Quiet.asked.clear()
    context = browser.new_context(**PHONE)
    with plain_host(tmp_path / "site") as url, plain_host(tmp_path / "site") as other:
        page = context.new_page()
        page.goto(url)
        expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")
        elsewhere = other.replace("127.0.0.1", "localhost")
        said = page.evaluate(
            "url => fetch(url, {mode: 'no-cors'}).then(() => 'went', () => 'refused')",
            f"{elsewhere}style.css",
        )
        assert said == "refused"
    context.close()
    assert Quiet.asked == []


def test_a_drawing_fetches_nothing_however_it_writes_it(browser):
    fill = ["u\\72l(http://localhost/p.svg#a)", "url(#a)", "\\75rl(x)", "URL (x)", "u\\000072l(x)"]
    shapes = "".join(f'<rect width="9" height="9" fill="{one}"/>' for one in [*fill, "red"])
    text = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{shapes}</svg>'
    files = {"index.html": PAGE, "drawing.js": (WEB / "parts" / "drawing.js").read_bytes()}
    with serving(files) as server:
        page = browser.new_page()
        page.goto(server.url)
        fills = page.evaluate(
            """async text => {
              const { drawing } = await import("./drawing.js");
              const node = drawing({ drawings: { a: text } }, "a");
              return [...node.querySelectorAll("rect")].map(one => one.getAttribute("fill"));
            }""",
            text,
        )
        page.close()
    assert fills == [None] * len(fill) + ["red"]
