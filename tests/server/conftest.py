"""Fixtures of the server's tests."""

from collections.abc import Iterator

import pytest

from tests.server.own_server import OwnServer, own_server


@pytest.fixture(scope="module")
def running(tmp_path_factory) -> Iterator[OwnServer]:
    with own_server(tmp_path_factory.mktemp("own") / "data") as server:
        yield server


@pytest.fixture
def own(running) -> OwnServer:
    """The collector's own server, an hour after what the test before asked of it."""
    running.times.pass_(hours=1)
    return running
