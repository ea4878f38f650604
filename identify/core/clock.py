"""The hybrid logical clock that says in which order changes are shown.

Kulkarni, Demirbas, Madappa, Avva, Leone: "Logical Physical Clocks", OPODIS 2014, figure 5. A clock
is {wall: milliseconds since 1970, count}. `now` is what the device's own clock says.
"""

from typing import Any


def tick(clock: dict[str, Any], now: int) -> dict[str, Any]:
    """The clock after something was changed here."""
    if now > clock["wall"]:
        return {"wall": now, "count": 0}
    return {"wall": clock["wall"], "count": clock["count"] + 1}


def heard(clock: dict[str, Any], other: dict[str, Any], now: int) -> dict[str, Any]:
    """The clock after a change of another device was taken in; `other`: what that change bears."""
    wall = max(clock["wall"], other["wall"], now)
    count = -1
    if clock["wall"] == wall:
        count = max(count, clock["count"])
    if other["wall"] == wall:
        count = max(count, other["count"])
    return {"wall": wall, "count": count + 1}
