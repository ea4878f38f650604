"""What the routes of the collector's own server work with."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import ParamSpec, TypeVar

from anyio import CapacityLimiter, to_thread

from identify.keeping.store import Store
from identify.server.limits import STORE_THREADS

P = ParamSpec("P")
T = TypeVar("T")


@dataclass(frozen=True)
class Context:
    """The store, where backups go, the address people know, and what time it is."""

    store: Store
    backups: Path
    public: str  # origin with a slash, such as https://trains.home.arpa:8100/
    now: Callable[[], datetime]
    _places: CapacityLimiter = field(default_factory=lambda: CapacityLimiter(STORE_THREADS))

    async def in_thread(self, act: Callable[P, T], *args: P.args, **more: P.kwargs) -> T:
        """Runs what reads or writes the disk in a thread."""
        return await to_thread.run_sync(partial(act, *args, **more), limiter=self._places)
