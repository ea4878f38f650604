"""How date marks are merged into packs, and what they then say."""

from pathlib import Path
from typing import Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.assess import assess
from identify.core.belief import prepare
from identify.core.ranges.adding_marks import merged_rows
from identify.core.ranges.splitting import issues_of, prepare_split
from identify.core.ranges.windows import mark_cell, window_weight
from identify.core.session import answered, new_session
from identify.core.types.rows import MarkYears, RangeRows, Window
from identify.reference.check import check_pack, checked_pack
from identify.reference.compile import compile_pack
from identify.reference.compiled import CompiledPack
from identify.reference.marks_to_merge import marks_to_merge
from tests.reference.small_pack import SVG, changed, small_files, write

PACKS = Path(__file__).resolve().parents[2] / "fixtures" / "packs"
BOX = '[[parts]]\nid = "box"\nname = "Box"\nswap = 0.2\n\n[[parts]]'
LID = """
[[feature]]
id = "lid"
name = "Lid"
question = "What colour is the lid?"
where = "The box."
part = "box"
seconds = 2
needs = "nothing"
kinds = ["set"]
states = [
  { id = "red", name = "Red" },
  { id = "blue", name = "Blue" },
]
"""


def boxed(country: str = "GB", years: str = "1968/1974") -> dict[str, str]:
    """The small pack with boxes, all of it made in these years."""
    files = small_files()
    first, last = years.split("/")
    for name in ("range.toml", "items.csv", "variants.csv", "changes.csv"):
        for year in ("1950", "1951", "1952", "1953/", "1953,", "1956~"):
            files[name] = files[name].replace(year, year.replace(year[:4], first).strip("~"))
        for year in ("1953", "1954", "1955", "1957", "1959"):
            files[name] = files[name].replace(year, last)
    text = files["range.toml"].replace("[[parts]]", BOX, 1)
    files["range.toml"] = text.replace('country = "GB"', f'country = "{country}"')
    files["features.toml"] += LID
    files["changes.csv"] += "lid,red,,,,,cat,,\n"
    return files | {"drawings/lid-red.svg": SVG, "drawings/lid-blue.svg": SVG}


def compiled(folder: Path, files: dict[str, str]) -> CompiledPack:
    return compile_pack(write(folder, files))


def shares(pack: CompiledPack, feature: str, kind: str) -> dict[int, dict[str, float]]:
    """What the pack says of a mark on pieces of a kind, in each year that has rows of its own."""
    place = [each.id for each in pack.features].index(feature)
    states = [state.id for state in pack.features[place].states]
    wanted = [each.id for each in pack.kinds].index(kind)
    found = {}
    for row, code in enumerate(pack.cells[place].codes):
        if pack.rows.kind[row] == wanted:
            cell = zip(states, pack.cells[place].shares[code], strict=True)
            said = {state: share for state, share in cell if share}
            span = pack.spans[pack.rows.span[row]]
            found |= {span.first + n: said for n, weight in enumerate(span.weights) if weight}
    return found


def test_years_of_the_money_on_a_box(tmp_path: Path) -> None:
    # Weights by the rule: 1 within the ends; k years beyond a soft end with a tail of n years,
    # doubt + (1 - doubt) * (1 - k / (n + 1)). All share 0.3 times the greatest of them.
    said = shares(compiled(tmp_path, boxed()), "mark_price", "set")
    assert said[1969] == pytest.approx(beyond(1969), abs=2e-6)
    four = dict.fromkeys(["lsd", "both", "half_penny", "decimal"], 0.075)
    assert said[1971] == pytest.approx(four | {"none": 0.7})
    for year in (1970, 1972, 1973, 1974):
        assert said[year] == pytest.approx(beyond(year), abs=2e-6)
    assert said[1974]["lsd"] < said[1973]["lsd"] < said[1972]["lsd"] < said[1972]["decimal"]


def beyond(year: int) -> dict[str, float]:
    """The shares of a year by the rule and the ends of the four wordings of money in Britain."""
    after, before = year - 1971, 1971 - year
    weights = {
        "lsd": 1.0 if after <= 0 else tail(after, 4, 0.01),
        "both": 1.0 if after <= 0 else tail(after, 3, 0.05),
        "half_penny": 1.0 if before <= 0 else tail(before, 1, 0.01),
        "decimal": 1.0 if before <= 0 else tail(before, 1, 0.01),
    }
    whole = sum(weights.values())
    return {state: 0.3 * weight / whole for state, weight in weights.items()} | {"none": 0.7}


