"""The table of date marks, how hard its ends are, and its mistakes."""

import math
import shutil
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.ranges.windows import window_weight
from identify.reference.entries import AUTHORITIES, MEMORY, PRACTICE, PUBLISHED
from identify.reference.mark_ends import ends_of, window_of, years_of
from identify.reference.marks import read_marks
from identify.reference.number_tables import all_series, yearly_table
from identify.reference.years import read_years
from identify.shipped import MARKS


def test_the_table_has_no_mistakes() -> None:
    marks, mistakes = read_marks()
    assert [str(each) for each in mistakes] == []
    assert len(marks.rows) >= 40
    assert {feature.id for feature in marks.features} == {row.feature for row in marks.rows}


def beside_an_encyclopedia(read: str) -> bool:
    """Whether something was read that is no encyclopedia which anyone edits."""
    return any(place and "ikipedia" not in place for place in read.split(";"))


def test_every_end_has_a_label_and_a_source_to_match() -> None:
    marks, _ = read_marks()
    sources = {source.id: source for source in marks.sources}
    named = set()
    for row in marks.rows:
        assert row.wording
        for end in ends_of(row):
            named.add(end.source)
            if end.open:
                assert (end.label, end.source, end.tail) == ("", "", 0), row
                continue
            assert end.label in (PUBLISHED, PRACTICE, MEMORY)
            if end.label == PUBLISHED:
                assert sources[end.source].kind in AUTHORITIES, row
                assert beside_an_encyclopedia(sources[end.source].read), row
            else:
                assert not end.hard, row
            if end.label == PRACTICE:
                assert not end.source, row
    for series in all_series():
        for number in yearly_table(series.id):
            named.add(number.source)
            assert number.label in (PUBLISHED, MEMORY)
            if number.label == PUBLISHED:
                assert sources[number.source].kind in AUTHORITIES, number
                assert beside_an_encyclopedia(sources[number.source].read), number
    assert set(sources) == named - {""}


@pytest.mark.parametrize("series", [each.id for each in all_series()])
def test_numbers_and_years_rise_together(series: str) -> None:
    rows = yearly_table(series)
    for before, after in pairwise(rows):
        assert before.number < after.number
        if before.year and after.year and before.what != "unused":  # then another stretch begins
            assert read_years(before.year).first <= read_years(after.year).first
    for row in rows:
        assert row.year or row.what == "unused"


@given(st.sampled_from(read_marks()[0].rows), st.integers(1800, 2030))
def test_no_mark_ever_rules_a_year_out_alone_unless_its_end_is_hard(row, year) -> None:
    first, last = ends_of(row)
    weight = window_weight(window_of(row), year)
    beyond_hard = (first.hard and year + 1 <= first.at) or (last.hard and year >= last.at)
    assert (weight == 0.0) == beyond_hard
    if year + 1 > first.at and year < last.at:
        assert weight == 1.0


@given(st.sampled_from(read_marks()[0].rows), st.integers(1, 40))
def test_the_weight_falls_evenly_in_the_tail_and_then_stays(row, years) -> None:
    _, last = ends_of(row)
    if last.open or last.hard:
        return
    window = window_of(row)
    final = math.ceil(last.at) - 1
    left = max(0.0, 1 - years / (last.tail + 1))
    assert window_weight(window, final + years) == pytest.approx(
        last.doubt + (1 - last.doubt) * left
    )


def test_the_same_wording_does_not_come_in_twice_at_once() -> None:
    marks, _ = read_marks()
    seen: dict[tuple[str, str, str], list[tuple[float, float]]] = {}
    for row in marks.rows:
        for country in row.country:
            seen.setdefault((country, row.feature, row.state), []).append(years_of(row))
    for key, spans in seen.items():
        for before, after in pairwise(sorted(spans)):
            assert before[1] <= after[0], key


