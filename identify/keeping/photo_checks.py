"""Whether a photo may be kept: a JPEG of a size that can be decoded, with nothing else in it."""

import io
import warnings

from PIL import Image

from identify.exif import MoreError, NoJpegError, check_bare
from identify.keeping.troubles import RefusedError

MOST_PIXELS = 24_000_000
LARGE = f"A photo may have up to {MOST_PIXELS // 10**6} megapixels. Send a smaller one."
NO_PICTURE = "This is not a JPEG picture that can be read. Take the photo again."
MORE = (
    "This photo holds more than the picture, such as where or with what it was taken ({what}). "
    "The app draws every photo again, which leaves that out: add it in the app."
)


def check_picture(data: bytes) -> None:
    """Raises RefusedError unless this is a JPEG of at most 24 megapixels with only a picture."""
    try:
        check_bare(data)
    except NoJpegError:
        raise RefusedError(NO_PICTURE) from None
    except MoreError as more:
        raise RefusedError(MORE.format(what=more.what)) from None
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
            raise RefusedError(NO_PICTURE) from None
    if not small:
        raise RefusedError(LARGE)
