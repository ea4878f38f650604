"""Spreadsheets that were sent up, kept for as long as they are being brought in.

In memory only, for the device that sent them, UPLOAD_SECONDS after they were last asked for, and
together no more than UPLOADS_BYTES: the one that was longest not asked for goes first. What is gone
is sent anew.
"""

import secrets
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass, field
from threading import Lock

import orjson
from starlette.exceptions import HTTPException

from identify.exchange.table import FileError
from identify.exchange.types import CellsRow
from identify.server.limits import UPLOAD_SECONDS, UPLOADS_BYTES

GONE = "The server no longer has this file. Choose it again."


@dataclass
class Upload:
    """A file as it was sent, and the rows read from it, each as JSON."""

    owner: str
    body: bytes
    rows: list[bytes]
    used: float

    @property
    def size(self) -> int:
        """Its bytes in memory, about."""
        return len(self.body) + sum(map(len, self.rows))


@dataclass
class Uploads:
    """The uploads of all devices. clock: seconds."""

    clock: Callable[[], float] = time.monotonic
    kept: dict[str, Upload] = field(default_factory=dict)
    lock: Lock = field(default_factory=Lock)

    def keep(self, owner: str, body: bytes, rows: Sequence[CellsRow], name: str = "") -> str:
        """Keeps a file with its rows, in place of the upload of that name; gives its name.

        Raises FileError where it is larger than all that is kept may be.
        """
        upload = Upload(owner, body, [orjson.dumps(row) for row in rows], self.clock())
        if upload.size > UPLOADS_BYTES:
            raise FileError(
                f"This table is larger than {UPLOADS_BYTES // 1_000_000} MB once it is read. "
                "Split it into several files."
            )
        with self.lock:
            self.kept.pop(name, None)
            self._expire()
            room = UPLOADS_BYTES - upload.size
            while sum(upload.size for upload in self.kept.values()) > room:
                del self.kept[min(self.kept, key=lambda each: self.kept[each].used)]
            name = name or secrets.token_urlsafe(16)
            self.kept[name] = upload
        return name

    def body(self, owner: str, name: str) -> bytes:
        """The file. Raises HTTPException."""
        return self._found(owner, name).body

    def rows(self, owner: str, name: str, first: int = 0, count: int = -1) -> list[CellsRow]:
        """Its rows, or so many from a place on. Raises HTTPException."""
        rows = self._found(owner, name).rows
        return [orjson.loads(row) for row in rows[first : None if count < 0 else first + count]]

    def expire(self) -> None:
        """Drops what was not asked for in a long time."""
        with self.lock:
            self._expire()

    def _expire(self) -> None:
        least = self.clock() - UPLOAD_SECONDS
        for name in [name for name, upload in self.kept.items() if upload.used <= least]:
            del self.kept[name]

    def _found(self, owner: str, name: str) -> Upload:
        with self.lock:
            self._expire()
            upload = self.kept.get(name)
            if upload is None or upload.owner != owner:
                raise HTTPException(410, GONE)
            upload.used = self.clock()
            return upload
