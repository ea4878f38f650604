"""Whether what is kept is what was written: every operation and photo against its checksum.

Also what does not fit through the gate. `repair` puts such operations aside (nothing is deleted)
and gives the server a new epoch, by which every phone sends what it has: so what was damaged comes
back from where it is whole.
"""

import secrets
from collections.abc import Iterator

import apsw

from identify.keeping import files, photos
from identify.keeping.queries import rows, value
from identify.keeping.schema import is_written, misfit
from identify.keeping.store import Store
from identify.keeping.types import Verified, Wrong

NOT_WRITTEN = "It is not what was written: the disk has changed it."


def verify(store: Store) -> Verified:
    """What is wrong with what is kept."""
    with store.read() as db:
        said = [str(line) for (line,) in rows(db, "pragma integrity_check")]
        wrong = list(_wrong(db))
        operations = int(value(db, "select count(*) from ops"))
        aside = rows(db, "select id, content, why from aside")
    kept = photos.known(store)
    return {
        "operations": operations,
        "photos": len(kept),
        "wrong": wrong,
        "photos_wrong": [
            sha for sha in kept if photos.whole(photos.path_of(store, sha), sha) is None
        ],
        "aside": [{"id": ident, "content": text, "why": why} for ident, text, why in aside],
        "database": "" if said == ["ok"] else "; ".join(said[:3]),
    }


def damaged(db: apsw.Connection) -> int:
    """How many operations are not what was written."""
    kept = db.execute("select content, sum from ops")
    return sum(1 for content, checked_sum in kept if not is_written(content, checked_sum))


def repair(store: Store, verified: Verified) -> None:
    """Puts aside what `verify` found wrong, and asks every phone for what it has."""
    with store.write() as db:
        for change in verified["wrong"]:
            db.execute(
                "insert into aside select id, content, ? from ops where id = ?",
                (change["why"], change["id"]),
            )
            db.execute("delete from ops where id = ?", (change["id"],))
        for sha in verified["photos_wrong"]:
            db.execute("delete from photos where sha = ?", (sha,))
        db.execute("update meta set value = ? where name = 'epoch'", (secrets.token_hex(16),))
    for sha in verified["photos_wrong"]:
        path = photos.path_of(store, sha)
        if path.exists():
            files.move(path, store.folder / "damaged" / path.name)


def _wrong(db: apsw.Connection) -> Iterator[Wrong]:
    for ident, record, content, checked_sum in db.execute(
        "select id, record, content, sum from ops order by seq"
    ):
        why = misfit(str(content)) if is_written(content, checked_sum) else NOT_WRITTEN
        if why != "":
            yield {"id": str(ident), "record": str(record), "why": why}
