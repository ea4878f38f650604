"""The commands as a person runs them: processes of their own."""

import os
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager
from pathlib import Path
from types import MappingProxyType

from identify.shipped import ROOT
from tests.threaded_server import free_port

COMMAND = [sys.executable, "-m", "identify"]
KEPT = [sys.executable, "-m", "tests.kept_site"]  # the same, with the app's files made before
SERVE = [*KEPT, "serve"]


def run(*words: object, program: Sequence[str] = COMMAND) -> subprocess.CompletedProcess[str]:
    """A command that ends by itself."""
    return subprocess.run(
        [*program, *map(str, words)], capture_output=True, text=True, check=False, timeout=120
    )


class Serving:
    """`serve` in a process. Its outputs are files beside the data."""

    def __init__(
        self,
        data: Path,
        *words: object,
        env: Mapping[str, str] = MappingProxyType({}),
        cwd: Path | None = None,
    ) -> None:
        self.port = free_port()
        self.said = data.with_name("said.txt")
        self.log = data.with_name("log.txt")
        self.data = data
        with self.said.open("wb") as said, self.log.open("wb") as log:
            self.process = subprocess.Popen(
                [*SERVE, "--data", data, "--port", str(self.port), *map(str, words)],
                stdout=said,
                stderr=log,
                env={**os.environ, "PYTHONUNBUFFERED": "1", "PYTHONPATH": str(ROOT), **env},
                cwd=cwd,
            )
        while not self._answers():
            assert self.process.poll() is None, self.log.read_text()
            time.sleep(0.05)

    def _answers(self) -> bool:
        try:
            with socket.create_connection(("127.0.0.1", self.port), timeout=1):
                return True
        except OSError:
            return False

    def stop(self) -> None:
        self.process.send_signal(signal.SIGINT)
        self.process.wait(60)

    def most_memory(self) -> int:
        """The most that the process ever held, in KB (proc(5), VmHWM)."""
        for line in Path(f"/proc/{self.process.pid}/status").read_text().splitlines():
            if line.startswith("VmHWM:"):
                return int(line.split()[1])
        raise AssertionError("no VmHWM")


@contextmanager
def serving(data: Path, *words: object) -> Iterator[Serving]:
    running = Serving(data, *words)
    try:
        yield running
    finally:
        running.stop()
