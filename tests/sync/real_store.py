"""The real server's storage for the model devices: SQLite files, backups of both sorts."""

import shutil
from datetime import UTC, datetime
from pathlib import Path
from typing import Any
from urllib.parse import urlencode

import orjson

from identify.keeping import backup, ops, restore
from identify.keeping.queries import rows
from identify.keeping.store import FILE, Store
from tests.keeping.store_contents import records
from tests.server.own_server import OwnServer

NIGHT = datetime(2024, 5, 1, 3, tzinfo=UTC)


class Kept:
    """A store in `folder`/server, its backups beside it."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.copies = 0
        self.open()

    def open(self) -> None:
        self.store = Store(self.folder / "server")

    def close(self) -> None:
        self.store.close()

    def pull(self, epoch: str, after: int, last: str, limit: int) -> dict[str, Any]:
        return through_json(ops.pull(self.store, epoch, after, last, limit))

    def push(self, sent: list[dict[str, Any]]) -> dict[str, Any]:
        return through_json(ops.push(self.store, through_json(sent)))

    def contents(self) -> list[dict[str, Any]]:
        """Every operation, as it is kept."""
        with self.store.read() as db:
            return [orjson.loads(one) for (one,) in rows(db, "select content from ops order by id")]

    def records(self) -> list[dict[str, Any]]:
        return records(self.store)

    def back_up(self) -> Path:
        """A backup by the server's own command."""
        folder = self.folder / "backups"
        return folder / backup.backup(self.store, folder, NIGHT)["name"]

    def restore(self, made: Path) -> None:
        """Merges a backup into the running store."""
        restore.restore(self.store, made)

    def begin_anew(self, made: Path) -> None:
        """The disk is lost: an empty folder, and the backup restored into it."""
        self.close()
        shutil.rmtree(self.folder / "server")
        self.open()
        self.restore(made)

    def copy_file(self) -> Path:
        """A copy of the database, as any tool for files would make one."""
        self.copies += 1
        target = self.folder / f"copy{self.copies}"
        self.store.copy(target)
        return target

    def put_back(self, copy: Path) -> None:
        """The copy in place of the database, under the same epoch."""
        self.close()
        shutil.rmtree(self.folder / "server")
        (self.folder / "server").mkdir()
        shutil.copy(copy, self.folder / "server" / FILE)
        self.open()


class Served(Kept):
    """The same behind real HTTP, with everything that a request goes through."""

    def open(self) -> None:
        self.server = OwnServer(self.folder / "server")
        self.store = self.server.store
        self.server.start()
        self.token = self.server.paired()

    def close(self) -> None:
        self.server.stop()

    def ask(self, method: str, path: str, value: Any = None) -> Any:
        self.server.times.pass_(seconds=10)
        if method == "GET":
            answer = self.server.ask("GET", path, token=self.token)
        else:
            answer = self.server.post(path, value, token=self.token)
        assert answer.status == 200, answer.body
        return answer.json

    def pull(self, epoch: str, after: int, last: str, limit: int) -> dict[str, Any]:
        query = urlencode({"epoch": epoch, "after": after, "last": last, "limit": limit})
        return dict(self.ask("GET", f"/api/pull?{query}"))

    def push(self, sent: list[dict[str, Any]]) -> dict[str, Any]:
        return dict(self.ask("POST", "/api/push", {"ops": sent}))


def through_json(value: Any) -> Any:
    """As it comes out at the other end of the line."""
    return orjson.loads(orjson.dumps(value))
