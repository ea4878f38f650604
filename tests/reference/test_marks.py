"""The table of date marks, its mistakes, and looking a mark up in it."""

import shutil
from itertools import pairwise
from pathlib import Path

import pytest

from identify.reference.marks import MarkError, read_marks, rows_for, years_of
from identify.reference.records import MEMORY, PRACTICE, PUBLISHED
from identify.shipped import MARKS


def test_the_table_has_no_mistakes() -> None:
    marks, mistakes = read_marks()
    assert [str(each) for each in mistakes] == []
    assert len(marks.rows) >= 40
    assert {feature.id for feature in marks.features} == {row.feature for row in marks.rows}


def test_every_row_has_a_label_and_a_source_to_match() -> None:
    marks, _ = read_marks()
    sources = {source.id for source in marks.sources}
    for row in marks.rows:
        assert row.wording
        assert row.label in (PUBLISHED, PRACTICE, MEMORY)
        assert row.source in sources | {""}
        if row.label == PUBLISHED:
            assert row.source, row
        if row.label == PRACTICE:
            assert not row.source, row
    assert sources == {row.source for row in marks.rows if row.source}


def test_the_same_wording_does_not_come_in_twice_at_once() -> None:
    marks, _ = read_marks()
    seen: dict[tuple[str, str, str], list[tuple[float, float]]] = {}
    for row in marks.rows:
        for country in row.country:
            seen.setdefault((country, row.feature, row.state), []).append(years_of(row))
    for key, spans in seen.items():
        for before, after in pairwise(sorted(spans)):
            assert before[1] <= after[0], key


BROKEN = [
    ("changes.csv", "GB;IE,price,lsd", "GB;Irl,price,lsd", '2, country: "Irl" is not a'),
    ("changes.csv", "price,lsd", "prise,lsd", '2, feature: there is no "prise" in features.toml'),
    ("changes.csv", "price,lsd", "price,none", '2, state: there is no "none" in features.toml'),
    ("changes.csv", "lsd,..,1971-08", "lsd,..,Aug 1971", '2, latest: "Aug 1971" is not a year'),
    ("changes.csv", "both,1970,1971-08", "both,1972,1971-08", "3, latest: 1971-08 is before 1972"),
    ("changes.csv", "5s.,decimal,", "5s.,decimol,", '2, source: there is no "decimol" in sources'),
    ("changes.csv", "5s.,decimal,", "5s.,,", '2, source: "published" needs a source of sources'),
    ("changes.csv", "5s.,decimal,published", "5s.,decimal,sure", '2, label: "sure" is not right'),
    ("changes.csv", "(62½p),,", "(62½p),decimal,", "3, source: leave this blank, since it is"),
    ("changes.csv", ",12/6; £1/2/6; 5s.,", ",,", "2, wording: this is blank; it must be text"),
    ("features.toml", 'parts = ["box"]\n', "parts = []\n", "8, parts: name at least one part"),
    ("features.toml", 'parts = ["box"]\n', 'part = "box"\n', '8, part: "part" means nothing'),
    ("features.toml", '{ id = "rm"', '{ id = "rm2"', "19, states: no row of changes.csv says"),
    ("features.toml", '"half_penny", "d', '"half", "d', '12, mistaken: there is no "half" in fea'),
    ("features.toml", '  { id = "none", name = "No price" },\n', "", '13, states: add a state "no'),
    ("features.toml", 'id = "tax"', 'id = "price"', '29, id: "price" stands twice. Change one.'),
    ("sources.csv", "\nau_decimal,", "\ndecimal,", '3, id: "decimal" stands twice. Change one.'),
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
        'marks/features.toml line 14, states: "lsd" has no drawing. Add drawings/price-lsd.svg.',
        'marks/drawings/price-lds.svg: there is no such state: did you mean "price-lsd"?',
    ]


def test_a_folder_that_is_not_there_is_said(tmp_path: Path) -> None:
    found = [str(each) for each in read_marks(tmp_path / "nowhere")[1]]
    assert found[0] == "nowhere/features.toml: this file is missing."


@pytest.mark.parametrize(
    ("country", "feature", "state", "said"),
    [
        ("FR", "origin", "occupied", '"Occupied Japan" is not known from FR, only from JP. '
         "Known from FR: The country, with or without Made in, Foreign, no country."),
        ("BR", "price", "lsd", '"Shillings and pence: 12/6" is not known from BR, only from AU, '
         "GB, IE, NZ. Nothing of the kind is from BR."),
        ("GB", "prices", "lsd", 'There is no mark "prices": did you mean "price"?'),
        ("GB", "price", "shilling", 'There is no wording "shilling": known are lsd, both, '
         "half_penny, decimal, dollars, rm, dm, mdn and so on."),
    ],
)  # fmt: skip
def test_a_mark_never_seen_there(country: str, feature: str, state: str, said: str) -> None:
    marks, _ = read_marks()
    with pytest.raises(MarkError) as error:
        rows_for(marks, country, feature, state)
    assert str(error.value) == said
