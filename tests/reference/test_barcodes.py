"""Barcodes: check digits, kinds and years, and what is said of a wrong one."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from identify.reference.barcodes import BarcodeError, gtin_check_digit, read_barcode

bodies = st.sampled_from([7, 11, 12]).flatmap(
    lambda size: st.text("0123456789", min_size=size, max_size=size)
)


@pytest.mark.parametrize(
    ("text", "kind", "earliest"),
    [
        ("5012345678900", "EAN-13", 1977),
        ("5 012345 678900", "EAN-13", 1977),
        ("96385074", "EAN-8", 1977),
        ("012345678905", "UPC-A", 1974),
        ("0-12345-67890-5", "UPC-A", 1974),
        ("0012345678905", "UPC-A, written with a 0 in front", 1974),
    ],
)
def test_kinds_and_years(text: str, kind: str, earliest: int) -> None:
    found = read_barcode(text)
    assert (found.kind, found.earliest) == (kind, earliest)
    assert found.text == (
        f"{kind}: such bars have been printed since {earliest}. They say nothing of a later year."
    )


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", '"" is not the number of a barcode. Write the figures under the bars, such as 501'),
        ("50123456789O0", '"50123456789O0" is not the number of a barcode.'),
        ("012345678904", '"012345678904" is not right: by the other figures the last one should '
         "be 5. Read it again, figure by figure."),
        ("5012345678901", '"5012345678901" is not right: by the other figures the last one'),
        ("123", 'A barcode has 8, 12 or 13 figures, but "123" has 3. Write also the small figures'),
        ("50123456789001", 'A barcode has 8, 12 or 13 figures, but "50123456789001" has 14.'),
        ("٥٠١٢٣٤٥٦٧٨٩٠٠", '"٥٠١٢٣٤٥٦٧٨٩٠٠" is not the number of a barcode.'),
    ],
)  # fmt: skip
def test_what_is_no_barcode(text: str, said: str) -> None:
    with pytest.raises(BarcodeError) as error:
        read_barcode(text)
    assert str(error.value).startswith(said)


@pytest.mark.parametrize("body", ["", "12", "12345678", "1234567890a2", "123456789012345678"])
def test_what_gets_no_check_digit(body: str) -> None:
    with pytest.raises(BarcodeError, match="cannot be given a check digit: it must be 7, 11, 12"):
        gtin_check_digit(body)


@given(bodies)
def test_a_number_with_its_check_digit_is_right(body: str) -> None:
    assert read_barcode(f"{body}{gtin_check_digit(body)}").earliest in (1974, 1977)


@given(bodies, st.data())
def test_one_wrong_figure_is_always_found(body: str, data: st.DataObject) -> None:
    right = f"{body}{gtin_check_digit(body)}"
    place = data.draw(st.integers(0, len(right) - 1))
    other = data.draw(st.sampled_from([each for each in "0123456789" if each != right[place]]))
    with pytest.raises(BarcodeError, match="is not right"):
        read_barcode(right[:place] + other + right[place + 1 :])


@given(bodies)
def test_zeros_in_front_do_not_change_the_check_digit(body: str) -> None:
    assert gtin_check_digit(body) == gtin_check_digit(body.zfill(13))
