"""Photos in place of drawings: small, and with nothing in them but the picture."""

import base64
import io
from pathlib import Path

from PIL import Image, UnidentifiedImageError

from identify.exif import MoreError, NoJpegError, check_bare
from identify.reference.mistakes import Mistake

MOST_BYTES = 48 * 1024
LONGEST = 480  # pixels along the longer side
URL = "data:image/jpeg;base64,"


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
        check_bare(data)
    except MoreError:
        return (
            "this photo holds more than the picture, perhaps the place where it was taken. "
            "Save it without metadata, or take it in the app, which draws it again."
        )
    except (
        OSError, NoJpegError, UnidentifiedImageError, Image.DecompressionBombError, SyntaxError,
    ):  # fmt: skip
        return "this is not a whole JPEG photo. Save it as JPEG again."
    return ""


def as_url(data: bytes) -> str:
    """A photo as a data: URL."""
    return URL + base64.b64encode(data).decode()


def photo_url(path: Path, file: str) -> tuple[str, list[Mistake]]:
    """The photo as a data: URL, and what is wrong with it."""
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or "no reason given").lower()
        return "", [Mistake(file, 0, "", f"this file cannot be read: {reason}.")]
    wrong = photo_mistake(data)
    return as_url(data), [Mistake(file, 0, "", wrong)] if wrong else []
