"""How variants are split at running changes: by hand, and against every combination written out."""

import itertools
from collections import defaultdict
from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import HealthCheck, given, settings

from identify.core.ranges.adding_marks import merged_rows
from identify.core.ranges.splitting import issues_of, prepare_split
from identify.core.types.rows import Issue, Split
from identify.reference.check import checked_pack
from identify.reference.compile import compile_pack
from identify.reference.marks_to_merge import marks_to_merge
from tests.reference.small_pack import changed, small_files, write
from tests.reference.strategies import pack_files

BY_FILE = settings(
    deadline=None, max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture]
)


def rows(folder: Path, files: dict[str, str]) -> list[tuple[str, int, list[float], Any]]:
    """(variant, first year, weights, {feature: {state: share}}) of every row; not recorded: {}."""
    pack = msgspec.to_builtins(compile_pack(write(folder, files)))
    out = []
    for row, variant in enumerate(pack["rows"]["variant"]):
        span = pack["spans"][pack["rows"]["span"][row]]
        cells = {}
        for feature, column in zip(pack["features"], pack["cells"], strict=True):
            shares = column["shares"][column["codes"][row]]
            pairs = zip(feature["states"], shares, strict=False)
            cells[feature["id"]] = {state["id"]: share for state, share in pairs if share}
        out.append((pack["variants"][variant]["id"], span["first"], span["weights"], cells))
    return out


def splits(folder: Path, files: dict[str, str], variant: str, *features: str) -> list[Any]:
    """(first year, last year, cells of these features) of one variant's rows."""
    return [
        (first, first + len(weights) - 1, *(cells[feature] for feature in features))
        for name, first, weights, cells in rows(folder, files)
        if name == variant
    ]


def test_a_change_within_the_life_of_a_variant(tmp_path: Path) -> None:
    # Wire loops from 1953 (trust 0.9) or 1955 (trust 0.3): 3/8 of 1953, 3/4 of 1954, 7/8 of 1955.
    found = splits(tmp_path, small_files(), "p2a", "coupling", "livery")
    livery = {"green": 0.5, "red": 0.5}
    assert found == [
        (1951, 1952, {"bar": 1}, livery),
        (1953, 1953, {"bar": 0.625, "loop": 0.375}, livery),
        (1954, 1954, {"bar": 0.25, "loop": 0.75}, livery),
        (1955, 1955, {"bar": 0.125, "loop": 0.875}, livery),
    ]


def test_weights_and_priors(tmp_path: Path) -> None:
    pack = compile_pack(write(tmp_path, small_files()))
    # Common 1, 2, 1, 0.5 and 1: 5.5 in all. p2a: 3/4 in 1952/1955, 1/4 in 1951/1953.
    mine = [row for row, variant in enumerate(pack.rows.variant) if variant == 2]
    years = [1 / 12, 3 / 16 + 1 / 12, 3 / 16 + 1 / 12, 3 / 16, 3 / 16]
    expected = [years[0] + years[1], *years[2:]]
    assert [pack.rows.prior[row] * 5.5 for row in mine] == pytest.approx(expected, abs=2e-6)
    first = pack.spans[pack.rows.span[mine[0]]]
    assert first.first == 1951
    assert first.weights == pytest.approx([4 / 17, 13 / 17], abs=2e-6)


def test_what_no_row_speaks_of_is_not_recorded(tmp_path: Path) -> None:
    found = splits(tmp_path, small_files(), "p1b", "horn_colour", "livery")
    # For P1 only its own row counts: brass from 1955, nothing before. Livery: ? over the item's.
    assert found == [
        (1954, 1954, {}, {}),
        (1955, 1955, {"brass": 1}, {}),
        (1956, 1957, {"brass": 1}, {}),
    ]


def test_an_item_fixes_what_its_variants_leave_blank(tmp_path: Path) -> None:
    assert {str(row[2]) for row in splits(tmp_path, small_files(), "p1a", "livery")} == {
        "{'green': 1.0}"
    }


