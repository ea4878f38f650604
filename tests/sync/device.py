"""A device without a screen: what the phone stores, changed by the very rules that the phone has.

Every method is one transaction of the phone's storage, or several that may be cut off in between.
"""

from collections.abc import Callable
from datetime import UTC, datetime
from typing import Any, Protocol

from identify.core.merging import merged
from identify.core.native.values import json_text
from identify.core.operation_forms import comparable, for_merging, parts_of_id
from identify.core.syncing import forked, is_late, mark_of, met, pulled, same_operation, sealed

Json = dict[str, Any]
GONE = "Deleted for good"
LOCAL = ("held", "device", "n")  # what is no part of an operation


class CutError(Exception):
    """The server did what it was asked, and the answer was lost."""


class Server(Protocol):
    """What a device asks of the server (identify/server/README.md)."""

    def pull(self, epoch: str, after: int, last: str, limit: int) -> Json: ...
    def push(self, ops: list[Json]) -> Json: ...


def as_time(ms: int) -> str:
    """A time as records have it."""
    return datetime.fromtimestamp(ms / 1000, UTC).isoformat(timespec="milliseconds")


def operation(entry: Json) -> Json:
    return {name: value for name, value in entry.items() if name not in LOCAL}


class Device:
    """One phone. `fresh_id` gives an id for a device that nobody has."""

    def __init__(self, fresh_id: Callable[[], str], offset: int = 0) -> None:
        self.fresh_id = fresh_id
        self.offset = offset
        self.state: Json = {
            "device": fresh_id(), "n": 0, "clock": {"wall": 0, "count": 0}, "epoch": "",
            "after": 0, "last": "", "round": 0,
        }  # fmt: skip
        self.journal: list[Json] = []  # operations, in the order in which they came
        self.unsealed: list[Json] = []
        self.records: dict[str, Json] = {}  # as shown: {field: text}
        self.found: dict[str, Json] = {}  # what merged() said last
        self.forks = 0

    def copied(self) -> "Device":
        """The storage as it is now, as a backup of the whole phone would keep it."""
        other = type(self)(self.fresh_id, self.offset)
        other.state = dict(self.state)
        other.journal = [dict(entry) for entry in self.journal]
        other.unsealed = [dict(entry) for entry in self.unsealed]
        other.records = {record: dict(fields) for record, fields in self.records.items()}
        other.found = dict(self.found)
        return other

    # What a person does

    def write(self, now: int, record: str, kind: str, fields: Json, more: Json) -> None:
        """One change, shown at once."""
        self.unsealed.append(
            {"record": record, "type": kind, "time": now + self.offset, "fields": fields} | more
        )
        shown = self.records.setdefault(record, {})
        shown |= {name: json_text(value) for name, value in fields.items()}

    def known_writes(self, record: str) -> set[int]:
        """The numbers of all writes on a record that are stored here."""
        entries = [*self.journal, *self.unsealed]
        return {one["write"] for one in entries if one["record"] == record}

    def entries(self, record: str) -> list[Json]:
        return [one for one in self.journal if one["record"] == record]

    # What syncing does

    def seal(self) -> None:
        entries, self.unsealed = self.unsealed, []
        touched = sorted({entry["record"] for entry in entries})
        rows = [
            {"record": record, "heads": self.found[record]["heads"]}
            for record in touched
            if record in self.found
        ]
        made = sealed(self.state, entries, rows)
        self.state |= {"n": made["n"], "clock": made["clock"]}
        for entry, op in zip(entries, made["ops"], strict=True):
            text = {"time": as_time(entry["time"])}
            self.journal.append({**entry, **text, **op, "held": ""})
        for row in made["heads"]:
            shown = dict(self.records[row["record"]])
            self.merge(row["record"])
            found = self.found[row["record"]]
            assert found["heads"] == row["heads"]
            for name, value in shown.items():
                if name not in ("trashed", "gone") and not found["gone"]:
                    assert self.records[row["record"]].get(name) == value, "sealing showed another"

    def merge(self, record: str) -> None:
        entries = self.entries(record)
        found = merged([for_merging(operation(entry)) for entry in entries])
        for entry in entries:
            if entry["id"] in found["scrub"]:
                entry |= {"fields": {}, "what": GONE, "scrubbed": True}
        self.found[record] = found
        self.records[record] = dict(found["fields"])

    def take(self, ops: list[Json], now: int, held: str) -> None:
        """Operations from the server or from a file, after sealing, in one transaction."""
        at = {entry["id"]: entry for entry in self.journal}
        asked = []
        for op in ops:
            here = ""
            if op["id"] in at:
                same = same_operation(comparable(operation(at[op["id"]])), comparable(op))
                here = "same" if same else "other"
            asked.append({**op, **parts_of_id(op["id"]), "here": here})
        found = met(self.state, asked, now + self.offset)
        self.state["clock"] = found["clock"]
        for place in found["known"]:
            at[ops[place]["id"]]["held"] = held or at[ops[place]["id"]]["held"]
        if found["fork"]:
            self.fork(found["moved"])
        touched = set()
        for place in found["take"]:
            entry = {name: value for name, value in asked[place].items() if name != "here"}
            self.journal.append({**entry, "held": held})
            touched.add(entry["record"])
        for record in sorted(touched):
            self.merge(record)

    def take_page(self, asked: Json, answer: Json, now: int) -> None:
        """One answer to a pull."""
        self.seal()
        if is_late(self.state, asked):
            return
        self.state |= pulled(self.state, answer)
        self.take(answer["ops"], now, mark_of(self.state))

    def take_file(self, ops: list[Json], now: int) -> None:
        """The operations of a backup file."""
        self.seal()
        self.take(ops, now, "")

    def fork(self, moved: list[str]) -> None:
        self.forks += 1
        mark = mark_of(self.state)
        asked = [one for one in self.journal if one["held"] != mark or one["id"] in moved]
        made = forked(self.state, self.fresh_id(), asked, moved)
        for op in made.pop("ops"):
            asked[op.pop("place")] |= {**op, "held": ""}
        self.state |= made
        for record in sorted({entry["record"] for entry in asked}):
            self.merge(record)

    def unsent(self) -> list[Json]:
        mark = mark_of(self.state)
        return [entry for entry in self.journal if entry["held"] != mark]

    def pull(self, server: Server, now: int, limit: int = 500, pages: int = 1000) -> list[Any]:
        """Pulls until there is no more, or so many pages; gives the questions and the answers."""
        answers = []
        more = True
        while more and len(answers) < pages:
            asked = {name: self.state[name] for name in ("epoch", "after", "last")}
            answer = server.pull(**asked, limit=limit)
            answers.append((asked, answer))
            forks = self.forks
            self.take_page(asked, answer, now)
            more = answer["more"] or self.forks > forks
        return answers

    def push(self, server: Server, batches: list[list[Json]], cut: int = -1) -> bool:
        """Pushes these batches; the answer to number `cut` is lost. False: to be begun again."""
        for number, batch in enumerate(batches):
            answer = server.push([operation(entry) for entry in batch])
            assert answer["refused"] == [], answer["refused"]
            assert len(answer["held"]) + len(answer["forked"]) == len(batch)
            if number == cut:
                raise CutError
            if answer["forked"]:
                self.fork(answer["forked"])
                return False
            if answer["epoch"] != self.state["epoch"]:
                return False
        return True

    def sync(self, server: Server, now: int, limit: int = 500) -> None:
        """A whole round, and as many more as it takes."""
        for _ in range(6):
            self.seal()
            self.pull(server, now, limit)
            batch = self.unsent()
            done = self.push(server, [batch] if batch else [])
            self.pull(server, now, limit)
            if done and self.unsent() == []:
                return
        raise AssertionError("a device and the server do not come to an end")
