"""Checks items.csv, variants.csv and changes.csv against the rest of the pack."""

from identify.reference.check_names import Checker, cycle
from identify.reference.csv_files import FILES, MOVES
from identify.reference.mistakes import instead, quoted
from identify.reference.records import Change, Item, Variant
from identify.reference.splitting import read_cell
from identify.reference.windows import NONE
from identify.reference.years import YearsError, outside, read_years

ITEMS = FILES[Item]
VARIANTS = FILES[Variant]
CHANGES = FILES[Change]


def check_items(check: Checker) -> None:
    """Items: numbers, kinds, years, contents and fixed features."""
    pack = check.pack
    check.unique(ITEMS, "number", [(item.number, item) for item in pack.items])
    for item in pack.items:
        if item.kind:
            check.known(ITEMS, item, "kind", item.kind, check.kind_names)
        check.said(item, item.years, "years", item.other_years)
        for number in item.contains:
            check.known(ITEMS, item, "contains", number, check.item_names)
        _check_cells(check, item, item, item.cells)
    circle = cycle({item.number: item.contains for item in pack.items})
    if circle:
        text = f"these contain one another in a circle: {' -> '.join(circle)}."
        check.wrong(ITEMS, check.items[circle[0]], "contains", text)
    if pack.unread:
        return
    for item in pack.items:
        if item.number and all(variant.item != item.number for variant in pack.variants):
            text = f'"{item.number}" has no variant. Add at least one row to {VARIANTS}.'
            check.wrong(ITEMS, item, "number", text)


def check_variants(check: Checker) -> None:
    """Variants: ids, items, years within the item's, and particular features."""
    check.unique(VARIANTS, "id", [(variant.id, variant) for variant in check.pack.variants])
    for variant in check.pack.variants:
        years = check.said(variant, variant.years, "years", variant.other_years)
        item = None
        if variant.item and check.known(VARIANTS, variant, "item", variant.item, check.item_names):
            item = check.items[variant.item]
            if years:
                _check_life(check, variant, item)
        _check_cells(check, variant, item, variant.cells)


def _check_life(check: Checker, variant: Variant, item: Item) -> None:
    """A variant cannot be older or younger than every source says its item is.

    Other sources may say so: they are there because they disagree.
    """
    try:
        said = [read_years(text) for text in (item.years, *(text for _, text in item.other_years))]
    except YearsError:
        return
    earliest = min(life.earliest for life in said)
    latest = max(life.latest for life in said)
    if outside(variant.years, earliest, latest):
        text = (
            f'{variant.years} lies outside the life of item "{item.number}", '
            f"{item.years} ({ITEMS} line {item.line}). Change one of them."
        )
        check.wrong(VARIANTS, variant, "years", text)


def _check_cells(
    check: Checker, entry: Item | Variant, item: Item | None, cells: dict[str, str]
) -> None:
    """States that exist, of features that such a piece has."""
    file = FILES[type(entry)]
    for name, text in cells.items():
        feature = check.features.get(name)
        if feature is None:
            continue
        states = read_cell(text)
        for state in states:
            if state != "?":
                check.known(file, entry, name, state, check.states(feature))
            else:
                what = "? stands alone in a cell; leave it out of a choice."
                check.wrong(file, entry, name, what)
        if len(set(states)) < len(states):
            check.wrong(file, entry, name, f'"{text}" names a state twice.')
        if item is None or states == (NONE,):
            continue
        if item.kind in check.kind_names.words and not check.applies(feature, item.kind):
            what = f'"{item.kind}" is not among the kinds of this feature. Leave the cell blank.'
            check.wrong(file, entry, name, what)
        own = item.cells | cells
        for parent, wanted in feature.when.items():
            has = read_cell(own.get(parent, "?"))
            if has and not set(has) & set(wanted):
                what = f'{parent} is "{own[parent]}", where there is no {name}. Leave it blank.'
                check.wrong(file, entry, name, what)


def check_changes(check: Checker) -> None:
    """Running changes: features, states, times and what they are limited to."""
    for change in check.pack.changes:
        _check_times(check, change)
        for kind in change.kinds:
            check.known(CHANGES, change, "kinds", kind, check.kind_names)
        for number in change.items:
            check.known(CHANGES, change, "items", number, check.item_names)
        if not change.feature or not check.known(
            CHANGES, change, "feature", change.feature, check.feature_names
        ):
            continue
        feature = check.features[change.feature]
        if change.state:
            check.known(CHANGES, change, "state", change.state, check.states(feature))
        for kind in change.kinds:
            if kind in check.kind_names.words and not check.applies(feature, kind):
                what = f'"{feature.id}" is not a feature of the kind "{kind}" in features.toml.'
                check.wrong(CHANGES, change, "kinds", what)
        for number in change.items:
            kind = check.items[number].kind if number in check.items else ""
            named = not change.kinds or kind in change.kinds
            if kind in check.kind_names.words and not (named and check.applies(feature, kind)):
                what = f'item "{number}" is of the kind "{kind}", which this row is not for.'
                check.wrong(CHANGES, change, "items", what)


def _check_times(check: Checker, change: Change) -> None:
    check.said(change, change.came, "from", change.other_from)
    if not change.ended:
        return
    ended = check.years(CHANGES, change, "to", change.ended)
    try:
        came = read_years(change.came)
    except YearsError:
        return
    if ended and came.first >= ended.last:
        what = f"from ({change.came}) is later than to ({change.ended}). Put the earlier one first."
        check.wrong(CHANGES, change, "to", what)


def check_moves(check: Checker) -> None:
    """Moves: from what is no more to what is there, at once or by further rows."""
    pack = check.pack
    if pack.unread:
        return
    now = {"item": set(check.items), "variant": {variant.id for variant in pack.variants}}
    for what, known in now.items():
        rows = [row for row in pack.moves if row.what == what and row.old]
        ways = {row.old: row.new for row in rows}
        check.unique(MOVES, "from", [(row.old, row) for row in rows])
        for row in rows:
            if row.old in known:
                text = (
                    f"there is such {_a(what)} still. Take this row away, or name what is no more."
                )
                check.wrong(MOVES, row, "from", text)
            elif row.new and row.new not in known and row.new not in ways:
                text = f"there is no {what} {quoted(row.new)}: {instead(row.new, sorted(known))}"
                check.wrong(MOVES, row, "to", text)
        circle = cycle({old: [new] for old, new in ways.items() if new in ways})
        if circle:
            text = f"these lead in a circle: {' -> '.join(circle)}."
            entry = next(row for row in rows if row.old == circle[0])
            check.wrong(MOVES, entry, "to", text)


def _a(what: str) -> str:
    return "an item" if what == "item" else "a variant"
