"""What the core says is wrong with rows, as a sentence for files: file, line, column, what would be
right.
"""

from collections.abc import Callable, Sequence

from identify.core.types.rows import RowMistake, Table
from identify.reference.csv_files import FILES, MOVES
from identify.reference.entries import Change, Entry, Item, Pack, Source, Variant
from identify.reference.mistakes import Mistake, instead, quoted
from identify.reference.toml_files import FEATURES, RANGE
from identify.reference.years import years_fault

HOMES: dict[str, str] = {
    "range": RANGE,
    "kinds": RANGE,
    "parts": RANGE,
    "cautions": RANGE,
    "features": FEATURES,
    "states": FEATURES,
    "sources": FILES[Source],
    "items": FILES[Item],
    "variants": FILES[Variant],
    "changes": FILES[Change],
    "moves": MOVES,
}
ONE = {
    "kinds": "kind", "parts": "part", "features": "feature", "states": "state",
    "sources": "source", "items": "item", "variants": "variant",
}  # fmt: skip
ITEMS, VARIANTS = FILES[Item], FILES[Variant]


def tables_unread(files: set[str]) -> list[str]:
    """The tables that stand in files which could not be read."""
    return [table for table, file in HOMES.items() if file in files]


def entries_of(pack: Pack, table: Table) -> Sequence[Entry]:
    """The entries of a table, in the order of its rows."""
    if table == "range":
        return [pack.range]
    if table == "drawings":
        return []
    entries: Sequence[Entry] = getattr(pack, table)
    return entries


def line_of(pack: Pack, mistake: RowMistake) -> int:
    """The line of the file that a mistake is about, 0 for the file as a whole."""
    entries = entries_of(pack, mistake["table"])
    if mistake["row"] < 0 or mistake["row"] >= len(entries):
        return 0
    entry = entries[mistake["row"]]
    if mistake["state"] >= 0:
        return pack.features[mistake["row"]].states[mistake["state"]].line
    return entry.lines.get(mistake["field"], entry.line)


def in_files(pack: Pack, mistakes: Sequence[RowMistake]) -> list[Mistake]:
    """The mistakes with file, line and column."""
    out = []
    for mistake in mistakes:
        if mistake["table"] == "drawings":
            out.append(Mistake(f"drawings/{mistake['field']}.svg", 0, "", _sentence(pack, mistake)))
        else:
            file = HOMES[mistake["table"]]
            out.append(
                Mistake(file, line_of(pack, mistake), mistake["field"], _sentence(pack, mistake))
            )
    return out


def _sentence(pack: Pack, mistake: RowMistake) -> str:
    return WORDS[mistake["why"]](pack, mistake)


def _line_of_other(pack: Pack, mistake: RowMistake) -> int:
    return entries_of(pack, mistake["table"])[mistake["other"]].line


def _unknown(pack: Pack, mistake: RowMistake) -> str:
    sort, word = mistake["said"]
    if mistake["table"] == "moves":
        return f"there is no {sort} {quoted(word)}: {instead(word, mistake['known'])}"
    near = instead(word, mistake["known"])
    return f"there is no {ONE[sort]} {quoted(word)} in {HOMES[sort]}: {near}"


def _outside(pack: Pack, mistake: RowMistake) -> str:
    first, _, last = pack.range.years.partition("/")
    last = last or first
    return f"{mistake['said'][0]} lies outside the life of the range, {first} to {last} ({RANGE})."


def _outside_item(pack: Pack, mistake: RowMistake) -> str:
    years, number, life = mistake["said"]
    line = pack.items[mistake["other"]].line
    return (
        f'{years} lies outside the life of item "{number}", '
        f"{life} ({ITEMS} line {line}). Change one of them."
    )


def _circle(pack: Pack, mistake: RowMistake) -> str:
    what = {"features": "depend on one another in", "items": "contain one another in"}
    does = what.get(mistake["table"], "lead in")
    return f"these {does} a circle: {' -> '.join(mistake['said'])}."


