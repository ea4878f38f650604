"""A lifetime's collection made by chance, as a backup file that the app restores.

`python -m tests.bench.made_collection PIECES -o FILE`: pieces of the demo ranges, and for each of
them a quarter of a want and of a note, two entries of the journal, and photos of three in twenty.
Every share is chosen, none is measured. Nothing in it exists; one seed gives one file, to the byte.
"""

import argparse
import base64
import io
import random
import sys
from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from pathlib import Path
from typing import Any

import orjson
from PIL import Image

from identify import phone
from identify.core.shapes import new_fields
from identify.exchange.backups import backup_bytes
from identify.lab.commands import counted
from identify.reference.compile import compile_pack
from identify.reference.compiled import CompiledPack

FIRST = datetime(1986, 3, 1, 9, tzinfo=UTC)
YEARS = 40
CONDITIONS = ("", "as new", "excellent", "very good", "good", "good", "fair", "poor")
HALLS = ("Corrick Corn Exchange", "Harrowdale Institute", "Maddenport Station Rooms")
NOTES = ("", "", "The lid has a crease at one corner.", "One lamp is missing.",
         "From the shelf above the workbench.", "Runs, with new brushes.")  # fmt: skip
OUTSIDE = 0.03  # of pieces and wants that are in no range
UNCERTAIN = 0.05  # of pieces that may be one of two variants
KEPT = 0.5  # of duplicates kept on purpose
PHOTOS = 0.15  # of pieces with a photo
FULL, SMALL = (640, 480), (160, 120)

Record = dict[str, Any]


class Maker:
    """Draws records; what it has drawn stands in `records`, `journal` and `photos`."""

    def __init__(self, packs: Sequence[CompiledPack], seed: int) -> None:
        self.packs = packs
        self.draw = random.Random(seed)
        self.now = FIRST
        self.records: list[Record] = []
        self.journal: list[Record] = []
        self.photos: list[Record] = []

    def ident(self, letter: str) -> str:
        """A letter, and figures by chance."""
        return f"{letter}{self.draw.getrandbits(64):016x}"

    def made(self, kind: str, at: datetime, **fields: Any) -> Record:
        """A new record, and the entry that tells of it."""
        usual = orjson.loads(orjson.dumps(dict(new_fields(kind))))
        record: Record = {"id": self.ident("r"), "type": kind, "trashed": ""} | usual | fields
        record["made"] = record["changed"] = told(at)
        self.records.append(record)
        self.entry(record, at, "Added", None, dict(record))
        return record

    def entry(
        self, record: Record, at: datetime, what: str, before: Record | None, after: Record
    ) -> None:
        """An entry of the journal."""
        self.journal.append(
            {
                "time": told(at), "record": record["id"], "type": record["type"],
                "undoes": "", "side": False, "group": self.ident("g"), "what": what,
                "before": before, "after": after,
            }
        )  # fmt: skip

    def edited(self, record: Record, at: datetime, field: str, value: Any) -> None:
        """A change of one field."""
        before = {field: record[field]}
        record |= {field: value, "changed": told(at)}
        self.entry(record, at, "Notes changed", before, {field: value})

    def of_a_range(self) -> tuple[Record, list[str]]:
        """What says which item of which range a record is about, and the item's variants."""
        if self.draw.random() < OUTSIDE:
            return {"called": f"Unmarked van {self.draw.randrange(1000)}"}, []
        pack = self.draw.choice(self.packs)
        item = self.draw.randrange(len(pack.items))
        variants = [one.id for one in pack.variants if one.item == item]
        return {"pack": pack.id, "item": pack.items[item].number}, variants

    def money(self) -> Record:
        """A price in pounds."""
        pence = 50 * self.draw.randrange(4, 500)
        return {"minor": pence, "over": 0, "currency": "GBP", "typed": f"£{pence / 100:.2f}"}

    def piece(self, at: datetime) -> None:
        """A piece with its history, and sometimes its photo."""
        draw = self.draw
        what, variants = self.of_a_range()
        several = len(variants) > 1 and draw.random() < UNCERTAIN
        some = draw.sample(variants, 2 if several else 1) if variants else []
        chances = (0.8, 0.2) if several else (1.0,)
        boxed = draw.choice(("", "yes", "no", "no"))
        photos = [self.photo()] if draw.random() < PHOTOS else []
        record = self.made(
            "piece",
            at,
            **what,
            of=[{"variant": v, "chance": c} for v, c in zip(some, chances, strict=False)],
            condition=draw.choice(CONDITIONS),
            boxed=boxed,
            box_condition=draw.choice(CONDITIONS) if boxed == "yes" else "",
            paid=self.money() if draw.random() < 0.7 else None,
            where=draw.choice(HALLS),
            when=f"{at:%Y-%m}",
            photos=photos,
            kept=draw.random() < KEPT,
            purpose="spare" if draw.random() < 0.02 else "",
        )
        self.edited(record, at + timedelta(hours=5), "notes", draw.choice(NOTES))

    def want(self, at: datetime) -> None:
        """Something that is looked for."""
        what, variants = self.of_a_range()
        variant = self.draw.choice([*variants, ""])
        urgency = self.draw.randint(1, 3)
        most = self.money() if self.draw.random() < 0.5 else None
        self.made("want", at, **what, variant=variant, urgency=urgency, most=most)

    def note(self, at: datetime) -> None:
        """A piece that was looked at, and left or bought."""
        what, variants = self.of_a_range()
        some = [{"item": what["item"], "variant": v, "chance": 1 / len(variants)} for v in variants]
        self.made(
            "note",
            at,
            pack=what.get("pack", ""),
            of=some,
            hall=self.draw.choice(HALLS),
            table=str(self.draw.randint(1, 60)),
            asked=self.money(),
            decision=self.draw.choice(("open", "left", "left", "bought")),
            text=self.draw.choice(NOTES),
        )

    def photo(self) -> str:
        """A photo; gives its id."""
        ident = self.ident("p")
        spots = Image.frombytes("RGB", (16, 12), self.draw.randbytes(16 * 12 * 3))
        pictures = {"full": spots.resize(FULL), "small": spots.resize(SMALL)}
        size = {"width": FULL[0], "height": FULL[1]}
        self.photos.append({"id": ident} | {n: url(p) for n, p in pictures.items()} | size)
        return ident


