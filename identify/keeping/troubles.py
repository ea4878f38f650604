"""What can go wrong while keeping, in sentences."""

import errno
from collections.abc import Iterator
from contextlib import contextmanager

import apsw

from identify.errors import UserError

FULL = (
    "The disk of the server is full: this was not saved. Make space there and try again; "
    "the phone keeps it until then."
)
UNREADABLE = (
    "The disk of the server could not be read or written: this was not saved. Check the disk "
    "and try again; the phone keeps it until then."
)
NOT_ALLOWED = (
    "The server may not write where its data is kept: this was not saved. Give the folder to the "
    "user that runs the server, and try again; the phone keeps it until then."
)
BUSY = "Another program is using the kept data. Wait until it is done, then try again."
DAMAGED = (
    "The kept data is damaged. Stop the server, set the folder aside (do not delete it), and "
    "restore the newest backup into a new one; then let every phone sync."
)

DAMAGED_BACKUP = "This backup is damaged. Nothing was changed; take the one before it."

SENTENCES = {errno.ENOSPC: FULL, errno.EDQUOT: FULL}
SENTENCES |= dict.fromkeys((errno.EACCES, errno.EPERM, errno.EROFS), NOT_ALLOWED)


class RefusedError(UserError):
    """What was sent cannot be kept; the sentence says what would be right."""


class DiskError(UserError):
    """Nothing of this was saved; it can be tried again once the disk is well."""


class DamagedError(UserError):
    """The database cannot be read any more."""


@contextmanager
def disk_troubles() -> Iterator[None]:
    """Turns errors of SQLite and of files into DiskError or DamagedError, without what was kept."""
    try:
        yield
    except apsw.FullError:
        raise DiskError(FULL) from None
    except (apsw.BusyError, apsw.LockedError):
        raise DiskError(BUSY) from None
    except (apsw.CorruptError, apsw.NotADBError):
        raise DamagedError(DAMAGED) from None
    except (apsw.ReadOnlyError, apsw.PermissionsError):
        raise DiskError(NOT_ALLOWED) from None
    except apsw.Error:
        raise DiskError(UNREADABLE) from None
    except OSError as error:
        raise DiskError(SENTENCES.get(error.errno or 0, UNREADABLE)) from None
