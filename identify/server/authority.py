"""A private certificate authority for one collector's server, limited to its names.

By RFC 5280. Two steps, so that nothing which could vouch for other sites is left lying about: the
root, which goes onto the phones, signs one issuing authority and nothing more; its key is never
written down. The issuing authority's key stays here to renew the server's certificate. Both carry
the same critical name constraints. RFC 5280 (6.1.1) leaves it to a verifier whether constraints of
a root count; those of the issuing authority always do. For kinds of names that are not permitted
at all, the whole kind is excluded, as the CA/Browser Forum's Baseline Requirements have it for
technically constrained authorities (7.1.2.5.2).
"""

import ipaddress
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from pathlib import Path

from cryptography import x509
from cryptography.hazmat.primitives import hashes, serialization
from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.x509.oid import ExtendedKeyUsageOID, NameOID

from identify.errors import UserError
from identify.keeping import files
from identify.keeping.troubles import disk_troubles
from identify.server.hosts import Address

# The forum's limit for certificates of public authorities was 398 days when browsers began to
# enforce one, and has shrunk since (ballot SC-081v3: 200 days, 100, 47). It binds no private one.
SERVER_DAYS = 397
AUTHORITY_DAYS = 3650
RENEW_DAYS = 30
BACKDATED = timedelta(days=1)  # a phone's clock may be behind
FOLDER = "certificate"
ROOT, ISSUING, SERVER = "authority.crt", "issuing.crt", "server.crt"
ISSUING_KEY, SERVER_KEY = "issuing.key", "server.key"


@dataclass(frozen=True)
class Made:
    """Where the files are, the root's fingerprint, until when the server's certificate holds."""

    folder: Path
    fingerprint: str
    until: datetime
    new_authority: bool


def folder_of(data: Path) -> Path:
    """Where the certificates are within the server's data."""
    return data / FOLDER


def make(folder: Path, names: Sequence[str | Address], now: datetime) -> Made:
    """Certificates for these hosts: a new authority where there is none, else a new certificate.

    Raises UserError where the authority that is there is for other hosts.
    """
    with disk_troubles():
        files.make_folder(folder)
        new = not (folder / ROOT).is_file()
        if new:
            _found(folder, names, now)
    try:
        root = x509.load_pem_x509_certificate((folder / ROOT).read_bytes())
        issuing = x509.load_pem_x509_certificate((folder / ISSUING).read_bytes())
        read = serialization.load_pem_private_key((folder / ISSUING_KEY).read_bytes(), None)
        outside = [name for name in names if not _permitted(issuing, name)]
    except (OSError, ValueError, x509.ExtensionNotFound):
        raise UserError(
            f"The authority in {folder} is not whole. Set that folder aside and run this again; "
            "the phones then need the new authority."
        ) from None
    assert isinstance(read, ec.EllipticCurvePrivateKey)
    if min(root.not_valid_after_utc, issuing.not_valid_after_utc) - now < timedelta(days=1):
        raise UserError(
            f"The authority in {folder} has expired. Set that folder aside and run this again; the "
            "phones then need the new authority."
        )
    if outside:
        raise UserError(
            f"The authority in {folder} is not for {outside[0]}, and can never be. Set that folder "
            "aside and run this again with all names; the phones then need the new authority."
        )
    certificate, key = _server(issuing, read, names, now)
    with disk_troubles():
        files.write_whole(folder / SERVER_KEY, _pem_key(key))
        files.write_whole(folder / SERVER, _pem(certificate) + _pem(issuing))
    return Made(folder, fingerprint(root), certificate.not_valid_after_utc, new)


def fingerprint(certificate: x509.Certificate) -> str:
    """SHA-256 of the certificate, as phones show it."""
    return certificate.fingerprint(hashes.SHA256()).hex(":").upper()


