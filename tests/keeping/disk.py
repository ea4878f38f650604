"""A model of a disk that forgets: what a power cut may leave of a log of writes.

What was synced is there. Of everything since, any part may be missing: each sector of a write, each
change of a file's length, each name given, taken or changed in a folder, on its own and so in any
order. A sector may be torn: only its first bytes are written. Bytes beside those being written stay
as they are ("powersafe overwrite", which SQLite's own layer takes for granted as well: sqlite.org,
sqlite3_io_methods, SQLITE_IOCAP_POWERSAFE_OVERWRITE).
"""

from dataclasses import dataclass, field
from pathlib import PurePosixPath
from random import Random
from typing import Any


@dataclass
class Log:
    """What was done to the disk, in order; and at which places something was acknowledged."""

    root: str
    events: list[tuple[Any, ...]] = field(default_factory=list)
    acks: list[tuple[int, str, Any]] = field(default_factory=list)  # (place, of what, what)

    def add(self, *event: Any) -> None:
        self.events.append(event)

    def ack(self, what: str, state: Any) -> None:
        """From here on `what` is promised to be `state`."""
        self.acks.append((len(self.events), what, state))

    def promised(self, cut: int, what: str) -> list[Any]:
        """What a cut may leave of `what`: the last state acknowledged before, or the next one."""
        before = [state for place, name, state in self.acks if name == what and place <= cut]
        after = [state for place, name, state in self.acks if name == what and place > cut]
        return [*before[-1:], *after[:1]]


@dataclass(eq=False)
class File:
    safe: bytes = b""
    pending: list[tuple[int, bytes | None]] = field(default_factory=list)  # None: cut off there

    def sync(self) -> None:
        data = bytearray(self.safe)
        for at, written in self.pending:
            _write(data, at, written)
        self.safe, self.pending = bytes(data), []

    def left(self, chance: Random, keep: float, sector: int) -> bytes:
        """What a power cut may leave of it."""
        if not self.pending:
            return self.safe
        data = bytearray(self.safe)
        for at, written in self.pending:
            if written is None:
                if chance.random() < keep:
                    _write(data, at, None)
                continue
            for begin, end in _sectors(at, len(written), sector):
                if chance.random() < keep:
                    _write(data, begin, written[begin - at : end - at])
                elif chance.random() < 0.1:
                    _write(data, begin, written[begin - at : chance.randint(begin, end) - at])
        return bytes(data)


@dataclass(eq=False)
class Folder:
    now: dict[str, "File | Folder"] = field(default_factory=dict)
    safe: dict[str, "File | Folder"] = field(default_factory=dict)
    pending: list[tuple[str, "File | Folder | None"]] = field(default_factory=list)

    def put(self, name: str, node: "File | Folder | None") -> None:
        if node is None:
            self.now.pop(name, None)
        else:
            self.now[name] = node
        self.pending.append((name, node))

    def sync(self) -> None:
        self.safe, self.pending = dict(self.now), []

    def left(self, chance: Random, keep: float, sector: int, under: str = "") -> dict[str, bytes]:
        """Files, by their paths, that a power cut may leave in it."""
        names = dict(self.safe)
        for name, node in self.pending:
            if chance.random() < keep:
                if node is None:
                    names.pop(name, None)
                else:
                    names[name] = node
        out: dict[str, bytes] = {}
        for name, node in names.items():
            if isinstance(node, Folder):
                out |= node.left(chance, keep, sector, f"{under}{name}/")
            else:
                out[under + name] = node.left(chance, keep, sector)
        return out


class Disk:
    """Replays a log up to some place."""

    def __init__(self, log: Log) -> None:
        self.log = log
        self.root = Folder()
        self.done = 0

    def play(self, until: int) -> None:
        for event in self.log.events[self.done : until]:
            self._do(*event)
        self.done = until

    def after_a_cut(self, chance: Random) -> dict[str, bytes]:
        """One of the many states in which a power cut here may leave the disk: {path: bytes}."""
        keep = chance.choice([0.0, 0.1, 0.5, 0.9, 1.0])
        return self.root.left(chance, keep, chance.choice([512, 4096]))

    def _do(self, kind: str, path: str, *rest: Any) -> None:
        if kind == "move":
            self._folder(rest[0]).put(_name(rest[0]), self._node(path))
            self._folder(path).put(_name(path), None)
        elif kind == "link":
            self._folder(rest[0]).put(_name(rest[0]), self._node(path))
        elif kind == "unlink":
            self._folder(path).put(_name(path), None)
        elif kind == "file":
            self._folder(path).put(_name(path), File())
        elif kind == "folder":
            self._folder(path).put(_name(path), Folder())
        elif kind == "write":
            self._node(path).pending.append((rest[0], rest[1]))
        elif kind == "cut":
            self._node(path).pending.append((rest[0], None))
        else:
            assert kind == "sync", kind
            self._node(path).sync()

    def _node(self, path: str) -> Any:
        node: Any = self.root
        for part in PurePosixPath(path).relative_to(self.log.root).parts:
            node = node.now[part]
        return node

    def _folder(self, path: str) -> Folder:
        found = self._node(str(PurePosixPath(path).parent))
        assert isinstance(found, Folder)
        return found


def _name(path: str) -> str:
    return PurePosixPath(path).name


def _sectors(at: int, length: int, sector: int) -> list[tuple[int, int]]:
    out = []
    begin, end = at, at + length
    while begin < end:
        stop = min(end, (begin // sector + 1) * sector)
        out.append((begin, stop))
        begin = stop
    return out


def _write(data: bytearray, at: int, written: bytes | None) -> None:
    if len(data) < at:
        data.extend(bytes(at - len(data)))
    if written is None:
        del data[at:]
    else:
        data[at : at + len(written)] = written
