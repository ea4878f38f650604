"""Spreadsheets that are kept while they are brought in: for whom, how long, and how many."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from starlette.exceptions import HTTPException

from identify.exchange.table import FileError
from identify.server.limits import UPLOAD_SECONDS, UPLOADS_BYTES
from identify.server.uploads import Uploads

ROWS = [{"row": n, "cells": [str(n)]} for n in range(1, 6)]


class Clock:
    """Seconds that pass when they are told to."""

    def __init__(self) -> None:
        self.now = 0.0

    def __call__(self) -> float:
        return self.now


def test_rows_are_given_to_the_device_that_sent_them():
    uploads = Uploads()
    name = uploads.keep("k1", b"body", ROWS)
    assert uploads.body("k1", name) == b"body"
    assert uploads.rows("k1", name) == ROWS
    assert uploads.rows("k1", name, 1, 2) == ROWS[1:3]
    for owner, other in (("k2", name), ("", name), ("k1", "x")):
        with pytest.raises(HTTPException) as told:
            uploads.rows(owner, other)
        assert told.value.status_code == 410


def test_read_anew_it_keeps_its_name():
    uploads = Uploads()
    name = uploads.keep("k1", b"body", ROWS)
    assert uploads.keep("k1", b"body", ROWS[:1], name) == name
    assert uploads.rows("k1", name) == ROWS[:1]


def test_it_is_gone_some_time_after_it_was_last_asked_for():
    clock = Clock()
    uploads = Uploads(clock)
    name = uploads.keep("k1", b"body", ROWS)
    clock.now = UPLOAD_SECONDS - 1
    uploads.body("k1", name)
    clock.now += UPLOAD_SECONDS - 1
    uploads.expire()
    assert uploads.body("k1", name) == b"body"
    clock.now += UPLOAD_SECONDS
    uploads.expire()
    assert uploads.kept == {}


@settings(deadline=None, max_examples=50)
@given(st.lists(st.tuples(st.integers(0, UPLOADS_BYTES), st.booleans()), max_size=8))
def test_together_they_never_take_more_than_the_limit_and_the_last_is_there(sizes):
    clock = Clock()
    uploads = Uploads(clock)
    names = []
    for size, again in sizes:
        clock.now += 1
        name = names[-1] if names and again else ""
        names.append(uploads.keep("k1", bytes(size), [], name))
        assert sum(one.size for one in uploads.kept.values()) <= UPLOADS_BYTES
        assert len(uploads.body("k1", names[-1])) == size


def test_what_was_longest_not_asked_for_goes_first():
    clock = Clock()
    uploads = Uploads(clock)
    half = UPLOADS_BYTES // 2
    first, second = uploads.keep("k1", bytes(half), []), uploads.keep("k2", bytes(half), [])
    clock.now = 1
    uploads.body("k1", first)
    uploads.keep("k3", b"x", [])
    uploads.body("k1", first)
    with pytest.raises(HTTPException):
        uploads.body("k2", second)


def test_one_that_is_larger_than_all_may_be_is_refused_in_a_sentence():
    with pytest.raises(FileError, match=r"larger than 64 MB once it is read\. Split it"):
        Uploads().keep("k1", bytes(UPLOADS_BYTES), ROWS)
