"""What is looked at in an XLSX file before it is opened: it is a zip archive of XML.

An archive of a few kilobytes can unpack to gigabytes; its directory says how much each part will
take, and Python's zipfile gives no part more than that.
"""

import io
import zipfile
import zlib

from identify.core.importing.file_kinds import CUT_WORKBOOK, no_workbook_in
from identify.exchange.table import FileError

MOST_PARTS = 2_000
MOST_UNPACKED = 150_000_000
MOST_TAGS = 8_000_000  # in all its XML: two million cells
MOST_RATIO = 300  # XML of a real sheet packs to a tenth, very even ones to a hundredth
SMALL = 5_000_000  # parts up to this size may pack as well as they like


def opened(data: bytes) -> zipfile.ZipFile:
    """The archive of a workbook that is safe to unpack. Raises FileError."""
    try:
        archive = zipfile.ZipFile(io.BytesIO(data))
    except (zipfile.BadZipFile, ValueError, OSError) as error:
        raise FileError(CUT_WORKBOOK) from error
    parts = archive.infolist()
    if len(parts) > MOST_PARTS:
        raise FileError(
            f"This file has {len(parts):,} parts inside, where a workbook has a few dozen. It was "
            "not opened. Copy the table into a new workbook."
        )
    unpacked = sum(part.file_size for part in parts)
    swollen = [
        part
        for part in parts
        if part.file_size > SMALL and part.file_size > MOST_RATIO * max(1, part.compress_size)
    ]
    if unpacked > MOST_UNPACKED or swollen:
        raise FileError(
            f"Unpacked, this file would take {unpacked // 1_000_000:,} MB. It was not opened. Copy "
            "the table into a new workbook, without empty rows and pictures."
        )
    names = {part.filename for part in parts}
    if any(part.flag_bits & 1 for part in parts):
        raise FileError("This file is locked with a password. Save it without one.")
    mimetype = archive.read("mimetype").decode("latin-1") if "mimetype" in names else ""
    wrong = no_workbook_in(sorted(names), mimetype)
    if wrong:
        raise FileError(wrong)
    if sum(_tags(archive, part) for part in parts) > MOST_TAGS:
        raise FileError(
            "This file has more cells than can be read, empty ones too. It was not opened. Copy "
            "the table alone into a new workbook."
        )
    return archive


def _tags(archive: zipfile.ZipFile, part: zipfile.ZipInfo) -> int:
    """How many tags a large part has: each takes memory, however little there is between them."""
    if part.file_size < SMALL or not part.filename.endswith((".xml", ".rels")):
        return 0
    count = 0
    try:
        with archive.open(part) as stream:
            while block := stream.read(1_000_000):
                count += block.count(b"<")
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError) as error:
        raise FileError(CUT_WORKBOOK) from error
    return count
