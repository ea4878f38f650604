"""A range that is still being written: what can be compiled of it, and what is wrong with the rest.

A field that cannot be read counts as blank, a row that nothing can be made of as not there; each is
told. What a finished range must have and one that grows need not (a drawing for each state, a
source for each year) is not asked for here.
"""

from typing import Any

from ..edtf import padded
from ..native.values import is_true
from ..types.rows import CellText, MarkUsed, RangeRows, RowMistake, TextPair, Usable
from .check_names import at_field, to_check, wrong_field
from .check_range import check_kept_ids
from .range_mistakes import check_tables, too_many
from .year_bounds import FAR, years_of_edtf

MENDINGS = 12  # mending one thing can show another
NOT_NEEDED = ["unsourced", "no variant", "life"]
YEARS = ["years", "other_years", "source"]


def growing_mistakes(rows: RangeRows) -> list[RowMistake]:
    """What is wrong with the rows of a range that is still being written."""
    check = to_check(rows, [])
    check_tables(check)
    check_kept_ids(check)
    for n in range(len(rows["features"])):
        if len(rows["features"][n]["states"]) == 0:
            wrong_field(check, at_field("features", n, "states"), "one state")
    return [mistake for mistake in check["mistakes"] if mistake["why"] not in NOT_NEEDED]


def names_unknown(rows: RangeRows) -> int:
    """How many fields name what the range does not have, which records cannot hold: a kind, a
    source, an item or a state. What a move says of a number stays as it is.
    """
    mistakes = growing_mistakes(rows)
    return len(
        [1 for mistake in mistakes if mistake["why"] == "unknown" and mistake["table"] != "moves"]
    )


def without_cell(cells: list[CellText], feature: str) -> list[CellText]:
    """The cells but for those of a feature."""
    return [cell for cell in cells if cell[0] != feature]


def mended_item(rows: RangeRows, at: int, field: str) -> bool:
    """Blank a field of an item; False where the item itself has to go."""
    item = rows["items"][at]
    if field in YEARS:
        item["years"] = ""
        item["other_years"] = []
    elif field == "contains":
        item["contains"] = []
    elif field in ["number", "kind"]:
        return False
    item["cells"] = without_cell(item["cells"], field)
    return True


def mended_variant(rows: RangeRows, at: int, field: str) -> bool:
    """Blank a field of a variant; False where the variant itself has to go."""
    variant = rows["variants"][at]
    if field in YEARS:
        variant["years"] = ""
        variant["other_years"] = []
    elif field in ["id", "item"]:
        return False
    variant["cells"] = without_cell(variant["cells"], field)
    return True


def mended_change(rows: RangeRows, at: int, field: str) -> bool:
    """Blank a field of a running change; False where it has to go."""
    if field == "to":
        rows["changes"][at]["until"] = ""
    return field == "to"


def mended_feature(rows: RangeRows, at: int, field: str) -> bool:
    """Blank a field of a feature; False where it has to go."""
    feature = rows["features"][at]
    if field == "when":
        feature["when"] = []
    elif field == "mistaken":
        feature["mistaken"] = []
    elif field == "part":
        feature["part"] = ""
    return field in ["when", "mistaken", "part"]


def drop_feature(rows: RangeRows, name: str) -> None:
    """Take away all that is said of a feature."""
    rows["changes"] = [row for row in rows["changes"] if row["feature"] != name]
    for item in rows["items"]:
        item["cells"] = without_cell(item["cells"], name)
    for variant in rows["variants"]:
        variant["cells"] = without_cell(variant["cells"], name)
    for feature in rows["features"]:
        feature["when"] = [pair for pair in feature["when"] if pair[0] != name]


def drop_item(rows: RangeRows, number: str) -> None:
    """Take away all that is said of an item."""
    rows["variants"] = [row for row in rows["variants"] if row["item"] != number]
    for item in rows["items"]:
        item["contains"] = [other for other in item["contains"] if other != number]
    for change in rows["changes"]:
        change["items"] = [other for other in change["items"] if other != number]


