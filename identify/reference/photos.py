"""Photos in place of drawings: small, and with nothing in them but the picture."""

import base64
import io
from pathlib import Path

from PIL import Image, UnidentifiedImageError

from identify.reference.mistakes import Mistake

MOST_BYTES = 48 * 1024
LONGEST = 480  # pixels along the longer side
URL = "data:image/jpeg;base64,"
# The segments that only say how the picture is coded; APP1 (place, camera) and comments are not.
FRAME = {0xC4, 0xDB, 0xDD, 0xDA, 0xC0, 0xC1, 0xC2, 0xE0}
START_OF_SCAN = 0xDA
PROFILE = 0xE2, b"ICC_PROFILE\0"  # what its colours mean (ICC.1:2022, annex B.4)


def _bare(data: bytes) -> bool:
    """Whether the file holds nothing beside the picture. By ITU-T T.81, annex B: segments up to
    the first scan, each a marker and a length of two bytes.
    """
    at = 2
    while at + 4 <= len(data) and data[at] == 0xFF:
        marker = data[at + 1]
        profile = marker == PROFILE[0] and data[at + 4 :].startswith(PROFILE[1])
        if marker not in FRAME and not profile:
            return False
        if marker == START_OF_SCAN:
            return data.rstrip(b"\0").endswith(b"\xff\xd9")
        at += 2 + int.from_bytes(data[at + 2 : at + 4], "big")
    return False


def photo_mistake(data: bytes) -> str:
    """What is wrong with a photo, with what would be right; "" for nothing."""
    if len(data) > MOST_BYTES:
        return f"this photo has {len(data) // 1024} KB. At most {MOST_BYTES // 1024} KB are taken."
    try:
        with Image.open(io.BytesIO(data), formats=["JPEG"]) as picture:
            width, height = picture.size
            if max(width, height) > LONGEST:
                return f"this photo is {width} by {height} pixels. At most {LONGEST} are taken."
            picture.load()
    except (OSError, UnidentifiedImageError, Image.DecompressionBombError, SyntaxError):
        return "this is no whole JPEG photo. Save it as JPEG again."
    if not _bare(data):
        return (
            "this photo holds more than the picture, perhaps the place where it was taken. "
            "Take it up in the editor, which draws it anew, or save it without metadata."
        )
    return ""


def as_url(data: bytes) -> str:
    """A photo as a data: URL."""
    return URL + base64.b64encode(data).decode()


def from_url(url: str) -> bytes:
    """The photo of a data: URL; nothing where it holds none."""
    try:
        return base64.b64decode(url.removeprefix(URL), validate=True)
    except ValueError:
        return b""


def photo_url(path: Path, file: str) -> tuple[str, list[Mistake]]:
    """The photo as a data: URL, and what is wrong with it."""
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or "no reason given").lower()
        return "", [Mistake(file, 0, "", f"this file cannot be read: {reason}.")]
    wrong = photo_mistake(data)
    return as_url(data), [Mistake(file, 0, "", wrong)] if wrong else []
