"""What can be told apart at all: every pair, by the rules of the core (`core/alike.py`)."""

from dataclasses import dataclass

from identify.core.alike import alike_with, to_part
from identify.core.types.engine import Engine


@dataclass
class Alike:
    """Two variants that nothing visible tells apart, and the features that would: (place, bits)."""

    one: int
    other: int
    would: list[tuple[int, float]]


def alike_pairs(engine: Engine) -> list[Alike]:
    """Every pair of variants between which the app has nothing visible left to ask, whatever was
    answered; the commonest first. engine: without errors and swaps.
    """
    apart = to_part(engine)
    pairs = [pair for place in range(len(apart["met"])) for pair in alike_with(apart, place)]
    return [
        Alike(pair["one"], pair["other"], list(zip(pair["would"], pair["bits"], strict=True)))
        for pair in sorted(pairs, key=lambda pair: -pair["met"])
    ]
