"""The least number of questions that could do, whoever asks them.

Entropy: an answer with k states tells at most log2 k bits (Shannon 1948), less what misreading
takes away. Huffman (1952): the least mean number of questions with at most k answers each, when any
question could be asked and every answer is right.
"""

import heapq
from math import log2
from typing import Any

from identify.core.types.engine import Engine
from identify.core.types.pack import Pack
from identify.core.worth import entropy


def signatures(pack: Pack) -> list[float]:
    """The chance of each group of variants that are recorded alike in all that can be seen with
    nothing in the hand.
    """
    visible = [n for n, f in enumerate(pack["features"]) if f["needs"] == "nothing"]
    rows = pack["rows"]
    recorded: list[dict[tuple[int, ...], float]] = [{} for _ in pack["variants"]]
    priors = [0.0] * len(recorded)
    for i, variant in enumerate(rows["variant"]):
        key = (rows["kind"][i], *(pack["cells"][n]["codes"][i] for n in visible))
        recorded[variant][key] = recorded[variant].get(key, 0.0) + rows["prior"][i]
        priors[variant] += rows["prior"][i]
    groups: dict[tuple[Any, ...], float] = {}
    for prior, shares in zip(priors, recorded, strict=True):
        if prior > 0:
            alike = tuple(sorted((key, round(p / prior, 9)) for key, p in shares.items()))
            groups[alike] = groups.get(alike, 0.0) + prior
    return list(groups.values())


def huffman(chances: list[float], answers: int = 2) -> float:
    """Mean length of a Huffman code with so many signs."""
    heap = list(chances)
    while (len(heap) - 1) % (answers - 1) != 0:
        heap.append(0.0)
    heapq.heapify(heap)
    length = 0.0
    while len(heap) > 1:
        merged = sum(heapq.heappop(heap) for _ in range(answers))
        length += merged
        heapq.heappush(heap, merged)
    return length


def most_answers(pack: Pack) -> int:
    """The most states that a feature has which needs nothing to be seen."""
    counts = [len(f["states"]) for f in pack["features"] if f["needs"] == "nothing"]
    return max([2, *counts])


def most_told(engine: Engine) -> float:
    """No question can tell more bits than this, the misread answers allowed for: log2 k, less the
    uncertainty of the answer where the state is known.
    """
    most = 0.0
    for feature, rows in zip(engine["pack"]["features"], engine["sure"], strict=True):
        if feature["needs"] == "nothing" and len(rows) > 1:
            noise = min(entropy([row[s] for row in rows]) for s in range(len(rows)))
            most = max(most, log2(len(rows)) - noise)
    return most
