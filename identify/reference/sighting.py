"""A sighting from the phone -> a proposed change of a pack's CSV files, for its keeper to judge.

A piece that is in no reference becomes a row of variants.csv. Where its years lie outside those of
what was seen on it, they are put beside the known ones, in changes.csv, variants.csv or
items.csv: the keeper's own years are never written over.
"""

import difflib
import shutil
import tempfile
from pathlib import Path
from typing import Any

import msgspec

from identify.core.ranges.sighted import (
    SOURCE,
    SOURCE_TRUST,
    SOURCE_WHAT,
    plain_looks,
    proposal_of,
    take_in_proposal,
)
from identify.core.ranges.year_bounds import years_of_edtf
from identify.core.seen import seen_years
from identify.core.session import problem
from identify.core.types.claims import SeenYears
from identify.core.types.rows import VariantRow
from identify.core.types.session import Scope, Session
from identify.core.types.sighted import OtherYears
from identify.errors import UserError
from identify.reference.check import check_pack
from identify.reference.csv_files import FILES
from identify.reference.editing_csv import CsvText
from identify.reference.entries import Change, Item, Pack, Source, Variant
from identify.reference.folder import read_pack
from identify.reference.folder_rows import rows_of_pack
from identify.reference.loading import load_engine
from identify.reference.mistakes import PackError, quoted
from identify.reference.years import years_fault


class SightingError(UserError):
    """A sighting from which no change can be made, in a sentence."""


class Answer(msgspec.Struct):
    feature: str
    how: str
    states: list[str]


class Candidate(msgspec.Struct):
    item: str
    variant: str
    chance: float = 0.0


class Sighting(msgspec.Struct):
    """One sighting as the phone exports it; other fields are not needed here."""

    pack: str
    answers: list[Answer]
    kind: str = ""
    item: str = ""
    called: str = ""
    unrecorded: bool = False
    years: str = ""
    text: str = ""
    of: list[Candidate] = []


class SightingFile(msgspec.Struct):
    format: int
    kind: str
    sightings: list[Sighting]


def read_sightings(path: Path) -> list[Sighting]:
    """The sightings of an exported file. Raises SightingError."""
    return sightings_in(path.read_bytes(), path.name)


def sightings_in(content: bytes, name: str) -> list[Sighting]:
    """The same of what such a file holds; name: what to call it. Raises SightingError."""
    wrong = f"{name} is not a file of sightings. Export one on the phone: More, Sightings."
    try:
        file = msgspec.json.decode(content, type=SightingFile)
    except (msgspec.DecodeError, UnicodeDecodeError) as error:
        raise SightingError(wrong) from error
    if file.kind != "identify sightings" or file.format != 1:
        raise SightingError(wrong)
    if not file.sightings:
        raise SightingError(f"{name} holds no sighting.")
    return file.sightings


def _text(path: Path) -> str:
    """A file as it is written, line ends and all, but for a byte order mark."""
    return path.read_bytes().decode("utf-8-sig")


def _add_to(table: CsvText, line: int, column: str, said: str) -> None:
    """Add to a list in a cell of the row that begins on this line, once."""
    key = f"r{line}"
    cell = table.fields(table.row(key)).get(column, "")
    there = [each.strip() for each in cell.split(";") if each.strip()]
    if said not in there:
        table.set(key, column, cell, "; ".join([*there, said]))


def _diff(name: str, before: str, after: str) -> str:
    """The change of a file as a unified diff; empty for none."""
    old, new = before.splitlines(keepends=True), after.splitlines(keepends=True)
    return "".join(difflib.unified_diff(old, new, f"a/{name}", f"b/{name}"))