def names_in(file: Path) -> list[str]:
    """The hosts that the (first) certificate in a file is for. Raises UserError."""
    first = _first(file)
    try:
        names = first.extensions.get_extension_for_class(x509.SubjectAlternativeName).value
    except x509.ExtensionNotFound:
        raise UserError(f"The certificate in {file} names no host. Give one that does.") from None
    hosts = names.get_values_for_type(x509.DNSName)
    return [*hosts, *(str(address) for address in names.get_values_for_type(x509.IPAddress))]


def until(file: Path) -> datetime:
    """Until when the (first) certificate in a file holds. Raises UserError."""
    return _first(file).not_valid_after_utc


def authority_until(folder: Path) -> datetime:
    """Until when the authority in a folder can vouch for anything. Raises UserError."""
    return min(until(folder / ROOT), until(folder / ISSUING))


def root_bytes(folder: Path) -> bytes:
    """The root to put on a phone, in DER; b"" where there is none."""
    if not (folder / ROOT).is_file():
        return b""
    return _first(folder / ROOT).public_bytes(serialization.Encoding.DER)


def _first(file: Path) -> x509.Certificate:
    try:
        return x509.load_pem_x509_certificates(file.read_bytes())[0]
    except ValueError:
        raise UserError(f"{file} is not a certificate in PEM form. Give one that is.") from None


def _found(folder: Path, names: Sequence[str | Address], now: datetime) -> None:
    """A new root and its issuing authority. The root's key is let go when this ends."""
    what = str(names[0])
    root_key, key = _new_key(), _new_key()
    constraints = _constraints(names)
    root_name = _called(f"Own authority for {what}")
    root = _authority(root_name, root_name, root_key.public_key(), constraints, now, path_length=1)
    root = root.add_extension(_key_id(root_key), critical=False)
    issuing = _authority(
        _called(f"Issuing for {what}"),
        root_name,
        key.public_key(),
        constraints,
        now,
        path_length=0,
    )
    issuing = issuing.add_extension(_key_id(key), critical=False).add_extension(
        x509.AuthorityKeyIdentifier.from_issuer_public_key(root_key.public_key()), critical=False
    )
    files.write_whole(folder / ISSUING_KEY, _pem_key(key))
    files.write_whole(folder / ISSUING, _pem(issuing.sign(root_key, hashes.SHA256())))
    # last: what is there without it counts for nothing, and is made again
    files.write_whole(folder / ROOT, _pem(root.sign(root_key, hashes.SHA256())))


