"""A pack from wherever it is kept: a pack folder, or a file that was compiled before."""

import hashlib
import re
from pathlib import Path

import msgspec

from identify.core.belief import prepare
from identify.core.types.engine import Engine
from identify.reference.compile import compile_pack
from identify.reference.compiled import CompiledPack, pack_bytes
from identify.reference.mistakes import Mistake, PackError

VERSION = re.compile(rb',"version":"[0-9a-f]{16}"\}\s*\Z')  # at the end of a compiled text


def load_pack(path: Path) -> CompiledPack:
    """The compiled pack of a folder, or in a file. Raises PackError with what is wrong with it."""
    if path.is_dir() or path.suffix != ".json":
        return compile_pack(path)
    try:
        data = path.read_bytes()
    except OSError as error:
        reason = (error.strerror or "no reason given").lower()
        raise _wrong(path, f"this file cannot be read: {reason}.") from error
    try:
        pack = msgspec.json.decode(data, type=CompiledPack)
    except (msgspec.MsgspecError, RecursionError, UnicodeDecodeError) as error:
        said = str(error).rstrip(".").lower()
        raise _wrong(path, f"this is not a range made here: {said}. Make it again.") from error
    bare = VERSION.sub(b"}", data)
    if pack.version != hashlib.sha256(bare).hexdigest()[:16]:
        what = "this was changed after it was made. Change its folder, and make it again."
        raise _wrong(path, what)
    return pack


def load_engine(path: Path) -> Engine:
    """What the functions of the core take, from the same JSON that the phone reads."""
    return prepare(msgspec.json.decode(pack_bytes(load_pack(path))))


def _wrong(path: Path, what: str) -> PackError:
    return PackError([Mistake(path.name, 0, "", what)])
