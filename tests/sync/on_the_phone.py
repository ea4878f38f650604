"""The model device beside the app's own code: after every step both hold the same.

The scripts are those of web/, run by deno; their storage alone is another (memory_storage.js).
"""

import json
import shutil
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from typing import Any, ClassVar

from deno import find_deno_bin

from identify import phone
from identify.shipped import WEB
from tests.sync.device import Device, Json, as_time, operation

HERE = Path(__file__).parent
STATE = ("device", "n", "clock", "epoch", "after", "last", "round")
QUIET = ("trashed", "gone", "made")  # nobody is asked about these


class Phones:
    """A process in which phones run."""

    def __init__(self, process: "subprocess.Popen[str]") -> None:
        self.process = process
        self.numbers = count(1)

    def ask(self, **asked: Any) -> Json:
        """What the phone holds after that."""
        assert self.process.stdin
        assert self.process.stdout
        self.process.stdin.write(json.dumps(asked) + "\n")
        self.process.stdin.flush()
        line = self.process.stdout.readline()
        assert line, "the phone failed; its error stands above"
        held: Json = json.loads(line)
        return held


@contextmanager
def phones(folder: Path, script: str = "", right: str = "", wrong: str = "") -> Iterator[Phones]:
    """The process, while it is used; the scripts of the app are put together in a folder, with a
    mistake in a script of web/sync where `wrong` is to stand there for `right`.
    """
    app = folder / "app"
    shutil.copytree(WEB, app, ignore=shutil.ignore_patterns("*.md", "*.css", "*.html"))
    (app / "engine.js").write_text(phone.engine_module())
    (app / "further.js").write_text(phone.further_module())
    (app / "merging.js").write_text(phone.merging_module())
    if script:
        place = app / "sync" / script
        text = place.read_text()
        assert right in text
        place.write_text(text.replace(right, wrong))
    shutil.copy(HERE / "memory_storage.js", app / "data" / "store.js")
    shutil.copy(HERE / "phones.js", app / "phones.js")
    words = ["run", "--quiet", "--no-config", "--allow-read", "--location", "http://127.0.0.1/"]
    with subprocess.Popen(
        [find_deno_bin(), *words, str(app / "phones.js")],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    ) as process:
        try:
            yield Phones(process)
        finally:
            process.kill()


class OnThePhone(Device):
    """The model device, of which each step is done by the app's own code as well."""

    running: ClassVar[Phones]

    def __init__(self, fresh_id: Callable[[], str], offset: int = 0) -> None:
        super().__init__(fresh_id, offset)
        self.name = f"phone {next(self.running.numbers)}"
        self.taking = False
        self.does(0, "begin")

    def copied(self) -> "Device":
        other = super().copied()
        assert isinstance(other, OnThePhone)
        other.does(0, "copy", **{"from": self.name})
        if other.unsealed == []:
            other.check()
        return other

    def does(self, now: int, act: str, **more: Any) -> None:
        asked = {"phone": self.name, "act": act, "now": now + self.offset}
        self.held = self.running.ask(**asked, id=self.state["device"], **more)

    def check(self) -> None:
        """Whether model and phone hold the same."""
        held = self.held
        assert held["aside"] == []
        assert held["state"] == {name: self.state[name] for name in STATE}
        ours = [(told(operation(one)), one["held"]) for one in self.journal]
        assert [(told(one["op"]), one["held"]) for one in held["journal"]] == ours
        assert held["unsent"] == [one["id"] for one in self.unsent()]
        heads = {row["record"]: row["heads"] for row in held["heads"]}
        assert heads == {record: found["heads"] for record, found in self.found.items()}
        clashes = {row["record"]: row["clashes"] for row in held["clashes"] if row["clashes"]}
        assert clashes == {record: asked for record in self.found if (asked := self.asked(record))}

    def asked(self, record: str) -> list[Any]:
        """What a person is asked about a record."""
        found = self.found[record]
        return [] if found["gone"] else [c for c in found["clashes"] if c["field"] not in QUIET]

    def write(self, now: int, record: str, kind: str, fields: Json, more: Json) -> None:
        super().write(now, record, kind, fields, more)
        number = {"write": more["write"]}
        said = {"what": more["what"], "group": more["group"], "time": as_time(now + self.offset)}
        self.does(now, "write", record=record, type=kind, fields=fields, more=number, **said)

    def seal(self) -> None:
        super().seal()
        if not self.taking:
            self.does(0, "seal")
            self.check()

    def take_page(self, asked: Json, answer: Json, now: int) -> None:
        self.taking = True
        super().take_page(asked, answer, now)
        self.taking = False
        self.does(now, "page", answer=answer, **{"from": asked})
        self.check()

    def take_file(self, ops: list[Json], now: int) -> None:
        self.taking = True
        super().take_file(ops, now)
        self.taking = False
        self.does(now, "file", ops=ops)
        self.check()

    def fork(self, moved: list[str]) -> None:
        super().fork(moved)
        if not self.taking:
            self.does(0, "fork", ids=moved)
            self.check()


def told(op: Json) -> Json:
    """An operation; of one that was deleted for good each side has words of its own."""
    return {**op, "what": ""} if op.get("scrubbed") else op
