"""The private authority: its profile by RFC 5280, and what OpenSSL makes of it."""

import ipaddress
import stat
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest
from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, ExtensionOID
from cryptography.x509.verification import PolicyBuilder, Store, VerificationError

from identify.errors import UserError
from identify.server import authority
from identify.server.hosts import checked
from tests.server.handshake import refusal

NOW = datetime.now(UTC)  # OpenSSL looks at the real time
NAMES = ["trains.home.arpa", "192.168.1.20", "fd00::20"]


@pytest.fixture(scope="module")
def made(tmp_path_factory) -> Path:
    folder = tmp_path_factory.mktemp("made") / "certificate"
    authority.make(folder, checked(NAMES), NOW)
    return folder


def read(folder: Path, name: str) -> list[x509.Certificate]:
    return x509.load_pem_x509_certificates((folder / name).read_bytes())


def value(certificate: x509.Certificate, kind: type) -> object:
    return certificate.extensions.get_extension_for_class(kind).value


def critical(certificate: x509.Certificate) -> set[str]:
    return {one.oid._name for one in certificate.extensions if one.critical}


def test_both_authorities_are_limited_to_the_names_and_nothing_else(made):
    """RFC 5280: basicConstraints (4.2.1.9), keyUsage (4.2.1.3), nameConstraints (4.2.1.10)."""
    (root,), (issuing,) = read(made, "authority.crt"), read(made, "issuing.crt")
    for certificate, length in ((root, 1), (issuing, 0)):
        assert critical(certificate) == {"basicConstraints", "keyUsage", "nameConstraints"}
        basic = value(certificate, x509.BasicConstraints)
        assert (basic.ca, basic.path_length) == (True, length)
        usage = value(certificate, x509.KeyUsage)
        assert (usage.key_cert_sign, usage.crl_sign, usage.digital_signature) == (True, True, False)
        constraints = value(certificate, x509.NameConstraints)
        assert [one.value for one in constraints.permitted_subtrees] == [
            "trains.home.arpa",
            ipaddress.ip_network("192.168.1.20/32"),
            ipaddress.ip_network("fd00::20/128"),
        ]
        assert list(value(certificate, x509.ExtendedKeyUsage)) == [ExtendedKeyUsageOID.SERVER_AUTH]
        assert isinstance(certificate.public_key().curve, ec.SECP256R1)
        assert certificate.version == x509.Version.v3
    assert root.subject == root.issuer == issuing.issuer != issuing.subject


def test_the_servers_certificate_is_short_lived_and_of_no_other_use(made):
    """RFC 5280, and of the CA/Browser Forum's Baseline Requirements what concerns the form: names
    in subjectAltName (7.1.2.7.12), at least 64 bits of chance in the serial number (7.1), keys on
    P-256 (6.1.5), at most 398 days (6.3.2, for certificates issued before 15 March 2026).
    """
    server, issuing = read(made, "server.crt")
    names = value(server, x509.SubjectAlternativeName)
    assert names.get_values_for_type(x509.DNSName) == ["trains.home.arpa"]
    assert [str(one) for one in names.get_values_for_type(x509.IPAddress)] == NAMES[1:]
    lifetime = server.not_valid_after_utc - server.not_valid_before_utc + timedelta(seconds=1)
    assert lifetime == timedelta(days=397)
    assert critical(server) == {"basicConstraints", "keyUsage", "subjectAltName"}
    assert list(server.subject) == []  # and so the names are critical (RFC 5280, 4.1.2.6)
    assert value(server, x509.BasicConstraints).ca is False
    usage = value(server, x509.KeyUsage)
    assert (usage.digital_signature, usage.key_cert_sign) == (True, False)
    assert list(value(server, x509.ExtendedKeyUsage)) == [ExtendedKeyUsageOID.SERVER_AUTH]
    assert server.serial_number.bit_length() > 64
    assert server.serial_number.bit_length() <= 159  # 20 octets, positive (RFC 5280, 4.1.2.2)
    ours = value(server, x509.AuthorityKeyIdentifier).key_identifier
    assert ours == value(issuing, x509.SubjectKeyIdentifier).digest
    assert [issuing] == read(made, "issuing.crt")


