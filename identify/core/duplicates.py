"""Duplicates: found from the pieces, and which copies to part with."""

from .condition import standard
from .holdings import hold
from .lists import best_first, empty_lists
from .types.engine import Engine
from .types.holdings import Duplicate, Held
from .types.records import Piece

KNOWN = 0.95  # a piece counts as a copy of what it is with this chance


def copy_of(entry: Held, by: str) -> int:
    """The variant (by "variant") or item (by "item") that a piece surely is, else -1."""
    where = entry["at"] if by == "variant" else entry["items"]
    chances = entry["chances"] if by == "variant" else entry["shares"]
    for n in range(len(where)):
        if chances[n] >= KNOWN:
            return where[n]
    return -1


def duplicates(engine: Engine, pieces: list[Piece], by: str) -> list[Duplicate]:
    """What is owned twice or more, in the pack's order.

    by: "variant" or "item". Copies kept on purpose, spares and donors are left out. Worst is by
    condition (one that is not said counts as worst), then without a box, then with the most parts
    missing or replaced.
    """
    variants = engine["pack"]["variants"]
    count = len(variants) if by == "variant" else len(engine["pack"]["items"])
    copies = empty_lists(count)
    for entry in hold(engine, pieces)["owned"]:
        place = copy_of(entry, by)
        if place >= 0 and entry["record"].get("kept", False) not in [True]:
            copies[place].append(entry["record"])
    out: list[Duplicate] = []
    for place in range(count):
        if len(copies[place]) > 1:
            best = best_first([standard(piece) for piece in copies[place]])
            part_with: list[str] = []
            for n in range(1, len(best)):
                part_with.append(copies[place][best[len(best) - n]]["id"])
            out.append(
                {
                    "item": variants[place]["item"] if by == "variant" else place,
                    "variant": place if by == "variant" else -1,
                    "keep": copies[place][best[0]]["id"],
                    "part_with": part_with,
                }
            )
    return out