def _authority(
    subject: x509.Name,
    issuer: x509.Name,
    key: ec.EllipticCurvePublicKey,
    constraints: x509.NameConstraints,
    now: datetime,
    *,
    path_length: int,
) -> x509.CertificateBuilder:
    return (
        _begun(subject, issuer, key, now, AUTHORITY_DAYS)
        .add_extension(x509.BasicConstraints(ca=True, path_length=path_length), critical=True)
        .add_extension(_usage(key_cert_sign=True, crl_sign=True), critical=True)
        .add_extension(constraints, critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
    )


def _server(
    issuing: x509.Certificate,
    issuing_key: ec.EllipticCurvePrivateKey,
    names: Sequence[str | Address],
    now: datetime,
) -> tuple[x509.Certificate, ec.EllipticCurvePrivateKey]:
    """A certificate for the server, which does not outlive the authority, and its key."""
    key = _new_key()
    left = issuing.not_valid_after_utc - (now.astimezone(UTC) - BACKDATED)
    days = min(SERVER_DAYS, left.days)
    names_of_it = x509.SubjectAlternativeName([_general(name) for name in names])
    builder = (
        # without a subject, as its names stand elsewhere; those are then critical (4.1.2.6)
        _begun(x509.Name([]), issuing.subject, key.public_key(), now, days)
        .add_extension(names_of_it, critical=True)
        .add_extension(x509.BasicConstraints(ca=False, path_length=None), critical=True)
        .add_extension(_usage(digital_signature=True), critical=True)
        .add_extension(x509.ExtendedKeyUsage([ExtendedKeyUsageOID.SERVER_AUTH]), critical=False)
        .add_extension(_key_id(key), critical=False)
        .add_extension(
            x509.AuthorityKeyIdentifier.from_issuer_public_key(issuing_key.public_key()),
            critical=False,
        )
    )
    return builder.sign(issuing_key, hashes.SHA256()), key


def _begun(
    subject: x509.Name,
    issuer: x509.Name,
    key: ec.EllipticCurvePublicKey,
    now: datetime,
    days: int,
) -> x509.CertificateBuilder:
    begins = now.astimezone(UTC).replace(microsecond=0) - BACKDATED
    return (
        x509.CertificateBuilder()
        .subject_name(subject)
        .issuer_name(issuer)
        .public_key(key)
        .serial_number(x509.random_serial_number())
        .not_valid_before(begins)
        # both ends count (RFC 5280, 4.1.2.5)
        .not_valid_after(begins + timedelta(days=days) - timedelta(seconds=1))
    )


def _constraints(names: Sequence[str | Address]) -> x509.NameConstraints:
    """Only these names and addresses. A host name cannot be told from those below it (4.2.1.10)."""
    permitted: list[x509.GeneralName] = []
    for name in names:
        if isinstance(name, str):
            permitted.append(x509.DNSName(name))
        else:
            permitted.append(x509.IPAddress(ipaddress.ip_network(name)))
    excluded: list[x509.GeneralName] = []
    if not any(isinstance(name, str) for name in names):
        excluded.append(x509.DNSName(""))
    if all(isinstance(name, str) for name in names):
        excluded.append(x509.IPAddress(ipaddress.ip_network("0.0.0.0/0")))
        excluded.append(x509.IPAddress(ipaddress.ip_network("::/0")))
    return x509.NameConstraints(permitted, excluded or None)


def _permitted(issuing: x509.Certificate, name: str | Address) -> bool:
    constraints = issuing.extensions.get_extension_for_class(x509.NameConstraints).value
    return any(
        (isinstance(name, str) and isinstance(subtree, x509.DNSName) and subtree.value == name)
        or (isinstance(subtree, x509.IPAddress) and subtree.value == _network(name))
        for subtree in constraints.permitted_subtrees or []
    )


def _network(name: str | Address) -> object:
    return None if isinstance(name, str) else ipaddress.ip_network(name)


def _general(name: str | Address) -> x509.GeneralName:
    return x509.DNSName(name) if isinstance(name, str) else x509.IPAddress(name)


def _usage(
    *, digital_signature: bool = False, key_cert_sign: bool = False, crl_sign: bool = False
) -> x509.KeyUsage:
    return x509.KeyUsage(
        digital_signature=digital_signature,
        content_commitment=False,
        key_encipherment=False,
        data_encipherment=False,
        key_agreement=False,
        key_cert_sign=key_cert_sign,
        crl_sign=crl_sign,
        encipher_only=False,
        decipher_only=False,
    )


def _called(name: str) -> x509.Name:
    return x509.Name([x509.NameAttribute(NameOID.COMMON_NAME, name[:64])])


def _key_id(key: ec.EllipticCurvePrivateKey) -> x509.SubjectKeyIdentifier:
    return x509.SubjectKeyIdentifier.from_public_key(key.public_key())


def _new_key() -> ec.EllipticCurvePrivateKey:
    return ec.generate_private_key(ec.SECP256R1())


def _pem(certificate: x509.Certificate) -> bytes:
    return certificate.public_bytes(serialization.Encoding.PEM)


def _pem_key(key: ec.EllipticCurvePrivateKey) -> bytes:
    return key.private_bytes(
        serialization.Encoding.PEM,
        serialization.PrivateFormat.PKCS8,
        serialization.NoEncryption(),
    )
