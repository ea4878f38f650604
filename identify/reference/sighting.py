"""A sighting from the phone -> a proposed change of a pack's CSV files, for its keeper to judge.

A piece that is in no reference becomes a row of variants.csv. Where its years lie outside those of
what was seen on it, they are put beside the known ones, in changes.csv, variants.csv or
items.csv: the keeper's own years are never written over.
"""

import difflib
import re
import shutil
import tempfile
from pathlib import Path

import msgspec

from identify.core.edtf import is_season, span_of, written_edtf
from identify.core.seen import seen_years
from identify.core.session import problem
from identify.core.types.session import Scope, Session
from identify.errors import UserError
from identify.reference.check import check_pack
from identify.reference.csv_files import FILES
from identify.reference.editing_csv import CsvText
from identify.reference.folder import read_pack
from identify.reference.loading import load_engine
from identify.reference.mistakes import PackError, quoted
from identify.reference.records import Change, Item, Pack, Source, Variant
from identify.reference.years import YearsError, outside, read_years

SOURCE = "sighting"
SOURCE_ROW = {"id": SOURCE, "what": "Sightings noted with the app", "trust": "0.5"}
COMMON = "0.1"  # how often it is met: seldom, or it would have been written down


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


def _beyond(years: str, entry: Item | Variant) -> bool:
    """Whether these years lie outside all that is said of an item or a variant."""
    said = [read_years(text) for text in (entry.years, *(text for _, text in entry.other_years))]
    return outside(years, min(each.earliest for each in said), max(each.latest for each in said))


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
        self.before = {table.name: table.text for table in self.tables.values()}
        self.ids = {variant.id for variant in self.pack.variants}

    def take(self, sighting: Sighting) -> None:
        """Work one sighting in. Raises SightingError where it says nothing new."""
        if sighting.pack != self.pack.id:
            wrong = f"The sighting is of {quoted(sighting.pack)}, and the range is {self.pack.id}."
            raise SightingError(wrong)
        if sighting.years:
            sighting.years = self._years(sighting.years)
        before = [table.text for table in self.tables.values()]
        known = [a for a in sighting.answers if self._known(a)]
        if sighting.unrecorded:
            self._new_variant(sighting, known)
        elif sighting.years:
            self._years_of_variant(sighting)
        if sighting.years:
            self._years_of_states(sighting, known)
        if before == [table.text for table in self.tables.values()]:
            raise SightingError("The sighting says nothing that the range does not say already.")
        if all(source.id != SOURCE for source in self.pack.sources):
            self.tables[Source].add(SOURCE, SOURCE_ROW)
            self.pack.sources.append(Source(id=SOURCE))

    def _years(self, text: str) -> str:
        """The years of a sighting as packs write them, which have months for a season."""
        date = written_edtf(text)
        years = span_of(date["first"], date["last"])["edtf"] if is_season(text) else text
        try:
            read_years(years)
        except YearsError as error:
            raise SightingError(f"The years of the sighting: {error}") from error
        return years

    def _known(self, answer: Answer) -> bool:
        """An answer that says something, of a feature that the pack has."""
        given = msgspec.to_builtins(answer)
        return answer.how not in ("cannot", "other") and problem(self.engine, given) == ""

    def _new_variant(self, sighting: Sighting, known: list[Answer]) -> None:
        item = next((each for each in self.pack.items if each.number == sighting.item), None)
        if item is None:
            raise SightingError(
                "The sighting does not say which item it is a variant of. Choose one on the phone "
                "and export it again, or add the item to items.csv and fill in its number."
            )
        columns = self.tables[Variant].columns
        fixed = {answer.feature: "|".join(answer.states) for answer in known}
        row = {name: states for name, states in fixed.items() if name in columns}
        row = {name: states for name, states in row.items() if item.cells.get(name) != states}
        beside = [self._words(answer) for answer in known if answer.feature not in columns]
        note = [sighting.text.strip(), *([f"Also seen: {'; '.join(beside)}."] if beside else [])]
        years = {"years": sighting.years, "source": SOURCE} if sighting.years else {}
        if sighting.years and item.years and _beyond(sighting.years, item):
            _add_to(self.tables[Item], item.line, "other_years", f"{SOURCE} {sighting.years}")
        about = {
            "id": self._new_id(item.number),
            "item": item.number,
            "name": sighting.called.strip() or "seen, and not recorded before",
            "common": COMMON,
            "note": " ".join(" ".join(part.split()) for part in note if part),
        }
        self.tables[Variant].add(about["id"], about | years | row)

    def _words(self, answer: Answer) -> str:
        feature = next(f for f in self.engine["pack"]["features"] if f["id"] == answer.feature)
        names = {state["id"]: state["name"] for state in feature["states"]}
        return f"{feature['name']}: {' or '.join(names[state] for state in answer.states)}"

    def _new_id(self, number: str) -> str:
        stem = re.sub(r"[^a-z0-9]+", "_", number.lower()).strip("_")
        stem = stem if stem[:1].isalpha() else f"v{stem}"
        count = 1
        while f"{stem}_seen{count}" in self.ids:
            count += 1
        self.ids.add(f"{stem}_seen{count}")
        return f"{stem}_seen{count}"

    def _years_of_variant(self, sighting: Sighting) -> None:
        """The likeliest variant, seen outside the years that are said of it."""
        if not sighting.of:
            return
        variant = next((v for v in self.pack.variants if v.id == sighting.of[0].variant), None)
        if variant is None or not variant.years:
            return
        if _beyond(sighting.years, variant):
            table = self.tables[Variant]
            _add_to(table, variant.line, "other_years", f"{SOURCE} {sighting.years}")

    def _years_of_states(self, sighting: Sighting, known: list[Answer]) -> None:
        """Running changes that came earlier, or whose end came later, than is said."""
        seen = read_years(sighting.years)
        scope: Scope = {"kind": sighting.kind, "items": [sighting.item] if sighting.item else []}
        answers = [msgspec.to_builtins(answer) for answer in known if len(answer.states) == 1]
        session: Session = {
            "pack": self.pack.id, "version": "", "scope": scope, "able": [], "missing": [],
            "answers": answers,
        }  # fmt: skip
        table = self.tables[Change]
        for entry in seen_years(self.engine, session):
            state = answers[entry["answer"]]["states"][0]
            rows = [self.pack.changes[n] for n in entry["changes"] if n < len(self.pack.changes)]
            at = next((n for n, row in enumerate(rows) if row.state == state), -1)
            if at < 0 or not entry["earliest"]:
                continue
            if seen.last <= entry["earliest"] and rows[at].came:
                _add_to(table, rows[at].line, "other_from", f"{SOURCE} {sighting.years}")
            follower = rows[at + 1] if at + 1 < len(rows) else None
            if seen.first >= entry["latest"] + 1 and follower is not None:
                _add_to(table, follower.line, "other_from", f"{SOURCE} {int(seen.first)}")

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
