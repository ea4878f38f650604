"""The certificate the running server shows: renewed before it ends, read again when it changes.

A context that is already in use takes a new certificate for every connection that comes after
(OpenSSL, SSL_CTX_use_certificate), so neither asks for a new start.
"""

import ssl
from datetime import UTC, datetime, timedelta
from pathlib import Path

from identify.errors import UserError
from identify.server import authority
from identify.server.hosts import checked

# TLS 1.2 and 1.3 with forward secrecy and authenticated encryption only (RFC 9325, 4.2)
CIPHERS = "ECDHE+AESGCM:ECDHE+CHACHA20"
RENEWED = timedelta(days=authority.RENEW_DAYS)


class Tls:
    """A certificate and its key on the disk, and what shows them to callers.

    own: the folder of the authority that made them, which can renew them; None for files that come
    from elsewhere. Raises UserError where the files are no pair, OSError where one is not there.
    """

    def __init__(self, certificate: Path, key: Path, own: Path | None) -> None:
        self.certificate, self.key, self.own = certificate, key, own
        self.seen = self._stamp()
        self.until()  # says more plainly what is wrong with a file that is no certificate at all
        self.context = self._context()

    def until(self) -> datetime:
        """Until when the certificate on the disk holds. Raises UserError."""
        return authority.until(self.certificate)

    def authority_until(self) -> datetime | None:
        """Until when the authority lasts that made it, None for files from elsewhere."""
        return None if self.own is None else authority.authority_until(self.own)

    def _is_due(self, now: datetime) -> bool:
        """Whether its end is near, and one made now would last longer."""
        most = self.authority_until()
        until = self.until()
        soon = until - now.astimezone(UTC) < RENEWED
        return soon and most is not None and most - until > timedelta(days=1)

    def refresh(self, now: datetime) -> str:
        """Renews and reads again what has to be; what was done, or "". Raises UserError.

        Where the new files are no pair (one may just be written), the old ones stay in use, and
        the next call tries again.
        """
        done = ""
        if self.own is not None and self._is_due(now):
            names = authority.names_in(self.certificate)
            made = authority.make(self.own, checked(names), now)
            done = f"the certificate was renewed, and is good until {made.until:%Y-%m-%d}"
        try:
            stamp = self._stamp()
        except OSError as error:
            raise UserError(f"{error.filename} is not there any more. Put it back.") from None
        if stamp != self.seen:
            self._context()  # on trial: a live context must not be left with half a pair
            self.context.load_cert_chain(self.certificate, self.key)
            self.seen = stamp
            done = done or f"another certificate was read, good until {self.until():%Y-%m-%d}"
        return done

    def _context(self) -> ssl.SSLContext:
        context = ssl.SSLContext(ssl.PROTOCOL_TLS_SERVER)
        context.minimum_version = ssl.TLSVersion.TLSv1_2
        context.set_ciphers(CIPHERS)
        try:
            context.load_cert_chain(self.certificate, self.key)
        except (OSError, ssl.SSLError):
            raise UserError(
                f"{self.certificate} and {self.key} are not a certificate with its key. Give a "
                "pair that belongs together, in PEM form."
            ) from None
        return context

    def _stamp(self) -> tuple[tuple[int, int, int], ...]:
        """What changes when the files do. Raises OSError."""
        states = [path.stat() for path in (self.certificate, self.key)]
        return tuple((state.st_mtime_ns, state.st_size, state.st_ino) for state in states)
