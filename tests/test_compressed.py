"""What goes over the wire is what was there, made small: for every coding, and who accepts it."""

import gzip
from collections.abc import Callable, Iterator

import brotli
import pytest

from identify.compressed import coding_for, packed, packs_well
from identify.publishing import publish
from tests.bench.serving import served
from tests.server.test_app import Answer, get

UNPACKED = {"br": brotli.decompress, "gzip": gzip.decompress}
PAGE = b"<!doctype html>" + b"Rivets on the roof. " * 100
FILES = {"index.html": PAGE, "short.js": b"1;", "icon.png": bytes(2000)}


@pytest.fixture
def asked() -> Iterator[Callable[[str, str], Answer]]:
    """The server's answer to a path and an Accept-Encoding, as it goes over the wire."""
    with served(FILES) as site:
        yield lambda path, accepted: get(site.url + path, **{"Accept-Encoding": accepted})


@pytest.mark.parametrize("coding", UNPACKED)
def test_packed_and_unpacked_is_the_same_and_packed_again_too(coding):
    small = packed(PAGE, coding)
    assert len(small) < len(PAGE) / 5
    assert UNPACKED[coding](small) == PAGE
    assert packed(PAGE, coding) == small


@pytest.mark.parametrize(
    ("accepted", "coding"),
    [
        ("gzip, deflate, br", "br"),
        ("gzip;q=1.0, BR;q=0.5", "br"),
        ("gzip, br;q=0", "gzip"),
        ("gzip, br; q=0.0", "gzip"),
        ("identity", ""),
        ("", ""),
        ("brotli, gzipped", ""),
    ],
)
def test_the_smallest_coding_that_is_accepted(accepted, coding):
    assert coding_for(accepted) == coding


def test_the_server_hands_out_what_is_accepted(asked):
    for accepted, coding in (("gzip, br", "br"), ("gzip", "gzip"), ("identity", None)):
        for _ in range(2):
            answer = asked("", accepted)
            assert answer.headers["content-encoding"] == coding
            assert answer.headers["vary"] == "Accept-Encoding"
            assert UNPACKED.get(coding, bytes)(answer.body) == PAGE


@pytest.mark.parametrize("name", ["short.js", "icon.png"])
def test_what_does_not_become_smaller_goes_as_it_is(asked, name):
    assert not packs_well(name, FILES[name])
    answer = asked(name, "br")
    assert answer.headers["content-encoding"] is None
    assert answer.body == FILES[name]


def test_beside_published_texts_stand_their_packed_forms(tmp_path):
    worker = b'const BUILD = "ab"; const FILES = ["./"];\n'
    publish(FILES | {"sw.js": worker}, tmp_path)
    for coding, ending in (("br", ".br"), ("gzip", ".gz")):
        assert UNPACKED[coding]((tmp_path / f"index.html{ending}").read_bytes()) == PAGE
    assert not list(tmp_path.glob("icon.png.*"))