def test_features_of_other_kinds_are_none(tmp_path: Path) -> None:
    found = splits(tmp_path, small_files(), "s1", "coupling", "horns", "horn_colour")
    assert found == [(1953, 1954, {"none": 1}, {"none": 1}, {"none": 1})]


def test_a_state_that_ended(tmp_path: Path) -> None:
    files = changed(
        "changes.csv", "horn_colour,black,,1955,locomotive,,", "horn_colour,black,,1955,,,"
    )
    files["changes.csv"] = files["changes.csv"].replace(
        "horn_colour,brass,1955,,locomotive,P1,cat,,\n", ""
    )
    # Black ended at some time in 1955; nothing is known of what came after.
    assert splits(tmp_path, files, "p1b", "horn_colour") == [
        (1954, 1954, {"black": 1}),
        (1955, 1955, {"black": 1}),
        (1956, 1957, {}),
    ]


def with_horns(cells: str, *rows: str) -> dict[str, str]:
    """p1b from 1954 to 1957 with these horns, black or brass, and more changes."""
    files = changed("variants.csv", ",metal,?", f",{cells},")
    files["changes.csv"] = (
        "feature,state,from,to,kinds,items,source,other_from,note\n"
        "coupling,bar,,,,,cat,,\n"
        "horn_colour,black,,,,,cat,,\n"
        "horn_colour,brass,1956,,,,cat,,\n" + "\n".join(rows)
    )
    return files


def test_a_feature_others_depend_on_is_split_state_by_state(tmp_path: Path) -> None:
    files = with_horns("", "horns,metal,,,,,cat,,", "horns,none,1955,,,,cat,,")
    found = splits(tmp_path, files, "p1b", "horns", "horn_colour")
    assert found == [
        (1954, 1955, {"metal": 1}, {"black": 1}),
        (1955, 1957, {"none": 1}, {"none": 1}),
    ]


def test_what_depends_on_a_choice_that_meets_it_applies(tmp_path: Path) -> None:
    found = splits(tmp_path, with_horns("metal|plastic"), "p1b", "horn_colour")
    assert [row[2] for row in found] == [{"black": 1}, {"black": 0.5, "brass": 0.5}, {"brass": 1}]


@pytest.mark.parametrize("horns", ["?", "metal|none"])
def test_what_depends_on_the_unknown_is_not_recorded(tmp_path: Path, horns: str) -> None:
    assert [row[2] for row in splits(tmp_path, with_horns(horns), "p1b", "horn_colour")] == [{}]


def test_what_depends_on_the_unknown_may_be_stated(tmp_path: Path) -> None:
    files = with_horns("?")
    files["variants.csv"] = (
        files["variants.csv"]
        .replace("horns,livery", "horns,livery,horn_colour")
        .replace("none,\n", "none,,\n")
        .replace(",?,\n", ",?,,brass\n")
    )
    files["variants.csv"] = files["variants.csv"].replace("|green\n", "|green,\n")
    files["variants.csv"] = (
        files["variants.csv"].replace("red\n", "red,\n").replace(",,,\n", ",,,,\n")
    )
    assert [row[2] for row in splits(tmp_path, files, "p1b", "horn_colour")] == [{"brass": 1}]


def test_rows_that_come_in_together_share(tmp_path: Path) -> None:
    files = with_horns("none", "coupling,loop,1955,,,,cat,,", "livery,red,,,,,cat,,")
    files["changes.csv"] += "\nlivery,green,1955,,,,cat,,\nlivery,red,1955,,,,cat,,"
    files["items.csv"] = files["items.csv"].replace("101;102,,green", "101;102,,")
    found = splits(tmp_path, files, "p1b", "livery")
    # In 1955 red is seen by its old row (1/2) and its new one (1/2), green by its one (1/2).
    assert [row[2] for row in found] == [
        {"red": 1},
        {"green": pytest.approx(1 / 3, abs=1e-6), "red": pytest.approx(2 / 3, abs=1e-6)},
        {"green": 0.5, "red": 0.5},
    ]


