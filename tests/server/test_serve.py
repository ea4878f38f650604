"""serve, pair and certificate as a person runs them."""

import http.client
import re
import ssl
from datetime import UTC, datetime, timedelta
from ipaddress import ip_address
from pathlib import Path

import orjson
import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes

from identify.cli import main
from identify.server import authority
from tests.server.serving import Serving, run, serving

pytestmark = pytest.mark.heavy

HOST = "trains.home.arpa"


def pair(data: Path) -> tuple[str, str, str]:
    """The link's address and secret, and the code, that the command printed."""
    printed = run("pair", "--data", data)
    assert printed.returncode == 0, printed.stderr
    link = re.search(r"^(https?://\S+)#pair=(\S+)$", printed.stdout, re.MULTILINE)
    code = re.search(r"type: (\w{4} \w{4})$", printed.stdout, re.MULTILINE)
    assert link
    assert code
    assert "█" in printed.stdout
    assert "5 minutes" in printed.stdout
    return link[1], link[2], code[1]


def ask(line: http.client.HTTPConnection, path: str, token: str = "", **body: str) -> tuple:
    headers = {"Content-Type": "application/json"} | (
        {"Authorization": f"Bearer {token}"} if token else {}
    )
    line.request("POST" if body else "GET", path, orjson.dumps(body) if body else None, headers)
    answer = line.getresponse()
    return answer.status, answer.headers, answer.read()


def test_from_the_first_start_to_a_paired_phone_and_no_secret_in_any_log(tmp_path):
    data = tmp_path / "data"
    with serving(data) as running:
        address, secret, code = pair(data)
        assert address == f"http://127.0.0.1:{running.port}/"
        line = http.client.HTTPConnection("127.0.0.1", running.port)
        assert ask(line, "/")[2].startswith(b"<!doctype html>")
        assert ask(line, "/certificate.html")[0] == ask(line, "/certificate.crt")[0] == 404
        status, _, body = ask(line, "/api/pair", secret=secret, name="Phone")
        token = orjson.loads(body)["token"]
        assert status == 200
        assert ask(line, "/api/pair", code=code)[0] == 400
        assert ask(line, "/api/pull", token)[0] == 200
        assert ask(line, f"/api/pull?epoch={token}", "wrong")[0] == 401
        line.close()
        said, log = running.said.read_text(), running.log.read_text()
    assert "No device is paired yet: python -m identify pair" in said
    assert re.search(r"^20\d\d-\d\d-\d\dT\d\d:\d\d:\d\dZ WARNING paired: k\w+ by a link", log, re.M)
    assert "refused: no paired device, 127.0.0.1" in log
    assert "refused: pairing by a code" in log
    for kept in (said, log):
        for hidden in (secret, code, code.replace(" ", ""), token):
            assert hidden not in kept
    with serving(data) as again:
        assert "No device is paired" not in again.said.read_text()


@pytest.fixture(scope="module")
def secure(tmp_path_factory) -> Serving:
    """`certificate`, then `serve` for everyone on the network."""
    data = tmp_path_factory.mktemp("secure") / "data"
    made = run("certificate", HOST, "127.0.0.1", "--data", data)
    assert made.returncode == 0, made.stderr
    data.with_name("printed.txt").write_text(made.stdout)
    with serving(data, "--host", "0.0.0.0") as running:
        yield running


def trusting(secure: Serving) -> ssl.SSLContext:
    return ssl.create_default_context(cafile=str(secure.data / "certificate" / "authority.crt"))


def test_the_phone_gets_the_authority_whose_fingerprint_was_printed(secure):
    printed = secure.data.with_name("printed.txt").read_text()
    fingerprint = re.search(r"^  ((?:[0-9A-F]{2}:){31}[0-9A-F]{2})$", printed, re.MULTILINE)
    assert fingerprint
    assert f"https://{HOST}:8100/certificate.html" in printed
    line = http.client.HTTPSConnection("127.0.0.1", secure.port, context=trusting(secure))
    status, headers, found = ask(line, "/certificate.crt")
    assert (status, headers["Content-Type"]) == (200, "application/x-x509-ca-cert")
    got = x509.load_der_x509_certificate(found).fingerprint(hashes.SHA256())
    assert got.hex(":").upper() == fingerprint[1]
    page = ask(line, "/certificate.html")
    assert page[0] == 200
    assert b'href="certificate.crt"' in page[2]
    line.close()


def test_pairing_leads_to_the_name_of_the_certificate(secure):
    assert pair(secure.data)[0] == f"https://{HOST}:{secure.port}/"


@pytest.mark.parametrize(
    ("version", "ciphers"),
    [
        (ssl.TLSVersion.TLSv1, "ALL:@SECLEVEL=0"),
        (ssl.TLSVersion.TLSv1_1, "ALL:@SECLEVEL=0"),
        (ssl.TLSVersion.TLSv1_2, "AES128-GCM-SHA256"),
        (ssl.TLSVersion.TLSv1_2, "ECDHE-ECDSA-AES128-SHA"),
    ],
)
@pytest.mark.filterwarnings("ignore:ssl.TLSVersion")
def test_old_and_weak_ways_of_encrypting_are_refused(secure, version, ciphers):
    context = trusting(secure)
    context.minimum_version = context.maximum_version = version
    context.set_ciphers(ciphers)
    line = http.client.HTTPSConnection("127.0.0.1", secure.port, context=context)
    with pytest.raises(ssl.SSLError):
        line.connect()


