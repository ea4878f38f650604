"""The clock of shared records against what its authors publish of hybrid logical clocks.

Kulkarni, Demirbas, Madappa, Avva, Leone, "Logical Physical Clocks and Consistent Snapshots in
Globally Distributed Databases" (University at Buffalo, technical report 2014-04): an event that
happened before another has the smaller clock, and `wall` is the greatest time heard of. The model
and its bounds are those of M. Demirbas's specification in TLA+, github.com/muratdem/HLC, hlc.tla:
TypeOK (l >= pt), Boundedl (l < pt + EPS), Boundedc (c < N * (EPS + 1)); each event takes a tick of
the device's own clock, and no clock runs EPS ahead of another.
"""

import random

import pytest

from identify.core.clock import heard, tick

EVENTS = 400


@pytest.mark.parametrize("devices", [2, 3, 5])
@pytest.mark.parametrize("eps", [1, 3, 10])
def test_the_authors_bounds_hold(devices, eps):
    chance = random.Random(devices * 100 + eps)
    own = [0] * devices
    clocks = [{"wall": 0, "count": 0} for _ in range(devices)]
    past: list[set[int]] = [set() for _ in range(devices)]  # events that each device knows of
    greatest = [0] * devices
    events: list[tuple[int, int]] = []
    before: list[set[int]] = []
    sent: list[tuple[dict[str, int], set[int], int]] = []
    most = 0
    while len(events) < EVENTS:
        d = chance.randrange(devices)
        if any(own[d] >= other + eps for other in own):
            continue
        own[d] += 1
        greatest[d] = max(greatest[d], own[d])
        if sent and chance.random() < 0.5:
            message, known, time = chance.choice(sent)  # late, twice, in any order
            clocks[d] = heard(clocks[d], message, own[d])
            past[d] |= known
            greatest[d] = max(greatest[d], time)
        else:
            clocks[d] = tick(clocks[d], own[d])
        before.append(set(past[d]))
        past[d].add(len(events))
        events.append((clocks[d]["wall"], clocks[d]["count"]))
        sent.append((clocks[d], set(past[d]), greatest[d]))
        assert clocks[d]["wall"] == greatest[d]
        assert own[d] <= clocks[d]["wall"] <= own[d] + eps
        assert clocks[d]["count"] < devices * (eps + 1)
        most = max(most, clocks[d]["count"])
    for event, known in enumerate(before):
        assert all(events[earlier] < events[event] for earlier in known)
    assert most > 0, "the counter was never needed"


def test_a_clock_that_is_years_off_stops_no_other_from_going_on():
    ahead = tick({"wall": 0, "count": 0}, 10**13)
    here = heard({"wall": 5, "count": 0}, ahead, 1000)
    assert here == {"wall": 10**13, "count": 1}
    assert tick(here, 2000) == {"wall": 10**13, "count": 2}
    assert tick(here, 10**13 + 1) == {"wall": 10**13 + 1, "count": 0}
    assert heard(here, {"wall": 3, "count": 7}, 2000) == {"wall": 10**13, "count": 2}
    assert heard(here, {"wall": 10**13, "count": 7}, 2000) == {"wall": 10**13, "count": 8}
