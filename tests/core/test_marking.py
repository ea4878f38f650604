"""Marks read as they stand on a piece: what they are, several readings, and what is wrong."""

from typing import Any

import orjson
import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.apart import marks_apart, years_apart
from identify.core.mark_text import is_letter, plain_mark, words_in
from identify.core.mark_words import mark_span, nothing_said, reading_said
from identify.core.marking import read_mark
from identify.reference.mark_tables import mark_tables
from tests.strategies import scribbles

TABLES = mark_tables()


def marks(text: str) -> list[list[tuple[str, str]]]:
    """The mark and the state of every reading of each mark in a text."""
    found = read_mark(TABLES, text)
    return [[(r["feature"], r["state"]) for r in mark["readings"]] for mark in found["marks"]]


def said(text: str) -> str:
    """All that is said of the first reading of the first mark in a text."""
    reading = read_mark(TABLES, text)["marks"][0]["readings"][0]
    words = reading_said(TABLES, reading)
    return " ".join("".join(map(str, line)) for line in [words["what"], *words["lines"]])


@pytest.mark.parametrize(
    ("text", "plain"),
    [
        ("D.R.G.M. 1 234 567", "DRGM 1 234 567"),
        ("W. Germany", "W GERMANY"),
        ("PAT. NO. 10811/97", "PAT NO 10811/97"),
        ("U.S.Pat. 1,234,567", "US PAT 1,234,567"),
        ("London,  S.E.1", "LONDON, SE1"),
        ("£2.99 inc. VAT", "£2.99 INC VAT"),
        ("D.R.-Patent", "DR-PATENT"),
        ("Breveté S.G.D.G.", "BREVETÉ SGDG"),
        ("12/6 \u2013 net", "12/6 - NET"),
    ],
)
def test_plain_capitals(text, plain):
    assert plain_mark(text) == [plain, False]


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("DRGM 1 234 567", ("patent", "drgm")),
        ("Regd. Des. 821265", ("design", "six")),
        ("Rd821265", ("design", "six")),
        ("Registered Design No 2012345", ("design", "new")),
        ("90040480980004", ("design", "fourteen")),
        ("Regd. Design 90040480980004", ("design", "fourteen")),
        ("PAT. NO. 10811/97", ("patent", "yearly")),
        ("GB2012345", ("patent", "two_million")),
        ("D.R.P. 300 713", ("patent", "drp")),
        ("D.R.P. angem.", ("patent", "drpa")),
        ("DBGM 6 912 345", ("patent", "dbgm")),
        ("Brevet\u00e9 S.G.D.G.", ("patent", "sgdg")),
        ("W. Germany", ("origin", "western")),
        ("Made in Western Germany", ("origin", "western")),
        ("MADE IN GERMANY", ("origin", "made_in")),
        ("U.S. Zone Germany", ("origin", "us_zone")),
        ("Made in Occupied Japan", ("origin", "occupied")),
        ("(0171) 555", ("telephone", "zero_one_seven")),
        ("01-234 5678", ("telephone", "figures")),
        ("021-234 5678", ("telephone", "figures_city")),
        ("(0234) 5678", ("telephone", "code")),
        ("(01234) 567890", ("telephone", "zero_one")),
        ("020 7234 5678", ("telephone", "twenty")),
        ("01 45 12 34 56", ("telephone", "fr_ten")),
        ("49/11", ("price", "lsd")),
        ("£1/2/6", ("price", "lsd")),
        ("62½p", ("price", "half_penny")),
        ("DM 12.50", ("price", "dm")),
        ("198,- DM", ("price", "dm")),
        ("1.600,- DM", ("price", "dm")),
        ("12,50 MDN", ("price", "mdn")),
        ("MDN 164", ("price", "mdn")),
        ("8 M\u00fcnchen 2", ("postal", "short")),
        ("(22a) Oberfeld", ("postal", "two")),
        ("5300 Oberfeld", ("postal", "four")),
        ("W-5300 Oberfeld", ("postal", "west_east")),
        ("53000 Oberfeld", ("postal", "five")),
        ("London, S.E.1", ("postal", "district")),
        ("London, S.E.", ("postal", "letters")),
        ("AB1 2CD", ("postal", "postcode")),
        ("NOR 09N", ("postal", "postcode_nor")),
        ("Lakefield, IL 60000-1234", ("postal", "zip4")),
        ("BS 3443", ("conformity", "bs_3443")),
        ("5012345678900", ("barcode", "thirteen")),
        ("0 12345 67890 5", ("barcode", "twelve")),
        ("DE 25 12 345", ("patent", "dbp")),
        ("DE 195 12 345.7", ("patent", "dbp")),
        ("DBGM 20 2006 021 300", ("patent", "dbgm")),
        ("Brevet\u00e9 S.G.D.G. 396.795", ("patent", "brevete")),
        ("+ 123 456", ("patent", "ch_cross")),
        ("\u7279\u8a31\u7b2c1405789\u53f7", ("patent", "jp_patent")),
        ("DDR-Patent 20460", ("patent", "ddr")),
        ("17.5% VAT", ("rate", "r17_5")),
        ("VAT at 17\u00bd%", ("rate", "r17_5")),
        ("inkl. 11 % MwSt.", ("rate", "r11")),
        ("TVA 18,60%", ("rate", "r18_6")),
        ("9% VAT", ("tax", "vat")),  # no country has had it
    ],
)
def test_a_mark_as_it_stands(text, first):
    assert marks(text)[0][0] == first


