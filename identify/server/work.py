"""What the routes of the collector's own server work with."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import ParamSpec, TypeVar

from anyio import CapacityLimiter, to_thread

from identify.keeping.store import Store

P = ParamSpec("P")
T = TypeVar("T")
AT_ONCE = 4  # the store lets one in at a time; the others only hold their memory


@dataclass(frozen=True)
class Work:
    """The store, where backups go, the address people know, and what time it is."""

    store: Store
    backups: Path
    public: str  # origin with a slash, such as https://trains.home.arpa:8100/
    now: Callable[[], datetime]
    _places: CapacityLimiter = field(default_factory=lambda: CapacityLimiter(AT_ONCE))

    async def do(self, act: Callable[P, T], *args: P.args, **more: P.kwargs) -> T:
        """Runs what reads or writes the disk in a thread."""
        return await to_thread.run_sync(partial(act, *args, **more), limiter=self._places)