@pytest.mark.parametrize("version", [ssl.TLSVersion.TLSv1_2, ssl.TLSVersion.TLSv1_3])
def test_the_present_ways_are_spoken(secure, version):
    context = trusting(secure)
    context.minimum_version = context.maximum_version = version
    line = http.client.HTTPSConnection("127.0.0.1", secure.port, context=context)
    status, headers, _ = ask(line, "/api/offers")
    assert status == 200
    assert "Strict-Transport-Security" not in headers  # other things may stand on other ports
    line.close()


def test_plain_http_gets_nothing_where_there_is_https(secure):
    line = http.client.HTTPConnection("127.0.0.1", secure.port)
    with pytest.raises((http.client.HTTPException, OSError)):
        ask(line, "/api/offers")


REFUSALS = [
    (("serve", "--host", "0.0.0.0"), "no phone there keeps the app"),
    (("serve", "--cert", "x.crt"), "name both"),
    (("serve", "--cert", "pyproject.toml", "--key", "pyproject.toml"), "not a certificate in PEM"),
    (("serve", "--cert", "nothing", "--key", "nothing"), "No such file"),
    (("serve", "--behind-proxy", "http://x.example"), "Give the https address"),
    (("serve", "--behind-proxy", "https://x.example/under"), "Give the https address"),
    (("serve", "--behind-proxy", "x.example"), "Give the https address"),
    (("pair",), "Start the server first"),
    (("certificate", "*.home.arpa"), "wildcard"),
]


@pytest.mark.parametrize(("words", "says"), REFUSALS)
def test_what_cannot_be_is_refused_in_a_sentence_and_leaves_nothing(tmp_path, words, says, capsys):
    data = tmp_path / "data"
    assert main([*words, "--data", str(data)]) == 1
    assert says in capsys.readouterr().err
    assert not data.exists()


def certificate_that_ends_in(data: Path, days: float) -> None:
    """`certificate`, as long ago as leaves it so many days."""
    ago = timedelta(days=authority.SERVER_DAYS - days) - authority.BACKDATED
    hosts = [HOST, ip_address("127.0.0.1")]
    authority.make(authority.folder_of(data), hosts, datetime.now(UTC) - ago)


@pytest.mark.parametrize(("days", "renewed"), [(-2, True), (29, True), (31, False)])
def test_a_certificate_of_our_own_is_renewed_at_the_start(tmp_path, days, renewed):
    data = tmp_path / "data"
    certificate_that_ends_in(data, days)
    with serving(data, "--host", "0.0.0.0") as running:
        trusted = ssl.create_default_context(
            cafile=str(authority.folder_of(data) / "authority.crt")
        )
        line = http.client.HTTPSConnection("127.0.0.1", running.port, context=trusted, timeout=30)
        assert ask(line, "/")[0] == 200
        line.close()
        said = running.said.read_text()
    left = authority.until(authority.folder_of(data) / authority.SERVER) - datetime.now(UTC)
    assert (left > timedelta(days=300)) is renewed
    assert ("The certificate was renewed, and is good until 20" in said) is renewed


def test_a_certificate_from_elsewhere_that_has_expired_is_refused(tmp_path, capsys):
    certificate_that_ends_in(tmp_path / "elsewhere", -2)
    folder = authority.folder_of(tmp_path / "elsewhere")
    words = ["--cert", folder / authority.SERVER, "--key", folder / authority.SERVER_KEY]
    assert main(["serve", "--data", str(tmp_path / "data"), *map(str, words)]) == 1
    said = capsys.readouterr().err
    assert "has expired. Get a new one from where it came from" in said


def test_of_a_certificate_from_elsewhere_no_command_of_ours_is_named(tmp_path):
    elsewhere = tmp_path / "elsewhere"
    certificate_that_ends_in(elsewhere, 10)
    cert, key = (
        authority.folder_of(elsewhere) / name for name in (authority.SERVER, authority.SERVER_KEY)
    )
    with serving(tmp_path / "data", "--cert", cert, "--key", key) as running:
        log = running.log.read_text()
    assert "Get a new one from where it came from" in log
    assert "identify certificate" not in log


@pytest.mark.parametrize("words", [(), ("--behind-proxy", "https://x.example")])
def test_what_is_said_of_the_caller_counts_from_a_proxy_only(tmp_path, words):
    """And there only the last address, which the proxy itself has put in."""

    def get(path: str, **headers: str) -> http.client.HTTPResponse:
        sent = {name.replace("_", "-"): value for name, value in headers.items()}
        line.request("GET", path, headers=sent)
        answer = line.getresponse()
        answer.read()
        return answer

    with serving(tmp_path / "data", *words) as running:
        line = http.client.HTTPConnection("127.0.0.1", running.port)
        known = "x.example" if words else "127.0.0.1"
        assert get("/", Host="y.example", X_Forwarded_Host=known).status == 421
        for said in ("203.0.113.7", "198.51.100.1, 203.0.113.8"):
            assert get("/api/pull", Host=known, X_Forwarded_For=said).status == 401
        strict = get("/", Host=known, X_Forwarded_Proto="https").headers
        line.close()
        log = running.log.read_text()
    assert ("Strict-Transport-Security" in strict) is bool(words)
    assert "198.51.100.1" not in log
    for address in ("203.0.113.7", "203.0.113.8"):
        assert (f"no paired device, {address}" in log) is bool(words)
    assert ("no paired device, 127.0.0.1" in log) is not bool(words)
