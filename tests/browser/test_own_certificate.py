"""The private authority in a real Chromium: trusted, the app is kept for use without a signal; for
another name it is worth nothing. Chromium takes authorities from the NSS database of its user.
"""

import os
import shutil
import subprocess
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import serialization
from playwright.sync_api import BrowserContext, Error, Playwright, expect

from identify import phone
from identify.server import authority
from identify.server.hosts import checked
from tests.browser.phone import PHONE, violations
from tests.conftest import ARGS, light_browser_path
from tests.server.own_server import OwnServer, own_server

HOST = "trains.home.arpa"
OTHER = "bank.example.com"
TO_HERE = f"--host-resolver-rules=MAP {HOST} 127.0.0.1, MAP {OTHER} 127.0.0.1"


@contextmanager
def browser_of(playwright: Playwright, home: Path, *more: str) -> Iterator[BrowserContext]:
    """A browser whose user has this home folder."""
    context = playwright.chromium.launch_persistent_context(
        home / "profile",
        executable_path=light_browser_path(),
        args=[*ARGS, TO_HERE, *more],
        env={**os.environ, "HOME": str(home)},
        **PHONE,
    )
    try:
        yield context
    finally:
        context.close()


@contextmanager
def secure(
    data: Path, certificate: Path, key: Path, files: dict[str, bytes]
) -> Iterator[OwnServer]:
    made = {
        "certificate": (certificate, key),
        "hosts": [HOST, OTHER, "127.0.0.1"],
        "authority": authority.root_bytes(certificate.parent),
    }
    with own_server(data, files=files, **made) as own:
        yield own


def put_on(home: Path, root: Path) -> None:
    """What a person does in the browser's settings, by NSS's own tool."""
    store = home / ".pki" / "nssdb"
    store.mkdir(parents=True)
    for words in (("-N", "--empty-password"), ("-A", "-n", "own", "-t", "C,,", "-i", str(root))):
        subprocess.run(["certutil", "-d", f"sql:{store}", *words], check=True, capture_output=True)


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("own") / "made"
    authority.make(folder, checked([HOST]), datetime.now(UTC))
    return folder


def needs_certutil() -> None:
    if shutil.which("certutil") is None:
        pytest.fail("certutil is not on the PATH. Debian: apt-get install libnss3-tools")


def test_trusted_the_app_is_kept_for_use_without_a_signal(playwright, site, made):
    needs_certutil()
    home = made.parent / "home"
    put_on(home, made / "authority.crt")
    data = made.parent / "data"
    with secure(data, made / "server.crt", made / "server.key", site) as own:
        address = f"https://{HOST}:{own.port}/"
        with browser_of(playwright, home) as context:
            page = context.new_page()
            page.goto(address)
            assert page.evaluate("isSecureContext")
            page.wait_for_function("() => navigator.serviceWorker.controller !== null")
    with browser_of(playwright, home) as context:
        page = context.new_page()
        page.goto(address)
        expect(page.get_by_role("heading", level=1)).to_have_text("What have you got?")


def test_for_another_name_it_is_worth_nothing(playwright, made, tmp_path):
    """A thief with every key of the server, in a browser that trusts the authority."""
    needs_certutil()
    put_on(tmp_path, made / "authority.crt")
    (issuing,) = x509.load_pem_x509_certificates((made / "issuing.crt").read_bytes())
    key = serialization.load_pem_private_key((made / "issuing.key").read_bytes(), None)
    leaf, leaf_key = authority._server(issuing, key, checked([OTHER]), datetime.now(UTC))
    (tmp_path / "thief.crt").write_bytes(authority._pem(leaf) + authority._pem(issuing))
    (tmp_path / "thief.key").write_bytes(authority._pem_key(leaf_key))
    files = {"index.html": b"<!doctype html><title>Thief</title>"}
    with (
        secure(tmp_path / "data", tmp_path / "thief.crt", tmp_path / "thief.key", files) as own,
        browser_of(playwright, tmp_path) as context,
    ):
        page = context.new_page()
        with pytest.raises(Error, match="ERR_CERT_INVALID"):
            page.goto(f"https://{OTHER}:{own.port}/")
        assert page.title() != "Thief"


def test_before_that_the_browser_warns_and_the_page_says_what_to_do(
    playwright, site, made, tmp_path
):
    pages = site | phone.trusting_files()
    with secure(tmp_path / "data", made / "server.crt", made / "server.key", pages) as own:
        address = f"https://{HOST}:{own.port}/"
        with browser_of(playwright, tmp_path) as context:
            page = context.new_page()
            with pytest.raises(Error, match="ERR_CERT_AUTHORITY_INVALID"):
                page.goto(address)
        # someone who goes on past the warning, once
        with browser_of(playwright, tmp_path, "--ignore-certificate-errors") as context:
            page = context.new_page()
            page.goto(f"{address}certificate.html")
            expect(page.get_by_role("heading", level=1)).to_have_text("Trusting your own server")
            with page.expect_download() as fetched:
                page.get_by_role("link", name="Fetch the authority").click()
            assert Path(fetched.value.path()).read_bytes() == authority.root_bytes(made)
            for light in ("light", "dark"):
                page.evaluate("light => { document.documentElement.dataset.light = light; }", light)
                assert violations(page) == []
            page.set_viewport_size({"width": 320, "height": 640})
            page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
            assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
