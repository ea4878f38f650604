"""A page with a collection, gone through step by step, and what each step costs."""

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any

from tests.bench.table import number
from tests.bench.thread_time import Spent, Watched

LONG = 30 * 60_000  # milliseconds that anything may take on a busy machine
OPENED = "() => document.querySelector('#screen h1') !== null"
TITLED = "(title) => document.querySelector('#screen h1')?.textContent.trim() === title"
QUIET = """() => new Promise((done) => {
  requestIdleCallback(() => setTimeout(done, 100), { timeout: 5000 });
})"""

Told = Callable[[str], None]


class Walk:
    """One collection, and what each step with it costs."""

    def __init__(self, page: Any, pieces: int, told: Told) -> None:
        self.page = page
        self.told = told
        self.watched = Watched(page)
        self.before = ""  # what stands before the names of the steps
        self.out: dict[str, Any] = {"pieces": pieces, "steps": {}}

    @contextmanager
    def step(self, name: str) -> Iterator[dict[str, Any]]:
        """Measures what is done within; what is put into what it gives is told with it."""
        self.told(f"\n {self.before}{name}")
        began = time.perf_counter()
        more: dict[str, Any] = {}
        with self.watched.doing() as found:
            yield more
            more["clock"] = 1000 * (time.perf_counter() - began)
            self.page.evaluate(QUIET)
        told = figures(found) | more
        self.out["steps"][self.before + name] = told
        # told at once, so that a run that is cut short has not been for nothing
        self.told("".join(f", {what} {number(value)}" for what, value in told.items()))

    def button(self, name: str) -> Any:
        """A button of the screen."""
        return self.page.get_by_role("main").get_by_role("button", name=name, exact=True)

    def at(self, title: str) -> None:
        """Waits for a screen; not by role, for which all of a long list would be looked through."""
        self.page.wait_for_function(TITLED, arg=title, timeout=LONG)

    def place(self, name: str) -> None:
        """Goes to a screen of the bar."""
        bar = self.page.get_by_role("navigation")
        bar.get_by_role("button", name=name, exact=True).click(timeout=LONG)

    def more(self, name: str) -> None:
        """Goes to a screen under More."""
        self.place("More")
        self.at("More")
        self.page.get_by_role("main").get_by_role("button", name=name).first.click(timeout=LONG)
        self.at(name)


def figures(found: Spent) -> dict[str, float]:
    """What is told of a step."""
    return {
        "thread": found.thread,
        "longest": found.longest,
        "over": found.over,
        "others": found.others,
        "most_mb": found.most_mb,
    }
