"""Pack folder -> compiled pack."""

from pathlib import Path

import msgspec

from identify.core.ranges.compiling import compiled_range
from identify.reference.check import checked_pack
from identify.reference.compiled import CompiledPack, pack_bytes, pack_schema, version_of
from identify.reference.marks_to_merge import marks_to_merge
from identify.reference.mistakes import PackError

__all__ = ["PackError", "compile_pack", "pack_bytes", "pack_schema"]


def compile_pack(folder: Path) -> CompiledPack:
    """The compiled pack of a folder. Raises PackError with every mistake in it."""
    checked = checked_pack(folder)
    if checked.mistakes:
        raise PackError(checked.mistakes)
    pack = compiled_range(checked.rows, checked.first, checked.last, marks_to_merge())
    result = msgspec.convert(pack, CompiledPack)
    result.version = version_of(result)
    return result
