"""Hybrid logical clocks: times that never run against cause and effect, whatever the devices' own.

Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks and Consistent Snapshots in
Globally Distributed Databases" (University at Buffalo, technical report 2014-04). A clock is
{wall, count}: the greatest time seen anywhere so far, in milliseconds since 1970, and a counter for
what comes at the same.
"""

from typing import Any


def tick(clock: dict[str, Any], now: float) -> dict[str, Any]:
    """The clock after something was done here at `now` (the device's own time, ms)."""
    if now > clock["wall"]:
        return {"wall": now, "count": 0}
    return {"wall": clock["wall"], "count": clock["count"] + 1}


def heard(clock: dict[str, Any], other: dict[str, Any], now: float) -> dict[str, Any]:
    """The clock after something was heard of that happened at `other` {wall, count}."""
    wall = max(clock["wall"], other["wall"], now)
    count = 0
    if wall == clock["wall"] and wall == other["wall"]:
        count = max(clock["count"], other["count"]) + 1
    elif wall == clock["wall"]:
        count = clock["count"] + 1
    elif wall == other["wall"]:
        count = other["count"] + 1
    return {"wall": wall, "count": count}
