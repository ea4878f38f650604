"""The backup file as the command line changes it: read, records added and changed, written back."""

import os
import secrets
import string
import tempfile
from collections.abc import Callable, Iterator
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import orjson

from identify.core.gate import entry_fault, photo_fault, record_fault
from identify.core.gate_words import fault_words
from identify.core.types.gate import Fault
from identify.core.types.importing import Fields, Outcome
from identify.exchange.table import FileError
from identify.keeping import files

LETTERS = string.ascii_lowercase + string.digits


def now() -> str:
    """The time as records have it."""
    return datetime.now(UTC).isoformat(timespec="milliseconds").replace("+00:00", "Z")


def read_backup(path: Path, new: bool = False) -> Fields:
    """The backup in a file; new: one without records where there is no such file.

    All of it fits through the gate that the app and the server have. Raises FileError.
    """
    if new and not path.exists():
        return {
            "format": 1, "kind": "identify backup", "made": now(), "records": [], "journal": [],
            "photos": [],
        }  # fmt: skip
    try:
        file = orjson.loads(path.read_bytes())
    except OSError as error:
        raise FileError(f"{path} cannot be read: {(error.strerror or '').lower()}.") from error
    except orjson.JSONDecodeError as error:
        raise FileError(f"{path} is not a backup, or it was cut short. Make it again.") from error
    if not isinstance(file, dict) or file.get("kind") != "identify backup":
        raise FileError(
            f"{path} is not a backup. Make one in the app, or name a file that is not there."
        )
    records = file.get("records")
    if file.get("format") != 1 or not isinstance(records, list):
        raise FileError(f"{path} was made by a newer version. Update this program first.")
    faults = [*_faults(file)]
    if faults:
        raise FileError(
            f"{path} holds entries that cannot be read ({len(faults)}). The first: "
            f"{faults[0]} Restore the file in the app, which takes the rest, and make a backup "
            "there. Nothing was changed."
        )
    return file


def _faults(file: Fields) -> Iterator[str]:
    """What does not fit through the gate, a sentence for each."""
    gates: list[tuple[str, Callable[[Any], Fault | None]]] = [
        ("records", record_fault),
        ("journal", lambda entry: entry_fault(entry, True)),
        ("photos", photo_fault),
    ]
    for name, fault_of in gates:
        there = file.get(name, [])
        for entry in there if isinstance(there, list) else []:
            fault = fault_of(entry)
            if fault is not None:
                yield fault_words(fault)


def backup_bytes(backup: Fields) -> Iterator[bytes]:
    """The file as the app writes it: a record, an entry, a photo a line, so that the app reads it
    a line at a time. What has other parts is written as one line, which it reads as well.
    """
    heads, lists = ("format", "kind", "made"), ("records", "journal", "photos")
    rows = [backup.get(name) for name in lists]
    if backup.keys() != {*heads, *lists} or not all(isinstance(some, list) for some in rows):
        yield orjson.dumps(backup)
        return
    yield orjson.dumps({name: backup[name] for name in heads})[:-1] + b","
    for name, some in zip(lists, rows, strict=True):
        yield (b"\n" if name == "records" else b"\n],") + f'"{name}":[\n'.encode()
        yield b",\n".join(orjson.dumps(row) for row in some or [])
    yield b"\n]}\n"


def write_backup(path: Path, backup: Fields) -> None:
    """Put the backup in place of the file, all of it or nothing."""
    handle, name = tempfile.mkstemp(dir=path.parent, prefix=f".{path.name}")
    try:
        with os.fdopen(handle, "wb") as file:
            file.writelines(backup_bytes(backup))
            file.flush()
            os.fsync(file.fileno())
        files.move(Path(name), path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def taken_up(records: list[Fields], outcomes: list[Outcome], time: str) -> None:
    """Write what an import found (the outcomes of match_rows) into the records."""
    places = {record["id"]: at for at, record in enumerate(records)}
    for row in outcomes:
        record, same = row["record"], row["same"]
        if record is None:
            continue
        if same is None:
            new = {"id": f"r{''.join(secrets.choice(LETTERS) for _ in range(16))}"} | record
            records.append({"made": time, "changed": time} | new)
        elif same["sets"]:
            at = places[same["id"]]
            records[at] = records[at] | same["sets"] | {"changed": time}
