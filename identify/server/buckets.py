"""How many requests a caller may make in a time."""

import ipaddress
import time
from collections.abc import Callable

from starlette.types import Scope

from identify.server.limits import MOST_CALLERS, Rate


class Buckets:
    """A token bucket for each caller: so many requests at once, then so many more each second.

    In memory only, so that a restart forgets. clock: seconds that never go back.
    """

    def __init__(self, rate: Rate, clock: Callable[[], float] = time.monotonic) -> None:
        self.size, self.each_second = rate
        self.clock = clock
        self._left: dict[str, tuple[float, float]] = {}

    def wait(self, caller: str) -> float:
        """Takes one request of this caller's; seconds until it may come again, 0 if it may now."""
        now = self.clock()
        left = self._now(*self._left.pop(caller, (float(self.size), now)), now)
        if left < 1:
            self._left[caller] = (left, now)
            return (1 - left) / self.each_second
        if len(self._left) >= MOST_CALLERS:
            self._forget(now)
        self._left[caller] = (left - 1, now)
        return 0

    def _now(self, left: float, then: float, now: float) -> float:
        return min(self.size, left + (now - then) * self.each_second)

    def _forget(self, now: float) -> None:
        """Lets go of those who are as good as new, and of the one longest unheard of."""
        full = [who for who, left in self._left.items() if self._now(*left, now) >= self.size]
        for caller in full or [next(iter(self._left))]:
            del self._left[caller]


def caller_of(scope: Scope) -> str:
    """Who asks: an IPv4 address, or the first half of an IPv6 one (the rest is anyone's choice)."""
    client = scope.get("client")
    try:
        address = ipaddress.ip_address(client[0].partition("%")[0]) if client else None
    except ValueError:
        return "unknown"
    if isinstance(address, ipaddress.IPv6Address):
        if address.ipv4_mapped is not None:
            return str(address.ipv4_mapped)
        return str(ipaddress.ip_network((address, 64), strict=False))
    return str(address or "unknown")
