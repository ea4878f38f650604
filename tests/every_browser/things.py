"""Files as they come from a camera or another app."""

from pathlib import Path

from tests.browser.phone_storage import JPEG, exif
from tests.every_browser.driven import Phone

# how a HEIC file begins (ISO/IEC 23008-12): the box "ftyp" with its brands; no browser shows it
HEIC = b"\0\0\0\x18ftypheic\0\0\0\0mif1heic" + bytes(200)


def jpeg(folder: Path, phone: Phone, width: int = 200, height: int = 300) -> Path:
    """A JPEG as a camera would write it: with the place, the time, and held sideways."""
    plain = bytes(phone.run_later(f"({JPEG.strip()})(arguments[0])", [width, height, False]))
    path = folder / "photo.jpg"
    path.write_bytes(plain[:2] + exif() + plain[2:])
    return path
