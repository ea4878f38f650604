"""A running server changes its certificate: its own before the end, others when files change."""

import shutil
import ssl
import time
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

import pytest
from cryptography import x509

from identify.errors import UserError
from identify.server import authority, chores
from identify.server.tls import Tls
from tests.server.own_server import OwnServer, own_server

NOW = datetime.now(UTC)
NAMES = ["trains.home.arpa", ip_address("127.0.0.1")]


def made(folder: Path, left: float) -> tuple[Path, Path]:
    """A certificate of an authority in `folder` that has so many days left."""
    ago = timedelta(days=authority.SERVER_DAYS - left) - authority.BACKDATED
    authority.make(folder, NAMES, NOW - ago)
    return folder / authority.SERVER, folder / authority.SERVER_KEY


def shown(server: OwnServer) -> x509.Certificate:
    """What a new caller is shown; the caller trusts nothing and takes all."""
    text = ssl.get_server_certificate(("127.0.0.1", server.port))
    return x509.load_pem_x509_certificate(text.encode())


def until_it_shows(server: OwnServer, former: x509.Certificate) -> x509.Certificate:
    for _ in range(600):
        found = shown(server)
        if found != former:
            return found
        time.sleep(0.05)
    raise AssertionError("the same certificate after 30 s")


def test_its_own_is_renewed_30_days_before_the_end_and_the_phones_go_on_trusting(
    tmp_path, monkeypatch
):
    monkeypatch.setattr(chores, "CHECKED", 0.05)
    folder = tmp_path / "certificate"
    pair = made(folder, 40)
    with own_server(tmp_path / "data", certificate=pair, own=folder) as server:
        server.times.moment = NOW
        before = shown(server)
        server.times.pass_(days=9)
        time.sleep(0.5)  # some looks, and nothing is due: 31 days are left
        assert shown(server) == before
        server.times.pass_(days=2)
        after = until_it_shows(server, before)
        assert after.not_valid_after_utc - before.not_valid_after_utc > timedelta(days=300)
        phone = ssl.create_default_context(cafile=str(folder / authority.ROOT))
        issuing = x509.load_pem_x509_certificates(pair[0].read_bytes())[1]
        assert after.issuer == issuing.subject
        assert server.ask("GET", "/api/offers").status == 200
        assert phone.get_ca_certs()  # the authority on the phone is the one it had
    assert authority.until(pair[0]) == after.not_valid_after_utc


def test_files_from_elsewhere_are_read_again_when_they_change(tmp_path, monkeypatch):
    monkeypatch.setattr(chores, "CHECKED", 0.05)
    old, new = made(tmp_path / "old", 10), made(tmp_path / "new", 300)
    files = tmp_path / "served.crt", tmp_path / "served.key"
    for source, target in zip(old, files, strict=True):
        shutil.copy(source, target)
    with own_server(tmp_path / "data", certificate=files) as server:
        before = shown(server)
        shutil.copy(new[0], files[0])  # half of the pair: whoever writes it is not done yet
        time.sleep(0.5)
        assert shown(server) == before
        shutil.copy(new[1], files[1])
        after = until_it_shows(server, before)
        assert after.not_valid_after_utc == authority.until(new[0])


def test_files_that_are_no_pair_or_gone_are_said_and_the_old_ones_stay(tmp_path):
    pair, other = made(tmp_path / "one", 100), made(tmp_path / "other", 100)
    with pytest.raises(UserError, match="not a certificate with its key"):
        Tls(pair[0], other[1], None)
    tls = Tls(*pair, None)
    assert tls.refresh(NOW) == ""
    shutil.copy(other[1], pair[1])
    with pytest.raises(UserError, match="not a certificate with its key"):
        tls.refresh(NOW)
    pair[1].unlink()
    with pytest.raises(UserError, match="is not there any more"):
        tls.refresh(NOW)
