"""What can go wrong while keeping, told in sentences."""

import errno
from collections.abc import Iterator
from contextlib import contextmanager

import apsw

from identify.told import Told

FULL = (
    "The disk of the server is full: this was not saved. Make room there and try again; "
    "the phone keeps it until then."
)
UNREADABLE = (
    "The disk of the server could not be read or written: this was not saved. Look after the disk "
    "and try again; the phone keeps it until then."
)
NOT_ALLOWED = (
    "The server may not write where its data is kept: this was not saved. Give the folder to the "
    "user that runs the server, and try again; the phone keeps it until then."
)
BUSY = "Another program is using the kept data. Wait until it is done, then try again."
DAMAGED = (
    "The kept data is damaged. Stop the server, put the folder aside (do not delete it), and "
    "restore the newest backup into a new one; then let every phone sync."
)

DAMAGED_BACKUP = "This backup is damaged. Nothing was changed; take the one before it."

SENTENCES = {errno.ENOSPC: FULL, errno.EDQUOT: FULL}
SENTENCES |= dict.fromkeys((errno.EACCES, errno.EPERM, errno.EROFS), NOT_ALLOWED)


class Refused(Told):
    """What was sent cannot be kept; the sentence says what would be right."""


class DiskTrouble(Told):
    """Nothing of this was saved; it can be tried again once the disk is well."""


class Damaged(Told):
    """The database cannot be read any more."""


@contextmanager
def told() -> Iterator[None]:
    """Turns errors of SQLite and of files into DiskTrouble or Damaged, without what was kept."""
    try:
        yield
    except apsw.FullError:
        raise DiskTrouble(FULL) from None
    except (apsw.BusyError, apsw.LockedError):
        raise DiskTrouble(BUSY) from None
    except (apsw.CorruptError, apsw.NotADBError):
        raise Damaged(DAMAGED) from None
    except (apsw.ReadOnlyError, apsw.PermissionsError):
        raise DiskTrouble(NOT_ALLOWED) from None
    except apsw.Error:
        raise DiskTrouble(UNREADABLE) from None
    except OSError as error:
        raise DiskTrouble(SENTENCES.get(error.errno or 0, UNREADABLE)) from None
