"""Everything that the lab measures of one pack."""

import random
import sys
from dataclasses import dataclass
from typing import TextIO

import msgspec

from identify.core.alike import without_errors, worths
from identify.core.asking import WORTH
from identify.core.belief import believe, prepare, prepare_with
from identify.core.misreading import usual_errors
from identify.core.reasons import variant_chances
from identify.core.session import new_session
from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.worth import entropy
from identify.lab.calibration import EDGES, Stated, calibration, error_of, stated
from identify.lab.least_questions import huffman, most_answers, most_told, signatures
from identify.lab.leaving import MISSING, Left, Nothing, by_item, left_out, none_of_these
from identify.lab.pairs import Alike, alike_pairs
from identify.lab.trials import Asker, Trial, mean, trials
from identify.reference.compiled import CompiledPack

WRONG = 0.05  # share of wrong answers where there are more than the engine allows for
PERFECT, STALL, HARD = "perfect answers", "at the stall", "5 % wrong answers"
LOOKS = 4  # pieces looked at for each calibration, for each piece identified


@dataclass
class Scenario:
    """Sessions under one set of circumstances, in the best and (where not empty) a random order."""

    name: str
    best: list[Trial]
    random: list[Trial]
    bits: float  # to find out before the first question
    most: float  # bits that no question can tell more of

    def bits_learnt(self, done: list[Trial]) -> float:
        """Bits that these sessions told, by the mean."""
        return self.bits - mean(trial.bits for trial in done)

    def least(self, done: list[Trial]) -> float:
        """The entropy bound: no fewer questions could have told as much."""
        return self.bits_learnt(done) / self.most


@dataclass
class Calibration:
    """How far the chances stated of variants, or of swapped parts, came true; with its table."""

    scenario: str
    what: str
    error: float
    table: list[list[float]]


@dataclass
class Findings:
    """What the report shows."""

    pack: Pack
    count: int
    seed: int
    bits: float  # of what can be told apart
    huffman_two: float
    huffman_most: float
    answers: int
    scenarios: list[Scenario]
    calibrations: list[Calibration]
    left: list[Left]
    nothing: list[Nothing]
    alike: list[Alike]
    worth: list[float]

    @property
    def asked(self) -> list[float]:
        """For each feature, the share of the stall's sessions in which it was asked."""
        best = self.scenarios[1].best
        places = range(len(self.pack["features"]))
        return [mean(place in trial.asked for trial in best) for place in places]

    @property
    def useless(self) -> list[int]:
        """Features that were never asked, are worth nothing at first, and tell no alike pair."""
        telling = {place for pair in self.alike for place, _ in pair.would}
        asked = self.asked
        return [
            place
            for place, bits in enumerate(self.worth)
            if bits < WORTH and not asked[place] and place not in telling
            if len(self.pack["features"][place]["states"]) > 1
        ]


class Progress:
    """A counter on the terminal, in one line; nothing where the output is not a terminal."""

    def __init__(self, whole: int, out: TextIO = sys.stderr) -> None:
        self.whole = whole
        self.done = 0
        self.out = out
        self.what = ""

    def step(self) -> None:
        """One more is done."""
        self.done += 1
        if self.out.isatty():
            share = self.done / self.whole
            bar = "#" * int(24 * share)
            self.out.write(f"\r[{bar:24}] {share:4.0%}  {self.what:40}")
            self.out.flush()

    def end(self) -> None:
        """Leave an empty line."""
        if self.out.isatty():
            self.out.write("\r" + " " * 74 + "\r")
            self.out.flush()


class _Lab:
    """One run: a pack, the chance, how many pieces, the counter."""

    def __init__(self, pack: Pack, count: int, seed: int, out: TextIO) -> None:
        self.rng = random.Random(seed)
        self.count = count
        self.exact = without_errors(pack)
        self.usual = prepare(pack)
        self.wrong = prepare_with(pack, {**usual_errors(), "sure": WRONG})
        self.progress = Progress(count * (7 + len(MISSING) + 2 * LOOKS), out)

    def scenario(self, name: str, asker: Asker, reader: Engine, both: bool = True) -> Scenario:
        """Sessions of one sort; in a random order too, if `both`."""
        self.progress.what = name
        best = trials(self.rng, asker, reader, self.count, self.progress.step)
        shuffled = []
        if both:
            self.progress.what = f"{name}, random order"
            step = self.progress.step
            shuffled = trials(self.rng, asker, reader, self.count, step, shuffled=True)
        start = believe(asker.engine, new_session(asker.engine))
        before = entropy([*variant_chances(asker.engine, start), sum(start["unrecorded"])])
        return Scenario(name, best, shuffled, before, most_told(reader))

    def scenarios(self) -> list[Scenario]:
        """With perfect answers, as usual at a stall, and with more answers wrong than usual."""
        asker = Asker(self.usual)
        return [
            self.scenario(PERFECT, Asker(self.exact), self.exact),
            self.scenario(STALL, asker, self.usual),
            self.scenario(HARD, asker, self.wrong, both=False),
        ]

    def calibrations(self) -> list[Calibration]:
        """What was stated of pieces with swapped parts, as usual and with more answers wrong."""
        out = []
        for name, reader in ((STALL, self.usual), (HARD, self.wrong)):
            self.progress.what = f"calibration, {name}"
            noted: dict[str, Stated] = {"variant": [], "swapped": []}
            for _ in range(LOOKS * self.count):
                for what, said in stated(self.rng, self.usual, reader).items():
                    noted[what] += said
                self.progress.step()
            for what, said in noted.items():
                if said:
                    table = calibration(said, EDGES)
                    out.append(Calibration(name, what, error_of(table), table))
        return out

    def left(self) -> list[Left]:
        """Pieces of items, and of variants of an item that has more, that are left out."""
        items = by_item(self.usual["pack"])
        variants = [[place] for group in items if len(group) > 1 for place in group]
        out = []
        for what, groups in (("an item", items), ("a variant", variants)):
            self.progress.what = f"{what} left out"
            step = self.progress.step
            out.append(Left(what, left_out(self.rng, self.usual, groups, self.count, step)))
        return out

    def nothing(self) -> list[Nothing]:
        """What is said of "none of these" where much is missing."""
        out = []
        for missing in MISSING:
            self.progress.what = "none of these"
            step = self.progress.step
            figures = none_of_these(self.rng, self.usual, missing, self.count, step)
            out += [figures] if figures else []
        return out


def measure(compiled: CompiledPack, count: int, seed: int, out: TextIO = sys.stderr) -> Findings:
    """Identify so many pieces of each sort, and look at the pack as a whole."""
    pack = msgspec.to_builtins(compiled)
    lab = _Lab(pack, count, seed, out)
    scenarios = lab.scenarios()
    calibrations = lab.calibrations()
    left, nothing = lab.left(), lab.nothing()
    lab.progress.end()
    groups = signatures(pack)
    answers = most_answers(pack)
    return Findings(
        pack=pack,
        count=count,
        seed=seed,
        bits=entropy(groups),
        huffman_two=huffman(groups),
        huffman_most=huffman(groups, answers),
        answers=answers,
        scenarios=scenarios,
        calibrations=calibrations,
        left=left,
        nothing=nothing,
        alike=alike_pairs(lab.exact),
        worth=worths(lab.exact),
    )