def url(picture: Image.Image) -> str:
    """A picture as a JPEG in a data: URL."""
    out = io.BytesIO()
    picture.save(out, "JPEG", quality=70)
    return "data:image/jpeg;base64," + base64.b64encode(out.getvalue()).decode()


def told(at: datetime) -> str:
    """A time as records have it."""
    return f"{at:%Y-%m-%dT%H:%M:%S}.{at.microsecond // 1000:03d}Z"


def made_collection(pieces: int, seed: int = 1) -> dict[str, Any]:
    """A backup of so many pieces, with all that belongs to them."""
    maker = Maker([compile_pack(folder) for folder in phone.demo_packs()], seed)
    step = timedelta(days=365 * YEARS) / pieces
    for n in range(pieces):
        at = FIRST + n * step
        maker.piece(at)
        if n % 4 == 1:
            maker.want(at + step / 4)
        if n % 4 == 3:
            maker.note(at + step / 2)
    ends = told(FIRST + timedelta(days=365 * YEARS))
    kept = {"records": maker.records, "journal": maker.journal, "photos": maker.photos}
    return {"format": 1, "kind": "identify backup", "made": ends} | kept


def write(pieces: int, seed: int, file: Path) -> dict[str, Any]:
    """Makes the file; gives what is in it."""
    backup = made_collection(pieces, seed)
    with file.open("wb") as out:
        out.writelines(backup_bytes(backup))
    return backup


def main(argv: Sequence[str] | None = None) -> int:
    """Makes a collection, and says what is in it."""
    p = argparse.ArgumentParser(prog="tests.bench.made_collection", description=__doc__)
    p.add_argument("pieces", type=counted(200_000), help="how many pieces it shall have")
    p.add_argument("-o", "--output", type=Path, help="file to write (made-PIECES.json)")
    p.add_argument("--seed", type=int, default=1, help="start of the chance (1)")
    args = p.parse_args(argv)
    file = args.output or Path(f"made-{args.pieces}.json")
    found = write(args.pieces, args.seed, file)
    counts = ", ".join(f"{len(found[name])} {name}" for name in ("records", "journal", "photos"))
    print(f"{file}: {counts}. Nothing in it exists.")
    return 0


if __name__ == "__main__":
    sys.exit(main())
