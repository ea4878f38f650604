"""Hybrid logical clocks: times that never run against cause and effect, whatever the devices' own.

Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks and Consistent Snapshots in
Globally Distributed Databases" (University at Buffalo, technical report 2014-04). A clock is
{wall, count}: the greatest time seen anywhere so far, in milliseconds since 1970, and a counter for
what comes at the same.

A clock ends at LAST_WALL with LAST_COUNT and stays there. What is written then is still in order:
on one device by its number, and across devices by its parents (merging.py).
"""

from .clock_limits import LAST_COUNT, LAST_WALL
from .types.operations import Clock


def in_reach(wall: int, count: int) -> Clock:
    """A clock that is no further than clocks may go: where the counter is full, it carries over."""
    if wall > LAST_WALL:
        return {"wall": LAST_WALL, "count": LAST_COUNT}
    if count <= LAST_COUNT:
        return {"wall": wall, "count": count}
    if wall == LAST_WALL:
        return {"wall": LAST_WALL, "count": LAST_COUNT}
    return {"wall": wall + 1, "count": 0}


def tick(clock: Clock, now: int) -> Clock:
    """The clock after something was done here at `now` (the device's own time, ms)."""
    time = min(now, LAST_WALL)
    if time > clock["wall"]:
        return {"wall": time, "count": 0}
    return in_reach(clock["wall"], clock["count"] + 1)


def heard(clock: Clock, other: Clock, now: int) -> Clock:
    """The clock after something was heard of that happened at `other`."""
    wall = max(clock["wall"], other["wall"], min(now, LAST_WALL))
    count = 0
    if wall == clock["wall"] and wall == other["wall"]:
        count = max(clock["count"], other["count"]) + 1
    elif wall == clock["wall"]:
        count = clock["count"] + 1
    elif wall == other["wall"]:
        count = other["count"] + 1
    return in_reach(wall, count)
