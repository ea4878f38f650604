"""Whether some bytes are a JPEG and nothing more: no position, no camera, nothing behind its end.

The phone leaves EXIF out (web/data/photos.js draws a photo anew); this is for refusing the rest.

Markers as in ITU-T T.81 (1992), annex B; what an application may put in is let through by a list.
"""

import struct

from PIL import Image

# Some browsers write a short EXIF block with nothing but these in what a page draws (from memory):
# orientation, resolution, position of the colour samples, versions, colour space, width, height.
HARMLESS = {0x0112, 0x011A, 0x011B, 0x0128, 0x0213, 0x8769}
HARMLESS |= {0x9000, 0x9101, 0xA000, 0xA001, 0xA002, 0xA003}
EXIF_PART = 0x8769
# and an empty block of captions (IPTC) with its digest
EMPTY_CAPTIONS = {0x0404: 0, 0x0425: 16}
SHORT = 256

SOI, EOI, SOS, COM = 0xD8, 0xD9, 0xDA, 0xFE
APP0, APP1, APP2, APP13, APP14, APP15 = 0xE0, 0xE1, 0xE2, 0xED, 0xEE, 0xEF


class NoJpegError(ValueError):
    """These bytes are no JPEG, or not all of one."""


class MoreError(ValueError):
    """The file holds more than the picture; `what` names it for a sentence."""

    def __init__(self, what: str) -> None:
        super().__init__(what)
        self.what = what


def check_bare(data: bytes) -> None:
    """Every segment up to the end of the picture, which must be the end of the file.

    Raises NoJpegError or MoreError. What the coded picture is worth, only decoding tells.
    """
    if data[:2] != bytes((0xFF, SOI)):
        raise NoJpegError
    at = 2
    while True:
        if at + 2 > len(data) or data[at] != 0xFF:
            raise NoJpegError
        marker = data[at + 1]
        if marker == 0xFF:  # filling
            at += 1
            continue
        if marker == EOI:
            break
        if marker < 0xC0 or 0xD0 <= marker <= SOI or at + 4 > len(data):
            raise NoJpegError
        (length,) = struct.unpack_from(">H", data, at + 2)
        if length < 2 or at + 2 + length > len(data):
            raise NoJpegError
        _allowed(marker, data[at + 4 : at + 2 + length])
        at += 2 + length
        if marker == SOS:
            at = _past_scan(data, at)
    if at + 2 != len(data):
        raise MoreError("something behind the end of the picture")


def _past_scan(data: bytes, at: int) -> int:
    """Where the next marker stands behind coded data: FF00 is data, FFD0 to FFD7 restart it."""
    while True:
        at = data.find(b"\xff", at)
        if at < 0 or at + 1 >= len(data):
            raise NoJpegError
        if data[at + 1] != 0 and not 0xD0 <= data[at + 1] <= 0xD7:
            return at
        at += 2


def _allowed(marker: int, body: bytes) -> None:
    if marker == COM:
        raise MoreError("a comment")
    if marker < APP0 or marker > APP15:
        return
    if (
        (marker == APP0 and body.startswith((b"JFIF\0", b"JFXX\0")))
        or (marker == APP2 and body.startswith(b"ICC_PROFILE\0"))  # ICC.1:2022, annex B.4
        or (marker == APP14 and body.startswith(b"Adobe"))
    ):
        return
    if marker == APP1 and body.startswith(b"Exif\0\0"):
        if not _bare_exif(body):
            raise MoreError("EXIF")
    elif marker == APP13 and body.startswith(b"Photoshop 3.0\0"):
        if not _empty_captions(body[14:]):
            raise MoreError("IPTC")
    else:
        raise MoreError("XMP" if marker == APP1 else f"a block APP{marker - APP0}")


def _bare_exif(body: bytes) -> bool:
    if len(body) > SHORT:
        return False
    tags = Image.Exif()
    try:
        tags.load(body)
        return set(tags) | set(tags.get_ifd(EXIF_PART)) <= HARMLESS
    except Exception:
        return False


def _empty_captions(blocks: bytes) -> bool:
    """Blocks "8BIM", number, empty name, length (common practice, no source)."""
    head = struct.Struct(">4sHHI")
    while blocks:
        if len(blocks) < head.size:
            return False
        sign, number, name, length = head.unpack_from(blocks)
        if sign != b"8BIM" or name != 0 or EMPTY_CAPTIONS.get(number) != length:
            return False
        blocks = blocks[head.size + length :]
    return True
