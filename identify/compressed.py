"""The files of the app as they go over the wire: made small once, not at every request.

Brotli is RFC 7932, gzip RFC 1952; both names as in the registry of content codings (RFC 9110, 8.4).
"""

import gzip

import brotli

ENDINGS = {"br": ".br", "gzip": ".gz"}  # what web servers look for beside a file
PACKED = (".html", ".js", ".css", ".json", ".webmanifest", ".svg")
LEAST = 500  # bytes: less is not worth it


def packs_well(name: str, content: bytes) -> bool:
    """Whether a file is text, and long enough to become smaller."""
    return name.endswith(PACKED) and len(content) >= LEAST


QUICK, BEST = 9, 11  # qualities of Brotli: a tenth of the time, a few parts in a hundred more bytes


def packed(content: bytes, coding: str, quality: int = BEST) -> bytes:
    """The same bytes in a content coding; the same for the same bytes."""
    if coding == "br":
        small: bytes = brotli.compress(content, quality=quality)
        return small
    return gzip.compress(content, 9, mtime=0)


def coding_for(accepted: str) -> str:
    """The smallest coding that a request accepts by its Accept-Encoding; "" for none."""
    offered = {}
    for part in accepted.lower().split(","):
        name, _, rest = part.strip().partition(";")
        offered[name.strip()] = rest.replace(" ", "") not in ("q=0", "q=0.0", "q=0.00", "q=0.000")
    return next((name for name in ENDINGS if offered.get(name, False)), "")