def test_the_roots_key_is_nowhere_and_the_others_are_for_the_owner_only(made):
    (root,) = read(made, "authority.crt")
    kept = sorted(path.name for path in made.iterdir())
    assert kept == ["authority.crt", "issuing.crt", "issuing.key", "server.crt", "server.key"]
    for path in made.iterdir():
        assert stat.S_IMODE(path.stat().st_mode) == 0o600
        if path.suffix == ".key":
            key = serialization.load_pem_private_key(path.read_bytes(), None)
            assert key.public_key() != root.public_key()
    assert stat.S_IMODE(made.stat().st_mode) == 0o700


@pytest.mark.parametrize("name", NAMES)
def test_who_trusts_the_root_trusts_the_server_under_each_name(made, name):
    assert refusal(made / "authority.crt", made / "server.crt", made / "server.key", name) == ""
    assert len(verified(made, made / "server.crt", name)) == 3


def verified(made: Path, certificate: Path, name: str) -> list[x509.Certificate]:
    """The chain from the server up to the root. Raises VerificationError."""
    leaf, issuing = x509.load_pem_x509_certificates(certificate.read_bytes())
    store = Store(read(made, "authority.crt"))
    subject = authority._general(checked([name])[0])
    return (
        PolicyBuilder()
        .store(store)
        .time(NOW)
        .build_server_verifier(subject)
        .verify(leaf, [issuing])
    )


def signed(made: Path, folder: Path, name: str) -> tuple[Path, Path]:
    """What a thief of the issuing key could make: a certificate for another name, and its chain."""
    (issuing,) = read(made, "issuing.crt")
    issuing_key = serialization.load_pem_private_key((made / "issuing.key").read_bytes(), None)
    certificate, key = authority._server(issuing, issuing_key, checked([name]), NOW)
    (folder / "thief.crt").write_bytes(authority._pem(certificate) + authority._pem(issuing))
    (folder / "thief.key").write_bytes(authority._pem_key(key))
    return folder / "thief.crt", folder / "thief.key"


OTHERS = ["bank.example.com", "xtrains.home.arpa", "192.168.1.21", "fd00::21"]


@pytest.mark.parametrize("name", OTHERS)
def test_for_any_other_name_the_authority_is_worth_nothing(made, tmp_path, name):
    """By OpenSSL, and by the verifier of `cryptography`, which is another program."""
    certificate, key = signed(made, tmp_path, name)
    assert refusal(made / "authority.crt", certificate, key, name) == "permitted subtree violation"
    with pytest.raises(VerificationError, match=r"name constraint|permitted"):
        verified(made, certificate, name)


def test_no_further_authority_can_be_made_of_it(made, tmp_path):
    """The issuing authority's path length is 0."""
    (issuing,) = read(made, "issuing.crt")
    issuing_key = serialization.load_pem_private_key((made / "issuing.key").read_bytes(), None)
    below_key = authority._new_key()
    names = checked(NAMES)
    below = authority._authority(
        authority._called("Below"), issuing.subject, below_key.public_key(),
        authority._constraints(names), NOW, path_length=0,
    ).sign(issuing_key, hashes.SHA256())  # fmt: skip
    leaf, key = authority._server(below, below_key, names, NOW)
    chain = b"".join(authority._pem(one) for one in (leaf, below, issuing))
    (tmp_path / "chain.crt").write_bytes(chain)
    (tmp_path / "chain.key").write_bytes(authority._pem_key(key))
    said = refusal(made / "authority.crt", tmp_path / "chain.crt", tmp_path / "chain.key", NAMES[0])
    assert said == "path length constraint exceeded"


