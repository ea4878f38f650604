"""The signs of older encodings, and how the likeliest is found: against Python's own codecs."""

import pytest

from identify.core.importing.older_letters import NO_SIGN, OLDER, older_text
from identify.exchange.text_files import ABOVE

CODECS = ["cp1252", "mac_roman", "cp850", "iso8859_15", "cp1250"]


@pytest.mark.parametrize(("codec", "older"), list(zip(CODECS, OLDER, strict=True)))
def test_every_sign_is_that_of_the_codec(codec, older):
    signs = [bytes([number]).decode(codec, "replace") for number in range(128, 256)]
    assert list(older[1]) == signs
    assert NO_SIGN == "\ufffd"


@pytest.mark.parametrize("codec", CODECS)
def test_a_text_is_read_in_its_encoding(codec):
    text = "Façade, début, Kühlwagen, groß; 4.50"
    assert older_text(text.encode(codec).decode("latin-1"), ABOVE)["text"] == text
