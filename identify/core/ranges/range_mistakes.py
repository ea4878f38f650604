"""Every mistake in the rows of a range at once, and the rows that can be compiled all the same."""

from ..types.rows import Checked, MarkUsed, RangeRows, RowMistake
from .adding_marks import merged_rows
from .check_names import at_field, row_mistake, to_check
from .check_range import (
    check_about,
    check_drawings,
    check_feature,
    check_features,
    check_kept_ids,
    check_sources,
    check_states,
    check_used,
)
from .check_rows import check_changes, check_items, check_moves, check_variants
from .splitting import MOST, issues_of, prepare_split


def check_tables(check: Checked) -> None:
    """What a range must say of itself, and every table but for drawings."""
    check_about(check)
    check_features(check)
    check_sources(check)
    check_items(check)
    check_variants(check)
    check_changes(check)
    check_moves(check)


def check_rows(rows: RangeRows, unread: list[str]) -> Checked:
    """What is wrong with the rows, and the life of the range. `unread`: the tables that could not
    be read at all.
    """
    check = to_check(rows, unread)
    check_tables(check)
    check_drawings(check)
    check_used(check)
    mistakes: list[RowMistake] = check["mistakes"]
    if len(mistakes) == 0:
        check_kept_ids(check)
    return check


def features_and_drawings(rows: RangeRows) -> list[RowMistake]:
    """What is wrong with features and drawings by themselves, as a kit has them."""
    check = to_check(rows, [])
    for n in range(len(rows["features"])):
        check_states(check, n, rows["features"][n])
        check_feature(check, n, rows["features"][n])
    check_drawings(check)
    return check["mistakes"]


def too_many(rows: RangeRows, first: int, last: int, marks: list[MarkUsed]) -> list[RowMistake]:
    """The variants that fall into more rows than can be reasoned over."""
    merged = merged_rows(rows, first, last, marks)
    split = prepare_split(merged["rows"], merged["marks"], first, last)
    most = 1
    for f in range(len(split["states"])):
        if split["splits"][f] == 1:
            most = most * (len(split["states"][f]) + 1)
    out: list[RowMistake] = []
    if most <= MOST:
        return out
    for n in range(len(rows["variants"])):
        issues = issues_of(split, rows["variants"][n])
        if len(issues["too_many"]) > 0:
            names = [rows["features"][place - 1]["id"] for place in issues["too_many"]]
            said = [rows["variants"][n]["id"]]
            out.append(row_mistake(at_field("variants", n, "id"), "too many", said, names))
    return out
