"""Processor time of a page's own thread, task by task: what other work on the machine does not
lengthen as it does the clock's time.
"""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from tests.bench.processor import spent

TASK = "ThreadControllerImpl::RunTask"
MAIN = "CrRendererMain"
MB = 1e6
PATIENCE = 6000  # times 20 ms that Chromium may take to hand out its trace


@dataclass
class Spent:
    """What the page's thread spent while something was done: milliseconds and megabytes."""

    thread: float = 0.0  # of the processor, on the screen's thread
    longest: float = 0.0  # of the processor, the longest task
    over: int = 0  # tasks of more than 50 ms
    others: float = 0.0  # of the processor, the page's other threads
    most_mb: float = 0.0  # the process at most, above what it held before
    tasks: list[float] = field(default_factory=list)  # those of more than 5 ms


class Watched:
    """A page whose tasks are traced by Chromium itself (Chrome DevTools Protocol)."""

    def __init__(self, page: Any) -> None:
        self.page = page
        self.line = page.context.new_cdp_session(page)
        self.ended = False
        self.pid = 0
        self.found: list[dict[str, Any]] = []
        self.mains: set[tuple[int, int]] = set()
        self.line.on("Tracing.dataCollected", self._heard)
        self.line.on("Tracing.tracingComplete", self._end)

    def _heard(self, data: dict[str, Any]) -> None:
        for event in data["value"]:
            place = event["pid"], event["tid"]
            if event["name"] == "thread_name" and event["args"]["name"] == MAIN:
                self.mains.add(place)
            elif event["name"] == TASK and "tdur" in event:
                self.found.append(event)

    def _end(self, _: Any) -> None:
        self.ended = True

    def _traced(self) -> dict[int, list[float]]:
        """The tasks of each page's thread, by process."""
        out: dict[int, list[float]] = {pid: [] for pid, _ in self.mains}
        for event in self.found:
            if (event["pid"], event["tid"]) in self.mains:
                out[event["pid"]].append(event["tdur"] / 1000)
        return out

    def begin(self) -> None:
        """Begin to listen."""
        self.ended = False
        self.found.clear()
        self.mains.clear()
        self.held, self.before = 0.0, 0.0
        if lives(self.pid):
            forget_most(self.pid)
            self.held, self.before = most_held(self.pid), spent(self.pid)
        config = {
            "recordMode": "recordAsMuchAsPossible",  # a step may take many minutes
            "includedCategories": ["toplevel", "__metadata"],
        }
        self.line.send("Tracing.start", {"traceConfig": config, "transferMode": "ReportEvents"})

    def end(self) -> Spent:
        """What was spent since."""
        self.line.send("Tracing.end")
        for _ in range(PATIENCE):
            if self.ended:
                break
            self.page.wait_for_timeout(20)
        by_process = self._traced()
        by_process = {pid: tasks for pid, tasks in by_process.items() if lives(pid)}
        busiest = max(by_process, key=lambda pid: sum(by_process[pid]))
        if busiest != self.pid:
            self.pid, self.held, self.before = busiest, 0.0, 0.0
        tasks = by_process[self.pid]
        thread = sum(tasks)
        return Spent(
            thread=thread,
            longest=max(tasks, default=0.0),
            over=sum(1 for one in tasks if one > 50),
            others=max(0.0, spent(self.pid) - self.before - thread),
            most_mb=max(0.0, most_held(self.pid) - self.held),
            tasks=sorted((one for one in tasks if one > 5), reverse=True),
        )

    @contextmanager
    def doing(self) -> Iterator[Spent]:
        """What is spent within stands in what this gives, afterwards."""
        found = Spent()
        self.begin()
        yield found
        found.__dict__.update(self.end().__dict__)


def lives(pid: int) -> bool:
    """Whether a process is there: another site is another process."""
    return Path(f"/proc/{pid}/clear_refs").exists()


def forget_most(pid: int) -> None:
    """The most memory that a process held counts from now on (proc(5), clear_refs)."""
    Path(f"/proc/{pid}/clear_refs").write_text("5", "ascii")


def most_held(pid: int) -> float:
    """Megabytes that a process held at most (VmHWM in proc(5))."""
    lines = Path(f"/proc/{pid}/status").read_text("ascii").splitlines()
    most = (line.split()[1] for line in lines if line.startswith("VmHWM"))
    return float(next(most, 0)) * 1024 / MB  # a process that has just ended holds nothing