def tail(years: int, length: int, doubt: float) -> float:
    """The weight so many years beyond a soft end."""
    return doubt + (1 - doubt) * max(0.0, 1 - years / (length + 1))


def test_a_mark_is_on_the_part_that_carries_it_and_on_kinds_that_have_it(tmp_path: Path) -> None:
    pack = compiled(tmp_path, boxed())
    price = next(each for each in pack.features if each.id == "mark_price")
    assert pack.parts[price.part].id == "box"
    assert [pack.kinds[kind].id for kind in price.kinds] == ["set"]
    assert [state.id for state in price.states] == ["lsd", "both", "half_penny", "decimal", "none"]
    assert price.mistaken == [(2, 3)]
    assert price.none == -1
    assert shares(pack, "mark_price", "coach")[1970] == {"none": 1.0}
    assert all(state.drawing in pack.drawings for state in price.states)


def test_a_mark_brings_its_changes_and_sources(tmp_path: Path) -> None:
    pack = compiled(tmp_path, boxed())
    place = [each.id for each in pack.features].index("mark_price")
    changes = [change for change in pack.changes if change.feature == place]
    assert [(change.came, change.ended) for change in changes] == [
        ("", "1971-08"),
        ("1968-04", "1971-08"),
        ("1971-02-15", "1984-12"),
        ("1971-02-15", ""),
    ]
    assert [change.hard for change in changes] == [[False, False]] * 4

    def ids(said: list[tuple[int, str]]) -> list[str]:
        return [pack.sources[place].id for place, _ in said]

    assert [ids(change.said) for change in changes] == [
        [],
        ["mark_memory"],
        ["mark_decimal"],
        ["mark_decimal"],
    ]
    assert [ids(change.said_to) for change in changes] == [
        ["mark_decimal"],
        ["mark_memory"],
        ["mark_memory"],
        [],
    ]
    trust = {source.id: source.trust for source in pack.sources}
    assert trust["mark_decimal"] > trust["mark_memory"]
    assert changes[1].note.startswith("Such as 12/6 (62½p). ")
    assert len({source.id for source in pack.sources}) == len(pack.sources)


def test_marks_that_tell_no_year_from_another_are_left_out(tmp_path: Path) -> None:
    names = {each.id for each in compiled(tmp_path, boxed(years="1950/1955")).features}
    assert not {name for name in names if name.startswith("mark_")}
    later = compiled(tmp_path / "later", boxed(years="1985/1995"))
    found = {each.id: each for each in later.features if each.id.startswith("mark_")}
    # VAT and postcodes all through. The half penny goes, square codes come.
    assert {"mark_tax", "mark_postal", "mark_origin"}.isdisjoint(found)
    assert {"mark_price", "mark_telephone", "mark_recycling", "mark_barcode"} <= set(found)
    assert [state.id for state in found["mark_price"].states] == ["half_penny", "decimal", "none"]
    assert [state.id for state in found["mark_barcode"].states] == [
        "twelve",
        "thirteen",
        "qr",
        "none",
    ]


def test_a_pack_without_the_part_does_without_the_mark(tmp_path: Path) -> None:
    files = boxed()
    files["range.toml"] = files["range.toml"].replace('id = "box"', 'id = "crate"')
    files["features.toml"] = files["features.toml"].replace('part = "box"', 'part = "crate"')
    names = [each.id for each in compiled(tmp_path, files).features]
    assert "mark_price" not in names


def test_a_mark_underneath_is_on_the_piece_itself_where_there_is_no_such_part(
    tmp_path: Path,
) -> None:
    pack = compiled(tmp_path, boxed("JP", "1945/1955"))
    origin = next(each for each in pack.features if each.id == "mark_origin")
    assert origin.part == -1
    assert origin.kinds == [0, 1, 2]
    assert [state.id for state in origin.states] == ["made_in", "occupied", "foreign", "none"]
    files = boxed("JP", "1945/1955")
    files["range.toml"] = files["range.toml"].replace('id = "box"', 'id = "chassis"')
    files["features.toml"] = files["features.toml"].replace('part = "box"', 'part = "chassis"')
    below = compiled(tmp_path / "below", files)
    origin = next(each for each in below.features if each.id == "mark_origin")
    assert below.parts[origin.part].id == "chassis"
    assert origin.kinds == [2]


def test_a_country_without_rows_gets_no_marks(tmp_path: Path) -> None:
    pack = compiled(tmp_path, boxed("BR"))
    assert not [each.id for each in pack.features if each.id.startswith("mark_")]


