"""The figures of the minute at the stall as a table in plain text."""

from typing import Any

from tests.bench.table import Row, aligned, number

HEAD = (
    "start screen to noted", "questions", "taps", "words", "seconds", "practised",
    "within 60 s", "item right", "variant right", "sure and wrong",
)  # fmt: skip


def stall_table(found: dict[str, Any]) -> str:
    """Median / 90 of 100 of every way, and what the other things take."""
    rows: list[Row] = [HEAD]
    for way in found["ways"]:
        pairs = [way[name] for name in ("questions", "taps", "words", "seconds", "practised")]
        rows.append(
            (
                f"{way['way']} first, {way['collection']} collection",
                *(f"{one:.0f} / {other:.0f}" for one, other in pairs),
                *(str(way[n]) for n in ("within_60", "item_right", "variant_right")),
                str(way["sure_and_wrong"]),
            )
        )
    done: list[Row] = [("what else", "taps", "keys", "scrolls", "words", "seconds")]
    for task in found["tasks"]:
        counts = [str(task[name]) for name in ("taps", "keys", "scrolls", "words")]
        done.append((task["task"], *counts, number(task["seconds"])))
    return "\n".join(
        [
            f"The minute at the stall: {found['pieces']} pieces, seed {found['seed']}; "
            "median / 90 of 100.",
            *aligned(rows),
            "",
            *aligned(spent(found)),
            "",
            *aligned(done),
        ]
    )


OPERATORS = ("looking", "reading", "deciding", "tapping", "typing", "scrolling")


def spent(found: dict[str, Any]) -> list[Row]:
    """Where the seconds of a piece go, as means: by screen and by what is done there."""
    rows: list[Row] = [("where they go", "screen", "times", *OPERATORS, "together")]
    for way in found["ways"]:
        for one in way["screens"]:
            each = [one[name] for name in OPERATORS]
            told = [f"{seconds:.1f}" for seconds in [one["times"], *each, sum(each)]]
            rows.append((f"{way['way']} first, {way['collection']}", one["screen"], *told))
    return rows
