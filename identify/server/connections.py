"""How many connections there may be, and how long one may say nothing.

A caller has a share of the places, so that nobody can take all of them; whoever comes where there
is no place is let go at once, which costs no more than that. A connection has its place as long as
whole requests come: it is ended where the head of the next one is not here in time.
"""

import asyncio
import contextlib
import errno
import os
import socket
import time
import weakref
from collections import Counter
from collections.abc import Callable
from typing import Any

from uvicorn.protocols.http.h11_impl import H11Protocol

from identify.errors import UserError
from identify.server import limits
from identify.server.access import Notes
from identify.server.buckets import caller_of

TABLE_FULL = (errno.EMFILE, errno.ENFILE)
FULL_PAUSE = 0.01  # seconds


class Prompt(H11Protocol):
    """HTTP/1.1 as uvicorn speaks it, with an end to waiting for the head of a request."""

    _ending: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        super().connection_made(transport)
        self._wait()

    def data_received(self, data: bytes) -> None:
        super().data_received(data)
        if self.cycle is not None and not self.cycle.response_complete:
            self._go_on()

    def on_response_complete(self) -> None:
        super().on_response_complete()
        if not self.transport.is_closing():
            self._wait()

    def connection_lost(self, exc: Exception | None) -> None:
        self._go_on()
        super().connection_lost(exc)

    def _wait(self) -> None:
        self._go_on()
        self._ending = self.loop.call_later(limits.IDLE, self.transport.close)

    def _go_on(self) -> None:
        if self._ending is not None:
            self._ending.cancel()
            self._ending = None


class PromptLoop(asyncio.SelectorEventLoop):
    """The loop of the server: who opens a connection for https has so long to agree on it."""

    async def create_server(self, *given: Any, **more: Any) -> asyncio.Server:
        """As asyncio does it, which waits a minute."""
        if more.get("ssl") is not None:
            more["ssl_handshake_timeout"] = limits.IDLE
        return await super().create_server(*given, **more)


class _Connection(socket.socket):
    """A connection that says when it is closed."""

    def watch(self, closed: Callable[[], None]) -> None:
        self._ended = weakref.finalize(self, closed)

    def close(self) -> None:
        super().close()
        self._ended()


class Listener(socket.socket):
    """A socket that listens, and lets in so many at once, and so many of one caller."""

    places = limits.CONNECTIONS
    share = limits.SHARE

    def begin(self, notes: Notes, share: int) -> None:
        """Before the first one comes."""
        self.notes = notes
        self.share = share
        self.open: Counter[str] = Counter()
        self._spare: int | None = os.open(os.devnull, os.O_RDONLY)

    def accept(self) -> tuple[socket.socket, Any]:
        """The next one for whom there is a place."""
        while True:
            came, address = self._next()
            caller = caller_of({"client": address})
            if self.open[caller] < self.share and self.open.total() < self.places:
                break
            came.close()
            self.notes.add("refused: too many connections, %s", caller)
        connection = _Connection(fileno=came.detach())
        self.open[caller] += 1
        connection.watch(lambda: self._let_go(caller))
        return connection, address

    def _let_go(self, caller: str) -> None:
        self.open[caller] -= 1
        if self.open[caller] <= 0:
            del self.open[caller]

    def _next(self) -> tuple[socket.socket, Any]:
        """The next one that comes. Where no file can be opened any more it is let go of.

        Raises BlockingIOError, as a socket does where nobody comes, where not even that can be
        done: a thread has taken the spare file's place. asyncio would log any other error at
        length, each time.
        """
        try:
            return super().accept()
        except OSError as error:
            if error.errno not in TABLE_FULL:
                raise
        self.notes.add("refused: no more files can be opened, %s", "anyone")
        if self._spare is None:
            self._keep_spare()
        if self._spare is None:
            time.sleep(FULL_PAUSE)  # asked again at once, as they still wait
            raise BlockingIOError
        os.close(self._spare)
        self._spare = None
        try:
            came, _ = super().accept()
            came.close()
        except OSError as error:
            raise BlockingIOError from error
        finally:
            self._keep_spare()
        return self._next()

    def _keep_spare(self) -> None:
        """Takes a place in the table of files, to give it up for letting somebody go."""
        with contextlib.suppress(OSError):
            self._spare = os.open(os.devnull, os.O_RDONLY)

    def close(self) -> None:
        """No more come."""
        super().close()
        if self._spare is not None:
            os.close(self._spare)
            self._spare = None


def listen(host: str, port: int, notes: Notes, share: int) -> list[socket.socket]:
    """Sockets that listen on every address of this name. Raises UserError."""
    made: list[socket.socket] = []
    try:
        addresses = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM, flags=socket.AI_PASSIVE)
        for family, kind, protocol, _, address in dict.fromkeys(addresses):
            listener = Listener(family, kind, protocol)
            listener.begin(notes, share)
            made.append(listener)
            listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
            if family == socket.AF_INET6:
                listener.setsockopt(socket.IPPROTO_IPV6, socket.IPV6_V6ONLY, 1)
            listener.bind(address)
    except OSError as error:
        for opened in made:
            opened.close()
        raise cannot_listen(host, port, error) from None
    return made


def one_listener(host: str, port: int) -> socket.socket:
    """A socket that listens on this address, for this machine's own use. Raises UserError."""
    listener = socket.socket(socket.AF_INET6 if ":" in host else socket.AF_INET)
    listener.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        listener.bind((host, port))
        listener.listen()
    except OSError as error:
        listener.close()
        raise cannot_listen(host, port, error) from None
    return listener


def cannot_listen(host: str, port: int, error: OSError) -> UserError:
    """What is wrong with the address to listen on, and what would be right."""
    if isinstance(error, socket.gaierror) or error.errno == errno.EADDRNOTAVAIL:
        return UserError(
            f"{host} is not an address of this machine. Name one that is (--host), or leave it out "
            "for this machine only."
        )
    return UserError(
        f"The server cannot listen on {host}, port {port}: {(error.strerror or '').lower()}. "
        "Another program may use it: name another one (--port), or end that program."
    )