class _Proposal:
    """What a list of sightings would change in a pack."""

    def __init__(self, folder: Path) -> None:
        mistakes = check_pack(folder)
        if mistakes:
            raise PackError(mistakes)
        self.folder = folder
        self.pack: Pack = read_pack(folder)[0]
        self.engine = load_engine(folder)
        self.tables = {
            kind: CsvText(_text(folder / FILES[kind]), FILES[kind])
            for kind in (Source, Item, Variant, Change)
        }
        self.rows = rows_of_pack(self.pack)
        self.before = {table.name: table.text for table in self.tables.values()}

    def take(self, sighting: Sighting) -> None:
        """Work one sighting in. Raises SightingError where it says nothing new."""
        if sighting.pack != self.pack.id:
            wrong = f"The sighting is of {quoted(sighting.pack)}, and the range is {self.pack.id}."
            raise SightingError(wrong)
        fields: Any = msgspec.to_builtins(sighting)
        fields["answers"] = [
            answer for answer in fields["answers"] if problem(self.engine, answer) == ""
        ]
        fields["called"], fields["text"] = sighting.called.strip(), sighting.text.strip()
        columns = self.tables[Variant].columns
        proposal = proposal_of(
            self.rows, self.engine["pack"], fields, self._seen(sighting, fields["answers"]), columns
        )
        if proposal["why"] == "unread":
            fault = years_fault(sighting.years, years_of_edtf(sighting.years)["problem"])
            raise SightingError(f"The years of the sighting: {fault}")
        if proposal["why"] == "no item":
            raise SightingError(
                "The sighting does not say which item it is a variant of. Choose one on the phone "
                "and export it again, or add the item to items.csv and fill in its number."
            )
        if proposal["why"] == "unsure":
            raise SightingError(
                "The sighting was made in other years than the range knows, but it may be one of "
                "several variants. Ask whoever sent it to look again."
            )
        before = [table.text for table in self.tables.values()]
        for variant in proposal["variants"]:
            self._add_variant(variant, proposal["beside"])
        for entry in proposal["other"]:
            self._add_years(entry)
        if before == [table.text for table in self.tables.values()]:
            raise SightingError("The sighting says nothing that the range does not say already.")
        if all(source.id != SOURCE for source in self.pack.sources):
            row = {"id": SOURCE, "what": SOURCE_WHAT, "trust": str(SOURCE_TRUST)}
            self.tables[Source].add(SOURCE, row)
            self.pack.sources.append(Source(id=SOURCE))
        take_in_proposal(self.rows, proposal, self.rows)

    def _seen(self, sighting: Sighting, answers: list[Any]) -> list[SeenYears]:
        """When what is seen on it was made."""
        scope: Scope = {"kind": sighting.kind, "items": [sighting.item] if sighting.item else []}
        session: Session = {
            "pack": self.pack.id, "version": "", "scope": scope, "able": [], "missing": [],
            "answers": plain_looks(answers),
        }  # fmt: skip
        return seen_years(self.engine, session)

    def _add_variant(self, variant: VariantRow, beside: list[str]) -> None:
        """A new row of variants.csv."""
        note = [variant["note"], *([f"Also seen: {'; '.join(beside)}."] if beside else [])]
        row = {"id": variant["id"], "item": variant["item"], "name": variant["name"]}
        row["common"] = str(variant["common"])
        row["note"] = " ".join(" ".join(part.split()) for part in note if part)
        if variant["years"]:
            row |= {"years": variant["years"], "source": variant["source"]}
        cells = {str(name): str(states) for name, states in variant["cells"]}
        self.tables[Variant].add(variant["id"], row | cells)

    def _add_years(self, entry: OtherYears) -> None:
        """Years beside those of a row."""
        kinds: dict[str, Any] = {
            "items": (Item, self.pack.items, "other_years"),
            "variants": (Variant, self.pack.variants, "other_years"),
            "changes": (Change, self.pack.changes, "other_from"),
        }
        kind, rows, column = kinds[entry["table"]]
        if entry["row"] < len(rows):  # else it came with a sighting before
            line = rows[entry["row"]].line
            _add_to(self.tables[kind], line, column, f"{SOURCE} {entry['years']}")

    def checked(self) -> str:
        """The change as a unified diff, once a patched copy of the pack has no mistake."""
        with tempfile.TemporaryDirectory() as place:
            copy = Path(place) / self.pack.id
            shutil.copytree(self.folder, copy)
            for table in self.tables.values():
                (copy / table.name).write_text(table.text, "utf-8", newline="")
            mistakes = check_pack(copy)
        if mistakes:
            said = "\n".join(f"  {mistake}" for mistake in mistakes)
            raise SightingError(f"The sighting does not fit the rest of the range:\n{said}")
        return "".join(
            _diff(table.name, self.before[table.name], table.text) for table in self.tables.values()
        )


def propose(path: Path, folder: Path) -> str:
    """What a file of sightings would change in a pack, as a unified diff for its folder.

    Raises SightingError, or PackError where the pack itself has mistakes.
    """
    sightings = read_sightings(path)
    proposal = _Proposal(folder)
    for sighting in sightings:
        proposal.take(sighting)
    return proposal.checked()
