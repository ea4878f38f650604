"""Date marks against public history, and against marks that others have dated."""

from collections import Counter

import pytest

from identify.core.dated_numbers import check_digit
from identify.core.marking import read_mark
from identify.reference.mark_ends import years_of
from identify.reference.marks import read_marks
from identify.reference.number_tables import all_series, yearly_table
from identify.reference.years import read_years
from tests.outside.count_marks import main
from tests.outside.dated_examples import SERIES, TABLES, examples, verdict, wordings_met

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
    ("DE", "postal", "four", "", "1993-06", "Deutsche Bundespost"),
    ("IT", "postal", "five", "1967-07-01", "", "Italian post: stamp of 1967"),
    ("FR", "postal", "five", "1972-06-03", "", "PTT: announced on 23 May 1972"),
    ("GB", "tax", "purchase", "1940-10-21", "", "Finance (No. 2) Act 1940"),
    ("GB", "tax", "vat", "1973-04-01", "", "Finance Act 1972"),
    ("DK", "tax", "vat", "1967-07-03", "", "Hansard, 27 March 1975"),
    ("DE", "origin", "made_in", "1887-08-23", "", "Merchandise Marks Act 1887, royal assent"),
    ("JP", "origin", "occupied", "1947-02-20", "1952-04", "SCAPIN 1535; Peace Treaty in force"),
    ("GB", "telephone", "zero_one_seven", "1995-04-16", "2000-04-22", "PhONEday; Oftel"),
    ("GB", "telephone", "code", "", "1995-04-16", "PhONEday"),
    ("FR", "telephone", "fr_eight", "1985-10-25", "1996-10-18", "France Télécom"),
    ("US", "barcode", "twelve", "1974-06", "", "First item scanned, 26 June 1974"),
    ("DE", "paper", "a_size", "1922-08-18", "", "DIN 476, date of issue"),
    ("DE", "patent", "drp", "1877-07-01", "", "German patent law of 25 May 1877, in force"),
    ("DE", "patent", "drgm", "1891-10-01", "", "German law of 1 June 1891, in force"),
    ("FR", "patent", "sgdg", "1844-07-05", "1968", "French laws of 1844 and 1968"),
]


@pytest.mark.parametrize("fact", FACTS, ids=[f"{fact[2]}: {fact[-1]}" for fact in FACTS])
def test_a_dated_fact(fact: tuple[str, str, str, str, str, str]) -> None:
    country, mark, wording, start, end, authority = fact
    rows = [
        row
        for row in read_marks()[0].rows
        if (row.feature, row.state) == (mark, wording) and country in row.country
    ]
    spans = [years_of(row) for row in rows]
    if start:
        assert min(first for first, _ in spans) == read_years(start).first, authority
    if end:
        assert max(last for _, last in spans) == read_years(end).last, authority


def test_a_west_german_piece_of_1975_may_be_marked_made_in_germany() -> None:
    # Used in the West all through the time of two states; a Federal Court ruling of 1973.
    (row,) = [r for r in TABLES["rows"] if (r["feature"], r["state"]) == ("origin", "made_in")
              and "DE" in r["countries"]]  # fmt: skip
    assert row["since"]["year"] < 1975
    assert row["until"]["year"] == 0


@pytest.mark.parametrize(
    ("body", "digit"),
    [
        ("629104150021", 3),  # GS1 General Specifications, section 7.9.1
        ("501234567890", 0),  # GS1 UK, "How to calculate your check digit"
        ("890400021003", 7),  # GS1 India, "How to calculate the check digit"
    ],
)
def test_published_check_digits(body: str, digit: int) -> None:
    assert check_digit(body) == digit


def test_a_published_barcode() -> None:
    (mark,) = read_mark(TABLES, "6291041500213")["marks"]
    assert mark["readings"][0]["number"]["kind"] == "EAN-13"


# Twenty of each were asked for: for East Germany no more were found.
LEAST = {"patent_dd": 10}


def test_numbers_that_others_have_dated() -> None:
    found = Counter[tuple[str, str]]()
    wrong = set()
    used = {
        (each.id, str(row.number)) for each in all_series() for row in yearly_table(each.id)
    } - {("design_us", "1"), ("patent_gb", "2436596")}  # their years are the authority's own
    for row in examples("mark_numbers.csv"):
        assert row["source"]
        assert (row["series"], row["number"]) not in used
        word = verdict(row["series"], row["number"], row["years"], row["of"])
        found[row["series"], word] += 1
        if word == "wrong":
            wrong.add((row["series"], row["number"]))
    for series in SERIES:
        assert sum(n for (name, _), n in found.items() if name == series) >= LEAST.get(series, 20)
    assert wrong == set()
    assert not [key for key in found if key[1] == "undecided"]


def test_wordings_that_others_have_dated() -> None:
    every, seen, right, wrong = wordings_met()
    assert (right, wrong) == (len(examples("mark_wordings.csv")), 0)
    assert len(every & seen) >= 25


def test_the_counts_are_printed(capsys: pytest.CaptureFixture[str]) -> None:
    main()
    printed = capsys.readouterr().out
    assert "without a dated example" in printed
    assert "patent_fr: 20 right" in printed


# Sights, not writing; a word or figures that say nothing alone; or an example said in words.
NOT_READ = {
    ("barcode", "qr"), ("barcode", "twelve"), ("barcode", "thirteen"), ("barcode", "forty_five"),
    ("recycling", "loop"), ("recycling", "number"), ("recycling", "dot"), ("recycling", "bin"),
    ("recycling", "triman"), ("conformity", "lion"), ("conformity", "kitemark"),
    ("conformity", "age"), ("conformity", "st"), ("conformity", "t_mark"),
    ("conformity", "c_tick"), ("conformity", "nf_mark"), ("design", "diamond"), ("rights", "mail"),
    ("rights", "dz"), ("postal", "plain"), ("tax", "plain"), ("telephone", "name"),
    ("telephone", "local"), ("paper", "other"), ("paper", "a_size"), ("price", "franken"),
    ("price", "lira"), ("price", "gulden"),
}  # fmt: skip


def test_the_example_of_each_wording_is_read_as_that_wording() -> None:
    unread = set()
    for row in read_marks()[0].rows:
        said = set()
        for text in row.wording.split("; "):
            for mark in read_mark(TABLES, text)["marks"]:
                said |= {(each["feature"], each["state"]) for each in mark["readings"]}
        if (row.feature, row.state) not in said | NOT_READ:
            unread.add((row.feature, row.state, row.wording))
    assert unread <= {
        ("price", "euro_both", "€ 12.50 and the old money"),
        ("postal", "three", "123; 123-45"),
        ("postal", "seven", "123-4567"),
        ("telephone", "letters", "DIDerot 32-39, DID 32-39"),
    }
