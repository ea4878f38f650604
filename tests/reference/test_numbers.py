"""Years from the numbers of designs and patents: the tables, their ends, and bad input."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.reference.numbers import (
    Dated,
    NumberError,
    design_years,
    patent_years,
    yearly_table,
)
from identify.reference.records import MEMORY, PUBLISHED
from identify.reference.years import read_years

TABLES = ("designs_gb.csv", "patents_gb.csv")


@pytest.mark.parametrize("file", TABLES)
def test_numbers_and_years_rise_together(file: str) -> None:
    rows = yearly_table(file)
    for before, after in pairwise(rows):
        assert before.number < after.number
        if before.year and after.year:
            assert read_years(before.year).first <= read_years(after.year).first


@pytest.mark.parametrize("file", TABLES)
def test_every_row_has_a_label_and_a_source_to_match(file: str) -> None:
    for row in yearly_table(file):
        assert row.label in (PUBLISHED, MEMORY)
        assert row.source or row.label == MEMORY
        assert row.year or row.what == "unused"


def test_every_year_of_the_old_design_series_has_its_first_number() -> None:
    rows = [row for row in yearly_table("designs_gb.csv") if row.number < 1_062_000]
    assert [row.year for row in rows] == [str(year) for year in range(1884, 1990)]


@pytest.mark.parametrize(
    ("number", "first", "last"),
    [
        ("1", 1884, 1884),
        ("19753", 1884, 1884),
        ("19754", 1885, 1885),
        ("837519", 1939, 1939),
        ("837520", 1940, 1940),
        ("1061999", 1989, 1989),
        ("2000000", 1989, 1989),
        ("2003719", 1989, 1989),
        ("2003720", 1990, None),
        ("6012345", 1990, None),
    ],
)
def test_designs_up_to_the_ends_of_the_table(number: str, first: int, last: int | None) -> None:
    found = design_years(number)
    assert (found.first, found.last) == (first, last)


@pytest.mark.parametrize(
    ("number", "first", "last"),
    [
        ("100001", 1916, 1920),
        ("226570", 1919, 1925),
        ("226571", 1924, 1930),
        ("999999", 1959, 1965),
        ("1000000", 1965, 1970),
        ("1577235", 1980, 1981),
        ("1605999", 1981, None),
        ("2000001", 1978, 2007),
        ("2500000", 2013, None),
        ("99999999", 2013, None),
    ],
)
def test_patents_up_to_the_ends_of_the_table(number: str, first: int, last: int | None) -> None:
    found = patent_years(number)
    assert (found.first, found.last) == (first, last)


def test_the_answer_in_words() -> None:
    assert design_years("821265").text == (
        "Registered design 821265 was registered in 1937; the piece is of 1937 or later. "
        "The table is from memory."
    )
    assert patent_years("654321").text == (
        "Patent 654321 was published between 1949 and 1955; the piece is of 1949 or later. "
        "The table is from memory."
    )
    assert patent_years("1577235").text == (
        "Patent 1577235 was published between 1980 and 1981; the piece is of 1980 or later."
    )
    assert patent_years("1234/09") == Dated(
        1909, 1909, "Application 1234 of 1909; the piece is of 1909 or later."
    )


@pytest.mark.parametrize(
    "text",
    ["821265", " 821,265", "821 265", "Rd. No. 821265", "Regd. Design No 821265", "DES. 821265"],
)
def test_words_before_a_design_number(text: str) -> None:
    assert design_years(text).first == 1937


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("Pat. No. 654,321", 1949),
        ("British Patent 654321", 1949),
        ("GB 654321", 1949),
        ("GB2012345", 1978),
        ("Prov. Pat. App. 1234/50", 1950),
        ("pat. applied for 1234 of 1950", 1950),
        ("1234/1852", 1852),
        ("1234/1978", 1978),
        ("1234/00", 1900),
    ],
)
def test_words_before_a_patent_number(text: str, first: int) -> None:
    assert patent_years(text).first == first


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "There is no number. Write the figures of the registered design, such as 821265."),
        ("Rd. No.", "There is no number. Write the figures of the registered design, such as"),
        ("82I265", '"82I265" is not the number of a registered design, which is figures only, such '
         "as 821265. Look again for I read for 1, O for 0 and S for 5."),
        ("-5", '"-5" is not the number of a registered design'),
        ("82 12 65", '"82 12 65" is not the number of a registered design'),
        ("٨٢١٢٦٥", '"٨٢١٢٦٥" is not the number of a registered design'),
        ("0", "The numbers of registered designs begin at 1; 0 is too low."),
        ("1062000", "No registered design has the number 1062000: the series ended before 1062000 "
         "and went on at 2000000. Read the figures again."),
        ("1999999", "No registered design has the number 1999999"),
        ("123456789", '"123456789" has 9 figures; the number of a registered design has at most'),
        ("9" * 5000, '"9999999999999999999999999999999999999999…" has 5000 figures'),
    ],
)  # fmt: skip
def test_a_design_number_that_cannot_be(text: str, said: str) -> None:
    with pytest.raises(NumberError) as error:
        design_years(text)
    assert str(error.value).startswith(said)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("Pat.", "There is no number. Write the figures of the patent, such as 654321 or 1234/09."),
        ("12a", '"12a" is not the number of a patent, which is figures only, such as 654321 or'),
        ("1234/", '"1234/" is not the number of a patent'),
        ("99999", "A British patent number below 100001 says no year by itself: before 1916 "
         "numbers began again at 1 each year. Add the year, as in 99999/09."),
        ("0", "A British patent number below 100001 says no year by itself"),
        ("1606000", "No patent has the number 1606000: the series ended before 1606000 and went on "
         "at 2000001. Read the figures again."),
        ("2000000", "No patent has the number 2000000"),
        ("1234/1851", "British patents were numbered by the year from 1852 to 1978, not in 1851. "
         "Read the year again."),
        ("1234/79", "British patents were numbered by the year from 1852 to 1978, not in 1979."),
    ],
)  # fmt: skip
def test_a_patent_number_that_cannot_be(text: str, said: str) -> None:
    with pytest.raises(NumberError) as error:
        patent_years(text)
    assert str(error.value).startswith(said)


@given(st.text(max_size=12) | st.from_regex(r"(No )?[0-9]{1,9}(/[0-9]{2,4})?"))
def test_any_text_gets_years_or_a_sentence(text: str) -> None:
    for read in (design_years, patent_years):
        try:
            found = read(text)
        except NumberError as error:
            found = Dated(1852, None, str(error))
        assert found.text.endswith(".")
        assert found.last is None or 1852 <= found.first <= found.last


@given(st.integers(1, 2_003_720), st.integers(1, 2_003_720))
def test_a_higher_design_number_is_never_older(one: int, other: int) -> None:
    try:
        low, high = design_years(str(min(one, other))), design_years(str(max(one, other)))
    except NumberError:
        assert any(1_062_000 <= each < 2_000_000 for each in (one, other))
    else:
        assert low.first <= high.first