def test_mixed_marks_are_told_apart():
    both = [each[0] for each in marks("£2.99 inc. VAT")]
    assert both == [("price", "decimal"), ("tax", "vat")]
    assert [each[0] for each in marks("Made in England Regd. Design 821265")] == [
        ("origin", "made_in"),
        ("design", "six"),
    ]


def test_pence_after_a_point_are_no_code_of_a_town():
    assert marks("12.50 inkl. 14% MwSt.") == [[("rate", "r14")]]


def test_a_number_longer_than_its_series_is_said_with_the_most_it_has():
    assert "there are at most 12" in said("DE 1234567890123")


def test_more_than_one_reading_is_offered_as_such():
    assert ("patent", "yearly") in marks("49/11")[0]  # or application 49 of 1911
    both = read_mark(TABLES, "Pat. 1234/60")["marks"][0]["readings"]
    assert [each["number"]["first"] for each in both] == [1860, 1960]
    bare = read_mark(TABLES, "821265")["marks"][0]["readings"]
    assert {each["series"] for each in bare} >= {"design_gb", "patent_gb", "patent_us"}
    assert all(each["bare"] for each in bare)
    assert said("821265").startswith("British registered design 821265 Nothing says what")


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("Rd 82I265", "“82I265” is not figures only. Look again for I read for 1, O for 0 and S "
         "for 5. It may be 821265."),
        ("Regd.", "There is no number after it. Add the figures, as in 821265."),
        ("GB 3456789", "From memory: the series had not reached 2700000 by 2026."),
        ("Rd. No. 1062500", "The series ended near 1061407 and went on at 2000000."),
        ("GB 99", "Add the year, as in 99/09."),
        ("Pat. 1234/1979", "British patents were numbered by the year from 1852 to 1978"),
        ("Regd. 123456789", "That has too many figures: there are at most 7."),
        ("5012345678901", "By the other figures the last one should be 0."),
    ],
)  # fmt: skip
def test_what_is_wrong_is_said(text, sentence):
    assert sentence in said(text)


@pytest.mark.parametrize(
    "text", ["\u0668\u0662\u0661\u0662\u0666\u0665", "\uff18\uff12\uff11\uff12\uff16\uff15"]
)
def test_figures_of_other_scripts_are_read_and_said(text):
    found = read_mark(TABLES, text)
    assert (found["read"], found["changed"], len(found["marks"])) == ("821265", True, 1)


def test_letters_that_look_like_ours_are_read_and_said():
    found = read_mark(TABLES, "\u0421\u0415")  # Cyrillic, and looks like CE
    assert (found["read"], found["changed"]) == ("CE", True)


@pytest.mark.parametrize("text", ["", "  ", "."])
def test_nothing_at_all(text):
    found = read_mark(TABLES, text)
    assert found["marks"] == []
    assert "".join(map(str, nothing_said(found))).endswith(".")


def test_no_mark_is_said_with_what_it_would_have_to_be():
    found = read_mark(TABLES, "purple engine")
    assert found["problem"] == "nothing"
    assert "“PURPLE ENGINE” is not a mark" in "".join(map(str, nothing_said(found)))


