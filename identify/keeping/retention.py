"""Which backups stay: the newest of each of the last 7 days, 5 weeks and 12 months that have any.

Days, weeks (ISO 8601) and months are those of UTC. They are counted by what is there and not from
today, so that a server that stood still for a year deletes nothing for it.
"""

from collections.abc import Callable, Iterable
from datetime import UTC, datetime, timedelta

DAYS, WEEKS, MONTHS = 7, 5, 12
NIGHT = 3  # o'clock


def to_keep(moments: Iterable[datetime]) -> set[datetime]:
    """Those of `moments` whose backups stay."""
    newest_first = sorted(moments, reverse=True)
    kept: set[datetime] = set()
    periods: list[tuple[Callable[[datetime], tuple[int, ...]], int]] = [
        (lambda moment: moment.astimezone(UTC).timetuple()[:3], DAYS),
        (lambda moment: moment.astimezone(UTC).isocalendar()[:2], WEEKS),
        (lambda moment: moment.astimezone(UTC).timetuple()[:2], MONTHS),
    ]
    for period, most in periods:
        seen: set[tuple[int, ...]] = set()
        for moment in newest_first:
            if period(moment) not in seen and len(seen) < most:
                seen.add(period(moment))
                kept.add(moment)
    return kept


def night_before(now: datetime) -> datetime:
    """The latest 3 o'clock that is not after `now`, by the clock of its time zone."""
    night = now.replace(hour=NIGHT, minute=0, second=0, microsecond=0)
    return night if night <= now else night - timedelta(days=1)