def test_the_ids_of_marks_are_kept_for_them(tmp_path: Path) -> None:
    files = {name: text.replace("livery", "mark_livery") for name, text in small_files().items()}
    files = {name.replace("livery", "mark_livery"): text for name, text in files.items()}
    for name in ("items.csv", "variants.csv"):
        files[name] = files[name].replace(",book 19", ",mark_book 19")
    files["sources.csv"] = files["sources.csv"].replace("book,", "mark_book,")
    files["changes.csv"] = files["changes.csv"].replace("book 19", "mark_book 19")
    kept = 'ids that begin with "mark_" are kept for date marks. Choose another.'
    assert [str(each) for each in check_pack(write(tmp_path, files))] == [
        f"features.toml line 45, id: {kept}",
        f"sources.csv line 3, id: {kept}",
    ]


def years_after(pack: CompiledPack, *answers: tuple[str, str]) -> dict[int, float]:
    """The chance of each year of a set after these answers."""
    plain = msgspec.to_builtins(pack)
    engine = prepare(plain)
    session = new_session(engine) | {"scope": {"kind": "set", "items": []}}
    for feature, state in answers:
        answer: dict[str, Any] = {"feature": feature, "how": "sure", "states": [state]}
        session = answered(session, answer)
    return {int(year): chance for year, chance in assess(engine, session)["years"]["chances"]}


def test_a_mark_that_is_seen_dates_and_one_that_is_not_says_nothing(tmp_path: Path) -> None:
    pack = compiled(tmp_path, boxed())
    before = years_after(pack)
    assert list(before) == list(range(1968, 1975))
    assert years_after(pack, ("mark_price", "none")) == pytest.approx(before, rel=0.01)
    new = years_after(pack, ("mark_price", "decimal"))
    old = years_after(pack, ("mark_price", "lsd"))

    def after_1970(chances: dict[int, float]) -> float:
        return sum(chance for year, chance in chances.items() if year > 1970)

    assert after_1970(old) < after_1970(before)
    assert old[1974] < old[1969] / 2  # boxes with old prices were used up
    assert after_1970(new) > 0.75  # 1970 too is met: the end is soft


@pytest.mark.parametrize("folder", sorted(each.name for each in PACKS.iterdir()))
def test_marks_hardly_add_rows(folder: str) -> None:
    found = checked_pack(PACKS / folder)
    merged = merged_rows(found.rows, found.first, found.last, marks_to_merge())
    assert (found.mistakes, bool(merged["marks"])) == ([], True)

    def count(rows: RangeRows, marks: list[MarkYears]) -> int:
        split = prepare_split(rows, marks, found.first, found.last)
        return sum(len(issues_of(split, variant)["issues"]) for variant in rows["variants"])

    plain = count(found.rows, [])
    assert plain <= count(merged["rows"], merged["marks"]) <= 1.5 * plain


years = st.integers(1900, 1930).map(float)
spans = st.lists(
    st.fixed_dictionaries(
        {
            "state": st.sampled_from("abc"),
            "start": years,
            "end": years,
            "rise": st.integers(0, 5),
            "fall": st.integers(0, 5),
            "low_before": st.sampled_from([0.0, 0.01, 0.05]),
            "low_after": st.sampled_from([0.0, 0.01, 0.05]),
        }
    ),
    max_size=5,
)


@given(spans, st.floats(0, 1), st.integers(1895, 1935))
def test_shares_add_up_and_go_by_the_weights(windows: list[Window], seen: float, year: int) -> None:
    mark: MarkYears = {"feature": "mark", "windows": windows, "seen": seen}
    cell = {one["state"]: one["share"] for one in mark_cell(mark, year)}
    weights: dict[str, float] = {}
    for span in windows:
        if weight := window_weight(span, year):
            weights[span["state"]] = max(weight, weights.get(span["state"], 0.0))
    assert sum(cell.values()) == pytest.approx(1)
    assert set(cell) == {*weights, "none"}
    assert cell["none"] == pytest.approx(1 - seen * max(weights.values(), default=0), abs=3e-6)
    for state, weight in weights.items():
        ratio = weight / sum(weights.values())
        assert cell[state] == pytest.approx((1 - cell["none"]) * ratio, abs=3e-6)


def test_the_small_pack_has_no_marks(tmp_path: Path) -> None:
    plain = compiled(tmp_path, changed("range.toml", "A range made up", "A range invented"))
    assert [each.id for each in plain.features] == [
        "kind",
        "coupling",
        "horns",
        "horn_colour",
        "livery",
    ]
