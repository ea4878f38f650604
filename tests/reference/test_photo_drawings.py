"""Photos in place of drawings: small, with nothing in them but the picture."""

import pytest
from PIL import Image

from identify.reference.check import check_pack
from identify.reference.compile import compile_pack
from tests.reference.small_pack import SVG, as_data, jpeg


def photographed(small, data):
    """A photo in the place of a drawing."""
    (small / "drawings" / "livery-red.svg").unlink(missing_ok=True)
    (small / "drawings" / "livery-red.jpg").write_bytes(data)


def test_a_state_can_be_photographed(small):
    photographed(small, jpeg())
    assert compile_pack(small).drawings["livery-red"] == as_data(jpeg())


@pytest.mark.parametrize(
    ("data", "text"),
    [
        (jpeg(comment=b"here"), "more than the picture"),
        (jpeg(width=900), "900 by 60 pixels"),
        (jpeg()[:-30], "not a whole JPEG"),
        (b"GIF89a", "not a whole JPEG"),
        (jpeg() + b"\0" * 50_000, "At most 48 KB"),
    ],
)  # fmt: skip
def test_other_photos_are_refused(small, data, text):
    photographed(small, data)
    assert any(text in m.text for m in check_pack(small))


def test_a_photo_that_says_where_it_was_taken_is_refused(small):
    exif = Image.Exif()
    exif[271] = "A camera"
    behind = jpeg() + jpeg(exif=exif.tobytes())  # a second picture behind the end of the first
    for data in (jpeg(exif=exif.tobytes()), behind):
        photographed(small, data)
        assert any("perhaps the place" in m.text for m in check_pack(small))


def test_a_drawing_and_a_photo_of_one_name_are_a_mistake(small):
    (small / "drawings" / "livery-red.jpg").write_bytes(jpeg())
    assert any("Keep one of them" in mistake.text for mistake in check_pack(small))


def test_a_variant_can_be_photographed_but_not_drawn(small):
    variant = compile_pack(small).variants[0].id
    (small / "drawings" / f"variant-{variant}.jpg").write_bytes(jpeg())
    assert compile_pack(small).drawings[f"variant-{variant}"] == as_data(jpeg())
    (small / "drawings" / f"variant-{variant}.jpg").unlink()
    (small / "drawings" / f"variant-{variant}.svg").write_text(SVG)
    (mistake,) = check_pack(small)
    assert mistake.file == f"drawings/variant-{variant}.svg"
    assert "no such state or kind" in mistake.text


def test_a_photo_of_a_variant_that_is_not_there_is_a_mistake(small):
    (small / "drawings" / "variant-nowhere.jpg").write_bytes(jpeg())
    assert any("no such state or kind" in mistake.text for mistake in check_pack(small))
