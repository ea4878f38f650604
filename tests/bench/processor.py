"""How busy this machine is, and what a process has had of its processors (proc(5), Linux)."""

import os
import statistics
import time
from dataclasses import dataclass
from pathlib import Path

MOST_LOAD = 0.3  # a processor: what waits to run, the mean of a minute
MOST_OTHERS = 0.1  # of the processors, used by others while it is looked
MOST_STEAL = 0.01  # of the time, taken by other machines of the same host
MOST_SPREAD = 0.1  # from the quickest of equal rounds to the slowest but one in ten
ROUNDS = 60
WORK = 60_000  # additions of a round


@dataclass(frozen=True)
class Busyness:
    """What was found."""

    load: float  # the mean of a minute, a processor
    others: float  # part of the processors that others used
    steal: float
    spread: float

    def why_not_quiet(self) -> list[str]:
        """Why no figure of now is to be called one of a quiet machine; [] where it may be."""
        limits = (
            ("{:.2f} programs waiting for each processor", self.load, MOST_LOAD),
            ("{:.0%} of the processors used by others", self.others, MOST_OTHERS),
            ("{:.1%} of the time taken by other machines", self.steal, MOST_STEAL),
            ("equal work took up to {:.0%} longer", self.spread, MOST_SPREAD),
        )
        return [text.format(found) for text, found, most in limits if found > most]

    def told(self) -> str:
        """A sentence for the head of a table."""
        found = self.why_not_quiet()
        return "A quiet machine." if not found else f"NOT a quiet machine: {'; '.join(found)}."


def how_busy() -> Busyness:
    """Looks for about a second, in which this process does equal work again and again."""
    count = os.cpu_count() or 1
    before, own = _ticks(), time.process_time()
    began = time.perf_counter()
    took = sorted(_round() for _ in range(ROUNDS))
    while time.perf_counter() - began < 1:
        took = sorted([*took, _round()])
    passed = time.perf_counter() - began
    after, used = _ticks(), time.process_time() - own
    whole = max(1, sum(after) - sum(before))
    idle = after[3] + after[4] - before[3] - before[4]
    steal = after[7] - before[7]
    mine = used / (passed * count)
    return Busyness(
        load=os.getloadavg()[0] / count,
        others=max(0.0, (whole - idle) / whole - mine),
        steal=steal / whole,
        spread=statistics.quantiles(took, n=10)[-1] / took[0] - 1,
    )


def _round() -> float:
    began = time.perf_counter()
    total = 0
    for n in range(WORK):
        total += n
    return time.perf_counter() - began


def _ticks() -> list[int]:
    """user, nice, system, idle, iowait, irq, softirq, steal of all processors (proc(5), stat)."""
    first = Path("/proc/stat").read_text("ascii").splitlines()[0]
    return [int(one) for one in first.split()[1:9]]


def spent(pid: int) -> float:
    """Milliseconds of processor that a process has had, all its threads."""
    return sum(
        float(one.read_text("ascii").split()[0]) / 1e6
        for one in Path(f"/proc/{pid}/task").glob("*/schedstat")
    )