def joint(split: Split, issues: list[Issue]) -> dict[tuple[Any, ...], float]:
    """Chance of each year with each combination of states; None is not recorded."""
    out: dict[tuple[Any, ...], float] = defaultdict(float)
    for issue in issues:
        cells = [
            [*zip(table["states"][code], table["shares"][code], strict=True)]
            for table, code in zip(split["cells"], issue["codes"], strict=True)
        ]
        choices = [cell or [(None, 1.0)] for cell in cells]
        for states in itertools.product(*choices):
            chance = 1.0
            for _, share in states:
                chance *= share
            for year, weight in enumerate(issue["years"]):
                if weight:
                    out[year, *(state for state, _ in states)] += weight * chance
    return out


@pytest.mark.heavy
@BY_FILE
@given(files=pack_files())
def test_one_row_says_the_same_as_every_combination(
    files: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    whole = checked_pack(write(tmp_path_factory.mktemp("drawn"), files))
    assert whole.mistakes == []
    merged = merged_rows(whole.rows, whole.first, whole.last, marks_to_merge())
    usual, written_out = (
        prepare_split(merged["rows"], merged["marks"], whole.first, whole.last) for _ in range(2)
    )
    written_out["splits"] = [1] * len(written_out["splits"])
    for variant in whole.rows["variants"]:
        few, many = issues_of(usual, variant)["issues"], issues_of(written_out, variant)["issues"]
        assert len(few) <= 10 * 3  # years, and states of the horns, on which their colour depends
        expected = joint(written_out, many)
        found = joint(usual, few)
        assert set(found) == set(expected)
        for key, chance in expected.items():
            assert found[key] == pytest.approx(chance, abs=1e-9)


@BY_FILE
@given(files=pack_files())
def test_every_compiled_pack_adds_up(
    files: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    pack = compile_pack(write(tmp_path_factory.mktemp("drawn"), files))
    sums = [sum(span.weights) for span in pack.spans] + [sum(pack.rows.prior)]
    sums += [sum(shares) for column in pack.cells for shares in column.shares[1:]]
    sums += [sum(shares) for by_kind in pack.backgrounds for shares in by_kind]
    assert sums == pytest.approx([1.0] * len(sums), abs=1e-9)
    assert len({(span.first, *span.weights) for span in pack.spans}) == len(pack.spans)
    for column in pack.cells:
        assert column.shares[0] == []
        assert len(column.codes) == len(pack.rows.variant)
    assert pack.rows.variant == sorted(pack.rows.variant)
    for span in pack.spans:
        assert pack.range.first <= span.first
        assert span.first + len(span.weights) - 1 <= pack.range.last
        assert span.weights[0] > 0
        assert span.weights[-1] > 0


@pytest.mark.heavy
@BY_FILE
@given(files=pack_files())
def test_splitting_keeps_each_year_of_a_variant(
    files: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> None:
    folder = write(tmp_path_factory.mktemp("drawn"), files)
    whole = write(tmp_path_factory.mktemp("whole"), files | {"changes.csv": unsplit(files)})
    split, uncut = by_year(folder), by_year(whole)
    assert set(split) == set(uncut)
    for key, chance in uncut.items():
        assert split[key] == pytest.approx(chance, abs=3e-6)


def unsplit(files: dict[str, str]) -> str:
    """The changes with every date taken out, so that nothing is split."""
    header = files["changes.csv"].splitlines()[0]
    return header + "\ncoupling,bar,,,,,cat,,\nhorns,none,,,,,cat,,\nhorn_colour,black,,,,,cat,,"


def by_year(folder: Path) -> dict[tuple[int, int], float]:
    """Chance of each variant and year."""
    pack = compile_pack(folder)
    out: dict[tuple[int, int], float] = defaultdict(float)
    for row, variant in enumerate(pack.rows.variant):
        span = pack.spans[pack.rows.span[row]]
        for n, weight in enumerate(span.weights):
            if weight:
                out[variant, span.first + n] += pack.rows.prior[row] * weight
    return out
