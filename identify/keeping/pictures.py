"""Whether some bytes are a JPEG and nothing more: no position, no camera, nothing behind its end.

Markers as in ITU-T T.81 (1992), annex B; what an application may put in is let through by a list.
"""

import io
import struct
import warnings

from PIL import Image

from identify.keeping.troubles import Refused

MOST_PIXELS = 24_000_000
LARGE = f"A photo may have up to {MOST_PIXELS // 10**6} megapixels. Send a smaller one."
NO_PICTURE = "This is not a JPEG picture that can be read. Take the photo again."
MORE = (
    "This photo holds more than the picture, such as where or with what it was taken ({what}). "
    "The app draws every photo anew, which leaves that out: add it in the app."
)

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


def check_picture(data: bytes) -> None:
    """Raises Refused unless these are a JPEG of at most 24 megapixels that holds only a picture."""
    _walk(data)
    with warnings.catch_warnings():
        warnings.simplefilter("error", Image.DecompressionBombWarning)
        try:
            with Image.open(io.BytesIO(data), formats=("JPEG",)) as picture:
                width, height = picture.size
                small = width * height <= MOST_PIXELS
                if small:
                    picture.draft("RGB", (width // 8, height // 8))  # an eighth: little memory
                    picture.load()
        except (Image.DecompressionBombError, Image.DecompressionBombWarning):
            small = False
        except Exception:
            raise Refused(NO_PICTURE) from None
    if not small:
        raise Refused(LARGE)


def _walk(data: bytes) -> None:
    """Every segment up to the end of the picture, which must be the end of the file."""
    if data[:2] != bytes((0xFF, SOI)):
        raise Refused(NO_PICTURE)
    at = 2
    while True:
        if at + 2 > len(data) or data[at] != 0xFF:
            raise Refused(NO_PICTURE)
        marker = data[at + 1]
        if marker == 0xFF:  # filling
            at += 1
            continue
        if marker == EOI:
            break
        if marker < 0xC0 or 0xD0 <= marker <= SOI or at + 4 > len(data):
            raise Refused(NO_PICTURE)
        (length,) = struct.unpack_from(">H", data, at + 2)
        if length < 2 or at + 2 + length > len(data):
            raise Refused(NO_PICTURE)
        _allowed(marker, data[at + 4 : at + 2 + length])
        at += 2 + length
        if marker == SOS:
            at = _past_scan(data, at)
    if at + 2 != len(data):
        raise Refused(MORE.format(what="something behind the end of the picture"))


def _past_scan(data: bytes, at: int) -> int:
    """Where the next marker stands behind coded data: FF00 is data, FFD0 to FFD7 restart it."""
    while True:
        at = data.find(b"\xff", at)
        if at < 0 or at + 1 >= len(data):
            raise Refused(NO_PICTURE)
        if data[at + 1] != 0 and not 0xD0 <= data[at + 1] <= 0xD7:
            return at
        at += 2


def _allowed(marker: int, body: bytes) -> None:
    if marker == COM:
        raise Refused(MORE.format(what="a comment"))
    if marker < APP0 or marker > APP15:
        return
    if (
        (marker == APP0 and body.startswith((b"JFIF\0", b"JFXX\0")))
        or (marker == APP2 and body.startswith(b"ICC_PROFILE\0"))
        or (marker == APP14 and body.startswith(b"Adobe"))
    ):
        return
    if marker == APP1 and body.startswith(b"Exif\0\0"):
        if not _bare_exif(body):
            raise Refused(MORE.format(what="EXIF"))
    elif marker == APP13 and body.startswith(b"Photoshop 3.0\0"):
        if not _empty_captions(body[14:]):
            raise Refused(MORE.format(what="IPTC"))
    else:
        what = "XMP" if marker == APP1 else f"a block APP{marker - APP0}"
        raise Refused(MORE.format(what=what))


def _bare_exif(body: bytes) -> bool:
    if len(body) > SHORT:
        return False
    found = Image.Exif()
    try:
        found.load(body)
        return set(found) | set(found.get_ifd(EXIF_PART)) <= HARMLESS
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
