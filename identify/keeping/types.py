"""What the store says: of operations and photos to the devices, of backups to their owner."""

from typing import Literal, NotRequired, TypedDict

from identify.core.types.operations import Operation


class NotTaken(TypedDict):
    """Something sent that is no operation."""

    id: str  # as far as it has one
    why: str  # a sentence


class PushAnswer(TypedDict):
    """What became of operations that were sent."""

    epoch: str  # of the server's data
    held: list[str]  # ids: here, with this content
    forked: list[str]  # ids under which, or under a parent sent along, another content stands
    refused: list[NotTaken]


class PullAnswer(TypedDict):
    """Operations that came after a place of the server's order."""

    epoch: str
    from_start: bool  # that place is unknown here: this begins from the beginning
    ops: list[Operation]
    after: int  # where this ends
    last: str  # a digest of all up to there, so that it cannot fit a history that differs
    more: bool
    damaged: NotRequired[int]  # operations that are not what was written, and were left out


class MissingPhoto(TypedDict):
    """A photo that is not here yet."""

    sha: str
    have: int  # bytes that came


class Received(TypedDict):
    """How far a photo is here."""

    have: int  # bytes
    whole: bool  # on the disk for good


class KnownDevice(TypedDict):
    """A device that has a token."""

    id: str
    name: str
    revoked: str  # "", or the time


class KeptPhoto(TypedDict):
    """A photo of a backup."""

    sha: str
    size: int  # bytes


class Manifest(TypedDict):
    """manifest.json: what a backup says of itself."""

    kind: Literal["identify server backup"]
    format: Literal[1]
    made: str  # ISO 8601
    operations: int
    records: int
    photos: list[KeptPhoto]
    missing: list[str]  # SHA-256 of photos that could not be read and are in no earlier backup
    bytes: int  # with its photos


class BackupLine(TypedDict):
    """A backup in a list."""

    name: str
    made: str
    operations: int
    records: int
    photos: int
    bytes: int


class MadeBackup(BackupLine):
    """A backup that was just made."""

    missing: list[str]


class NightlyBackup(MadeBackup):
    """The backup of a night."""

    to_come: list[str]  # names of backups that bear a time to come


class Restored(TypedDict):
    """What a restore took in: counts of what was not here."""

    operations: int
    photos: int
    devices: int
    damaged: int  # operations of the backup that are not what was written, and were left out
    missing: list[str]  # SHA-256 of photos that are not in the backup


class Wrong(TypedDict):
    """An operation that is not what was written, or does not fit through the gate."""

    id: str
    record: str
    why: str  # a sentence


class Aside(TypedDict):
    """An operation that was put aside."""

    id: str
    content: str
    why: str


class Verified(TypedDict):
    """What a look at everything that is kept found."""

    operations: int  # how many were looked at
    photos: int
    wrong: list[Wrong]
    photos_wrong: list[str]  # SHA-256
    aside: list[Aside]  # set aside earlier
    database: str  # "", or what SQLite says of the file