GUESS = "decimal,4 guess"
BROKEN = [
    ("changes.csv", "GB;IE,price,lsd", "GB;Irl,price,lsd", '2, country: "Irl" is not a'),
    ("changes.csv", "price,lsd", "prise,lsd", '2, feature: there is no "prise" in features.toml'),
    ("changes.csv", "price,lsd", "price,none", '2, state: there is no "none" in features.toml'),
    ("changes.csv", ",1971-08,", ",Aug 1971,", '2, latest: "Aug 1971" is not a year'),
    ("changes.csv", "1968-04,", "1972,", "3, latest: 1971-08 is before 1972"),
    ("changes.csv", GUESS, "decimol,4 guess", '2, source: there is no "decimol" in sources'),
    ("changes.csv", GUESS, ",4 guess", '2, to_source: "published" needs a source of sources'),
    ("changes.csv", "published,decimal,4", "sure,decimal,4", '2, to_label: "sure" is not'),
    ("changes.csv", "published,decimal,4", ",decimal,4", "2, to_label: this is blank"),
    ("changes.csv", GUESS, "decimal,soon", '2, to_edge: write "hard", or the years'),
    ("changes.csv", GUESS, "decimal,4 nobody", '2, source: there is no "nobody" in sources.csv'),
    ("changes.csv", "from memory,,2 guess", "from memory,,hard", '3, from_edge: only a "publ'),
    ("changes.csv", GUESS, "ddr_mark,4 guess", '2, to_source: "published" needs a statute'),
    ("changes.csv", GUESS, "weee,4 guess", '2, to_source: nothing was read of "weee"'),
    ("changes.csv", "..,,,,1971-08", "..,published,,,1971-08", "2, from_label: leave this"),
    ("changes.csv", "from memory,,2 guess,1971",
     '"common practice, no source",decimal,2 guess,1971',
     '3, from_source: leave this blank, since it is "common practice, no source".'),
    ("changes.csv", ",12/6; £1/2/6; 5s.,", ",,", "2, wording: this is blank; it must be text"),
    ("features.toml", 'parts = ["box"]\n', "parts = []\n", "9, parts: name at least one part"),
    ("features.toml", 'parts = ["box"]\n', 'part = "box"\n', '9, part: "part" means nothing'),
    ("features.toml", '{ id = "rm"', '{ id = "rm2"', "21, states: no row of changes.csv says"),
    ("features.toml", '"half_penny", "d', '"half", "d', '13, mistaken: there is no "half" in fea'),
    ("features.toml", '  { id = "none", name = "No price" },\n', "", '14, states: add a state "no'),
    ("features.toml", 'id = "tax"', 'id = "price"', '42, id: "price" is there twice. Change one.'),
    ("sources.csv", "\nau_decimal,", "\ndecimal,", '3, id: "decimal" is there twice. Change one.'),
    ("sources.csv", "0.95,statute", "0.95,hearsay", '2, kind: "hearsay" is not right'),
    ("drawings/price-lsd.svg", "viewBox", "onclick", '1: the attribute "onclick" is not allowed'),
]  # fmt: skip


@pytest.mark.parametrize(("file", "old", "new", "said"), BROKEN)
def test_a_mistake_is_said(tmp_path: Path, file: str, old: str, new: str, said: str) -> None:
    folder = Path(shutil.copytree(MARKS, tmp_path / "marks"))
    text = (folder / file).read_text("utf-8")
    assert old in text
    (folder / file).write_text(text.replace(old, new, 1), "utf-8")
    found = [str(each) for each in read_marks(folder)[1]]
    assert any(each.startswith(f"marks/{file} line {said}") for each in found), "\n".join(found)


def test_drawings_one_for_each_state(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(MARKS, tmp_path / "marks"))
    (folder / "drawings/price-lsd.svg").rename(folder / "drawings/price-lds.svg")
    assert [str(each) for each in read_marks(folder)[1]] == [
        'marks/features.toml line 15, states: "lsd" has no drawing. Add drawings/price-lsd.svg.',
        'marks/drawings/price-lds.svg: there is no such state: did you mean "price-lsd"?',
    ]


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    found = [str(each) for each in read_marks(tmp_path / "nowhere")[1]]
    assert found[0] == "nowhere/features.toml: this file is missing."
