"""Operations and pictures for tests of what the server keeps."""

import hashlib
import io
from random import Random
from typing import Any

from PIL import Image

DEVICES = tuple("d" + letter * 16 for letter in "abcde")


class Writer:
    """A device that writes operations; every one knows all that came before on its record."""

    def __init__(self, chance: Random) -> None:
        self.chance = chance
        self.count = dict.fromkeys(DEVICES, 0)
        self.heads: dict[str, list[str]] = {}
        self.clock = 1_700_000_000_000

    def operation(
        self, record: str, fields: dict[str, Any], kind: str = "piece", **more: Any
    ) -> dict[str, Any]:
        """The next operation on a record."""
        device = self.chance.choice(DEVICES)
        self.count[device] += 1
        self.clock += self.chance.randint(1, 10_000)
        ident = f"{device}.{self.count[device]}"
        one = {
            "id": ident,
            "record": record,
            "type": kind,
            "parents": self.heads.get(record, []),
            "wall": self.clock,
            "count": 0,
            "time": "2026-05-01T10:00:00.000Z",
            "group": f"g{ident}",
            "what": "Changed",
            "undoes": "",
            "fields": fields,
            **more,
        }
        self.heads[record] = [ident]
        return one


def picture(seed: int, side: int = 12) -> bytes:
    """A small JPEG, another one for every seed."""
    chance = Random(seed)
    image = Image.frombytes("RGB", (side, side), chance.randbytes(side * side * 3))
    out = io.BytesIO()
    image.save(out, "JPEG", quality=60)
    return out.getvalue()


def sha(data: bytes) -> str:
    """How a photo is called."""
    return hashlib.sha256(data).hexdigest()
