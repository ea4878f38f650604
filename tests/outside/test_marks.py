"""Date marks against public history and published examples. Each fact names who says so."""

import pytest

from identify.reference.barcodes import gtin_check_digit, read_barcode
from identify.reference.marks import read_marks, rows_for, years_of
from identify.reference.numbers import design_years, patent_years
from identify.reference.years import read_years

# (country, mark, wording, from, until, authority); "" where it is open or not what is checked.
FACTS = [
    ("GB", "price", "decimal", "1971-02-15", "", "Decimal Currency Act 1969: the appointed day"),
    ("GB", "price", "lsd", "", "1971-08", "Royal Mint: old pence withdrawn on 31 August 1971"),
    ("IE", "price", "decimal", "1971-02-15", "", "Decimal Day in Ireland, the same day"),
    ("AU", "price", "dollars", "1966-02-14", "", "Reserve Bank of Australia"),
    ("NZ", "price", "dollars", "1967-07-10", "", "New Zealand Decimal Currency Board: DC Day"),
    ("DE", "price", "dm", "1948-06-20", "", "Currency reform of the western zones"),
    ("US", "postal", "zip", "1963-07-01", "", "U.S. Post Office Department"),
    ("US", "postal", "zip_state", "1963-10-01", "", "U.S. Post Office Department, Publication 59"),
    ("DE", "postal", "five", "1993-07-01", "", "Deutsche Bundespost"),
    ("DE", "postal", "four", "", "1993-06-30", "Deutsche Bundespost"),
    ("IT", "postal", "five", "1967-07-01", "", "Italian post: stamp of 1967"),
    ("GB", "tax", "purchase", "1940-10-21", "", "Finance (No. 2) Act 1940"),
    ("GB", "tax", "vat", "1973-04-01", "", "Finance Act 1972"),
    ("DE", "origin", "made_in", "1887-08-23", "", "Merchandise Marks Act 1887, royal assent"),
    ("JP", "origin", "occupied", "1947-02-20", "1952-04-28", "SCAPIN 1535; Peace Treaty in force"),
    ("GB", "telephone", "inner_outer", "1990-05-06", "1995-04-16", "British Telecom; PhONEday"),
    ("US", "barcode", "twelve", "1974-06", "", "First item scanned, 26 June 1974"),
    ("DE", "paper", "a_size", "1922-08-18", "", "DIN 476, date of issue"),
    ("DE", "patent", "drp", "1877-07-01", "", "German patent law of 25 May 1877, in force"),
]


@pytest.mark.parametrize("fact", FACTS, ids=[fact[-1] for fact in FACTS])
def test_a_dated_fact(fact: tuple[str, str, str, str, str, str]) -> None:
    country, mark, wording, start, end, authority = fact
    rows = rows_for(read_marks()[0], country, mark, wording)
    spans = [years_of(row) for row in rows]
    if start:
        assert min(first for first, _ in spans) == read_years(start).first, authority
    if end:
        assert max(last for _, last in spans) == read_years(end).last, authority


def test_the_mckinley_tariff() -> None:
    # Tariff Act of 1 October 1890: goods brought into the United States must name their country.
    for country in ("GB", "FR"):
        (row,) = rows_for(read_marks()[0], country, "origin", "made_in")
        assert read_years("1890-10-01").first <= years_of(row)[0] <= read_years("1891").last


def test_toys_carry_ce_by_the_time_they_must() -> None:
    # Directive 88/378/EEC was adopted on 3 May 1988 and applied from 1 January 1990.
    (row,) = rows_for(read_marks()[0], "GB", "conformity", "ce")
    assert read_years("1988-05-03").first <= years_of(row)[0] < read_years("1990-01-01").last


@pytest.mark.parametrize(
    ("body", "digit"),
    [
        ("629104150021", 3),  # GS1 General Specifications, section 7.9.1
        ("501234567890", 0),  # GS1 UK, "How to calculate your check digit"
        ("890400021003", 7),  # GS1 India, "How to calculate the check digit"
    ],
)
def test_published_check_digits(body: str, digit: int) -> None:
    assert gtin_check_digit(body) == digit


def test_a_published_barcode() -> None:
    assert read_barcode("6291041500213").kind == "EAN-13"


@pytest.mark.parametrize(
    ("number", "year"),
    [
        ("10057", 1884),  # given with its year in guides to registered numbers on pottery
        ("821265", 1937),  # the same
    ],
)
def test_dated_designs(number: str, year: int) -> None:
    found = design_years(number)
    assert (found.first, found.last) == (year, year)


@pytest.mark.parametrize(
    ("number", "year"),
    [
        ("253443", 1926),  # toy building blocks, applied for on 22 December 1925
        ("1577235", 1980),  # published on 22 October 1980
        ("1596168", 1981),  # published on 19 August 1981
        ("2436596", 2007),  # application of 2005 amended in 2006; British Library, March 2008
        ("2500000", 2013),  # Intellectual Property Office, 16 September 2013
    ],
)
def test_dated_patents(number: str, year: int) -> None:
    found = patent_years(number)
    assert found.first <= year <= (found.last or year)
