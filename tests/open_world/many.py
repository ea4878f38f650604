"""Many sessions at once: pieces are drawn here, and asked for by the engine that the phone has.

That is the same source (tests/browser/engines.py compares them), and some forty times as quick.
"""

import random
import subprocess
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from typing import Any

import orjson
from deno import find_deno_bin

from identify import phone
from identify.lab.calibration import EDGES, calibration, error_of
from tests.open_world.judge import SAID
from tests.open_world.world import Conditions, Found, World

LOOKS = 3  # readings of each feature: the first look, and when it is asked again


@dataclass(frozen=True)
class Job:
    """Pieces that are looked at with one pack, compiled, in the hand."""

    pack: dict[str, Any]
    pieces: Sequence[Found]


@dataclass(frozen=True)
class Ended:
    """How one session ended."""

    truth: str
    name: str
    chance: float
    unrecorded: float
    asked: int
    gone: bool  # the item that it is of is not in the pack
    stop: str

    @property
    def right(self) -> bool:
        """Whether the leader is the truth."""
        return self.name == self.truth

    @property
    def wrongly_sure(self) -> bool:
        """Whether a wrong name is said with nine in ten and more."""
        return self.chance >= SAID and not self.right


def ended(
    rng: random.Random, world: World, jobs: Sequence[Job], like: Conditions, into: Path
) -> list[Ended]:
    """Identify every piece of every job."""
    into.mkdir(parents=True, exist_ok=True)
    (into / "engine.mjs").write_text(phone.engine_module())
    features = world.pack["features"]
    listed = []
    for n, job in enumerate(jobs):
        file = into / f"pack-{n}.json"
        file.write_bytes(orjson.dumps(job.pack))
        pieces = [
            {
                feature["id"]: [world.read(rng, found, place, like.misread) for _ in range(LOOKS)]
                for place, feature in enumerate(features)
            }
            for found in job.pieces
        ]
        listed.append({"pack": str(file), "pieces": pieces})
    (into / "jobs.json").write_bytes(orjson.dumps(listed))
    script = Path(__file__).with_name("sessions.js")
    subprocess.run([find_deno_bin(), "run", "-A", str(script), str(into)], check=True)
    outcomes = orjson.loads((into / "outcomes.json").read_bytes())
    out = []
    for job, done in zip(jobs, outcomes, strict=True):
        numbers = {item["number"] for item in job.pack["items"]}
        for found, outcome in zip(job.pieces, done, strict=True):
            variant = world.pack["variants"][world.pack["rows"]["variant"][found.row]]
            number = world.pack["items"][variant["item"]]["number"]
            out.append(
                Ended(
                    truth=variant["id"],
                    name=outcome["name"],
                    chance=outcome["chance"],
                    unrecorded=outcome["unrecorded"],
                    asked=outcome["asked"],
                    gone=number not in numbers,
                    stop=outcome["stop"],
                )
            )
    return out


def questions(done: Sequence[Ended]) -> float:
    """The median of the questions."""
    return median(each.asked for each in done)


def off_by(done: Sequence[Ended]) -> float:
    """The expected calibration error of what is said of the leader."""
    return error_of(calibration([(each.chance, each.right) for each in done], EDGES))