def _unused(pack: Pack, mistake: RowMistake) -> str:
    return (
        f'nothing records "{mistake["said"][0]}". Give it a column in variants.csv or items.csv, '
        "or a row in changes.csv."
    )


def _no_drawing(pack: Pack, mistake: RowMistake) -> str:
    name, ident, *of = mistake["said"]
    what = f'the state "{ident}" of "{of[0]}"' if of else f'the kind "{ident}"'
    return f"{what} has no drawing. Add drawings/{name}.svg."


def _spare_drawing(pack: Pack, mistake: RowMistake) -> str:
    near = (
        instead(mistake["field"], mistake["known"]) if mistake["known"] else "rename or remove it."
    )
    return f"there is no such state or kind: {near}"


def _too_many(pack: Pack, mistake: RowMistake) -> str:
    return (
        f'"{mistake["said"][0]}" falls into more than 4096 rows in one year, by '
        f"{', '.join(mistake['known'])}, on which other features depend. Fill in some."
    )


def _complete(pack: Pack, mistake: RowMistake) -> str:
    *some, last = (f'"{each}"' for each in mistake["known"])
    return f"say how complete the range is in these words: {', '.join(some)} or {last}."


def _there_still(pack: Pack, mistake: RowMistake) -> str:
    what = "an item" if mistake["said"][0] == "item" else "a variant"
    return f"there is still {what} like that. Remove this row, or name one that is gone."


def _filled(text: str) -> Callable[[Pack, RowMistake], str]:
    """A sentence with the texts that it is about put in."""
    return lambda pack, mistake: text.format(*mistake["said"])


WORDS: dict[str, Callable[[Pack, RowMistake], str]] = {
    "twice": lambda pack, mistake: (
        f"{quoted(mistake['said'][0])} is in line {_line_of_other(pack, mistake)} already. "
        "Change one of them."
    ),
    "unknown": _unknown,
    "complete": _complete,
    "life": _filled('the life of the range must be two plain years such as "1950/1972".'),
    "unread": lambda pack, mistake: years_fault(mistake["said"][0], "unread"),
    "day": lambda pack, mistake: years_fault(mistake["said"][0], "day"),
    "reversed": lambda pack, mistake: years_fault(mistake["said"][0], "reversed"),
    "outside": _outside,
    "unsourced": _filled("{0} is given, so its source must be too."),
    "no years": _filled("give {0} as well, since other sources are given."),
    "meaning": _filled('"{0}" has another meaning in a range. Choose another id.'),
    "state twice": _filled('the state "{0}" is there twice. Change one of them.'),
    "one state": _filled("there is only one state, so nothing can be told. Give at least two."),
    "no kind": _filled("name at least one kind, or leave kinds out to mean all of them."),
    "no states": _filled('name at least one state of "{0}".'),
    "itself": _filled('"{0}" cannot be mistaken for itself.'),
    "circle": _circle,
    "no variant": _filled(f'"{{0}}" has no variant. Add at least one row to {VARIANTS}.'),
    "outside item": _outside_item,
    "question mark": _filled("? must be alone in a cell; leave it out of a choice."),
    "cell twice": _filled('"{0}" names a state twice.'),
    "not of kind": _filled('"{0}" is not among the kinds of this feature. Leave the cell blank.'),
    "no such there": _filled('{0} is "{1}", where there is no {2}. Leave it blank.'),
    "change kind": _filled('"{0}" is not a feature of the kind "{1}" in features.toml.'),
    "change item": _filled('item "{0}" is of the kind "{1}", which this row is not for.'),
    "late": _filled("from ({0}) is later than to ({1}). Put the earlier one first."),
    "there still": _there_still,
    "no drawing": _no_drawing,
    "none undrawn": _filled("this drawing is missing. It stands for what a piece does not have."),
    "no such drawing": _spare_drawing,
    "unused": _unused,
    "too many": _too_many,
    "kept id": _filled('ids that begin with "{0}" are kept for date marks. Choose another.'),
}
