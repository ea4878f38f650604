"""The parts of the bench that are asked for one at a time: what each needs, and how it is told."""

from collections.abc import Callable
from typing import Any, NamedTuple

from identify import phone
from tests.bench.against import against_table, compared
from tests.bench.aims import aims_table, all_aims
from tests.bench.lifetime import SIZES, lifetime, lifetime_table
from tests.bench.own_ranges import compile_table, compile_times
from tests.bench.stall import played
from tests.bench.stall_table import stall_table
from tests.bench.steps_of import steps_of, steps_table
from tests.bench.ten_devices import devices_table, ten_devices

Told = Callable[[str], None]
OPERATIONS = 50_000
FOR_EACH_PHOTO = 16  # operations


class Asked(NamedTuple):
    """What was asked for on the command line."""

    seed: int
    pieces: list[int]  # [] as is usual for the part
    against: str
    rounds: int


def stall(playwright: Any, asked: Asked, told: Told) -> tuple[dict[str, Any], str]:
    """The minute at the stall: the figures of a person with the app."""
    found = played(playwright, (asked.pieces or [100])[0], asked.seed, lambda: told("."))
    return found, stall_table(found)


def of_ones_own(playwright: Any, asked: Asked, _: Told) -> tuple[dict[str, Any], str]:
    """How long ranges of one's own take to be made anew, by size."""
    found = compile_times(playwright, asked.seed)
    return {"compile": found}, compile_table(found)


def of_a_lifetime(playwright: Any, asked: Asked, told: Told) -> tuple[dict[str, Any], str]:
    """What each thing costs as the collection grows."""
    sizes = tuple(asked.pieces) or SIZES
    found = lifetime(playwright, sizes, asked.seed, told)
    return {"lifetime": found}, lifetime_table(found)


def of_devices(_: Any, asked: Asked, __: Told) -> tuple[dict[str, Any], str]:
    """Ten devices at once against the server."""
    operations = (asked.pieces or [OPERATIONS])[0]
    found = ten_devices(operations, operations // FOR_EACH_PHOTO)
    return found, devices_table(found)


def of_steps(playwright: Any, asked: Asked, told: Told) -> tuple[dict[str, Any], str]:
    """One tap and one start, step by step."""
    found = steps_of(playwright, phone.site(phone.demo_packs()), asked.rounds, told)
    return {"steps": found}, steps_table(found)


def every_aim(playwright: Any, asked: Asked, told: Told) -> tuple[dict[str, Any], str]:
    """Every aim beside what was reached."""
    found = all_aims(playwright, (asked.pieces or [20_000])[0], asked.seed, told)
    return found, aims_table(found)


def two_commits(playwright: Any, asked: Asked, told: Told) -> tuple[dict[str, Any], str]:
    """The app of another commit beside this one's, by turns."""
    found = compared(playwright, asked.against, asked.rounds, told)
    return found, against_table(found)


PARTS = {
    "stall": stall,
    "compile": of_ones_own,
    "lifetime": of_a_lifetime,
    "devices": of_devices,
    "steps": of_steps,
    "aims": every_aim,
}
