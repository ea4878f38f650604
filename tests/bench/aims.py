"""Every aim of speed beside what was reached, in one run."""

import importlib
import importlib.util
from collections.abc import Callable
from typing import Any, NamedTuple

import msgspec

from identify import phone
from identify.lab.generating import made_pack
from identify.reference.compiled import pack_bytes
from identify.shipped import PACKS
from tests.bench import taps
from tests.bench.engine import answers_at
from tests.bench.first_visit import first_visits
from tests.bench.lifetime import SLOW, lifetime
from tests.bench.running import only_pack
from tests.bench.table import aligned, number

Told = Callable[[str], None]
ROWS = 20_000
LONG_TASK = 50  # milliseconds
ALL_STEPS = "all steps"


class Aim(NamedTuple):
    """One aim: at most so much, of a figure that stands at a place of what was found."""

    name: str
    most: float
    unit: str
    at: tuple[str, ...]


AIMS = (
    Aim("tap to paint at 20,000 rows, slowed 4 times: 98 of 100", 50, "ms", ("taps", "p98")),
    Aim("the same, the first tap of a start", 100, "ms", ("taps", "first")),
    Aim("cold start without a network, slowed 4 times", 500, "ms", ("cold", "median")),
    Aim("first visit on slow 4G, slowed 4 times: start screen", 1200, "ms", ("visit", "shown")),
    Aim("the same, first question", 2000, "ms", ("visit", "used")),
    Aim("the same, what moved", 0.0, "", ("visit", "moved")),
    Aim("scripts, compressed", 70 * 1024, "bytes", ("cold", "sent", "script")),
    Aim("compiled engine / the lower floor, 20,000 rows", 2, "", ("answers", "core_to_lowest")),
    Aim("opening", 1000, "ms", ("steps", "open the app", "clock")),
    Aim("opening, slowed 4 times", 1000, "ms", ("steps", f"{SLOW}open the app", "clock")),
    Aim("number search", 50, "ms", ("steps", "a number search", "thread")),
    Aim("scrolling: longest task", LONG_TASK, "ms", ("steps", "scroll the list", "longest")),
    Aim(
        "the same, slowed 4 times",
        LONG_TASK,
        "ms",
        ("steps", f"{SLOW}scroll the list", "longest"),
    ),
    Aim("a save", 50, "ms", ("steps", "a save", "thread")),
    Aim("a backup: the tab grows by", 150, "MB", ("steps", "a backup", "most_mb")),
    Aim("taps while all is sent: 98 of 100", 100, "ms", ("steps", "first sync", "p98")),
    Aim(
        "taps while all comes, slowed 4 times: 98 of 100",
        100,
        "ms",
        ("steps", "first sync of another phone", "p98"),
    ),
    Aim("longest task of any step, not slowed", LONG_TASK, "ms", ("steps", ALL_STEPS, "longest")),
)


def all_aims(playwright: Any, pieces: int, seed: int, told: Told) -> dict[str, Any]:
    """Measures everything that an aim is about: {aims: [{name, wanted, reached, unit, met}], and
    what was found}.
    """
    sklearn = importlib.util.find_spec("sklearn") is not None
    peer = importlib.import_module("tests.bench.peer").with_peer if sklearn else None
    pack = made_pack(ROWS, seed)
    packed = pack_bytes(pack)
    told(f"\nan answer at {ROWS} rows")
    found: dict[str, Any] = {"answers": answers_at(packed, playwright, peer, 4, 5)}
    told(f": {found['answers']}")
    told(f"\ntaps at {ROWS} rows ")
    files = only_pack(phone.site([PACKS / "pellmarsh"]), pack, packed)
    tapped = msgspec.json.decode(packed)
    found["taps"] = taps.tap_times(playwright, files, tapped, (8, taps.PAUSE), lambda: told("."))
    told(f"{found['taps']}\ncold starts ")
    demo = phone.site(phone.demo_packs())
    found["cold"] = taps.cold_starts(playwright, demo, 9, lambda: told("."))
    told(f"{found['cold']}\nfirst visits ")
    found["visit"] = first_visits(playwright, demo, 9, lambda: told("."))
    told(f"{found['visit']}")
    found["lifetime"] = lifetime(playwright, (pieces,), seed, told)
    return {"aims": list(reached(found))} | found


def reached(found: dict[str, Any]) -> list[dict[str, Any]]:
    """Each aim, and what was reached; None where it was not measured."""
    steps = dict(found["lifetime"][0]["steps"])
    plain = {name: one for name, one in steps.items() if "another phone" not in name}
    longest = max(one["longest"] for name, one in plain.items() if not name.startswith(SLOW))
    steps[ALL_STEPS] = {"longest": longest}
    out = []
    for aim in AIMS:
        value: Any = found | {"steps": steps}
        for name in aim.at:
            value = value.get(name) if value is not None else None
        met = value is not None and value <= aim.most
        out.append(
            {"name": aim.name, "wanted": aim.most, "unit": aim.unit, "reached": value, "met": met}
        )
    return out


def aims_table(found: dict[str, Any]) -> str:
    """A row an aim; then every step of the lifetime's collection with a task above 50 ms."""
    rows: list[tuple[str, ...]] = [("aim", "at most", "reached", "met")]
    for aim in found["aims"]:
        wanted = f"{number(aim['wanted'])} {aim['unit']}".strip()
        rows.append((aim["name"], wanted, number(aim["reached"]), "yes" if aim["met"] else "NO"))
    steps = found["lifetime"][0]["steps"]
    late = [
        f"{name}: {number(step['longest'])} ms, {step['over']} tasks"
        for name, step in steps.items()
        if step["longest"] > LONG_TASK
    ]
    said = [f"Steps with a task above {LONG_TASK} ms:", *late] if late else []
    return "\n".join([*aligned(rows), *said])
