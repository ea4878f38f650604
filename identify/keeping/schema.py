"""The tables, and how each earlier version of the file becomes the present one.

Only ever add a function at the end: files of every version are out there. tests/keeping/versions/
holds one file of each.
"""

import hashlib
import secrets
from collections.abc import Callable

import apsw
import orjson

from identify.core.gate import operation_fault
from identify.core.gate_words import fault_words
from identify.errors import UserError
from identify.keeping.queries import rows, value

# "idfy" in ASCII: tells this file from any other database (sqlite.org, pragma application_id)
APPLICATION = 0x69646679


def operations(db: apsw.Connection) -> None:
    """What the devices wrote, in the order in which it came."""
    db.execute(
        """
        create table meta (name text primary key, value text not null) strict;
        create table ops (
            seq integer primary key,
            id text not null unique,
            record text not null,
            content text not null,
            scrubbed integer not null default 0,
            gone integer not null default 0
        ) strict;
        create index ops_record on ops (record);
        """
    )
    db.execute("insert into meta values ('epoch', ?)", (secrets.token_hex(16),))


def devices(db: apsw.Connection) -> None:
    """Who may read and write, and who is about to."""
    db.execute(
        """
        create table devices (
            id text primary key,
            name text not null,
            token blob not null unique,
            made text not null,
            seen text not null,
            revoked text not null default ''
        ) strict;
        create table pairings (
            id integer primary key,
            secret blob not null unique,
            salt blob not null,
            code blob not null,
            until integer not null,
            tries integer not null default 0
        ) strict;
        """
    )


def photos(db: apsw.Connection) -> None:
    """Photos that are whole and checked; the bytes are files."""
    db.execute(
        """
        create table photos (
            sha text primary key,
            size integer not null,
            made text not null
        ) strict
        """
    )


def trails(db: apsw.Connection) -> None:
    """With each operation a digest of all up to it: two histories that differ differ in it."""
    db.execute("alter table ops add column trail text not null default ''")
    before = ""
    for seq, ident in rows(db, "select seq, id from ops order by seq"):
        before = next_trail(before, ident)
        db.execute("update ops set trail = ? where seq = ?", (before, seq))


def sums(db: apsw.Connection) -> None:
    """With each operation a checksum, and a place for what does not fit through the gate."""
    db.execute(
        """
        alter table ops add column sum text not null default '';
        create table aside (
            id text not null,
            content text not null,
            why text not null
        ) strict
        """
    )
    for seq, ident, content in rows(db, "select seq, id, content from ops order by seq"):
        why = misfit(content)
        if why == "":
            db.execute("update ops set sum = ? where seq = ?", (sum_of(content), seq))
        else:
            db.execute("insert into aside values (?, ?, ?)", (ident, content, why))
            db.execute("delete from ops where seq = ?", (seq,))


MIGRATIONS: tuple[Callable[[apsw.Connection], None], ...] = (
    operations, devices, photos, trails, sums,
)  # fmt: skip


def sum_of(content: str) -> str:
    """The checksum of an operation's text."""
    return hashlib.sha256(content.encode("utf-8", "surrogatepass")).hexdigest()


def is_written(content: object, checked_sum: object) -> bool:
    """Whether this is the text that was written; where the disk wrote over a page of the file,
    anything may stand there.
    """
    return isinstance(content, str) and sum_of(content) == checked_sum


def misfit(content: str) -> str:
    """Why a kept operation does not fit through the gate, in a sentence; "" where it does."""
    try:
        fault = operation_fault(orjson.loads(content), True)
    except orjson.JSONDecodeError:
        return "It cannot be read."
    return "" if fault is None else fault_words(fault)


def next_trail(before: str, content: str) -> str:
    """The digest after one more operation (its text, its id where it came before there were
    trails): 32 hexadecimal figures."""
    return hashlib.sha256(f"{before} {content}".encode()).hexdigest()[:32]


def check(db: apsw.Connection) -> None:
    """Raises UserError where a newer version or another program made the file. Changes nothing."""
    version = int(db.pragma("user_version"))
    tables = int(value(db, "select count(*) from sqlite_schema"))
    if int(db.pragma("application_id")) != APPLICATION and (version > 0 or tables > 0):
        raise UserError(
            "The database in this folder was made by another program. Name another folder; "
            "nothing was changed."
        )
    if version > len(MIGRATIONS):
        raise UserError(
            f"The kept data is of version {version}, and this program knows versions up to "
            f"{len(MIGRATIONS)}. Update the program; nothing was changed."
        )


def migrate(db: apsw.Connection) -> None:
    """Brings the file to the present version, one transaction a step."""
    while True:
        db.execute("begin immediate")
        try:
            version = int(db.pragma("user_version"))
            if version < len(MIGRATIONS):
                MIGRATIONS[version](db)
                db.pragma("user_version", version + 1)
                db.pragma("application_id", APPLICATION)
            db.execute("commit")
        except BaseException:
            if db.in_transaction:
                db.execute("rollback")
            raise
        if version >= len(MIGRATIONS) - 1:
            return