@pytest.mark.parametrize(
    ("text", "meant"), [("O1-234 5678", "01-234 5678"), ("I2/6", "12/6"), ("purple I2", "")]
)
def test_look_alikes_are_told_and_never_taken(text, meant):
    found = read_mark(TABLES, text)
    assert (found["problem"], found["meant"], found["marks"]) == ("nothing", meant, [])
    said = "".join(map(str, nothing_said(found)))
    assert ("It may be" in said) == (meant != "")


def test_sentences_are_no_surer_than_the_rows():
    occupied = said("Made in Occupied Japan")
    assert "not before 20 February 1947, hardly after April 1952" in occupied
    assert "hardly before" in said("W. Germany")
    for row in TABLES["rows"]:
        for end in (row["since"], row["until"]):
            assert not end["hard"] or end["label"] == "published"


def test_marks_of_one_piece_that_cannot_be_of_one_year():
    spans = [
        mark_span(TABLES, mark["readings"][0])
        for text in ("Made in Occupied Japan", "£2.99 inc. VAT")
        for mark in read_mark(TABLES, text)["marks"]
    ]
    assert years_apart(spans) == [[2, 0]]
    assert years_apart(spans[1:]) == []
    assert years_apart([]) == []


@given(scribbles() | st.text(max_size=20))
def test_any_text_gets_an_answer(text):
    found = read_mark(TABLES, text)
    assert (found["problem"] == "") == (len(found["marks"]) > 0)
    if found["problem"]:
        assert nothing_said(found)
    at = 0
    for mark in found["marks"]:
        assert at <= mark["start"] < mark["end"] <= len(found["read"])
        at = mark["end"]
        assert mark["readings"]
        for reading in mark["readings"]:
            assert reading_said(TABLES, reading)["lines"]


@given(st.text(max_size=20))
def test_words_are_pieces_of_the_text_in_order(text):
    plain = plain_mark(text)[0]
    at = 0
    for word, start, end in words_in(plain):
        assert (at <= start, plain[start:end]) == (True, word)
        at = end


def seen(feature: int, earliest: int, latest: int, first: int, last: int) -> dict[str, Any]:
    return {"feature": feature, "answer": 0, "earliest": earliest, "latest": latest,
            "first": first, "last": last, "variants": [], "changes": []}  # fmt: skip


def test_date_marks_of_two_parts_that_cannot_be_of_one_year():
    pack: Any = {
        "range": {"first": 1950, "last": 1980},
        "features": [
            {"id": "coupling"},
            {"id": "mark_a", "seen": 0.3},
            {"id": "mark_b", "seen": 1},
        ],
    }
    box, plate = seen(1, 1971, 1980, 1970, 1980), seen(2, 1950, 1962, 1950, 1968)
    assert marks_apart(pack, [box, plate]) == [{"late": 0, "early": 1, "hard": True}]
    assert marks_apart(pack, [plate, box]) == [{"late": 1, "early": 0, "hard": True}]
    soft = plate | {"last": 1970}
    assert marks_apart(pack, [box, soft]) == [{"late": 0, "early": 1, "hard": False}]
    assert marks_apart(pack, [box, plate | {"latest": 1971}]) == []
    assert marks_apart(pack, [box, plate | {"feature": 0}]) == []  # a running change is no mark


def test_only_date_marks_can_disagree_in_a_compiled_range(site):
    """A colour that came late and a roof given up early are answers to look at again, no marks."""
    pack = orjson.loads(site["packs/pellmarsh.json"])
    marks = {one["id"] for one in pack["features"] if "seen" in one}
    assert marks
    assert all(name.startswith("mark_") for name in marks)
    place = [one["id"] for one in pack["features"]].index
    green, white = (
        seen(place("main_colour"), 1957, 1966, 1957, 1966),
        seen(place("roof"), 1947, 1951, 1947, 1951),
    )
    assert marks_apart(pack, [green, white]) == []


def test_a_character_that_javascript_counts_as_two_is_no_letter():
    """Half of one is none either: so a text is cut at the same places on the phone."""
    assert [c for c in "AÉÄЖ漢한ﬁ" if not is_letter(c)] == []
    assert [c for c in "\U00010000\U0001f682\ud800\udc00÷7 ." if is_letter(c)] == []
