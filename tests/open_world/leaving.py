"""Packs with items or variants left out, as a range is while its owner still writes it.

The lines are taken out of a copy of the folder, and the copy is compiled as any other.
"""

import csv
import shutil
from collections.abc import Callable, Iterable
from pathlib import Path

from identify import phone
from identify.reference.compile import compile_pack
from identify.reference.compiled import CompiledPack

Line = dict[str, str]


def demo(name: str) -> Path:
    """The folder of a demo pack."""
    return next(folder for folder in phone.demo_packs() if folder.name == name)


def without(folder: Path, into: Path, items: Iterable[str], variants: Iterable[str]) -> Path:
    """A copy of a pack's folder in which nothing says a word of these items and variants."""
    items, variants = set(items), set(variants)
    copy = into / folder.name
    if copy.exists():
        shutil.rmtree(copy)
    shutil.copytree(folder, copy)
    keep(
        copy / "variants.csv", lambda line: line["id"] not in variants and line["item"] not in items
    )
    keep(copy / "items.csv", lambda line: line["number"] not in items)
    change(copy / "items.csv", "contains", items)
    keep(
        copy / "changes.csv", lambda line: not line.get("items") or bool(rest(line["items"], items))
    )
    change(copy / "changes.csv", "items", items)
    return copy


def rest(listed: str, items: set[str]) -> str:
    """A list in a cell without these; its separator is `;`."""
    named = [one.strip() for one in listed.split(";")]
    return "; ".join(one for one in named if one not in items)


def keep(file: Path, wanted: Callable[[Line], bool]) -> None:
    """Take the lines out of a CSV file that are not wanted."""
    rewrite(file, lambda lines: [line for line in lines if wanted(line)])


def change(file: Path, column: str, items: set[str]) -> None:
    """Take these items out of the lists in one column."""
    rewrite(
        file, lambda lines: [{**line, column: rest(line.get(column, ""), items)} for line in lines]
    )


def rewrite(file: Path, done: Callable[[list[Line]], list[Line]]) -> None:
    """Write a CSV file anew with other lines."""
    with file.open(encoding="utf-8", newline="") as source:
        table = csv.reader(source)
        columns = next(table)
        lines = [dict(zip(columns, line, strict=False)) for line in table if line]
    with file.open("w", encoding="utf-8", newline="") as target:
        written = csv.DictWriter(target, columns, restval="", lineterminator="\n")
        written.writeheader()
        written.writerows(done(lines))


def compiled_without(
    folder: Path, into: Path, items: Iterable[str] = (), variants: Iterable[str] = ()
) -> CompiledPack:
    """The pack compiled without these."""
    return compile_pack(without(folder, into, items, variants))
