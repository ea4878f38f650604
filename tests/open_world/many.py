"""Many sessions at once: pieces are drawn here, and asked for by the engine that the phone has.

That is the same source (tests/browser/engines.py compares them), and many times as quick.
"""

import random
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import orjson
from deno import find_deno_bin

from identify import phone
from tests.open_world.judge import SAID
from tests.open_world.world import Conditions, Found, World

LOOKS = 3  # readings of each feature: the first look, and when it is asked again


@dataclass(frozen=True)
class Job:
    """Pieces that are looked at with one compiled pack in the hand."""

    pack: dict[str, Any]
    pieces: Sequence[Found]


@dataclass(frozen=True)
class Ended:
    """How one session ended."""

    truth: str
    name: str
    chance: float
    unrecorded: float
    how_sure: str
    asked: int
    seconds: float
    stop: str
    gone: bool  # the variant that it is of is not in the pack
    replaced: list[tuple[float, bool]]  # of each part that was looked at: what was said, what is so

    @property
    def right(self) -> bool:
        """Whether the leader is the truth."""
        return self.name == self.truth

    @property
    def said(self) -> bool:
        """Whether a name is said as if it were so."""
        return self.chance >= SAID

    @property
    def wrongly_sure(self) -> bool:
        """Whether a wrong name is."""
        return self.said and not self.right


def ended(
    rng: random.Random, world: World, jobs: Sequence[Job], like: Conditions, into: Path
) -> list[Ended]:
    """Identify every piece of every job."""
    into.mkdir(parents=True, exist_ok=True)
    (into / "engine.mjs").write_text(phone.engine_module())
    listed = []
    for n, job in enumerate(jobs):
        file = into / f"pack-{n}.json"
        file.write_bytes(orjson.dumps(job.pack))
        pieces = [looked_at(rng, world, found, like) for found in job.pieces]
        listed.append({"pack": str(file), "pieces": pieces})
    (into / "jobs.json").write_bytes(orjson.dumps(listed))
    script = Path(__file__).with_name("sessions.js")
    subprocess.run([find_deno_bin(), "run", "-A", str(script), str(into)], check=True)
    outcomes = orjson.loads((into / "outcomes.json").read_bytes())
    return [
        outcome_of(world, job, found, each)
        for job, done in zip(jobs, outcomes, strict=True)
        for found, each in zip(job.pieces, done, strict=True)
    ]


def looked_at(rng: random.Random, world: World, found: Found, like: Conditions) -> dict[str, Any]:
    """What is read of each feature of a piece, look by look, and which parts are not there."""
    misread = world.slips(rng, like)
    reads = {
        feature["id"]: [world.read(rng, found, place, misread) for _ in range(LOOKS)]
        for place, feature in enumerate(world.pack["features"])
    }
    missing = ["box"] if rng.random() < like.boxless else []
    return {"reads": reads, "missing": missing}


def outcome_of(world: World, job: Job, found: Found, each: dict[str, Any]) -> Ended:
    """What a session came to, beside what is so."""
    pack = world.pack
    truth = pack["variants"][pack["rows"]["variant"][found.row]]["id"]
    swapped = {pack["parts"][part]["id"] for part in found.swapped}
    return Ended(
        truth=truth,
        name=each["name"],
        chance=each["chance"],
        unrecorded=each["unrecorded"],
        how_sure=each["how_sure"],
        asked=each["asked"],
        seconds=each["seconds"],
        stop=each["stop"],
        gone=truth not in {variant["id"] for variant in job.pack["variants"]},
        replaced=[(chance, part in swapped) for part, chance in each["replaced"]],
    )
