"""The figures of the bench as a table in plain text."""

from collections.abc import Iterator
from typing import Any

Row = tuple[str, ...]


def number(value: float | None) -> str:
    """Three significant figures; a dash for nothing."""
    if value is None:
        return "–"
    return f"{value:.0f}" if abs(value) >= 100 else f"{value:.3g}"


def aligned(rows: list[Row]) -> Iterator[str]:
    """Columns set under one another: the first to the left, the others to the right."""
    widths = [max(len(row[n]) for row in rows) for n in range(len(rows[0]))]
    for row in rows:
        cells = [row[0].ljust(widths[0])]
        cells += [cell.rjust(width) for cell, width in zip(row[1:], widths[1:], strict=True)]
        yield "  ".join(cells).rstrip()


def answers(found: dict[str, Any]) -> Iterator[str]:
    """One answer: the posterior and the worth of every question left, in milliseconds."""
    yield "One answer: posterior and ranking of all questions (median ms)"
    low = ["python", "core", "floor", "core_to_floor"]
    names = [*low, "simd", "core_to_lowest", "reading", "peer", "peer_to_core"]
    heads = ("rows", "Python", "compiled", "floor", "ratio", "SIMD floor", "to the lower",
             "reading once", "scikit-learn", "ratio")  # fmt: skip
    rows = [
        (str(each["rows"]), *(number(each.get(name)) for name in names))
        for each in found["answers"]
    ]
    yield from aligned([heads, *rows])
    yield ""
    yield "As features are added"
    rows = [
        (str(each["features"] - 1), str(each["rows"]), *(number(each.get(n)) for n in low))
        for each in found["by_features"]
    ]
    yield from aligned([("features", *heads[:5]), *rows])
    steps = [each for each in found["answers"] if each.get("by_answers")]
    if steps:
        yield ""
        yield "As candidates fall away (compiled, ms; rows that still count)"
        yield from aligned(by_answers(steps))


def by_answers(sizes: list[dict[str, Any]]) -> list[Row]:
    """A row for each size of pack, a column for each count of answers."""
    most = max(len(each["by_answers"]) for each in sizes)
    out: list[Row] = [("answers", *(str(n) for n in range(most)))]
    for each in sizes:
        cells = [f"{number(s['core'])} ({s['rows_left']:.0f})" for s in each["by_answers"]]
        out.append((f"{each['rows']} rows", *cells, *[""] * (most - len(cells))))
    return out


def screens(found: dict[str, Any]) -> Iterator[str]:
    """What the hand feels."""
    if found["taps"]:
        yield ""
        yield "Tap to painted answer, CPU slowed 4 times (ms)"
        names = ["first", "p50", "p98", "slowest", "heap_mb"]
        heads = ("pack", "taps", "first", "p50", "p98", "slowest", "heap MB")
        rows = [
            (each["pack"], str(each["taps"]), *(number(each[name]) for name in names))
            for each in found["taps"]
        ]
        yield from aligned([heads, *rows])
    cold = found["cold"]
    if cold:
        sent = cold["sent"]
        yield ""
        yield (
            f"Cold start, no network, CPU slowed 4 times: median {number(cold['median'])} ms, "
            f"slowest of {cold['runs']}: {number(cold['slowest'])} ms"
        )
        yield (
            f"Bytes, compressed: scripts {sent['script']}, shell {sent['shell']}, "
            f"with the first pack {sent['first']}, all {sent['all']}; kept {cold['kept']}"
        )


def table(found: dict[str, Any]) -> str:
    """All figures, for a person."""
    machine = found["machine"]
    lines = [
        f"{machine['system']}, Python {machine['python']}, {machine['processors']} processors, "
        f"load {machine['load']:.1f}",
        *found["left_out"],
        "",
        *answers(found),
        *screens(found),
    ]
    look = found["look_up"]
    lines += [
        "",
        f"Look-up among {look['names']} names (ms): Python {number(look['python'])}, compiled p50 "
        f"{number(look.get('p50'))}, p98 {number(look.get('p98'))}, the very first "
        f"{number(look.get('first'))}",
    ]
    for each in found["packs"]:
        times = ", ".join(f"{name} {number(each[name])}" for name in each if name != "pack")
        lines.append(f"Pack {each['pack']} (ms): {times}")
    sync = found["sync"]
    lines.append(
        f"Sync over HTTP (s): {sync['operations']} operations up {number(sync['push_s'])}, down "
        f"{number(sync['pull_s'])}; {sync['photos']} photos up {number(sync['photos_s'])} "
        f"({sync['photo_bytes'] / 1e6:.0f} MB)"
    )
    lines.append(f"Memory of this process at most: {number(found['memory_mb'])} MB")
    return "\n".join(lines)
