"""How much the server takes, every figure in one place: requests in a time, bytes, seconds.

buckets.py counts the requests, bodies.py the bytes of a request and the seconds between them. What
one change and one photo may weigh stands where they are kept (keeping/ops.py, photos.py,
photo_checks.py).
"""

from typing import NamedTuple

from identify.keeping.photos import CHUNK
from identify.keeping.proposals import MOST_BYTES as PROPOSAL_BYTES


class Rate(NamedTuple):
    """So many requests at once, then so many more each second."""

    at_once: int
    each_second: float


# Requests: of an address without a paired device, of one that pairs, of a paired device, and of a
# paired device for what takes long (backups, pairings begun).
STRANGERS = Rate(60, 1)
PAIRING = Rate(10, 1 / 20)
DEVICE = Rate(3000, 100)
COSTLY = Rate(5, 1 / 60)
PROPOSING = Rate(10, 1 / 600)  # of one follower of a range
LOG_LINES = Rate(5, 1 / 60)  # about one caller
MOST_CALLERS = 10_000  # that are remembered at once

# Connections
CONNECTIONS = 256
SHARE = 64  # of one address (IPv6: each /64)
IDLE = 15  # seconds until the head of a request is here: the first one, and each one after
SILENT = 30  # seconds without a byte of the body

# Bytes of a body
PUSH_BYTES = 2_000_000
USUAL_BYTES = 64 * 1024
LET_BY = 8_000_000  # bytes too many that are let go by, so that who sends them hears why

# What is in a body
PUSHED = 500  # operations
PULLED = 500
SHAS = 500  # photos asked after
TEXT = 200  # characters of a name or a code
ASKED = 100  # characters behind the question mark, of one name
TOKEN = 100  # characters
MOST_GROUPS, MOST_VALUES = 300_000, 1_500_000  # {} or [] may take 250 bytes, a text 60

# At work at once
STORE_THREADS = 4  # the store lets one in at a time; the others only hold their memory


def most_bytes(path: str) -> int:
    """How long a body may be for this path."""
    if path == "/api/proposals":
        return PROPOSAL_BYTES
    if path == "/api/push":
        return PUSH_BYTES
    if path.startswith("/api/photos/") and path != "/api/photos/missing":
        return CHUNK
    return USUAL_BYTES
