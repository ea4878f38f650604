"""Paired devices, and how one is paired. Tokens and secrets are kept as digests only.

A token has 256 bits and a pairing's secret 128, so that a plain SHA-256 of them cannot be turned
back. A typed code has 40: whoever got hold of the file could try all of them against a fast digest
within its five minutes, so it is kept salted and through scrypt (RFC 7914).
"""

import contextlib
import hashlib
import hmac
import secrets
from collections.abc import Callable
from datetime import UTC, datetime, timedelta
from typing import Any

import apsw

from identify.keeping.queries import rows
from identify.keeping.store import Store
from identify.keeping.troubles import DiskError, RefusedError
from identify.keeping.types import KnownDevice

# Douglas Crockford, "Base 32" (crockford.com/base32.html): no I, L, O, U; I and L read as 1, O as 0
ALPHABET = "0123456789ABCDEFGHJKMNPQRSTVWXYZ"
MISREAD = str.maketrans("ILO", "110", "- ")
CODE = 8
MINUTES = 5
TRIES = 5
SEEN = timedelta(minutes=1)
NAME = 60

OVER = (
    "This pairing is not known, or its five minutes are up. Start a new one on the server, or on "
    "a device that is paired already."
)
WRONG = (
    "That code is not right. After five wrong tries no code works any longer: use the link of the "
    "square code, or start again."
)


class NotPairedError(RefusedError):
    """Pairing did not succeed; the sentence says what to do."""


class UnknownDeviceError(RefusedError):
    """There is no such device."""


def new_pairing(store: Store, now: datetime) -> dict[str, str]:
    """Begins a pairing: {secret (for the link), code (to type), until (ISO 8601)}."""
    secret = secrets.token_urlsafe(16)
    code = "".join(secrets.choice(ALPHABET) for _ in range(CODE))
    salt = secrets.token_bytes(16)
    until = now + timedelta(minutes=MINUTES)
    hashed = _code(code, salt)
    with store.write() as db:
        db.execute("delete from pairings where until <= ?", (_stamp(now),))
        db.execute(
            "insert into pairings (secret, salt, code, until) values (?, ?, ?, ?)",
            (_digest(secret), salt, hashed, _stamp(until)),
        )
    return {"secret": secret, "code": code, "until": _iso(until)}


def pair(
    store: Store, now: datetime, secret: str = "", code: str = "", name: str = ""
) -> dict[str, str]:
    """Pairs a device by the secret of a link or a typed code: {device, token}.

    Raises NotPairedError. A pairing serves once. A wrong code counts against the codes of all that
    are open, since nobody can say which one was meant; their links hold on, which nobody guesses.
    """
    token = secrets.token_urlsafe(32)
    device = "k" + secrets.token_hex(8)
    typed = code.upper().translate(MISREAD)
    matches = _by_secret(secret) if secret != "" else _by_code(typed)
    with store.write() as db:
        open_ = rows(
            db,
            "select id, secret, salt, code from pairings where until > ? and (tries < ? or ?)",
            _stamp(now),
            TRIES,
            secret != "",
        )
        used = [ident for ident, *rest in open_ if matches(*rest)]
        if used:
            db.execute("delete from pairings where id = ?", (used[0],))
            db.execute(
                "insert into devices (id, name, token, made, seen) values (?, ?, ?, ?, ?)",
                (device, _name(name), _digest(token), _iso(now), _iso(now)),
            )
        elif secret == "":
            db.execute("update pairings set tries = tries + 1")
    if not used:
        raise NotPairedError(WRONG if open_ and secret == "" else OVER)
    return {"device": device, "token": token}


def by_token(store: Store, token: str, now: datetime) -> KnownDevice | None:
    """The device with this token: {id, name, revoked: "" or the time}; None where there is none."""
    digest = _digest(token)
    with store.read() as db:
        matches = rows(
            db, "select id, name, revoked, token, seen from devices where token = ?", digest
        )
    if not matches or not hmac.compare_digest(matches[0][3], digest):
        return None
    ident, name, revoked, _, seen = matches[0]
    if revoked == "" and abs(now - datetime.fromisoformat(seen)) >= SEEN:
        # a full disk must not keep anyone from reading
        with contextlib.suppress(DiskError), store.write() as db:
            db.execute("update devices set seen = ? where id = ?", (_iso(now), ident))
    return {"id": ident, "name": name, "revoked": revoked}


def all_devices(store: Store) -> list[dict[str, str]]:
    """Every device ever paired, the first one first: [{id, name, made, seen, revoked}]."""
    with store.read() as db:
        every = rows(db, "select id, name, made, seen, revoked from devices order by made, id")
    return [dict(zip(("id", "name", "made", "seen", "revoked"), row, strict=True)) for row in every]


def rename(store: Store, ident: str, name: str) -> None:
    """Gives a device another name. Raises UnknownDeviceError."""
    _change(store, "update devices set name = ? where id = ?", (_name(name), ident))


def revoke(store: Store, ident: str, now: datetime) -> None:
    """Shuts a device out: at its next contact it empties itself. Raises UnknownDeviceError."""
    _change(
        store,
        "update devices set revoked = case revoked when '' then ? else revoked end where id = ?",
        (_iso(now), ident),
    )


def union(db: apsw.Connection, others: list[tuple[Any, ...]]) -> None:
    """Within a transaction: adds the devices of a backup. One that was shut out stays so."""
    for ident, name, token, made, seen, revoked in others:
        db.execute(
            "insert or ignore into devices (id, name, token, made, seen, revoked) "
            "values (?, ?, ?, ?, ?, ?)",
            (ident, name, token, made, seen, revoked),
        )
        if revoked != "":
            db.execute(
                "update devices set revoked = ? where id = ? and revoked = ''", (revoked, ident)
            )


def _change(store: Store, sql: str, values: tuple[str, str]) -> None:
    with store.write() as db:
        db.execute(sql, (values[0], _plain(values[1])))
        if db.changes() == 0:
            raise UnknownDeviceError("There is no such device. Look at the list again.")


def _by_secret(secret: str) -> Callable[[bytes, bytes, bytes], bool]:
    digest = _digest(secret)
    return lambda kept, _salt, _code_: hmac.compare_digest(kept, digest)


def _by_code(code: str) -> Callable[[bytes, bytes, bytes], bool]:
    return lambda _secret, salt, kept: hmac.compare_digest(kept, _code(code, salt))


def _digest(secret: str) -> bytes:
    return hashlib.sha256(secret.encode("utf-8", "replace")).digest()


def _code(code: str, salt: bytes) -> bytes:
    plain = code.encode("utf-8", "replace")
    return hashlib.scrypt(plain, salt=salt, n=2**14, r=8, p=1, dklen=32)


def _name(name: str) -> str:
    return " ".join(_plain(name).split())[:NAME] or "A device"


def _plain(text: str) -> str:
    return text.encode("utf-8", "replace").decode()  # half a surrogate pair has no UTF-8


def _stamp(now: datetime) -> int:
    return int(now.timestamp())


def _iso(now: datetime) -> str:
    return now.astimezone(UTC).isoformat(timespec="seconds")