def mended_row(rows: RangeRows, mistake: RowMistake) -> bool:
    """Blank what is wrong in a row; False where the row has to go."""
    table = mistake["table"]
    at = mistake["row"]
    field = mistake["field"]
    if table == "items":
        return mended_item(rows, at, field)
    if table == "variants":
        return mended_variant(rows, at, field)
    if table == "changes":
        return mended_change(rows, at, field)
    if table == "features":
        return mended_feature(rows, at, field)
    if table == "sources" and field == "year":
        rows["sources"][at]["year"] = ""
    elif table == "kinds" and field == "complete":
        rows["kinds"][at]["complete"] = ""
    elif table == "cautions":
        rows["cautions"][at]["kinds"] = []
    elif table == "range":
        rows["range"]["years"] = ""
    return table != "moves"


def without_places(rows: list[Any], places: list[int]) -> list[Any]:
    """The rows but for those at these places."""
    return [rows[n] for n in range(len(rows)) if n not in places]


def mend_rows(rows: RangeRows, mistakes: list[RowMistake]) -> None:
    """Blank or take away what is wrong."""
    features: list[int] = []
    items: list[int] = []
    variants: list[int] = []
    changes: list[int] = []
    moves: list[int] = []
    for mistake in mistakes:
        if not mended_row(rows, mistake):
            if mistake["table"] == "features":
                features.append(mistake["row"])
            elif mistake["table"] == "items":
                items.append(mistake["row"])
            elif mistake["table"] == "variants":
                variants.append(mistake["row"])
            elif mistake["table"] == "changes":
                changes.append(mistake["row"])
            else:
                moves.append(mistake["row"])
    names = [rows["features"][n]["id"] for n in features]
    numbers = [rows["items"][n]["number"] for n in items]
    rows["features"] = without_places(rows["features"], features)
    rows["items"] = without_places(rows["items"], items)
    rows["variants"] = without_places(rows["variants"], variants)
    rows["changes"] = without_places(rows["changes"], changes)
    rows["moves"] = without_places(rows["moves"], moves)
    for name in names:
        drop_feature(rows, name)
    for number in numbers:
        drop_item(rows, number)


def years_named(rows: RangeRows) -> list[str]:
    """Every text of years in the rows."""
    out: list[str] = []
    for item in rows["items"]:
        add_years(out, item["years"], item["other_years"])
    for variant in rows["variants"]:
        add_years(out, variant["years"], variant["other_years"])
    for change in rows["changes"]:
        add_years(out, change["since"], change["other_from"])
        add_years(out, change["until"], [])
    return out


def add_years(out: list[str], years: str, others: list[TextPair]) -> None:
    """Add what an entry and other sources say."""
    out.append(years)
    for pair in others:
        out.append(pair[1])


def set_life(rows: RangeRows) -> None:
    """The life of a range that does not say it: from the earliest year that is named to the latest.
    Blank where none is.
    """
    if years_of_edtf(rows["range"]["years"])["problem"] == "":
        life = to_check(rows, [])
        if is_true(life["known_life"]):
            return
    first = FAR
    last = 0.0
    for text in years_named(rows):
        years = years_of_edtf(text)
        if years["problem"] == "":
            for at in [years["first"], years["last"]]:
                if 0 < at < 10000:
                    first = min(first, at)
                    last = max(last, at)
    rows["range"]["years"] = ""
    if last > 0:
        begin = int(first // 1)
        end = int(0 - (0 - last) // 1) - 1
        end = max(begin, end)
        rows["range"]["years"] = padded(begin, 4) + "/" + padded(end, 4)


def usable(rows: RangeRows, marks: list[MarkUsed]) -> Usable:
    """What can be compiled of the rows, which are mended where they stand, and all that is wrong
    with them: its places are those of the rows as they were given, and of what is left of them
    where mending showed more.
    """
    set_life(rows)
    mistakes = growing_mistakes(rows)
    left = mistakes
    rounds = 0
    while len(left) > 0 and rounds < MENDINGS:
        mend_rows(rows, left)
        left = growing_mistakes(rows)
        rounds = rounds + 1
    life = to_check(rows, [])
    first = life["first"] if is_true(life["known_life"]) else 0
    last = life["last"] if is_true(life["known_life"]) else 0
    many = too_many(rows, first, last, marks)
    for mistake in many:
        mistakes.append(mistake)
    rows["variants"] = without_places(rows["variants"], [tangled["row"] for tangled in many])
    return {"rows": rows, "first": first, "last": last, "mistakes": mistakes}
