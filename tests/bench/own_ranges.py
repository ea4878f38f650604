"""How long a range of one's own takes to be made anew after a change, by its size."""

import copy
import random
import statistics
import time
from typing import Any

from playwright.sync_api import Playwright

from identify import phone
from identify.core.ranges.compiling import compiled_range
from identify.core.ranges.own_rows import rows_of_records
from identify.core.ranges.usable import usable
from identify.reference.marks_to_merge import marks_to_merge
from tests.bench.serving import ARGS, browser_path, served
from tests.own_ranges import row

SIZES = (100, 1_000, 5_000)  # variants
FEATURES, STATES, KINDS, CHANGES = 20, 4, 3, 6
ROUNDS = 5
TOGETHER = """async ([whole, records, marks, rounds]) => {
  const ranging = await import('./ranging.js');
  const took = [];
  for (let round = 0; round < rounds; round += 1) {
    const given = structuredClone([whole, records, marks]);
    const began = performance.now();
    const found = ranging.usable(ranging.rows_of_records(given[0], given[1]), given[2]);
    ranging.compiled_range(found.rows, found.first, found.last, given[2]);
    took.push(performance.now() - began);
  }
  return took;
}"""


def records_of_size(variants: int, seed: int) -> list[dict[str, Any]]:
    """The records of a range with so many variants, two to an item, by chance."""
    rng = random.Random(seed)
    out = [row("range", "r0", key="made", name="Made", years="1950/1969")]
    kinds = [f"kind{n}" for n in range(KINDS)]
    out += [row("range_kind", one, range="r0", key=one, name=one, plural=one) for one in kinds]
    out.append(row("range_source", "book", range="r0", key="book", what="A book", trust=0.8))
    seen = {}
    for n in range(FEATURES):
        feature = f"feature{n}"
        states = [f"{feature}s{m}" for m in range(STATES)]
        seen[feature] = states
        out.append(row("range_feature", feature, range="r0", at=n, key=feature, name=feature,
                       question="Which?", seconds=3))  # fmt: skip
        out += [row("range_state", one, range="r0", feature=feature, at=m, key=f"s{m}", name=one)
                for m, one in enumerate(states)]  # fmt: skip
    for n in range(CHANGES):
        feature = f"feature{n}"
        out.append(row("range_change", f"change{n}", range="r0", feature=feature, source="book",
                       state=seen[feature][1], since=str(1953 + 2 * n)))  # fmt: skip
    for n in range(variants // 2):
        looks = {f"seen_{one}": [rng.choice(seen[one])] for one in list(seen)[CHANGES:]}
        first = rng.randint(1950, 1962)
        out.append(row("range_item", f"item{n}", range="r0", at=n, number=str(n), name="Item",
                       kind=rng.choice(kinds), years=f"{first}/{first + 6}", source="book",
                       **looks))  # fmt: skip
        for m in range(2):
            own = rng.choice(list(seen)[CHANGES:])
            differs = {f"seen_{own}": [rng.choice(seen[own])]}
            out.append(row("range_variant", f"variant{n}_{m}", range="r0", item=f"item{n}", at=m,
                           key=f"v{n}_{m}", name="", common=1, **differs))  # fmt: skip
    return out


def in_python(records: list[dict[str, Any]], marks: Any) -> float:
    """Milliseconds, the median."""
    took = []
    for _ in range(ROUNDS):
        whole, *rows = copy.deepcopy(records)
        given = copy.deepcopy(marks)
        began = time.perf_counter()
        found = usable(rows_of_records(whole, rows), given)
        compiled_range(found["rows"], found["first"], found["last"], given)
        took.append(1000 * (time.perf_counter() - began))
    return statistics.median(took)


def compile_times(
    playwright: Playwright | None, seed: int, sizes: tuple[int, ...] = SIZES
) -> list[dict[str, Any]]:
    """For each size the milliseconds from records to the compiled range, in Python and compiled in
    Chromium (None without one), and how much longer than the size before.
    """
    marks = marks_to_merge()
    out: list[dict[str, Any]] = []
    for size in sizes:
        records = records_of_size(size, seed)
        entry: dict[str, Any] = {"variants": size, "python": in_python(records, marks)}
        entry["compiled"] = None
        if playwright is not None:
            entry["compiled"] = in_chromium(playwright, records, marks)
        main = "compiled" if entry["compiled"] is not None else "python"
        entry["ratio"] = entry[main] / out[-1][main] if out else 1.0
        out.append(entry)
    return out


def in_chromium(playwright: Playwright, records: list[dict[str, Any]], marks: Any) -> float:
    """Milliseconds of the compiled compiler, the median but for the first."""
    html = b"<!doctype html><title>Compiling</title>"
    files = {"index.html": html, "ranging.js": phone.ranging_module().encode()}
    with served(files) as site:
        browser = playwright.chromium.launch(executable_path=browser_path(), args=ARGS)
        page = browser.new_page()
        page.goto(site.url)
        whole, *rows = records
        took = page.evaluate(TOGETHER, [whole, rows, marks, ROUNDS + 1])
        browser.close()
    return statistics.median(took[1:])


def compile_table(figures: list[dict[str, Any]]) -> str:
    """The figures as a table."""
    lines = ["| variants | Python, ms | compiled, ms | times the size before |", "|" + " --- |" * 4]
    for one in figures:
        compiled = "-" if one["compiled"] is None else f"{one['compiled']:.1f}"
        times = "-" if one is figures[0] else f"{one['ratio']:.1f}"
        lines.append(f"| {one['variants']:,} | {one['python']:.1f} | {compiled} | {times} |")
    return "\n".join(lines)
