"""Years of numbers: how they may be written, what each problem is, and what is right instead."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.core.dated_numbers import check_digit, read_number

# A made-up registry: a year has a hundred numbers, and none was given from 300 to 499.
ROWS = [[100, 1950, 0, 0], [200, 1951, 1950, 1], [300, 0, 1952, 0], [500, 1953, 1952, 0]]
TABLES: dict[str, Any] = {
    "design": ROWS, "patent": ROWS, "barcode": {"twelve": [1970, 0], "thirteen": [1980, 1]},
}  # fmt: skip


def read(what: str, text: str) -> dict[str, Any]:
    return read_number(TABLES, what, text)


@pytest.mark.parametrize(
    ("number", "first", "last", "memory", "row"),
    [
        (100, 1950, 1950, True, 0),
        (199, 1950, 1950, True, 0),
        (200, 1951, 1952, True, 1),
        (299, 1951, 1952, True, 1),
        (500, 1953, 0, False, 3),
        (99999999, 1953, 0, False, 3),
    ],
)
def test_years_between_the_rows(number, first, last, memory, row):
    found = read("design", str(number))
    assert found["problem"] == ""
    keys = ("number", "first", "last", "memory", "row")
    assert [found[key] for key in keys] == [number, first, last, memory, row]


@pytest.mark.parametrize(
    "text",
    [
        "12150", "12,150", "12 150", "Rd12150", "RD. NO.: 12150", " Regd. Design No 12150 ",
        "gb 12150", "UK12\u00a0150",
    ],
)  # fmt: skip
def test_ways_to_write_a_number(text):
    assert (read("design", text)["figures"], read("design", text)["number"]) == ("12150", 12150)


@pytest.mark.parametrize(
    ("what", "text", "told"),
    [
        ("design", "", ["empty", "", "", []]),
        ("design", " Rd. No. ", ["empty", "", "", []]),
        ("design", "No I5O", ["letters", "I5O", "150", []]),
        ("design", "l5o", ["letters", "l5o", "150", []]),
        ("design", "purple", ["letters", "purple", "", []]),
        ("design", "1 50", ["letters", "1 50", "", []]),
        ("design", "1234 567", ["letters", "1234 567", "", []]),
        ("design", "1,,234", ["letters", "1,,234", "", []]),
        ("design", "12/09", ["letters", "12/09", "", []]),
        ("patent", "l2/O9", ["letters", "l2/O9", "12/09", []]),
        ("patent", "12/009", ["letters", "12/009", "", []]),
        ("design", "123456789", ["long", "123456789", "", []]),
        ("design", "99", ["low", "99", "", [100, 1950]]),
        ("design", "000", ["low", "000", "", [100, 1950]]),
        ("design", "300", ["unused", "300", "", [300, 500]]),
        ("design", "499", ["unused", "499", "", [300, 500]]),
        ("patent", "12/1851", ["year", "12", "", [1852, 1978]]),
        ("patent", "12 of 1979", ["year", "12", "", [1852, 1978]]),
        ("barcode", " - ", ["empty", " - ", "", []]),
        ("barcode", "5O12345678900", ["letters", "5O12345678900", "5012345678900", []]),
        ("barcode", "bars", ["letters", "bars", "", []]),
        ("barcode", "1234567", ["count", "1234567", "", []]),
        ("barcode", "5012345678907", ["check", "5012345678907", "", [0]]),
    ],
)
def test_what_is_wrong_and_what_would_be_right(what, text, told):
    found = read(what, text)
    keys = ("problem", "figures", "meant", "near")
    assert [found[key] for key in keys] == told
    assert found["row"] == -1


def test_a_series_that_ended_for_good():
    ended = {"design": ROWS[:3]}
    assert read_number(ended, "design", "301")["near"] == [300, 0]


@pytest.mark.parametrize("text", ["12/09", "12 / 1909", "Pat. 12 of 1909", "12OF09"])
def test_a_number_with_its_year(text):
    found = read("patent", text)
    assert (found["problem"], found["kind"], found["number"]) == ("", "application", 12)
    assert (found["first"], found["last"], found["memory"]) == (1909, 1909, False)


@pytest.mark.parametrize(
    ("text", "kind", "first", "memory"),
    [
        ("5012345678900", "EAN-13", 1980, True),
        ("96385074", "EAN-8", 1980, True),
        ("0 12345-67890 5", "UPC-A", 1970, False),
        ("0012345678905", "UPC-A", 1970, False),
    ],
)
def test_barcodes(text, kind, first, memory):
    found = read("barcode", text)
    keys = ("problem", "kind", "first", "last", "memory")
    assert [found[key] for key in keys] == ["", kind, first, 0, memory]


@given(st.text("0123456789", min_size=1, max_size=17))
def test_the_check_digit_makes_the_weighed_sum_a_whole_ten(body):
    figures = [int(c) for c in body + str(check_digit(body))]
    assert (sum(figures[::-1][::2]) + 3 * sum(figures[::-1][1::2])) % 10 == 0
    assert 0 <= figures[-1] <= 9


@given(st.sampled_from(["design", "patent", "barcode"]), st.text(max_size=15))
def test_look_alikes_are_never_taken_silently(what, text):
    found = read(what, text)
    if found["problem"] == "":
        assert all(c not in "ILOSBZQ" for c in found["figures"].upper())
        assert found["meant"] == ""
    if found["meant"] != "":
        assert read(what, found["meant"])["problem"] != "letters"
