"""A pack folder as the editor reads, checks and saves it: all of its files are written, or none."""

import hashlib
import os
import shutil
import tempfile
from pathlib import Path
from threading import RLock

import msgspec

from identify.reference.check import check_pack
from identify.reference.editing import (
    FILE_OF,
    TOMLS,
    Edit,
    Files,
    Folder,
    edited,
    files_of,
)
from identify.reference.editing_csv import EditError
from identify.reference.editing_toml import TOP
from identify.reference.editor_fields import editor_fields
from identify.reference.mistakes import Mistake, PackError
from identify.reference.types import EditedPack, PlacedMistake

SAVING = ".saving"  # in the folder, only while files are put in place: what was there before
LIST = "list.json"  # in it, written last: which files are being put in place


class ChangedError(EditError):
    """The folder was changed by something else since it was read."""


class PackFolder:
    """One pack folder. Its functions may be called from several threads."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder.resolve()
        self.id = self.folder.name
        self.lock = RLock()
        self.former: tuple[str, Files] | None = None  # the version last saved, what was before it

    def read(self) -> EditedPack:
        """Everything that can be edited, with the mistakes there are. Raises EditError, OSError."""
        with self.lock:
            files = self._files()
            folder = Folder(files)
            return {
                "id": self.id,
                "version": version_of(files),
                "tables": folder.entries(),
                "columns": {table: csv.columns for table, csv in folder.csv.items()},
                "fields": editor_fields(),
                "files": FILE_OF,
                "drawings": folder.drawings(),
                "mistakes": self._told(check_pack(self.folder), folder),
                "undo": self.former is not None and self.former[0] == version_of(files),
            }

    def check(self, version: str, edits: list[Edit]) -> list[PlacedMistake]:
        """Every mistake that the folder would have with these edits. Raises EditError."""
        with self.lock:
            return self._checked(self._same(version), edits)[1]

    def save(self, version: str, edits: list[Edit]) -> list[PlacedMistake]:
        """Make the edits; [] when that is done, else the mistakes, and nothing is changed.

        Raises EditError, also where the folder was changed since, and OSError.
        """
        with self.lock:
            before = self._same(version)
            after, mistakes = self._checked(before, edits)
            if not mistakes:
                self._put(before, after)
                self.former = version_of(self._files()), before
            return mistakes

    def undo(self) -> None:
        """Take back what was saved last. Raises EditError where it cannot be."""
        with self.lock:
            now = self._files()
            if self.former is None or self.former[0] != version_of(now):
                raise EditError("There is no save to take back, or the files were changed since.")
            self._put(now, self.former[1])
            self.former = None

    def _files(self) -> Files:
        """The files on the disk, after whatever was broken off in the middle of a save."""
        if not self.folder.is_dir():
            raise EditError(f"The folder {self.folder} is not there any more.")
        saving = self.folder / SAVING
        if (saving / LIST).is_file():
            self._put_back(msgspec.json.decode((saving / LIST).read_bytes(), type=list[str]))
        shutil.rmtree(saving, ignore_errors=True)
        return files_of(self.folder)

    def _same(self, version: str) -> Files:
        """The files, which must be those that were read. Raises ChangedError."""
        files = self._files()
        if version_of(files) != version:
            raise ChangedError(
                "The files of the pack were changed by something else since they were read here. "
                "Nothing was written. Read them again: what you changed is kept and put on top."
            )
        return files

    def _checked(self, before: Files, edits: list[Edit]) -> tuple[Files, list[PlacedMistake]]:
        """The files with the edits, and their mistakes, found in a copy."""
        folder = edited(before, edits)
        after = folder.after()
        with tempfile.TemporaryDirectory() as place:
            copy = Path(place) / self.id
            (copy / "drawings").mkdir(parents=True)
            for name, data in after.items():
                (copy / name).write_bytes(data)
            return after, self._told(check_pack(copy), folder)

    def _told(self, mistakes: list[Mistake], folder: Folder) -> list[PlacedMistake]:
        """Mistakes with the entry that each is in: table and key, "" for none."""
        out: list[PlacedMistake] = []
        for each in mistakes:
            table, key = _where(each, folder)
            out.append(
                {
                    "file": each.file,
                    "line": each.line,
                    "column": each.column,
                    "text": each.text,
                    "table": table,
                    "key": key,
                }
            )
        return out

    def _put(self, before: Files, after: Files) -> None:
        """Put the files in place; when that fails, all are as they were. Raises OSError."""
        names = sorted(n for n in {*before, *after} if before.get(n) != after.get(n))
        saving = self.folder / SAVING
        shutil.rmtree(saving, ignore_errors=True)
        try:
            for name in names:
                if name in before:
                    _write(saving / "before" / name, before[name])
                if name in after:
                    _write(saving / "after" / name, after[name])
            _write(saving / LIST, msgspec.json.encode(names))
            for name in names:
                if name in after:
                    (self.folder / name).parent.mkdir(exist_ok=True)
                    os.replace(saving / "after" / name, self.folder / name)
                else:
                    (self.folder / name).unlink()
        except OSError:
            if (saving / LIST).is_file():
                self._put_back(names)
            raise
        finally:
            (saving / LIST).unlink(missing_ok=True)
            shutil.rmtree(saving, ignore_errors=True)

    def _put_back(self, names: list[str]) -> None:
        """Put files back as they were before a save that did not come to its end."""
        for name in names:
            former = self.folder / SAVING / "before" / name
            if former.is_file():
                shutil.copyfile(former, self.folder / f"{name}.part")
                os.replace(self.folder / f"{name}.part", self.folder / name)
            else:
                (self.folder / name).unlink(missing_ok=True)


def _write(path: Path, data: bytes) -> None:
    """Write a file and wait until it is on the disk."""
    path.parent.mkdir(parents=True, exist_ok=True)
    with path.open("wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def version_of(files: Files) -> str:
    """A name made from the contents of all files."""
    named = sorted((name, hashlib.sha256(data).hexdigest()) for name, data in files.items())
    return hashlib.sha256(msgspec.json.encode(named)).hexdigest()[:16]


def _where(mistake: Mistake, folder: Folder) -> tuple[str, str]:
    """The table and the key of the entry that a mistake is in, "" for none."""
    for table, csv in folder.csv.items():
        if csv.name == mistake.file:
            lines = csv.lines()
            key = next((row.key for row in csv.entries() if lines[row.key] == mistake.line), "")
            return table, key
    for name in TOMLS:
        if name == mistake.file and mistake.line:
            for table in reversed(folder.toml[name].keys):
                for key, (start, end) in folder.toml[name].lines(table).items():
                    if start < mistake.line <= end:
                        return (table if table != TOP else "range"), key
    return "", ""


def opened(folders: list[Path]) -> list[PackFolder]:
    """The folders to edit. Raises PackError for what is no folder of a pack, or an id twice."""
    by_name: dict[str, PackFolder] = {}
    for path in folders:
        wrong = ""
        if not path.is_dir():
            wrong = "this is not a folder. Only the folder of a range can be edited: name that."
        elif path.resolve().name in by_name:
            wrong = "there is another folder of that name, and the name is the pack's id."
        if wrong:
            raise PackError([Mistake(str(path), 0, "", wrong)])
        by_name[path.resolve().name] = PackFolder(path)
    return list(by_name.values())
