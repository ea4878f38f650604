"""Six devices, a server, and a chronicle of who wrote what knowing of what.

The chronicle is kept apart from the rules under test: of each write it holds the numbers of all
writes on the record that the device had stored when it was made.
"""

import contextlib
import random
from pathlib import Path
from typing import Any

from identify.core.merging import merged
from identify.core.native.values import json_text
from identify.core.operation_forms import for_merging
from tests.sync.device import CutError, Device, operation
from tests.sync.real_store import Kept

NAMES = "ABCDEF"
YEAR = 365 * 24 * 3600 * 1000
OFFSETS = [0, 60_000, -3_600_000, 7 * YEAR, -12 * YEAR, 40]
FIELDS = ["notes", "paid", "where", "photos", "length", "of_a_newer_version"]
TYPES = ["piece", "want", "note", "album"]  # the last is one that only a newer version knows
OWN = ("trashed", "gone")


class World:
    """Everything that can happen to a collection, and what must hold afterwards."""

    def __init__(self, server: Kept, seed: int, devices: type[Device] = Device) -> None:
        self.chance = random.Random(seed)
        self.now = 1_700_000_000_000
        self.server = server
        self.ids = 0
        self.devices = {
            name: devices(self.fresh_id, offset)
            for name, offset in zip(NAMES, OFFSETS, strict=True)
        }
        self.records: dict[str, str] = {}
        self.writes = 0
        self.wrote: dict[int, tuple[str, dict[str, str]]] = {}  # number: record, {field: text}
        self.knew: dict[int, set[int]] = {}
        self.destroyed: dict[int, set[int]] = {}  # by the number of the deletion
        self.lost: set[int] = set()  # with a storage that was put back to an older state
        self.exact = True  # no device was put back to an older state, or copied
        self.copies: dict[str, list[Device]] = {name: [] for name in NAMES}
        self.backups: list[Path] = []
        self.files: list[Path] = []
        self.exports: list[list[dict[str, Any]]] = []
        self.batches: list[list[dict[str, Any]]] = []
        self.pages: dict[str, list[Any]] = {name: [] for name in NAMES}

    def fresh_id(self) -> str:
        self.ids += 1
        return "d" + str(self.ids).rjust(16, "x")

    def pick(self, device: Device) -> str | None:
        """A record that the device shows, or None."""
        shown = [r for r in self.records if r in device.records and not self.is_gone(device, r)]
        return self.chance.choice(shown) if shown else None

    def is_gone(self, device: Device, record: str) -> bool:
        return device.records[record].get("gone") == "true"

    def write(self, device: Device, record: str, fields: dict[str, Any]) -> int:
        self.now += self.chance.randint(0, 3000)
        self.writes += 1
        self.knew[self.writes] = self.closed(device.known_writes(record))
        self.wrote[self.writes] = (record, {n: json_text(v) for n, v in fields.items()})
        more = {"write": self.writes, "what": "Changed", "group": f"g{self.writes}", "undoes": ""}
        device.write(self.now, record, self.records[record], fields, more)
        return self.writes

    def closed(self, known: set[int]) -> set[int]:
        """With what those who wrote these knew: it counts as known, even if it is not here yet."""
        return known.union(*(self.knew[number] for number in known))

    # What people do

    def make(self, name: str) -> None:
        """A new record."""
        record = f"r{len(self.records)}x"
        self.records[record] = self.chance.choice(TYPES)
        fields = {one: self.value() for one in FIELDS[:3]}
        self.write(self.devices[name], record, {**fields, "trashed": ""})

    def value(self) -> Any:
        """A value that was never written before."""
        number = f"value {self.writes + 1} {self.chance.randint(0, 10**6)}"
        return self.chance.choice([number, {"é": [number, 1.5]}, [number, None]])

    def edit(self, name: str) -> None:
        device = self.devices[name]
        record = self.pick(device)
        if record:
            fields = self.chance.sample(FIELDS, self.chance.randint(1, 2))
            self.write(device, record, {one: self.value() for one in fields})

    def take_away(self, name: str) -> None:
        """A field that is there no more."""
        device = self.devices[name]
        record = self.pick(device)
        if record:
            self.write(device, record, {self.chance.choice(FIELDS): None})

    def undo(self, name: str) -> None:
        """Writes what was there before."""
        device = self.devices[name]
        record = self.pick(device)
        old = [e for e in device.entries(record) if e["fields"]] if record else []
        if record and old:
            fields = self.chance.choice(old)["fields"]
            self.write(device, record, {n: v for n, v in fields.items() if n != "gone"})

    def settle(self, name: str) -> None:
        """One of the values that are offered."""
        device = self.devices[name]
        device.seal()
        offered = [
            (record, clash)
            for record, found in device.found.items()
            for clash in found["clashes"]
            if not found["gone"]
        ]
        if offered:
            record, clash = self.chance.choice(offered)
            ident = self.chance.choice(clash["values"])["id"]
            value = next(e for e in device.journal if e["id"] == ident)["fields"][clash["field"]]
            self.write(device, record, {clash["field"]: value})

    def trash(self, name: str) -> None:
        device = self.devices[name]
        record = self.pick(device)
        if record:
            trashed = device.records[record].get("trashed", '""') == '""'
            self.write(device, record, {"trashed": f"time {self.now}" if trashed else ""})

    def delete_for_good(self, name: str) -> None:
        device = self.devices[name]
        record = self.pick(device)
        if record:
            before = self.closed(device.known_writes(record))
            number = self.write(device, record, {"trashed": f"time {self.now}", "gone": True})
            self.destroyed[number] = before

    # What networks do

    def sync(self, name: str) -> None:
        self.now += 1000
        self.devices[name].sync(self.server, self.now, self.chance.choice([1, 3, 500]))

    def pull_some(self, name: str) -> None:
        """The line breaks in the middle of a pull."""
        pages = self.chance.randint(1, 3)
        self.pages[name] += self.devices[name].pull(self.server, self.now, 2, pages)

    def page_again(self, name: str) -> None:
        """An answer comes again, and late."""
        if self.pages[name]:
            self.devices[name].take_page(*self.chance.choice(self.pages[name]), self.now)

    def push_some(self, name: str) -> None:
        """The line breaks in the middle of a push, or the answer is lost."""
        device = self.devices[name]
        device.seal()
        ops = device.unsent()
        batches = [ops[place : place + 3] for place in range(0, len(ops), 3)]
        for batch in batches[:2]:
            self.batches.append([dict(operation(entry)) for entry in batch])
        with contextlib.suppress(CutError):
            device.push(self.server, batches[:2], self.chance.choice([-1, 0, 1]))

    def push_again(self) -> None:
        """A push comes again, and late, from a device that has gone on long since."""
        if self.batches:
            self.server.push(self.chance.choice(self.batches))

    def set_clock(self, name: str) -> None:
        self.devices[name].offset = self.chance.choice([-30 * YEAR, -YEAR, 0, 5000, 30 * YEAR])

    # What disks do

    def stored(self) -> set[int]:
        """The numbers of all writes that are kept anywhere."""
        found = {op["write"] for op in self.server.contents()}
        for device in self.devices.values():
            found |= {entry["write"] for entry in [*device.journal, *device.unsealed]}
        return found

    def keep_copy(self, name: str) -> None:
        """A copy of the whole phone."""
        self.copies[name].append(self.devices[name].copied())

    def restore_copy(self, name: str, onto: str) -> None:
        """The copy put back, or put onto another phone that is used from now on as well."""
        if self.copies[name]:
            before = self.stored()
            self.devices[onto] = self.chance.choice(self.copies[name]).copied()
            self.lost |= before - self.stored()
            self.exact = False
            self.pages[onto] = []

    def export(self, name: str) -> None:
        """A backup file, made by a phone."""
        self.devices[name].seal()
        self.exports.append([dict(operation(entry)) for entry in self.devices[name].journal])

    def import_file(self, name: str) -> None:
        if self.exports:
            ops = self.chance.choice(self.exports)
            self.devices[name].take_file([dict(op) for op in ops], self.now)

    def back_up(self) -> None:
        self.backups.append(self.server.back_up())

    def restore(self) -> None:
        if self.backups:
            self.server.restore(self.chance.choice(self.backups))

    def lose_server(self) -> None:
        if self.backups:
            before = self.stored()
            self.server.begin_anew(self.chance.choice(self.backups))
            self.lost |= before - self.stored()

    def copy_file(self) -> None:
        self.files.append(self.server.copy_file())

    def put_file_back(self) -> None:
        if self.files:
            before = self.stored()
            self.server.put_back(self.chance.choice(self.files))
            self.lost |= before - self.stored()

    # What must hold

    def finish(self) -> None:
        """Everyone syncs; then all is checked."""
        before = self.stored()
        for turn in range(8):
            ids = {op["id"] for op in self.server.contents()}
            for name in NAMES:
                self.sync(name)
            if turn > 0 and ids == {op["id"] for op in self.server.contents()}:
                break
        else:
            raise AssertionError("the devices do not come to an end")
        assert before <= self.stored()
        self.check_equal()
        self.check_conserved()
        if self.exact:
            self.check_exact()

    def check_equal(self) -> None:
        """Every device holds and shows the same as the server."""
        contents = self.server.contents()
        first = {op["id"]: json_text(op) for op in contents}
        told = {one["id"]: one for one in self.server.records()}
        for name, device in self.devices.items():
            ours = {entry["id"]: json_text(operation(entry)) for entry in device.journal}
            assert ours == first, f"device {name} holds other operations than the server"
            assert set(device.found) == set(told)
            for record, found in device.found.items():
                entries = device.entries(record)
                assert found == merged([for_merging(operation(entry)) for entry in entries])
                assert device.records[record] == dict(found["fields"])
                theirs = told[record]
                shown = {field: json_text(value) for field, value in theirs["fields"].items()}
                assert shown == device.records[record], (name, record)
                for mark in ("heads", "trashed", "gone", "brought_back", "type"):
                    assert theirs[mark] == found[mark], (name, record, mark)
                assert [c["field"] for c in theirs["clashes"]] == [
                    c["field"] for c in found["clashes"]
                ]

    def check_conserved(self) -> None:
        """Every write is in the history; its value is shown or offered, unless a later write knew
        of it, or it was deleted for good."""
        kept = {op["write"]: op for op in self.server.contents()}
        missing = set(self.wrote) - set(kept) - self.lost
        assert not missing, f"not in the history: {missing}"
        destroyed = set().union(*(self.destroyed[n] for n in self.destroyed if n in kept))
        # A deletion may be lost with a phone, after others heard of some of what it emptied.
        emptied = set().union(*(self.destroyed[n] for n in self.destroyed if n in self.lost))
        emptied = {n for n in emptied & set(kept) if kept[n].get("scrubbed")}
        found = self.devices["A"].found
        for number in sorted(set(kept) - destroyed - emptied):
            record, fields = self.wrote[number]
            assert kept[number]["fields"].keys() == fields.keys(), "emptied without being deleted"
            for name, text in fields.items():
                if name not in OWN and not self.replaced(number, name, kept):
                    assert text in self.offered(found[record], name), (number, record, name)

    def replaced(self, number: int, field: str, kept: dict[int, Any]) -> bool:
        return any(
            number in self.knew[later] and later in kept and field in self.wrote[later][1]
            for later in self.wrote
        )

    def offered(self, found: dict[str, Any], field: str) -> list[str]:
        for clash in found["clashes"]:
            if clash["field"] == field:
                return [value["text"] for value in clash["values"]]
        return [text for name, text in found["fields"] if name == field]

    def check_exact(self) -> None:
        """What was replaced knowingly is not offered; what was deleted for good is nowhere."""
        kept = {op["write"]: op for op in self.server.contents()}
        destroyed = set().union(*(self.destroyed[n] for n in self.destroyed if n in kept))
        for record, found in self.devices["A"].found.items():
            for clash in found["clashes"]:
                current = {
                    self.wrote[n][1][clash["field"]]
                    for n in kept
                    if self.wrote[n][0] == record
                    and clash["field"] in self.wrote[n][1]
                    and n not in destroyed
                    and not self.replaced(n, clash["field"], kept)
                }
                assert {value["text"] for value in clash["values"]} == current, (record, clash)
        for record, found in self.devices["A"].found.items():
            assert (found["trashed"], found["brought_back"]) == self.in_trash(
                record, kept, destroyed
            )
        for number in destroyed & set(kept):
            if "gone" not in self.wrote[number][1]:
                assert kept[number]["fields"] == {}, f"deleted for good, and still there: {number}"

    def in_trash(self, record: str, kept: dict[int, Any], destroyed: set[int]) -> tuple[bool, bool]:
        """Whether a record is in the bin, and whether it was brought back from there."""
        live = [n for n in kept if self.wrote[n][0] == record and n not in destroyed]
        said = [n for n in live if "trashed" in self.wrote[n][1]]
        said = [n for n in said if not self.replaced(n, "trashed", kept)]
        away = [n for n in said if self.wrote[n][1]["trashed"] != '""']
        edits = [n for n in live if set(self.wrote[n][1]) - set(OWN)]
        meanwhile = [
            e
            for e in set(edits) - set(away)
            if not any(e in self.knew[t] for t in away) and any(t not in self.knew[e] for t in away)
        ]
        gone = any("gone" in self.wrote[n][1] for n in live) and not edits
        back = bool(away) and not gone and (len(away) < len(said) or bool(meanwhile))
        return gone or (bool(away) and not back), back