@pytest.mark.parametrize(
    ("names", "other"),
    [
        (["192.168.1.20"], "bank.example.com"),
        (["trains.local"], "10.0.0.1"),
        (["trains.local"], "::1"),
    ],
)
def test_kinds_of_names_that_were_not_given_are_shut_out_as_a_whole(tmp_path, names, other):
    made = tmp_path / "made"
    authority.make(made, checked(names), NOW)
    own = refusal(made / "authority.crt", made / "server.crt", made / "server.key", names[0])
    assert own == ""
    certificate, key = signed(made, tmp_path, other)
    assert "subtree violation" in refusal(made / "authority.crt", certificate, key, other)


def test_the_certificate_is_renewed_and_the_phones_need_nothing_new(tmp_path):
    folder = tmp_path / "certificate"
    first = authority.make(folder, checked(NAMES), NOW - timedelta(days=380))
    before = (folder / "server.crt").read_bytes()
    second = authority.make(folder, checked(NAMES[:1]), NOW)
    assert (first.new_authority, second.new_authority) == (True, False)
    assert first.fingerprint == second.fingerprint
    assert (folder / "server.crt").read_bytes() != before
    assert second.until > first.until
    root, *files = (folder / name for name in ("authority.crt", "server.crt", "server.key"))
    assert refusal(root, *files, NAMES[0]) == ""
    assert refusal(root, *files, NAMES[1]) != ""


def test_another_name_needs_another_authority(tmp_path):
    folder = tmp_path / "certificate"
    authority.make(folder, checked(NAMES), NOW)
    kept = {path.name: path.read_bytes() for path in folder.iterdir()}
    for name in ("other.home.arpa", "192.168.1.21", "below.trains.home.arpa"):
        with pytest.raises(UserError, match=f"is not for {name}"):
            authority.make(folder, checked([name]), NOW)
    assert {path.name: path.read_bytes() for path in folder.iterdir()} == kept


def test_an_authority_that_is_not_whole_is_told(tmp_path):
    folder = tmp_path / "certificate"
    authority.make(folder, checked(NAMES), NOW)
    for name, content in (("issuing.key", b"x"), ("issuing.crt", b""), ("authority.crt", b"x")):
        before = (folder / name).read_bytes()
        (folder / name).write_bytes(content)
        with pytest.raises(UserError, match="not whole"):
            authority.make(folder, checked(NAMES), NOW)
        (folder / name).write_bytes(before)


@pytest.mark.parametrize(
    ("name", "why"),
    [("*.home.arpa", "wildcard"), ("com", "Others can have names"), ("co.uk", "Others can have"),
     ("github.io", "Others can have"), ("nas", "Others can have"), ("local", "Others can have"),
     ("a b.local", "not the name of a machine"), ("-x.local", "not the name"), ("", "not the name"),
     ("x..local", "not the name"), ("1.2.3", "neither"), ("1.2.3.4.5", "neither"),
     ("0.0.0.0", "not the address"), ("224.0.0.1", "not the address"),
     ("fe80::1%eth0", "not the address"), ("x" * 64 + ".local", "not the name"),
     ("ümlaut.local", "not the name")],
)  # fmt: skip
def test_what_is_no_name_of_one_machine_is_refused_with_what_would_be(name, why):
    with pytest.raises(UserError, match=why) as told:
        checked([name])
    assert "trains.home.arpa" in str(told.value)


def test_names_are_taken_once_and_in_small_letters():
    assert checked(["Trains.Home.Arpa.", "trains.home.arpa", "[fd00::20]", "::1"]) == [
        "trains.home.arpa",
        ipaddress.ip_address("fd00::20"),
        ipaddress.ip_address("::1"),
    ]


def test_the_certificate_for_phones_is_the_root_without_any_key(made):
    found = x509.load_der_x509_certificate(authority.root_bytes(made))
    assert [found] == read(made, "authority.crt")
    assert found.extensions.get_extension_for_oid(ExtensionOID.NAME_CONSTRAINTS).critical
    assert authority.root_bytes(made / "nothing") == b""
    assert authority.names_in(made / "server.crt") == NAMES
